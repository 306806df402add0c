"""Merge books, losing nothing.

``{"ask": "book_merge", "books": [text | plain …], "give"?: "summary" | "book" | "text"}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.canonical import canonical
from evenkelvin.book.entries import merge
from evenkelvin.book.file import read_book
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.book import book_answer
from evenkelvin.said import Said
from evenkelvin.shapes import Checked, Choice, Group, Many

FIELDS: Group = {"books": Many(Checked()), "give": Choice(("summary", "book", "text"))}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer as ``book_check`` does for the union, the same in whatever order books come.

    ``new`` lists the ids of entries that the first book did not have, ``changed`` those whose
    content under that id is now another (its own lives on as a twin): a store that holds the
    first book puts these two and is done. ``give`` is "book" unless said otherwise.
    """
    fields.refuse_unknown("ask", *FIELDS)
    give = fields.choice("give", ("summary", "book", "text"), "book")
    books = [
        read_book(raw, f"{fields.at('books')}.{index}")
        for index, raw in enumerate(fields.items("books", most=20))
    ]
    if not books:
        raise Problem(fields.at("books"), Said("Name at least one book to merge."))
    merged = merge(*(book.entries for book in books))
    before = {entry["id"]: entry for entry in books[0].entries}
    answer = book_answer(merged, give)
    answer["new"] = [entry["id"] for entry in merged.entries if entry["id"] not in before]
    answer["changed"] = [
        entry["id"]
        for entry in merged.entries
        if entry["id"] in before
        and before[entry["id"]] is not entry
        and canonical(before[entry["id"]]) != canonical(entry)
    ]
    return answer
