"""Which format a file is in, told by its content and never by its name."""

from __future__ import annotations

from collections.abc import Mapping

from evenkelvin.interchange.cgats import is_cgats, read_cgats
from evenkelvin.interchange.contents import Contents
from evenkelvin.interchange.cxf import is_cxf, read_cxf
from evenkelvin.interchange.kinds import Kind, recognise, recognise_text
from evenkelvin.interchange.safe_xml import parse
from evenkelvin.interchange.table import read_table
from evenkelvin.interchange.text import decode
from evenkelvin.interchange.tm27 import is_tm27, read_tm27
from evenkelvin.problem import Problem
from evenkelvin.said import Said

#: What is no reading but is brought in as a book.
_BOOKS = {
    "book": Said(
        "This is a book or other JSON, not readings or a spectrum: bring it in as a book."
    ),
    "link": Said("This is a link to a book, not readings or a spectrum: bring it in as a book."),
    "codes": Said(
        "These are codes of a book, not readings or a spectrum: bring them in as a book."
    ),
}


def read_bytes(raw: bytes, choices: Mapping[str, str]) -> Contents:
    """Return what the bytes of a file hold.

    Raises
    ------
    Problem
        When the file as a whole cannot be read; single faults are in ``Contents.problems``.
    """
    _refuse_others(recognise(raw))
    return _read(decode(raw), choices)


def read_text(text: str, choices: Mapping[str, str]) -> Contents:
    """Return what a text holds: XML, keyword text or a table.

    Raises
    ------
    Problem
        As :func:`read_bytes`.
    """
    _refuse_others(recognise_text(text))
    return _read(text, choices)


def _refuse_others(kind: Kind) -> None:
    """Refuse by its own kind what is neither readings nor spectra."""
    if kind.what is not None and kind.do is not None:
        raise Problem("", Said("This file is {what}; {do}.", what=kind.what, do=kind.do))
    if kind.door != "light":
        raise Problem("", _BOOKS[kind.door])


def _read(text: str, choices: Mapping[str, str]) -> Contents:
    if text.lstrip("\ufeff \t\r\n").startswith("<"):
        root = parse(text.lstrip("\ufeff"))
        if is_tm27(root):
            return read_tm27(root, choices)
        if is_cxf(root):
            return read_cxf(root, choices)
        raise Problem(
            "",
            Said(
                "This XML is a “{name}” document; only IES TM-27 and CxF3 (ISO 17972) are read.",
                name=root.name[:40],
            ),
            root.line,
        )
    return read_cgats(text, choices) if is_cgats(text) else read_table(text, choices)
