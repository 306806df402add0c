"""The one way in which CSV (RFC 4180) is written: no text in it can run in a spreadsheet."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable

#: First characters that make a spreadsheet take a cell for a formula, wide forms included.
_FORMULA = tuple("=+-@\t\r\n＝＋－＠")


class Figure(str):
    """A number that the kernel has written out: the only cell that may begin with a sign."""

    __slots__ = ()


def defused(text: str) -> str:
    """Return text that no spreadsheet takes for a formula, an apostrophe before it if need be."""
    return f"'{text}" if _could_run(text) else text


def as_typed(text: str) -> str:
    """Return the text that :func:`defused` was given."""
    return text[1:] if text[:1] == "'" and _could_run(text[1:]) else text


def _could_run(text: str) -> bool:
    return text.startswith(_FORMULA) or text.lstrip().startswith(_FORMULA)


def as_csv(rows: Iterable[Iterable[str]], delimiter: str = ",", line_end: str = "\r\n") -> str:
    """Return rows as CSV; every cell that is no :class:`Figure` is defused."""
    text = io.StringIO()
    writer = csv.writer(text, delimiter=delimiter, lineterminator=line_end)
    for row in rows:
        writer.writerow([cell if isinstance(cell, Figure) else defused(cell) for cell in row])
    return text.getvalue()
