"""Light and lengths in both of their units, and sizes as said."""

from __future__ import annotations

from evenkelvin.requests.units import (
    M_PER_IN,
)


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


def both(value: float, name: str, units: tuple[tuple[str, float], ...]) -> dict[str, float]:
    """Return a quantity in both of its units, by field name."""
    return {f"{name}_{unit}": value / size for unit, size in units}
