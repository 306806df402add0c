"""The kit: named gels, nominal until a person replaces them by measured ones.

The built-in gels are physics, not anybody's sheet. A conversion gel is the ideal converter
exp(−c2·ΔM/λ), saturating softly at the passing end because no gel passes more than its clear
base; green and magenta are smooth absorption bands of the stated CC density; a neutral gel is
flat. What each does is computed from its curve, never added up in mired.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from functools import cache

import numpy as np

from evenkelvin.colorimetry.illuminant import C2_NM_K
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Family, Gel
from evenkelvin.said import Said

NOTE = Said(
    "These gels are nominal: computed from physics under their trade names. Real "
    "ones differ by make, batch and age; measure yours and they take over."
)

#: Cut, nominal conversion in mired and CC of green correction (common practice, no source).
CUTS: dict[str, tuple[float, float]] = {
    "full": (131.0, 30.0),
    "3/4": (98.0, 22.5),
    "1/2": (64.0, 15.0),
    "1/4": (34.0, 7.5),
    "1/8": (20.0, 3.5),
}
#: The exponents in mired, cut by cut, that make a converter shift its black body by just the
#: nominal conversion: saturation eats a little of the ideal exponent. Solved for beforehand,
#: because they are the same for everyone; a test proves each of them.
_WARM_EXPONENTS = (
    134.56927626323412,
    101.61639747924781,
    68.06083189028367,
    38.69533433208226,
    24.73186840555382,
)
_COOL_EXPONENTS = (
    -131.943432480496,
    -99.13992631120487,
    -65.40106830503969,
    -36.24106215281424,
    -22.98452678130219,
)
#: How far a real gel as deep as a half cut or deeper may be from the nominal one (1 σ of its curve;
#: common practice, no source).
NOMINAL_SCATTER = 0.08
NEUTRALS = (0.15, 0.3, 0.45, 0.6, 0.9, 1.2)
CC_STEPS = (5.0, 10.0, 20.0, 40.0)

#: Transmittance of the clear base: two surfaces of a polymer film of index 1.6.
_CLEAR = 0.9
#: Where a conversion gel saturates, in nm, and how sharply.
_SATURATES_WARM, _SATURATES_COOL, _SHARPNESS = 650.0, 430.0, 12.0
#: Centre and half-width in nm of the band that magenta absorbs and green passes.
_BAND_CENTRE, _BAND_WIDTH = 550.0, 60.0
#: Black bodies on which the nominal shift is stated.
_DAYLIGHT_K, _TUNGSTEN_K, BETWEEN_K = 5500.0, 3200.0, 4300.0
#: CC of green that makes straw out of full amber: straw lands a little to the green.
_STRAW_CC = 6.0


@cache
def green_density() -> Floats:
    """Return the density over the grid, shape (81,), of a green band of density 1 (CC100)."""
    return 1.0 - np.exp(-(((GRID - _BAND_CENTRE) / _BAND_WIDTH) ** 2))


def cc_transmittance(cc: float | Floats) -> Floats:
    """Return the transmittance of CC green (positive) or magenta (negative), without base.

    Of one density its shape is (81,); of several, (n, 1), it is (n, 81).
    """
    density = np.where(np.asarray(cc) >= 0.0, green_density(), 1.0 - green_density())
    return np.asarray(10.0 ** (-np.abs(cc) / 100.0 * density))


def _converter(mireds: Floats) -> Floats:
    """Return transmittances (n, 81) of converters with these exponents in mired, of one sign."""
    edge = _SATURATES_WARM if mireds[0] > 0 else _SATURATES_COOL
    exponent = -C2_NM_K * 1e-6 * mireds[:, np.newaxis] * (1.0 / GRID - 1.0 / edge)
    return np.asarray(_CLEAR * (1.0 + np.exp(-_SHARPNESS * exponent)) ** (-1.0 / _SHARPNESS))


@cache
def nominal_kit() -> tuple[Gel, ...]:
    """Return the built-in gels."""
    gels: list[Gel] = []
    shifts = np.array([shift for shift, _ in CUTS.values()])
    warm, cool = _converter(np.array(_WARM_EXPONENTS)), _converter(np.array(_COOL_EXPONENTS))
    # Straw is amber with a little green; the green is scaled with the cut.
    straw = [
        curve * cc_transmittance(_STRAW_CC * share)
        for curve, share in zip(warm, shifts / shifts[0], strict=True)
    ]
    conversions: list[tuple[str, Family, Sequence[Floats], float]] = [
        ("CTO", "conversion", list(warm), _DAYLIGHT_K),
        ("CTS", "straw", straw, _DAYLIGHT_K),
        ("CTB", "conversion", list(cool), _TUNGSTEN_K),
    ]
    for trade, family, curves, reference in conversions:
        for cut, curve in zip(CUTS, curves, strict=True):
            gels.append(Gel(f"{cut} {trade}", family, curve, reference, cut))
    for trade, sign in (("plus green", 1.0), ("minus green", -1.0)):
        for cut, (_, cc) in CUTS.items():
            curve = _CLEAR * cc_transmittance(sign * cc)
            gels.append(Gel(f"{cut} {trade}", "green", curve, BETWEEN_K, cut, sign * cc))
    for density in NEUTRALS:
        curve = np.full(GRID.shape, 10.0**-density)
        gels.append(Gel(f"ND {density:g}", "neutral", curve, BETWEEN_K))
    for colour, sign in (("green", 1.0), ("magenta", -1.0)):
        for cc in CC_STEPS:
            curve = _CLEAR * cc_transmittance(sign * cc)
            gels.append(Gel(f"CC{cc:02g} {colour}", "cc", curve, BETWEEN_K, None, sign * cc))
    # How deep a colour is: the scatter of its density over the grid. A lighter cut has less of
    # the same dye, so that it can be off by less; neutral gels have none.
    depths = np.std(np.log([gel.transmittance for gel in gels]), axis=1)
    half = depths[[gel.name for gel in gels].index("1/2 CTO")]
    return tuple(
        replace(gel, scatter=float(NOMINAL_SCATTER * min(1.0, depth / half)))
        for gel, depth in zip(gels, depths, strict=True)
    )
