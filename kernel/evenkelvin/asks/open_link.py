"""What a link holds: ``{"ask": "open_link", "link": text}``, the whole address or its fragment."""

from __future__ import annotations

from typing import Any

from evenkelvin.book.link import LONGEST_LINK, open_link
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.book import book_answer, title_of
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Text

FIELDS: Group = {"link": Text(("#d", "#j"))}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``title``, ``book`` as plain data, and the summary of ``book_check``."""
    fields.refuse_unknown("ask", *FIELDS)
    if not fields.given("link"):
        raise Problem(fields.at("link"), Said("There is no link here: paste the whole address."))
    book = open_link(fields.text("link", longest=2 * LONGEST_LINK))
    return {"title": title_of(book), **book_answer(book, "book")}
