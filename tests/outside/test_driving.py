"""Drive levels against SciPy's linear programming, and against a dense search for similarity."""

from __future__ import annotations

import colour
import numpy as np
import pytest
from scipy.optimize import linprog, minimize

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime, xyz_to_uv_prime
from evenkelvin.colorimetry.illuminant import planck
from evenkelvin.colorimetry.spectrum import Spectrum, tristimulus
from evenkelvin.lights.driving import brightest, most, most_similar
from evenkelvin.rendering.ssi import planck_reference, spectral_similarity


def _xyz(rng, count):
    """Return primaries as lamps have them: wide apart, with whites among them."""
    xy = np.array(
        [[0.69, 0.30], [0.17, 0.70], [0.14, 0.05], [0.44, 0.40], [0.31, 0.33], [0.57, 0.42],
         [0.40, 0.55], [0.10, 0.45]]
    )  # fmt: skip
    xy = xy[rng.choice(len(xy), count, replace=False)] + rng.normal(scale=0.01, size=(count, 2))
    xy = np.clip(xy, 0.03, 0.75)
    lux = rng.uniform(50, 2000, count)
    return np.array([colour.xyY_to_XYZ([x, y, lux_]) for (x, y), lux_ in zip(xy, lux, strict=True)])


def _by_scipy(xyz, uv):
    weight = xyz @ [1.0, 15.0, 3.0]
    balance = ((xyz_to_uv_prime(xyz) - uv) * weight[:, None]).T / weight.mean()
    found = linprog(-xyz[:, 1], A_eq=balance, b_eq=np.zeros(2), bounds=(0, 1), method="highs")
    return -found.fun if found.success else 0.0


@pytest.mark.parametrize("seed", range(150))
def test_the_most_light_is_what_scipy_finds(seed):
    """SciPy's linprog as the referee."""
    rng = np.random.default_rng(seed)
    xyz = _xyz(rng, int(rng.integers(3, 9)))
    parts = rng.dirichlet(np.ones(len(xyz)))
    wanted = xyz_to_uv_prime(parts @ xyz)
    levels = brightest(xyz, wanted)
    assert np.all((levels >= 0.0) & (levels <= 1.0))
    assert xyz_to_uv_prime(levels @ xyz) == pytest.approx(wanted, abs=1e-9)
    assert levels @ xyz[:, 1] == pytest.approx(_by_scipy(xyz, wanted), rel=1e-6)
    # At a corner of the programme no more than two levels lie between.
    assert np.sum((levels > 1e-9) & (levels < 1.0 - 1e-9)) <= 2


@pytest.mark.parametrize("seed", range(100))
def test_any_such_programme_is_solved_as_by_scipy(seed):
    rng = np.random.default_rng(seed)
    rows, count = int(rng.integers(1, 3)), int(rng.integers(2, 10))
    gain, balance = rng.uniform(0.1, 5, count), rng.normal(size=(rows, count))
    if seed % 4 == 0:
        balance[:, -1], gain[-1] = balance[:, 0], gain[0]
    found = linprog(-gain, A_eq=balance, b_eq=np.zeros(rows), bounds=(0, 1), method="highs")
    levels = most(gain, balance)
    assert gain @ levels == pytest.approx(-found.fun, rel=1e-7, abs=1e-9)
    assert balance @ levels == pytest.approx(np.zeros(rows), abs=1e-8)


@pytest.mark.parametrize("cct", [3000.0, 4000.0, 5000.0])
def test_bi_colour_is_the_case_of_two(cct):
    def xy_of(kelvin):
        return colour.temperature.CCT_to_xy(kelvin, method="Kang 2002")

    warm, cool = (
        colour.xyY_to_XYZ([*xy_of(kelvin), lux]) for kelvin, lux in ((2700, 900), (6500, 1200))
    )
    xyz = np.array([warm, cool])
    wanted = xy_to_uv_prime(np.array(xy_of(cct)))
    levels = brightest(xyz, wanted)
    assert levels.max() == 1.0
    mixed = xyz_to_uv_prime(levels @ xyz)
    share = np.linspace(0, 1, 20001)[:, None]
    line = xyz_to_uv_prime(share * warm / warm[1] + (1 - share) * cool / cool[1])
    assert np.hypot(*(mixed - wanted)) <= np.hypot(*(line - wanted).T).min() + 1e-8


def test_several_primaries_on_the_rim_share_the_work():
    uv_line = [colour.xyY_to_XYZ([x, 0.4, 100.0]) for x in (0.3, 0.4, 0.5)]
    xyz = np.array([*uv_line, colour.xyY_to_XYZ([0.4, 0.2, 50.0])])
    levels = brightest(xyz, xy_to_uv_prime(np.array([0.4, 0.42])))
    assert levels[3] == 0.0
    assert np.sum(levels[:3] > 0) >= 2


def _lamp(centres, widths):
    nm = np.arange(380.0, 781.0, 5.0)
    return [
        Spectrum(nm, np.exp(-(((nm - c) / w) ** 2))) for c, w in zip(centres, widths, strict=True)
    ]


@pytest.mark.parametrize("cct", [3200.0, 3800.0])
def test_no_other_levels_of_the_same_white_are_more_similar(cct):
    """SSI after SMPTE ST 2122:2020; brute force and SciPy's minimize look for better."""
    spectra = _lamp((455, 500, 530, 595, 635), (12, 20, 25, 40, 14))
    xyz = np.stack([tristimulus(one) for one in spectra])
    reference, words = planck_reference(cct)
    nm = spectra[0].wavelengths
    wanted = xyz_to_uv_prime(tristimulus(Spectrum(nm, planck(nm, cct))))
    levels = most_similar(xyz, spectra, wanted, reference)
    assert levels.max() == pytest.approx(1.0)
    assert xyz_to_uv_prime(levels @ xyz) == pytest.approx(wanted, abs=2e-6)

    values = np.stack([one.values for one in spectra], axis=1)

    def score(drive):
        return spectral_similarity(Spectrum(nm, values @ drive), reference, words).unrounded

    weight = xyz @ [1.0, 15.0, 3.0]
    balance = ((xyz_to_uv_prime(xyz) - wanted) * weight[:, None]).T / weight.mean()
    rng = np.random.default_rng(1)
    others = []
    for _ in range(6):
        start = np.clip(levels + rng.uniform(-0.2, 0.2, len(levels)), 0.01, 1.0)
        found = minimize(
            lambda drive: -score(drive), start, method="SLSQP", bounds=[(1e-6, 1)] * 5,
            constraints={"type": "eq", "fun": lambda drive: balance @ drive * 1e3},
        )  # fmt: skip
        if np.abs(balance @ found.x).max() < 1e-6:
            others.append(-found.fun)
    assert others
    assert score(levels) >= max(others) - 0.02
