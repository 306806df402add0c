"""Agreement to the standard camera of EBU Tech 3355 (TLCI-2012), from its published tables."""

from __future__ import annotations

import colour
import numpy as np
import pytest

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.data import load_table
from evenkelvin.desk import answer
from evenkelvin.lights.camera_agreement import camera_steps

SHAPE = colour.SpectralShape(380, 780, 5)


def sd(name):
    return colour.SDS_ILLUMINANTS[name].copy().align(SHAPE).values


def reading(values, **more):
    curve = {"wavelengths_nm": GRID.tolist(), "values": np.asarray(values).tolist()}
    return {"spectrum": curve} | more


def _by_hand(light, target):
    """The chain of EBU Tech 3355 on an 18 % card, written out with colour-science's functions."""
    table = load_table("tlci2012_camera")
    curves = np.column_stack([table[channel] for channel in "rgb"])
    cmfs = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE).values
    light, target = light / (light @ cmfs[:, 1]), target / (target @ cmfs[:, 1])
    rgb = 0.18 * (light[:77] @ curves) / (0.9 * (target[:77] @ curves))
    rgb = np.array([[1.182, -0.209, 0.027], [0.107, 0.890, 0.003], [0.040, -0.134, 1.094]]) @ rgb
    rgb = (0.9 * np.eye(3) + np.full((3, 3), 0.1 / 3)) @ rgb
    shown = colour.models.oetf_BT709(np.clip(rgb, 0, None)) ** 2.4
    matrix = colour.RGB_COLOURSPACES["ITU-R BT.709"].matrix_RGB_to_XYZ
    uv = colour.xy_to_Luv_uv(colour.XYZ_to_xy(matrix @ shown))
    return float(np.hypot(*(uv - colour.xy_to_Luv_uv([0.3127, 0.3290]))) / 0.0011)


@pytest.mark.parametrize("name", ["A", "FL2", "FL11", "LED-B3", "LED-RGB1", "D50"])
def test_steps_to_the_camera_follow_the_published_chain(name):
    """EBU Tech 3355 (2013), with the functions of colour-science."""
    got = camera_steps(sd(name), sd("D65"))
    assert got == pytest.approx(_by_hand(sd(name), sd("D65")), rel=2e-3, abs=0.01)


def test_the_target_itself_is_white_whatever_its_level():
    """EBU Tech 3355: the camera is balanced for the reference."""
    assert camera_steps(sd("FL11") * 7.0, sd("FL11")) == pytest.approx(0.0, abs=0.01)


def test_a_metamer_holds_to_the_eye_and_not_to_the_camera():
    """EBU Tech 3355: the camera's curves are not those of the CIE 1931 observer."""
    d65 = answer({"ask": "describe", "reading": reading(sd("D65"))})
    metamer = bend(sd("LED-RGB1")[None], np.array([d65["x"], d65["y"]]))[0]
    request = {
        "ask": "agree",
        "lights": [reading(sd("D65"), name="hero"), reading(metamer, name="panel")],
        "hero": 0,
    }
    eye = answer(request)
    assert eye["odd_ones_out"] == []
    camera = answer(request | {"judge": "camera"})
    assert camera["odd_ones_out"] == [1]
    assert camera["disagree"] == [1]
    panel = camera["lights"][1]
    assert (panel["observer_verdict"], panel["verdict"]) == ("holds", panel["camera"]["verdict"])
    assert any("panel: holds to the eye" in warning for warning in camera["warnings"])
    assert "camera" not in eye["lights"][0]
