"""Flicker: safe shutters and rates, depth, unknown light, and what is refused."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.desk import answer
from evenkelvin.exposure import flicker
from examples import examples


def ask(**fields):
    return answer({"ask": "flicker"} | fields)


@settings(max_examples=examples(80), deadline=None)
@given(
    hz=st.floats(30, 30_000),
    fps=st.floats(5, 200),
    modulation=st.floats(0.01, 1),
    duty=st.one_of(st.none(), st.floats(0.01, 0.99)),
)
def test_every_shutter_called_safe_has_no_ripple(hz, fps, modulation, duty):
    wave = flicker.Wave(hz, modulation, duty)
    times = flicker.safe_times(hz, 1 / fps)
    assert len(times) <= 24
    assert times == sorted(times)
    for time in times:
        assert time * fps <= 1 + 1e-6
        assert flicker.ripple(wave, time) < 1e-6


@settings(max_examples=examples(80), deadline=None)
@given(hz=st.floats(30, 30_000), time=st.floats(1e-4, 0.04), modulation=st.floats(0, 1))
def test_ripple_is_a_part_and_falls_with_modulation(hz, time, modulation):
    depth = flicker.ripple(flicker.Wave(hz, modulation), time)
    assert 0 <= depth <= 1
    assert depth <= flicker.ripple(flicker.Wave(hz, 1.0), time) + 1e-12


@settings(max_examples=examples(80), deadline=None)
@given(hz=st.floats(50, 4000), first=st.integers(1, 6), second=st.integers(1, 6))
def test_an_unknown_light_is_found_up_to_a_whole_multiple(hz, first, second):
    if first == second:
        return
    found = flicker.infer([first / hz, second / hz])
    assert found is not None
    assert hz / found.hz == pytest.approx(round(hz / found.hz), rel=1e-9)


def test_24_frames_on_50_hz_is_warned_of_and_told_the_way_out():
    reply = ask(mains_hz=50, fps=24, shutter_deg=180, place="Ticket hall")
    assert reply["safe"] is False
    assert "172.8°" in reply["words"]
    assert reply["warnings"][0].startswith("Ticket hall is on 50 Hz mains")
    assert 0.02 < reply["ripple"]["percent"] / 100 < 0.04


def test_the_way_out_is_itself_safe_and_silent():
    reply = ask(mains_hz=50, fps=24, shutter_deg=172.8)
    assert reply["safe_by"] == "shutter"
    assert reply["words"] == "Steady: the shutter holds 2 pulses"
    assert reply["warnings"] == []


def test_24_frames_on_60_hz_are_steady_but_may_band():
    reply = ask(mains_hz=60, fps=24, shutter_deg=180)
    assert reply["safe_by"] == "rate"
    assert "rolling shutter" in reply["warnings"][0]


def test_23_976_on_60_hz_drifts_slowly():
    reply = ask(mains_hz=60, fps="23.976", shutter_deg=180)
    assert reply["beat_hz"] == pytest.approx(120 - 5 * 24000 / 1001)
    assert any("8.34 s" in words for words in reply["warnings"])
    assert ask(mains_hz=60, fps="23.976", shutter_deg=144)["safe_by"] == "shutter"


def test_high_speed_beyond_the_pulses_has_no_safe_shutter():
    reply = ask(mains_hz=50, fps=240, shutter_deg=180)
    assert reply["safe_shutter_deg"] == []
    assert any("direct current" in words for words in reply["warnings"])


def test_rates_for_a_set_angle_hold_whole_pulses():
    reply = ask(mains_hz=50, fps=24, shutter_deg=172.8)
    for rate in reply["safe_fps_at_shutter"]:
        pulses = 172.8 / 360 / rate * 100
        assert pulses == pytest.approx(round(pulses))
    assert 24.0 in [round(rate, 9) for rate in reply["safe_fps_at_shutter"]]


def test_a_small_modulation_is_a_small_ripple():
    full = ask(mains_hz=50, fps=24, shutter_deg=180)["ripple"]["percent"]
    little = ask(mains_hz=50, fps=24, shutter_deg=180, modulation_percent=5)
    assert little["ripple"]["percent"] < full / 10
    assert little["safe"] is True


def test_a_fast_dimmer_lists_the_shutters_about_the_one_set():
    reply = ask(light_hz=4000, fps=24, shutter_deg=90)
    assert len(reply["safe_shutter_deg"]) == 24
    assert min(abs(angle - 90) for angle in reply["safe_shutter_deg"]) < 1.1


def test_two_results_reveal_an_unknown_light():
    reply = ask(
        fps=24,
        measured=[
            {"shutter_deg": "172.8", "flicker": False},
            {"time_s": "1/100", "flicker": False},
            {"shutter_deg": 180, "flicker": True},
        ],
    )
    assert reply["inferred"] == {"light_hz": pytest.approx(100.0), "pulses": [2, 1]}


def test_a_result_with_flicker_rules_a_frequency_out():
    # 1/50 and 1/25 clean alone would mean 50 pulses; flicker at 1/50·k is impossible then.
    results = [
        {"time_s": 0.02, "flicker": False},
        {"time_s": 0.03, "flicker": False},
        {"time_s": 0.01, "flicker": True},
    ]
    assert ask(measured=results)["problem"]["field"] == "measured"


def test_pulses_typed_as_mains_are_questioned():
    assert "100" in ask(light_hz=50, fps=24)["warnings"][0]


def test_mains_far_from_any_grid_is_questioned():
    assert "unusual" in ask(mains_hz=57, fps=24)["warnings"][0]


@pytest.mark.parametrize(
    ("fields", "field"),
    [
        ({"fps": 24}, "mains_hz"),
        ({"mains_hz": 50, "light_hz": 100}, "light_hz"),
        ({"mains_hz": 0}, "mains_hz"),
        ({"light_hz": "fast"}, "light_hz"),
        ({"mains_hz": 50, "fps": 0}, "fps"),
        ({"mains_hz": 50, "fps": 24, "shutter_deg": 400}, "shutter_deg"),
        ({"mains_hz": 50, "fps": 24, "time_s": "1/10"}, "time_s"),
        ({"mains_hz": 50, "modulation_percent": 120}, "modulation_percent"),
        ({"mains_hz": 50, "duty_percent": 0}, "duty_percent"),
        ({"mains_hz": 50, "speed": 2}, "speed"),
        ({"measured": []}, "measured"),
        ({"measured": [{"time_s": 0.02, "flicker": False}]}, "measured"),
        ({"measured": [{"time_s": 0.02, "flicker": "no"}]}, "measured.0.flicker"),
        ({"measured": [{"shutter_deg": 90, "flicker": False}]}, "measured.0.fps"),
        ({"measured": [{"flicker": False}]}, "measured.0.time_s"),
        ({"measured": [{"time_s": "x", "flicker": False}]}, "measured.0.time_s"),
    ],
)
def test_bad_flicker_fields_are_named(fields, field):
    problem = ask(**fields)["problem"]
    assert problem["field"] == field
    assert problem["message"].endswith(".")


def test_a_collision_of_mains_and_shutter_is_told_apart_from_other_warnings():
    camera = {"ask": "flicker", "mains_hz": "50", "fps": "24", "place": "Hall"}
    found = answer(camera | {"shutter_deg": "180"})
    assert found["collision"].startswith(
        "Hall is on 50 Hz mains: at 180° and 24 fps its lamps will flicker"
    )
    assert found["collision"] in found["warnings"]
    # 172.8° of 24 frames a second are two pulses of 50 Hz mains (common practice, no source).
    assert answer(camera | {"shutter_deg": "172.8"})["collision"] is None
    assert answer({"ask": "flicker", "light_hz": 900, "fps": 24})["collision"] is None
