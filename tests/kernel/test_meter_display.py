"""A meter's display, from the words that were read off its picture."""

from __future__ import annotations

import random
from typing import Any

import numpy as np
import pytest

from evenkelvin.colorimetry.temperature import cct_to_xy, xy_to_cct
from evenkelvin.desk import answer
from evenkelvin.interchange.display_words import Word, number_in


def rows(*lines: str) -> list[dict[str, Any]]:
    """Words in rows, as a reader would find them: "CCT 3205 K" is a label, a number and a unit."""
    words = []
    for row, line in enumerate(lines):
        at = 0.0
        for text in line.split(" "):
            wide = 20.0 * len(text)
            words.append({"text": text, "box": [at, 60.0 * row, at + wide, 60.0 * row + 40]})
            at += wide + 24
    return words


def taken(words: list[dict[str, Any]]) -> dict[str, Any]:
    got = answer({"ask": "display", "words": words})
    assert got["ways"], got["words"]
    return got["ways"][0]  # type: ignore[no-any-return]


def figures(kelvin: float, duv: float) -> tuple[str, str, str, str]:
    x, y = cct_to_xy(kelvin, duv)
    return f"{x:.4f}", f"{y:.4f}", f"{kelvin:.0f}", f"{duv:+.4f}"


X, Y, CCT, DUV = figures(3152.0, 0.0021)


def test_figures_that_agree_are_taken_and_the_rest_is_to_be_compared() -> None:
    way = taken(rows(f"CCT {CCT} K", f"Duv {DUV}", f"x {X}", f"y {Y}", "E 512 lx", "Ra 93.1"))
    assert way["sure"] == "agrees"
    assert way["reading"] == {"x": X, "y": Y, "illuminance_lx": "512", "ra": "93.1"}
    assert way["words"] == "x y, CCT and Duv agree. Nothing checks lux and Ra: compare."


@pytest.mark.parametrize(
    "lines",
    [
        (X, Y, CCT),
        (f"{CCT}K", f"x={X}", f"y={Y}"),
        (f"x: {X} y: {Y}", f"Tcp {CCT}"),
        (f"Farbtemperatur {CCT} K", f"x {X.replace('.', ',')}", f"y {Y.replace('.', ',')}"),
        (f"y {Y}", f"x {X}", f"CCT {CCT}"),
        (f"CCT {CCT[0]},{CCT[1:]} K", f"x {X} y {Y}"),
        (f"TLCI 71 λp 612 nm R9 44 {CCT} K", f"u' 0.2451 v' 0.5218 x {X} y {Y}"),
    ],
)
def test_labels_may_be_missing_or_in_any_form(lines: tuple[str, ...]) -> None:
    way = taken(rows(*lines))
    assert (way["sure"], way["reading"]["x"], way["reading"]["y"]) == ("agrees", X, Y)


def test_a_label_may_stand_above_its_number() -> None:
    tiles = [
        ("lux", "1480", 0),
        ("Ra", "91", 300),
        ("CCT", CCT, 600),
        ("x", X, 900),
        ("y", Y, 1200),
    ]
    words = []
    for label, number, left in tiles:
        words.append({"text": label, "box": [left, 0, left + 60, 30]})
        words.append({"text": number, "box": [left, 45, left + 120, 100]})
    way = taken(words)
    assert way["reading"] == {"x": X, "y": Y, "illuminance_lx": "1480", "ra": "91"}


def test_words_without_places_are_read_in_their_order() -> None:
    texts = ["CCT", CCT, "K", "x", X, "y", Y, "lux", "77.4"]
    way = taken([{"text": text} for text in texts])
    assert way["reading"] == {"x": X, "y": Y, "illuminance_lx": "77.4"}


def test_one_misread_sign_is_found_and_said() -> None:
    misread = "0.4248" if X == "0.4243" else X[:-1] + {"3": "8"}.get(X[-1], "8")
    way = taken(rows(f"x {misread}", f"y {Y}", f"CCT {CCT} K", f"Duv {DUV}"))
    assert way["sure"] == "mended"
    assert way["reading"] == {"x": X, "y": Y}
    (mended,) = (number for number in way["numbers"] if number["read"])
    assert (mended["field"], mended["read"], mended["text"]) == ("x", misread, X)
    assert misread in way["words"]
    assert "Compare" in way["words"]


def test_a_lost_point_is_put_back_only_where_the_figures_then_agree() -> None:
    way = taken(rows(f"x {X.removeprefix('0.')}", f"y {Y}", f"CCT {CCT} K"))
    assert (way["sure"], way["reading"]["x"]) == ("mended", X)


def test_a_number_with_a_nought_in_front_lost_its_point() -> None:
    """No display writes 04293: that is 0.4293, and checked against the others all the same."""
    way = taken(rows(f"x {X.replace('.', '')}", f"y {Y.replace('.', '')}", f"CCT {CCT} K"))
    assert (way["sure"], way["reading"]["x"], way["reading"]["y"]) == ("agrees", X, Y)


