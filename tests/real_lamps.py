"""Real lamps as the referee of guesses: what a bare x y promises against the lamp's own spectrum.

The spectra are the measured ones of the library of ANSI/IES TM-30, as luxpy carries it: for tests
only, never shipped. Two things are fitted on them: how often each member of a lamp family is met,
and by what the region has to be widened. Lamps of one make are near copies of each other, so they
are dealt out by makes, by a seed, into ten parts. Each part is judged by tables that were fitted on
the other nine: no lamp, and none of its make, vouches for itself. The kernel's own tables are
fitted in the same way on all ten.

    python tests/real_lamps.py              fits, writes both tables of the kernel, and measures
    python tests/real_lamps.py --measure    measures only
"""

from __future__ import annotations

import re
import sys
from collections import Counter
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from functools import cache
from itertools import pairwise, product
from pathlib import Path

import numpy as np

from evenkelvin.colorimetry.bending import bend, bent
from evenkelvin.colorimetry.chromaticity import (
    uv_prime_to_xy,
    xy_to_uv_prime,
    xyz_to_uv_prime,
    xyz_to_xy,
)
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.spectrum import Spectrum, on_grid
from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.data import Floats, load_table
from evenkelvin.filters.gel import Gel
from evenkelvin.filters.kit import NOMINAL_SCATTER, nominal_kit
from evenkelvin.filters.scatter import LEARNED_SCATTER, smooth
from evenkelvin.lights import stand_in
from evenkelvin.lights.before import Before, KnownShift, KnownSpectrum
from evenkelvin.lights.fixing import FLOOR_STEPS, landing_regions
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.region import CHI_2, LIKELY, SURE
from evenkelvin.rendering.cri import colour_rendering_index, indices_of_one_white

SEED = 2026
DATA = Path(stand_in.__file__).parent.parent / "data"
GELS = ("1/2 CTO", "full CTO", "1/2 CTB", "full CTB", "1/2 minus green")
KINDS = ("led", "led rgb", "fluorescent", "hmi", "mercury", "sodium", "tungsten")
#: Kinds of which there are lamps enough to learn what is met how often.
FITTED = ("led", "led rgb", "fluorescent")
#: As what lamps are taken.
TAKEN = (*KINDS, "unknown")
#: Into so many parts the makes of a kind are dealt out.
PARTS = 10
#: A member of a family less often met than this, on average, is left out.
_LEAST_SHARE = 0.003
#: So few lamps say little of how far a kind scatters.
_FEW = 20
_MADE = f"fitted by 'tests/real_lamps.py', seed {SEED}, on the lamps of ANSI/IES TM-30"
#: How often the region shall hold the truth; more where few lamps speak.
_AIM, _AIM_OF_FEW = 0.91, 0.95
#: By what the region is widened at least where few lamps speak: as Student has it for some 10.
_LEAST_OF_FEW = 1.25
#: Targets that are tried for each landing.
_TARGETS = 3
#: Tolerance in steps within which they are to hold.
_RADIUS = 4.0


@dataclass(frozen=True, eq=False)
class Lamp:
    """A measured lamp: its kind and make, its spectrum on the search grid, x y, Ra (None: not
    rated), and the part of the library that it is in.
    """

    kind: str
    make: str
    spectrum: Floats
    xy: Floats
    ra: float | None
    part: int


def _kind(name: str, group: str) -> str | None:
    if group.startswith("Fluorescent"):
        # The illuminants of CIE 15 stand in themselves: they are no referee.
        return None if "CIE" in name else "fluorescent"
    if group == "High Intensity Discharge":
        return "sodium" if "HPS" in name else "mercury" if "Mercury" in name else "hmi"
    return {
        "LED Phosphor": "led", "LED Hybrid": "led", "LED Mixed": "led rgb",
        "Incandescent/Filament": "tungsten",
    }.get(group)  # fmt: skip


