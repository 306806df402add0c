"""What stands between a light and its target, as the plain data that several asks answer with."""

from __future__ import annotations

from typing import Any

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.lights.fixing import HUNGRY_STOPS, Landing, Offset, offset_words, pack_words
from evenkelvin.replies.plain import number, white
from evenkelvin.said import Said


def offset_plain(offset: Offset, from_white: bool = True) -> dict[str, Any]:
    """Return an offset, in numbers and in words (see :func:`offset_words`)."""
    return {
        "mired": offset.mired,
        "duv": offset.duv,
        "delta_uv": offset.delta_uv,
        "steps": offset.steps,
        "words": offset_words(offset, from_white),
    }


def landing_plain(landing: Landing) -> dict[str, Any]:
    """Return a pack on a light."""
    warnings = []
    if landing.stops_lost > HUNGRY_STOPS:
        warnings.append(
            Said(
                "This pack eats {stops_lost:.1f} stops; a lamp of the right colour may be the "
                "better tool.",
                stops_lost=landing.stops_lost,
            )
        )
    lands = white(landing.xy, (landing.cct_k, landing.duv))
    region = landing.region
    lands["cct_spread_K"] = [number(value) for value in landing.cct_spread_k]
    lands["duv_spread"] = list(landing.duv_spread)
    lands["region"] = {
        "mean": region.mean.tolist(),
        "edge": region.edge.tolist(),
    }
    return {
        "gels": [gel.name for gel in landing.gels],
        "add": [gel.name for gel in landing.add],
        "take_off": [gel.name for gel in landing.take_off],
        "words": pack_words(landing.gels),
        "work": landing.work,
        "lands": lands,
        "delta_uv": landing.delta_uv,
        "steps": landing.delta_uv / STEP_UV,
        "steps_spread": list(region.steps(xy_to_uv_prime(landing.target_xy))),
        "verdict": landing.verdict,
        "odds": landing.odds,
        "promise": landing.promise,
        "stops_lost": landing.stops_lost,
        "stops_spread": list(region.stops(landing.stops_lost)),
        "pieces": landing.pieces,
        "warnings": warnings,
    }
