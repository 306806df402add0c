"""The balance field: lights about their target, true to scale, in steps.

The plane is u′ v′ turned so that the black-body line through the target runs level: warm to the
left, cool to the right, green up, magenta down. One unit is one step of CIE TN 001:2014, so a
tolerance is a circle.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_to_uv_prime, xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.colorimetry.temperature import HIGHEST_K, cct_to_uv, mired
from evenkelvin.data import Floats

#: A target without a CCT is turned as if it had this one, in K.
_FALLBACK_K = 4000.0


@dataclass(frozen=True, eq=False)
class Frame:
    """Where the field's centre lies in u′ v′, and how it is turned (rows: across, up)."""

    centre: Floats
    turn: Floats


def frame(target_xy: Floats, cct_k: float) -> Frame:
    """Return the frame of the field about a target white."""
    kelvin = cct_k if np.isfinite(cct_k) else _FALLBACK_K
    near = uv_to_uv_prime(cct_to_uv(np.array([kelvin * 0.995, kelvin * 1.005]), np.zeros(2)))
    across = (near[1] - near[0]) / np.hypot(*(near[1] - near[0]))
    # Cool lies to the left in u′ v′; mirrored to the right, green (above the line) stays up.
    up = np.array([across[1], -across[0]])
    return Frame(xy_to_uv_prime(target_xy), np.stack([across, up]) / STEP_UV)


def place(view: Frame, uv_prime: Floats) -> Floats:
    """Return positions (across, up) in steps of u′ v′: (..., 2) to (..., 2)."""
    return np.asarray((uv_prime - view.centre) @ view.turn.T)


def locus(view: Frame, cct_k: float, reach_mired: float = 200.0) -> tuple[Floats, Floats]:
    """Return mireds (n,) and positions (n, 2) of black bodies either side of the target."""
    at = 1e6 / (cct_k if np.isfinite(cct_k) else _FALLBACK_K)
    low = max(at - reach_mired, 1e6 / HIGHEST_K)
    mireds = np.arange(np.ceil(low / 10.0) * 10.0, min(at + reach_mired, 1000.0), 10.0)
    return mireds, place(view, uv_to_uv_prime(cct_to_uv(mired(mireds), np.zeros(len(mireds)))))
