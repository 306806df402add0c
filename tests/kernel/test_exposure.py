"""Exposure, falloff and units: what is asked, solved, said and refused."""

import math

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from evenkelvin.desk import answer
from evenkelvin.exposure import flash, flicker, stops
from examples import examples

FULL = {
    "illuminance_lx": 1200.0,
    "iso": 800.0,
    "fps": 24.0,
    "shutter_deg": 172.8,
    "f_number": 4.0,
    "filter_stops": 1.0,
}


def expose(known, **more):
    return answer({"ask": "expose", "known": known} | more)


def sized(low, high):
    return st.floats(math.log(low), math.log(high)).map(math.exp)


@settings(max_examples=examples(60), deadline=None)
@given(
    iso=sized(25, 25600),
    fps=sized(12, 120),
    angle=sized(10, 360),
    n=sized(0.7, 64),
    filters=st.floats(0, 10),
    lens=st.floats(0, 2),
    constant=sized(240, 400),
)
def test_any_unknown_solved_from_the_others_comes_back(iso, fps, angle, n, filters, lens, constant):
    base = {
        "iso": iso,
        "fps": flicker.exact_rate(fps),
        "shutter_deg": angle,
        "f_number": n,
        "filter_stops": filters,
        "lens_stops": lens,
        "constant": constant,
    }
    full = base | {"illuminance_lx": expose(base)["illuminance_lx"]}
    assume(1e-3 < full["illuminance_lx"] < 1e7)
    for name in ("illuminance_lx", "iso", "f_number", "filter_stops", "shutter_deg", "fps"):
        reply = expose({key: value for key, value in full.items() if key != name})
        wanted = reply[name]
        assert wanted == pytest.approx(full[name], rel=1e-6, abs=1e-6 if "stops" in name else 0)
        assert reply["solved"] == ("time_s" if name == "shutter_deg" else name)
    assert expose(full)["over_stops"] == pytest.approx(0.0, abs=1e-9)


@settings(max_examples=examples(100), deadline=None)
@given(whole=st.integers(-2, 14), tenth=st.integers(0, 9), third=st.integers(0, 2))
def test_a_stop_as_said_reads_back_as_the_same_stop(whole, tenth, third):
    exact = 2.0 ** ((whole + tenth / 10) / 2)
    said = stops.stop_in_tenths(exact)
    # Engraved marks are rounded, f/11 for 11.31 by the most.
    assert stops.parse_stop(said) == pytest.approx(exact, rel=0.03)
    exact = 2.0 ** ((whole + third / 3) / 2)
    assert stops.parse_stop(stops.stop_in_thirds(exact)) == pytest.approx(exact, rel=0.03)


@pytest.mark.parametrize(
    ("number", "thirds", "tenths"),
    [
        (2.8, "f/2.8", "f/2.8"),
        (2.8284 * 2 ** (1 / 6), "f/2.8⅓", "f/2.8 and 3 tenths"),
        (11.0, "f/11", "f/11"),
        (22.0, "f/22", "f/22"),
        (4.0 * 2 ** (1 / 20), "f/4", "f/4 and 1 tenth"),
        (5.65, "f/5.6", "f/5.6"),
        (0.95, "f/1", "f/0.7 and 9 tenths"),
        (181.02, "f/180", "f/180"),
    ],
)
def test_stops_are_named_as_people_say_them(number, thirds, tenths):
    assert stops.stop_in_thirds(number) == thirds
    assert stops.stop_in_tenths(number) == tenths


@pytest.mark.parametrize(
    ("said", "number"),
    [
        ("2.8", 2.8),
        ("f/2.8", 2.8),
        ("2,8", 2.8),
        ("T2.8⅓", 2.8 * 2 ** (1 / 6)),
        ("f/2.8 and 3 tenths", 2.8 * 2**0.15),
        ("5.6 ½", 5.6 * 2**0.25),
    ],
)
def test_a_stop_can_be_typed_as_said(said, number):
    reply = expose({"iso": 100, "time_s": "1/48", "f_number": said})
    assert reply["f_number"] == pytest.approx(number)


def test_amounts_of_stops_are_said_in_thirds():
    said = [stops.amount_in_thirds(x) for x in (0, 1 / 3, -2 / 3, 1, 4 / 3, -2, 2.3)]
    assert said == ["no stop", "⅓ stop", "⅔ stop", "1 stop", "1⅓ stops", "2 stops", "2⅓ stops"]
    assert stops.amount_in_tenths(-2.34) == "2.3 stops"
    assert stops.amount_in_tenths(1.0) == "1.0 stop"


