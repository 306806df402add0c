"""The invented spectra that come along: as made, all read, and near the CIE light each is from.

Sources: CIE 15:2018, chromaticities of FL4, HP1, HP4, LED-B3, LED-B4 and LED-RGB1 as
colour-science tabulates them.
"""

from __future__ import annotations

import base64
import importlib.util
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
    """CIE 15:2018, as colour-science tabulates it."""
    found = describe(read(name)["spectra"][index])
    assert (found["x"], found["y"]) == pytest.approx(tuple(XY[illuminant]), abs=1.5e-3)
