"""How lights look, against colour-science: CAT16, sRGB, Display P3, the camera of EBU Tech 3355."""

from __future__ import annotations

from itertools import pairwise

import colour
import numpy as np
import pytest
from colour.quality.datasets import SDS_TCS

from evenkelvin.colorimetry.observer import GRID
from evenkelvin.data import load_table
from evenkelvin.desk import answer

SHAPE = colour.SpectralShape(380, 780, 5)
CMFS = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE).values
TCS = SDS_TCS["CIE 1995"]
D65 = np.array([0.3127, 0.3290])
LIGHTS = ["A", "FL2", "FL11", "LED-B3", "LED-RGB1", "HP1", "D50", "D75"]
SURFACES = ("white", "grey", "skin_light", "skin_dark", "red", "foliage")


def sd(name):
    return colour.SDS_ILLUMINANTS[name].copy().align(SHAPE).values


def reading(values, **more):
    curve = {"wavelengths_nm": GRID.tolist(), "values": np.asarray(values).tolist()}
    return {"spectrum": curve} | more


def factors():
    """Cards, and the samples 13, 15, 9 and 14 as colour-science has them of CIE 13.3 and JIS."""
    table = load_table("cie_test_colours")
    rows = np.isin(table["wavelength_nm"], GRID)
    curves = [np.full(81, 0.9), np.full(81, 0.18)]
    return np.stack([*curves, *(table[name][rows] for name in ("r13", "r15", "r9", "r14"))])


def encoded(xyz, space):
    """8-bit codes where the display can show a colour, and whether it can."""
    rgb_space = colour.RGB_COLOURSPACES[space]
    linear = colour.XYZ_to_RGB(xyz, rgb_space, illuminant=D65, chromatic_adaptation_transform=None)
    fits = np.all((linear > -1e-4) & (linear < 1.0001), axis=-1)
    return 255 * colour.models.eotf_inverse_sRGB(np.clip(linear, 0, 1)), fits


def eye_by_hand(light, white_xy):
    xyz = np.einsum("sl,l,lc->sc", factors(), light, CMFS)
    xyz = colour.adaptation.chromatic_adaptation_VonKries(
        xyz, colour.xy_to_XYZ(white_xy), colour.xy_to_XYZ(D65), transform="CAT16"
    )
    return xyz * (0.18 / xyz[1, 1])


def camera_by_hand(light, white):
    """EBU Tech 3355, appendices 4 and 5; then the luminance without the contrast of the display."""
    table = load_table("tlci2012_camera")
    curves = np.column_stack([table[channel] for channel in "rgb"])
    light, white = (one[:77] / (one[:77] @ CMFS[:77, 1]) for one in (light, white))
    rgb = (factors()[:, :77] * light) @ curves / (0.9 * (white @ curves))
    rgb = rgb @ np.array([[1.182, -0.209, 0.027], [0.107, 0.890, 0.003], [0.040, -0.134, 1.094]]).T
    rgb = rgb @ (0.9 * np.eye(3) + np.full((3, 3), 0.1 / 3)).T
    signal = colour.models.oetf_BT709(np.clip(rgb, 0, None))
    fits = np.all(rgb > -1e-9, axis=-1) & np.all(signal < 239 / 219, axis=-1)
    xyz = (signal**2.4) @ colour.RGB_COLOURSPACES["ITU-R BT.709"].matrix_RGB_to_XYZ.T
    linear = colour.models.oetf_inverse_BT709(xyz[:, 1:2] ** (1 / 2.4))
    xyz = xyz * linear / xyz[:, 1:2]
    return xyz * (0.18 / xyz[1, 1]), fits


def seen(light, white, judge="eye"):
    got = answer({"ask": "seen", "lights": [light], "white": white, "judge": judge})
    assert "problem" not in got, got
    return got["lights"][0]


