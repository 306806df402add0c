"""What the asks about the book share: reading one from a field, and what they answer of it."""

from __future__ import annotations

from typing import Any

from evenkelvin.book.canonical import canonical
from evenkelvin.book.entries import Book
from evenkelvin.book.file import as_plain, as_text
from evenkelvin.book.meaning import summary, things
from evenkelvin.lights.drift import State
from evenkelvin.lights.reading import LX_PER_FC
from evenkelvin.replies.plain import number
from evenkelvin.said import Said, joined

#: Entries in a slice of a book: a phone reads them without holding its screen up.
_SLICE = 500


def book_answer(book: Book, give: str) -> dict[str, Any]:
    """Return a book's summary, with its plain data, text or slices if that is asked for."""
    answer = summary(book)
    if give == "book":
        answer["book"] = as_plain(book)
    elif give == "text":
        answer["text"] = as_text(book)
    elif give == "slices":
        starts = range(0, len(book.entries), _SLICE)
        answer["slices"] = [canonical(list(book.entries[at : at + _SLICE])) for at in starts]
    return answer


def title_of(book: Book) -> Said:
    """Return what a shared book is about: 'The Night Ferry · Ticket hall · wide'."""
    found = things(book.entries)
    names: list[str] = []
    for kind in ("production", "location", "setup"):
        alive = [thing for thing in found[kind].values() if not thing.gone]
        if len(alive) == 1:
            names.append(alive[0].name)
        elif alive:
            names.append(_several(kind, len(alive)))
            break
    names = names or [kit.name for kit in found["kit"].values() if not kit.gone]
    return joined(names, " · ") if names else Said("an empty book")


def _several(kind: str, count: int) -> Said:
    if kind == "production":
        return Said("{count} productions", count=count)
    if kind == "location":
        return Said("{count} locations", count=count)
    return Said("{count} setups", count=count)


def state_plain(state: State) -> dict[str, Any]:
    """Return a logged reading in numbers, None where it says nothing."""
    x, y = state.xy
    return {
        "x": number(x),
        "y": number(y),
        "cct_K": number(state.cct_k),
        "duv": number(state.duv),
        "mired": number(1e6 / state.cct_k),
        "illuminance_lx": number(state.illuminance_lx),
        "illuminance_fc": number(state.illuminance_lx / LX_PER_FC),
        "exposure_lx_s": number(state.exposure_lx_s),
    }