def test_everything_but_the_filter_asks_for_the_filter():
    reply = expose({"illuminance_lx": 10_000, "iso": 800, "time_s": "1/50", "f_number": 2.8})
    assert reply["solved"] == "filter_stops"
    assert reply["words"] == "6⅓ stops of filter (ND 1.9)"
    assert reply["filter_factor"] == pytest.approx(2 ** reply["filter_stops"])


def test_too_little_light_is_said_rather_than_a_negative_filter():
    reply = expose({"illuminance_lx": 10, "iso": 100, "time_s": "1/50", "f_number": 5.6})
    assert "short of light" in reply["words"]
    assert reply["warnings"]


def test_everything_known_tells_how_far_off_it_is():
    reply = expose(FULL | {"illuminance_lx": expose_needs() * 4})
    assert reply["solved"] is None
    assert reply["over_stops"] == pytest.approx(2.0)
    assert reply["words"] == "2 stops over"


def expose_needs():
    return expose({key: value for key, value in FULL.items() if key != "illuminance_lx"})[
        "illuminance_lx"
    ]


def test_filter_factor_and_filter_stops_are_the_same_filter():
    one = expose({"illuminance_lx": 500, "iso": 400, "time_s": 0.02, "filter_factor": 8})
    two = expose({"illuminance_lx": 500, "iso": 400, "time_s": 0.02, "filter_stops": 3})
    assert one["f_number"] == pytest.approx(two["f_number"])


def test_a_t_number_holds_the_loss_of_the_lens():
    lossy = expose({"iso": 400, "time_s": 0.02, "f_number": 2.0, "lens_stops": 1})
    marked = expose({"iso": 400, "time_s": 0.02, "t_number": 2.0 * math.sqrt(2)})
    assert lossy["illuminance_lx"] == pytest.approx(marked["illuminance_lx"])
    assert lossy["t_number"] == pytest.approx(2.0 * math.sqrt(2))


def test_a_flash_under_by_two_stops_needs_four_bursts():
    reply = expose({"exposure_lx_s": 40, "iso": 100, "f_number": 8, "filter_stops": 0})
    assert reply["bursts_needed"] == 4
    again = expose({"exposure_lx_s": 40, "iso": 100, "f_number": 8, "filter_stops": 0, "bursts": 4})
    assert again["words"] == "right as it is"
    assert flash.bursts_needed(100.0, 50.0) == 1


def test_flash_needed_is_asked_by_name():
    reply = expose({"iso": 100, "f_number": 8}, solve="exposure_lx_s")
    assert reply["exposure_lx_s"] == pytest.approx(160.0)


def test_a_shutter_longer_than_the_frame_is_warned_of():
    reply = expose({"illuminance_lx": 5, "iso": 100, "fps": 24, "f_number": 2.8})
    assert reply["solved"] == "time_s"
    assert "longer than a frame" in reply["warnings"][0]


@pytest.mark.parametrize(
    ("known", "field"),
    [
        ({"iso": 0, "time_s": 1}, "known.iso"),
        ({"iso": "fast"}, "known.iso"),
        ({"illuminance_lx": -3}, "known.illuminance_lx"),
        ({"illuminance_lx": 3, "illuminance_fc": 3}, "known.illuminance_fc"),
        ({"illuminance_lx": 3, "exposure_lx_s": 3}, "known.exposure_lx_s"),
        ({"shutter_deg": 361, "fps": 24}, "known.shutter_deg"),
        ({"shutter_deg": 180, "time_s": 0.02}, "known.time_s"),
        ({"time_s": "1/0"}, "known.time_s"),
        ({"time_s": "1/x"}, "known.time_s"),
        ({"time_s": "0"}, "known.time_s"),
        ({"f_number": "f/"}, "known.f_number"),
        ({"f_number": 2, "t_number": 2}, "known.t_number"),
        ({"t_number": 2, "lens_stops": 1}, "known.lens_stops"),
        ({"filter_factor": 0.5}, "known.filter_factor"),
        ({"filter_factor": 2, "filter_stops": 1}, "known.filter_factor"),
        ({"filter_stops": -1}, "known.filter_stops"),
        ({"constant": 20}, "known.constant"),
        ({"receptor": "bowl"}, "known.receptor"),
        ({"bursts": 1.5, "exposure_lx_s": 3}, "known.bursts"),
        ({"gain": 3}, "known.gain"),
        ({"illuminance_lx": 500, "iso": 800}, "known.f_number"),
        ({}, "known.iso"),
    ],
)
def test_bad_exposure_fields_are_named(known, field):
    problem = expose(known)["problem"]
    assert problem["field"] == field
    assert problem["message"].endswith(".")


