"""How close is close enough: a circle in u′ v′, and the words for being in or out of it."""

from __future__ import annotations

from typing import Literal

from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.fields import Fields

Verdict = Literal["holds", "near", "off"]

#: Radius in n-step units of CIE TN 001:2014.
PRESETS: dict[str, float] = {"tight": 2.0, "normal": 4.0, "loose": 7.0}
#: 'near' reaches to this many radii.
NEAR_RADII = 2.0


def read_tolerance(fields: Fields) -> float:
    """Return the radius in steps: a preset's name, ``{"steps": n}``, a number, or normal."""
    raw = fields.raw("tolerance")
    if isinstance(raw, str) and raw.strip() and not raw.strip()[0].isdigit():
        return PRESETS[fields.choice("tolerance", tuple(PRESETS))]
    if isinstance(raw, dict):
        group = fields.group("tolerance")
        group.refuse_unknown("steps")
        return group.number("steps", low=0.5, high=50.0, label="The tolerance in steps")
    return fields.number("tolerance", PRESETS["normal"], 0.5, 50.0, "The tolerance in steps")


def verdict(steps: float, radius: float) -> Verdict:
    """Return 'holds' within the radius, 'near' within twice that, otherwise 'off'."""
    if steps <= radius:
        return "holds"
    return "near" if steps <= NEAR_RADII * radius else "off"


def plain(radius: float) -> dict[str, float]:
    """Return a tolerance as the desk answers it."""
    return {"steps": radius, "radius_uv": radius * STEP_UV}
