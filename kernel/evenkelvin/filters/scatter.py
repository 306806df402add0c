"""How far a gel may be from its curve, and what that does to where a light lands."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache

import numpy as np

from evenkelvin.colorimetry.chromaticity import UV_PRIME_BELOW, xyz_to_uv_prime
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
    """Return what the gels' own scatter does to a light, shape (81,): see :func:`landing_scatters`,
    of which this is one.
    """
    covariance, stops = landing_scatters(light[np.newaxis], [gels])
    return covariance[0], float(stops[0])


def landing_scatters(lights: Floats, stacks: Sequence[Sequence[Gel]]) -> tuple[Floats, Floats]:
    """Return what the gels' own scatter does to a light behind them, to first order.

    Parameters
    ----------
    lights
        The light as it lands behind each stack, shape (n, 81).
    stacks
        For each, every gel that was put on or taken off; two of a name deviate alike.

    Returns
    -------
    covariance, stops
        In u′ v′, shape (n, 2, 2), and the σ of the stops lost, (n,).
    """
    variance = np.array([_variance(gels) for gels in stacks])
    if not variance.any():
        return np.zeros((len(stacks), 2, 2)), np.zeros(len(stacks))
    lit = lights[..., np.newaxis] * observer_grid()
    xyz = lit.sum(axis=1)
    uv, below = xyz_to_uv_prime(xyz), xyz @ UV_PRIME_BELOW
    # How u′ v′ and ln Y answer to the log of transmittance at each wavelength, (n, 81, 3).
    slopes = np.empty_like(lit)
    slopes[..., 0], slopes[..., 1] = 4.0 * lit[..., 0], 9.0 * lit[..., 1]
    slopes[..., :2] -= (lit @ UV_PRIME_BELOW)[..., np.newaxis] * uv[:, np.newaxis]
    slopes[..., :2] /= below[:, np.newaxis, np.newaxis]
    slopes[..., 2] = lit[..., 1] / xyz[:, np.newaxis, 1]
    across = np.swapaxes(slopes, 1, 2)
    covariance = variance[:, np.newaxis, np.newaxis] * (across @ (smooth() @ slopes))
    return covariance[:, :2, :2], np.sqrt(covariance[:, 2, 2]) / np.log(2.0)


def _variance(gels: Sequence[Gel]) -> float:
    counts: dict[Gel, int] = {}
    for gel in gels:
        counts[gel] = counts.get(gel, 0) + 1
    return sum((count * gel.scatter) ** 2 for gel, count in counts.items())
