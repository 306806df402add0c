"""What scanned codes of a series give: ``{"ask": "join_parts", "parts": [text…]}``."""

from __future__ import annotations

from typing import Any

from evenkelvin.book.link import join_parts, open_link
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.book import book_answer, title_of
from evenkelvin.said import Said, joined
from evenkelvin.shapes import Group, Many, Text

FIELDS: Group = {"parts": Many(Text(("p2.1.a.b", "p2.2.a.b")))}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with ``total``, ``have``, ``missing`` (numbers from 1) and ``words``.

    In whatever order and however often codes were scanned. Once nothing is missing, ``link``,
    ``title``, ``book`` and the summary of ``book_check`` are there too.
    """
    fields.refuse_unknown("ask", *FIELDS)
    series = join_parts(fields.texts("parts"))
    answer: dict[str, Any] = {
        "total": series.total,
        "have": list(series.have),
        "missing": list(series.missing),
    }
    if series.link is None:
        answer["words"] = Said(
            "{count} of {total} scanned; still missing: {codes}.",
            count=len(series.have),
            total=series.total,
            codes=joined(series.missing),
        )
        return answer
    try:
        book = open_link(series.link)
    except Problem as problem:
        raise Problem(fields.at("parts"), problem.message) from None
    answer["words"] = Said("All {total} codes are here.", total=series.total)
    return {**answer, "link": series.link, "title": title_of(book), **book_answer(book, "book")}