def test_the_samples_are_those_of_cie_13_3_and_jis():
    """CIE 13.3-1995, table 1, and JIS Z 8726, as colour-science carries them."""
    ours = factors()
    for row, name in ((2, "TCS13"), (4, "TCS09"), (5, "TCS14")):
        theirs = TCS[name].copy().align(SHAPE).values
        assert np.allclose(ours[row], theirs, atol=1e-3), name


@pytest.mark.parametrize("name", LIGHTS)
@pytest.mark.parametrize("white", ["A", "D65", "FL11"])
def test_by_eye_it_is_cat16_to_srgb_and_p3_within_one_code(name, white):
    """CAT16 (Li et al., 2017), IEC 61966-2-1 and Display P3, by colour-science."""
    got = seen(reading(sd(name)), reading(sd(white)))["as_read"]
    white_xy = colour.XYZ_to_xy(sd(white) @ CMFS)
    for field, space in (("srgb", "sRGB"), ("p3", "Display P3")):
        codes, fits = encoded(eye_by_hand(sd(name), white_xy), space)
        for surface, code, fit in zip(SURFACES, codes, fits, strict=True):
            if fit:
                assert got[surface][field] == pytest.approx(code, abs=1.0), (surface, field)
            if field == "srgb":
                assert got[surface]["clipped"] == (not fit), surface


@pytest.mark.parametrize("name", LIGHTS)
@pytest.mark.parametrize("white", ["A", "D65", "LED-B3"])
def test_by_camera_it_is_the_display_of_the_standard_within_one_code(name, white):
    """EBU Tech 3355 (2013), with the functions of colour-science."""
    got = seen(reading(sd(name)), reading(sd(white)), "camera")["as_read"]
    xyz, held = camera_by_hand(sd(name), sd(white))
    codes, fits = encoded(xyz, "sRGB")
    assert held[1]
    for surface, code, fit, holds in zip(SURFACES, codes, fits, held, strict=True):
        if fit and holds:
            assert got[surface]["srgb"] == pytest.approx(code, abs=1.0), surface


@pytest.mark.parametrize("name", ["HP1", "LED-RGB1", "A"])
def test_what_the_display_cannot_show_keeps_its_luminance_and_hue_line(name):
    """Drawn in towards the grey of the same luminance: our own rule, checked in linear light."""
    got = seen(reading(sd(name)), reading(sd("D75")))["as_read"]
    wanted = eye_by_hand(sd(name), colour.XYZ_to_xy(sd("D75") @ CMFS))
    space = colour.RGB_COLOURSPACES["sRGB"]
    clipped = [k for k, surface in enumerate(SURFACES) if got[surface]["clipped"]]
    assert clipped
    for k in clipped:
        shown = colour.models.eotf_sRGB(np.array(got[SURFACES[k]]["srgb"]) / 255)
        luminance = space.matrix_RGB_to_XYZ[1] @ shown
        assert luminance == pytest.approx(wanted[k, 1], abs=0.01)
        away = space.matrix_XYZ_to_RGB @ wanted[k] - wanted[k, 1]
        left = shown - wanted[k, 1]
        part = (left @ away) / (away @ away)
        assert 0 <= part < 1
        assert left == pytest.approx(part * away, abs=0.012)


@pytest.mark.parametrize("name", ["A", "FL11", "LED-B3", "D50"])
@pytest.mark.parametrize("judge", ["eye", "camera"])
def test_a_grey_card_under_the_white_itself_is_118(name, judge):
    """IEC 61966-2-1: 18 % of linear light is code 117.6."""
    got = seen(reading(sd(name)), reading(sd(name)), judge)["as_read"]
    assert got["grey"] == {
        "srgb": [118] * 3, "p3": [118] * 3, "clipped": False, "guess": False, "range": None,
    }  # fmt: skip
    assert got["white"]["srgb"] == pytest.approx([243] * 3, abs=1)


