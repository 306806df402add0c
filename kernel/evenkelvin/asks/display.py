"""``display``: a reading from the words that were read off a picture of a meter's display.

``{"ask": "display", "words": [{"text", "box"?: [left, top, right, bottom], "confidence"?}…]}``
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

from evenkelvin.fields import Fields
from evenkelvin.interchange.display_words import AMOUNTS, METRICS, TINT, Word, in_order
from evenkelvin.interchange.displayed import Displayed, read_display
from evenkelvin.problem import Problem
from evenkelvin.said import Figure, Said, Value, joined, listed
from evenkelvin.shapes import Group, Many, Number, Text

_MOST_WORDS = 200
_LONGEST = 200
FIELDS: Group = {
    "words": Many(
        {
            "text": Text(("CCT", "3152", "K", "0.4243")),
            "box": Many(Number(0, 4000)),
            "confidence": Number(0, 1),
        }
    )
}
_NAMES: dict[str, Value] = {
    "x": "x", "y": "y", "cct_K": "CCT", "duv": "Duv", "illuminance_lx": Said("lux"),
    "illuminance_fc": Said("foot-candles"), "exposure_lx_s": "lx·s", "ra": "Ra", "r9": "R9",
    "rf": "Rf", "rg": "Rg", "ssi": "SSI", TINT: "CC",
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the ways of taking a display, the likeliest first.

    ``ways`` [{"sure", "words", "reading", "numbers"}]: ``sure`` is "agrees" where colour figures
    agree with one another as they were read; "mended" where they do once one sign is read
    otherwise; "nearly" where they differ by little; "unchecked" where there is only one of x y and
    CCT; "contradicts" where figures differ. All but the first are questions to the person, and
    ``words`` says what to compare. ``reading`` is R with every number as the display writes it;
    ``numbers`` [{"field", "text", "read", "word"}] are all figures that were taken, those that R
    does not need included: ``read`` is what was read where it is taken otherwise, else null;
    ``word`` counts in ``words`` of the question. ``ways`` is empty where there is no x y, no CCT
    and no level; ``words`` beside it says what to do then, and is null otherwise.

    ``left_over`` are the words with numbers that the first way leaves.
    """
    fields.refuse_unknown("ask", *FIELDS)
    given = [_word(group) for group in fields.groups("words", most=_MOST_WORDS)]
    order = in_order(given)
    places = [next(i for i, one in enumerate(given) if one is word) for word in order]
    ways = read_display(order)
    taken = {places[number.word] for number in ways[0].numbers.values()} if ways else set()
    nothing = Said(
        "No x y, CCT or lux could be read. Hold the phone straight above the display, closer, "
        "and so that no lamp shows in it."
    )
    return {
        "ways": [_plain(way, places) for way in ways],
        "words": None if ways else nothing,
        "left_over": [
            index
            for index, word in enumerate(given)
            if index not in taken and any(sign.isdigit() for sign in word.text)
        ],
    }


def _word(group: Fields) -> Word:
    group.refuse_unknown("text", "box", "confidence")
    text = group.text("text", "", longest=_LONGEST)
    confidence = group.number("confidence", 1.0, 0.0, 1.0)
    if not group.given("box"):
        return Word(text, None, confidence)
    box = group.numbers("box")
    if len(box) != 4 or box[2] < box[0] or box[3] < box[1]:
        raise Problem(group.at("box"), Said("A box is left, top, right and bottom."))
    left, top, right, bottom = map(float, box)
    return Word(text, (left, top, right, bottom), confidence)


def _plain(way: Displayed, places: Sequence[int]) -> dict[str, Any]:
    numbers = way.numbers
    colour: tuple[str, ...] = ("x", "y")
    if not {"x", "y"} <= set(numbers):
        colour = ("cct_K", "duv" if "duv" in numbers else TINT)
    reading = {
        name: numbers[name].text.lstrip("+")
        for name in (*colour, *AMOUNTS, *METRICS)
        if name in numbers
    }
    return {
        "sure": way.sure,
        "words": _words(way),
        "reading": reading,
        "numbers": [
            {
                "field": name,
                "text": number.text,
                "read": number.read,
                "word": places[number.word],
            }
            for name, number in numbers.items()
        ],
    }


def _words(way: Displayed) -> Said:
    """Return what to believe of it, and what to compare."""
    first = _of_colour(way)
    beside = [_NAMES[name] for name in (*AMOUNTS, *METRICS) if name in way.numbers]
    if not beside or way.sure == "unchecked":
        return first
    return Said("{first} Nothing checks {figures}: compare.", first=first, figures=listed(beside))


def _of_colour(way: Displayed) -> Said:
    numbers = way.numbers
    if way.sure == "unchecked":
        return Said("Nothing on the display checks these numbers: compare each of them.")
    if way.sure == "contradicts":
        return Said("x y and CCT contradict each other: a digit was misread. Compare.")
    others = [_NAMES[name] for name in way.agreeing if name not in ("x", "y")]
    figures = listed(["x y", *others]) if len(others) == 1 else joined(
        ["x y", listed(others)]
    )  # fmt: skip
    if way.sure == "nearly" and "cct_K" not in way.agreeing:
        return Said(
            "{figures} agree as far as so few digits can tell: compare them.", figures=figures
        )
    if way.sure == "nearly":
        return Said(
            "{figures} nearly agree ({cct:.0f} K apart): compare the last digits.",
            figures=figures,
            cct=way.off[0],
        )
    mended = next(((name, n) for name, n in numbers.items() if n.read is not None), None)
    if mended is None:
        return Said("{figures} agree.", figures=figures)
    name, number = mended
    return Said(
        "{name} looked like {read}; with {text} {figures} agree. Compare it.",
        name=_NAMES[name],
        read=Figure(number.read or ""),
        text=Figure(number.text),
        figures=figures,
    )
