"""What a meter's display shows, from the words that were read off its picture.

Reading a picture errs by single signs. Colour checks itself: x y, CCT and Duv of one light must
agree, so of every way of taking the numbers the one that agrees is right, and a digit that was
misread is found by it. What agrees with nothing is told apart by its label, its unit and its form,
and is never called sure.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, field
from typing import Literal, NamedTuple

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv
from evenkelvin.colorimetry.temperature import uv_to_cct
from evenkelvin.data import Floats
from evenkelvin.interchange.display_words import (
    AMOUNTS,
    COLOURS,
    METRICS,
    TINT,
    Labels,
    Number,
    Word,
    number_in,
)

#: How far a reading is to be trusted: figures agree with one another; they do once one sign is
#: read otherwise; they nearly do; nothing on the display checks them; they contradict.
Sure = Literal["agrees", "mended", "nearly", "unchecked", "contradicts"]

#: Where a number of each kind lies, and how many decimals it has.
_RANGES = {
    "x": (0.15, 0.70), "y": (0.15, 0.70), "cct_K": (1000.0, 50_000.0), "duv": (-0.05, 0.05),
    "illuminance_lx": (0.01, 300_000.0), "illuminance_fc": (0.001, 30_000.0),
    "exposure_lx_s": (0.01, 100_000.0), "ra": (0.0, 100.0), "r9": (-200.0, 100.0),
    "rf": (0.0, 100.0), "rg": (40.0, 160.0), "ssi": (0.0, 100.0),
    TINT: (-100.0, 100.0),
}  # fmt: skip
#: What a digit is taken for when it was not well seen.
_MISREAD = {
    "0": "8695", "1": "74", "2": "73", "3": "852", "4": "91", "5": "6398", "6": "850", "7": "12",
    "8": "03695", "9": "48053",
}  # fmt: skip
#: By how much CCTs of published methods may differ, as a share, and by how much they never do.
_SAME_CCT, _NEAR_CCT = 1e-4, 6e-3
_SAME_DUV, _NEAR_DUV = 1e-5, 6e-4

#: A Duv that is left open by more agrees with too many lights to prove x y alone: x y of three
#: digits leave it open by 0.0003 to 0.0006, of four by 0.0001.
_TELLING_DUV = 2e-4
#: A number that nothing names or checks is a CCT only where lights mostly are.
_LIKELY_K = (1600.0, 15_000.0)
#: A display shows fewer; of more chromaticities none is mended, as too much would agree by chance.
_MOST_NUMBERS, _MOST_MENDED = 60, 12


@dataclass
class Displayed:
    """One way of taking what a display shows."""

    sure: Sure
    numbers: dict[str, Number] = field(default_factory=dict)
    #: The fields that agree with one another.
    agreeing: tuple[str, ...] = ()
    #: By how many K and how much Duv the figures differ.
    off: tuple[float, float] = (0.0, 0.0)

    @property
    def key(self) -> tuple[tuple[str, float], ...]:
        """Return what it says, to tell ways that say the same."""
        return tuple(sorted((name, number.value) for name, number in self.numbers.items()))


def read_display(words: Sequence[Word]) -> list[Displayed]:
    """Return the ways of taking the words of a display, the likeliest first.

    Parameters
    ----------
    words
        At most some hundred, in any order.

    Returns
    -------
    list
        Empty where there is no x y, no CCT and no level. Several where figures can be mended in
        several ways, or contradict: then it is for the person to say.
    """
    numbers = [found for index, word in enumerate(words) if (found := number_in(word, index))]
    numbers = numbers[:_MOST_NUMBERS]
    labels = Labels(words)
    beside = _amounts(numbers, labels)
    used = {number.word for number in beside.values()}
    free = [number for number in numbers if number.word not in used]
    ways = _colours(free, labels)
    for way in ways:
        taken = {number.word for number in way.numbers.values()}
        way.numbers |= {name: n for name, n in beside.items() if n.word not in taken}
    if not ways and any(name in beside for name in AMOUNTS):
        return [Displayed("unchecked", beside)]
    return ways


def _amounts(numbers: Sequence[Number], labels: Labels) -> dict[str, Number]:
    """Return the figures that their labels or units name, other than those of colour."""
    found: dict[str, Number] = {}
    # A unit says more than a label near by.
    for number in sorted(numbers, key=lambda number: not labels.by_unit(number)):
        name = labels.of(number)
        if name not in (*AMOUNTS, *METRICS, TINT) or name in found:
            continue
        low, high = _RANGES[name]
        # No level and no index looks like x or y, whatever label stands nearest, and what is left
        # of a letter is smaller than the numbers.
        if _is_chromaticity(number) or labels.doubts(number):
            continue
        if low <= number.value <= high:
            found[name] = number
    amounts = [name for name in AMOUNTS if name in found]
    for more in amounts[1:]:
        del found[more]
    return found


# ---------------------------------------------------------------------------------------- colours


def _is_chromaticity(number: Number) -> bool:
    return number.places >= 3 and 0.15 <= number.value <= 0.70


def _is_cct(number: Number) -> bool:
    low, high = _RANGES["cct_K"]
    return number.places == 0 and number.text[0] not in "+-" and low <= number.value <= high


def _is_duv(number: Number) -> bool:
    return number.places >= 3 and abs(number.value) <= 0.05


def _colours(numbers: Sequence[Number], labels: Labels) -> list[Displayed]:
    """Return the ways of taking the colour figures, the likeliest first."""
    plain = _by_kind(numbers, labels, [[number] for number in numbers])
    ways = _agreeing(plain, labels, "agrees")
    if ways:
        return ways[:1]
    # A label that was misread, or that stands nearer to another number, hides nothing that agrees.
    ways = _agreeing(_by_form(numbers), labels, "agrees")
    if len(_different([way for way in ways if len(way.agreeing) == len(ways[0].agreeing)])) == 1:
        return ways[:1]
    if len(plain["xy"]) > _MOST_MENDED:
        return _alone(plain, labels)
    varied = _by_kind(numbers, labels, [[number, *_mended(number)] for number in numbers])
    if mended := _agreeing(varied, labels, "mended"):
        best = _rank(mended[0], labels)
        alike = [way for way in mended if _rank(way, labels)[:2] == best[:2]]
        return _different(alike)[:4]
    if near := _agreeing(plain, labels, "nearly"):
        return near[:1]
    return _alone(plain, labels)


_Kinds = dict[str, list[Number]]


def _by_kind(
    numbers: Sequence[Number], labels: Labels, forms: Iterable[Sequence[Number]]
) -> _Kinds:
    """Return the numbers that could be a chromaticity, a CCT or a Duv."""
    kinds: _Kinds = {"xy": [], "cct_K": [], "duv": []}
    for number, ways in zip(numbers, forms, strict=True):
        label = labels.of(number)
        for way in ways:
            if _is_chromaticity(way) and label not in ("cct_K", "duv", "else"):
                kinds["xy"].append(way)
            if _is_cct(way) and label not in ("x", "y", "duv", *METRICS, "else"):
                kinds["cct_K"].append(way)
            if _is_duv(way) and label not in ("x", "y", "cct_K"):
                kinds["duv"].append(way)
    # What is named a CCT leaves no other number to be one.
    for kind in ("cct_K", "duv"):
        named = [number for number in kinds[kind] if labels.of(number) == kind]
        kinds[kind] = named or [n for n in kinds[kind] if labels.of(n) in ("", kind)]
    return kinds


def _by_form(numbers: Sequence[Number]) -> _Kinds:
    """Return the numbers by what they look like, whatever stands beside them."""
    return {
        "xy": [number for number in numbers if _is_chromaticity(number)],
        "cct_K": [number for number in numbers if _is_cct(number)],
        "duv": [number for number in numbers if _is_duv(number)],
    }


def _mended(number: Number) -> Iterator[Number]:
    """Yield the number with one sign read otherwise, or its point put back."""
    sign = number.text[: len(number.text) - len(number.text.lstrip("+-"))]
    plain = number.text.lstrip("+-")

    def as_number(text: str) -> Number:
        return Number(text, float(text), number.word, number.text)

    digits = plain.replace(".", "")
    if "." not in plain:
        if len(plain) == 4:
            yield as_number(f"{sign}0.{plain}")
    elif len(digits) == 5 and not plain.startswith("0."):
        yield as_number(f"{sign}0.{digits[1:]}")
    if sign == "" and abs(number.value) < 0.05 and number.places >= 3:
        yield as_number(f"-{plain}")
    for place, digit in enumerate(plain):
        if digit == ".":
            continue
        for other in _MISREAD[digit]:
            if place == 0 and (other == "0") and "." not in plain:
                continue
            yield as_number(f"{sign}{plain[:place]}{other}{plain[place + 1 :]}")


class _Pairs(NamedTuple):
    """Every two numbers that could be x and y, with the CCT and Duv that they have."""

    x: list[Number]
    y: list[Number]
    cct: Floats
    duv: Floats
    #: By how much rounding leaves each open.
    cct_open: Floats
    duv_open: Floats


def _pairs(numbers: Sequence[Number]) -> _Pairs:
    # A display gives both to the same digit: where they differ, one has lost its last.
    two = [
        (one, other)
        for one in numbers
        for other in numbers
        if one.word != other.word
        and one.places == other.places
        and not (one.read and other.read)
        and one.value + other.value < 1
    ]
    if not two:
        none = np.empty(0)
        return _Pairs([], [], none, none, none, none)
    xy = np.array([[one.value, other.value] for one, other in two])
    half = np.array([[0.5 * 10.0**-one.places, 0.5 * 10.0**-other.places] for one, other in two])
    step = 1e-5
    at, right, up = (
        uv_to_cct(xy_to_uv(xy + [dx, dy])) for dx, dy in ((0.0, 0.0), (step, 0.0), (0.0, step))
    )
    open_ = (np.abs(right - at) * half[:, :1] + np.abs(up - at) * half[:, 1:]) / step
    return _Pairs(
        [one for one, _ in two], [other for _, other in two],
        at[:, 0], at[:, 1], open_[:, 0], open_[:, 1],
    )  # fmt: skip


def _agreeing(kinds: _Kinds, labels: Labels, sure: Sure) -> list[Displayed]:
    """Return the ways in which x y and a CCT or a Duv agree, the best first."""
    pairs = _pairs(kinds["xy"])
    if not pairs.x:
        return []
    loose = sure == "nearly"
    ways: list[Displayed] = []
    off_cct = [np.abs(number.value - pairs.cct) for number in kinds["cct_K"]]
    off_duv = [np.abs(number.value - pairs.duv) for number in kinds["duv"]]
    share, distance = (_NEAR_CCT, _NEAR_DUV) if loose else (_SAME_CCT, _SAME_DUV)
    for number, off in zip(kinds["cct_K"], off_cct, strict=True):
        # A CCT that ends in a nought may be rounded to tens.
        room = 0.5 + pairs.cct_open + share * pairs.cct
        for at in np.flatnonzero(off <= room):
            way = {"x": pairs.x[at], "y": pairs.y[at], "cct_K": number}
            if _mends(way) > 1:
                continue
            duv = _best_duv(way, kinds["duv"], off_duv, at, pairs, distance)
            if duv is not None and duv.places < way["x"].places:
                # It does not contradict, and is too coarse to be told: it may have lost a digit.
                ways.append(Displayed(sure, way, ("x", "y", "cct_K"), (float(off[at]), 0.0)))
            elif duv is not None:
                ways.append(
                    Displayed(
                        sure, way | {"duv": duv}, COLOURS,
                        (float(off[at]), abs(duv.value - float(pairs.duv[at]))),
                    )
                )  # fmt: skip
            elif not _plain_duv(kinds["duv"], labels) or loose:
                ways.append(Displayed(sure, way, ("x", "y", "cct_K"), (float(off[at]), 0.0)))
    if not kinds["cct_K"]:
        for number, off in zip(kinds["duv"], off_duv, strict=True):
            room = 0.5 * 10.0**-number.places + pairs.duv_open + distance
            for at in np.flatnonzero((off <= room) & (loose | (room < _TELLING_DUV))):
                way = {"x": pairs.x[at], "y": pairs.y[at], "duv": number}
                if _mends(way) <= 1 and number.word not in (way["x"].word, way["y"].word):
                    ways.append(Displayed(sure, way, ("x", "y", "duv"), (0.0, float(off[at]))))
    if sure == "mended":
        ways = [way for way in ways if _mends(way.numbers) == 1]
    ways = [way for way in ways if _places_apart(way)]
    return sorted(ways, key=lambda way: _rank(way, labels))


def _best_duv(
    way: dict[str, Number], duvs: Sequence[Number], offs: Sequence[Floats], at: int,
    pairs: _Pairs, distance: float,
) -> Number | None:  # fmt: skip
    taken = {number.word for number in way.values()}
    fit = [
        (off[at], number)
        for number, off in zip(duvs, offs, strict=True)
        if number.word not in taken
        and _mends({**way, "duv": number}) <= 1
        and off[at] <= 0.5 * 10.0**-number.places + pairs.duv_open[at] + distance
    ]
    return min(fit, key=lambda each: (bool(each[1].read), each[0]))[1] if fit else None


def _plain_duv(duvs: Sequence[Number], labels: Labels) -> bool:
    """Tell whether a Duv stands on the display, which then has to agree too."""
    return any(labels.of(number) == "duv" or number.text[0] in "+-" for number in duvs)


def _mends(way: dict[str, Number]) -> int:
    return sum(number.read is not None for number in way.values())


def _places_apart(way: Displayed) -> bool:
    words = [number.word for number in way.numbers.values()]
    return len(words) == len(set(words))


def _rank(way: Displayed, labels: Labels) -> tuple[float, ...]:
    """Return what is small for a likely way: more that agrees, labels that fit, x before y."""
    numbers = way.numbers
    wrong = sum(
        bool(label := labels.of(number)) and label != name for name, number in numbers.items()
    )
    named = sum(labels.of(number) == name for name, number in numbers.items())
    backwards = numbers["x"].word > numbers["y"].word if {"x", "y"} <= set(numbers) else False
    return (-len(way.agreeing), wrong, -named, backwards, way.off[0] + 1e4 * way.off[1])


def _different(ways: Sequence[Displayed]) -> list[Displayed]:
    """Return the ways that say different things, in order."""
    seen: dict[tuple[tuple[str, float], ...], Displayed] = {}
    for way in ways:
        seen.setdefault(way.key, way)
    return list(seen.values())


def _alone(kinds: _Kinds, labels: Labels) -> list[Displayed]:
    """Return what can be taken though nothing agrees: by labels, else by form."""
    by_label = {
        name: number
        for name in COLOURS
        for number in kinds["xy" if name in "xy" else name]
        if labels.of(number) == name
    }
    both = {"x", "y"} <= set(by_label)
    if not both:
        by_label.pop("x", None)
        by_label.pop("y", None)
        # Two numbers of that form, one after the other, and no other.
        open_ = [number for number in kinds["xy"] if labels.of(number) in ("", "x", "y")]
        if len(open_) == 2:
            one, other = open_
            if labels.of(one) == "y" or labels.of(other) == "x":
                one, other = other, one
            by_label |= {"x": one, "y": other}
            both = True
    for name in ("cct_K", "duv"):
        likely = [n for n in kinds[name] if name == "duv" or _LIKELY_K[0] < n.value < _LIKELY_K[1]]
        if name not in by_label and len(likely) == 1:
            by_label[name] = likely[0]
    colour = {name: by_label[name] for name in COLOURS if name in by_label}
    if not both and "cct_K" not in colour:
        return []
    contradicts = both and ("cct_K" in colour or "duv" in colour)
    if not contradicts:
        return [Displayed("unchecked", colour)]
    by_xy = {name: number for name, number in colour.items() if name in ("x", "y")}
    by_cct = {name: number for name, number in colour.items() if name in ("cct_K", "duv")}
    ways = [Displayed("contradicts", by_xy)]
    if "cct_K" in by_cct:
        ways.append(Displayed("contradicts", by_cct))
    return ways
