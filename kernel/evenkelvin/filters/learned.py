"""A gel learned from two readings of one lamp, bare and gelled, or from its transmittance."""

from __future__ import annotations

from dataclasses import dataclass, field, replace
from itertools import product
from typing import TYPE_CHECKING, Literal

import numpy as np

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime, xyz_to_uv_prime
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.spectrum import Spectrum, on_grid
from evenkelvin.data import Floats
from evenkelvin.filters.gel import FLOOR, Gel, shifts_of
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.filters.scatter import LEARNED_SCATTER
from evenkelvin.problem import Problem
from evenkelvin.said import Said

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: Where a bare lamp gives less than this share of its peak, noise decides the ratio.
NOISE_SHARE = 0.01
#: What the clearest film passes: two surfaces of a polymer of index 1.6 (Fresnel, about 0.9).
CLEAR = 0.9
#: Above this a ratio cannot be a film: the two spectra are not on one scale.
_TOO_CLEAR = 1.05
#: Where a gel matters most, in nm, and the share of it that must be known, and should be.
_CORE = (GRID >= 420.0) & (GRID <= 680.0)
_LEAST_KNOWN, _WELL_KNOWN = 0.5, 0.9
#: How far the two peaks of spectra that were each normalised are apart, as a share.
_SAME_PEAK = 1e-9
#: Weight of slope against curvature in the fill: it runs level about 20 nm beyond what is known.
_LEVELLING = 0.05
#: Black bodies on which a gel of no known lamp states its shift: warming, cooling, neither.
_REFERENCE_K = (5500.0, 3200.0, 4300.0)

Source = Literal["spectra", "shift", "file"]


@dataclass(frozen=True, eq=False)
class Learned:
    """A gel, which of its 81 samples were measured, where it comes from, and what to mind."""

    gel: Gel
    known: NDArray[np.bool_]
    source: Source
    warnings: list[str] = field(default_factory=list)

    def unknown_ranges(self) -> list[list[float]]:
        """Return the ranges of wavelength in nm that were filled in."""
        ranges: list[list[float]] = []
        for nm, known in zip(GRID.tolist(), self.known.tolist(), strict=True):
            if known:
                continue
            if ranges and nm - ranges[-1][1] <= 5.0:
                ranges[-1][1] = nm
            else:
                ranges.append([nm, nm])
        return ranges


def filled(transmittance: Floats, known: NDArray[np.bool_]) -> Floats:
    """Return a transmittance with its unknown samples filled in smoothly.

    Known samples stay. Between them the density has the least curvature; beyond them it runs
    level within some 20 nm.

    Parameters
    ----------
    transmittance
        On the search grid, shape (81,); ignored where unknown.
    known
        Which samples hold, shape (81,); at least one.
    """
    density = np.log(np.clip(transmittance, FLOOR, 1.0))
    slope = np.diff(np.eye(len(GRID)), axis=0)
    curvature = np.diff(slope, axis=0)
    stiffness = curvature.T @ curvature + _LEVELLING * slope.T @ slope
    free = ~known
    density[free] = np.linalg.solve(
        stiffness[np.ix_(free, free)], -stiffness[np.ix_(free, known)] @ density[known]
    )
    return np.asarray(np.clip(np.exp(density), FLOOR, 1.0))


def learn_from_spectra(
    name: str, bare: Spectrum, gelled: Spectrum, passed: float | None, reference_k: float
) -> Learned:
    """Return the gel whose transmittance is the ratio of two spectra of one lamp.

    Parameters
    ----------
    name
        Of the gel.
    bare, gelled
        The lamp without and with it, measured from the same place.
    passed
        Illuminance with the gel over that without. It sets the level; without it the two spectra
        must be on one scale.
    reference_k
        Black body on which the gel's shift will be stated.

    Raises
    ------
    Problem
        When too little of the ratio is known, or it cannot be a gel.
    """
    warnings: list[str] = []
    first, second = on_grid(bare), on_grid(gelled)
    known = first >= NOISE_SHARE * np.max(first)
    for spectrum in (bare, gelled):
        known &= (spectrum.wavelengths[0] <= GRID) & (spectrum.wavelengths[-1] >= GRID)
    _check_known(known, warnings)
    ratio = np.divide(second, first, out=np.ones_like(first), where=known)
    luminous = observer_grid()[:, 1]
    if passed is not None:
        ratio *= passed * float(first @ luminous) / float(second @ luminous)
    peak = float(np.max(ratio[known]))
    one_peak = abs(np.max(second) / np.max(first) - 1.0) <= _SAME_PEAK
    if passed is None and (peak > _TOO_CLEAR or one_peak):
        ratio *= CLEAR / peak
        warnings.append(
            Said(
                "The two spectra are not on one scale, so the stops lost are worked out for a "
                "film that is clear where it passes most. Give the lux of both to know them."
            )
        )
    elif peak > _TOO_CLEAR:
        where = GRID[known][int(np.argmax(ratio[known]))]
        raise Problem(
            "gelled",
            Said(
                "With the gel there is {peak:.3g} times the light at {where:g} nm; a gel "
                "cannot add light. Are the two readings swapped, or was the lamp or the meter "
                "moved?",
                peak=peak,
                where=where,
            ),
        )
    return Learned(_own(name, filled(ratio, known), reference_k), known, "spectra", warnings)


