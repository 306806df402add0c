"""The nominal kit is what its definitions say, and the search leaves nothing of it out."""

from __future__ import annotations

import numpy as np
import pytest

from evenkelvin.colorimetry.chromaticity import uv_prime_to_uv, xyz_to_uv_prime
from evenkelvin.colorimetry.illuminant import planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import uv_to_cct
from evenkelvin.desk import answer
from evenkelvin.filters.gel import Gel, cancels
from evenkelvin.filters.kit import CUTS, cc_transmittance, nominal_kit
from evenkelvin.filters.pack import all_stacks

KIT = {gel.name: gel for gel in nominal_kit()}


@pytest.mark.parametrize("cut", CUTS)
def test_conversion_gels_shift_their_black_body_by_just_the_nominal_mired(cut: str) -> None:
    """The exponents are written down: here they are proved, with the tightness of a solver."""
    for trade, kelvin, sign in (("CTO", 5500.0, 1.0), ("CTB", 3200.0, -1.0)):
        through = planck(GRID, kelvin) * KIT[f"{cut} {trade}"].transmittance
        uv = uv_prime_to_uv(xyz_to_uv_prime(through @ observer_grid()))
        shift = 1e6 / uv_to_cct(uv[np.newaxis])[0, 0] - 1e6 / kelvin
        assert shift == pytest.approx(sign * CUTS[cut][0], abs=1e-7)


def test_green_and_magenta_of_one_cut_undo_each_other_in_colour() -> None:
    for cut in CUTS:
        both = KIT[f"{cut} plus green"].transmittance * KIT[f"{cut} minus green"].transmittance
        assert np.ptp(np.log(both)) < 1e-9


def test_every_gel_lets_less_through_than_falls_on_it() -> None:
    for gel in KIT.values():
        assert gel.transmittance.shape == GRID.shape
        assert gel.transmittance.min() > 0
        assert gel.transmittance.max() < 1


def test_a_gel_of_two_pulls_is_hung_with_what_takes_its_cast_away() -> None:
    curve = KIT["1/4 CTO"].transmittance * cc_transmittance(5)
    own = {"name": "mine", "wavelengths_nm": GRID.tolist(), "transmittance": curve.tolist()}
    found = answer(
        {
            "ask": "fix",
            "reading": {"cct_K": 5600, "duv": 0.003},
            "target": {"cct_K": 4700},
            "own_gels": [own],
            "kit": ["mine", "1/8 minus green", "1/4 minus green", "1/2 minus green"],
        }
    )
    assert found["packs"][0]["words"] == "mine + 1/4 minus green"
    assert found["packs"][0]["verdict"] == "holds"
    # Measured warm and magenta, it is not the opposite of blue, nor of green.
    warm, cool = KIT["1/4 CTO"], KIT["1/4 CTB"]
    skewed = Gel("skewed", "own", warm.transmittance * cc_transmittance(-12), 5500.0)
    opposed = cancels((warm, cool, skewed, KIT["1/2 plus green"]))
    assert opposed.tolist() == [
        [False, True, False, False],
        [True, False, False, False],
        [False, False, False, False],
        [False, False, False, False],
    ]


def test_opposites_are_never_hung_together() -> None:
    kit = nominal_kit()
    names = [gel.name for gel in kit]
    for some in all_stacks(planck(GRID, 4000), kit, 3):
        for gels in some.gels:
            words = " ".join(names[g] for g in gels)
            assert not ("CTB" in words and ("CTO" in words or "CTS" in words))
            green = "plus green" in words or ("CC" in words and " green" in words.replace(
                "plus green", "").replace("minus green", ""))  # fmt: skip
            assert not (green and ("minus green" in words or "magenta" in words))


def test_the_whole_kit_is_searched() -> None:
    """Multisets of 1 to 3 of n gels number C(n+2,3) + C(n+1,2) + n, less those that cancel."""
    kit = nominal_kit()
    flat = tuple(
        Gel(f"g{i}", "own", np.full(81, 0.5 + i / 100), 4300.0, nominal=False) for i in range(12)
    )
    assert [len(some.gels) for some in all_stacks(planck(GRID, 4000), flat, 3)] == [1, 12, 78, 364]
    assert len(kit) == 39
