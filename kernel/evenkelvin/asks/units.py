"""``units``: lux and foot-candles, metres and feet, and two lights as a ratio.

Fields: ``illuminance_lx`` or ``illuminance_fc``, ``against_lx`` or ``against_fc`` (the other light
of a ratio), ``distance_m`` or ``distance_ft``; a length in ft may be typed as feet and inches
(``4' 6"``). Answers with both units of what was given.
"""

from __future__ import annotations

from typing import Any

from evenkelvin.exposure import stops
from evenkelvin.field_names import field_name
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.units import both
from evenkelvin.requests.units import (
    LENGTH,
    LENGTH_BOUNDS,
    LIGHT,
    either,
    length_fields,
    light_fields,
)
from evenkelvin.said import Said, chosen
from evenkelvin.shapes import Group

_KINDS = (
    ("illuminance", LIGHT, stops.LIGHT_BOUNDS),
    ("against", LIGHT, stops.LIGHT_BOUNDS),
    ("distance", LENGTH, LENGTH_BOUNDS),
)
FIELDS: Group = {
    **light_fields("illuminance"), **light_fields("against"),
    **length_fields("distance", *LENGTH_BOUNDS),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    fields.refuse_unknown("ask", *FIELDS)
    found: dict[str, float] = {}
    answer: dict[str, Any] = {}
    for name, units, bounds in _KINDS:
        value = either(fields, name, units, bounds)
        if value is not None:
            found[name] = value
            answer |= both(value, name, units)
    if not found:
        raise Problem(
            "illuminance_lx",
            Said(
                "Nothing to convert: give {fields}.",
                fields=chosen(field_name(name) for name in FIELDS),
            ),
        )
    if "against" in found:
        if "illuminance" not in found:
            raise Problem("illuminance_lx", Said("A ratio needs two lights: give both."))
        difference = stops.ratio_stops(found["illuminance"], found["against"])
        answer |= {
            "ratio": found["illuminance"] / found["against"],
            "stops": difference,
            "words": stops.ratio_words(difference),
        }
    return answer
