"""How close is close enough, as a question states it."""

from __future__ import annotations

from evenkelvin.fields import Fields
from evenkelvin.lights.tolerance import PRESETS
from evenkelvin.said import Said
from evenkelvin.shapes import Choice, Group, Number, OneOf

_STEPS: Group = {"steps": Number(0.5, 50)}
#: How far a light may be off: a word, or steps.
TOLERANCE: Group = {"tolerance": OneOf((Choice(tuple(PRESETS)), Number(0.5, 50), _STEPS))}


def read_tolerance(fields: Fields) -> float:
    """Return the radius in steps: a preset's name, ``{"steps": n}``, a number, or normal."""
    raw = fields.raw("tolerance")
    if isinstance(raw, str) and raw.strip() and not raw.strip()[0].isdigit():
        return PRESETS[fields.choice("tolerance", tuple(PRESETS))]
    if isinstance(raw, dict):
        group = fields.group("tolerance")
        group.refuse_unknown(*_STEPS)
        return group.number(
            "steps", low=0.5, high=50.0, label=Said("the tolerance in colour steps")
        )
    return fields.number(
        "tolerance", PRESETS["normal"], 0.5, 50.0, Said("the tolerance in colour steps")
    )
