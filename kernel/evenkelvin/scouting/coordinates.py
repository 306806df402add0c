"""Where a place is on the earth, in any common way of writing it.

Decimal degrees with a sign or a letter, degrees and minutes, degrees, minutes and seconds, the
``geo:`` address of RFC 5870, and ISO 6709 in degrees.
"""

from __future__ import annotations

import re

_NUMBER = r"(\d+(?:[.,]\d+)?)"
#: Degrees, perhaps minutes and seconds, with their marks or white space between them.
_ANGLE = re.compile(
    rf"""([+-]?)\s*{_NUMBER}\s*(?:°\s*)?(?:(?<=[\s°]){_NUMBER}\s*(?:'\s*)?(?:(?<=[\s']){_NUMBER}\s*(?:"\s*)?)?)?"""
)
_MARKS = str.maketrans({"−": "-", "′": "'", "’": "'", "″": '"', "”": '"', "º": "°", "\u00a0": " "})
_WORDS = (
    (re.compile(r"north|nord|norte|noord", re.I), "N"),
    (re.compile(r"south|süd|sud|sur|sul|zuid", re.I), "S"),
    # Before east: "ouest" ends as "est" does.
    (re.compile(r"west|ouest|oeste|ovest", re.I), "W"),
    (re.compile(r"east|ost|oost|este|est|leste", re.I), "E"),
)


def _plain(text: str, o_is_east: bool) -> str:
    text = text.translate(_MARKS).replace("''", '"')
    for word, letter in _WORDS:
        text = word.sub(letter, text)
    text = text.upper().strip()
    return text.replace("O", "E") if o_is_east and not text.startswith("GEO:") else text


def _parts(text: str, plus: str, minus: str) -> tuple[float, int, bool] | None:
    """Return the angle, of how many parts it was written, and whether a letter said its side."""
    side = next((s for s in (plus, minus) if text.startswith(s) or text.endswith(s)), "")
    bare = text.removeprefix(side) if text.startswith(side) else text.removesuffix(side)
    found = _ANGLE.fullmatch(bare.strip()) if bare else None
    if not found or (side and found[1]):
        return None
    written = [part.replace(",", ".") for part in found.groups()[1:] if part is not None]
    # Only the last part may be broken.
    if any("." in part for part in written[:-1]):
        return None
    degrees, minutes, seconds = [*map(float, written), 0.0, 0.0][:3]
    if minutes >= 60.0 or seconds >= 60.0:
        return None
    whole = degrees + minutes / 60.0 + seconds / 3600.0
    return (-whole if side == minus or found[1] == "-" else whole), len(written), bool(side)


def read_angle(text: str, plus: str, minus: str, o_is_east: bool = False) -> float | None:
    """Return an angle in degrees, positive towards the side ``plus``; None where it is none.

    ``42.88 S``, ``-42,88``, ``42° 52′ 48″ S``, ``S 42 52.8``. The letter O is east in German and
    west in French: it is none unless ``o_is_east``.
    """
    found = _parts(_plain(text, o_is_east), plus, minus)
    return found[0] if found else None


def read_position(text: str, o_is_east: bool = False) -> tuple[float, float] | None:
    """Return latitude and longitude in degrees, north and east positive.

    Latitude comes first unless letters say otherwise. None where the text is no position, or could
    be several.
    """
    if len(text) > 120:
        return None
    plain = re.sub(r"^GEO:([^;?]*).*", r"\1", _plain(text, o_is_east)).rstrip("/ ")
    found: list[tuple[bool, tuple[float, float]]] = []
    for place in range(1, len(plain)):
        one, two = plain[:place].rstrip(" ,;/"), plain[place:].lstrip(" ,;/")
        # A break at a separator, after a letter, or before a sign or a letter.
        apart = len(one) + len(two) < len(plain)
        if not (apart or plain[place - 1] in "NSEW" or plain[place] in "+-NSEW"):
            continue
        for first, second, swapped in ((one, two, False), (two, one, True)):
            north, east = _parts(first, "N", "S"), _parts(second, "E", "W")
            if not north or not east or (swapped and not (north[2] and east[2])):
                continue
            where = (north[0], east[0])
            if abs(where[0]) <= 90.0 and abs(where[1]) <= 180.0 and north[2] == east[2]:
                found.append((north[1] == east[1], where))
    alike = {where for same, where in found if same} or {where for _, where in found}
    return alike.pop() if len(alike) == 1 else None