def test_x_and_y_of_unlike_length_never_agree() -> None:
    """A display gives both to the same digit: one that lost its last leaves room for anything."""
    for words in (
        rows(f"x {X}", f"y {Y[:-1]}", f"CCT {CCT} K"),
        rows(f"x {X[:-1]}", f"y {Y}", DUV),
    ):
        got = answer({"ask": "display", "words": words})
        assert got["ways"][0]["sure"] not in ("agrees", "mended")
        assert "ompare" in got["ways"][0]["words"]


def test_a_duv_alone_does_not_prove_x_y_of_three_digits() -> None:
    way = taken(rows(f"x {float(X):.3f}", f"y {float(Y):.3f}", f"Duv {DUV}"))
    assert way["sure"] == "nearly"
    assert way["words"] == "x y and Duv agree as far as so few digits can tell: compare them."
    assert taken(rows(f"x {X}", f"y {Y}", f"Duv {DUV}"))["sure"] == "agrees"


def test_a_duv_that_may_have_lost_a_digit_is_not_told() -> None:
    way = taken(rows(f"x {X}", f"y {Y}", f"CCT {CCT} K", f"Duv {DUV[:-1]}"))
    assert way["sure"] == "agrees"
    assert [number["field"] for number in way["numbers"]] == ["x", "y", "cct_K"]


def test_what_agrees_is_taken_whatever_labels_say() -> None:
    """A label that was misread, or stands nearer to another number, hides nothing that agrees."""
    words = [*rows(f"u' {X}", f"K {Y}", f"CCT {CCT} K")]
    way = taken(words)
    assert (way["sure"], way["reading"]) == ("agrees", {"x": X, "y": Y})


def test_a_label_may_run_on_to_its_number() -> None:
    number = number_in(Word("Farbtemperatur 3129"), 0)
    assert number
    assert number.value == 3129


def test_what_is_left_of_a_letter_is_no_level() -> None:
    """A speck beside a label is smaller than the numbers; the level with its unit is taken."""
    words = [
        {"text": "E", "box": [0, 0, 15, 22]},
        {"text": "1", "box": [20, 2, 24, 20]},
        {"text": "2870", "box": [0, 40, 90, 76]},
        {"text": "lx", "box": [95, 56, 112, 76]},
        {"text": CCT, "box": [0, 90, 90, 126]},
        {"text": "K", "box": [95, 106, 112, 126]},
    ]
    (way,) = answer({"ask": "display", "words": words})["ways"]
    assert way["reading"]["illuminance_lx"] == "2870"
    del words[2:4]
    (way,) = answer({"ask": "display", "words": words})["ways"]
    assert "illuminance_lx" not in way["reading"]


def test_figures_that_contradict_are_a_question() -> None:
    got = answer({"ask": "display", "words": rows(f"x {X}", f"y {Y}", "CCT 7777 K")})
    assert {way["sure"] for way in got["ways"]} <= {"contradicts", "mended"}
    assert "ompare" in got["ways"][0]["words"]


def test_two_ways_of_mending_are_both_shown() -> None:
    """Whatever one sign of one figure makes agree is offered, never chosen in silence."""
    many = 0
    for kelvin in range(2600, 6600, 37):
        x, y, cct, _ = figures(kelvin, 0.001)
        wrong = cct[:-1] + {"0": "8", "1": "7", "3": "8", "5": "6"}.get(cct[-1], "3")
        got = answer({"ask": "display", "words": rows(f"x {x}", f"y {y}", f"CCT {wrong} K")})
        many += len(got["ways"]) > 1
        for way in got["ways"]:
            assert way["sure"] != "agrees" or abs(int(wrong) - kelvin) <= 1 + kelvin / 1000
    assert many > 5


def test_nothing_that_could_be_a_reading_costs_a_sentence() -> None:
    got = answer({"ask": "display", "words": rows("battery 80 %", "menu")})
    assert (got["ways"], got["left_over"]) == ([], [1])
    assert got["words"].startswith("No x y, CCT or lux could be read.")
    assert answer({"ask": "display", "words": []})["ways"] == []


def test_a_cct_alone_is_taken_and_to_be_compared() -> None:
    way = taken(rows("CCT 4310 K", "Duv -0.0031", "E 66 lx"))
    assert way["reading"] == {"cct_K": "4310", "duv": "-0.0031", "illuminance_lx": "66"}
    assert way["sure"] == "unchecked"
    assert "compare" in way["words"]


