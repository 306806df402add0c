"""From the bytes of a file to its text: which encoding, and is it text at all?"""

from __future__ import annotations

from evenkelvin.interchange.contents import MAX_BYTES
from evenkelvin.problem import Problem
from evenkelvin.said import Said

# Longest first: the UTF-32 mark begins with the UTF-16 one.
_MARKS = (
    (b"\xff\xfe\x00\x00", "utf-32-le"),
    (b"\x00\x00\xfe\xff", "utf-32-be"),
    (b"\xef\xbb\xbf", "utf-8"),
    (b"\xff\xfe", "utf-16-le"),
    (b"\xfe\xff", "utf-16-be"),
)
#: Control characters that no text holds; white space and the end-of-file of old systems aside.
_CONTROLS = frozenset(chr(code) for code in range(32)) - set("\t\n\r\f\v\x1a\x1b")


def decode(raw: bytes) -> str:
    """Return the text of a file: UTF-8, UTF-16 or UTF-32 with or without a mark, else Latin-1.

    Raises
    ------
    Problem
        When the file is empty, too large, or not text.
    """
    if len(raw) > MAX_BYTES:
        raise Problem(
            "",
            Said(
                "The file has {count:.1f} MB; at most {max_bytes:g} MB are read.",
                count=len(raw) / 1e6,
                max_bytes=MAX_BYTES / 1e6,
            ),
        )
    text = decoded(raw)
    if not text.strip():
        raise Problem("", Said("The file is empty."))
    strange = sum(text.count(control) for control in _CONTROLS)
    if strange > 0.01 * len(text):
        raise Problem("", Said("This is not a text file; save the spectra as text, CSV or TM-27."))
    return text


def decoded(raw: bytes) -> str:
    """Return bytes as the text that they most likely are."""
    for mark, encoding in _MARKS:
        if raw.startswith(mark):
            return raw[len(mark) :].decode(encoding, errors="replace")
    # Digits and separators of UTF-16 have a zero for every other byte.
    head = raw[:2000]
    if head[1::2].count(0) > 0.4 * len(head) / 2:
        return raw.decode("utf-16-le", errors="replace")
    if head[0::2].count(0) > 0.4 * len(head) / 2:
        return raw.decode("utf-16-be", errors="replace")
    try:
        return raw.decode("utf-8")
    except UnicodeDecodeError:
        return raw.decode("latin-1")
