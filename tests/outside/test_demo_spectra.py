"""The invented spectra that come along: as made, all read, and near the CIE light each is from.

Sources: CIE 15:2018, chromaticities of FL4, HP1, HP4, LED-B3, LED-B4 and LED-RGB1 as
colour-science tabulates them.
"""

from __future__ import annotations

import base64
import importlib.util
import json
from pathlib import Path

import colour
import pytest

from evenkelvin import desk

FOLDER = Path(__file__).parents[2] / "demo_readings/spectra"
SPEC = importlib.util.spec_from_file_location("make", FOLDER / "make.py")
assert SPEC
assert SPEC.loader
MAKER = importlib.util.module_from_spec(SPEC)
SPEC.loader.exec_module(MAKER)
XY = colour.CCS_ILLUMINANTS["CIE 1931 2 Degree Standard Observer"]


def read(name: str) -> dict:
    raw = base64.b64encode((FOLDER / name).read_bytes()).decode()
    return desk.answer({"ask": "import", "file_name": name, "bytes_base64": raw})


def describe(found: dict) -> dict:
    spectrum = {key: found[key] for key in ("wavelengths_nm", "values")}
    return desk.answer({"ask": "describe", "reading": {"spectrum": spectrum}})


@pytest.mark.parametrize("name", list(MAKER.FILES))
def test_each_file_is_what_its_maker_makes_and_is_read_without_a_doubt(name: str) -> None:
    # Text to the last byte only where no last bit of a processor can show.
    if name != "practical.txt":
        assert (FOLDER / name).read_bytes() == MAKER.FILES[name]()
    answer = read(name)
    assert answer["spectra"]
    assert answer["problems"] == []
    assert answer["questions"] == []


@pytest.mark.parametrize(
    ("name", "index", "illuminant"),
    [
        ("sodium_car_deck.txt", 0, "HP1"),
        ("hmi_doorway.csv", 0, "HP4"),
        ("led_panels.cgats", 0, "LED-B3"),
        ("led_panels.cgats", 1, "LED-B4"),
        ("fill.cxf", 0, "LED-RGB1"),
    ],
)
def test_the_light_in_a_file_has_its_published_chromaticity(
    name: str, index: int, illuminant: str
) -> None:
    found = describe(read(name)["spectra"][index])
    assert (found["x"], found["y"]) == pytest.approx(tuple(XY[illuminant]), abs=1.5e-3)


def test_the_key_teaches_a_half_blue_paler_than_the_nominal_one() -> None:
    bare, gelled = (
        {"spectrum": {key: found[key] for key in ("wavelengths_nm", "values")}}
        for found in read("key_bare_and_gelled.csv")["spectra"]
    )
    learned = desk.answer({"ask": "learn_gel", "bare": bare, "gelled": gelled, "name": "1/2 CTB"})
    assert learned["nominal"]["mired"] < learned["gel"]["mired"] < 0.0
    assert learned["gel"]["stops"] < learned["nominal"]["stops"]


def test_the_spectra_in_the_book_are_as_made_and_have_the_x_y_of_the_story() -> None:
    book = json.loads(MAKER.BOOK.read_text("utf-8"))
    held = {each["id"]: each["data"].get("spectrum") for each in book["entries"]}
    for reading, (shape, xy) in MAKER.book_spectra().items():
        made = MAKER.spectrum_of(shape, xy)
        assert held[reading]["wavelengths_nm"] == made["wavelengths_nm"]
        assert held[reading]["values"] == pytest.approx(made["values"], rel=1e-3)
        found = describe(held[reading])
        assert (found["x"], found["y"]) == pytest.approx(xy, abs=2e-4)


def test_two_lights_of_the_book_agree_in_x_y_but_not_in_spectrum() -> None:
    held = {key: MAKER.spectrum_of(*value) for key, value in MAKER.book_spectra().items()}
    lights = [{"spectrum": spectrum} for spectrum in held.values()]
    found = desk.answer({"ask": "agree", "lights": lights, "target": {"cct_K": 4300}})
    (pair,) = (each for each in found["unlike_pairs"] if each["steps"] < 1.0)
    edge = list(held).index("w8ZpNf5HdUe1Jt6KcXo3Vg")
    assert edge in pair["pair"]