def test_a_tint_in_cc_stands_for_a_duv_that_is_not_shown() -> None:
    way = taken(rows("CCT 4310 K", "CC -2.5", "E 66 lx"))
    assert way["reading"] == {"cct_K": "4310", "tint_cc": "-2.5", "illuminance_lx": "66"}
    assert "problem" not in answer({"ask": "describe", "reading": way["reading"]})
    both = taken(rows(f"CCT {CCT} K", "CC 1.0", f"x {X}", f"y {Y}"))
    assert both["reading"] == {"x": X, "y": Y}


def test_a_level_alone_is_taken_for_a_sweep_and_to_be_compared() -> None:
    way = taken(rows("E 1240 lx"))
    assert (way["reading"], way["sure"]) == ({"illuminance_lx": "1240"}, "unchecked")
    assert answer({"ask": "display", "words": rows("1240")})["ways"] == []


def test_a_flash_has_its_own_unit() -> None:
    way = taken(rows(f"x {X}", f"y {Y}", f"{CCT} K", "4.21 lx·s"))
    assert way["reading"]["exposure_lx_s"] == "4.21"


def test_no_figure_is_called_sure_that_was_misread() -> None:
    """Every digit of every colour figure misread in turn: agreeing and wrong never go together,
    but for the last place, where rounding hides it.
    """
    chance = random.Random(5)
    mended = right = 0
    for _ in range(300):
        shown = list(figures(chance.uniform(2400, 8000), chance.uniform(-0.008, 0.008)))
        which = chance.randrange(4)
        places = [i for i, sign in enumerate(shown[which]) if sign.isdigit()]
        if which != 2:
            places = places[1:]
        place = chance.choice(places)
        text = shown[which]
        other = chance.choice([d for d in "0123456789" if d != text[place]])
        if place == 0 and other == "0":
            continue
        read = list(shown)
        read[which] = text[:place] + other + text[place + 1 :]
        words = rows(f"x {read[0]}", f"y {read[1]}", f"CCT {read[2]} K", f"Duv {read[3]}")
        for way in answer({"ask": "display", "words": words})["ways"]:
            got = {number["field"]: number["text"] for number in way["numbers"]}
            names = ("x", "y", "cct_K", "duv")
            off = [
                abs(float(got[name]) - float(was)) / (1.0 if name == "cct_K" else 1e-4)
                for name, was in zip(names, shown, strict=True)
                if name in got
            ]
            if way["sure"] == "agrees":
                # Rounding leaves x and y open by half a unit each, and so the CCT by some K.
                assert max(off) < (1 + float(shown[2]) / 800 if which == 2 else 2.5), (shown, read)
            if way["sure"] == "mended":
                mended += 1
                right += max(off) < 1 + float(shown[2]) / 800
    assert mended > 60
    assert right > 0.5 * mended


def test_any_order_of_the_words_is_read_alike() -> None:
    words = rows(f"CCT {CCT} K", f"Duv {DUV}", f"x {X}", f"y {Y}", "E 512 lx", "R9 61")
    first = taken(words)["reading"]
    for seed in range(20):
        mixed = list(words)
        random.Random(seed).shuffle(mixed)
        assert taken(mixed)["reading"] == first


def test_what_is_read_is_what_the_form_takes() -> None:
    """The reading goes into the question as it stands, and is answered."""
    way = taken(rows(f"x {X}", f"y {Y}", f"CCT {CCT} K", "E 512 lx", "Ra 93.1"))
    got = answer({"ask": "describe", "reading": way["reading"]})
    assert "problem" not in got
    assert abs(xy_to_cct(np.array([float(X), float(Y)]))[0] - float(CCT)) < 2


@pytest.mark.parametrize(
    "words",
    [
        [{"text": "9" * 200}],
        [{"text": "0.3" * 60}],
        [{"text": "."}, {"text": "-"}, {"text": "+."}, {"text": ",,,"}],
        [{"text": "x", "box": [0, 0, 0, 0]}] * 200,
        [{"text": f"0.{n}"} for n in range(3000, 3200)],
        [{"text": f"{n}"} for n in range(3000, 3200)],
        [{"text": "±∞"}, {"text": "１２３４"}, {"text": "0.४२४३"}],
    ],
)
def test_strange_words_are_answered(words: list[dict[str, Any]]) -> None:
    got = answer({"ask": "display", "words": words})
    assert "problem" not in got


@pytest.mark.parametrize(
    ("word", "field"),
    [
        ({"text": "1", "box": [1, 2, 3]}, "words.0.box"),
        ({"text": "1", "box": [9, 0, 1, 1]}, "words.0.box"),
        ({"text": 5}, "words.0.text"),
        ({"text": "1", "confidence": 3}, "words.0.confidence"),
        ({"text": "1", "colour": "red"}, "words.0.colour"),
    ],
)
def test_a_bad_word_is_named(word: dict[str, Any], field: str) -> None:
    assert answer({"ask": "display", "words": [word]})["problem"]["field"] == field