def _check_known(known: NDArray[np.bool_], warnings: list[str]) -> None:
    share = float(np.mean(known[_CORE]))
    if share < _LEAST_KNOWN:
        raise Problem(
            "bare",
            Said(
                "The bare lamp gives enough light at only {share:.0%} of 420–680 nm to tell "
                "what the gel does. Measure it on a lamp with an even spectrum, such as "
                "tungsten or daylight.",
                share=share,
            ),
        )
    if share < _WELL_KNOWN:
        warnings.append(
            Said(
                "Where the lamp gives little light the gel is a guess: trust it on lamps like "
                "this one, and measure it on tungsten or daylight for others."
            )
        )


def _own(name: str, transmittance: Floats, reference_k: float) -> Gel:
    return Gel(name, "own", transmittance, reference_k, nominal=False)


def learn_from_shift(
    name: str, light: Floats, gelled_xy: Floats, passed: float | None, reference_k: float
) -> Learned:
    """Return a gel that moves a light to exactly a chromaticity.

    Many curves do; this is the nearest nominal gel (that of the same name first) or pair of one
    conversion and one green gel, bent by exp(a + b·t + c·t²), t linear in wavelength.

    Parameters
    ----------
    name
        Of the gel.
    light
        Spectrum of the bare lamp on the search grid, shape (81,), or what stands in for it.
    gelled_xy
        x, y with the gel, shape (2,).
    passed
        Illuminance with the gel over that without, or None where not known.
    reference_k
        Black body on which the gel's shift will be stated.

    Raises
    ------
    Problem
        When no curve that passes at most all light does it.
    """
    warnings: list[str] = [
        Said("Learned from a shift, not a spectrum: trust it on lamps like this one.")
    ]
    luminous = light * observer_grid()[:, 1]
    curve = _bent(light, _nearest_nominal(name, light, gelled_xy), gelled_xy)
    for _ in range(20):
        curve *= (
            CLEAR / np.max(curve)
            if passed is None
            else passed * np.sum(luminous) / float(luminous @ curve)
        )
        if np.max(curve) <= 1.0:
            break
        # A film passes all light at most: cut there, and bend the rest to make up for it.
        curve = _bent(light, np.clip(curve, FLOOR, 1.0), gelled_xy)
    if passed is None:
        warnings.append(
            Said(
                "Without the lux of both readings the stops lost are worked out for a film that "
                "is clear where it passes most."
            )
        )
    elif np.max(curve) > 1.0:
        curve /= np.max(curve)
        warnings.append(
            Said(
                "No gel of this colour passes as much light as the two readings say; the most "
                "it could pass is taken. Was the lamp or the meter moved?"
            )
        )
    curve = np.maximum(curve, FLOOR)
    return Learned(
        replace(_own(name, curve, reference_k), scatter=LEARNED_SCATTER),
        np.zeros(len(GRID), bool), "shift", warnings,
    )  # fmt: skip


def _nearest_nominal(name: str, light: Floats, xy: Floats) -> Floats:
    """Return the nominal curve to start from, shape (81,)."""
    kit = nominal_kit()
    same = next((gel for gel in kit if gel.name == name and gel.family != "neutral"), None)
    if same is not None:
        return same.transmittance
    clear = np.full(len(GRID), CLEAR)
    families = {
        family: [clear] + [gel.transmittance for gel in kit if gel.family == family]
        for family in ("conversion", "green")
    }
    pairs = np.stack([a * b / CLEAR for a, b in product(*families.values())])
    uv = xyz_to_uv_prime((pairs * light) @ observer_grid())
    nearest: Floats = pairs[int(np.argmin(np.hypot(*(uv - xy_to_uv_prime(xy)).T)))]
    return nearest


def _bent(light: Floats, curve: Floats, xy: Floats) -> Floats:
    """Bend a curve until a light through it has exactly this x, y."""
    start = light * curve
    bent = bend(start[np.newaxis], xy)
    if not len(bent):
        raise Problem(
            "gelled",
            Said(
                "No gel turns the bare light into the gelled one. Check both readings, and the "
                "lamp type."
            ),
        )
    # The bend is a parabola in the logarithm: where the lamp gives nothing it holds as well.
    lit = start > 1e-9 * np.max(start)
    scaled = (GRID - 560.0) / 200.0
    parabola = np.polynomial.polynomial.polyfit(scaled[lit], np.log(bent[0][lit] / start[lit]), 2)
    exponent = np.polynomial.polynomial.polyval(scaled, parabola)
    return np.asarray(curve * np.exp(np.clip(exponent, -60.0, 60.0)))


def gel_from_transmittance(name: str, measured: Spectrum) -> Learned:
    """Return a gel of a measured transmittance, factors from 0 to 1.

    Raises
    ------
    Problem
        When it passes more than all light, or nothing.
    """
    if np.max(measured.values) > 1.0:
        where = float(measured.wavelengths[int(np.argmax(measured.values))])
        raise Problem(
            "transmittance",
            Said(
                "{name}: the transmittance at {where:g} nm is {np:g}; a gel cannot add light. "
                "Are the values in percent?",
                name=name,
                where=where,
                np=np.max(measured.values),
            ),
        )
    known = (measured.wavelengths[0] <= GRID) & (measured.wavelengths[-1] >= GRID)
    curve = filled(on_grid(measured), known)
    if np.max(curve) <= FLOOR:
        raise Problem("transmittance", Said("{name}: it passes no light.", name=name))
    (shift,) = shifts_of([_own(name, curve, _REFERENCE_K[2])])
    warming, cooling, neither = _REFERENCE_K
    reference = warming if shift.mired > 5.0 else cooling if shift.mired < -5.0 else neither
    return Learned(_own(name, curve, reference), known, "file")