def _make(kind: str, name: str) -> str:
    """Return what lamps of one make have in common: peaks of mixed LEDs, else the name without
    number, Duv and CCT. White LEDs are numbered through, so that each is a make of its own.
    """
    if kind == "led":
        return name
    peaks = re.search(r"\d+(/\d+){2,}", name)
    return peaks[0] if peaks else re.sub(r"\s*(\(\d+\)|\(?Duv.*)$", "", name.strip())


@cache
def lamps() -> tuple[Lamp, ...]:
    """Return every lamp of the library that is a referee."""
    import luxpy

    table = luxpy._IESTM3018["S"]
    nm, rows = table["data"][0], table["data"][1:]
    told = []
    for row, info in zip(rows, table["info"], strict=True):
        kind = _kind(str(info[1]), str(info[2]))
        if kind is not None:
            told.append((kind, _make(kind, str(info[1])), row))
    rng = np.random.default_rng(SEED)
    part_of: dict[tuple[str, str], int] = {}
    for kind in KINDS:
        makes = sorted({make for of_kind, make, _ in told if of_kind == kind})
        for place, k in enumerate(rng.permutation(len(makes))):
            part_of[kind, makes[k]] = place % PARTS
    found = []
    for kind, make, row in told:
        own = Spectrum(nm, np.clip(row, 0.0, None))
        spectrum = on_grid(own)
        xy = xyz_to_xy(spectrum @ observer_grid())
        cct, duv = xy_to_cct(xy)
        rated = np.isfinite(cct) and abs(duv) < 0.05
        ra = float(round(colour_rendering_index(own).ra)) if rated else None
        found.append(Lamp(kind, make, spectrum, xy, ra, part_of[kind, make]))
    return tuple(found)


def _gels(vary: float, rng: np.random.Generator) -> list[tuple[Gel, Floats]]:
    """Return each gel as it is thought to be, and as it is: a smooth deviation of σ ``vary``."""
    kit = {gel.name: gel for gel in nominal_kit()}
    root = np.linalg.cholesky(smooth() + 1e-9 * np.eye(len(GRID)))
    return [
        (kit[name], kit[name].transmittance * np.exp(vary * (root @ rng.normal(size=len(GRID)))))
        for name in GELS
    ]


@dataclass(frozen=True, eq=False)
class Measure:
    """Of many landings: how far off in u′ v′ (n, 2), and the covariance of the region (n, 2, 2).
    Of each, for some targets: the odds (n, 3), and whether it held (n, 3).
    """

    away: Floats
    covariance: Floats
    odds: Floats
    held: Floats

    @property
    def inside(self) -> float:
        """How often the 90 % region holds the truth."""
        return inside(self.away, self.covariance)

    def off(self, share: float) -> float:
        """Return the steps off that this share stays below."""
        return float(np.quantile(np.hypot(*self.away.T), share) / STEP_UV)


def inside(away: Floats, covariance: Floats) -> float:
    """Return how many of these (n, 2) lie in the 90 % regions of these covariances (n, 2, 2)."""
    scaled = np.linalg.solve(covariance, away[..., np.newaxis])[..., 0]
    return float(np.mean(np.sum(away * scaled, axis=1) <= CHI_2))


def own_spectrum(lamp: Lamp, rng: np.random.Generator) -> tuple[Before, ...]:
    """Return the lamp's own spectrum of another day, when it read some 2 steps (1 σ) otherwise."""
    drift = 2.0 * STEP_UV * rng.normal(size=2)
    then = bend(lamp.spectrum[np.newaxis], uv_prime_to_xy(xy_to_uv_prime(lamp.xy) + drift))
    return tuple(KnownSpectrum("key", tuple(one.tolist())) for one in then)


def strangers_spectrum(lamp: Lamp, _: np.random.Generator) -> tuple[Before, ...]:
    """Return the spectrum of that other lamp of the kind that reads nearest to this one."""
    others = [one for one in lamps() if one.kind == lamp.kind and one is not lamp]
    uv = xy_to_uv_prime(np.stack([one.xy for one in others]))
    nearest = others[int(np.argmin(delta_uv_prime(uv, xy_to_uv_prime(lamp.xy))))]
    return (KnownSpectrum("key", tuple((nearest.spectrum / nearest.spectrum.max()).tolist())),)


