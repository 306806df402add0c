"""``units``: lux and foot-candles, metres and feet, and two lights as a ratio.

Fields: ``illuminance_lx`` or ``illuminance_fc``, ``against_lx`` or ``against_fc`` (the other light
of a ratio), ``distance_m`` or ``distance_ft``; a length in ft may be typed as feet and inches
(``4' 6"``). Answers with both units of what was given.
"""

from __future__ import annotations

import re
from typing import Any

from evenkelvin.exposure import stops
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem

#: Field suffix, what the unit is in the first one's measure, for each kind of quantity.
LIGHT = (("lx", 1.0), ("fc", stops.LX_PER_FC))
LENGTH = (("m", 1.0), ("ft", stops.M_PER_FT))
M_PER_IN = stops.M_PER_FT / 12.0
#: Feet and inches as typed: either part may be left out, but a bare number is feet.
_FEET = re.compile(
    r"(?:(?P<feet>\d+(?:[.,]\d+)?)\s*(?:'|′|’|ft))?"
    r"\s*(?:(?P<inches>\d+(?:[.,]\d+)?)\s*(?P<mark>\"|″|”|''|in)?)?"
)

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
    inches = _feet_and_inches(fields, field) if field.endswith("_ft") else None
    if inches is not None and low <= inches * M_PER_IN <= high:
        return inches * M_PER_IN
    return fields.number(field, low=low / size, high=high / size) * size


def length(
    fields: Fields, name: str, low: float, high: float, default: float | None = None
) -> float:
    """Return a length in m, given as ``NAME_m`` or ``NAME_ft``, within bounds in m."""
    value = either(fields, name, LENGTH, (low, high))
    if value is None and default is None:
        raise Problem(fields.at(f"{name}_m"), f"{name}_m (or {name}_ft) is missing.")
    return default if value is None and default is not None else value or 0.0


def length_unit(fields: Fields) -> str:
    """Return the unit in which lengths are said, "m" or "ft"."""
    return fields.choice("length_unit", ("m", "ft"), "m")


def size_words(width: float, along: float, unit: str) -> str:
    """Return a size as said: ``1.22 × 7.62 m``, or in feet and inches ``4′ × 25′``."""
    if unit == "m":
        return f"{_centimetres(width)} × {_centimetres(along)} m"
    return f"{_foot_words(width)} × {_foot_words(along)}"


def length_words(value: float, unit: str) -> str:
    """Return a length as said: ``7.62 m`` or ``25′``."""
    return f"{_centimetres(value)} m" if unit == "m" else _foot_words(value)


def _centimetres(value: float) -> str:
    return f"{round(value, 2):g}"


def _foot_words(value: float) -> str:
    feet, inches = divmod(round(value / M_PER_IN, 1), 12.0)
    parts = [f"{feet:.0f}′"] if feet else []
    if inches or not feet:
        parts.append(f"{round(inches, 1):g}″")
    return " ".join(parts)


def _feet_and_inches(fields: Fields, name: str) -> float | None:
    """Return inches where feet and inches were typed, such as 4' 6" or 18"."""
    raw = fields.raw(name)
    found = _FEET.fullmatch(raw.strip()) if isinstance(raw, str) else None
    if not found or not (found["feet"] or found["mark"]):
        return None
    feet, inches = ((found[part] or "0").replace(",", ".") for part in ("feet", "inches"))
    return float(feet) * 12.0 + float(inches)


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
