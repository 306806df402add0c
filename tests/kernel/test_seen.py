"""What lights look like: what is exact, what is a guess, and what is said where nothing is seen."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.colorimetry.illuminant import illuminant
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.desk import answer
from examples import examples

WHITE = {"cct_K": 3200, "duv": 0}
SURFACES = {"white", "grey", "skin_light", "skin_dark", "red", "foliage"}


def spectral(values: Any, **more: Any) -> dict[str, Any]:
    curve = {"wavelengths_nm": GRID.tolist(), "values": np.asarray(values).tolist()}
    return {"spectrum": curve} | more


def seen(*lights: Any, white: Any = WHITE, **more: Any) -> list[dict[str, Any]]:
    got = answer({"ask": "seen", "lights": list(lights), "white": white} | more)
    assert "problem" not in got, got
    return got["lights"]


def test_from_a_bare_x_y_the_cards_are_exact_and_the_samples_a_guess() -> None:
    (light,) = seen({"x": 0.4422, "y": 0.4061, "name": "key"})
    look = light["as_read"]
    assert set(look) == SURFACES
    assert {name for name in SURFACES if look[name]["guess"]} == SURFACES - {"white", "grey"}
    assert look["grey"]["range"] is None
    low, high = look["red"]["range"]
    assert low != high
    assert light["with_pack"] is None
    assert light["as_meant"]["grey"]["srgb"] == [118, 118, 118]


def test_to_a_camera_a_bare_x_y_is_a_guess_altogether_but_the_white_is_white() -> None:
    (light,) = seen({"x": 0.4422, "y": 0.4061}, judge="camera")
    assert all(patch["guess"] for patch in light["as_read"].values())
    assert light["as_meant"]["grey"] == {
        "srgb": [118] * 3, "p3": [118] * 3, "clipped": False, "guess": False, "range": None,
    }  # fmt: skip


def test_a_measured_light_is_no_guess_with_its_gels_either() -> None:
    (light,) = seen(spectral(illuminant("FL2"), pack=["1/2 CTO"]))
    assert not any(patch["guess"] for patch in light["as_read"].values())
    assert not any(patch["guess"] for patch in light["with_pack"].values())
    assert light["with_pack"] != light["as_read"]


@pytest.mark.parametrize("judge", ["eye", "camera"])
def test_the_white_through_a_gel_is_what_is_meant_through_it(judge: str) -> None:
    white = spectral(illuminant("LED-B3"))
    light = white | {"pack": ["1/4 CTO"], "meant": {"as_through": ["1/4 CTO"]}}
    (got,) = seen(light, white=white, judge=judge)
    assert got["with_pack"] == got["as_meant"]
    assert got["as_read"]["grey"]["srgb"] == [118, 118, 118]


def test_gels_that_hung_when_it_was_read_are_taken_off_again() -> None:
    bare = spectral(illuminant("FL11"))
    (first,) = seen(bare | {"pack": ["1/2 CTO"]})
    curve = first["with_pack"]
    # The same lamp, read through that gel.
    from evenkelvin.filters.kit import nominal_kit

    (gel,) = (gel for gel in nominal_kit() if gel.name == "1/2 CTO")
    through = spectral(illuminant("FL11") * gel.transmittance, pack=["1/2 CTO"])
    (kept, off) = seen({"reading": through, "pack": ["1/2 CTO"]}, {"reading": through, "pack": []})
    for name in SURFACES:
        assert kept["as_read"][name]["srgb"] == pytest.approx(curve[name]["srgb"], abs=1)
    assert kept["with_pack"] == kept["as_read"]
    (was,) = seen(bare)
    for name in SURFACES:
        assert off["with_pack"][name]["srgb"] == pytest.approx(was["as_read"][name]["srgb"], abs=1)


def test_warmer_is_warmer_and_greener_is_greener() -> None:
    warm, green = seen(
        {"x": 0.45, "y": 0.4079, "meant": {"as": "found"}},
        {"cct_K": 3200, "duv": 0.012, "meant": {"warmer_mired": 40}},
    )
    red, _, blue = warm["as_read"]["grey"]["srgb"]
    assert red > 118 > blue
    assert warm["as_meant"] is None
    red, middle, blue = green["as_read"]["grey"]["srgb"]
    assert middle > max(red, blue)
    red, _, blue = green["as_meant"]["grey"]["srgb"]
    assert red > blue


def test_a_light_that_cannot_be_used_stands_beside_the_others() -> None:
    key = {"x": 0.4422, "y": 0.4061, "name": "key"}
    for typo in ({"x": "0.4q", "y": 0.4, "name": "bench"},
                 {"reading": {"x": "0.4q", "y": 0.4, "name": "bench"}}):  # fmt: skip
        got = answer({"ask": "seen", "lights": [typo, key], "white": WHITE})
        assert set(got["lights"][0]) == {"name", "problem"}
        assert got["lights"][0]["name"] == "bench"
        assert got["lights"][0]["problem"]["field"].endswith("x")
        assert got["lights"][1] == seen(key)[0]
        assert got["warnings"] == [
            "1 light is left out, what was typed of it cannot be used: bench."
        ]


@pytest.mark.parametrize(
    ("request_", "field"),
    [
        ({"lights": [], "white": WHITE}, "lights"),
        ({"lights": [WHITE]}, "white"),
        ({"lights": [WHITE], "white": {"cct_K": 100}}, "white.cct_K"),
        ({"lights": [WHITE], "white": WHITE, "judge": "dog"}, "judge"),
        ({"lights": [WHITE], "white": {"x": 0.4, "y": 0.39}, "judge": "camera"}, "judge"),
        ({"lights": [WHITE], "white": WHITE, "wish": 1}, "wish"),
        ({"lights": [WHITE, 5], "white": WHITE}, "lights.1"),
    ],
)
def test_bad_questions_name_the_field(request_: dict[str, Any], field: str) -> None:
    assert answer({"ask": "seen", **request_})["problem"]["field"] == field


@pytest.mark.parametrize(
    ("light", "field"),
    [
        ({**WHITE, "pack": ["full CTX"]}, "pack.0"),
        ({"reading": WHITE, "pack": ["full CTX"]}, "pack.0"),
        ({"reading": WHITE, "wish": 1}, "wish"),
        ({**WHITE, "meant": {"as": "blue"}}, "meant.as"),
        ({**WHITE, "meant": {"like": 0}}, "meant.like"),
    ],
)
def test_bad_lights_name_the_field_within(light: Any, field: str) -> None:
    (got,) = seen(light)
    assert got["problem"]["field"] == field, got


def test_a_light_that_the_camera_hardly_sees_is_said() -> None:
    deep = spectral(np.where(GRID >= 765.0, 1.0, 0.0))
    (light,) = seen(deep, judge="camera")
    assert light["as_read"] is None
    assert light["warnings"]


@settings(max_examples=examples(60), deadline=None)
@given(
    kelvin=st.floats(2500, 20000),
    duv=st.floats(-0.01, 0.01),
    white=st.floats(2500, 10000),
    judge=st.sampled_from(["eye", "camera"]),
)
def test_every_look_is_a_colour_and_the_light_itself_is_neutral(
    kelvin: float, duv: float, white: float, judge: str
) -> None:
    lit = {"cct_K": kelvin, "duv": duv}
    (light,) = seen(lit, white={"cct_K": white, "duv": 0}, judge=judge)
    for look in ("as_read", "as_meant"):
        for patch in light[look].values():
            assert all(type(c) is int and 0 <= c <= 255 for c in patch["srgb"] + patch["p3"])
    assert light["as_meant"]["grey"]["srgb"] == [118, 118, 118]
    (own,) = seen(lit, white=lit | {"name": "w"})
    assert own["as_read"]["grey"]["srgb"] == [118, 118, 118]


@pytest.mark.parametrize("nm", [400.0, 450.0, 500.0, 550.0, 600.0, 700.0])
def test_a_single_wavelength_is_a_white_to_the_eye_too(nm: float) -> None:
    line = spectral(1.0 * (nm == GRID))
    (light,) = seen(line, white=line)
    assert light["as_read"]["grey"]["srgb"] == [118, 118, 118]
