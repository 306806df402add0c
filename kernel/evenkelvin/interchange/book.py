"""The book: an append-only log of things (production, location, setup, light, reading, gel).

An entry is never changed. It names in ``after`` the entries that it replaces, so the present
state of a thing is its *heads*: the entries that no other replaces. Edited in two places, a thing
has two heads, and both are kept. Two books merge by the union of their entries.

A measured gel is a thing of its own that belongs to nothing: what hangs it says so by its id, so
that a reading keeps the gel it was taken through, whatever another phone has under that name.

A book is read from its file's text or from plain data, brought up to the present version of
``data/book.schema.json``, and held as entries sorted by id.
"""

from __future__ import annotations

import base64
import json
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime
from functools import cache, cached_property
from hashlib import sha256
from typing import Any

from evenkelvin.data import load_text
from evenkelvin.interchange.canonical import canonical, digest
from evenkelvin.interchange.schema import Check, Flaw, compile_schema
from evenkelvin.nesting import brackets_beyond
from evenkelvin.problem import Problem

Entry = dict[str, Any]
Plain = dict[str, Any]

FORMAT = "evenkelvin-book"
VERSION = 2
#: Limits beyond those that the schema states.
MOST_CHARACTERS = 64_000_000
MOST_ENTRIES = 200_000
DEEPEST = 8
#: Each kind of thing and the kind that it belongs to, from the top.
ABOVE: dict[str, str | None] = {
    "production": None,
    "location": "production",
    "setup": "location",
    "light": "setup",
    "reading": "light",
    "gel": None,
}
#: What brings a book of an earlier version to the next one, by the earlier version's number.
MIGRATIONS: dict[int, Callable[[Plain], Plain]] = {
    # Version 1 had no gels of its own; every book of it is one of version 2.
    1: lambda plain: plain,
}

_HINT = "Open the file that Evenkelvin exported, or export it again where it came from."


@dataclass(frozen=True)
class Book:
    """Entries sorted by id, and what was noticed while they were read."""

    entries: tuple[Entry, ...]
    migrated_from: int | None = None
    warnings: tuple[str, ...] = ()


@dataclass(frozen=True)
class Thing:
    """One thing of the book: what it is, its id and its heads, the oldest first."""

    kind: str
    id: str
    heads: tuple[Entry, ...]

    @property
    def present(self) -> Entry:
        """Its latest head."""
        return self.heads[-1]

    @property
    def gone(self) -> bool:
        """Whether every head says that it was deleted."""
        return all(head.get("gone", False) for head in self.heads)

    @property
    def name(self) -> str:
        """Its name, or its kind where it has none."""
        return str(self.present["data"].get("name") or f"unnamed {self.kind}")


# ------------------------------------------------------------------------------- reading in


def parse_json(text: str, path: str = "text", longest: int = MOST_CHARACTERS) -> Any:
    """Return what a JSON text holds (RFC 8259), refusing what is too long or too deep.

    Raises
    ------
    Problem
        With the line where the text stops being JSON.
    """
    if len(text) > longest:
        raise Problem(path, f"The text has {len(text)} characters; at most {longest} fit.")
    text = text.removeprefix("\ufeff")
    if not text.strip():
        raise Problem(path, "There is nothing in it. " + _HINT)
    brackets = brackets_beyond(text, DEEPEST)
    # A few left over may be a text that was cut; the reader can tell, and go no deeper than that.
    if brackets > 100:
        raise _too_deep(path)

    def refuse(word: str) -> float:
        raise Problem(path, f"It holds {word}, which is not a number in JSON.")

    try:
        plain = json.loads(text, parse_constant=refuse)
    except json.JSONDecodeError as error:
        cut = error.pos >= len(text.rstrip()) or error.msg.startswith("Unterminated")
        what = "It ends too early: it was cut on the way" if cut else f"It is not JSON: {error.msg}"
        raise Problem(path, f"{what} (line {error.lineno}). {_HINT}", error.lineno) from None
    except ValueError:
        raise Problem(path, f"It holds a number with thousands of digits. {_HINT}") from None
    if brackets:
        raise _too_deep(path)
    return plain


def _too_deep(path: str) -> Problem:
    return Problem(path, f"It is nested more than {DEEPEST} deep. {_HINT}")


@cache
def _schema_check() -> Check:
    return compile_schema(json.loads(load_text("book.schema.json")))


def migrate(
    plain: Plain,
    version: int = VERSION,
    steps: Mapping[int, Callable[[Plain], Plain]] | None = None,
) -> Plain:
    """Bring a book of an earlier version up to ``version``, one step after the other.

    Raises
    ------
    Problem
        When it says no version, or comes from a newer Evenkelvin.
    """
    table = MIGRATIONS if steps is None else steps
    found = plain.get("version")
    if isinstance(found, bool) or not isinstance(found, int):
        raise Problem("version", f"This book does not say its version. {_HINT}")
    if found > version:
        raise Problem(
            "version",
            f"This book has version {found}, written by a newer Evenkelvin; this one reads up to "
            f"version {version}. Update the app, then open it again.",
        )
    for step in range(found, version):
        if step not in table:
            raise Problem("version", f"Version {found} of the book was never in use. {_HINT}")
        plain = {**table[step](plain), "version": step + 1}
    return plain


