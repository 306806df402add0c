"""The camera as the judge of a set: what it needs, and what it says where it cannot judge."""

from __future__ import annotations

import numpy as np

from evenkelvin.colorimetry.illuminant import illuminant
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.desk import answer


def reading(values, **more):
    curve = {"wavelengths_nm": GRID.tolist(), "values": np.asarray(values).tolist()}
    return {"spectrum": curve} | more


def test_a_light_without_spectrum_is_judged_by_the_observer_and_says_so():
    got = answer(
        {
            "ask": "agree",
            "lights": [reading(illuminant("A")), {"cct_K": 3200, "duv": 0, "name": "fill"}],
            "target": {"cct_K": 3200, "duv": 0},
            "judge": "camera",
        }
    )
    assert got["lights"][1]["camera"] is None
    assert got["lights"][1]["verdict"] == "holds"
    assert any("fill" in warning for warning in got["warnings"])
    # Illuminant A against 3200 K: out to both, and the pack helps the camera too.
    first = got["lights"][0]
    assert first["camera"]["verdict"] != "holds"
    assert first["camera"]["with_pack"]["steps"] < first["camera"]["steps"]


def test_a_bare_hero_cannot_be_what_the_camera_judges_against():
    got = answer(
        {"ask": "agree", "lights": [{"cct_K": 3200, "duv": 0}], "hero": 0, "judge": "camera"}
    )
    assert got["problem"]["field"] == "judge"


def test_a_light_at_the_end_of_what_the_camera_sees_is_off():
    deep = np.where(GRID >= 730.0, 1.0, 0.0)
    got = answer(
        {
            "ask": "agree",
            "lights": [reading(illuminant("A")), reading(deep, name="infrared leak")],
            "target": {"cct_K": 3200, "duv": 0},
            "judge": "camera",
        }
    )
    assert got["lights"][1]["verdict"] == "out"
