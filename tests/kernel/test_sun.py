"""The sun through a day: spans, windows, polar days, colours and what is refused."""

from datetime import date

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.desk import answer
from evenkelvin.scouting import sky, sun
from examples import examples

BERTH = {"lat_deg": 57.7, "lon_deg": 11.9, "date": "2026-11-25", "utc_offset_h": 1}


def ask(**fields):
    return answer({"ask": "sun"} | BERTH | fields)


def test_a_november_day_is_told_in_words():
    reply = ask()
    assert reply["words"].startswith("Sunrise 08:")
    assert "sunset 15:" in reply["words"]
    assert [len(reply[name]) for name in ("up", "golden", "blue")] == [1, 2, 2]
    assert "blinds" in reply["cautions"][0]
    assert reply["warnings"] == []


def test_polar_day_and_polar_night_are_said():
    summer = ask(lat_deg=70, date="2026-06-21", facing_deg=0)
    assert summer["words"].startswith("The sun does not set on this day.")
    assert summer["up"] == [{"from": None, "to": None, "words": "all day"}]
    assert len(summer["window"]["direct"]) == 2
    winter = ask(lat_deg=70, date="2026-12-21", facing_deg=180)
    assert winter["words"] == "The sun does not rise on this day."
    assert winter["up"] == []
    assert winter["window"]["direct"] == []
    assert "does not rise" in winter["window"]["words"]


def test_a_sunset_after_midnight_is_not_lost():
    # 66° N before midsummer, with a clock far ahead of the sun: up at both midnights.
    reply = ask(lat_deg=65.5, lon_deg=11.9, date="2026-06-21", utc_offset_h=2)
    spans = reply["up"]
    assert spans
    for span in spans:
        if span["from"] is not None and span["to"] is not None:
            assert span["from"]["minute"] < span["to"]["minute"]


def test_a_north_window_gets_no_winter_sun_in_the_north():
    reply = ask(facing_deg=0)
    assert reply["window"]["direct"] == []
    assert reply["window"]["words"] == "No direct sun in the window facing north on this day."


def test_a_house_opposite_shortens_the_sun():
    free = ask(facing_deg=180)["window"]["direct"][0]
    blocked = ask(facing_deg=180, horizon_deg=8)["window"]["direct"][0]
    assert free["from"]["minute"] < blocked["from"]["minute"]
    assert blocked["to"]["minute"] < free["to"]["minute"]
    assert blocked["from"]["altitude_deg"] == pytest.approx(8, abs=0.02)
    assert ask(facing_deg=180, horizon_deg=80)["window"]["direct"] == []


@settings(max_examples=examples(25), deadline=None)
@given(
    lat=st.floats(-89, 89),
    lon=st.floats(-180, 180),
    day=st.dates(date(1950, 1, 1), date(2100, 12, 31)),
    facing=st.floats(0, 360),
)
def test_spans_are_ordered_and_hold_where_the_sun_is_inside(lat, lon, day, facing):
    where = sun.Day(sun.Place(lat, lon, round(lon / 15)), day)
    for inside in (sun.up, sun.between(sun.GOLDEN_DEG), sun.shines_into(facing, 3.0)):
        edges = []
        for span in where.spans(inside):
            start = 0.0 if span.start is None else span.start
            end = 1440.0 if span.end is None else span.end
            edges += [start, end]
            if end - start > 0.1:
                assert inside(where.at((start + end) / 2)) > 0
        assert edges == sorted(edges)


def test_a_clear_day_warms_toward_the_horizon_and_shade_is_bluer():
    high, low = sky.daylight(50, 0.05), sky.daylight(10, 0.05)
    rising = sky.cct(np.array([low.sun, high.sun, high.open_sky, high.shade]))
    assert rising.tolist() == sorted(rising.tolist())


def test_colours_are_none_where_the_estimate_fails():
    for moment in ask(sky="hazy", step_min=5)["curve"]:
        assert (moment["sun_K"] is not None) == (moment["altitude_deg"] >= 5)
        assert (moment["open_K"] is not None) == (moment["altitude_deg"] >= 10)
    reply = ask(sky="overcast", date="2026-06-01")
    assert {moment["open_K"] for moment in reply["curve"]} == {None, 6504.0}
    assert reply["estimate"]["words"].startswith("Estimate, not a reading.")


def test_a_wrong_sign_of_the_offset_is_questioned():
    assert "check the sign" in ask(lon_deg=151, utc_offset_h=-10)["warnings"][0]
    # The date line: UTC+13 at 175° W is lawful.
    assert ask(lon_deg=-175, utc_offset_h=13)["warnings"] == []


@pytest.mark.parametrize(
    ("field", "value"),
    [
        ("lat_deg", 91),
        ("lat_deg", ""),
        ("lat_deg", "north"),
        ("lon_deg", -181),
        ("utc_offset_h", 15),
        ("date", "25.11.2026"),
        ("date", "2026-02-30"),
        ("date", "20261125"),
        ("date", "1066-10-14"),
        ("date", 20261125),
        ("facing_deg", 400),
        ("horizon_deg", 90),
        ("sky", "purple"),
        ("step_min", 0),
        ("zone", "Europe"),
    ],
)
def test_bad_sun_fields_are_named(field, value):
    problem = ask(**{field: value})["problem"]
    assert problem["field"] == field
    assert problem["message"].endswith(".")
