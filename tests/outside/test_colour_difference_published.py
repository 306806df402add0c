"""CIEDE2000, CIE L*a*b*, CIECAM02 and CAM02-UCS against published data and colour-science."""

from __future__ import annotations

import colour
import numpy as np
import pytest

from evenkelvin.colorimetry.appearance import cam02_ucs, ciecam02
from evenkelvin.colorimetry.difference import delta_e_2000, xyz_to_lab

# Sharma, Wu and Dalal (2005), 'The CIEDE2000 color-difference formula', table 1: L*a*b* twice and
# ΔE00; as colour-science 0.4.7 carries them in its own tests, which leave pair 14 out (its hues
# are 180° apart to the last bit).
SHARMA = [
    (50.0000, 2.6772, -79.7751, 50.0000, 0.0000, -82.7485, 2.0425),
    (50.0000, 3.1571, -77.2803, 50.0000, 0.0000, -82.7485, 2.8615),
    (50.0000, 2.8361, -74.0200, 50.0000, 0.0000, -82.7485, 3.4412),
    (50.0000, -1.3802, -84.2814, 50.0000, 0.0000, -82.7485, 1.0000),
    (50.0000, -1.1848, -84.8006, 50.0000, 0.0000, -82.7485, 1.0000),
    (50.0000, -0.9009, -85.5211, 50.0000, 0.0000, -82.7485, 1.0000),
    (50.0000, 0.0000, 0.0000, 50.0000, -1.0000, 2.0000, 2.3669),
    (50.0000, -1.0000, 2.0000, 50.0000, 0.0000, 0.0000, 2.3669),
    (50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0009, 7.1792),
    (50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0010, 7.1792),
    (50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0011, 7.2195),
    (50.0000, 2.4900, -0.0010, 50.0000, -2.4900, 0.0012, 7.2195),
    (50.0000, -0.0010, 2.4900, 50.0000, 0.0009, -2.4900, 4.8045),
    (50.0000, -0.0010, 2.4900, 50.0000, 0.0011, -2.4900, 4.7461),
    (50.0000, 2.5000, 0.0000, 50.0000, 0.0000, -2.5000, 4.3065),
    (50.0000, 2.5000, 0.0000, 73.0000, 25.0000, -18.0000, 27.1492),
    (50.0000, 2.5000, 0.0000, 61.0000, -5.0000, 29.0000, 22.8977),
    (50.0000, 2.5000, 0.0000, 56.0000, -27.0000, -3.0000, 31.9030),
    (50.0000, 2.5000, 0.0000, 58.0000, 24.0000, 15.0000, 19.4535),
    (50.0000, 2.5000, 0.0000, 50.0000, 3.1736, 0.5854, 1.0000),
    (50.0000, 2.5000, 0.0000, 50.0000, 3.2972, 0.0000, 1.0000),
    (50.0000, 2.5000, 0.0000, 50.0000, 1.8634, 0.5757, 1.0000),
    (50.0000, 2.5000, 0.0000, 50.0000, 3.2592, 0.3350, 1.0000),
    (60.2574, -34.0099, 36.2677, 60.4626, -34.1751, 39.4387, 1.2644),
    (63.0109, -31.0961, -5.8663, 62.8187, -29.7946, -4.0864, 1.2630),
    (61.2901, 3.7196, -5.3901, 61.4292, 2.2480, -4.9620, 1.8731),
    (35.0831, -44.1164, 3.7933, 35.0232, -40.0716, 1.5901, 1.8645),
    (22.7233, 20.0904, -46.6940, 23.0331, 14.9730, -42.5619, 2.0373),
    (36.4612, 47.8580, 18.3852, 36.2715, 50.5065, 21.2231, 1.4146),
    (90.8027, -2.0831, 1.4410, 91.1528, -1.6435, 0.0447, 1.4441),
    (90.9257, -0.5406, -0.9208, 88.6381, -0.8985, -0.7239, 1.5381),
    (6.7747, -0.2908, -2.4247, 5.8714, -0.0985, -2.2286, 0.6377),
    (2.0776, 0.0795, -1.1350, 0.9033, -0.0636, -0.5514, 0.9082),
]


@pytest.mark.parametrize("pair", SHARMA)
def test_ciede2000_gives_the_published_differences(pair: tuple[float, ...]) -> None:
    """Sharma, Wu and Dalal (2005)."""
    first, second = np.array(pair[:3]), np.array(pair[3:6])
    assert float(delta_e_2000(first, second)) == pytest.approx(pair[6], abs=5e-5)
    assert float(delta_e_2000(second, first)) == pytest.approx(pair[6], abs=5e-5)


def test_ciede2000_of_random_colours_is_that_of_colour_science() -> None:
    random = np.random.default_rng(20_251_125)
    lab = random.uniform([0, -120, -120], [100, 120, 120], size=(2, 5000, 3))
    assert delta_e_2000(*lab) == pytest.approx(colour.delta_E(*lab, method="CIE 2000"), abs=1e-9)


def test_lab_of_random_colours_is_that_of_colour_science() -> None:
    xyz = np.random.default_rng(1).uniform(0.0, 1.0, size=(2000, 3)) ** 3
    white = colour.xy_to_XYZ(np.array([0.3127, 0.3290]))
    expected = colour.XYZ_to_Lab(xyz, np.array([0.3127, 0.3290]))
    assert xyz_to_lab(xyz, white) == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("fully_adapted", [True, False])
@pytest.mark.parametrize(("luminance", "background"), [(100.0, 20.0), (16.0, 18.0)])
def test_ciecam02_and_its_uniform_space_are_those_of_colour_science(
    fully_adapted: bool, luminance: float, background: float
) -> None:
    random = np.random.default_rng(2)
    white = np.array([98.0, 100.0, 35.6])
    # A tenth of the samples are outside what a surface can be, so that responses go below zero.
    xyz = random.uniform(0.5, 95.0, size=(2000, 1)) * random.uniform(0.5, 1.4, size=(2000, 3))
    xyz[:200, 2] *= 2.5
    expected = colour.XYZ_to_CIECAM02(
        xyz, white, luminance, background, discount_illuminant=fully_adapted
    )
    jmh = ciecam02(xyz, white, luminance, background, fully_adapted)
    assert jmh == pytest.approx(np.column_stack([expected.J, expected.M, expected.h]), abs=1e-8)
    ucs = colour.models.JMh_CIECAM02_to_CAM02UCS(jmh)
    assert cam02_ucs(jmh) == pytest.approx(ucs, abs=1e-9)


def test_ciecam02_gives_the_worked_example_of_cie_159() -> None:
    # CIE 159:2004, worked example, as colour-science 0.4.7 prints it in its documentation.
    j, m, h = ciecam02(
        np.array([19.01, 20.00, 21.78]), np.array([95.05, 100.0, 108.88]), 318.31, 20.0, False
    )
    assert (j, m, h) == pytest.approx((41.7310911, 0.1088421, 219.0484326), abs=1e-6)
