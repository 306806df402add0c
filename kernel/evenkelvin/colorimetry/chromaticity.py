"""Chromaticity coordinates: x y of 1931, u v of 1960, u′ v′ of 1976 (CIE 15:2018, 7 and 8).

Every function takes and returns arrays whose last axis holds the coordinates.
"""

from __future__ import annotations

from functools import cache

import numpy as np

from evenkelvin.colorimetry.observer import observer_1nm, wavelengths_1nm
from evenkelvin.data import Floats

_FOUR_NINE = np.array([4.0, 9.0])
#: What sums X, Y, Z to what u′ and v′ are divided by.
UV_PRIME_BELOW = np.array([1.0, 15.0, 3.0])


def xyz_to_xy(xyz: Floats) -> Floats:
    """Return x, y of X, Y, Z: (..., 3) to (..., 2)."""
    xy: Floats = xyz[..., :2] / np.sum(xyz, axis=-1, keepdims=True)
    return xy


def xy_to_xyz(xy: Floats) -> Floats:
    """Return X, Y, Z of x, y at Y = 1: (..., 2) to (..., 3)."""
    x, y = xy[..., 0], xy[..., 1]
    return np.stack([x / y, np.ones_like(y), (1.0 - x - y) / y], axis=-1)


def xy_to_uv_prime(xy: Floats) -> Floats:
    """Return u′, v′ (CIE 1976 UCS) of x, y: (..., 2) to (..., 2)."""
    below = -2.0 * xy[..., :1] + 12.0 * xy[..., 1:] + 3.0
    return np.asarray(xy * _FOUR_NINE / below)


def uv_prime_to_xy(uv_prime: Floats) -> Floats:
    """Return x, y of u′, v′ (CIE 1976 UCS): (..., 2) to (..., 2)."""
    u, v = uv_prime[..., 0], uv_prime[..., 1]
    below = 6.0 * u - 16.0 * v + 12.0
    return np.stack([9.0 * u / below, 4.0 * v / below], axis=-1)


def uv_prime_to_uv(uv_prime: Floats) -> Floats:
    """Return u, v (CIE 1960) of u′, v′ (CIE 1976): the same u, v two thirds of v′."""
    return np.asarray(uv_prime * np.array([1.0, 2.0 / 3.0]))


def uv_to_uv_prime(uv: Floats) -> Floats:
    """Return u′, v′ (CIE 1976) of u, v (CIE 1960)."""
    return np.asarray(uv * np.array([1.0, 1.5]))


def xy_to_uv(xy: Floats) -> Floats:
    """Return u, v (CIE 1960) of x, y: (..., 2) to (..., 2)."""
    return uv_prime_to_uv(xy_to_uv_prime(xy))


def uv_to_xy(uv: Floats) -> Floats:
    """Return x, y of u, v (CIE 1960): (..., 2) to (..., 2)."""
    return uv_prime_to_xy(uv_to_uv_prime(uv))


def xyz_to_uv_prime(xyz: Floats) -> Floats:
    """Return u′, v′ (CIE 1976 UCS) of X, Y, Z: (..., 3) to (..., 2)."""
    return np.asarray(xyz[..., :2] * _FOUR_NINE / (xyz @ UV_PRIME_BELOW)[..., np.newaxis])


@cache
def _spectral_locus() -> Floats:
    nm = wavelengths_1nm()
    return xyz_to_xy(observer_1nm()[(nm >= 380.0) & (nm <= 700.0)])


def is_real(xy: Floats) -> bool:
    """Tell whether x, y lies within the spectral locus and its purple line, so can be a light."""
    corners = _spectral_locus()
    edges = np.roll(corners, -1, axis=0) - corners
    away = np.asarray(xy) - corners
    # An even-odd count of the locus' edges that a ray to the right crosses.
    upward = edges[:, 1]
    crosses = (corners[:, 1] > xy[1]) != (np.roll(corners[:, 1], -1) > xy[1])
    with np.errstate(divide="ignore", invalid="ignore"):
        meets = away[:, 0] < edges[:, 0] * away[:, 1] / upward
    return bool(np.count_nonzero(crosses & meets) % 2)
