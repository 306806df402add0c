"""Light and lengths in both of their units, and sizes as said."""

from __future__ import annotations

import math

from evenkelvin.requests.units import M_PER_IN
from evenkelvin.said import Said, joined

#: A tenth of an inch, in m.
_TENTH = M_PER_IN / 10


def size_words(width: float, along: float, unit: str) -> Said:
    """Return a size as said: ``1.22 × 7.62 m``, or in feet and inches ``4′ × 25′``."""
    if unit == "m":
        return _metres(round(width, 3), round(along, 3))
    return _feet(round(width / _TENTH), round(along / _TENTH))


def piece_words(width: float, along: float, unit: str) -> Said:
    """Return the size of a piece to be cut, rounded up: one that is too small leaves a gap."""
    if unit == "m":
        return _metres(_up(width, 1e-3) / 1000, _up(along, 1e-3) / 1000)
    return _feet(_up(width, _TENTH), _up(along, _TENTH))


def length_words(value: float, unit: str) -> Said:
    """Return the length that is needed, rounded up: ``7.62 m`` or ``25′``."""
    if unit == "m":
        return Said("{length:g} m", length=_up(value, 0.01) / 100)
    return _feet_words(_up(value, _TENTH))


def _up(value: float, step: float) -> int:
    # What is beyond a step by less than a thousandth of it is rounding, no size.
    return math.ceil(value / step - 1e-3)


def _metres(width: float, along: float) -> Said:
    return Said("{width:g} × {along:g} m", width=width, along=along)


def _feet(width: int, along: int) -> Said:
    return joined([_feet_words(width), _feet_words(along)], " × ")


def _feet_words(tenths: int) -> Said:
    """Return tenths of an inch in feet and inches."""
    feet, rest = divmod(tenths, 120)
    parts = [Said("{feet}′", feet=feet)] if feet else []
    if rest or not feet:
        parts.append(Said("{inches:g}″", inches=rest / 10))
    return joined(parts, " ")


def both(value: float, name: str, units: tuple[tuple[str, float], ...]) -> dict[str, float]:
    """Return a quantity in both of its units, by field name."""
    return {f"{name}_{unit}": value / size for unit, size in units}
