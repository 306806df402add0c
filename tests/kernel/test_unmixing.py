"""A sum made of known lights is taken apart into just these."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from evenkelvin.colorimetry.illuminant import illuminant
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.fields import Fields
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.lights.mixing import mix
from evenkelvin.lights.unmixing import unmix
from evenkelvin.requests.reading import read_reading
from examples import examples


def reading(**fields):
    return read_reading(Fields(fields), nominal_kit())


def spectral(name):
    curve = {"wavelengths_nm": GRID.tolist(), "values": illuminant(name).tolist()}
    return reading(spectrum=curve)


@settings(max_examples=examples(40), deadline=None)
@given(seed=st.integers(0, 2**31))
def test_three_lights_apart_come_back_from_their_sum(seed):
    rng = np.random.default_rng(seed)
    lights = [
        reading(cct_K=float(rng.uniform(2600, 3200)), duv=0),
        reading(cct_K=float(rng.uniform(5000, 7000)), duv=0.002),
        reading(cct_K=float(rng.uniform(3800, 4600)), duv=float(rng.uniform(0.015, 0.02))),
    ]
    amounts = rng.uniform(50, 1000, 3)
    total = mix(lights, amounts)
    found = unmix(lights, total)
    assert found.amounts == pytest.approx(amounts, rel=1e-6)
    assert found.residual_steps < 1e-6
    assert found.missing is None


def test_five_lights_come_back_from_spectra():
    lights = [spectral(name) for name in ("A", "D65", "FL2", "FL11", "LED-B3")]
    amounts = np.array([100.0, 250.0, 0.0, 400.0, 150.0])
    found = unmix(lights, mix(lights, amounts))
    assert found.spectral
    assert found.amounts == pytest.approx(amounts, abs=2.0)
    assert found.missing is None