def earlier_gel(lamp: Lamp, rng: np.random.Generator) -> tuple[Before, ...]:
    """Return what 1/4 CTO, learned in x y, did to the lamp, read to 0.3 steps (1 σ)."""
    gel = next(gel for gel in nominal_kit() if gel.name == "1/4 CTO")
    gel = replace(gel, scatter=LEARNED_SCATTER)
    root = np.linalg.cholesky(smooth() + 1e-9 * np.eye(len(GRID)))
    curve = gel.transmittance * np.exp(gel.scatter * (root @ rng.normal(size=len(GRID))))
    first = xy_to_uv_prime(lamp.xy)
    then = xyz_to_uv_prime((lamp.spectrum * curve) @ observer_grid())
    then = then + 0.3 * STEP_UV * rng.normal(size=2)
    (u_0, v_0), (u_1, v_1) = first.tolist(), then.tolist()
    return (KnownShift("key", (u_0, v_0), (u_1, v_1), (), (gel,), (gel.scatter,)),)


def _nothing(_: Lamp, __: np.random.Generator) -> tuple[Before, ...]:
    return ()


def measure(
    of: Sequence[Lamp],
    kind: str,
    told: bool,
    vary: float = 0.0,
    seed: int = SEED,
    past: Callable[[Lamp, np.random.Generator], tuple[Before, ...]] = _nothing,
) -> Measure:
    """Return how guesses by the kernel's present tables stand the test on real lamps.

    Parameters
    ----------
    of
        The lamps.
    kind
        As what they are taken; empty for what they are.
    told
        Whether their Ra is typed beside x y.
    vary
        How far the gels are from their curves, as the σ of the log of transmittance.
    seed
        Of the gels, and of the targets, which lie 1.6 steps (1 σ) from where the light is thought
        to land.
    past
        What is known that the lamp did before.
    """
    rng = np.random.default_rng(seed)
    found = []
    for lamp in of:
        evidence = (("ra", lamp.ra),) if told and lamp.ra is not None else ()
        taken = kind or lamp.kind
        may_be = stand_in.guess(taken, lamp.xy, None, evidence, past(lamp, rng))
        cct, duv = xy_to_cct(lamp.xy)
        light = Reading(
            lamp.xy, cct, duv, may_be.spectra, lamp=taken, weights=may_be.weights,
            widen=may_be.widen,
        )  # fmt: skip
        for gel, curve in _gels(vary, rng):
            gel = Gel(gel.name, gel.family, gel.transmittance, gel.reference_k, scatter=vary)
            truth = xyz_to_uv_prime((lamp.spectrum * curve) @ observer_grid())
            region, _ = landing_regions(light, [(gel,)])[0]
            spread = 1.6 * STEP_UV * rng.normal(size=(_TARGETS, 2)) / np.sqrt(2.0)
            wanted = region.mean + spread
            odds = [region.odds(one, _RADIUS) for one in wanted]
            held = delta_uv_prime(truth, wanted) <= _RADIUS * STEP_UV
            found.append((truth - region.mean, region.covariance, odds, held))
    away, covariance, odds, held = zip(*found, strict=True)
    return Measure(np.array(away), np.array(covariance), np.array(odds), np.array(held))


def judged(
    kind: str,
    told: bool,
    vary: float = 0.0,
    past: Callable[[Lamp, np.random.Generator], tuple[Before, ...]] = _nothing,
    every: int = 1,
) -> Measure:
    """Return how guesses stand the test, each part of the library by the tables of the others.

    ``kind`` is one of :data:`KINDS`, "unknown" for LEDs of either make, or empty for all lamps,
    taken for what they are; of them, one in ``every``. The rest is as for :func:`measure`.
    """
    found = []
    for part, tables in enumerate(tables_of_parts()):
        some = [one for one in of_kind(kind)[::every] if one.part == part]
        if some:
            with using(tables):
                found.append(measure(some, kind, told, vary, SEED + part, past))
    return together(found)


