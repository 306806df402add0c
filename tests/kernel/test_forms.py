"""Readings in the other forms that meters give: mired, CC, cuts, a flash as an f-number."""

from __future__ import annotations

from typing import Any

import pytest

from evenkelvin.book.logged import light_amounts, logged_xy
from evenkelvin.desk import answer
from evenkelvin.filters.kit import CUTS


def described(**reading: Any) -> dict[str, Any]:
    return answer({"ask": "describe", "reading": reading})


def problem(**reading: Any) -> dict[str, Any]:
    return described(**reading)["problem"]


def test_mired_is_a_million_by_kelvin() -> None:
    got = described(cct_mired="178", duv="0.0021")
    assert got["cct_K"] == pytest.approx(1e6 / 178)
    assert got["duv"] == pytest.approx(0.0021)
    assert got["assumed"] == ["178 mired is 5618 K."]


def test_a_plus_sign_of_the_filter_is_the_other_way_from_one_of_the_light() -> None:
    green = described(cct_K="5600", tint_cc="10")
    wants = described(cct_K="5600", tint_cc="10", tint_says="filter")
    magenta = described(cct_K="5600", tint_cc="-10")
    assert green["duv"] > 0.008
    assert wants["duv"] == pytest.approx(magenta["duv"])
    assert "in the light" in green["assumed"][0]
    assert wants["assumed"][0].startswith("10 CC green wanted")


@pytest.mark.parametrize("cut", CUTS)
@pytest.mark.parametrize("kelvin", [3200, 5600])
@pytest.mark.parametrize("sign", ["", "-", "−"])
def test_a_cut_that_the_kernel_gives_reads_as_that_cut(cut: str, kelvin: int, sign: str) -> None:
    """What is dialled in cuts by one answer comes back as typed from a meter that shows cuts."""
    typed = described(cct_K=kelvin, tint_cuts=f"{sign}{cut}")
    white = {"cct_K": kelvin, "duv": typed["duv"]}
    reply = answer({"ask": "fix", "reading": {"cct_K": kelvin, "duv": 0}, "target": white})
    if "problem" in reply:  # Deeper than a target white may be.
        assert abs(typed["duv"]) > 0.02
        return
    assert reply["dial"]["green"] == f"{cut} {'minus' if sign else 'plus'} green"


@pytest.mark.parametrize(
    ("one", "other"),
    [("½", "1/2"), ("0.25", "1/4"), ("1", "full"), ("+1/8", "0.125"), ("-¾", "-0.75")],
)
def test_a_cut_may_be_written_in_several_ways(one: str, other: str) -> None:
    assert described(cct_K=4300, tint_cuts=one) == described(cct_K=4300, tint_cuts=other)


def test_a_flash_by_its_f_number_is_the_exposure_at_the_meters_constant() -> None:
    """ISO 2720: H = N²·C/S, 8²·250/100."""
    reading = {"cct_K": 5600, "duv": 0, "flash_f_number": "8", "flash_iso": "100"}
    assert described(**reading)["exposure_lx_s"] == pytest.approx(160.0)
    assert "f/8 at ISO 100 is taken as 160 lx·s" in described(**reading)["assumed"][0]
    dome = described(**reading, flash_receptor="dome")
    assert dome["exposure_lx_s"] == pytest.approx(217.6)
    own = described(**reading, flash_receptor="dome", flash_constant="330")
    assert own["exposure_lx_s"] == pytest.approx(211.2)


def test_a_flash_in_f_numbers_answers_as_the_same_one_in_lux_seconds() -> None:
    as_stop = {"flash_f_number": "f/5.6⅓", "flash_iso": "200"}
    lx_s = described(cct_K=5600, duv=0, **as_stop)["exposure_lx_s"]
    camera = {"iso": 800, "fps": 24, "shutter_deg": 180}
    known = {"ask": "expose", "known": {**as_stop, **camera}}
    assert answer(known)["f_number"] == pytest.approx(
        answer({"ask": "expose", "known": {"exposure_lx_s": lx_s, **camera}})["f_number"]
    )
    levels = [
        answer({"ask": "levels", "lights": [light], "camera": camera})["lights"][0]["now"]
        for light in (as_stop, {"exposure_lx_s": lx_s})
    ]
    assert levels[0] == levels[1]
    even = [
        answer({"ask": "even", "points": [{"across": 0.5, "up": 0.5, **light}]})
        for light in (as_stop, {"exposure_lx_s": lx_s})
    ]
    assert even[0] == even[1]


@pytest.mark.parametrize(
    ("reading", "field", "words"),
    [
        ({"cct_K": 5600, "cct_mired": 178}, "cct_mired", "not both"),
        ({"cct_K": 5600, "duv": 0.001, "tint_cc": 5}, "tint_cc", "not both"),
        ({"tint_cc": 5}, "tint_cc", "goes with a CCT"),
        ({"cct_mired": 20}, "cct_mired", "between 40 and 1000"),
        ({"cct_mired": 178, "tint_cc": "a"}, "tint_cc", "not a number"),
        ({"cct_K": 5600, "tint_cuts": "1/3"}, "tint_cuts", "no 1/3 cut"),
        ({"cct_K": 5600, "tint_cuts": "-2"}, "tint_cuts", "more than any white has"),
        ({"cct_K": 5600, "tint_cc": 5, "tint_says": "meter"}, "tint_says", "Choose"),
        ({"cct_K": 5600, "flash_f_number": "8"}, "flash_iso", "missing"),
        ({"cct_K": 5600, "flash_f_number": "x", "flash_iso": 100}, "flash_f_number", "number"),
        (
            {"cct_K": 5600, "flash_f_number": "8", "flash_iso": 100, "exposure_lx_s": 3},
            "flash_f_number",
            "not both",
        ),
        ({"cct_K": 5600, "flash_f_number": "0.1", "flash_iso": 1e6}, "flash_f_number", "no flash"),
    ],
)
def test_bad_input_is_refused_by_its_own_field(
    reading: dict[str, Any], field: str, words: str
) -> None:
    found = problem(**reading)
    assert found["field"] == f"reading.{field}"
    assert words in found["message"]


def test_a_log_reads_them_as_a_question_does_and_stops_at_none() -> None:
    kept = [
        {"cct_mired": "178", "tint_cc": "5", "tint_says": "light", "pack": []},
        {"cct_K": "3200", "tint_cuts": "-1/4", "flash_f_number": "8", "flash_iso": "100"},
        {"cct_K": "3200", "tint_cuts": "nonsense"},
    ]
    asked = [described(**{k: v for k, v in one.items() if k != "pack"}) for one in kept[:2]]
    got = logged_xy(kept)
    for at, one in enumerate(asked):
        assert got[at] == pytest.approx([one["x"], one["y"]], abs=1e-9)
    assert light_amounts(kept[1])[1] == pytest.approx(160.0)
    assert got.shape == (3, 2)
