"""What a file or a text is, so that it goes through the right door.

``{"ask": "recognise", "bytes_base64": the first bytes of a file | "text": …}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.fields import Fields
from evenkelvin.interchange.kinds import HEAD, recognise, recognise_text
from evenkelvin.requests.file import FILE, read_base64
from evenkelvin.said import Said
from evenkelvin.shapes import Group

FIELDS: Group = {name: FILE[name] for name in ("bytes_base64", "text")}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``door``: "book", "link" and "codes" are brought in as a book, "light" as
    readings or spectra, "none" not at all; then ``what`` it is, and a ``message`` with what to
    do."""
    fields.refuse_unknown("ask", *FIELDS)
    if fields.given("text"):
        kind = recognise_text(fields.text("text", longest=2 * HEAD))
    else:
        kind = recognise(read_base64(fields, 2 * HEAD))
    message = None
    if kind.what is not None and kind.do is not None:
        message = Said("This file is {what}; {do}.", what=kind.what, do=kind.do)
    return {"door": kind.door, "what": kind.what, "message": message}
