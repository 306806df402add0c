"""The same light now against then: what changed in warmth, tint and amount."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import delta_uv_prime
from evenkelvin.data import Floats
from evenkelvin.lights.fixing import Offset
from evenkelvin.lights.tint import NO_TINT, tint_words
from evenkelvin.said import Said, joined


@dataclass(frozen=True, eq=False)
class State:
    """A light at one time: x y (NaN where unknown), CCT, Duv, lx and lx·s (NaN likewise)."""

    xy: Floats
    cct_k: float
    duv: float
    illuminance_lx: float
    exposure_lx_s: float


def drift(now: State, then: State) -> Offset | None:
    """Return how far a light has moved; None where one of the two has no colour."""
    if not (np.isfinite(now.xy).all() and np.isfinite(then.xy).all()):
        return None
    mireds = 1e6 / now.cct_k - 1e6 / then.cct_k
    apart = float(delta_uv_prime(xy_to_uv_prime(now.xy), xy_to_uv_prime(then.xy)))
    x, y = now.xy - then.xy
    return Offset(
        float(mireds) if np.isfinite(mireds) else None,
        now.duv - then.duv,
        apart,
        (float(x), float(y)),
    )


def stops_since(now: State, then: State) -> float | None:
    """Return how many stops brighter it has become; None where it cannot be told."""
    for mine, other in (
        (now.illuminance_lx, then.illuminance_lx),
        (now.exposure_lx_s, then.exposure_lx_s),
    ):
        if np.isfinite(mine) and np.isfinite(other):
            return float(np.log2(mine / other))
    return None


def _amount_words(stops: float) -> Said:
    size = abs(stops)
    if stops > 0:
        one, many = (
            Said("{size:.1f} stop brighter", size=size),
            Said("{size:.1f} stops brighter", size=size),
        )
    else:
        one, many = (
            Said("{size:.1f} stop darker", size=size),
            Said("{size:.1f} stops darker", size=size),
        )
    return one if size < 1.05 else many


def drift_words(moved: Offset | None, stops: float | None) -> Said:
    """Return a drift as people say it: '12 mired warmer, a hair green, 0.3 stop darker'."""
    words: list[Said] = []
    if moved is not None:
        if moved.mired is not None and abs(moved.mired) >= 0.5:
            words.append(
                Said("{mired:.0f} mired warmer", mired=moved.mired)
                if moved.mired > 0
                else Said("{mired:.0f} mired cooler", mired=-moved.mired)
            )
        tint = tint_words(moved.duv)
        if tint != NO_TINT:
            words.append(Said("{tint} by comparison", tint=tint))
        if not words:
            words.append(Said("same colour"))
    if stops is not None:
        if abs(stops) < 0.05:
            words.append(Said("same amount of light"))
        else:
            words.append(_amount_words(stops))
    return joined(words) if words else Said("nothing to compare")