@pytest.mark.parametrize(
    ("known", "solve", "field"),
    [
        (FULL, "iso", "solve"),
        ({"iso": 100, "f_number": 2.8, "illuminance_lx": 5}, "fps", "known.shutter_deg"),
        ({"iso": 100, "exposure_lx_s": 5}, "time_s", "known.exposure_lx_s"),
        ({"iso": 100}, "sharpness", "solve"),
        ({"iso": 100, "exposure_lx_s": 5}, "exposure_lx_s", "solve"),
        (FULL, "filter_stops", "solve"),
    ],
)
def test_what_cannot_be_solved_is_refused(known, solve, field):
    assert expose(known, solve=solve)["problem"]["field"] == field


def test_falloff_answers_its_three_questions():
    read = {"ask": "falloff", "illuminance_lx": 800, "distance_m": 3}
    assert answer(read | {"wanted_lx": 200})["distance_m"] == pytest.approx(6.0)
    assert answer(read | {"at_m": 6})["illuminance_lx"] == pytest.approx(200.0)
    lost = answer(read | {"lose_stops": 1})
    assert lost["distance_m"] == pytest.approx(3 * math.sqrt(2))
    assert "1 stop less" in lost["words"]
    assert lost["stops"] == pytest.approx(-1.0)


def test_falloff_in_feet_and_foot_candles_is_the_same_place():
    metric = answer({"ask": "falloff", "illuminance_lx": 800, "distance_m": 3.048, "wanted_lx": 50})
    feet = answer(
        {
            "ask": "falloff",
            "illuminance_fc": 800 / stops.LX_PER_FC,
            "distance_ft": 10,
            "wanted_fc": 50 / stops.LX_PER_FC,
        }
    )
    assert feet["distance_m"] == pytest.approx(metric["distance_m"])


def test_falloff_warns_of_a_large_source_near_by():
    near = answer({"ask": "falloff", "distance_m": 3, "lose_stops": 1, "source_m": 1.2})
    far = answer({"ask": "falloff", "distance_m": 7, "lose_stops": 1, "source_m": 1.2})
    assert any("five times" in words for words in near["warnings"])
    assert far["warnings"] == []


@pytest.mark.parametrize(
    ("request_", "field"),
    [
        ({"distance_m": 3}, "at_m"),
        ({"illuminance_lx": 800, "wanted_lx": 3}, "distance_m"),
        ({"distance_m": 3, "wanted_lx": 3}, "illuminance_lx"),
        ({"distance_m": 3, "at_m": 2, "lose_stops": 1}, "lose_stops"),
        ({"distance_m": 0, "at_m": 2}, "distance_m"),
        ({"distance_m": 3, "lose_stops": 40}, "lose_stops"),
        ({"distance_m": 3, "distance_ft": 3, "at_m": 2}, "distance_ft"),
        ({"distance_m": 3, "at_m": 2, "source_m": 0}, "source_m"),
    ],
)
def test_bad_falloff_fields_are_named(request_, field):
    assert answer({"ask": "falloff"} | request_)["problem"]["field"] == field


def test_units_gives_both_and_a_ratio():
    reply = answer({"ask": "units", "illuminance_lx": 800, "against_lx": 200, "distance_ft": 10})
    assert reply["distance_m"] == pytest.approx(3.048)
    assert reply["stops"] == pytest.approx(2.0)
    assert reply["words"] == "4:1, 2 stops over"


@pytest.mark.parametrize(
    ("request_", "field"),
    [
        ({}, "illuminance_lx"),
        ({"against_lx": 3}, "illuminance_lx"),
        ({"illuminance_lx": "1.000,5"}, "illuminance_lx"),
        ({"distance_m": -1}, "distance_m"),
        ({"yards": 1}, "yards"),
    ],
)
def test_bad_unit_fields_are_named(request_, field):
    assert answer({"ask": "units"} | request_)["problem"]["field"] == field


def test_words_tell_stops_in_tenths_on_request():
    known = {"illuminance_lx": 300, "iso": 800, "fps": 24, "shutter_deg": 180}
    tenths = answer({"ask": "expose", "known": known, "say": "tenths"})
    assert tenths["words"] == tenths["stop"]["tenths"] != tenths["stop"]["thirds"]
    over = answer({"ask": "expose", "known": known | {"f_number": 4, "filter_stops": 0},
                   "say": "tenths"})  # fmt: skip
    assert over["words"] == "0.3 stops over"
    moved = answer({"ask": "falloff", "distance_m": 2, "at_m": 2.5, "say": "tenths"})
    assert "0.6 stops less" in moved["words"]