def test_a_ribbon_is_the_straight_line_of_light_between_two_whites():
    """CIE 15:2018, 7: X, Y, Z add; seen by CAT16 and sRGB as colour-science has them."""
    warm, cool = {"x": 0.4234, "y": 0.3990}, {"x": 0.3302, "y": 0.3444}
    got = answer(
        {
            "ask": "mix",
            "lights": [{"reading": warm, "share_lx": 600}],
            "beside": [{"reading": cool, "share_lx": 150}],
            "ribbon": 9,
            "white": cool,
        }
    )["ribbon"]
    ends = [lux * colour.xy_to_XYZ([one["x"], one["y"]]) for one, lux in ((warm, 600), (cool, 150))]
    for k, place in enumerate(got["colours"]):
        part = k / 8
        xyz = (1 - part) * ends[0] + part * ends[1]
        assert [place["x"], place["y"]] == pytest.approx(colour.XYZ_to_xy(xyz), abs=1e-9)
        assert place["stops"] == pytest.approx(np.log2(xyz[1] / 600), abs=1e-9)
        seen_ = colour.adaptation.chromatic_adaptation_VonKries(
            xyz, colour.xy_to_XYZ([cool["x"], cool["y"]]), colour.xy_to_XYZ(D65), transform="CAT16"
        )
        code, fits = encoded(seen_ * 0.18 / seen_[1], "sRGB")
        assert fits
        assert place["srgb"] == pytest.approx(code, abs=1.0)
    assert got["colours"][-1]["srgb"] == [118, 118, 118]
    # The dimmer end is where the colour runs away.
    uv = [colour.xy_to_Luv_uv([p["x"], p["y"]]) for p in got["colours"]]
    paces = [np.hypot(*(b - a)) for a, b in pairwise(uv)]
    assert int(np.argmax(paces)) == 7
    assert (got["worst"]["at"], got["worst"]["index"]) == (1.0, 8)
    part = got["worst"]["halfway"]
    middle = colour.xy_to_Luv_uv(colour.XYZ_to_xy((1 - part) * ends[0] + part * ends[1]))
    assert np.hypot(*(middle - uv[0])) == pytest.approx(np.hypot(*(middle - uv[-1])), rel=1e-6)


#: Two measured sets that colour-science carries: Darrodi, Finlayson, Goodman and Mackiewicz (2015),
#: 'Reference data set for camera spectral sensitivity estimation', JOSA A 32:3.
MEASURED = list(colour.MSDS_CAMERA_SENSITIVITIES.values())


def own_camera(msds, name):
    curves = dict(zip(("red", "green", "blue"), msds.values.T.tolist(), strict=True))
    return {"name": name, "wavelengths_nm": msds.wavelengths.tolist(), **curves}


def own_by_hand(msds, light, white):
    """Least squares that keep white, by Lagrange's multipliers; the rest as EBU Tech 3355 has it.

    Finlayson and Drew (1997), 'Constrained least-squares regression in color spaces'.
    """
    nm = np.arange(380, 761, 5)
    curves = np.column_stack(
        [np.interp(nm, msds.wavelengths, c, left=0, right=0) for c in msds.values.T]
    )
    table = load_table("tlci2012_patches")
    patches = np.column_stack([table[f"patch{k}"] for k in range(1, 19)])
    cmfs = CMFS[:77]
    white, light = white[:77], light[:77]
    seen_ = (patches.T * white) @ curves / (white @ curves)
    white_xyz = white @ cmfs / (white @ cmfs[:, 1])
    wanted = (patches.T * white) @ cmfs / (white @ cmfs[:, 1])
    wanted = colour.adaptation.chromatic_adaptation_VonKries(
        wanted, white_xyz, colour.xy_to_XYZ(D65), transform="CAT16"
    )
    space = colour.RGB_COLOURSPACES["ITU-R BT.709"]
    wanted = wanted @ space.matrix_XYZ_to_RGB.T
    system = np.zeros((4, 4))
    system[:3, :3], system[:3, 3], system[3, :3] = seen_.T @ seen_, 1, 1
    right = np.vstack([seen_.T @ wanted, np.ones((1, 3))])
    matrix = np.linalg.solve(system, right)[:3].T
    grey = 0.18 * (light / (light @ cmfs[:, 1])) @ curves
    rgb = grey / (0.9 * (white / (white @ cmfs[:, 1])) @ curves)
    rgb = (0.9 * np.eye(3) + np.full((3, 3), 0.1 / 3)) @ matrix @ rgb
    xyz = space.matrix_RGB_to_XYZ @ colour.models.oetf_BT709(np.clip(rgb, 0, None)) ** 2.4
    return colour.xy_to_Luv_uv(colour.XYZ_to_xy(xyz)) - colour.xy_to_Luv_uv(D65)


