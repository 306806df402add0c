"""The tint of a white in cuts of plus and minus green, as lamps are dialled."""

from __future__ import annotations

import numpy as np
import pytest

from evenkelvin.colorimetry.chromaticity import uv_prime_to_uv, xyz_to_uv_prime
from evenkelvin.colorimetry.illuminant import planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import uv_to_cct
from evenkelvin.desk import answer
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.lights.tint import cut_words


@pytest.mark.parametrize("name", [gel.name for gel in nominal_kit() if gel.family == "green"])
def test_a_black_body_behind_a_cut_reads_as_that_cut(name: str) -> None:
    """The gel is hung on a black body and read again: CCT and Duv alone give its name back."""
    (gel,) = [gel for gel in nominal_kit() if gel.name == name]
    xyz = (planck(GRID, 4300.0) * gel.transmittance) @ observer_grid()
    cct, duv = uv_to_cct(uv_prime_to_uv(xyz_to_uv_prime(xyz))[np.newaxis])[0]
    assert str(cut_words(float(cct), float(duv))) == name


def test_a_white_on_the_line_needs_neither() -> None:
    assert str(cut_words(3200.0, 0.0)) == "no plus or minus green"


def test_more_than_any_cut_is_told_in_full_cuts() -> None:
    assert str(cut_words(4300.0, 0.048)).endswith("× full plus green")
    assert cut_words(float("nan"), 0.1) is None


def test_fix_and_dial_give_the_three_ways_together() -> None:
    white = {"cct_K": 4300, "duv": 0.005}
    fix = answer({"ask": "fix", "reading": {"cct_K": 3200, "duv": 0}, "target": white})["dial"]
    assert fix["cct_K"] == pytest.approx(4300, abs=1)
    assert fix["duv"] == pytest.approx(0.005, abs=1e-5)
    assert fix["green"].endswith("plus green")
    dial = answer({"ask": "dial", "history": [], "target": white})
    assert dial["next_green"] == fix["green"]


@pytest.mark.parametrize(
    ("kit", "gels", "fetch"),
    [
        (None, ["ND 0.6"], []),
        (["ND 0.3", "full CTO"], ["ND 0.3", "ND 0.3"], []),  # it does with what is carried
        (["full CTO"], ["ND 0.6"], ["ND 0.6"]),  # nothing of it is carried
    ],
)
def test_neutral_density_that_is_not_carried_is_to_be_fetched(
    kit: list[str] | None, gels: list[str], fetch: list[str]
) -> None:
    """Two stops are a density of 2 log10 2 = 0.602."""
    nd = {"measured_lx": 4000, "wanted_lx": 1000} | ({} if kit is None else {"kit": kit})
    found = answer({"ask": "windows", "nd": nd})["nd"]
    assert (found["gels"], found["fetch"]) == (gels, fetch)
