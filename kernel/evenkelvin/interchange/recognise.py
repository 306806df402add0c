"""Which format a file is in, told by its content and never by its name."""

from __future__ import annotations

from collections.abc import Mapping

from evenkelvin.interchange.cgats import is_cgats, read_cgats
from evenkelvin.interchange.contents import Contents
from evenkelvin.interchange.cxf import is_cxf, read_cxf
from evenkelvin.interchange.safe_xml import parse
from evenkelvin.interchange.table import read_table
from evenkelvin.interchange.text import decode
from evenkelvin.interchange.tm27 import is_tm27, read_tm27
from evenkelvin.problem import Problem
from evenkelvin.said import Said


def read_bytes(raw: bytes, choices: Mapping[str, str]) -> Contents:
    """Return what the bytes of a file hold.

    Raises
    ------
    Problem
        When the file as a whole cannot be read; single faults are in ``Contents.problems``.
    """
    return read_text(decode(raw), choices)


def read_text(text: str, choices: Mapping[str, str]) -> Contents:
    """Return what a text holds: XML, keyword text or a table.

    Raises
    ------
    Problem
        As :func:`read_bytes`.
    """
    if text.lstrip("\ufeff \t\r\n").startswith("<"):
        root = parse(text.lstrip("\ufeff"))
        if is_tm27(root):
            return read_tm27(root, choices)
        if is_cxf(root):
            return read_cxf(root, choices)
        raise Problem(
            "",
            Said(
                "This XML is a “{name}” document; read are IES TM-27 and CxF3 (ISO 17972).",
                name=root.name[:40],
            ),
            root.line,
        )
    return read_cgats(text, choices) if is_cgats(text) else read_table(text, choices)
