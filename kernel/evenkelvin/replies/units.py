"""Light and lengths in both of their units, and sizes as said."""

from __future__ import annotations

import math

from evenkelvin.requests.units import M_PER_IN

#: A tenth of an inch, in m.
_TENTH = M_PER_IN / 10


def size_words(width: float, along: float, unit: str) -> str:
    """Return a size as said: ``1.22 × 7.62 m``, or in feet and inches ``4′ × 25′``."""
    if unit == "m":
        return f"{_metres(round(width, 3))} × {_metres(round(along, 3))} m"
    return f"{_feet(round(width / _TENTH))} × {_feet(round(along / _TENTH))}"


def piece_words(width: float, along: float, unit: str) -> str:
    """Return the size of a piece to be cut, rounded up: one that is too small leaves a gap."""
    if unit == "m":
        return f"{_metres(_up(width, 1e-3) / 1000)} × {_metres(_up(along, 1e-3) / 1000)} m"
    return f"{_feet(_up(width, _TENTH))} × {_feet(_up(along, _TENTH))}"


def length_words(value: float, unit: str) -> str:
    """Return the length that is needed, rounded up: ``7.62 m`` or ``25′``."""
    return f"{_metres(_up(value, 0.01) / 100)} m" if unit == "m" else _feet(_up(value, _TENTH))


def _up(value: float, step: float) -> int:
    # What is beyond a step by less than a thousandth of it is rounding, no size.
    return math.ceil(value / step - 1e-3)


def _metres(value: float) -> str:
    return f"{value:g}"


def _feet(tenths: int) -> str:
    """Return tenths of an inch in feet and inches."""
    feet, rest = divmod(tenths, 120)
    parts = [f"{feet}′"] if feet else []
    if rest or not feet:
        parts.append(f"{rest / 10:g}″")
    return " ".join(parts)


def both(value: float, name: str, units: tuple[tuple[str, float], ...]) -> dict[str, float]:
    """Return a quantity in both of its units, by field name."""
    return {f"{name}_{unit}": value / size for unit, size in units}