@pytest.mark.parametrize("name", ["A", "FL2", "FL11", "LED-B3", "D50"])
@pytest.mark.parametrize("which", [0, 1])
def test_a_camera_of_ones_own_judges_by_its_measured_sensitivities(name, which):
    """Darrodi et al. (2015), through the published regression and the display of EBU Tech 3355."""
    camera = own_camera(MEASURED[which], "A")
    request = {"ask": "agree", "lights": [reading(sd(name))], "target": reading(sd("D65"))}
    got = answer(request | {"judge": "camera", "camera": camera})
    wanted = np.hypot(*own_by_hand(MEASURED[which], sd(name), sd("D65"))) / 0.0011
    assert got["lights"][0]["camera"]["steps"] == pytest.approx(wanted, rel=3e-3, abs=0.02)
    assert got["camera"] == "A"


@pytest.mark.parametrize("name", ["FL2", "LED-B3"])
def test_two_measured_cameras_differ_by_what_each_sees(name):
    """Darrodi et al. (2015)."""
    first, second = (own_camera(one, n) for one, n in zip(MEASURED, "AB", strict=True))
    lights = [reading(sd("D65")), reading(sd(name), name="lamp")]
    request = {"ask": "cameras", "lights": lights, "white": reading(sd("D65"))}
    got = answer(request | {"first": first, "second": second})
    apart = np.subtract(*(own_by_hand(one, sd(name), sd("D65")) for one in MEASURED))
    assert got["lights"][1]["apart"]["steps"] == pytest.approx(
        np.hypot(*apart) / 0.0011, rel=3e-3, abs=0.02
    )
    # More v′ and less u′ at daylight is greener, as on the black-body line of CIE 1976 u′ v′.
    assert got["edge"]["pair"] == [0, 1]
    assert got["edge"]["steps"] == pytest.approx(got["lights"][1]["apart"]["steps"], abs=0.02)
    green = apart @ np.array([-0.83, 0.55]) > 0
    assert (got["lights"][1]["apart"]["up"] > 0) == green


def test_a_camera_that_sees_as_the_eye_does_shows_cards_as_the_eye_sees_them():
    """Luther's condition (1927): its channels are sums of those of the CIE 1931 observer."""
    mix = np.array([[0.9, 0.3, 0.05], [0.1, 1.0, 0.1], [0.05, 0.1, 1.0]])
    curves = np.clip(CMFS @ mix.T, 0, None)
    luther = {"name": "as the eye", "wavelengths_nm": GRID.tolist()}
    luther |= dict(zip(("red", "green", "blue"), curves.T.tolist(), strict=True))
    request = {"ask": "seen", "lights": [reading(sd("FL2"))], "white": reading(sd("D50"))}
    eye = answer(request)["lights"][0]["as_read"]
    camera = answer(request | {"judge": "camera", "camera": luther})["lights"][0]["as_read"]
    # Saturation (90 %) and contrast (end to end some 1.2) of the standard's display nearly cancel.
    assert camera["grey"]["srgb"] == pytest.approx(eye["grey"]["srgb"], abs=3)
