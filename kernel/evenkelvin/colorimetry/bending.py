"""Spectra bent until they have a wanted chromaticity."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime, xyz_to_uv_prime, xyz_to_xy
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.data import Floats

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: Wavelength scaled to about −1 to 1, so that the bend is well conditioned.
_T = (GRID - 560.0) / 200.0


@cache
def _bars_and_slopes() -> Floats:
    """Return what sums a spectrum to X, Y, Z, and to their slopes by b and by c, shape (81, 9)."""
    bars = observer_grid()
    return np.hstack([bars, bars * _T[:, np.newaxis], bars * _T[:, np.newaxis] ** 2])


#: Nearer to where it should be than this, in u′ v′, a spectrum is bent no further.
_THERE = 1e-13


def bend(spectra: Floats, xy: Floats) -> Floats:
    """Return those spectra that :func:`bent` could bend, shape (m, 81)."""
    return bent(spectra, xy)[0]


def bent(spectra: Floats, xy: Floats) -> tuple[Floats, NDArray[np.bool_]]:
    """Bend spectra until each has exactly the chromaticity x, y.

    Parameters
    ----------
    spectra
        On the search grid, shape (n, 81), positive somewhere.
    xy
        Wanted chromaticity, shape (2,) for all of them or (n, 2) for each.

    Returns
    -------
    spectra, reached
        Shape (m, 81), m ≤ n: those that could be bent that far, each peaking at 1; and which
        those are, shape (n,).
    """
    bars = observer_grid()
    basis = np.stack([_T, _T**2])
    wanted_uv = xy_to_uv_prime(xy)
    start = xyz_to_uv_prime(spectra @ bars)
    coefficients = np.zeros((len(spectra), 2))
    # Newton from afar overshoots; the wanted point is approached in a few equal strides.
    for part, tries in ((0.25, 2), (0.5, 2), (0.75, 2), (1.0, 12)):
        aim = start + part * (wanted_uv - start)
        for _ in range(tries):
            exponent = np.clip(coefficients @ basis, -60.0, 60.0)
            shaped = spectra * np.exp(exponent)
            summed = (shaped @ _bars_and_slopes()).reshape(-1, 3, 3)
            xyz, slopes = summed[:, 0], summed[:, 1:]
            below = xyz @ np.array([1.0, 15.0, 3.0])
            uv = xyz_to_uv_prime(xyz)
            along = np.stack([4.0 * slopes[..., 0], 9.0 * slopes[..., 1]], axis=-1)
            along -= uv[:, np.newaxis] * (slopes @ np.array([1.0, 15.0, 3.0]))[..., np.newaxis]
            jacobian = np.swapaxes(along / below[:, np.newaxis, np.newaxis], 1, 2)
            # Two equations in two unknowns, by Cramer's rule.
            (a, b), (c, d) = np.moveaxis(jacobian + 1e-12 * np.eye(2), 0, -1)
            p, q = (aim - uv).T
            if max(np.abs(p).max(), np.abs(q).max()) < _THERE:
                break
            stride = np.stack([d * p - b * q, a * q - c * p], axis=-1)
            coefficients += np.clip(stride / (a * d - b * c)[:, np.newaxis], -4.0, 4.0)
    shaped = spectra * np.exp(np.clip(coefficients @ basis, -60.0, 60.0))
    reached = np.abs(xyz_to_xy(shaped @ bars) - xy).max(axis=-1) < 1e-9
    kept = shaped[reached]
    return np.asarray(kept / kept.max(axis=-1, keepdims=True)), reached
