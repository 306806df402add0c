"""A date and a time of day as files write them, in many languages."""

from __future__ import annotations

import re
from datetime import date
from typing import NamedTuple

#: How the months begin in English, German, French, Spanish, Italian, Portuguese, Dutch and Polish.
_MONTHS = (
    ("jan", "jän", "ene", "gen", "sty"), ("feb", "fév", "fev", "lut"),
    ("mar", "mär", "maa", "mrt"), ("apr", "avr", "abr", "kwi"), ("may", "mai", "mag", "mei", "maj"),
    ("jun", "juin", "giu", "cze"), ("jul", "juil", "lug", "lip"),
    ("aug", "aoû", "aou", "ago", "sie"), ("sep", "set", "wrz"), ("oct", "okt", "ott", "out", "paź"),
    ("nov", "lis"), ("dec", "dez", "déc", "dic", "gru"),
)  # fmt: skip
_EARLIEST, _LATEST = 1990, 2100

_YEAR_FIRST = re.compile(r"(?<!\d)(\d{4})\s*[-/.年]\s*(\d{1,2})\s*[-/.月]\s*(\d{1,2})(?!\d)\s*日?")
_COMPACT = re.compile(r"(?<!\d)((?:19|20)\d{2})(\d{2})(\d{2})(?=T|\D|$)")
_YEAR_LAST = re.compile(r"(?<!\d)(\d{1,2})\s*([-/.])\s*(\d{1,2})\s*\2\s*(\d{4}|\d{2})(?!\d)")
_WORDED = re.compile(
    r"(?<!\d)(\d{1,2})(?:st|nd|rd|th|er|º|\.)?[\s-]+(?:de\s+)?([^\W\d]{3,12})\.?,?[\s-]+"
    r"(?:de\s+)?(\d{4})(?!\d)"
)
_MONTH_FIRST = re.compile(r"([^\W\d]{3,12})\.?\s+(\d{1,2})(?:st|nd|rd|th)?,?\s+(\d{4})(?!\d)")
_ZONE = r"(?:\s*(Z|UTC|GMT)?\s*([+−-]\d{1,2}(?::?[0-5]\d)?)?(?![\d:]))"
_CLOCK = re.compile(
    r"(?<![\d:])(\d{1,2})\s*(?::|h|時|点|(?<=\d)\.(?=\d\d(?:\D|$)))\s*(\d{2})?\s*"
    r"(?:(?::|m(?:in)?|分|\.)\s*(\d{2})(?:[.,]\d{1,6})?\s*(?:s|秒)?)?\s*(?:分)?"
    r"\s*([ap]\.?\s?m\.?)?\s*(?:uhr|h|hrs?|godz\.?|uur)?" + _ZONE,
    re.IGNORECASE,
)
#: What may stand beside a date and a time: marks, small words and days of the week.
_REST = re.compile(
    r"(\W|\b(t|at|um|à|a|las|alle|às|om|o|godz|uhr|den|am|on|le|el|il|em|op)\b|"
    r"\b(mo|tu|we|th|fr|sa|su|di|mi|do|so|lu|ma|me|je|ve|ju|vi|sá|gi|se|te|qu|wo|vr|za|zo|po|wt|śr|"
    r"cz|pi|ni)[^\W\d]{0,11}\b)*",
    re.IGNORECASE,
)
_TOGETHER = re.compile(r"\b(\d{8})T(\d\d)(\d\d)(\d\d)?", re.IGNORECASE)


class Moment(NamedTuple):
    """A date (2026-11-25), a time of day (17:10:05) and its zone (+10:30), as far as stated.

    ``open`` where day and month could change places.
    """

    date: str | None
    time: str | None
    zone: str | None
    open: bool


def read_moment(text: str, order: str) -> Moment | None:
    """Return what a text says of date and time; None where it is neither, or cannot be.

    Parameters
    ----------
    text
        Such as ``25.11.2026, 17:10 Uhr``.
    order
        ``"day_first"`` or ``"month_first"``: what holds where both could be either (05/06/2026).
    """
    text = _TOGETHER.sub(lambda m: f"{m[1]} {m[2]}:{m[3]}:{m[4] or '00'}", text.strip()[:120])
    told = _date(text, order)
    if told is None:
        day, rest, either = None, text, False
    else:
        day, rest, either = told
        if day is None:
            return None
    clock = _CLOCK.search(rest)
    time = zone = None
    if clock:
        hour, minute, second = (int(part or 0) for part in clock.groups()[:3])
        half = (clock[4] or "").lower()
        if half and not 1 <= hour <= 12:
            return None
        if half:
            hour = hour % 12 + (12 if half[0] == "p" else 0)
        if hour > 23 or minute > 59 or second > 59:
            return None
        time, zone = f"{hour:02d}:{minute:02d}:{second:02d}", _zone(clock[5], clock[6])
        rest = rest[: clock.start()] + " " + rest[clock.end() :]
    if (day is None and time is None) or not _REST.fullmatch(rest.strip()):
        return None
    return Moment(day, time, zone, either)


def read_zone(text: str) -> str | None:
    """Return an offset from UTC, such as ``+10:30``; None where the text is none."""
    found = re.fullmatch(r"\s*(Z|UTC|GMT)?\s*([+−-]\d{1,2}(?::?[0-5]\d)?)?\s*", text, re.IGNORECASE)
    return _zone(found[1], found[2]) if found else None


def _zone(utc: str | None, offset: str | None) -> str | None:
    if offset is None:
        return "+00:00" if utc else None
    sign = "-" if offset[0] in "-−" else "+"
    hours, minutes = int(re.sub(r"\D", "", offset)[:2] or 0), 0
    digits = re.sub(r"\D", "", offset)
    if len(digits) > 2:
        hours, minutes = int(digits[:-2]), int(digits[-2:])
    return f"{sign}{hours:02d}:{minutes:02d}" if hours <= 14 else None


def _date(text: str, order: str) -> tuple[str | None, str, bool] | None:
    """Return the date, what is left of the text, and whether day and month could change places."""

    def left(found: re.Match[str]) -> str:
        return text[: found.start()] + " " + text[found.end() :]

    for pattern in (_YEAR_FIRST, _COMPACT):
        if found := pattern.search(text):
            year, month, day = map(int, found.groups())
            return _day(year, month, day), left(found), False
    if found := _YEAR_LAST.search(text):
        one, two, year = int(found[1]), int(found[3]), int(found[4])
        year += 2000 if year < 100 else 0
        # A point parts day and month in that order wherever it is usual.
        doubtful = found[2] != "." and one <= 12 and two <= 12 and one != two
        month_first = two > 12 or (doubtful and order == "month_first")
        day, month = (two, one) if month_first else (one, two)
        return _day(year, month, day), left(found), doubtful
    if found := _WORDED.search(text):
        return _day(int(found[3]), _month(found[2]), int(found[1])), left(found), False
    if (found := _MONTH_FIRST.search(text)) and _month(found[1]):
        return _day(int(found[3]), _month(found[1]), int(found[2])), left(found), False
    return None


def _month(word: str) -> int:
    """Return the number of a month, 0 where the word is none."""
    name = word.lower()
    return next((n for n, begins in enumerate(_MONTHS, 1) if any(map(name.startswith, begins))), 0)


def _day(year: int, month: int, day: int) -> str | None:
    try:
        found = date(year, month, day)
    except ValueError:
        return None
    return found.isoformat() if _EARLIEST <= year <= _LATEST else None