def together(found: Sequence[Measure]) -> Measure:
    """Return several measures as one."""
    return Measure(
        *(
            np.concatenate([getattr(one, name) for one in found])
            for name in ("away", "covariance", "odds", "held")
        )
    )


@dataclass(frozen=True, eq=False)
class Tables:
    """What is fitted: the shares of the members of each family, in thousandths, and the factors by
    which the region is widened, by whether Ra is told and by kind.
    """

    shares: dict[str, dict[int, int]]
    factors: dict[tuple[bool, str], float]

    def families(self) -> dict[str, list[float]]:
        """Return the table ``lamp_families`` by columns."""
        numbers = sorted({number for share in self.shares.values() for number in share})
        return {"member": [float(number) for number in numbers]} | {
            kind.replace(" ", "_"): [float(share.get(number, 0)) for number in numbers]
            for kind, share in self.shares.items()
        }

    def regions(self) -> dict[str, list[float]]:
        """Return the table ``lamp_regions`` by columns."""
        return {"told": [0.0, 1.0]} | {
            kind.replace(" ", "_"): [self.factors.get((told, kind), 1.0) for told in (False, True)]
            for kind in TAKEN
        }


@contextmanager
def using(tables: Tables) -> Iterator[None]:
    """Have the kernel guess by these tables."""
    fitted = {"lamp_families": tables.families(), "lamp_regions": tables.regions()}

    def load(name: str) -> dict[str, Floats]:
        return {column: np.array(values) for column, values in fitted[name].items()}

    _forget()
    stand_in.load_table = load
    try:
        yield
    finally:
        stand_in.load_table = load_table
        _forget()


def _forget() -> None:
    stand_in.weights_of.cache_clear()
    stand_in._guess.cache_clear()


@cache
def _likely(lamp: Lamp) -> dict[int, float]:
    """Return how likely a lamp is each member of its family, by its number.

    It is taken for one by how near the two land behind the five gels (1.5 steps, 1 σ).
    """
    spectra, numbers = stand_in.members(lamp.kind, lamp.xy, np.ones(len(GRID)), None)
    off = np.mean(_steps_off(spectra, lamp) ** 2, axis=1)
    likely = np.exp(-0.5 * (off - off.min()) / 1.5**2)
    return {int(k): float(v) for k, v in zip(numbers, likely, strict=True)}


def _shares(of: Sequence[Lamp]) -> dict[int, int]:
    """Return how often each member is met, in thousandths, by expectation and maximisation.

    Each make counts once, however many of it were measured; what is seen in few lamps is drawn
    towards all members alike.
    """
    rows = [_likely(lamp) for lamp in of]
    seen = {number for row in rows for number in row}
    copies = Counter(lamp.make for lamp in of)
    counts = np.array([1.0 / copies[lamp.make] for lamp in of])
    counts *= len(rows) / counts.sum()
    every = sorted(seen)
    place = {number: k for k, number in enumerate(every)}
    likely = np.zeros((len(rows), len(every)))
    for k, row in enumerate(rows):
        likely[k, [place[number] for number in row]] = list(row.values())
    share = np.full(len(every), 1.0 / len(every))
    for _ in range(80):
        taken = likely * share
        taken /= taken.sum(axis=1, keepdims=True)
        share = counts @ taken + 0.3 * len(rows) / len(every)
        share /= share.sum()
    return {
        number: round(1000 * part)
        for number, part in zip(every, share, strict=True)
        if part >= _LEAST_SHARE
    }


def of_kind(kind: str) -> list[Lamp]:
    """Return the lamps taken for a kind: LEDs of either make for an unknown one; all for none."""
    taken = {"unknown": ("led", "led rgb"), "": KINDS}.get(kind, (kind,))
    return [one for one in lamps() if one.kind in taken]


def _fitted_without(part: int | None) -> dict[str, dict[int, int]]:
    """Return the shares of each family by all lamps but those of a part."""
    return {kind: _shares([one for one in of_kind(kind) if one.part != part]) for kind in FITTED}


