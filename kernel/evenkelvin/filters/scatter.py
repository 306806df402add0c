"""How far a gel may be from its curve, and what that does to where a light lands."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

import numpy as np

from evenkelvin.colorimetry.chromaticity import xyz_to_uv_prime
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel

#: Length in nm over which a gel's deviation is smooth (common practice, no source).
SMOOTH_NM = 80.0
#: σ of a gel that was learned from two readings in x y: its shift is known, its curve is not.
LEARNED_SCATTER = 0.02


@cache
def smooth() -> Floats:
    """Return the covariance of a smooth deviation of σ 1 over the grid, shape (81, 81)."""
    return np.asarray(np.exp(-0.5 * ((GRID[:, np.newaxis] - GRID) / SMOOTH_NM) ** 2))


def landing_scatter(light: Floats, gels: Sequence[Gel]) -> tuple[Floats, float]:
    """Return what the gels' own scatter does to a light, to first order.

    Parameters
    ----------
    light
        The light as it lands, shape (81,).
    gels
        Every gel that was put on or taken off; two of a name deviate alike.

    Returns
    -------
    covariance, stops
        In u′ v′, shape (2, 2), and the σ of the stops lost.
    """
    counts: dict[Gel, int] = {}
    for gel in gels:
        counts[gel] = counts.get(gel, 0) + 1
    variance = sum((count * gel.scatter) ** 2 for gel, count in counts.items())
    if variance == 0.0:
        return np.zeros((2, 2)), 0.0
    lit = light[:, np.newaxis] * observer_grid()
    xyz = lit.sum(axis=0)
    uv, below = xyz_to_uv_prime(xyz), xyz @ np.array([1.0, 15.0, 3.0])
    # How u′ v′ and ln Y answer to the log of transmittance at each wavelength.
    slope = np.stack([4.0 * lit[:, 0], 9.0 * lit[:, 1]], axis=1)
    slope -= (lit @ np.array([1.0, 15.0, 3.0]))[:, np.newaxis] * uv
    slopes = np.column_stack([slope / below, lit[:, 1] / xyz[1]])
    covariance = variance * slopes.T @ smooth() @ slopes
    return covariance[:2, :2], float(np.sqrt(covariance[2, 2]) / np.log(2.0))
