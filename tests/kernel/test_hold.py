"""What windows need through the day, and how long what hangs there holds."""

from __future__ import annotations

import numpy as np
import pytest

from evenkelvin.colorimetry import illuminant
from evenkelvin.desk import answer
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.scouting import sun

NM = np.arange(380, 781, 5)
#: Hamburg in June, its clock two hours ahead.
PLACE = {"lat_deg": 53.55, "lon_deg": 9.99, "date": "2026-06-21", "utc_offset_h": 2}
GELS = {gel.name: gel.transmittance for gel in nominal_kit()}


def ask(*windows, **fields):
    fields = {"time": "15:00", "target": {"cct_K": 3200}, "windows": list(windows)} | fields
    return answer({"ask": "hold"} | fields)


def daylight(cct_K, green=0.0):
    """CIE daylight, with some green for the leaves before a window."""
    leaves = 1.0 + green * np.exp(-(((NM - 550) / 40.0) ** 2))
    return illuminant.daylight(NM.astype(float), cct_K) * leaves


def read_at(minute, power):
    spectrum = {"wavelengths_nm": NM.tolist(), "values": power.tolist()}
    return {"time": sun.clock(minute), "spectrum": spectrum, "lamp": "daylight"}


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
    sure = {"time": "14:30", "gel_scatter_percent": 0}
    (window,) = ask({"gels": ["full CTO"], "readings": readings}, **sure)["windows"]
    holds = next(one for one in window["stretches"] if one["verdict"] == "holds")
    near = next(one for one in window["stretches"] if one["verdict"] == "near")
    assert window["words"] == (f"Holds {holds['from']} to {holds['to']}, near until {near['to']}.")
    assert not holds["estimated"]
    (wide,) = ask({"gels": ["full CTO"], "readings": readings}, **sure, **PLACE)["windows"]
    assert wide["words"].endswith("by the sun's estimate.")
    assert any(one["estimated"] and one["verdict"] for one in wide["stretches"])


@pytest.mark.parametrize("scatter", [0, 10])
def test_a_gel_is_as_sure_as_the_person_says_that_gels_are(scatter):
    window_gels, readings = ["full CTO"], [read_at(900, daylight(5500))]
    (window,) = ask(
        {"gels": window_gels, "readings": readings}, target={"cct_K": 3190},
        gel_scatter_percent=scatter,
    )["windows"]  # fmt: skip
    assert window["hung"]["verdict"] == "holds"
    assert (window["hung"]["promise"] == "holds") == (scatter == 0)
    assert window["words"].endswith("read it behind the gel.") == (scatter > 0)


def test_a_bare_chromaticity_is_promised_no_more_than_fix_promises():
    """What fix calls 'should hold' or 'read it again' is a best guess through the day too."""
    said = set()
    for within in (4, 10, 20):
        read = {"cct_K": 5400, "duv": 0.003}
        asked = {"target": {"cct_K": 3200}, "tolerance": within}
        fixed = answer({"ask": "fix", "reading": read, **asked})
        for pack in fixed["packs"]:
            if pack["verdict"] != "holds":
                continue
            window = {"gels": pack["gels"], "readings": [{**read, "time": "15:00"}]}
            (one,) = ask(window, **asked)["windows"]
            assert one["words"].endswith("A best guess: read it behind the gel.") == (
                pack["promise"] != "holds"
            )
            said.add(pack["promise"])
    assert len(said) > 1


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


def test_neutral_density_that_is_not_carried_is_to_be_fetched():
    readings = [{"time": "15:00", "cct_K": 5600, "lamp": "daylight", "illuminance_lx": 2000}]
    asked = {"wanted_lx": 60, "kit": ["full CTO", "ND 0.15"]}
    (one,) = ask({"gels": ["full CTO"], "readings": readings}, **asked)["windows"]
    for nd in [one["nd"], *(pack["nd"] for pack in one["packs"])]:
        assert nd["fetch"] == [gel for gel in nd["gels"] if gel != "ND 0.15"]
        assert nd["fetch"]


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
