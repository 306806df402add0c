"""Dimming a filament, against integration of Planck's law and against the trade."""

from __future__ import annotations

import colour
import numpy as np
import pytest
from scipy import integrate

from evenkelvin.desk import answer

#: CODATA 2018: h·c/k in m·K.
C2 = 1.438776877e-2


def _dim(kelvin, **more):
    reading = {"cct_K": kelvin, "duv": 0, "lamp": "tungsten"}
    found = answer({"ask": "dim", "reading": reading, **more})
    assert "problem" not in found, found
    return found


def _light(kelvin):
    """Planck's law under the published V(λ) (CIE 1924), by Simpson's rule every 0.1 nm."""
    v = colour.SDS_LEFS["CIE 1924 Photopic Standard Observer"]
    nm = np.arange(3800, 7801) / 10.0
    radiance = (nm * 1e-9) ** -5 / np.expm1(C2 / (nm * 1e-9 * kelvin))
    return integrate.simpson(radiance * np.interp(nm, v.wavelengths, v.values), x=nm)


@pytest.mark.parametrize("full", [2700.0, 2900.0, 3200.0, 3400.0])
@pytest.mark.parametrize("part", [0.9, 0.5, 0.25, 0.1, 0.02, 0.002])
def test_light_follows_plancks_law_under_v_lambda(full, part):
    """CODATA 2018 for Planck's law, V(λ) of CIE 1924, summed by SciPy."""
    found = _dim(full, percent_light=100.0 * part)
    # 0.1 % of the light is a thousandth of a stop or two.
    assert _light(found["cct_K"]) / _light(full) == pytest.approx(part, rel=1e-3)


@pytest.mark.parametrize("to", [3100.0, 2900.0, 2500.0, 2000.0])
def test_the_way_to_a_colour_is_the_same_law_backwards(to):
    """CODATA 2018 for Planck's law, V(λ) of CIE 1924, summed by SciPy."""
    found = _dim(3200.0, to={"cct_K": to, "duv": 0})
    assert found["cct_K"] == pytest.approx(to, abs=0.5)
    assert found["percent_light"] / 100.0 == pytest.approx(_light(to) / _light(3200.0), rel=2e-3)


def test_common_practice_of_the_dimmer():
    """Common practice, no source: 3200 K a stop down is near 2940 K, two stops near 2700 K."""
    assert _dim(3200.0, stops=-1)["cct_K"] == pytest.approx(2940.0, abs=15.0)
    assert _dim(3200.0, stops=-2)["cct_K"] == pytest.approx(2700.0, abs=30.0)


@pytest.mark.parametrize("volts", [0.95, 0.9, 0.8])
def test_volts_follow_the_handbook_near_full(volts):
    """IES Lighting Handbook, gas-filled lamps: light ∝ V^3.4, kelvins ∝ V^0.42 (from memory)."""
    found = _dim(3200.0, percent_volts=100.0 * volts)
    assert found["percent_light"] / 100.0 == pytest.approx(volts**3.4, rel=1e-9)
    assert found["cct_K"] / 3200.0 == pytest.approx(volts**0.42, rel=0.005)
