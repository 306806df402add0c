"""Exposure, units and flicker against published formulas and figures."""

import math

import numpy as np
import pytest
from scipy.integrate import quad

from evenkelvin.desk import answer
from evenkelvin.exposure import flicker, stops


@pytest.mark.parametrize(
    ("receptor", "lux", "fc"),
    # ISO 2720:1974, N²/t = E·S/C, worked by hand: 2.8²·C·48/100. The two C bracket the trade's
    # 'a hundred foot-candles is f/2.8 at 100' (common practice, no source).
    [("flat", 940.8, 87.40), ("dome", 1279.5, 118.87)],
)
def test_iso_2720_incident_light_for_f_2_8_at_iso_100(receptor, lux, fc):
    known = {"iso": 100, "fps": 24, "shutter_deg": 180, "f_number": 2.8, "receptor": receptor}
    reply = answer({"ask": "expose", "known": known})
    assert reply["solved"] == "illuminance_lx"
    assert reply["illuminance_lx"] == pytest.approx(lux, abs=0.05)
    assert reply["illuminance_fc"] == pytest.approx(fc, abs=0.01)


def test_bright_sun_meets_the_sunny_sixteen_rule():
    # Common practice, no source: in sun f/16 at 1/ISO s. Midday sun on a horizontal surface is
    # about 100 000 lx (CIE 15 daylight practice, from memory); with C = 340 that is f/17.
    known = {"illuminance_lx": 100_000, "iso": 100, "time_s": "1/100", "receptor": "dome"}
    reply = answer({"ask": "expose", "known": known})
    assert reply["stop"]["thirds"] in ("f/16", "f/16⅓")


def test_a_foot_candle_is_10_7639_lux():
    # The international foot is 0.3048 m exactly (NIST SP 811, appendix B.8: 1 fc = 10.763 91 lx).
    reply = answer({"ask": "units", "illuminance_fc": 1})
    assert reply["illuminance_lx"] == pytest.approx(10.76391, abs=5e-6)


def test_f_numbers_in_thirds_are_those_engraved():
    # ISO 517 / ISO 2720 series in thirds of a stop, as engraved on lenses and set on cameras
    # (from memory).
    engraved = {
        "f/1.4": 1.4, "f/1.4⅓": 1.6, "f/1.4⅔": 1.8, "f/2": 2.0, "f/2⅓": 2.2, "f/2⅔": 2.5,
        "f/2.8": 2.8, "f/2.8⅓": 3.2, "f/2.8⅔": 3.5, "f/4": 4.0, "f/4⅓": 4.5, "f/4⅔": 5.0,
        "f/5.6": 5.6, "f/5.6⅓": 6.3, "f/5.6⅔": 7.1, "f/8": 8.0, "f/8⅓": 9.0, "f/8⅔": 10.0,
        "f/11": 11.0, "f/11⅓": 13.0, "f/11⅔": 14.0, "f/16": 16.0, "f/22": 22.0,
    }  # fmt: skip
    assert {stops.stop_in_thirds(number): number for number in engraved.values()} == engraved


def test_flash_exposure_of_iso_2720_holds_for_a_burst():
    # N² = H·S/C: 160 lx·s at ISO 100 and C = 250 is f/8 exactly.
    reply = answer({"ask": "expose", "known": {"exposure_lx_s": 160, "iso": 100}})
    assert reply["f_number"] == pytest.approx(8.0)
    assert reply["words"] == "f/8"


@pytest.mark.parametrize(
    ("mains", "fps", "angles"),
    # Angle = 360·fps·n/(2·mains): common practice, no source; figures worked by hand.
    [
        (50, "24", [86.4, 172.8]),
        (50, "25", [90.0, 180.0]),
        (50, "23.976", [86.31, 172.63]),
        (60, "24", [72.0, 144.0]),
        (60, "30", [90.0, 180.0]),
        (60, "29.97", [89.91, 179.82]),
    ],
)
def test_safe_shutter_angles(mains, fps, angles):
    reply = answer({"ask": "flicker", "mains_hz": mains, "fps": fps})
    assert reply["safe_shutter_deg"][:2] == pytest.approx(angles, abs=0.005)


@pytest.mark.parametrize(
    ("mains", "rates"),
    [(50, [100, 50, 33.333, 25, 20]), (60, [120, 60, 40, 30, 24, 20])],
)
def test_rates_safe_with_any_shutter(mains, rates):
    # fps = 2·mains/k: common practice, no source.
    reply = answer({"ask": "flicker", "mains_hz": mains})
    assert reply["safe_fps"][: len(rates)] == pytest.approx(rates, abs=5e-4)


@pytest.mark.parametrize(
    ("typed", "exact"),
    # ITU-R BT.709-6 and SMPTE ST 2036-1 list the picture rates 24/1.001, 30/1.001, 60/1.001.
    [
        (23.976, 24000 / 1001),
        (23.98, 24000 / 1001),
        (29.97, 30000 / 1001),
        (59.94, 60000 / 1001),
        (119.88, 120000 / 1001),
        (24, 24.0),
        (25, 25.0),
        (33.333, 33.333),
        (12.5, 12.5),
    ],
)
def test_rounded_television_rates_are_taken_exactly(typed, exact):
    assert flicker.exact_rate(typed) == exact


@pytest.mark.parametrize("modulation", [0.05, 0.4, 1.0])
@pytest.mark.parametrize("part", [0.2, 0.75, 1.0, 2.0833, 3.5])
def test_closed_form_of_the_rectified_sine_against_numerical_integration(modulation, part):
    # scipy.integrate.quad over a + b·|sin(πt)|, at 400 starting phases.
    b = 2 * modulation / (1 + modulation)
    a = 1 - b

    def light(t):
        return a + b * abs(math.sin(math.pi * t))

    held = [
        quad(light, start, start + part, points=[1.0, 2.0, 3.0, 4.0], limit=200)[0]
        for start in np.linspace(0.0, 1.0, 401)
    ]
    depth = (max(held) - min(held)) / (max(held) + min(held))
    wave = flicker.Wave(100.0, modulation)
    assert flicker.ripple(wave, part / 100.0) == pytest.approx(depth, abs=2e-5)


@pytest.mark.parametrize("duty", [0.1, 0.5, 0.9])
@pytest.mark.parametrize("part", [0.3, 1.25, 4.6])
def test_closed_form_of_the_square_wave_against_a_sum(duty, part):
    """Brute force."""
    # numpy: a plain moving sum over a finely sampled square wave.
    fine = 2000
    t = np.arange(8 * fine) / fine
    total = np.concatenate([[0.0], np.cumsum((t % 1.0) < duty)]) / fine
    width = round(part * fine)
    held = (total[width:] - total[:-width])[:fine]
    depth = (held.max() - held.min()) / (held.max() + held.min())
    wave = flicker.Wave(100.0, 1.0, duty)
    assert flicker.ripple(wave, part / 100.0) == pytest.approx(depth, abs=2e-3)
