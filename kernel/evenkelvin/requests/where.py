"""Angles on the earth and offsets of a clock, as maps, compasses and phones write them."""

from __future__ import annotations

import re
from collections.abc import Callable

from evenkelvin.fields import Fields

_PART = r"(\d+(?:[.,]\d*)?)"
#: Degrees, perhaps minutes and seconds: 42.88 · 42° 52′ 48″.
_ANGLE = re.compile(rf"""{_PART}\s*°?\s*(?:{_PART}\s*['′’]\s*)?(?:{_PART}\s*(?:["″”]|''))?""")
_CLOCK = re.compile(r"(?:UTC|GMT)?\s*([+-]?)\s*(\d{1,2})(?::([0-5]\d))?\s*h?", re.IGNORECASE)
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


def read_latitude(fields: Fields) -> float:
    """Return ``lat_deg``, north positive: ``-42.88``, ``42.88 S``, ``42° 52′ 48″ S``."""
    return _read(fields, "lat_deg", lambda text: _angle(text, "N", "S"), -89.8, 89.8)


def read_longitude(fields: Fields) -> float:
    """Return ``lon_deg``, east positive: ``8.5``, ``8.5 E``, ``147° 20′ W``."""
    return _read(fields, "lon_deg", lambda text: _angle(text, "E", "W"), -180.0, 180.0)


def read_offset(fields: Fields) -> float:
    """Return ``utc_offset_h`` in hours: ``10.5``, ``10:30``, ``UTC-3:30``."""
    return _read(fields, "utc_offset_h", _hours, -12.0, 14.0)


def read_facing(fields: Fields) -> float | None:
    """Return ``facing_deg`` from north by east, None where it is not given: ``45``, ``NE``."""
    if not fields.given("facing_deg"):
        return None
    return _read(fields, "facing_deg", _bearing, 0.0, 360.0)


def _read(
    fields: Fields, name: str, parse: Callable[[str], float | None], low: float, high: float
) -> float:
    raw = fields.raw(name)
    parsed = parse(raw.strip().replace("−", "-")) if isinstance(raw, str) else None
    if parsed is not None:
        fields = Fields({name: parsed}, fields.path)
    return fields.number(name, low=low, high=high)


def _angle(text: str, plus: str, minus: str) -> float | None:
    """Return an angle whose side is named by a letter; None where it is not."""
    # O is east in German.
    upper = text.upper().replace("O", "E") if plus == "E" else text.upper()
    side = next((s for s in (plus, minus) if upper.startswith(s) or upper.endswith(s)), "")
    found = _ANGLE.fullmatch(upper.strip(f"{side} "))
    if not found or not (side or found[2] or found[3]):
        return None
    degrees, minutes, seconds = (float((part or "0").replace(",", ".")) for part in found.groups())
    if minutes >= 60.0 or seconds >= 60.0:
        return None
    whole = degrees + minutes / 60.0 + seconds / 3600.0
    return -whole if side == minus else whole


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