def read_book(raw: object, path: str = "book") -> Book:
    """Return the book in a file's text or in plain data, checked and brought up to date.

    Parameters
    ----------
    raw
        Text of a book's file, or ``{"format", "version", "entries", "count"?, "sha256"?}``.
    path
        Where it stands in the request, for complaints.

    Raises
    ------
    Problem
        At the first thing that is wrong; nothing is then taken over.
    """
    plain = parse_json(raw, path) if isinstance(raw, str) else raw
    if not isinstance(plain, dict) or plain.get("format") != FORMAT:
        raise Problem(path, f"This is not a book of Evenkelvin. {_HINT}")
    found = plain.get("version")
    try:
        current = migrate(plain)
    except Problem as problem:
        raise Problem(f"{path}.{problem.field}", problem.message) from None
    if not isinstance(raw, str) and _deeper(current, DEEPEST):
        raise _too_deep(path)
    try:
        _schema_check()(current)
    except Flaw as flaw:
        where = ".".join(map(str, [path, *flaw.path]))
        raise Problem(where, _flaw_words(current, flaw)) from None
    entries: list[Entry] = current["entries"]
    for index, entry in enumerate(entries):
        try:
            moment(entry["at"])
        except Problem as problem:
            where = f"{path}.entries.{index}.at"
            raise Problem(where, f"Entry {index + 1}: {problem.message}") from None
    merged = merge(entries)
    warnings = list(merged.warnings)
    stated = current.get("sha256")
    # Entries that a migration changed have another hash than those that were written.
    as_written = entries is plain.get("entries")
    if as_written and stated is not None and stated != book_hash(merged.entries):
        warnings.append(
            "The book was changed after it was written: its contents do not give the hash that "
            "it states. Compare it with the place it came from."
        )
    return Book(merged.entries, None if found == VERSION else found, tuple(warnings))


def _deeper(value: Any, most: int) -> bool:
    if not isinstance(value, (dict, list)):
        return False
    inner = value.values() if isinstance(value, dict) else value
    return most == 0 or any(_deeper(item, most - 1) for item in inner)


def _flaw_words(plain: Plain, flaw: Flaw) -> str:
    if len(flaw.path) < 2 or not isinstance(flaw.path[1], int):
        where = f"The field {flaw.path[0]}" if flaw.path else "The book"
        return f"{where} {flaw.message}. {_HINT}"
    entry = plain["entries"][flaw.path[1]]
    kind = entry.get("thing") if isinstance(entry, dict) else None
    where = f"Entry {flaw.path[1] + 1}" + (f" (a {kind})" if kind in ABOVE else "")
    inner = ".".join(map(str, flaw.path[2:]))
    return f"{where}{f', {inner}' if inner else ''}: {flaw.message}."


# ------------------------------------------------------------------------------ writing out


def book_hash(entries: Sequence[Entry]) -> str:
    """Return the SHA-256 of the entries' canonical JSON, sorted by id."""
    return digest(canonical(list(entries)))


def as_plain(book: Book) -> Plain:
    """Return the book as the plain data of its file, with count and hash."""
    return {
        "format": FORMAT,
        "version": VERSION,
        "count": len(book.entries),
        "sha256": book_hash(book.entries),
        "entries": list(book.entries),
    }


def as_text(book: Book) -> str:
    """Return the text of the book's file: canonical JSON, an entry a line."""
    head = {key: value for key, value in as_plain(book).items() if key != "entries"}
    lines = ",\n".join(canonical(entry) for entry in book.entries)
    return f'{canonical(head)[:-1]},"entries":[\n{lines}\n]}}\n'


# ----------------------------------------------------------------------------------- merging


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
            "", f"Together they have {len(kept)} entries; a book holds at most {MOST_ENTRIES}."
        )
    entries = tuple(kept[id_] for id_ in sorted(kept))
    marked = sum("twin" in entry for entry in entries)
    warnings = (
        (f"{marked} entries had the id of another with different content; both are kept.",)
        if marked
        else ()
    )
    return Book(entries, warnings=warnings)


# --------------------------------------------------------------------------- what stands now


class Found(dict[str, dict[str, Thing]]):
    """Every thing by kind and by id."""

    @cached_property
    def inside(self) -> dict[tuple[str, str | None], list[Thing]]:
        """By their kind and what they belong to, those that were not deleted, the oldest first."""
        listed: dict[tuple[str, str | None], list[Thing]] = {}
        for kind, each in self.items():
            for thing in each.values():
                if not thing.gone:
                    listed.setdefault((kind, thing.present["parent"]), []).append(thing)
        for group in listed.values():
            group.sort(key=lambda thing: (moment(thing.heads[0]["at"]), thing.id))
        return listed


