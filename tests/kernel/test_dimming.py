"""Dimming a tungsten light: there and back, through gel, taught by readings, and bad input."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.desk import answer
from examples import examples

LAMP = {"x": "0.4287", "y": "0.4019", "lamp": "tungsten", "name": "practical"}


def ask(reading=LAMP, **more):
    return answer({"ask": "dim", "reading": reading, **more})


def test_every_way_of_asking_tells_the_same_setting():
    by_light = ask(percent_light="25")
    assert by_light["stops"] == pytest.approx(-2.0)
    for more in (
        {"stops": "−2"},
        {"percent_volts": by_light["percent_volts"]},
        {"to": {"x": by_light["x"], "y": by_light["y"]}},
    ):
        found = ask(**more)
        for name in ("percent_light", "percent_volts", "cct_K", "duv"):
            assert found[name] == pytest.approx(by_light[name], rel=1e-4), more


def test_full_is_the_light_as_it_was_read():
    found = ask(LAMP | {"illuminance_lx": 320}, percent_light=100)
    assert (found["x"], found["y"]) == (0.4287, 0.4019)
    assert found["illuminance_lx"] == 320
    assert found["percent_volts"] == 100
    assert found["words"] == "leave it at full: 3126 K"


def test_the_words_are_a_setting_and_where_it_lands():
    found = ask(LAMP | {"illuminance_lx": 320}, to={"cct_K": 2500})
    assert found["words"] == "dim to 13 % of its light, 2.9 stops; then 2501 K"
    assert found["verdict"] == "holds"
    assert found["unreached"] is None
    assert found["illuminance_lx"] == pytest.approx(320 * found["percent_light"] / 100)


@settings(max_examples=examples(40), deadline=None)
@given(
    kelvin=st.floats(2400, 3400),
    first=st.floats(0.2, 100),
    second=st.floats(0.2, 100),
    duv=st.floats(-0.004, 0.004),
)
def test_less_light_is_never_cooler(kelvin, first, second, duv):
    reading = {"cct_K": kelvin, "duv": duv, "lamp": "tungsten"}
    less, more = (ask(reading, percent_light=p) for p in sorted((first, second)))
    assert less["cct_K"] <= more["cct_K"] + 1e-6
    assert less["percent_volts"] <= more["percent_volts"] + 1e-9


@settings(max_examples=examples(20), deadline=None)
@given(first=st.floats(0.1, 0.9), second=st.floats(0.1, 0.9))
def test_dimming_twice_is_dimming_once(first, second):
    once = ask(percent_light=100 * first * second)
    between = ask(percent_light=100 * first)
    twice = ask(
        {"x": between["x"], "y": between["y"], "lamp": "tungsten"}, percent_light=100 * second
    )
    assert twice["cct_K"] == pytest.approx(once["cct_K"], rel=2e-4)


def test_a_gel_stays_on_while_the_filament_behind_it_warms():
    bare = {"cct_K": 3200, "duv": 0, "lamp": "tungsten"}

    def through(reading):
        request = {"target": {"cct_K": 4300}, "kit": ["1/2 CTB"], "depth": 1}
        return answer({"ask": "fix", "reading": reading} | request)["packs"][0]["lands"]

    lands = through(bare)
    gelled = {"x": lands["x"], "y": lands["y"], "lamp": "tungsten", "pack": ["1/2 CTB"]}
    found = ask(gelled, stops=-1)
    dimmed = ask(bare, stops=-1)
    again = through({"x": dimmed["x"], "y": dimmed["y"], "lamp": "tungsten"})
    assert found["cct_K"] == pytest.approx(again["cct_K"], abs=12.0)
    assert found["cct_K"] < lands["cct_K"] - 200.0


def test_readings_at_known_settings_correct_the_law():
    pairs = [
        {"percent_light": 50, "measured": {"cct_K": 2800, "duv": 0, "lamp": "tungsten"}},
        {"percent_light": 10, "measured": {"cct_K": 2350, "duv": 0, "lamp": "tungsten"}},
    ]
    assert ask(percent_light=50, pairs=pairs)["cct_K"] == pytest.approx(2800, abs=4)
    assert ask(percent_light=10, pairs=pairs)["cct_K"] == pytest.approx(2350, abs=4)
    between = ask(percent_light=25, pairs=pairs)["cct_K"]
    assert 2350 < between < 2800
    assert between < ask(percent_light=25)["cct_K"]
    back = ask(to={"cct_K": 2350, "duv": 0}, pairs=pairs)
    assert back["percent_light"] == pytest.approx(10, rel=0.01)


def test_volts_with_lux_correct_both_laws():
    lamp = LAMP | {"illuminance_lx": 400}
    measured = {"cct_K": 2900, "duv": 0, "lamp": "tungsten", "illuminance_lx": 160}
    pairs = [{"percent_volts": 80, "measured": measured}]
    found = ask(lamp, percent_volts=80, pairs=pairs)
    assert found["percent_light"] == pytest.approx(40)
    assert found["cct_K"] == pytest.approx(2900, abs=4)
    # Without lux the light follows from the filament.
    plain = [{"percent_volts": 80, "measured": measured | {"illuminance_lx": None}}]
    alone = ask(lamp, percent_volts=80, pairs=plain)
    assert alone["cct_K"] == pytest.approx(2900, abs=4)
    assert alone["percent_light"] != pytest.approx(40, abs=1)


def test_readings_that_follow_the_law_change_nothing():
    law = [ask(percent_light=p) for p in (40, 12)]
    pairs = [
        {
            "percent_light": one["percent_light"],
            "measured": {"x": one["x"], "y": one["y"], "lamp": "tungsten"},
        }
        for one in law
    ]
    assert ask(percent_light=5, pairs=pairs)["cct_K"] == pytest.approx(
        ask(percent_light=5)["cct_K"], abs=4
    )


@pytest.mark.parametrize(
    ("more", "words", "percent"),
    [
        ({"to": {"cct_K": 4000}}, "at full it reads 3126 K, and 4000 K is cooler", 100),
        ({"stops": 1}, "only takes light away", 100),
        ({"stops": -12}, "Below 0.1 %", 0.1),
        ({"percent_volts": 5}, "Below 0.1 %", 0.1),
        ({"to": {"cct_K": 1500}}, "Even at 0.1 %", 0.1),
        ({"to": {"x": 0.45, "y": 0.43}}, "too magenta: that is for gel", 57.5),
    ],
)
def test_what_cannot_be_reached_is_said(more, words, percent):
    found = ask(**more)
    assert words in found["unreached"]
    assert found["percent_light"] == pytest.approx(percent, abs=0.1)


def test_an_amount_may_be_compared_with_a_target():
    found = ask(stops=-1, target={"cct_K": 2900, "duv": 0}, tolerance="tight")
    assert found["verdict"] == "holds"
    assert found["steps"] < 2.0
    assert ask(stops=-1)["verdict"] is None


def test_it_says_that_it_is_an_estimate():
    assert "estimate" in ask(stops=-1)["warnings"][-1]


def test_a_spectrum_dims_as_its_chromaticity_does():
    nm = list(range(380, 781, 5))
    power = [(560 / w) ** 5 / math.expm1(1.4388e7 / (w * 3000)) for w in nm]
    lamp = {"spectrum": {"wavelengths_nm": nm, "values": power}, "lamp": "tungsten"}
    found = ask(lamp, stops=-1.5)
    plain = ask({"cct_K": 3000, "duv": 0, "lamp": "tungsten"}, stops=-1.5)
    assert found["cct_K"] == pytest.approx(plain["cct_K"], abs=0.5)


BARE = {"cct_K": 2600, "duv": 0, "lamp": "tungsten"}


@pytest.mark.parametrize(
    ("more", "field"),
    [
        ({}, "to"),
        ({"stops": -1, "percent_light": 50}, "stops"),
        ({"percent_light": 0}, "percent_light"),
        ({"percent_light": 101}, "percent_light"),
        ({"percent_volts": "half"}, "percent_volts"),
        ({"stops": -1, "reading": LAMP | {"lamp": "led"}}, "reading.lamp"),
        ({"stops": -1, "reading": {"x": 0.43, "y": 0.4}}, "reading.lamp"),
        ({"stops": -1, "reading": LAMP | {"x": 0.33, "y": 0.34}}, "reading.pack"),
        ({"to": {"cct_K": 2500}, "target": {"cct_K": 2500}}, "target"),
        ({"to": {"cct_K": 200}}, "to.cct_K"),
        ({"stops": -1, "pairs": [{"measured": BARE}]}, "pairs.0.percent_light"),
        (
            {"stops": -1, "pairs": [{"percent_light": 100, "measured": BARE}]},
            "pairs.0.percent_light",
        ),
        (
            {"stops": -1, "pairs": [{"percent_light": 40, "measured": BARE | {"cct_K": 3200}}]},
            "pairs.0.measured",
        ),
        (
            {
                "stops": -1,
                "pairs": [
                    {"percent_light": 40, "measured": BARE},
                    {"percent_light": 20, "measured": BARE | {"cct_K": 2700}},
                ],
            },
            "pairs",
        ),
        ({"stops": -1, "dimmer": 5}, "dimmer"),
    ],
)
def test_bad_input_is_named(more, field):
    reading = more.pop("reading", LAMP) if "reading" in more else LAMP
    assert ask(reading, **more)["problem"]["field"] == field
