"""What a file or a text is, told by how it begins: each goes through one door, or is refused."""

from __future__ import annotations

import re
from typing import Literal, NamedTuple

from evenkelvin.interchange.text import decoded
from evenkelvin.said import Said

#: What is brought in as a book, as readings or spectra, or not at all.
Door = Literal["book", "link", "codes", "light", "none"]

#: So many bytes tell what a file is.
HEAD = 4096
_SAVE = Said("save the numbers as CSV or text")
_PICTURE = Said("a picture")
_FILM = Said("a film or a sound recording")
_ARCHIVE = Said("an archive or a spreadsheet workbook")
#: First bytes (and where they stand), what has them, and what to do.
_MAGIC: tuple[tuple[int, bytes, Said, Said], ...] = (
    (0, b"\xff\xd8\xff", _PICTURE, _SAVE),
    (0, b"\x89PNG", _PICTURE, _SAVE),
    (0, b"GIF8", _PICTURE, _SAVE),
    (0, b"II*\x00", _PICTURE, _SAVE),
    (0, b"MM\x00*", _PICTURE, _SAVE),
    (8, b"WEBP", _PICTURE, _SAVE),
    (4, b"ftyphei", _PICTURE, _SAVE),
    (4, b"ftypmif1", _PICTURE, _SAVE),
    (4, b"ftypavif", _PICTURE, _SAVE),
    (4, b"ftyp", _FILM, _SAVE),
    (8, b"WAVE", _FILM, _SAVE),
    (0, b"ID3", _FILM, _SAVE),
    (0, b"OggS", _FILM, _SAVE),
    (0, b"%PDF", Said("a PDF"), _SAVE),
    (0, b"PK\x03\x04", _ARCHIVE, Said("save the sheet as CSV")),
    (0, b"\xd0\xcf\x11\xe0", Said("an old spreadsheet workbook"), Said("save the sheet as CSV")),
    (0, b"\x1f\x8b", Said("compressed"), Said("unpack it first")),
    (0, b"{\\rtf", Said("a formatted document"), Said("save it as plain text")),
)
_PAGE = re.compile(r"<(!doctype\s+html|html|head|body)\b", re.IGNORECASE)
_CODES = re.compile(r"\S{0,300}?\bp\d\d?\.\d\d?\.[\w-]{8}\.[\w-]")
_LINK = re.compile(r"\S{0,2000}#copy=\S*|[zdj][\w-]{24,}", re.ASCII)


class Kind(NamedTuple):
    """Where a file belongs; ``what`` it is and what to do, where it belongs nowhere."""

    door: Door
    what: Said | None = None
    do: Said | None = None


def recognise(raw: bytes) -> Kind:
    """Return what a file is by its first :data:`HEAD` bytes."""
    for place, mark, what, do in _MAGIC:
        if raw[place : place + len(mark)] == mark:
            return Kind("none", what, do)
    return recognise_text(decoded(raw[:HEAD]))


def recognise_text(text: str) -> Kind:
    """Return what a text is by how it begins."""
    head = text[:HEAD].lstrip("\ufeff \t\r\n")
    if not head:
        return Kind("none", Said("empty"), Said("choose another"))
    if head.startswith("{"):
        return Kind("book")
    if _PAGE.match(head):
        return Kind("none", Said("a web page"), Said("save the data that it shows, not the page"))
    if head.startswith("<svg"):
        return Kind("none", _PICTURE, _SAVE)
    if _CODES.match(head):
        return Kind("codes")
    if _LINK.fullmatch(head.strip()) or (len(head) == HEAD and _LINK.match(head)):
        return Kind("link")
    return Kind("light")
