"""``units``: lux and foot-candles, metres and feet, and two lights as a ratio.

Fields: ``illuminance_lx`` or ``illuminance_fc``, ``against_lx`` or ``against_fc`` (the other light
of a ratio), ``distance_m`` or ``distance_ft``. Answers with both units of what was given.
"""

from __future__ import annotations

from typing import Any

from evenkelvin.exposure import stops
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem

#: Field suffix, what the unit is in the first one's measure, for each kind of quantity.
LIGHT = (("lx", 1.0), ("fc", stops.LX_PER_FC))
LENGTH = (("m", 1.0), ("ft", stops.M_PER_FT))

#: Widest bounds within which a light (lx) or a distance (m) is taken for real.
LIGHT_BOUNDS = (1e-3, 1e7)
LENGTH_BOUNDS = (1e-3, 1e5)


def either(
    fields: Fields,
    name: str,
    units: tuple[tuple[str, float], ...],
    bounds: tuple[float, float],
) -> float | None:
    """Return a quantity given in one of two units, in the first; None where neither is given."""
    given = [(f"{name}_{unit}", size) for unit, size in units if fields.given(f"{name}_{unit}")]
    if not given:
        return None
    if len(given) > 1:
        raise Problem(
            fields.at(given[1][0]), f"Give {given[0][0]} or {given[1][0]}, not both of them."
        )
    field, size = given[0]
    low, high = bounds
    return fields.number(field, low=low / size, high=high / size) * size


def both(value: float, name: str, units: tuple[tuple[str, float], ...]) -> dict[str, float]:
    """Return a quantity in both of its units, by field name."""
    return {f"{name}_{unit}": value / size for unit, size in units}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    kinds = (
        ("illuminance", LIGHT, LIGHT_BOUNDS),
        ("against", LIGHT, LIGHT_BOUNDS),
        ("distance", LENGTH, LENGTH_BOUNDS),
    )
    names = [f"{name}_{unit}" for name, units, _ in kinds for unit, _ in units]
    fields.refuse_unknown("ask", *names)
    found: dict[str, float] = {}
    answer: dict[str, Any] = {}
    for name, units, bounds in kinds:
        value = either(fields, name, units, bounds)
        if value is not None:
            found[name] = value
            answer |= both(value, name, units)
    if not found:
        raise Problem("illuminance_lx", f"Nothing to convert: give one of {', '.join(names)}.")
    if "against" in found:
        if "illuminance" not in found:
            raise Problem("illuminance_lx", "A ratio needs two lights: illuminance and against.")
        difference = stops.ratio_stops(found["illuminance"], found["against"])
        answer |= {
            "ratio": found["illuminance"] / found["against"],
            "stops": difference,
            "words": stops.ratio_words(difference),
        }
    return answer
