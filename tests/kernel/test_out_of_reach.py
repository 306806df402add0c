"""Drive levels for a colour that the primaries do not reach."""

from __future__ import annotations

import numpy as np
import pytest

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime, xyz_to_uv_prime
from evenkelvin.lights.driving import brightest
from evenkelvin.lights.gamut import Polygon, hull

#: Primaries as lamps have them: wide apart, with whites among them.
PRIMARIES = np.array(
    [[0.69, 0.30], [0.17, 0.70], [0.14, 0.05], [0.44, 0.40], [0.31, 0.33], [0.57, 0.42],
     [0.40, 0.55], [0.10, 0.45]]
)  # fmt: skip


def _xyz(rng, count):
    xy = PRIMARIES[rng.choice(len(PRIMARIES), count, replace=False)]
    xy = np.clip(xy + rng.normal(scale=0.01, size=(count, 2)), 0.03, 0.75)
    x, y = xy.T
    return np.column_stack([x, y, 1 - x - y]) * (rng.uniform(50, 2000, count) / y)[:, None]


@pytest.mark.parametrize("seed", range(40))
def test_out_of_reach_lands_on_the_nearest_point_of_the_rim_with_most_light(seed):
    rng = np.random.default_rng(seed)
    xyz = _xyz(rng, int(rng.integers(2, 7)))
    wanted = xy_to_uv_prime(rng.uniform([0.2, 0.2], [0.5, 0.5]))
    aim = Polygon(hull(xyz_to_uv_prime(xyz))).nearest(wanted[None])[0]
    levels = brightest(xyz, wanted)
    assert xyz_to_uv_prime(levels @ xyz) == pytest.approx(aim, abs=1e-8)
    assert levels.max() == pytest.approx(1.0)
