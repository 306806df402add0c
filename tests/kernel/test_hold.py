"""How long what hangs on a window holds: against every minute reckoned by itself, and refusals."""

from __future__ import annotations

from datetime import date

import colour
import numpy as np
import pytest

from evenkelvin.desk import answer
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.scouting import sky, sun

NM = np.arange(380, 781, 5)
#: Hamburg in June, its clock two hours ahead.
PLACE = {"lat_deg": 53.55, "lon_deg": 9.99, "date": "2026-06-21", "utc_offset_h": 2}
GELS = {gel.name: gel.transmittance for gel in nominal_kit()}
#: The observer of colour-science (CIE 015:2018), not ours.
BARS = (
    colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"]
    .copy()
    .align(colour.SpectralShape(380, 780, 5))
    .values
)


def ask(*windows, **fields):
    fields = {"time": "15:00", "target": {"cct_K": 3200}, "windows": list(windows)} | fields
    return answer({"ask": "hold"} | fields)


def daylight(cct_K, green=0.0):
    """CIE daylight by colour-science, with some green for the leaves before a window."""
    xy = colour.temperature.CCT_to_xy_CIE_D(cct_K)
    made = colour.sd_CIE_illuminant_D_series(xy, shape=colour.SpectralShape(380, 780, 5))
    return made.values * (1.0 + green * np.exp(-(((NM - 550) / 40.0) ** 2)))


def read_at(minute, power):
    spectrum = {"wavelengths_nm": NM.tolist(), "values": power.tolist()}
    return {"time": sun.clock(minute), "spectrum": spectrum, "lamp": "daylight"}


def steps_from(power, through, target_xy):
    """Distance in u' v' over 0.0011, the one-step of CIE TN 001:2014."""
    tristimulus = power * through @ BARS
    apart = colour.xy_to_Luv_uv(tristimulus[:2] / tristimulus.sum()) - colour.xy_to_Luv_uv(
        target_xy
    )
    return float(np.hypot(*apart)) / 0.0011


def word(steps, radius=4.0):
    return "holds" if steps <= radius else "near" if steps <= 2 * radius else "out"


def carried(power, start, minute, facing, turbidity):
    """A reading changed as the sky's estimate changes, each minute by itself; None: too low."""
    place = sun.Place(PLACE["lat_deg"], PLACE["lon_deg"], PLACE["utc_offset_h"])
    seen = []
    for each in (start, minute):
        where = sun.position(place, date.fromisoformat(PLACE["date"]), each)
        if where.altitude_deg < sky.LOWEST_SKY_DEG:
            return None
        light = sky.daylight(where.altitude_deg, turbidity)
        shines = sun.Window(facing).direct(where) > 0
        seen.append(light.open_sky if shines else light.shade)
    return power * seen[1] / seen[0]


def by_hand(readings, through, target_xy, facing, minute):
    """The verdict of one minute, from nothing but its neighbours."""
    minutes = [each for each, _ in readings]
    if minutes[0] <= minute <= minutes[-1]:
        after = next(i for i, each in enumerate(minutes) if each >= minute)
        if minutes[after] == minute:
            mixed = readings[after][1]
        else:
            (start, one), (end, two) = readings[after - 1 : after + 1]
            part = (minute - start) / (end - start)
            mixed = (1 - part) * one / (one @ BARS)[1] + part * two / (two @ BARS)[1]
        return word(steps_from(mixed, through, target_xy))
    start, power = readings[0 if minute < minutes[0] else -1]
    lights = [carried(power, start, minute, facing, one) for one in sky.TURBIDITY.values()]
    if lights[0] is None:
        return None
    return word(max(steps_from(one, through, target_xy) for one in [*lights, power]))


@pytest.mark.parametrize(
    ("facing", "gels", "readings"),
    [
        (270, ["full CTO"], [(850, 5600, 0.02), (1000, 5000, 0.0)]),
        (180, ["3/4 CTO"], [(610, 6100, 0.0), (700, 5200, 0.05), (930, 4700, 0.0)]),
        (20, ["full CTO", "1/4 CTO"], [(540, 9500, 0.0), (845, 7000, 0.0), (1100, 8200, 0.0)]),
        (90, [], [(660, 6500, 0.0)]),
    ],
)
def test_the_stretches_are_those_of_every_minute_by_itself(facing, gels, readings):
    target = 3200 if gels else 6500
    shown = ask(
        {
            "facing_deg": facing,
            "gels": gels,
            "readings": [read_at(minute, daylight(cct, green)) for minute, cct, green in readings],
        },
        target={"cct_K": target},
        **PLACE,
    )
    (window,) = shown["windows"]
    found = [None] * 1440
    for each in window["stretches"]:
        span = range(each["from_minute"], each["to_minute"] + 1)
        found[span.start : span.stop] = [each["verdict"]] * len(span)
    through = np.prod([GELS[name] for name in gels], axis=0) if gels else np.ones(len(NM))
    known = [(minute, daylight(cct, green)) for minute, cct, green in readings]
    target_xy = np.array([shown["target"]["x"], shown["target"]["y"]])
    want = [by_hand(known, through, target_xy, facing, minute) for minute in range(1440)]
    off = [minute for minute in range(1440) if found[minute] != want[minute]]
    # An edge of the estimate may lie a minute aside: the sun's place is known every four minutes.
    assert all(
        want[minute] in found[minute - 1 : minute + 2] and not known[0][0] <= minute <= known[-1][0]
        for minute in off
    ), [(sun.clock(minute), found[minute], want[minute]) for minute in off]
    assert len(off) <= 4
    assert {"holds", "near"} & set(want)


