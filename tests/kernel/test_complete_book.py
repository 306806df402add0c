"""The complete book is complete, and a book."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import complete_book
import evenkelvin
from evenkelvin.desk import answer

SCHEMA = json.loads(
    (Path(evenkelvin.__file__).parent / "data" / "book.schema.json").read_text("utf-8")
)["$defs"]
#: Groups that are fields of a field, by where the book has them.
INNER = {
    "meant": ("light", "meant"),
    "window": ("location", "windows"),
    "colour": ("reading", "target"),
    "dimmed": ("reading", "dimmed"),
    "point": ("surface", "points"),
    "lamp": ("surface", "lamps"),
}


def test_every_field_of_the_format_is_there() -> None:
    held: dict[str, set[str]] = {}
    for entry in complete_book.entries():
        held.setdefault(entry["thing"], set()).update(entry["data"])
        held.setdefault("entry", set()).update(entry)
    for inner, (thing, field) in INNER.items():
        for entry in complete_book.entries():
            group: Any = entry["data"].get(field) if entry["thing"] == thing else None
            for one in group if isinstance(group, list) else [group] if group else []:
                held.setdefault(inner, set()).update(one)
    held["colour"] |= {"spectrum"}  # the target of the pick-up's setup
    for kind in (
        "production",
        "location",
        "setup",
        "light",
        "reading",
        "surface",
        "gel",
        "kit",
        "entry",
        *INNER,
    ):
        assert set(SCHEMA[kind]["properties"]) <= held[kind], kind


def test_it_is_a_book_that_opens_without_complaint() -> None:
    found = answer({"ask": "book_check", "book": complete_book.book()})
    assert "problem" not in found
    assert len(found["warnings"]) == 1  # of the twin that it holds on purpose
    for _, count in found["things"].items():
        assert count > 0
