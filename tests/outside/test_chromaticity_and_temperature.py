"""Chromaticity, CCT and Duv against CIE 15, Ohno (2013), ANSI C78.377 and colour-science."""

from __future__ import annotations

import colour
import luxpy
import numpy as np
import pytest
from colour.temperature import CCT_to_uv_Ohno2013, uv_to_CCT_Ohno2013

from evenkelvin.colorimetry.chromaticity import (
    is_real,
    uv_prime_to_xy,
    uv_to_xy,
    xy_to_uv,
    xy_to_uv_prime,
    xyz_to_uv_prime,
    xyz_to_xy,
)
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.illuminant import daylight, illuminant, illuminant_names, planck
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.colorimetry.spectrum import Spectrum, tristimulus
from evenkelvin.colorimetry.temperature import cct_to_uv, cct_to_xy, mired, uv_to_cct, xy_to_cct

SHAPE = colour.SpectralShape(380, 780, 5)
CMFS = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE)

# x y: CIE 15 tables of illuminants. CCT and Duv: computed with colour-science 0.4.7 (Ohno 2013).
CIE_15 = {
    "A": (0.44758, 0.40745, 2855.5, 0.00000),
    "D50": (0.3457, 0.3585, 5000.7, 0.00319),
    "D55": (0.33243, 0.34744, 5502.4, 0.00325),
    "D65": (0.3127, 0.3290, 6504.3, 0.00321),
    "E": (0.33333, 0.33333, 5455.5, -0.00442),
    "FL1": (0.3131, 0.3371, 6426.3, 0.00710),
    "FL2": (0.3721, 0.3751, 4223.4, 0.00177),
    "FL4": (0.4402, 0.4031, 2937.7, -0.00082),
    "FL7": (0.3129, 0.3292, 6492.0, 0.00321),
    "FL11": (0.3805, 0.3769, 3999.5, 0.00005),
    "FL12": (0.4370, 0.4042, 2999.9, 0.00004),
    "HP1": (0.5330, 0.4150, 1959.5, 0.00079),
    "LED-B3": (0.3756, 0.3723, 4103.0, -0.00065),
    "LED-RGB1": (0.4557, 0.4211, 2840.3, 0.00426),
}


@pytest.mark.parametrize("name", CIE_15)
def test_cct_and_duv_of_cie_illuminants(name: str) -> None:
    """CIE 15:2018; Duv after Ohno (2013)."""
    x, y, cct, duv = CIE_15[name]
    found = xy_to_cct(np.array([x, y]))
    assert found[0] == pytest.approx(cct, abs=0.15)
    assert found[1] == pytest.approx(duv, abs=1e-5)


@pytest.mark.parametrize("name", CIE_15)
def test_chromaticity_of_cie_illuminants_from_their_spectra(name: str) -> None:
    """CIE 15:2018."""
    x, y, _, _ = CIE_15[name]
    found = xyz_to_xy(tristimulus(Spectrum(GRID, np.array(illuminant(name)))))
    assert found == pytest.approx([x, y], abs=6e-5)


@pytest.mark.parametrize("name", illuminant_names())
def test_chromaticity_of_every_tabulated_illuminant_agrees_with_colour_science(name: str) -> None:
    sd = colour.SDS_ILLUMINANTS[name]
    cut = sd.copy().align(SHAPE)
    referee = colour.XYZ_to_xy(colour.sd_to_XYZ(cut, CMFS, method="Integration"))
    found = xyz_to_xy(tristimulus(Spectrum(GRID, np.array(illuminant(name)))))
    assert found == pytest.approx(referee, abs=1e-7)


def _random_whites(count: int) -> tuple[np.ndarray, np.ndarray]:
    rng = np.random.default_rng(20)
    return 10 ** rng.uniform(np.log10(1500), np.log10(20000), count), rng.uniform(
        -0.02, 0.02, count
    )


def test_random_whites_agree_with_colour_science() -> None:
    cct, duv = _random_whites(1000)
    uv = cct_to_uv(cct, duv)
    # colour-science finds the foot by Ohno's interpolation in a table, and the slope of the locus
    # by a finite difference: hence 60 ppm and 1.2e-5.
    assert np.max(np.abs(CCT_to_uv_Ohno2013(np.column_stack([cct, duv])) - uv)) < 1.2e-5
    referee = uv_to_CCT_Ohno2013(uv)
    assert np.max(np.abs(referee[:, 0] / cct - 1)) < 6e-5
    assert np.max(np.abs(referee[:, 1] - duv)) < 1e-6
    found = uv_to_cct(uv)
    assert np.max(np.abs(found[:, 0] / referee[:, 0] - 1)) < 6e-5
    assert np.max(np.abs(found[:, 1] - referee[:, 1])) < 1e-6


def test_random_whites_agree_with_luxpy() -> None:
    cct, duv = _random_whites(200)
    xyz = colour.xy_to_XYZ(uv_to_xy(cct_to_uv(cct, duv)))
    referee, referee_duv = luxpy.xyz_to_cct(
        xyz * 100, cieobs="1931_2", mode="ohno2014", out="cct,duv"
    )
    assert np.max(np.abs(referee.ravel() / cct - 1)) < 1e-3
    assert np.max(np.abs(referee_duv.ravel() - duv)) < 3e-5


def test_round_trip_of_every_white() -> None:
    """The bounds of Ohno (2013) are 1.1 ppm and 5e-8; the exact foot does better everywhere."""
    cct, duv = np.meshgrid(np.geomspace(1500, 20000, 120), np.linspace(-0.02, 0.02, 41))
    found = uv_to_cct(cct_to_uv(cct.ravel(), duv.ravel()))
    assert np.max(np.abs(found[:, 0] / cct.ravel() - 1)) < 1e-9
    assert np.max(np.abs(found[:, 1] - duv.ravel())) < 1e-12


