"""The book: an append-only log of things (production, location, setup, light, reading, surface,
gel, kit).

An entry is never changed. It names in ``after`` the entries that it replaces. Two books merge by
the union of their entries. What they say now is in :mod:`evenkelvin.book.meaning`.

A measured gel is a thing of its own that belongs to nothing: what hangs it says so by its id, so
that a reading keeps the gel it was taken through, whatever another phone has under that name. A
kit, what a truck carries under a name, belongs to nothing either.
"""

from __future__ import annotations

import base64
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from hashlib import sha256
from typing import Any

from evenkelvin.book.canonical import canonical, digest
from evenkelvin.problem import Problem
from evenkelvin.said import Said

Entry = dict[str, Any]
Plain = dict[str, Any]

FORMAT = "evenkelvin-book"
VERSION = 2
#: Most entries of one book, a limit beyond those that the schema states.
MOST_ENTRIES = 200_000
#: Each kind of thing and the kind that it belongs to, from the top. What newer versions add beside
#: these is kept and handed on, and has no meaning here.
ABOVE: dict[str, str | None] = {
    "production": None,
    "location": "production",
    "setup": "location",
    "light": "setup",
    "reading": "light",
    "surface": "setup",
    "gel": None,
    "kit": None,
}
#: The kinds of things in a sentence.
KIND_WORDS: dict[str, Said] = {
    "production": Said("production"),
    "location": Said("location"),
    "setup": Said("setup"),
    "light": Said("light"),
    "reading": Said("reading"),
    "surface": Said("surface"),
    "gel": Said("gel"),
    "kit": Said("kit"),
}


@dataclass(frozen=True)
class Book:
    """Entries sorted by id, and what was noticed while they were read."""

    entries: tuple[Entry, ...]
    migrated_from: int | None = None
    warnings: tuple[str, ...] = ()


def book_hash(entries: Sequence[Entry]) -> str:
    """Return the SHA-256 of the entries' canonical JSON, sorted by id."""
    return digest(canonical(list(entries)))


def _twin(entry: Entry, text: str) -> Entry:
    """The same entry under an id made from its content, marked with the id that it had."""
    name = sha256(f"{entry['id']}\n{text}".encode()).digest()[:16]
    return {
        **entry,
        "id": base64.urlsafe_b64encode(name).decode("ascii").rstrip("="),
        "twin": entry.get("twin", entry["id"]),
    }


def merge(*books: Iterable[Entry]) -> Book:
    """Return the union of several books' entries.

    Two entries with one id and different contents can only come from a damaged or edited file.
    Both survive: the one whose text sorts first keeps the id, the other gets an id made from its
    content and is marked ``twin``. The result is the same in whatever order and however often
    books are merged.

    Raises
    ------
    Problem
        When the union has more entries than a book can hold.
    """
    kept: dict[str, Entry] = {}
    twins = 0
    waiting = [entry for book in books for entry in book]
    while waiting:
        entry = waiting.pop()
        other = kept.setdefault(entry["id"], entry)
        if other is entry:
            continue
        text, other_text = canonical(entry), canonical(other)
        if text == other_text:
            continue
        if text < other_text:
            kept[entry["id"]] = entry
            entry, text = other, other_text
        waiting.append(_twin(entry, text))
        twins += 1
    if len(kept) > MOST_ENTRIES:
        raise Problem(
            "",
            Said(
                "Together they have {count} entries; a book holds at most {most}.",
                count=len(kept),
                most=MOST_ENTRIES,
            ),
        )
    entries = tuple(kept[id_] for id_ in sorted(kept))
    marked = sum("twin" in entry for entry in entries)
    warnings = (
        (
            Said(
                "{marked} entries had the id of another with different content; both are kept.",
                marked=marked,
            ),
        )
        if marked
        else ()
    )
    return Book(entries, warnings=warnings)


def moment(at: str) -> float:
    """Return a time with its zone as seconds since 1970, so that zones compare (RFC 3339).

    Raises
    ------
    Problem
        When there is no such day, or no zone.
    """
    try:
        when = datetime.fromisoformat(at)
        if when.tzinfo is None:
            raise ValueError("no zone")
        return when.timestamp()
    except (ValueError, OverflowError):
        raise Problem(
            "at", Said("“{at}” is not a date and time with its zone.", at=at[:40])
        ) from None
