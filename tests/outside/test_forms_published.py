"""Readings in mired, CC and cuts against colour-science, flashes in f-numbers against ISO 2720."""

from __future__ import annotations

import colour
import numpy as np
import pytest
from colour.temperature import CCT_to_uv_Ohno2013, uv_to_CCT_Ohno2013

from evenkelvin.desk import answer
from evenkelvin.filters.kit import cc_transmittance

SHAPE = colour.SpectralShape(380, 780, 5)
CMFS = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE)


@pytest.mark.parametrize("mired", [100, 178, 312.5, 400])
@pytest.mark.parametrize("duv", [-0.004, 0.0, 0.006])
def test_mired_is_the_reciprocal_megakelvin(mired: float, duv: float) -> None:
    """colour-science: the chromaticity of CCT and Duv after Ohno (2013)."""
    x, y = colour.UCS_uv_to_xy(CCT_to_uv_Ohno2013([1e6 / mired, duv]))
    got = answer({"ask": "describe", "reading": {"cct_mired": mired, "duv": duv}})
    assert [got["x"], got["y"]] == pytest.approx([x, y], abs=1e-5)


@pytest.mark.parametrize("kelvin", [2800, 3200, 4300, 5600, 7500])
@pytest.mark.parametrize("cc", [-20, -7.5, -2, 2, 5, 15, 30])
def test_cc_is_the_duv_that_such_a_filter_gives_a_black_body(kelvin: float, cc: float) -> None:
    """colour-science: Planck's law through the filter, the 1931 observer, Ohno (2013)."""
    body = colour.sd_blackbody(kelvin, SHAPE)
    through = colour.SpectralDistribution(body.values * cc_transmittance(cc), SHAPE.wavelengths)
    uv = colour.UCS_to_uv(colour.XYZ_to_UCS(colour.sd_to_XYZ(through, CMFS)))
    _, duv = uv_to_CCT_Ohno2013(uv)
    got = answer({"ask": "describe", "reading": {"cct_K": kelvin, "tint_cc": cc}})
    assert got["duv"] == pytest.approx(duv, abs=2e-5)
    assert np.sign(got["duv"]) == np.sign(cc)


@pytest.mark.parametrize(
    ("cut", "cc"),
    # Plus and minus green in CC: full 30, half 15, quarter 7.5, eighth 3.5 (common practice, no
    # source).
    [("full", 30), ("1/2", 15), ("1/4", 7.5), ("1/8", 3.5)],
)
def test_cuts_are_the_cc_that_the_trade_gives_them(cut: str, cc: float) -> None:
    """Common practice, no source: full plus or minus green is CC30."""
    by_cut = answer({"ask": "describe", "reading": {"cct_K": 5600, "tint_cuts": f"-{cut}"}})
    by_cc = answer({"ask": "describe", "reading": {"cct_K": 5600, "tint_cc": -cc}})
    assert by_cut["duv"] == by_cc["duv"]


@pytest.mark.parametrize(
    ("f_number", "iso", "lx_s"),
    # ISO 2720:1974, N² = H·S/C with C = 250: EV 0 at ISO 100 (f/1 in 1 s) is 2.5 lx, so 2.5 lx·s
    # (the figure that tables of exposure values give); and each stop doubles it.
    [("1", 100, 2.5), ("1.4", 100, 5.0), ("2.8", 100, 20.0), ("8", 100, 160.0), ("8", 400, 40.0)],
)
def test_a_flash_by_its_f_number_at_an_iso(f_number: str, iso: float, lx_s: float) -> None:
    reading = {"cct_K": 5600, "duv": 0, "flash_f_number": f_number, "flash_iso": iso}
    got = answer({"ask": "describe", "reading": reading})
    # An f-number is engraved with two figures: 1.4 stands for √2.
    assert got["exposure_lx_s"] == pytest.approx(lx_s, rel=0.025)
