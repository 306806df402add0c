"""What each light is meant to be: one target a light, by which everything goes."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.colorimetry.temperature import cct_to_xy
from evenkelvin.desk import answer
from examples import examples

KEY = {"x": 0.3302, "y": 0.3411, "lamp": "hmi", "name": "key"}
PRACTICAL = {"x": 0.4587, "y": 0.4119, "lamp": "tungsten", "name": "practical", "role": "practical"}
MOON = {"x": 0.3121, "y": 0.3260, "lamp": "led", "name": "moonlight"}
SIGN = {"x": 0.5300, "y": 0.4150, "lamp": "sodium", "name": "sign"}
WHITE = {"cct_K": 5600, "duv": 0}


def agree(*lights, **more):
    return answer({"ask": "agree", "lights": list(lights), "target": WHITE} | more)


def fix(meant=None, reading=KEY, target=WHITE, **more):
    question = {"ask": "fix", "reading": reading, "target": target, "meant": meant}
    return answer(question | more)


def test_a_dressed_set_is_where_it_is_meant_to_be():
    got = agree(
        KEY,
        PRACTICAL | {"meant": {"warmer_mired": 190}},
        MOON | {"meant": {"cooler_mired": 25}},
        SIGN | {"meant": {"as": "found"}},
    )
    assert got["odd_ones_out"] == []
    assert got["found"] == [3]
    assert got["work"]["words"] == "All 3 lights are where they are meant to be. 1 as found."
    assert [light["verdict"] for light in got["lights"]] == ["holds", "holds", "holds", None]
    assert got["lights"][3]["target"] is None
    assert got["lights"][1]["offset"]["words"] == "2 mired cooler than meant, a hair green"
    assert got["lights"][0]["meant"] == "as the white"
    # Without its meaning the same practical is far out.
    assert agree(KEY, PRACTICAL)["odd_ones_out"] == [1]


@pytest.mark.parametrize(
    ("meant", "words", "cct"),
    [
        (None, "as the white", 5600),
        ({"as": "white"}, "as the white", 5600),
        ({"warmer_mired": "60"}, "60 mired warmer than the white", 1e6 / (1e6 / 5600 + 60)),
        ({"cooler_mired": 12.5}, "12.5 mired cooler than the white", 1e6 / (1e6 / 5600 - 12.5)),
        ({"cct_K": 2700}, "2700 K of its own", 2700),
    ],
)
def test_a_meaning_is_a_target(meant, words, cct):
    got = fix(meant)
    assert got["meant"] == words
    assert got["target"]["cct_K"] == pytest.approx(cct, abs=1e-6)
    assert got["white"]["cct_K"] == pytest.approx(5600, abs=1e-6)
    assert got["dial"]["x"] == got["target"]["x"]


def test_a_tint_is_beside_that_of_the_white():
    got = fix({"warmer_mired": 40, "duv": "0,004"}, target={"cct_K": 5600, "duv": 0.003})
    assert got["target"]["duv"] == pytest.approx(0.007)
    assert got["meant"] == "40 mired warmer than the white, Duv +0.0040"


def test_as_through_a_gel_is_where_that_gel_takes_the_white():
    xy = cct_to_xy(5600.0, 0.0)
    # A light that is the white, as the kernel has it: daylight bent to the very x y.
    white = {"x": float(xy[0]), "y": float(xy[1]), "lamp": "daylight"}
    request = {"ask": "fix", "reading": white, "target": {"cct_K": 3200}, "kit": ["1/2 CTO"]}
    lands = answer(request | {"depth": 1})["packs"][0]["lands"]
    target = fix({"as_through": ["1/2 CTO"]})["target"]
    assert target["mired"] == pytest.approx(lands["mired"], abs=0.5)
    assert target["duv"] == pytest.approx(lands["duv"], abs=2e-4)
    assert fix({"as_through": ["1/2 CTO"]})["meant"] == "the white through 1/2 CTO"


def test_as_through_a_measured_gel_that_the_light_brings():
    gel = {"name": "curtain", "wavelengths_nm": [400, 550, 700], "transmittance": [0.2, 0.5, 0.8]}
    light = KEY | {"own_gels": [gel], "meant": {"as_through": ["curtain"]}}
    got = agree(light)
    assert got["lights"][0]["target"]["mired"] > 1e6 / 5600 + 50


def test_a_colour_far_from_white_works_in_steps_and_x_y():
    neon = {"x": 0.20, "y": 0.20, "name": "neon"}
    got = agree(neon | {"meant": {"x": 0.21, "y": 0.205}})["lights"][0]
    assert got["target"]["cct_K"] is None
    assert got["offset"]["mired"] is None
    assert got["offset"]["words"] == "8.2 colour steps away: x −0.0100, y −0.0050"
    assert got["verdict"] == "out"
    assert agree(neon | {"meant": {"x": 0.2, "y": 0.2}})["odd_ones_out"] == []


def test_like_another_light_and_like_itself_on_another_day():
    twin = KEY | {"name": "key 2", "meant": {"like": 0}}
    got = agree(KEY, twin)["lights"][1]
    assert (got["target"]["x"], got["target"]["y"]) == pytest.approx((0.3302, 0.3411))
    assert got["meant"] == "like key"
    was = {"x": 0.3390, "y": 0.3480, "name": "key, day 1"}
    got = fix({"like": was})
    assert got["meant"] == "like key, day 1"
    assert got["target"]["x"] == pytest.approx(0.3390)


def test_found_has_nothing_but_its_reading():
    got = fix({"as": "found"})
    assert got["reading"]["x"] == pytest.approx(0.3302)
    for field in ("target", "offset", "verdict", "dial", "dim"):
        assert got[field] is None
    assert got["packs"] == []
    alone = agree(SIGN | {"meant": {"as": "found"}})
    assert alone["work"]["words"] == "Every light is as found: there is nothing to judge."
    assert alone["spread"]["steps"] == 0


OTHERS = [
    KEY,
    PRACTICAL | {"meant": {"warmer_mired": 150}},
    {"x": 0.36, "y": 0.37, "name": "fill", "lamp": "led"},
]


@settings(max_examples=examples(25), deadline=None)
@given(x=st.floats(0.30, 0.52), y=st.floats(0.31, 0.42), place=st.integers(0, 3))
def test_found_never_changes_the_answer_of_another_light(x, y, place):
    odd = {"x": x, "y": y, "name": "sign", "meant": {"as": "found"}}
    with_it = agree(*OTHERS[:place], odd, *OTHERS[place:])
    without = agree(*OTHERS)
    lights = [light for light in with_it["lights"] if light["name"] != "sign"]
    assert lights == without["lights"]
    assert with_it["work"]["pieces"] == without["work"]["pieces"]
    assert with_it["spread"]["steps"] == without["spread"]["steps"]


@settings(max_examples=examples(40), deadline=None)
@given(
    first=st.floats(3000, 7000),
    second=st.floats(3000, 7000),
    mired=st.floats(0, 60),
    warmer=st.booleans(),
    duv=st.floats(-0.004, 0.004),
)
def test_relative_targets_move_with_the_white_by_as_many_mired(first, second, mired, warmer, duv):
    meant = {"warmer_mired" if warmer else "cooler_mired": mired, "duv": duv}
    one, other = (
        fix(meant, target={"cct_K": kelvin}, kit=[])["target"] for kelvin in (first, second)
    )
    assert one["mired"] - other["mired"] == pytest.approx(1e6 / first - 1e6 / second, abs=1e-6)
    assert one["duv"] == pytest.approx(other["duv"], abs=1e-9)


@settings(max_examples=examples(25), deadline=None)
@given(kelvin=st.floats(2500, 10_000), duv=st.floats(-0.01, 0.01))
def test_through_nothing_is_the_white(kelvin, duv):
    target = {"cct_K": kelvin, "duv": duv}
    assert fix({"as_through": []}, target=target, kit=[]) == fix(None, target=target, kit=[]) | {
        "meant": "the white through no gel",
        "offset": fix({"as_through": []}, target=target, kit=[])["offset"],
    }


def test_through_a_gel_goes_by_the_spectrum_of_a_white_that_was_read():
    nm = list(range(380, 781, 5))
    spiky = [1.0 if at in (435, 545, 610) else 0.02 for at in nm]
    read = {"spectrum": {"wavelengths_nm": nm, "values": spiky}}
    xy = answer({"ask": "describe", "reading": read})
    by_spectrum = fix({"as_through": ["full CTO"]}, target=read)["target"]
    by_xy = fix({"as_through": ["full CTO"]}, target={"x": xy["x"], "y": xy["y"]})["target"]
    assert abs(by_spectrum["mired"] - by_xy["mired"]) > 5


def test_an_offset_of_zero_is_the_white():
    assert fix({"warmer_mired": 0})["target"]["x"] == pytest.approx(fix()["target"]["x"], abs=1e-12)


def test_twins_are_hung_alike_unless_that_costs_a_verdict():
    first = {"x": 0.3805, "y": 0.3780, "lamp": "fluorescent", "name": "batten 1"}
    second = first | {"x": 0.3809, "y": 0.3786, "name": "batten 2"}
    got = agree(first, second, KEY)
    assert got["twins"] == [[0, 1]]
    assert got["lights"][0]["pack"]["gels"] == got["lights"][1]["pack"]["gels"]
    alone = [agree(one)["lights"][0]["pack"] for one in (first, second)]
    rank = {"holds": 0, "near": 1, "out": 2}
    for light, own in zip(got["lights"], alone, strict=False):
        assert rank[light["pack"]["verdict"]] <= rank[own["verdict"]]
    # Meant to be different they are no twins.
    assert agree(first, second | {"meant": {"warmer_mired": 50}})["twins"] == []
    # What hangs already makes them different lamps.
    assert agree(first, second | {"pack": ["1/8 CTB"]})["twins"] == []


@settings(max_examples=examples(30), deadline=None)
@given(
    x=st.floats(0.33, 0.42),
    lift=st.floats(-0.008, 0.012),
    dx=st.floats(-0.0008, 0.0008),
    radius=st.floats(1.0, 6.0),
)
def test_no_twin_pays_for_the_other(x, lift, dx, radius):
    y = -3.0 * x * x + 2.87 * x - 0.275 + lift
    pair = [
        {"x": x + shift, "y": y, "lamp": "led", "name": name}
        for shift, name in ((0, "a"), (dx, "b"))
    ]
    got = agree(*pair, tolerance={"steps": radius}, depth=2)
    rank = {"holds": 0, "near": 1, "out": 2}
    for light, one in zip(got["lights"], pair, strict=True):
        own = agree(one, tolerance={"steps": radius}, depth=2)["lights"][0]["pack"]
        assert (own is None) == (light["pack"] is None)
        if own is not None:
            assert rank[light["pack"]["verdict"]] <= rank[own["verdict"]]


def test_only_lights_meant_alike_can_be_unlike_in_spectrum():
    nm = list(range(380, 781, 5))
    flat = {"wavelengths_nm": nm, "values": [1.0] * len(nm)}
    lines = [3.0 if at in (450, 540, 605) else 0.05 for at in nm]
    spiky = {"wavelengths_nm": nm, "values": lines}
    lights = [{"spectrum": flat, "name": "a"}, {"spectrum": spiky, "name": "b"}]
    loose = {"tolerance": {"steps": 50}}
    assert len(agree(*lights, **loose)["unlike_pairs"]) == 1
    meant = [lights[0], lights[1] | {"meant": {"warmer_mired": 5}}]
    assert agree(*meant, **loose)["unlike_pairs"] == []


def test_a_camera_judges_against_what_is_meant():
    nm = list(range(380, 781, 5))

    def planck(kelvin):
        x = 1.4388e7 / (np.array(nm) * kelvin)
        values = (560 / np.array(nm)) ** 5 / np.expm1(x)
        return {"spectrum": {"wavelengths_nm": nm, "values": (values / values.max()).tolist()}}

    warm = planck(1e6 / (1e6 / 3600 + 60)) | {"name": "warm"}
    target = {"cct_K": 3600}
    meant = warm | {"meant": {"warmer_mired": 60}}
    found = warm | {"meant": {"as": "found"}, "name": "sign"}
    got = agree(warm, meant, found, target=target, judge="camera")
    assert got["lights"][0]["camera"]["verdict"] == "out"
    assert got["lights"][1]["camera"]["steps"] == pytest.approx(0.0, abs=0.2)
    assert got["lights"][2]["camera"] is None
    assert got["lights"][2]["verdict"] is None


def test_a_filament_that_is_too_cool_for_what_is_meant_may_be_dimmed():
    lamp = {"x": 0.4287, "y": 0.4019, "lamp": "tungsten", "name": "practical", "role": "practical"}
    got = agree(lamp | {"meant": {"cct_K": 2700}}, target={"cct_K": 4300})
    dim = got["lights"][0]["dim"]
    assert dim["verdict"] == "holds"
    assert dim["before_gel"] is True
    assert dim["lands"]["cct_K"] == pytest.approx(2700, abs=5)
    asked = answer({"ask": "dim", "reading": lamp, "to": {"cct_K": 2700, "duv": 0}})
    assert dim["percent_light"] == pytest.approx(asked["percent_light"])
    assert got["work"] == {"pieces": 0, "stops_lost_max": 0.0, "words": "1 of 1 out: 1 to dim."}
    # Any other lamp, or one that shall be cooler, is not offered a dimmer.
    led = lamp | {"lamp": "led", "meant": {"cct_K": 2700}}
    assert agree(led, target={"cct_K": 4300})["lights"][0]["dim"] is None
    assert fix(None, lamp, {"cct_K": 4300})["dim"] is None
    # A fresnel is gelled as well as dimmed.
    fresnel = lamp | {"role": "back light", "meant": {"cct_K": 2700}}
    assert agree(fresnel, target={"cct_K": 4300})["lights"][0]["dim"]["before_gel"] is False


def test_a_filament_brighter_than_it_was_may_be_dimmed():
    lamp = {"x": 0.4287, "y": 0.4019, "lamp": "tungsten", "illuminance_lx": 400}
    was = {"x": 0.4290, "y": 0.4020, "illuminance_lx": 340}
    dim = fix({"like": was}, lamp)["dim"]
    assert dim["stops"] == pytest.approx(np.log2(340 / 400))
    # Of the white only the colour counts.
    assert fix(None, lamp, was)["dim"] is None


def test_each_target_has_its_ring_and_lights_meant_alike_share_it():
    lights = [
        KEY,
        PRACTICAL | {"meant": {"warmer_mired": 190}},
        MOON | {"meant": {"warmer_mired": 190}},
        SIGN | {"meant": {"as": "found"}},
    ]
    got = answer({"ask": "field", "target": WHITE, "lights": lights})
    assert [ring["lights"] for ring in got["targets"]] == [[0], [1, 2]]
    assert [light["target"] for light in got["lights"]] == [0, 1, 1, None]
    white, warm = got["targets"]
    assert (white["across"], white["up"]) == pytest.approx((0, 0), abs=1e-9)
    assert white["outline"] == pytest.approx(np.array(got["tolerance"]["outline"]))
    assert warm["across"] < -20
    assert warm["words"] == "190 mired warmer than the white"
    sizes = np.hypot(*(np.array(warm["outline"]) - [warm["across"], warm["up"]]).T)
    assert sizes == pytest.approx(np.full(73, 4.0))
    # The light's place in its ring is its offset.
    at = got["lights"][1]
    away = np.hypot(at["across"] - warm["across"], at["up"] - warm["up"])
    assert away == pytest.approx(agree(*lights)["lights"][1]["steps"])


def test_a_log_is_judged_by_what_was_meant():
    reading = {"x": 0.4587, "y": 0.4119, "target": WHITE}
    got = answer(
        {
            "ask": "judge",
            "readings": [
                reading,
                reading | {"meant": {"warmer_mired": 190}},
                reading | {"meant": {"as": "found"}},
                reading | {"meant": {"like": {"x": 0.4590, "y": 0.4120}}},
                reading | {"meant": {"warmer_mired": "a lot"}},
                reading | {"meant": {"cct_K": 2700}, "target": None},
                reading | {"meant": "warm"},
            ],
        }
    )
    assert got["verdicts"] == ["out", "holds", None, "holds", None, "holds", None]
    assert got["found"] == [2]


@pytest.mark.parametrize(
    ("meant", "field"),
    [
        ("warm", "meant"),
        ({}, "meant"),
        ({"as": "blue"}, "meant.as"),
        ({"as": "white", "cct_K": 3200}, "meant.cct_K"),
        ({"warmer_mired": 10, "cooler_mired": 10}, "meant.cooler_mired"),
        ({"warmer_mired": -10}, "meant.warmer_mired"),
        ({"warmer_mired": "some"}, "meant.warmer_mired"),
        ({"cooler_mired": 150}, "meant"),
        ({"warmer_mired": 10, "duv": 0.2}, "meant.duv"),
        ({"as": "white", "duv": 0.002}, "meant.duv"),
        ({"x": 0.3}, "meant.y"),
        ({"y": 0.3}, "meant.x"),
        ({"x": 0.9, "y": 0.9}, "meant.y"),
        ({"cct_K": 200}, "meant.cct_K"),
        ({"as_through": ["half blue"]}, "meant.as_through.0"),
        ({"as_through": "1/2 CTB"}, "meant.as_through"),
        ({"as_through": ["1/8 CTB"] * 11}, "meant.as_through"),
        ({"like": 7}, "meant.like"),
        ({"like": -1}, "meant.like"),
        ({"like": 1}, "meant.like"),
        ({"like": {"x": 0.3}}, "meant.like.y"),
        ({"like": "key"}, "meant.like"),
        ({"moonlight": True}, "meant.moonlight"),
    ],
)
def test_bad_meanings_are_refused_by_field(meant, field):
    assert agree(KEY, MOON | {"meant": meant})["lights"][1]["problem"]["field"] == field


def test_like_in_a_circle_names_the_lights():
    a, b, c = (KEY | {"name": name} for name in ("batten 1", "batten 2", "batten 3"))
    got = agree(a | {"meant": {"like": 1}}, b | {"meant": {"like": 2}}, c | {"meant": {"like": 0}})
    first, _, third = (light["problem"] for light in got["lights"])
    assert first["field"] == "meant.like"
    assert "batten 1, batten 2 and batten 3 are meant like each other" in first["message"]
    assert "batten 3, batten 1 and batten 2" in third["message"]
    alone = agree(KEY, MOON | {"meant": {"like": 1}})["lights"]
    assert alone[0]["verdict"] == "holds"
    assert alone[1]["problem"]["message"] == (
        "moonlight is meant like itself: choose another light."
    )


def test_what_is_meant_like_a_light_that_cannot_be_used_is_left_out_with_it():
    typo = KEY | {"name": "bench", "x": "0.4q"}
    follower = KEY | {"name": "shelf", "meant": {"like": 0}}
    further = KEY | {"name": "stair", "meant": {"like": 1}}
    got = agree(typo, follower, further, KEY)
    assert [light["problem"] and light["problem"]["field"] for light in got["lights"]] == [
        "x", "meant.like", "meant.like", None,
    ]  # fmt: skip
    assert "meant like bench" in got["lights"][1]["problem"]["message"]
    # There is no such colour beside this white: the others are answered all the same.
    got = agree(KEY, MOON | {"meant": {"cooler_mired": 150}}, KEY | {"meant": {"like": 0}})
    assert "150 mired cooler" in got["lights"][1]["problem"]["message"]
    assert got["lights"][2]["verdict"] == "holds"


def test_what_does_not_exist_beside_a_white_is_said():
    far = fix({"cooler_mired": 150})["problem"]
    assert far["field"] == "meant"
    assert "150 mired cooler than the white" in far["message"]
    colour = {"x": 0.2, "y": 0.2}
    no_cct = fix({"warmer_mired": 10}, target=colour)["problem"]
    assert "no CCT" in no_cct["message"]
    assert fix({"like": 0})["problem"]["field"] == "meant.like"


@pytest.mark.parametrize(
    "meant", [{"warmer_mired": 60}, {"as_through": ["1/2 CTO"]}, {"cct_K": 2700}]
)
def test_a_lamp_is_dialled_and_driven_to_what_it_is_meant_to_be(meant):
    want = fix(meant)["target"]
    dial = answer({"ask": "dial", "target": WHITE, "meant": meant, "history": []})
    assert dial["target"] == want
    lamps = [
        {"x": x, "y": y, "illuminance_lx": 100} for x, y in [(0.7, 0.29), (0.2, 0.7), (0.15, 0.05)]
    ]
    drive = answer({"ask": "drive", "primaries": lamps, "target": WHITE, "meant": meant})
    assert drive["target"] == want
    # As found is not judged; whoever dials it nevertheless brings it to the white.
    found = answer({"ask": "dial", "target": WHITE, "meant": {"as": "found"}, "history": []})
    assert found["target"] == answer({"ask": "dial", "target": WHITE, "history": []})["target"]
    wrong = {"ask": "dial", "target": WHITE, "meant": {"warmer_mired": "lots"}, "history": []}
    assert answer(wrong)["problem"]["field"] == "meant.warmer_mired"
