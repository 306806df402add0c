"""A spectrum for a bare x y.

Many spectra have one chromaticity. What the lamp may be is put together from the physics of its
kind (see :mod:`evenkelvin.lights.families`) and from published illuminants, bent by
exp(b·t + c·t²), t linear in wavelength; each has exactly the wanted x y. How likely each is was
fitted on a library of measured lamps (``lamp_families``), and so was how far the truth may be
beyond them (``lamp_regions``); in the tests every make of lamp is judged by what the others gave.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.bending import bend, bent
from evenkelvin.colorimetry.chromaticity import uv_prime_to_uv, xyz_to_uv_prime
from evenkelvin.colorimetry.illuminant import daylight, illuminant, planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import uv_to_cct, xy_to_cct
from evenkelvin.data import Floats, load_table
from evenkelvin.lights.before import Before, KnownShift, KnownSpectrum, with_shift, with_spectra
from evenkelvin.lights.evidence import weighed
from evenkelvin.lights.families import family, mixtures
from evenkelvin.problem import Problem
from evenkelvin.said import Said

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: Lamp kinds, in words.
LAMPS: dict[str, Said] = {
    "unknown": Said("not known"),
    "tungsten": Said("tungsten, halogen"),
    "daylight": Said("daylight, window"),
    "hmi": Said("HMI, metal halide"),
    "fluorescent": Said("fluorescent tube"),
    "led": Said("LED, white or bi-colour"),
    "led rgb": Said("LED, mixed colours"),
    "plasma": Said("plasma"),
    "mercury": Said("mercury vapour"),
    "sodium": Said("sodium"),
    "flash": Said("flash, xenon"),
}
#: The CIE illuminants of a kind (CIE 15:2018).
_TABULATED: dict[str, tuple[str, ...]] = {
    "daylight": ("C",),
    "hmi": ("HP3", "HP4", "HP5"),
    "fluorescent": (*(f"FL{i}" for i in range(1, 13)), *(f"FL3.{i}" for i in range(1, 16))),
    "led": (*(f"LED-B{i}" for i in range(1, 6)), "LED-BH1", "LED-V1", "LED-V2"),
    "led rgb": ("LED-RGB1",),
    "plasma": ("HP4",),
    "sodium": ("HP1", "HP2"),
}
#: What a lamp of unknown kind may be, and how often it is (common practice, no source).
UNKNOWN = {
    "led": 0.45, "led rgb": 0.15, "fluorescent": 0.1, "hmi": 0.1, "tungsten": 0.1, "daylight": 0.1,
}  # fmt: skip
#: Members that are bent to their x y are counted from here, those of the families from 0.
BENT = 1000
#: What a tungsten lamp may be, by the number of the member, and how often (common practice, no
#: source): a filament somewhat cooler or hotter than its CCT, neodymium glass, a coating.
_FILAMENTS = range(BENT, BENT + 5)
_TUNGSTEN = dict(
    zip(range(BENT, BENT + 8), (0.4, 0.1, 0.1, 0.1, 0.1, 0.05, 0.05, 0.1), strict=True)
)
#: How far from its own Duv such a lamp is read, and read behind gels, which have a scatter of their
#: own (1 σ; common practice, no source).
_DUV_SCATTER, _DUV_SCATTER_GELLED = 0.002, 0.006


@dataclass(frozen=True, eq=False)
class Guess:
    """What a light may be.

    ``spectra`` (n, 81) are as measured, through the gels; the first is the mean of the others,
    or the black body of a filament, and has weight 0. ``weights`` (n,) add up to 1. ``widen`` is
    by what the scatter of the spectra falls short of that of real lamps. ``off`` is how far the
    best of them is from what else the meter shows, in σ. ``after`` names the lamps whose past
    has told something.
    """

    spectra: Floats
    weights: Floats
    widen: float
    off: float = 0.0
    after: tuple[str, ...] = ()


def _smooth(lamp: str, kelvin: float) -> list[Floats]:
    """Return the smooth spectra of a kind near a CCT."""
    day = daylight(GRID, max(kelvin, 4000.0))
    if lamp == "tungsten":
        glow = planck(GRID, kelvin)
        # Other filaments; neodymium glass, which takes out yellow; a coating that takes out red.
        found = [planck(GRID, kelvin * part) for part in (1.0, 0.8, 0.9, 1.15, 1.3)]
        yellow = np.exp(-(((GRID - 585.0) / 21.0) ** 2))
        green = np.exp(-(((GRID - 525.0) / 15.0) ** 2))
        found += [glow * (1.0 - depth * (yellow + 0.3 * green)) for depth in (0.3, 0.6)]
        return [*found, glow * (0.3 + 1.0 / (1.0 + np.exp((GRID - 650.0) / 40.0)))]
    if lamp == "hmi":
        return [day]
    if lamp in ("daylight", "flash", "plasma"):
        near = [
            daylight(GRID, float(np.clip(kelvin * part, 4000.0, 25000.0))) for part in (0.85, 1.2)
        ]
        return [day, *near, planck(GRID, kelvin)]
    return []


@cache
def weights_of(lamp: str) -> dict[int, float] | None:
    """Return how often each member of a kind is met, by its number; None where not fitted."""
    table = load_table("lamp_families")
    column = lamp.replace(" ", "_")
    if column not in table:
        return None
    pairs = zip(table["member"].tolist(), table[column].tolist(), strict=True)
    return {int(member): weight for member, weight in pairs if weight > 0}


def members(
    lamp: str, xy: Floats, through: Floats, known: dict[int, float] | None
) -> tuple[Floats, NDArray[np.intp]]:
    """Return the members of a kind that have this chromaticity, and their numbers.

    Parameters
    ----------
    lamp
        A kind of :data:`LAMPS`, not "unknown".
    xy
        Measured chromaticity, shape (2,).
    through
        Transmittance, shape (81,), of the gels through which it was measured.
    known
        The members to look at, by number; None for all.

    Returns
    -------
    spectra, numbers
        Shape (n, 81), of luminance 1, and (n,).
    """
    return _members_of([(lamp, known)], xy, through)[0]


_Members = tuple[Floats, "NDArray[np.intp]"]


def _members_of(
    kinds: Sequence[tuple[str, dict[int, float] | None]], xy: Floats, through: Floats
) -> list[_Members]:
    """Return the members of several kinds; what is to be bent is bent all at once."""
    kelvin = _kelvin(xy)
    mixed: list[_Members] = []
    bases: list[Floats] = []
    of_bases: list[NDArray[np.intp]] = []
    for lamp, known in kinds:
        parts = family(lamp)
        chosen = np.arange(len(parts))
        shapes = [illuminant(name) for name in _TABULATED.get(lamp, ())] + _smooth(lamp, kelvin)
        numbers = np.arange(BENT, BENT + len(shapes))
        if known is not None:
            chosen = np.array([k for k in chosen if k in known], dtype=np.intp)
            numbers = np.array([k for k in numbers if k in known], dtype=np.intp)
        spectra, reached = mixtures(parts[chosen] * through, xy)
        mixed.append((spectra, chosen[reached]))
        bases += [shapes[number - BENT] for number in numbers]
        of_bases.append(numbers)
    if not bases:
        return mixed
    shaped, which = bent(np.stack(bases) * through, xy)
    shaped = shaped / (shaped @ observer_grid()[:, 1])[:, np.newaxis]
    # Which kind each came from; those that could not be bent so far are gone.
    owner = np.repeat(np.arange(len(kinds)), [len(numbers) for numbers in of_bases])[which]
    number = np.concatenate(of_bases)[which]
    return [
        (
            np.concatenate([spectra, shaped[owner == kind]]),
            np.concatenate([numbers, number[owner == kind]]),
        )
        for kind, (spectra, numbers) in enumerate(mixed)
    ]


def _weighted(lamp: str, xy: Floats, through: Floats) -> tuple[Floats, Floats, NDArray[np.intp]]:
    """Return what a lamp may be, how likely each is, adding up to 1, and its number; or none."""
    kinds = UNKNOWN if lamp == "unknown" else {lamp: 1.0}
    known = {kind: weights_of(kind) for kind in kinds}
    found = []
    for (kind, share), (spectra, numbers) in zip(
        kinds.items(), _members_of(list(known.items()), xy, through), strict=True
    ):
        fitted = known[kind]
        if not len(spectra) and fitted is not None:
            fitted = None
            spectra, numbers = members(kind, xy, through, None)
        if kind == "tungsten":
            weights = _of_tungsten(spectra, through, numbers, _kelvin(xy))
        elif fitted is None:
            # Physics and publication are heard alike.
            is_bent = numbers >= BENT
            shares = np.where(is_bent, np.sum(~is_bent), np.sum(is_bent))
            weights = np.maximum(shares, 1).astype(np.float64)
        else:
            weights = np.array([fitted[int(k)] for k in numbers])
        share_of_each = share * weights / weights.sum() if len(weights) else weights
        found.append((spectra, share_of_each, numbers))
    spectra, weights, numbers = (np.concatenate(each) for each in zip(*found, strict=True))
    total = weights.sum()
    return spectra, weights / (total if total else 1.0), numbers


def _of_tungsten(
    spectra: Floats, through: Floats, numbers: NDArray[np.intp], kelvin: float
) -> Floats:
    """Return how likely tungsten lamps are, by how near each is to its own Duv.

    A filament is a black body, so that it is hardly one that reads off the line; neodymium glass
    and coatings are off it by themselves.
    """
    bases = np.stack(_smooth("tungsten", kelvin))[numbers - BENT]
    own, read = (
        uv_to_cct(uv_prime_to_uv(xyz_to_uv_prime(light @ observer_grid())))[:, 1]
        for light in (bases, spectra / through)
    )
    gelled = bool(np.any(through != 1.0))
    far = ((own - read) / (_DUV_SCATTER_GELLED if gelled else _DUV_SCATTER)) ** 2
    usual = np.array([_TUNGSTEN[int(number)] for number in numbers])
    return np.asarray(usual * np.exp(-0.5 * (far - far.min(initial=np.inf))))


def _kelvin(xy: Floats) -> float:
    """Return a CCT that lamps have: that of the reading, as far as it has one."""
    cct, _ = xy_to_cct(xy)
    return 3000.0 if np.isnan(cct) else float(np.clip(cct, 1000.0, 25000.0))


def stand_ins(lamp: str, xy: Floats, pack: Floats | None = None) -> Floats:
    """Return the spectra that a light of this chromaticity may have, their mean first.

    See :func:`guess`.
    """
    return guess(lamp, xy, pack).spectra


def guess(
    lamp: str,
    xy: Floats,
    pack: Floats | None = None,
    evidence: tuple[tuple[str, float], ...] = (),
    before: tuple[Before, ...] = (),
) -> Guess:
    """Return what a light of this chromaticity may be.

    Parameters
    ----------
    lamp
        A kind of :data:`LAMPS`.
    xy
        Measured chromaticity, shape (2,).
    pack
        Transmittance, shape (81,), of the gels through which it was measured.
    evidence
        What else the meter shows, as :func:`evenkelvin.lights.evidence.weighed` takes it.
    before
        What the lamp did before.

    Raises
    ------
    Problem
        When no spectrum can be found, field ``x``.
    """
    through = None if pack is None else np.asarray(pack, dtype=np.float64).tobytes()
    return _guess(lamp, float(xy[0]), float(xy[1]), through, evidence, before)


@lru_cache(maxsize=64)  # a large setup's lights, 40 kB each
def _guess(
    lamp: str,
    x: float,
    y: float,
    pack: bytes | None,
    evidence: tuple[tuple[str, float], ...],
    before: tuple[Before, ...],
) -> Guess:
    """Return the guess; the same readings come again with every question about a set."""
    xy = np.array([x, y])
    through = np.ones(GRID.shape) if pack is None else np.frombuffer(pack)
    widen = _widen(lamp, bool(evidence))
    spectra, weights, numbers = _weighted(lamp, xy, through)
    spoke = len(spectra)
    earlier = [one for one in before if isinstance(one, KnownSpectrum)]
    spectra, weights = with_spectra(spectra, weights, earlier, xy, through)
    if not len(spectra):
        spectra = bend((planck(GRID, _kelvin(xy)) * through)[np.newaxis], xy)
        weights = np.ones(len(spectra))
    if not len(spectra):
        raise Problem(
            "x",
            Said(
                "No spectrum of a lamp reaches x {xy:.4f}, y {xy_2:.4f}: it is close to a "
                "single wavelength. Measure a spectrum to go on.",
                xy=xy[0],
                xy_2=xy[1],
            ),
        )
    off = 0.0
    if evidence:
        agreeing, off = weighed(spectra, evidence)
        weights = weights * agreeing
        weights = weights / weights.sum()
    after = [one.name for one in earlier] if weights[spoke:].sum() >= 0.5 else []
    recalled = bool(after)
    for one in before:
        if isinstance(one, KnownShift):
            weights, told = with_shift(spectra, weights, one, through)
            after += [one.name] if told else []
    filament = None
    if lamp == "tungsten" and not recalled:
        # A filament is a black body, and is dimmed as one; its kin only show how far it may
        # differ. Where it is likelier to be behind neodymium glass or a coating it is none.
        glows = np.isin(numbers, _FILAMENTS)
        if weights[:spoke][glows].sum() >= 0.5 and numbers[0] == _FILAMENTS[0]:
            filament = spectra[0]
    if evidence or after:
        spoken = weights > 0.01 * weights.max()
        spectra, weights = spectra[spoken], weights[spoken] / weights[spoken].sum()
    mean = weights @ spectra if filament is None else filament
    spectra = np.concatenate([mean[np.newaxis], spectra])
    spectra = spectra / spectra.max(axis=1, keepdims=True)
    weights = np.concatenate([[0.0], weights])
    spectra.setflags(write=False)
    weights.setflags(write=False)
    return Guess(spectra, weights, widen, off, tuple(dict.fromkeys(after)))


def _widen(lamp: str, told: bool) -> float:
    """Return the region factor of a kind, with or without evidence; 1 where not fitted."""
    column = load_table("lamp_regions").get(lamp.replace(" ", "_"))
    return 1.0 if column is None else float(column[int(told)])
