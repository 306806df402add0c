"""Light and lengths in either of two units, as a question states them."""

from __future__ import annotations

import re

from evenkelvin.exposure import stops
from evenkelvin.field_names import field_name, only_one_of
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Number, OneOf, Text

#: Field suffix, what the unit is in the first one's measure, for each kind of quantity.
LIGHT = (("lx", 1.0), ("fc", stops.LX_PER_FC))


LENGTH = (("m", 1.0), ("ft", stops.M_PER_FT))


M_PER_IN = stops.M_PER_FT / 12.0


#: Feet and inches as typed: either part may be left out, but a bare number is feet.
_FEET = re.compile(
    r"(?:(?P<feet>\d+(?:[.,]\d+)?)\s*(?:'|′|’|ft))?"
    r"\s*(?:(?P<inches>\d+(?:[.,]\d+)?)\s*(?P<mark>\"|″|”|''|in)?)?"
)


#: Widest bounds within which a distance (m) is taken for real.
LENGTH_BOUNDS = (1e-3, 1e5)


def length_fields(name: str, low: float, high: float) -> Group:
    """Return the fields of a length, in either unit."""
    feet = OneOf((Number(low / stops.M_PER_FT, high / stops.M_PER_FT), Text(("4' 6\"", "54in"))))
    return {f"{name}_m": Number(low, high), f"{name}_ft": feet}


def light_fields(name: str) -> Group:
    """Return the fields of a light, in either unit."""
    low, high = stops.LIGHT_BOUNDS
    return {
        f"{name}_lx": Number(low, high),
        f"{name}_fc": Number(low / stops.LX_PER_FC, high / stops.LX_PER_FC),
    }


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
            fields.at(given[1][0]),
            only_one_of([name for name, _ in given]),
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
        raise Problem(
            fields.at(f"{name}_m"), Said("{Name} is missing.", Name=field_name(f"{name}_m"))
        )
    return default if value is None and default is not None else value or 0.0


def length_unit(fields: Fields) -> str:
    """Return the unit in which lengths are said, "m" or "ft"."""
    return fields.choice("length_unit", ("m", "ft"), "m")


def _feet_and_inches(fields: Fields, name: str) -> float | None:
    """Return inches where feet and inches were typed, such as 4' 6" or 18"."""
    raw = fields.raw(name)
    found = _FEET.fullmatch(raw.strip()) if isinstance(raw, str) else None
    if not found or not (found["feet"] or found["mark"]):
        return None
    feet, inches = ((found[part] or "0").replace(",", ".") for part in ("feet", "inches"))
    return float(feet) * 12.0 + float(inches)
