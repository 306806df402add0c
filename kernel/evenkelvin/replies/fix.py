"""What stands between a light and its target, as the plain data that several asks answer with."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_prime_to_uv, xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.colorimetry.temperature import uv_to_cct
from evenkelvin.data import Floats
from evenkelvin.lights.fixing import HUNGRY_STOPS, Landing, Offset, offset_words, pack_words
from evenkelvin.replies.plain import white
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
    return landings_plain([landing])[0]


def landings_plain(landings: Sequence[Landing]) -> list[dict[str, Any]]:
    """Return each of some packs, on a light or on several."""
    if not landings:
        return []
    # The mean and the edge of every region at once: one CCT costs nearly as much as a hundred.
    points = np.stack([np.vstack([one.region.mean, one.region.edge]) for one in landings])
    whites = uv_to_cct(uv_prime_to_uv(points.reshape(-1, 2))).reshape(len(landings), -1, 2)
    return [_landing_plain(one, of) for one, of in zip(landings, whites, strict=True)]


def _landing_plain(landing: Landing, whites: Floats) -> dict[str, Any]:
    warnings = []
    if landing.stops_lost > HUNGRY_STOPS:
        warnings.append(
            Said(
                "These gels eat {stops_lost:.1f} stops; a lamp of the right colour may be the "
                "better tool.",
                stops_lost=landing.stops_lost,
            )
        )
    cct, duv = whites.T
    lands = white(landing.xy, (float(cct[0]), float(duv[0])))
    region = landing.region
    known = cct[np.isfinite(cct)]
    lands["cct_spread_K"] = [float(known.min()), float(known.max())] if len(known) else [None, None]
    lands["duv_spread"] = [float(duv.min()), float(duv.max())]
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
