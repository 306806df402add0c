"""Mixing against colour-science, non-negative least squares against SciPy."""

from __future__ import annotations

import colour
import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import nnls

from evenkelvin.fields import Fields
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.lights.mixing import mix
from evenkelvin.lights.nonnegative import nonnegative_least_squares
from evenkelvin.requests.reading import read_reading
from kernel import fuzz_unmixing


def reading(**fields):
    return read_reading(Fields(fields), nominal_kit())


def spectral(name, **fields):
    sd = colour.SDS_ILLUMINANTS[name].copy().align(colour.SpectralShape(380, 780, 5))
    curve = {"wavelengths_nm": sd.wavelengths.tolist(), "values": sd.values.tolist()}
    return reading(spectrum=curve, **fields)


@pytest.mark.parametrize("seed", range(200))
def test_nonnegative_least_squares_agrees_with_scipy(seed):
    rng = np.random.default_rng(seed)
    m, n = int(rng.integers(1, 30)), int(rng.integers(1, 12))
    a, b = rng.normal(size=(m, n)), rng.normal(size=m)
    if seed % 3 == 0:
        a, b = np.abs(a), np.abs(b)
    x, norm = nonnegative_least_squares(a, b)
    _, wanted = nnls(a, b)
    assert np.all(x >= 0.0)
    assert norm == pytest.approx(wanted, rel=1e-9, abs=1e-9)


@pytest.mark.parametrize("seed", range(60))
def test_dependent_columns_reach_the_same_norm_as_scipy(seed):
    rng = np.random.default_rng(seed)
    a = np.abs(rng.normal(size=(8, 3))) @ np.abs(rng.normal(size=(3, 7)))
    a = np.hstack([a, a[:, :2], np.zeros((8, 1))])
    b = np.abs(rng.normal(size=8))
    x, norm = nonnegative_least_squares(a, b)
    assert np.all(x >= 0.0)
    assert norm == pytest.approx(nnls(a, b)[1], rel=1e-7, abs=1e-9)


@settings(max_examples=60, deadline=None)
@given(
    whites=st.lists(
        st.tuples(st.floats(2500, 9000), st.floats(-0.008, 0.012), st.floats(1, 5000)),
        min_size=1,
        max_size=5,
    )
)
def test_xyz_of_a_mixture_is_the_sum_by_colour_science(whites):
    lights = [reading(cct_K=k, duv=duv) for k, duv, _ in whites]
    amounts = np.array([lux for _, _, lux in whites])
    mixed = mix(lights, amounts)
    xyz = sum(
        colour.xyY_to_XYZ([*light.xy, lux]) for light, lux in zip(lights, amounts, strict=True)
    )
    assert colour.XYZ_to_xy(xyz) == pytest.approx(mixed.xy, abs=1e-12)
    assert mixed.illuminance_lx == pytest.approx(xyz[1])
    assert colour.xy_to_Luv_uv(mixed.xy) == pytest.approx(
        colour.xy_to_Luv_uv(colour.XYZ_to_xy(xyz)), abs=1e-12
    )


def test_spectrum_of_a_mixture_has_its_lux_and_chromaticity_by_colour_science():
    lights = [spectral("A"), spectral("FL11"), spectral("D65")]
    mixed = mix(lights, np.array([300.0, 500.0, 80.0]))
    assert mixed.spectrum is not None
    sd = colour.SpectralDistribution(
        dict(zip(mixed.spectrum.wavelengths, mixed.spectrum.values / 1e3, strict=True))
    )
    cmfs = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(sd.shape)
    # Spectral irradiance in W/(m² nm): 683 lm/W makes lux of it (SI).
    xyz = colour.sd_to_XYZ(sd, cmfs, k=683.0, method="Integration")
    assert xyz[1] == pytest.approx(880.0, rel=1e-5)
    assert colour.XYZ_to_xy(xyz) == pytest.approx(mixed.xy, abs=5e-6)


@pytest.mark.parametrize(("kind", "count"), [("x y", 100), ("spectra", 60)])
def test_what_is_called_certain_is_and_limits_hold_under_a_meters_scatter(kind, count):
    """Expanded uncertainty of 95 % holds 95 of 100 (JCGM 100:2008, 6.2); scatter: common
    practice, no source."""
    tally = fuzz_unmixing.check(fuzz_unmixing.many(kind, seed=11), count)
    assert tally.certain > count / 8
    assert tally.certain_but_wrong <= 0.02 * tally.certain
    assert tally.held >= 0.95 * tally.shares
    assert tally.all_held >= 0.95 * count
    assert tally.twins_named >= 0.9 * tally.twins > 0
    # Light is said to be missing where none is in few sums of a hundred.
    assert tally.missing <= 0.02 * count
