"""A book, or one thing of it, as a link.

``{"ask": "book_link", "book": text | plain, "of"?: id}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.given import chosen_part
from evenkelvin.book.link import SAFE_LINK, make_link
from evenkelvin.fields import Fields
from evenkelvin.replies.book import book_answer, title_of
from evenkelvin.said import Said
from evenkelvin.shapes import Checked, Group, Text

FIELDS: Group = {"book": Checked(), "of": Text()}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``link`` (goes into the fragment of the app's URL), ``title`` and the summary.

    With ``of``, the link holds what that thing belongs to, itself and all below it, as it stands.
    """
    fields.refuse_unknown("ask", *FIELDS)
    book = chosen_part(fields)
    link = make_link(book)
    answer = {"link": link, "title": title_of(book), **book_answer(book, "summary")}
    if len(link) > SAFE_LINK:
        answer["warnings"].append(
            Said(
                "This link has {count} characters; some messengers cut it. Share the file, or "
                "one setup.",
                count=len(link),
            )
        )
    return answer
