"""One text for one piece of plain data, so that its hash means something (RFC 8785, JCS).

The standard library writes the text; only the numbers that Python spells otherwise than
ECMAScript are spelled again. A book hashed on a phone and in a script gives one hash.
"""

from __future__ import annotations

import json
import re
from hashlib import sha256
from typing import Any

from evenkelvin.problem import Problem
from evenkelvin.said import Said

_MAY_DIFFER = re.compile(r"\d(?:\.0|e[+-]?\d+)(?:[,\]}]|\Z)")
_TOKEN = re.compile(r'"[^"\\]*(?:\\.[^"\\]*)*"|-?\d[\d.eE+-]*')


def _as_ecmascript(value: float) -> str:
    """Spell a number as Number::toString of ECMA-262 does, from the same shortest digits."""
    if value == 0.0:
        return "0"
    sign = "-" if value < 0 else ""
    mantissa, _, power = repr(abs(value)).partition("e")
    whole, _, fraction = mantissa.partition(".")
    digits = (whole + fraction).lstrip("0")
    # The value is 0.digits times ten to the n, in the standard's own letters.
    n = len(digits) - len(fraction) + int(power or 0)
    digits = digits.rstrip("0")
    k = len(digits)
    if k <= n <= 21:
        return sign + digits + "0" * (n - k)
    if 0 < n <= 21:
        return f"{sign}{digits[:n]}.{digits[n:]}"
    if -6 < n <= 0:
        return f"{sign}0.{'0' * -n}{digits}"
    point = "." if k > 1 else ""
    return f"{sign}{digits[0]}{point}{digits[1:]}e{n - 1:+d}"


def _respell(token: re.Match[str]) -> str:
    text = token[0]
    if text[0] == '"' or not ("." in text or "e" in text):
        return text
    return _as_ecmascript(float(text))


def _halved(plain: Any) -> str:
    """Return the path of the first text that has half a surrogate pair."""
    if isinstance(plain, str):
        return ""
    inner = plain.items() if isinstance(plain, dict) else enumerate(plain)
    for name, value in inner:
        for part in (name, value):
            try:
                json.dumps(part, ensure_ascii=False).encode("utf-8")
            except UnicodeEncodeError:
                deeper = _halved(value)
                return f"{name}.{deeper}" if deeper else str(name)
    return ""


def canonical(plain: Any) -> str:
    """Return plain data as canonical JSON text (RFC 8785).

    Field names must be ASCII (the standard sorts them by UTF-16 units, which is the same there)
    and whole numbers within ±2^53, beyond which readers of JSON differ (RFC 7493).

    Raises
    ------
    Problem
        When it holds what JSON or UTF-8 cannot: NaN, infinity, half of a surrogate pair.
    """
    try:
        text = json.dumps(
            plain, sort_keys=True, separators=(",", ":"), ensure_ascii=False, allow_nan=False
        )
        text.encode("utf-8")
    except UnicodeEncodeError:
        raise Problem(
            _halved(plain),
            Said("A text holds half a character, which nothing can show: type it again."),
        ) from None
    except (ValueError, TypeError) as error:
        raise Problem(
            "", Said("This cannot be written as JSON: {reason}.", reason=str(error))
        ) from None
    return _TOKEN.sub(_respell, text) if _MAY_DIFFER.search(text) else text


def digest(text: str) -> str:
    """Return the SHA-256 of a text in UTF-8, as 64 hexadecimal digits (FIPS 180-4)."""
    return sha256(text.encode("utf-8")).hexdigest()
