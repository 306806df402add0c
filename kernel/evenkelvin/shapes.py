"""What the fields of a question can hold, declared once.

Whoever reads a group of fields refuses by its declaration what does not belong there, and tests
make questions from it: sound ones, nearly sound ones and hostile ones. Which fields must stand
together, and what they mean, is told by the one who reads them.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple


class Number(NamedTuple):
    """A number between usual bounds, typed or sent."""

    low: float
    high: float


class Whole(NamedTuple):
    """A whole number between usual bounds."""

    low: int
    high: int


class Text(NamedTuple):
    """Text, such as one of these."""

    such_as: tuple[str, ...] = ("key",)


class Choice(NamedTuple):
    """One of the known words."""

    known: tuple[str, ...]


class Truth(NamedTuple):
    """True or false."""


class Many(NamedTuple):
    """A list."""

    of: Shape


class ByName(NamedTuple):
    """A group whose names are people's own, such as those of gels."""

    names: tuple[str, ...]
    of: Shape


class OneOf(NamedTuple):
    """What may be stated in several ways."""

    ways: tuple[Shape, ...]


class Checked(NamedTuple):
    """Plain data with a check of its own, such as a book."""


#: A group of named fields.
Group = Mapping[str, "Shape"]
Shape = Number | Whole | Text | Choice | Truth | Many | ByName | OneOf | Checked | Group
