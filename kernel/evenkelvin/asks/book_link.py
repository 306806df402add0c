"""A book, or one thing of it, as a link.

``{"ask": "book_link", "book": text | plain, "of"?: id, "without"?: ["photos" | "position" | "notes"
| "who"…], "kits"?: [ids], "only"?: "hang", "size"?: 900}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.entries import Book
from evenkelvin.book.given import PART, chosen_part
from evenkelvin.book.link import PART_SIZE, SAFE_LINK, codes_for, make_link
from evenkelvin.book.selected import LEAVABLE, copy_without, holds
from evenkelvin.fields import Fields
from evenkelvin.replies.book import book_answer, title_of
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Whole

FIELDS: Group = {**PART, "size": Whole(100, 2900)}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``link`` (goes into the fragment of the app's URL), ``title`` and the summary.

    With ``of``, the link holds what that thing belongs to, itself and all below it, as it stands;
    ``without`` some of it, a copy of its own that never changes the book, and with ``only`` "hang"
    its hang cards. ``size`` is how much it is, in kB and in codes of so many characters; ``takes``
    by how much each of what can be left out makes it longer, 0 where there is none of it.
    """
    fields.refuse_unknown("ask", *FIELDS)
    book = chosen_part(fields)
    part = fields.whole("size", PART_SIZE, 100, 2900)
    link = make_link(book)
    takes = {}
    if fields.given("of") and not fields.given("only"):
        takes = _takes(book, len(link), fields.texts("without"), part)
    answer = {
        "link": link,
        "title": title_of(book),
        "size": _size(len(link), part),
        "takes": takes,
        **book_answer(book, "summary"),
    }
    if len(link) > SAFE_LINK:
        answer["warnings"].append(
            Said(
                "This link has {count} characters; some messengers cut it. Share the file, or "
                "one setup.",
                count=len(link),
            )
        )
    return answer


def _size(characters: int, part: int) -> dict[str, float]:
    return {"kB": characters / 1000.0, "codes": codes_for(characters, part)}


def _takes(book: Book, length: int, left_out: list[str], part: int) -> dict[str, dict[str, float]]:
    """Return how much longer each of what is in it makes the link."""
    found = {}
    for name in LEAVABLE:
        if name in left_out or not holds(book.entries, name):
            continue
        shorter = len(make_link(copy_without(book.entries, [name])))
        codes = codes_for(length, part) - codes_for(shorter, part)
        found[name] = {"kB": max(0, length - shorter) / 1000.0, "codes": max(0, codes)}
    return found
