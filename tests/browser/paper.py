"""What stands where on the pages that a browser prints."""

from __future__ import annotations

from typing import Any

from pypdf import PageObject


def lines_of(sheet: PageObject) -> list[tuple[float, str]]:
    """The lines of a page from the top, each with its height as a part of the page; no margins."""
    found: dict[int, str] = {}

    def take(text: str, matrix: list[float], place: list[float], *_: Any) -> None:
        if text.strip():
            y = place[4] * matrix[1] + place[5] * matrix[3] + matrix[5]
            found[round(y)] = found.get(round(y), "") + text

    sheet.extract_text(visitor_text=take)
    high = float(sheet.mediabox.height)
    lines = [(y / high, text.strip()) for y, text in sorted(found.items(), reverse=True)]
    return [(y, text) for y, text in lines if 0.06 < y < 0.96]