@cache
def _unwidened() -> dict[tuple[bool, str], list[tuple[int, Measure]]]:
    """Return how each part stands the test by shares of the others, the region not widened."""
    found: dict[tuple[bool, str], list[tuple[int, Measure]]] = {}
    for part in range(PARTS):
        with using(Tables(_fitted_without(part), {})):
            for told, kind in product((False, True), TAKEN):
                some = [one for one in of_kind(kind) if one.part == part]
                if some:
                    found.setdefault((told, kind), []).append((part, measure(some, kind, told)))
    return found


def _factors(without: int | None) -> dict[tuple[bool, str], float]:
    """Return the factors by the landings of all parts but one."""
    return {
        which: _factor(together([one for part, one in of if part != without]))
        for which, of in _unwidened().items()
    }


@cache
def tables_of_parts() -> tuple[Tables, ...]:
    """Return the tables by which each part of the library is judged."""
    return tuple(Tables(_fitted_without(part), _factors(part)) for part in range(PARTS))


@cache
def tables_of_all() -> Tables:
    """Return the tables of the kernel."""
    return Tables(_fitted_without(None), _factors(None))


def as_text(comment: str, columns: dict[str, list[float]]) -> str:
    """Return a table as the kernel carries it."""
    rows = zip(*columns.values(), strict=True)
    lines = [f"# {comment}; {_MADE}", ",".join(columns)]
    return "\n".join([*lines, *(",".join(f"{value:g}" for value in row) for row in rows)]) + "\n"


def files() -> dict[str, str]:
    """Return both tables of the kernel by the names of their files."""
    families = "How often each member of a lamp family is met, in thousandths"
    regions = "By what the scatter of stand-ins is widened, without and with Ra"
    return {
        "lamp_families.csv": as_text(families, tables_of_all().families()),
        "lamp_regions.csv": as_text(regions, tables_of_all().regions()),
    }


def _factor(found: Measure) -> float:
    """Return the factor with which the 90 % region holds the truth often enough.

    Where only a few lamps speak it is wider than the stand-ins have it.
    """
    floor = np.eye(2) * (FLOOR_STEPS * STEP_UV) ** 2
    # What is not the floor is the scatter itself.
    scatter = found.covariance - floor
    few = len(found.away) < _FEW * len(GELS)
    least, aim = (_LEAST_OF_FEW, _AIM_OF_FEW) if few else (0.4, _AIM)
    for factor in np.arange(least, 6.0, 0.01):
        if inside(found.away, factor**2 * scatter + floor) >= aim:
            return round(float(factor), 2)
    return 6.0


def reliability(found: Measure) -> list[tuple[float, float, int, float]]:
    """Return, for odds from … to …, how many landings had them, and how many of those held."""
    rows = []
    for low, high in pairwise((0.0, 0.3, 0.5, 0.7, 0.9, 1.01)):
        which = (found.odds >= low) & (found.odds < high)
        rows.append(
            (low, high, int(which.sum()), float(found.held[which].mean() if which.any() else 0.0))
        )
    return rows


def carried() -> tuple[dict[str, list[float]], dict[str, list[float]]]:
    """Return both tables as the kernel carries them, by columns."""
    families, regions = (
        {column: values.tolist() for column, values in load_table(name).items()}
        for name in ("lamp_families", "lamp_regions")
    )
    return families, regions


def best_member(kind: str) -> Floats:
    """Return how far off, in steps, that member of its family is which lands nearest, (n · 5,)."""
    found = []
    for lamp in of_kind(kind):
        spectra, _ = stand_in.members(lamp.kind, lamp.xy, np.ones(len(GRID)), None)
        off = _steps_off(spectra, lamp)
        found.append(off[np.argmin(np.sum(off**2, axis=1))])
    return np.concatenate(found)


