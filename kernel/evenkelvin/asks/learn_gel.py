"""A gel from two readings of one lamp, or from the shift that it is known to make.

``{"ask": "learn_gel", "bare": R, "gelled": R, "name": "…", "own_gels"?: […]}`` or
``{"ask": "learn_gel", "shift": {"mired", "duv"?, "stops"?, "reference_K"?}, "name": "…"}``
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.illuminant import planck
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.colorimetry.temperature import HIGHEST_K, LARGEST_DUV, LOWEST_K, cct_to_xy
from evenkelvin.fields import Fields
from evenkelvin.filters.learned import learn_from_shift, learn_from_spectra
from evenkelvin.lights.reading import READING_K, Reading
from evenkelvin.problem import Problem
from evenkelvin.replies.gel import learned_plain
from evenkelvin.requests.kit import GEL, OWN_GELS, read_gel_name, read_kit
from evenkelvin.requests.reading import READING, read_reading
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Number

#: How much brighter than bare the gelled reading may seem: meters repeat to about 2 %.
_BRIGHTER = 1.02
#: Black body on which a gel states its shift when the bare lamp has no CCT.
_REFERENCE_K = 4300.0
#: Black bodies on which the trade states warming and cooling gels (common practice, no source).
_DAYLIGHT_K, _TUNGSTEN_K = 5500.0, 3200.0

_SHIFT: Group = {
    "mired": Number(-500, 500), "duv": Number(-0.05, 0.05), "stops": Number(0, 13),
    "reference_K": Number(*READING_K),
}  # fmt: skip
FIELDS: Group = {"bare": READING, "gelled": READING, "shift": _SHIFT, "name": GEL, **OWN_GELS}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the gel, ready for ``own_gels``, and the nominal one of that name beside it.

    Shifts are those on the bare lamp as it was read, or on the black body of ``reference_K``.
    """
    fields.refuse_unknown("ask", *FIELDS)
    name = read_gel_name(fields)
    if fields.given("shift"):
        if fields.given("bare") or fields.given("gelled"):
            raise Problem("shift", Said("Give two readings or a shift, not both."))
        return _from_shift(name, fields.group("shift"))
    kit = read_kit(fields.without("kit"))
    bare = read_reading(fields.group("bare"), kit)
    gelled = read_reading(fields.group("gelled"), kit)
    passed = _passed(bare, gelled)
    reference = float(np.clip(bare.cct_k, *READING_K)) if np.isfinite(bare.cct_k) else _REFERENCE_K
    if bare.spectrum is not None and gelled.spectrum is not None:
        learned = learn_from_spectra(name, bare.spectrum, gelled.spectrum, passed, reference)
    else:
        learned = learn_from_shift(name, bare.spectra[0], gelled.xy, passed, reference)
    answer = learned_plain(learned, bare.spectra[0])
    answer["warnings"] += [*bare.warnings, *(w for w in gelled.warnings if w not in bare.warnings)]
    return answer


def _from_shift(name: str, fields: Fields) -> dict[str, Any]:
    """Return the gel that makes a known shift on a black body."""
    fields.refuse_unknown(*_SHIFT)
    mireds = fields.number("mired", low=-500.0, high=500.0)
    duv = fields.number("duv", 0.0, -LARGEST_DUV, LARGEST_DUV, label="Duv")
    usual = _DAYLIGHT_K if mireds > 0.0 else _TUNGSTEN_K
    reference = fields.number("reference_K", usual, *READING_K)
    landed = 1e6 / reference + mireds
    if not 1e6 / HIGHEST_K <= landed <= 1e6 / LOWEST_K:
        raise Problem(
            fields.at("mired"),
            Said(
                "{mireds:+g} mired takes a light of {reference:g} K beyond any white.",
                mireds=mireds,
                reference=reference,
            ),
        )
    stops = fields.number("stops", low=0.0, high=13.0) if fields.given("stops") else None
    passed = None if stops is None else 2.0**-stops
    # On the grid a black body lands a hair beside its own x y; bending puts it back.
    (light,) = bend(planck(GRID, reference)[np.newaxis], cct_to_xy(reference))
    learned = learn_from_shift(name, light, cct_to_xy(1e6 / landed, duv), passed, reference)
    return learned_plain(learned, light)


def _passed(bare: Reading, gelled: Reading) -> float | None:
    """Return how much of the light passed, where both readings say how much there was."""
    for name in ("illuminance_lx", "exposure_lx_s"):
        without, through = getattr(bare, name), getattr(gelled, name)
        if without is None or through is None:
            continue
        share = float(through / without)
        if share > _BRIGHTER:
            raise Problem(
                f"gelled.{name}",
                Said(
                    "With the gel there is {share:.3g} times the light of the bare lamp. Are the "
                    "two readings swapped, or was the lamp or the meter moved?",
                    share=share,
                ),
            )
        return min(share, 1.0)
    return None
