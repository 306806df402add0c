"""A book as a numbered series of short texts, for QR codes.

``{"ask": "book_parts", "book": text | plain, "of"?: id, "without"?: […], "kits"?: [ids],
"only"?: "hang", "size"?: 900}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.given import PART, chosen_part
from evenkelvin.book.link import PART_SIZE, make_link, split_link
from evenkelvin.fields import Fields
from evenkelvin.replies.book import title_of
from evenkelvin.shapes import Group, Whole

FIELDS: Group = {**PART, "size": Whole(100, 2900)}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``parts`` in order, their ``total``, and ``title``.

    One part alone is the link itself. ``size`` is the most characters of a part, 100 to 2900,
    without the address that the app puts before it.
    """
    fields.refuse_unknown("ask", *FIELDS)
    size = fields.whole("size", PART_SIZE, 100, 2900)
    book = chosen_part(fields)
    link = make_link(book)
    parts = [link] if len(link) <= size else split_link(link, size)
    return {"parts": parts, "total": len(parts), "title": title_of(book)}
