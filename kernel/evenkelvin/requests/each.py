"""Many of a kind in one question: what is wrong with one does not keep the others waiting."""

from __future__ import annotations

from collections.abc import Callable
from typing import TypeVar

from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.said import Said

_T = TypeVar("_T")


def read_each(groups: list[Fields], read: Callable[[Fields], _T]) -> list[_T | Problem]:
    """Return what each group says, or what is wrong with it, its field named within the group."""

    def one(group: Fields) -> _T | Problem:
        try:
            return read(group)
        except Problem as problem:
            within = problem.field.removeprefix(group.path).removeprefix(".")
            return Problem(within, problem.message, problem.line, problem.choices)

    return [one(group) for group in groups]


def name_of(group: Fields, index: int) -> str:
    """Return the name of one light, even where the rest of it cannot be used."""
    raw = group.raw("name")
    if raw is None and isinstance(group.raw("reading"), dict):
        raw = group.group("reading").raw("name")
    return raw[:200] if isinstance(raw, str) else Said("light {n}", n=index + 1)
