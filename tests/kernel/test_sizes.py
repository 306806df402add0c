"""Sizes in words: a piece is never said smaller than it is, a roll is said as it is sold."""

from __future__ import annotations

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from evenkelvin.desk import answer
from evenkelvin.replies.units import length_words, piece_words, size_words

SIZES = st.floats(0.02, 12.0)


def metres(words: str) -> list[float]:
    """What words such as `0.575 × 0.6 m` or `1′ 10.7″ × 2′` say, in m."""
    found = []
    for side in words.split(" × "):
        if feet := re.fullmatch(r"(?:(\d+)′)? ?(?:([\d.]+)″)?", side):
            found.append((float(feet[1] or 0) * 12 + float(feet[2] or 0)) * 0.0254)
        else:
            found.append(float(side.removesuffix(" m")))
    return found


@pytest.mark.parametrize(
    ("size", "unit", "words"),
    [
        ((0.575, 0.6), "m", "0.575 × 0.6 m"),
        ((0.57142857, 2.0), "m", "0.572 × 2 m"),
        ((0.1 + 0.2, 1.22), "m", "0.3 × 1.22 m"),
        ((0.3048, 1.3716), "ft", "1′ × 4′ 6″"),
        ((0.3048001, 0.0254), "ft", "1′ × 1″"),
        ((0.306, 0.0254), "ft", "1′ 0.1″ × 1″"),
    ],
)
def test_a_piece_is_said_to_the_millimetre_or_tenth_of_an_inch(
    size: tuple[float, float], unit: str, words: str
) -> None:
    assert piece_words(*size, unit) == words


@given(SIZES, SIZES, st.sampled_from([("m", 0.001), ("ft", 0.00254)]))
def test_no_piece_is_said_smaller_than_it_is(
    width: float, height: float, unit: tuple[str, float]
) -> None:
    name, step = unit
    for said, real in zip(metres(piece_words(width, height, name)), (width, height), strict=True):
        assert real - step / 900 <= said <= real + step * 1.001


def test_a_roll_is_said_as_it_is_sold() -> None:
    # 1.22 m is the trade's 48 inches (common practice, no source), though a hair more.
    assert size_words(1.22, 7.62, "ft") == "4′ × 25′"
    assert (size_words(1.22, 7.62, "m"), length_words(1.8288, "ft")) == ("1.22 × 7.62 m", "6′")


def test_cut_list_and_order_say_the_same_of_a_pane() -> None:
    pane = {"width_m": "2.3", "height_m": "1.1", "panes_across": 4}
    cuts = answer({"ask": "windows", "windows": [pane]})["cuts"]
    (gel,) = answer({"ask": "order", "hangs": [{"gel": "full CTO", **pane}]})["gels"]
    assert cuts[0]["words"] == "0.575 × 1.1 m"
    assert gel["pieces"][0]["words"] == "4 of 0.575 × 1.1 m"
