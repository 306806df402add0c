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
    for inside in (
        sun.up,
        sun.between(sun.GOLDEN_DEG),
        sun.Window(facing, ((facing, 3.0),)).direct,
    ):
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


def test_the_horizon_is_a_line_from_point_to_point() -> None:
    window = sun.Window(350.0, ((20.0, 10.0), (340.0, 30.0), (350.0, 20.0)))
    heights = [(340, 30), (345, 25), (350, 20), (5, 15), (20, 10), (60, 10), (300, 30)]
    for azimuth, height in heights:
        assert window.horizon_at(azimuth) == pytest.approx(height)


@pytest.mark.parametrize("seed", range(6))
def test_direct_sun_over_a_line_is_what_every_minute_says(seed: int) -> None:
    chance = np.random.default_rng(seed)
    facing = float(chance.uniform(0, 360))
    points = tuple(
        ((facing + float(aside)) % 360.0, float(height))
        for aside, height in zip(chance.uniform(-90, 90, 6), chance.uniform(0, 40, 6), strict=True)
    )
    window = sun.Window(facing, points)
    day = sun.Day(sun.Place(float(chance.uniform(-60, 60)), 10.0, 1.0), date(2026, 5, 1))
    spans = day.spans(window.direct)
    for minute in range(0, 1440, 7):
        where = day.at(minute)
        within = any((s.start or 0) <= minute <= (s.end or 1440) for s in spans)
        ahead = abs((where.azimuth_deg - facing + 180) % 360 - 180) < 90
        above = where.altitude_deg > window.horizon_at(where.azimuth_deg)
        edge = min((abs(minute - e) for s in spans for e in (s.start, s.end) if e), default=99)
        if edge > sun.STEP:
            assert within == (ahead and above and sun.up(where) > 0)


@pytest.mark.parametrize("seed", range(4))
def test_the_share_of_the_sky_is_what_rays_count(seed: int) -> None:
    """Rays over the half sphere before the pane, weighted by the cosine to it (Monte Carlo)."""
    chance = np.random.default_rng(seed)
    heights = chance.uniform(0, 60, 5)
    asides = np.sort(chance.uniform(-90, 90, 5))
    line = zip(asides.tolist(), heights.tolist(), strict=True)
    window = sun.Window(0.0, tuple((aside % 360.0, height) for aside, height in line))
    rays = chance.normal(size=(400_000, 3))
    east, north, up = (rays / np.linalg.norm(rays, axis=1)[:, None]).T
    north, up = np.abs(north), np.abs(up)
    aside, altitude = np.degrees(np.arctan2(east, north)), np.degrees(np.arcsin(up))
    seen = altitude > np.interp(aside, asides, heights)
    assert window.sky_share == pytest.approx(np.average(seen, weights=north), abs=0.004)
    assert sun.Window(0.0).sky_share == pytest.approx(1.0)


def test_several_windows_are_answered_together_each_by_its_own_view() -> None:
    line = [{"azimuth_deg": "N", "altitude_deg": "12,5"}, {"azimuth_deg": 60, "altitude_deg": 40}]
    some = [{"name": "bow", "facing_deg": "N", "horizon": line}, {"name": "stern"}]
    found = ask(windows=some)["windows"]
    alone = ask(facing_deg=0, horizon=line)["window"]
    assert [each["name"] for each in found] == ["bow", "stern"]
    assert found[0]["window"] == alone
    assert found[1]["window"] is None
    assert alone["horizon"][0] == {"azimuth_deg": 0, "altitude_deg": 12.5}
    assert "%" in alone["sky_words"]
