"""The readings of a book as a table for spreadsheets.

``{"ask": "book_csv", "book": text | plain, "of"?: id, "style"?: "comma" | "semicolon"}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.given import chosen_part
from evenkelvin.book.sheet import COLUMNS, STYLES, write_csv
from evenkelvin.fields import Fields
from evenkelvin.shapes import Checked, Choice, Group, Text

FIELDS: Group = {"book": Checked(), "of": Text(), "style": Choice(tuple(STYLES))}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``text`` (CSV in UTF-8 with its mark, CRLF), its ``columns`` and ``style``.

    "semicolon" writes decimal commas, as spreadsheets of such places read them.
    """
    fields.refuse_unknown("ask", *FIELDS)
    style = fields.choice("style", tuple(STYLES), "comma")
    text = write_csv(chosen_part(fields).entries, style)
    return {"text": text, "columns": list(COLUMNS), "style": style}
