"""Samples in a light beside its reference, and colours of wavelengths, by colour-science."""

from __future__ import annotations

import colour
import numpy as np
import pytest
from colour.quality.cfi2017 import load_TCS_CIE2017
from colour.quality.datasets import SDS_TCS
from test_seen_published import CMFS, D65, SHAPE, encoded, reading, sd

from evenkelvin.desk import answer

LIGHTS = ["FL2", "FL11", "LED-B3", "HP1"]
TEN = colour.MSDS_CMFS["CIE 1964 10 Degree Standard Observer"].copy().align(SHAPE).values
R1_TO_R14 = [f"TCS{number:02d}" for number in range(1, 15)]


def rendered(name):
    return answer({"ask": "render", "reading": reading(sd(name))})


def at_its_own_white(light, factors, cmfs):
    """X, Y, Z of surfaces, the light's own white brought to D65 by CAT16 (Li et al., 2017)."""
    white = light @ cmfs
    xyz = (factors * light) @ cmfs / white[1]
    return colour.adaptation.chromatic_adaptation_VonKries(
        xyz, white / white[1], colour.xy_to_XYZ(D65), transform="CAT16"
    )


def compare(pairs, by_hand, side):
    """Hold one side of some pairs to what was worked out by hand, to one code of 255."""
    codes, fits = encoded(by_hand, "sRGB")
    assert np.count_nonzero(fits) > len(pairs) // 2
    for pair, code, fit in zip(pairs, codes, fits, strict=True):
        if fit:
            assert pair[side]["srgb"] == pytest.approx(code, abs=1.0)
            assert not pair[side]["clipped"]


@pytest.mark.parametrize("name", LIGHTS)
def test_r1_to_r14_in_the_light_and_in_its_reference(name):
    """CIE 13.3-1995, table 1 and 5.2, by colour-science."""
    factors = np.stack([SDS_TCS["CIE 1995"][one].copy().align(SHAPE).values for one in R1_TO_R14])
    cri = rendered(name)["cri"]
    assert len(cri["pairs"]) == 15
    compare(cri["pairs"][:14], at_its_own_white(sd(name), factors, CMFS), 0)
    if cri["cct_K"] < 5000:
        reference = colour.sd_blackbody(cri["cct_K"], SHAPE)
    else:
        xy = colour.temperature.CCT_to_xy_CIE_D(cri["cct_K"])
        reference = colour.sd_CIE_illuminant_D_series(xy).align(SHAPE)
    compare(cri["pairs"][:14], at_its_own_white(reference.values, factors, CMFS), 1)


@pytest.mark.parametrize("name", LIGHTS)
def test_hue_bins_are_the_means_of_their_samples(name):
    """CIE 224:2017 samples, ANSI/IES TM-30-20 bins, by colour-science."""
    told = colour.colour_fidelity_index(
        colour.SDS_ILLUMINANTS[name], additional_data=True, method="ANSI/IES TM-30-18"
    )
    samples = load_TCS_CIE2017(SHAPE).values.T
    each = at_its_own_white(sd(name), samples, TEN)
    means = np.stack([each[told.bins == each_bin].mean(axis=0) for each_bin in range(16)])
    compare(rendered(name)["tm30"]["pairs"], means, 0)


def test_a_light_that_is_its_reference_makes_pairs_of_one_colour():
    """A black body at 2856 K is illuminant A (CIE 15:2018)."""
    found = rendered("A")
    for one, other in found["cri"]["pairs"] + found["tm30"]["pairs"]:
        assert one["srgb"] == pytest.approx(other["srgb"], abs=1)


def test_wavelengths_have_the_colours_that_a_screen_comes_nearest_to():
    """CIE 1931 x̄ ȳ z̄ in sRGB (IEC 61966-2-1), by colour-science; negative parts left out."""
    band = rendered("A")["curves"]["band"]
    space = colour.RGB_COLOURSPACES["sRGB"]
    for nm, code in zip(band["wavelengths_nm"], band["srgb"], strict=True):
        xyz = CMFS[int(nm - 380) // 5]
        linear = np.clip(space.matrix_XYZ_to_RGB @ xyz, 0, None)
        wanted = 255 * colour.models.eotf_inverse_sRGB(linear / linear.max())
        assert code == pytest.approx(wanted, abs=1.0), nm
    at = dict(zip(band["wavelengths_nm"], band["srgb"], strict=True))
    assert (max(at[450]), max(at[540]), max(at[650])) == (at[450][2], at[540][1], at[650][0])