def test_the_hour_of_a_reading_has_the_verdict_that_fix_has_for_it():
    read = read_at(900, daylight(5400, 0.04))
    other = read_at(1000, daylight(4600))
    fixed = answer(
        {
            "ask": "fix",
            "reading": {name: value for name, value in read.items() if name != "time"},
            "target": {"cct_K": 3200},
        }
    )
    assert fixed["packs"]
    for pack in fixed["packs"]:
        (window,) = ask({"gels": pack["gels"], "readings": [read, other]})["windows"]
        here = next(
            one for one in window["stretches"] if one["from_minute"] <= 900 <= one["to_minute"]
        )
        assert here["verdict"] == window["hung"]["verdict"] == pack["verdict"]
        assert window["hung"]["steps"] == pytest.approx(pack["steps"])
        assert window["hung"]["odds"] == pytest.approx(pack["odds"])


def test_the_stretch_is_said_with_its_ends_and_what_of_it_is_estimated():
    readings = [read_at(850, daylight(5600)), read_at(1000, daylight(5000))]
    (window,) = ask({"gels": ["full CTO"], "readings": readings}, time="14:30")["windows"]
    holds = next(one for one in window["stretches"] if one["verdict"] == "holds")
    near = next(one for one in window["stretches"] if one["verdict"] == "near")
    assert window["words"] == (f"Holds {holds['from']} to {holds['to']}, near until {near['to']}.")
    assert not holds["estimated"]
    (wide,) = ask({"gels": ["full CTO"], "readings": readings}, time="14:30", **PLACE)["windows"]
    assert wide["words"].endswith("by the sun's estimate.")
    assert any(one["estimated"] and one["verdict"] for one in wide["stretches"])


def test_without_a_place_nothing_is_said_beyond_the_readings():
    readings = [read_at(850, daylight(5600)), read_at(1000, daylight(5000))]
    for time, beside in (("9:00", "before 14:10"), ("20:00", "after 16:40")):
        (window,) = ask({"readings": readings}, time=time)["windows"]
        assert window["basis"] == "unknown"
        assert window["light"] is None
        assert beside in window["basis_words"]
        assert window["hung"] is None
        assert window["packs"] == []
        assert {one["verdict"] for one in window["stretches"] if one["to_minute"] < 850} == {None}


def test_an_estimate_says_its_spread_and_never_promises_more_than_a_reading():
    readings = [read_at(850, daylight(5600)), read_at(1000, daylight(5000))]
    (window,) = ask({"readings": readings, "facing_deg": 200}, time="18:30", **PLACE)["windows"]
    low, high = window["light_K"]
    assert window["basis"] == "estimate"
    assert low < high
    assert low - 1 <= window["light"]["cct_K"] <= high + 1
    (read,) = ask({"readings": readings}, time="16:40", **PLACE)["windows"]
    spread = [each["packs"][0]["lands"]["cct_spread_K"] for each in (window, read)]
    assert spread[0][1] - spread[0][0] > spread[1][1] - spread[1][0]


def test_neutral_density_is_for_the_level_alone():
    readings = [
        {"time": "14:00", "cct_K": 5600, "lamp": "daylight", "illuminance_lx": 4000},
        {"time": "16:00", "cct_K": 5600, "lamp": "daylight", "illuminance_lx": 1000},
    ]
    (bare,) = ask({"gels": ["full CTO"], "readings": readings}, wanted_lx=200)["windows"]
    (hung,) = ask({"gels": ["full CTO", "ND 0.6"], "readings": readings}, wanted_lx=200)["windows"]
    # Even stops: between 4000 and 1000 lx lies 2000.
    assert bare["illuminance_lx"] == pytest.approx(2000)
    assert hung["nd"] == bare["nd"]
    assert hung["stretches"] == bare["stretches"]
    assert bare["nd"]["stops"] == pytest.approx(np.log2(10) - bare["hung"]["stops_lost"])
    assert all("ND" not in name for pack in bare["packs"] for name in pack["gels"])


def test_a_reading_through_a_gel_counts_as_the_glass_without_it():
    bare = daylight(5600)
    gelled = read_at(900, bare * GELS["1/2 CTO"]) | {"pack": ["1/2 CTO"]}
    (one,) = ask({"readings": [gelled]})["windows"]
    (two,) = ask({"readings": [read_at(900, bare)]})["windows"]
    assert one["basis"] == two["basis"] == "reading"
    assert one["light"]["cct_K"] == pytest.approx(two["light"]["cct_K"], abs=1)
    assert one["words"] == two["words"]


def test_what_cannot_be_read_is_named_and_the_rest_stays():
    good = {"time": "14:00", "cct_K": 5600, "lamp": "daylight"}
    (window, empty) = ask({"readings": [good, {**good, "time": "15:00", "cct_K": 90}]}, {})[
        "windows"
    ]
    assert "15:00 is left out" in window["warnings"][0]
    assert empty["basis"] == "none"
    assert empty["light"] is None
    for fields, field in (
        ({"time": "25:00"}, "time"),
        ({"windows": []}, "windows"),
        ({"windows": [{"readings": [{"cct_K": 5600}]}]}, "windows.0.readings.0.time"),
        ({"windows": [{"gels": ["blanket"]}]}, "windows.0.gels.0"),
        ({"windows": [{"readings": [{**good, "lux": 3}]}]}, "windows.0.readings.0.lux"),
        ({**PLACE, "date": "tomorrow"}, "date"),
    ):
        assert ask({}, **fields)["problem"]["field"] == field


def test_hours_without_a_reading_are_told():
    readings = [read_at(600, daylight(5600)), read_at(900, daylight(5000))]
    (window,) = ask({"readings": readings})["windows"]
    assert window["warnings"] == [
        "No reading between 10:00 and 15:00: a cloud may have come and gone."
    ]