def kin(kind: str, told: bool) -> Floats:
    """Return how far off, in steps, the other lamps themselves would be as stand-ins, (n · 5,).

    They are those of the kind, of other makes, bent to the x y and weighed by how near they read
    (10 steps, 1 σ), and by their Ra (3, 1 σ). Nothing that knows only x y can do much better.
    """
    found = []
    for lamp in of_kind(kind):
        others = [one for one in of_kind(kind) if one.make != lamp.make]
        spectra, reached = bent(np.stack([one.spectrum for one in others]), lamp.xy)
        spectra = spectra / (spectra @ observer_grid()[:, 1])[:, np.newaxis]
        uv = xy_to_uv_prime(np.stack([one.xy for one in others]))[reached]
        far = delta_uv_prime(uv, xy_to_uv_prime(lamp.xy)) / STEP_UV / 10.0
        off = far**2
        if told and lamp.ra is not None:
            ra = indices_of_one_white(spectra)[:, :8].mean(axis=1)
            off += ((ra - lamp.ra) / 3.0) ** 2
        weights = np.exp(-0.5 * (off - off.min()))
        found.append(_steps_off((weights @ spectra)[np.newaxis], lamp)[0])
    return np.concatenate(found)


def _steps_off(spectra: Floats, lamp: Lamp) -> Floats:
    """Return how far from a lamp spectra land behind the five gels, (n, 81) to (n, 5), in steps."""
    curves = np.stack([gel.transmittance for gel, _ in _gels(0.0, np.random.default_rng(0))])
    landed = xyz_to_uv_prime((spectra[:, np.newaxis] * curves) @ observer_grid())
    truth = xyz_to_uv_prime((lamp.spectrum * curves) @ observer_grid())
    return delta_uv_prime(landed, truth) / STEP_UV


def table() -> str:
    """Return the measure of each part by the tables of the others."""
    lines = [
        "| lamp | lamps | steps off, median / 9 in 10 | region holds | with Ra | region holds |",
        "|---|---|---|---|---|---|",
    ]
    odds = []
    for kind in (*TAKEN, ""):
        cells = [kind, str(len(of_kind(kind)))]
        for told in (False, True):
            found = judged(kind, told)
            cells += [f"{found.off(0.5):.1f} / {found.off(0.9):.1f}", f"{100 * found.inside:.0f} %"]
            said = ", ".join(
                f"{low:.1f}–{min(high, 1.0):.1f}: {held:.2f} of {count}"
                for low, high, count, held in reliability(found)
                if count
            )
            odds.append(f"{kind or 'all'}, {'with' if told else 'without'} Ra: {said}")
        lines.append(f"| {' | '.join(cells)} |")
    lines += ["", "Of landings with odds from … to …, so many held:", *odds, ""]
    for told in (False, True):
        found = judged("", told, NOMINAL_SCATTER)
        sure, likely = found.odds >= SURE, (found.odds >= LIKELY) & (found.odds < SURE)
        lines.append(
            f"gels vary by {NOMINAL_SCATTER:g}, {'with' if told else 'without'} Ra: "
            f"{found.off(0.5):.1f} / {found.off(0.9):.1f}, region {100 * found.inside:.0f} %, "
            f"'holds' said {sure.sum()} times, 'should hold' {likely.sum()} of {sure.size}"
        )
    for kind in (*FITTED, "unknown"):
        one = [np.quantile(best_member(kind), share) for share in (0.5, 0.9)]
        others = [
            np.quantile(kin(kind, told), share) for told in (False, True) for share in (0.5, 0.9)
        ]
        lines.append(
            f"{kind}: the best member {one[0]:.1f} / {one[1]:.1f}; the other lamps themselves "
            f"{others[0]:.1f} / {others[1]:.1f}, with Ra {others[2]:.1f} / {others[3]:.1f}"
        )
    for kind in FITTED:
        with_own = judged(kind, False, past=own_spectrum)
        lines.append(
            f"{kind}, an earlier spectrum: {with_own.off(0.5):.1f} / {with_own.off(0.9):.1f}, "
            f"region {100 * with_own.inside:.0f} %"
        )
    return "\n".join(lines)


if __name__ == "__main__":
    if "--measure" not in sys.argv:
        for name, text in files().items():
            (DATA / name).write_text(text, encoding="utf-8")
        load_table.cache_clear()
        _forget()
    print(table())