@pytest.mark.parametrize(
    ("cct", "duv", "x", "y"),
    [
        # ANSI C78.377 nominal centres: CCT and Duv from memory; x y by colour-science.
        (2725, 0.0, 0.4578, 0.4101),
        (3045, 0.0001, 0.4339, 0.4033),
        (3465, 0.0005, 0.4078, 0.3931),
        (3985, 0.0010, 0.3818, 0.3797),
        (5029, 0.0020, 0.3447, 0.3552),
        (5667, 0.0025, 0.3287, 0.3426),
        (6532, 0.0031, 0.3123, 0.3284),
    ],
)
def test_ansi_nominal_centres(cct: float, duv: float, x: float, y: float) -> None:
    assert cct_to_xy(cct, duv) == pytest.approx([x, y], abs=6e-5)


@pytest.mark.parametrize(
    ("cct", "mireds"), [(2856, 3.1), (3200, 2.9), (5000, 2.4), (5600, 2.3), (6500, 2.2)]
)
def test_one_step_along_the_locus_in_mired(cct: float, mireds: float) -> None:
    """CIE TN 001:2014 step (radius from memory) on the locus, computed with colour-science."""
    here = xy_to_uv_prime(cct_to_xy(cct))
    there = xy_to_uv_prime(cct_to_xy(1e6 / (1e6 / cct + mireds)))
    assert float(delta_uv_prime(here, there)) / STEP_UV == pytest.approx(1.0, abs=0.03)


def test_mired_of_common_conversions() -> None:
    """Common practice, no source: 3200 to 5600 K is −133.9 mired, to 5500 K −130.7."""
    assert float(mired(5600) - mired(3200)) == pytest.approx(-133.9, abs=0.05)
    assert float(mired(5500) - mired(3200)) == pytest.approx(-130.7, abs=0.05)


def test_a_common_reading() -> None:
    """Common practice, no source: x .4349 y .4024 reads about 3020 K, a hair magenta."""
    cct, duv = xy_to_cct(np.array([0.4349, 0.4024]))
    assert cct == pytest.approx(3020, abs=2)
    assert -0.001 < duv < 0


def test_coordinates_agree_with_colour_science_and_invert() -> None:
    rng = np.random.default_rng(3)
    xy = rng.dirichlet([2, 2, 2], 500)[:, :2]
    uv_prime = colour.xy_to_Luv_uv(xy)
    assert xy_to_uv_prime(xy) == pytest.approx(uv_prime, abs=1e-12)
    assert xy_to_uv(xy) == pytest.approx(colour.xy_to_UCS_uv(xy), abs=1e-12)
    assert uv_prime_to_xy(uv_prime) == pytest.approx(xy, abs=1e-12)
    xyz = colour.xy_to_XYZ(xy)
    assert xyz_to_uv_prime(xyz) == pytest.approx(uv_prime, abs=1e-12)
    assert xyz_to_xy(xyz) == pytest.approx(xy, abs=1e-12)


def test_planck_and_daylight_agree_with_colour_science() -> None:
    nm = np.arange(380.0, 781.0, 5.0)
    shape = colour.SpectralShape(380, 780, 5)
    for kelvin in (1500, 2856, 3200, 5600, 10000, 20000):
        referee = colour.sd_blackbody(kelvin, shape).values
        # colour-science's c2 is 1.4388e-2 m·K as in CIE 15.
        assert planck(nm, kelvin) == pytest.approx(referee / referee[36], rel=2e-4)
    for kelvin in (4000, 5000, 5500, 6500, 7000, 9300, 25000):
        xy = colour.temperature.CCT_to_xy_CIE_D(kelvin)
        referee = colour.sd_CIE_illuminant_D_series(xy, shape=shape).values
        assert daylight(nm, kelvin, rounded=True) == pytest.approx(referee, abs=0.02)
    with pytest.raises(ValueError, match="4000"):
        daylight(nm, 3900)


def test_real_colours_are_told_from_impossible_ones() -> None:
    """ITU-R BT.2020 primaries lie on the spectral locus; just inside is real, beyond is not."""
    white = np.array([0.3127, 0.3290])
    for primary in ([0.708, 0.292], [0.170, 0.797], [0.131, 0.046]):
        beam = np.array(primary) - white
        assert is_real(white + 0.98 * beam)
        assert not is_real(white + 1.04 * beam)
    assert not is_real(np.array([0.1, 0.1]))
    assert not is_real(np.array([0.0, 0.0]))


@pytest.mark.parametrize("step", [0.4, 1.0, 2.0, 5.0, 10.0])
def test_a_smooth_spectrum_reads_the_same_at_any_step(step: float) -> None:
    """CIE 167:2005 and ASTM E308: the step of the file is no property of the light."""
    nm = np.arange(380.0, 780.0 + step / 2, step)
    found = xyz_to_xy(tristimulus(Spectrum(nm, planck(nm, 3200))))
    assert found == pytest.approx(cct_to_xy(3200), abs=3e-5)


def test_sprague_interpolation_agrees_with_colour_science() -> None:
    from evenkelvin.colorimetry.spectrum import interpolate

    nm = np.arange(380.0, 781.0, 10.0)
    values = np.interp(nm, GRID, np.array(illuminant("FL2")))
    fine = np.arange(380.0, 781.0, 1.0)
    referee = colour.SpragueInterpolator(nm, values)(fine)
    assert interpolate(Spectrum(nm, values), fine) == pytest.approx(
        np.clip(referee, 0, None), abs=1e-9
    )
