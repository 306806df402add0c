"""The cases of ``tests/book_cases``, which the app's own store runs too (``node --test``).

Each says what entries mean: for a thing its kind, parent, name, heads (the oldest first), whether
it is gone and, where it matters, when it was first written; and what stands below something, the
oldest first. Where ``books`` are given, merging them makes the entries.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest

from evenkelvin.book.entries import merge
from evenkelvin.book.meaning import Found, below, things

FOLDER = Path(__file__).parents[1] / "book_cases"
CASES = [
    (f"{file.stem}: {case['name']}", case)
    for file in sorted(FOLDER.glob("*.json"))
    for case in json.loads(file.read_text(encoding="utf-8"))["cases"]
]


def ids_below(found: Found, parent: str) -> list[str]:
    return [thing.id for kind in ("setup", "light") for thing in below(found, kind, parent)]


@pytest.mark.parametrize("case", [case for _, case in CASES], ids=[name for name, _ in CASES])
def test_a_case_of_the_book(case: dict[str, Any]) -> None:
    entries = case["entries"]
    if "books" in case:
        for books in (case["books"], case["books"][::-1]):
            assert list(merge(*books).entries) == entries
    found = things(entries)
    for id_, expected in case.get("things", {}).items():
        thing = found[expected["kind"]][id_]
        told = {
            "kind": thing.kind,
            "parent": thing.present["parent"],
            "name": thing.present["data"].get("name"),
            "heads": [head["id"] for head in thing.heads],
            "gone": thing.gone,
            "at": thing.at,
        }
        assert {key: told[key] for key in expected} == expected
    for parent, expected in case.get("below", {}).items():
        assert ids_below(found, parent) == expected
