"""The files of the invented shoot: sound, as their maker makes them, and read without a doubt."""

from __future__ import annotations

import base64
import importlib.util
import json
from typing import Any

import pytest
from steps import ROOT

from evenkelvin.desk import answer

TEXT = (ROOT / "demo_readings" / "night_ferry.json").read_text("utf-8")
FOLDER = ROOT / "demo_readings" / "spectra"
SPEC = importlib.util.spec_from_file_location("make", FOLDER / "make.py")
assert SPEC
assert SPEC.loader
MAKER = importlib.util.module_from_spec(SPEC)
SPEC.loader.exec_module(MAKER)


def read(name: str) -> dict[str, Any]:
    raw = base64.b64encode((FOLDER / name).read_bytes()).decode()
    return answer({"ask": "import", "file_name": name, "bytes_base64": raw})


def test_the_book_is_sound() -> None:
    found = answer({"ask": "book_check", "book": TEXT})
    assert (found["warnings"], found["conflicts"]) == ([], [])
    assert found["things"]["setup"] >= 4
    stages = {each["data"].get("stage") for each in json.loads(TEXT)["entries"]}
    assert {"bare", "gelled", "re-checked"} <= stages


def test_every_pack_that_hangs_is_in_the_kit() -> None:
    names = {gel["name"] for gel in answer({"ask": "kit"})["gels"]}
    for each in json.loads(TEXT)["entries"]:
        assert set(each["data"].get("pack", [])) <= names


@pytest.mark.parametrize("name", list(MAKER.FILES))
def test_each_file_is_what_its_maker_makes_and_is_read_without_a_doubt(name: str) -> None:
    # Text to the last byte only where no last bit of a processor can show.
    if name != "practical.txt":
        assert (FOLDER / name).read_bytes() == MAKER.FILES[name]()
    found = read(name)
    assert found["spectra"]
    assert found["problems"] == []
    assert found["questions"] == []


def test_the_key_teaches_a_half_blue_paler_than_the_nominal_one() -> None:
    bare, gelled = (
        {"spectrum": {key: found[key] for key in ("wavelengths_nm", "values")}}
        for found in read("key_bare_and_gelled.csv")["spectra"]
    )
    learned = answer({"ask": "learn_gel", "bare": bare, "gelled": gelled, "name": "1/2 CTB"})
    assert learned["nominal"]["mired"] < learned["gel"]["mired"] < 0.0
    assert learned["gel"]["stops"] < learned["nominal"]["stops"]


def test_two_lights_of_the_book_agree_in_x_y_but_not_in_spectrum() -> None:
    held = {key: MAKER.spectrum_of(*value) for key, value in MAKER.book_spectra().items()}
    lights = [{"spectrum": spectrum} for spectrum in held.values()]
    found = answer({"ask": "agree", "lights": lights, "target": {"cct_K": 4300}})
    (pair,) = (each for each in found["unlike_pairs"] if each["steps"] < 1.0)
    edge = list(held).index("w8ZpNf5HdUe1Jt6KcXo3Vg")
    assert edge in pair["pair"]


def test_the_spectra_in_the_book_are_as_made_and_have_the_x_y_of_the_story() -> None:
    book = json.loads(MAKER.BOOK.read_text("utf-8"))
    held = {each["id"]: each["data"].get("spectrum") for each in book["entries"]}
    for reading, (shape, xy) in MAKER.book_spectra().items():
        made = MAKER.spectrum_of(shape, xy)
        assert held[reading]["wavelengths_nm"] == made["wavelengths_nm"]
        assert held[reading]["values"] == pytest.approx(made["values"], rel=1e-3)
        found = answer({"ask": "describe", "reading": {"spectrum": held[reading]}})
        assert (found["x"], found["y"]) == pytest.approx(xy, abs=2e-4)
