"""What is wrong with one light of many is told beside the answers of the others."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.desk import answer

KEY = {"x": 0.4422, "y": 0.4061, "illuminance_lx": 900, "name": "key", "lamp": "led"}
FILL = {"cct_K": 4100, "duv": 0.006, "illuminance_lx": 300, "name": "fill"}
BACK = {"cct_K": 5400, "duv": -0.001, "illuminance_lx": 150, "name": "back"}
TYPO = {"x": "0.4q", "y": 0.4, "name": "bench"}
NAMELESS = {"cct_K": 400, "duv": 0}
WHITE = {"cct_K": 3200, "duv": 0}


def agree(lights: list[Any], **more: Any) -> dict[str, Any]:
    got = answer({"ask": "agree", "lights": lights, **({"target": WHITE} | more)})
    assert "problem" not in got, got
    return got


@pytest.mark.parametrize("judge", ["observer", "camera"])
def test_the_others_agree_as_they_would_without_it(judge: str) -> None:
    without = agree([KEY, FILL, BACK], hero=1, judge=judge)
    got = agree([TYPO, KEY, NAMELESS, FILL, BACK], hero=3, judge=judge)
    places = [1, 3, 4]
    assert [got["lights"][index] for index in places] == without["lights"]
    assert got["odd_ones_out"] == [places[index] for index in without["odd_ones_out"]]
    assert got["spread"]["pair"] == [places[index] for index in without["spread"]["pair"]]
    assert got["spread"]["steps"] == without["spread"]["steps"]
    assert got["work"] == without["work"]
    assert got["warnings"][1:] == without["warnings"]
    assert all(light["problem"] is None for light in without["lights"])


def test_what_is_wrong_is_named_counted_and_has_its_field() -> None:
    got = agree([TYPO, KEY, NAMELESS])
    typo, _, nameless = got["lights"]
    assert typo["name"] == "bench"
    assert (typo["problem"]["field"], nameless["problem"]["field"]) == ("x", "cct_K")
    assert "0.4q" in typo["problem"]["message"]
    assert set(typo) == {"name", "problem"}
    assert got["warnings"][0].startswith("2 lights are left out")
    assert got["warnings"][0].endswith(": bench, light 3.")
    assert agree([KEY, TYPO])["warnings"][0].startswith("1 light is left out")


def test_pairs_of_unlike_spectra_keep_their_places() -> None:
    # A flat spectrum and three bands, bent to the same white.
    white = np.array([1 / 3, 1 / 3])
    bands = sum(np.exp(-(((GRID - nm) / 12) ** 2)) for nm in (450, 545, 610)) + 0.001
    curves = (bend(curve[np.newaxis], white)[0] for curve in (np.ones(81), bands))
    first, second = (
        {"spectrum": {"wavelengths_nm": GRID.tolist(), "values": curve.tolist()}, "name": name}
        for name, curve in zip(("flat", "bands"), curves, strict=True)
    )
    without = agree([first, second])
    assert [pair["pair"] for pair in without["unlike_pairs"]] == [[0, 1]]
    got = agree([first, TYPO, second])
    assert [pair["pair"] for pair in got["unlike_pairs"]] == [[0, 2]]
    assert got["unlike_pairs"][0]["words"] == without["unlike_pairs"][0]["words"]


def test_no_light_that_can_be_used_is_no_agreement() -> None:
    got = agree([TYPO, NAMELESS])
    assert (got["odd_ones_out"], got["spread"], got["unlike_pairs"]) == ([], None, [])
    assert got["work"]["words"] == "No reading here can be used."


def test_a_hero_that_cannot_be_used_is_a_problem_of_the_question() -> None:
    got = answer({"ask": "agree", "lights": [KEY, TYPO], "hero": 1})
    assert got["problem"]["field"] == "hero"
    assert "0.4q" in got["problem"]["message"]


def test_the_others_are_balanced_as_they_would_be_without_it() -> None:
    def light(reading: dict[str, Any], **more: Any) -> dict[str, Any]:
        return {"reading": reading, "name": reading.get("name"), **more}

    terms = {"whites": {"from_K": 3200, "to_K": 5600, "step_K": 400}, "depth": 1}
    good = [light(KEY), light(FILL, may=["gel", "dial"])]
    bad = [light(TYPO), light(BACK, may=["dial"], dial={"from_K": 5600, "to_K": 3200})]
    without = answer({"ask": "balance", "lights": good, **terms})
    got = answer({"ask": "balance", "lights": [bad[0], good[0], bad[1], good[1]], **terms})
    assert got["front"] == without["front"]
    assert [one["name"] for one in got["lights"]] == ["bench", "key", "back", "fill"]
    fields = [one["problem"] and one["problem"]["field"] for one in got["lights"]]
    assert fields == ["reading.x", None, "dial.to_K", None]
    assert [words.partition(":")[0] for words in got["warnings"][:2]] == [
        "bench is left out",
        "back is left out",
    ]
    assert got["warnings"][2:] == without["warnings"]
    nobody = answer({"ask": "balance", "lights": bad, **terms})
    assert (nobody["front"], nobody["plans"]) == ([], 0)
    assert nobody["words"] == "No light here can be balanced."


def test_levels_and_the_chart_leave_it_out_too() -> None:
    key, fill = {"name": "key", "illuminance_lx": 900}, {"name": "fill", "illuminance_lx": 300}
    typo = {"name": "bench", "illuminance_lx": "9oo"}
    without = answer({"ask": "levels", "lights": [key, fill], "key": 0})["lights"]
    got = answer({"ask": "levels", "lights": [key, typo, fill], "key": 0})["lights"]
    assert [got[0], got[2]] == without
    assert got[1]["problem"]["field"] == "illuminance_lx"
    # Without a key there is nothing to be a ratio to.
    (_, lone) = answer({"ask": "levels", "lights": [typo, fill], "key": 0})["lights"]
    assert lone["now"]["stops_to_key"] is None

    ask = {"ask": "field", "target": WHITE}
    packs = [["1/2 CTO"], None, ["1/4 CTO"]]
    one = answer({**ask, "lights": [KEY, BACK], "packs": [packs[0], packs[2]]})["lights"]
    got = answer({**ask, "lights": [KEY, TYPO, BACK], "packs": packs})["lights"]
    assert [got[0], got[2]] == one
    assert set(got[1]) == {"name", "problem"}