def things(entries: Iterable[Entry]) -> Found:
    """Return every thing with its heads, by kind and by id.

    Entries that replace each other in a circle, as only a made-up book has them, all count as
    heads: nothing is hidden.
    """
    listed = list(entries)
    replaced = {id_ for entry in listed for id_ in entry["after"]}
    groups: dict[tuple[str, str], list[Entry]] = {}
    for entry in listed:
        groups.setdefault((entry["thing"], entry["of"]), []).append(entry)
    found = Found({kind: {} for kind in ABOVE})
    for (kind, id_), group in groups.items():
        heads = [entry for entry in group if entry["id"] not in replaced] or group
        heads.sort(key=lambda entry: (moment(entry["at"]), entry["id"]))
        found[kind][id_] = Thing(kind, id_, tuple(heads))
    return found


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
        raise Problem("at", f"“{at[:40]}” is not a date and time with its zone.") from None


def taken_at(entry: Entry) -> str:
    """Return when a reading was taken: an entry that edits one says so in ``read_at``."""
    stated = entry["data"].get("read_at")
    try:
        moment(str(stated))
    except Problem:
        return str(entry["at"])
    return str(stated)


def conflicts(entries: Iterable[Entry]) -> list[Thing]:
    """Return the things that were edited in two places, in the order of their ids."""
    found = [
        thing for kind in things(entries).values() for thing in kind.values() if thing.heads[1:]
    ]
    return sorted(found, key=lambda thing: (list(ABOVE).index(thing.kind), thing.id))


def below(found: Found, kind: str, id_: str) -> list[Thing]:
    """Return what belongs to a thing and was not deleted, the oldest first."""
    lower = next((name for name, above in ABOVE.items() if above == kind), None)
    return list(found.inside.get((lower, id_), ())) if lower else []


def find(found: Mapping[str, Mapping[str, Thing]], id_: str, kinds: Sequence[str]) -> Thing:
    """Return the thing of one of these kinds with this id.

    Raises
    ------
    Problem
        When the book has none.
    """
    for kind in kinds:
        if id_ in found[kind]:
            return found[kind][id_]
    raise Problem("of", f"The book has no {' or '.join(kinds)} with the id “{id_[:40]}”.")


def above(found: Mapping[str, Mapping[str, Thing]], thing: Thing) -> list[Thing]:
    """Return the things that one belongs to, from the top; those not in the book are left out."""
    chain: list[Thing] = []
    kind, id_ = ABOVE[thing.kind], thing.present["parent"]
    while kind is not None and id_ in found[kind]:
        each = found[kind][id_]
        chain.insert(0, each)
        kind, id_ = ABOVE[kind], each.present["parent"]
    return chain


def gel_ids(data: Mapping[str, Any]) -> list[str]:
    """Return the ids of the measured gels that the data of a thing names."""
    planned = data.get("planned")
    plans = [planned] if isinstance(planned, dict) else []
    named = [data.get("gel_ids"), data.get("window_gel_ids"), *(p.get("gel_ids") for p in plans)]
    return [id_ for ids in named for id_ in ids or () if isinstance(id_, str)]


def part_of(entries: Iterable[Entry], id_: str) -> Book:
    """Return a book of one thing as it stands: what it belongs to, itself and all below it, and
    the measured gels that these name.

    Only heads, without the history before them: short enough for a link. It merges with the whole
    book without loss, because the entries are the same.
    """
    found = things(entries)
    thing = find(found, id_, tuple(ABOVE))
    wanted, queue = [*above(found, thing)], [thing]
    while queue:
        each = queue.pop()
        wanted.append(each)
        queue.extend(below(found, each.kind, each.id))
    heads = [head for each in wanted for head in each.heads]
    named = dict.fromkeys(gel for head in heads for gel in gel_ids(head["data"]))
    gels = [found["gel"][gel] for gel in named if gel in found["gel"]]
    return merge(heads, (head for gel in gels for head in gel.heads))


def summary(book: Book) -> Plain:
    """Return count, hash, how many of each thing, and what was edited in two places."""
    found = things(book.entries)
    alive = {kind: sum(not thing.gone for thing in each.values()) for kind, each in found.items()}
    return {
        "version": VERSION,
        "migrated_from": book.migrated_from,
        "count": len(book.entries),
        "sha256": book_hash(book.entries),
        "things": alive,
        "conflicts": [
            {
                "thing": thing.kind,
                "of": thing.id,
                "name": thing.name,
                "heads": [head["id"] for head in thing.heads],
            }
            for thing in conflicts(book.entries)
        ],
        "warnings": list(book.warnings),
    }
