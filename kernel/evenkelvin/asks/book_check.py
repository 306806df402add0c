"""Check a book, bring it up to date, and count it.

``{"ask": "book_check", "book": text | plain, "of"?: id, "without"?: […], "kits"?: [ids],
"give"?: "summary" | "book" | "text" | "slices"}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.given import PART, chosen_part
from evenkelvin.fields import Fields
from evenkelvin.replies.book import book_answer
from evenkelvin.shapes import Choice, Group

FIELDS: Group = {**PART, "give": Choice(("summary", "book", "text", "slices"))}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with what the book holds.

    ``version``, ``migrated_from`` (an earlier version or None), ``count`` of entries, ``sha256``
    of their canonical form, ``things`` (how many of each kind are not deleted), ``conflicts``
    (``{"thing", "of", "name", "heads": [entry ids]}``, edited in two places) and ``warnings``.
    With ``give``, also ``book`` as plain data, ``text`` as its file, or ``slices``, its entries in
    JSON texts of some hundred each, which are quicker read than one; all brought up to date.
    """
    fields.refuse_unknown("ask", *FIELDS)
    give = fields.choice("give", ("summary", "book", "text", "slices"), "summary")
    return book_answer(chosen_part(fields), give)
