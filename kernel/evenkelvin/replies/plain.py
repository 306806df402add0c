"""Kernel values as the plain data that several asks answer with."""

from __future__ import annotations

import math
from typing import Any

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.lights.tint import cut_words


def number(value: float) -> float | None:
    """Return a number, or None where there is none (JSON has no NaN)."""
    return float(value) if math.isfinite(value) else None


def white(xy: Floats, known: tuple[float, float] | None = None) -> dict[str, Any]:
    """Return a chromaticity in every coordinate that people use.

    ``known`` is its CCT and Duv, where they have been found already.
    """
    u_prime, v_prime = xy_to_uv_prime(xy)
    cct, duv = known or xy_to_cct(xy)
    return {
        "x": float(xy[0]),
        "y": float(xy[1]),
        "u_prime": float(u_prime),
        "v_prime": float(v_prime),
        "cct_K": number(cct),
        "duv": duv,
        "mired": number(1e6 / cct),
    }


def to_dial(xy: Floats) -> dict[str, Any]:
    """Return a white in the three ways that lamps take it: x y, CCT, and green in cuts."""
    cct, duv = xy_to_cct(xy)
    return {
        "x": float(xy[0]),
        "y": float(xy[1]),
        "cct_K": number(cct),
        "duv": float(duv),
        "green": cut_words(float(cct), float(duv)),
    }


def tolerance_plain(radius: float) -> dict[str, float]:
    """Return a tolerance as the desk answers it."""
    return {"steps": radius, "radius_uv": radius * STEP_UV}
