"""Words that were read off a meter's display: their numbers, and what labels and units name them.

A label may stand before its number or above it, a unit behind it; either may be misread.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from typing import NamedTuple
from unicodedata import normalize

from evenkelvin.interchange.stated import field_of, word_of

#: The colour figures of a display, and the figures beside them.
COLOURS = ("x", "y", "cct_K", "duv")
AMOUNTS = ("illuminance_lx", "illuminance_fc", "exposure_lx_s")
METRICS = ("ra", "r9", "rf", "rg", "ssi")
#: Green or magenta in CC, which stands for a Duv where none is shown.
TINT = "tint_cc"

_METRIC_LABELS = (
    ("r9", re.compile(r"r\s*9")),
    ("ra", re.compile(r"(cri\s*)?\(?ra\)?|cri")),
    ("rf", re.compile(r"(tm.?30\s*)?rf")),
    ("rg", re.compile(r"(tm.?30\s*)?rg")),
    (TINT, re.compile(r"cc")),
    ("ssi", re.compile(r"ssi(\s*\W?[dtp]?\d*\W?)?")),
)
#: Letters that are digits when they stand among digits.
_LOOK_ALIKES = str.maketrans("OoDQlIi|!ZzSsBgq", "0000111112255899"[:16])
#: Smaller than this share of the numbers' height, or seen worse than this, no number is believed.
_SMALL, _ILL_SEEN = 0.62, 0.1
_NUMBER = re.compile(r"[0-9]*[.,]?[0-9]+")
_LUX = re.compile(r"[l1i|]u?x", re.IGNORECASE)
_LUX_SECONDS = re.compile(r"[l1i|]u?x\W{0,2}s", re.IGNORECASE)


class Word(NamedTuple):
    """What was read in one place."""

    text: str
    #: Left, top, right, bottom; any unit, down is more.
    box: tuple[float, float, float, float] | None = None
    confidence: float = 1.0


@dataclass(frozen=True)
class Number:
    """A number of a display, as it may be meant."""

    text: str
    value: float
    #: Which word it was read in.
    word: int
    #: What was read, where one sign is taken otherwise.
    read: str | None = None

    @property
    def places(self) -> int:
        """Return how many decimals it has."""
        return len(self.text.partition(".")[2])


def in_order(words: Sequence[Word]) -> list[Word]:
    """Return the words row by row, each from left to right; those without a place as they came."""
    if any(word.box is None for word in words):
        return list(words)
    boxes = sorted(words, key=lambda word: (word.box or (0, 0, 0, 0))[1])
    rows: list[list[Word]] = []
    for word in boxes:
        _, top, _, bottom = word.box or (0.0, 0.0, 0.0, 0.0)
        middle = (top + bottom) / 2
        row = next(
            (row for row in rows if any(w.box and w.box[1] < middle < w.box[3] for w in row)), None
        )
        if row is None:
            rows.append([word])
        else:
            row.append(word)
    return [word for row in rows for word in sorted(row, key=lambda w: (w.box or (0,))[0])]


def number_in(word: Word, index: int) -> Number | None:
    """Return the number that a word begins with or holds, plainly written."""
    text = re.sub(r"[−–—~]", "-", normalize("NFKC", word.text).strip())
    # What is left of a nought at the edge.
    text = re.sub(r"^[()\[\]|'‘’\"“”*°]+(?=[.,\d])", "", text)
    text = re.sub(r"(?<=[\d.,])\s+(?=[\d.,])", "", text)
    # A number with its unit, or with its label before a sign that parts them.
    text = re.split(r"[=:]", text)[-1].strip()
    # A label that runs on to its number.
    text = re.sub(r"^[^\W\d_]{3,}\.?\s+(?=[+-]?\d[\d.,]{2,}$)", "", text)
    head = re.match(r"[+-]?\s*[0-9OoDQlIi|!ZzSsBgq.,]+", text)
    if head is None:
        return None
    body = head[0].replace(" ", "")
    rest = text[head.end() :]
    digits = sum(sign in "0123456789" for sign in body)
    if digits < max(1, 0.5 * len(body.strip("+-.,"))) or len(rest.strip()) > 6:
        return None
    unit = re.search(r"(?<=\d)[1lI|i]$", body) if re.match(r"\s*[xX]", rest) else None
    if unit:
        # The l of lx is no digit.
        body = body[:-1]
    body = body.translate(_LOOK_ALIKES).strip(",")
    if re.fullmatch(r"\d{1,3},\d{3}", body):
        body = body.replace(",", "")
    body = body.replace(",", ".")
    if body.count(".") > 1:
        first, _, last = body.rpartition(".")
        body = first.replace(".", "") + "." + last
    body = body.rstrip(".")
    sign = "-" if body.startswith("-") else "+" if body.startswith("+") else ""
    plain = body.lstrip("+-")
    if plain.startswith("."):
        plain = "0" + plain
    if re.fullmatch(r"0\d{3,4}", plain):
        # No number begins so but one whose point was not seen.
        plain = "0." + plain[1:]
    if not _NUMBER.fullmatch(plain):
        return None
    return Number(sign + plain, float(sign + plain), index)


class Labels:
    """Tells what stands beside and above a number."""

    def __init__(self, words: Sequence[Word]) -> None:
        self._words = words
        self._letters = [bool(re.search(r"[^\W\d_]|λ", word.text)) for word in words]
        self._of: dict[int, str] = {}
        tall = sorted(
            w.box[3] - w.box[1] for w in words if w.box and sum(map(str.isdigit, w.text)) >= 3
        )
        #: How tall the numbers are.
        self._tall = tall[len(tall) // 2] if tall else 0.0

    def of(self, number: Number) -> str:
        """Return the field that the label or the unit of a number names, or an empty text."""
        if number.word not in self._of:
            self._of[number.word] = self._find(number)
        return self._of[number.word]

    def by_unit(self, number: Number) -> str:
        """Return the field that the unit of a number names, or an empty text."""
        own = self._words[number.word].text
        after = own[own.rfind(number.text[-1]) + 1 :].strip() if number.text[-1] in own else ""
        units = [after, *(self._words[i].text for i in self._right(number.word))]
        return next((named for unit in units if unit and (named := _named_by_unit(unit))), "")

    def doubts(self, number: Number) -> bool:
        """Tell whether a number is too small among the others, or too ill seen, to be one."""
        word = self._words[number.word]
        small = word.box is not None and word.box[3] - word.box[1] < _SMALL * self._tall
        return small or word.confidence < _ILL_SEEN

    def _find(self, number: Number) -> str:
        if named := self.by_unit(number):
            return named
        own = self._words[number.word].text
        if re.search(r"[=:]", own) and (named := _named(re.split(r"[=:]", own)[0])):
            return named
        for label in [*self._left(number.word), *self._above(number.word)]:
            if named := _named(label):
                return named
        return ""

    def _right(self, index: int) -> list[int]:
        box = self._words[index].box
        if box is None:
            return [index + 1] if index + 1 < len(self._words) else []
        high = box[3] - box[1]
        return [
            other
            for other, word in enumerate(self._words)
            if word.box
            and other != index
            and self._letters[other]
            and -0.2 * high < word.box[0] - box[2] < 0.9 * high
            and word.box[1] < box[3]
            and word.box[3] > box[1] + 0.3 * high
        ]

    def _left(self, index: int) -> list[str]:
        box = self._words[index].box
        if box is None:
            return [self._words[index - 1].text] if index else []
        middle, high = (box[1] + box[3]) / 2, box[3] - box[1]
        beside = [
            (box[0] - word.box[2], other)
            for other, word in enumerate(self._words)
            if word.box
            and other != index
            and word.box[2] <= box[0] + 0.3 * high
            and word.box[1] - 0.2 * high < middle < word.box[3] + 0.35 * high
        ]
        texts: list[str] = []
        for _, other in sorted(beside):
            # Beyond the next number its own label stands.
            if not self._letters[other]:
                break
            texts.insert(0, self._words[other].text)
        return [" ".join(texts), *reversed(texts)] if texts else []

    def _above(self, index: int) -> list[str]:
        box = self._words[index].box
        if box is None:
            return []
        high = box[3] - box[1]
        above = [
            (box[1] - word.box[3], other)
            for other, word in enumerate(self._words)
            if word.box
            and other != index
            and self._letters[other]
            and -0.3 * high < box[1] - word.box[3] < 1.2 * high
            and word.box[0] < box[2]
            and word.box[2] > box[0] - 0.5 * high
        ]
        if not above:
            return []
        near = min(above)[0] + 0.4 * high
        row = sorted((self._words[i].box or (0,))[0:1] + (i,) for gap, i in above if gap <= near)
        texts = [self._words[int(i)].text for _, i in row]
        return [" ".join(texts), *texts]


def _named_by_unit(text: str) -> str:
    unit = text.strip(" .,;()[]")
    if unit in ("K", "°K", "k"):
        return "cct_K"
    if _LUX_SECONDS.fullmatch(unit):
        return "exposure_lx_s"
    if _LUX.fullmatch(unit):
        return "illuminance_lx"
    if unit.lower() in ("fc", "ftcd"):
        return "illuminance_fc"
    return "else" if unit.lower() in ("nm", "ms", "s", "hz", "%", "mired", "mk", "deg") else ""


def _named(text: str) -> str:
    """Return the field that a label names; "else" for one that is known and of no use here."""
    label = word_of(text)
    for name, pattern in _METRIC_LABELS:
        if pattern.fullmatch(label):
            return name
    if re.fullmatch(r"[au]?v?['′’]|u['′’]?|λ\s*p?|peak|tlci|tlmf|gai|cqs|r\d+|time|zeit", label):
        return "else"
    named = field_of(text) or ("illuminance_lx" if label in ("e", "ev") else "")
    if named in ("", *COLOURS, *AMOUNTS):
        return named
    return "else"
