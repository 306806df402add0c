"""Angles on the earth and offsets of a clock, as maps, compasses and phones write them."""

from __future__ import annotations

import re
from collections.abc import Callable
from datetime import date

from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.said import Said
from evenkelvin.scouting.coordinates import read_angle, read_position
from evenkelvin.scouting.sun import Place, Window
from evenkelvin.shapes import Group, Many, Number, OneOf, Text

_CLOCK = re.compile(r"(?:UTC|GMT)?\s*([+-]?)\s*(\d{1,2})(?::([0-5]\d))?\s*h?", re.IGNORECASE)
_BEARING = OneOf((Number(0, 360), Text(("NE",))))
_HORIZON_POINT: Group = {"azimuth_deg": _BEARING, "altitude_deg": Number(0, 89)}
#: A place, a day there and its clock.
DAY: Group = {
    "lat_deg": OneOf((Number(-89.8, 89.8), Text(("42.88 S", "53.5N")))),
    "lon_deg": OneOf((Number(-180, 180), Text(("9.9 E",)))),
    "date": Text(("2026-10-27", "2026-06-21")),
    "utc_offset_h": OneOf((Number(-12, 14), Text(("10:30",)))),
}
#: A window's view: where it looks, and what stands before it.
VIEW: Group = {
    "facing_deg": _BEARING,
    "horizon_deg": Number(0, 80),
    "horizon": Many(_HORIZON_POINT),
}
#: Points of the line of what stands before a window.
MOST_POINTS = 72
#: The sixteen points of the compass, from north by east.
_POINTS = (
    "N", "NNE", "NE", "ENE", "E", "ESE", "SE", "SSE", "S", "SSW", "SW", "WSW",
    "W", "WNW", "NW", "NNW",
)  # fmt: skip
#: Their names in the app's languages.
_NAMES = (
    ("north", "N"), ("nord", "N"), ("south", "S"), ("süd", "S"), ("east", "E"), ("ost", "E"),
    ("west", "W"),
)  # fmt: skip


def read_place(fields: Fields) -> tuple[float, float]:
    """Return ``lat_deg`` and ``lon_deg``, north and east positive.

    Each as ``-42.88``, ``42.88 S``, ``42° 52′ 48″ S``; or both in ``lat_deg``, as a map gives them:
    ``42.88 S, 147.33 E``, whatever ``lon_deg`` was before.
    """
    both = fields.raw("lat_deg")
    if isinstance(both, str) and read_angle(both, "N", "S") is None:
        where = read_position(both, o_is_east=True)
        if where is not None:
            fields = Fields({"lat_deg": where[0], "lon_deg": where[1]}, fields.path)
    return (
        _read(fields, "lat_deg", lambda text: read_angle(text, "N", "S"), -89.8, 89.8),
        _read(fields, "lon_deg", lambda text: read_angle(text, "E", "W", True), -180.0, 180.0),
    )


def read_offset(fields: Fields) -> float:
    """Return ``utc_offset_h`` in hours: ``10.5``, ``10:30``, ``UTC-3:30``."""
    return _read(fields, "utc_offset_h", _hours, -12.0, 14.0)


def read_day(fields: Fields) -> tuple[Place, date]:
    """Return the place with its clock, and the day: ``date`` as year-month-day."""
    return Place(*read_place(fields), read_offset(fields)), _date(fields)


def read_facing(fields: Fields) -> float | None:
    """Return ``facing_deg`` from north by east, None where it is not given: ``45``, ``NE``."""
    if not fields.given("facing_deg"):
        return None
    return _read(fields, "facing_deg", _bearing, 0.0, 360.0)


def read_view(fields: Fields) -> Window | None:
    """Return where a window looks and what stands before it; None where it faces nowhere yet."""
    facing = read_facing(fields)
    level = fields.number("horizon_deg", 0.0, 0.0, 80.0)
    points = []
    for group in fields.groups("horizon", most=MOST_POINTS):
        group.refuse_unknown(*_HORIZON_POINT)
        azimuth = _read(group, "azimuth_deg", _bearing, 0.0, 360.0)
        points.append((azimuth, group.number("altitude_deg", low=0.0, high=89.0)))
    if facing is None:
        return None
    if not points and level > 0.0:
        points = [(facing, level)]
    return Window(facing, tuple(points))


def _read(
    fields: Fields, name: str, parse: Callable[[str], float | None], low: float, high: float
) -> float:
    raw = fields.raw(name)
    parsed = parse(raw.strip().replace("−", "-")) if isinstance(raw, str) else None
    if parsed is not None:
        fields = Fields({name: parsed}, fields.path)
    return fields.number(name, low=low, high=high)


def _hours(text: str) -> float | None:
    found = _CLOCK.fullmatch(text)
    if not found:
        return None
    sign, hours, minutes = found.groups()
    whole = int(hours) + int(minutes or 0) / 60.0
    return -whole if sign == "-" else whole


def _bearing(text: str) -> float | None:
    point = text.lower()
    for name, letter in _NAMES:
        point = point.replace(name, letter)
    point = re.sub(r"[\s-]", "", point).upper().replace("O", "E")
    return 22.5 * _POINTS.index(point) if point in _POINTS else None


def _date(fields: Fields) -> date:
    typed = fields.text("date", longest=40).strip()
    try:
        if len(typed) != 10:
            raise ValueError
        when = date.fromisoformat(typed)
    except ValueError:
        raise Problem(
            fields.at("date"),
            Said(
                "“{typed}” is not a date here. Type year-month-day, such as 2026-11-25.",
                typed=typed[:24],
            ),
        ) from None
    if not 1950 <= when.year <= 2100:
        raise Problem(fields.at("date"), Said("The sun is computed from 1950 to 2100 only."))
    return when
