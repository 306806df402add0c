"""Each light's stop for the camera and its ratio to the key, as read and with its gel on."""

import math

import pytest

from evenkelvin.desk import answer

CAMERA = {"iso": "800", "fps": "24", "shutter_deg": "180"}


def ask(lights, **fields):
    return answer({"ask": "levels", "lights": lights} | fields)


def test_a_light_gets_the_stop_that_expose_gives():
    reply = ask([{"name": "key", "illuminance_lx": "941"}], camera=CAMERA)
    alone = answer({"ask": "expose", "known": CAMERA | {"illuminance_lx": "941"}})
    assert reply["lights"][0]["now"]["stop"] == alone["words"]
    assert reply["lights"][0]["gelled"] is None


def test_ratios_are_to_the_key_as_read_and_with_the_gel_on():
    reply = ask(
        [
            {"name": "key", "illuminance_lx": 800, "loss_stops": 1},
            {"name": "fill", "illuminance_lx": 200},
            {"name": "back", "illuminance_fc": 1600 * 0.3048**2, "loss_stops": 0.5},
        ],
        key=0,
        camera=CAMERA,
    )
    key, fill, back = reply["lights"]
    assert key["now"]["stops_to_key"] is None
    assert fill["now"]["stops_to_key"] == pytest.approx(-2)
    assert fill["now"]["ratio_words"] == "1:4, 2 stops under"
    assert fill["gelled"]["stops_to_key"] == pytest.approx(-1)  # the key loses a stop
    assert fill["gelled"]["stop"] == fill["now"]["stop"]
    assert back["now"]["stops_to_key"] == pytest.approx(1)
    assert back["gelled"]["stops_to_key"] == pytest.approx(1.5)


def test_a_gel_costs_the_stop_what_it_takes():
    dim, bright = ask(
        [
            {"illuminance_lx": 400},
            {"illuminance_lx": 800, "loss_stops": 1},
        ],
        camera=CAMERA,
    )["lights"]
    assert bright["gelled"]["stop"] == dim["now"]["stop"] != bright["now"]["stop"]


def test_flash_is_compared_with_flash_only():
    reply = ask(
        [{"exposure_lx_s": 20}, {"exposure_lx_s": 10}, {"illuminance_lx": 500}, {}],
        key=0,
        camera=CAMERA,
    )["lights"]
    assert reply[1]["now"]["stops_to_key"] == pytest.approx(-1)
    assert reply[2]["now"]["stops_to_key"] is None
    assert reply[2]["now"]["stop"] is not None
    assert reply[3]["now"] == {"stop": None, "stops_to_key": None, "ratio_words": None}
    assert math.sqrt(20 * 800 / 250) == 8  # N² = H·S/C of ISO 2720
    assert reply[0]["now"]["stop"] == "f/8"


def test_stops_are_said_in_tenths_on_request():
    reply = ask(
        [{"illuminance_lx": 100}, {"illuminance_lx": 123}], key=0, camera=CAMERA, say="tenths"
    )["lights"]
    assert reply[1]["now"]["ratio_words"] == "1.23:1, 0.3 stops over"
    assert "tenth" in reply[0]["now"]["stop"]


@pytest.mark.parametrize(
    ("fields", "field"),
    [
        ({"lights": [{}], "key": 1}, "key"),
        ({"lights": [{}], "camera": {"iso": "fast"}}, "camera.iso"),
        ({"lights": [{}], "camera": {"f_number": 4}}, "camera.f_number"),
        ({"lights": [{}], "say": "halves"}, "say"),
    ],
)
def test_bad_fields_are_named(fields, field):
    assert answer({"ask": "levels"} | fields)["problem"]["field"] == field


@pytest.mark.parametrize(
    ("light", "field"),
    [
        ({"illuminance_lx": "x"}, "illuminance_lx"),
        ({"illuminance_lx": 1, "exposure_lx_s": 1}, "exposure_lx_s"),
    ],
)
def test_what_is_wrong_with_a_light_is_told_at_the_light(light, field):
    (got,) = answer({"ask": "levels", "lights": [light]})["lights"]
    assert got["problem"]["field"] == field
