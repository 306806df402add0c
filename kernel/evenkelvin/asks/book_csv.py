"""The readings of a book, or the points of one surface, as a table for spreadsheets.

``{"ask": "book_csv", "book": text | plain, "of"?: id, "without"?: […], "kits"?: [ids],
"style"?: "comma" | "semicolon"}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.given import PART, book_field, chosen_part
from evenkelvin.book.meaning import things
from evenkelvin.book.sheet import COLUMNS, STYLES, write_csv, write_surface_csv
from evenkelvin.fields import Fields
from evenkelvin.shapes import Choice, Group

FIELDS: Group = {**PART, "style": Choice(tuple(STYLES))}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``text`` (CSV in UTF-8 with its mark, CRLF), its ``columns`` and ``style``.

    With a surface as ``of`` it holds that surface's points. "semicolon" writes decimal commas, as
    spreadsheets of such places read them.
    """
    fields.refuse_unknown("ask", *FIELDS)
    style = fields.choice("style", tuple(STYLES), "comma")
    part = chosen_part(fields).entries
    # The points of a surface hold nothing that could be left out.
    surface = things(book_field(fields).entries)["surface"].get(fields.text("of", ""))
    if surface is not None:
        columns, text = write_surface_csv(surface, style)
        return {"text": text, "columns": columns, "style": style}
    return {"text": write_csv(part, style), "columns": list(COLUMNS), "style": style}
