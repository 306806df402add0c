"""A book's file: read from its text or from plain data, checked, and written.

It is brought up to the present version of ``data/book.schema.json`` and held as entries sorted
by id.
"""

from __future__ import annotations

import json
from functools import cache
from typing import Any

from evenkelvin.book.canonical import canonical
from evenkelvin.book.entries import (
    ABOVE,
    FORMAT,
    KIND_WORDS,
    VERSION,
    Book,
    Entry,
    Plain,
    book_hash,
    merge,
    moment,
)
from evenkelvin.book.migrations import HINT, migrate
from evenkelvin.book.schema import Check, Flaw, compile_schema
from evenkelvin.data import load_text
from evenkelvin.nesting import brackets_beyond
from evenkelvin.problem import Problem
from evenkelvin.said import Said, joined

#: Limits beyond those that the schema states.
MOST_CHARACTERS = 64_000_000
DEEPEST = 8


def parse_json(text: str, path: str = "text", longest: int = MOST_CHARACTERS) -> Any:
    """Return what a JSON text holds (RFC 8259), refusing what is too long or too deep.

    Raises
    ------
    Problem
        With the line where the text stops being JSON.
    """
    if len(text) > longest:
        raise Problem(
            path,
            Said(
                "The text has {count} characters; at most {longest} fit.",
                count=len(text),
                longest=longest,
            ),
        )
    text = text.removeprefix("\ufeff")
    if not text.strip():
        raise Problem(path, Said("There is nothing in it. {hint}", hint=HINT))
    brackets = brackets_beyond(text, DEEPEST)
    # A few left over may be a text that was cut; the reader can tell, and go no deeper than that.
    if brackets > 100:
        raise _too_deep(path)

    def refuse(word: str) -> float:
        raise Problem(path, Said("It holds {word}, which is not a number in JSON.", word=word))

    try:
        plain = json.loads(text, parse_constant=refuse)
    except json.JSONDecodeError as error:
        cut = error.pos >= len(text.rstrip()) or error.msg.startswith("Unterminated")
        what = (
            Said("It ends too early: it was cut on the way")
            if cut
            else Said("It is not JSON: {reason}", reason=error.msg)
        )
        raise Problem(
            path,
            Said("{what} (line {line}). {hint}", what=what, line=error.lineno, hint=HINT),
            error.lineno,
        ) from None
    except ValueError:
        raise Problem(
            path, Said("It holds a number with thousands of digits. {hint}", hint=HINT)
        ) from None
    if brackets:
        raise _too_deep(path)
    return plain


def _too_deep(path: str) -> Problem:
    return Problem(
        path, Said("It is nested more than {deepest} deep. {hint}", deepest=DEEPEST, hint=HINT)
    )


@cache
def _schema_check() -> Check:
    return compile_schema(json.loads(load_text("book.schema.json")))


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
        raise Problem(path, Said("This is not a book of Evenkelvin. {hint}", hint=HINT))
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
            raise Problem(
                where, Said("Entry {n}: {message}", n=index + 1, message=problem.message)
            ) from None
    merged = merge(entries)
    warnings = list(merged.warnings)
    stated = current.get("sha256")
    # Entries that a migration changed have another hash than those that were written.
    as_written = entries is plain.get("entries")
    if as_written and stated is not None and stated != book_hash(merged.entries):
        warnings.append(
            Said(
                "The book was changed after it was written: its contents do not give the hash "
                "that it states. Compare it with the place it came from."
            )
        )
    return Book(merged.entries, None if found == VERSION else found, tuple(warnings))


def _deeper(value: Any, most: int) -> bool:
    if not isinstance(value, (dict, list)):
        return False
    inner = value.values() if isinstance(value, dict) else value
    return most == 0 or any(_deeper(item, most - 1) for item in inner)


def _flaw_words(plain: Plain, flaw: Flaw) -> Said:
    if len(flaw.path) < 2 or not isinstance(flaw.path[1], int):
        where = Said("The field {field}", field=flaw.path[0]) if flaw.path else Said("The book")
        return Said("{where} {flaw}. {hint}", where=where, flaw=flaw.message, hint=HINT)
    entry = plain["entries"][flaw.path[1]]
    kind = entry.get("thing") if isinstance(entry, dict) else None
    where = Said("Entry {n}", n=flaw.path[1] + 1)
    if isinstance(kind, str) and kind in ABOVE:
        where = Said("{entry} (a {kind})", entry=where, kind=KIND_WORDS[kind])
    inner = ".".join(map(str, flaw.path[2:]))
    if inner:
        where = joined([where, inner])
    return Said("{where}: {flaw}.", where=where, flaw=flaw.message)


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
