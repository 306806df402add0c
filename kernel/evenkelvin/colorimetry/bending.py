"""Spectra bent until they have a wanted chromaticity."""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.chromaticity import (
    UV_PRIME_BELOW,
    xy_to_uv_prime,
    xyz_to_uv_prime,
    xyz_to_xy,
)
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


_BASIS = np.stack([_T, _T**2])
#: Nearer to where it should be than this, in u′ v′, a spectrum is bent no further; and it is there
#: if its x y are as near as this.
_THERE, _REACHED = 1e-13, 1e-9
#: Nothing is bent by more than exp(±60), nor by a slope of nothing.
_STEEPEST, _FLAT = 60.0, 1e-24
#: Newton goes straight there; what overshoots is led there in a few equal strides. Each leg is a
#: part of the way and the most tries.
_STRAIGHT = ((1.0, 12),)
_IN_STRIDES = ((0.25, 2), (0.5, 2), (0.75, 2), (1.0, 12))


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
    shaped = spectra * _bend_by(_coefficients(spectra, xy, _STRAIGHT))
    reached = np.abs(xyz_to_xy(shaped @ bars) - xy).max(axis=-1) < _REACHED
    if not reached.all():
        astray = ~reached
        to = xy if np.ndim(xy) == 1 else xy[astray]
        again = spectra[astray] * _bend_by(_coefficients(spectra[astray], to, _IN_STRIDES))
        shaped[astray] = again
        reached[astray] = np.abs(xyz_to_xy(again @ bars) - to).max(axis=-1) < _REACHED
    kept = shaped[reached]
    return np.asarray(kept / kept.max(axis=-1, keepdims=True)), reached


def _coefficients(spectra: Floats, xy: Floats, legs: tuple[tuple[float, int], ...]) -> Floats:
    """Return b and c of each spectrum, shape (n, 2), by Newton's method.

    Each leg goes a part of the way, in so many tries at most.
    """
    wanted_uv = xy_to_uv_prime(xy)
    start = xyz_to_uv_prime(spectra @ observer_grid())
    found = np.zeros((len(spectra), 2))
    for part, tries in legs:
        aim = start + part * (wanted_uv - start)
        for _ in range(tries):
            summed = (spectra * _bend_by(found) @ _bars_and_slopes()).reshape(-1, 3, 3)
            xyz, slopes = summed[:, 0], summed[:, 1:]
            below = xyz @ UV_PRIME_BELOW
            uv = xyz_to_uv_prime(xyz)
            p, q = (aim - uv).T
            if max(np.abs(p).max(), np.abs(q).max()) < _THERE:
                break
            # Two equations in two unknowns, by Cramer's rule.
            of_below = slopes @ UV_PRIME_BELOW / below[:, np.newaxis]
            a, b = (4.0 * slopes[..., 0] / below[:, np.newaxis] - uv[:, :1] * of_below).T
            c, d = (9.0 * slopes[..., 1] / below[:, np.newaxis] - uv[:, 1:] * of_below).T
            stride = np.stack([d * p - b * q, a * q - c * p], axis=-1)
            across = a * d - b * c
            across = np.where(np.abs(across) < _FLAT, np.copysign(_FLAT, across), across)
            found += np.clip(stride / across[:, np.newaxis], -4.0, 4.0)
    return found


def _bend_by(coefficients: Floats) -> Floats:
    """Return what b and c bend a spectrum by: (n, 2) to (n, 81)."""
    return np.asarray(np.exp(np.clip(coefficients @ _BASIS, -_STEEPEST, _STEEPEST)))
