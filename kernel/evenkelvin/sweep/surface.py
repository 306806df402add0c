"""What lies between readings on a surface: the smoothest sheet through all of them.

A thin-plate spline (Duchon 1977; Bookstein 1989, IEEE Trans. PAMI 11, 567): the sum of r² log r
about every reading and a plane, with the least bending of all sheets that pass through them.
"""

from __future__ import annotations

import numpy as np

from evenkelvin.data import Floats

#: Readings closer together than this, as a part of the surface, are one place read twice.
_SAME_PLACE = 1e-6


class Sheet:
    """A sheet through readings.

    Parameters
    ----------
    places
        Where they were taken, across and up, shape (n, 2).
    values
        What they read, shape (n,), or (n, k) for k sheets at once. A place that was read twice
        counts with its mean.

    Raises
    ------
    ValueError
        When all places lie on one line: what is beside it cannot be told.
    """

    def __init__(self, places: Floats, values: Floats) -> None:
        self._places, values = _each_once(places, values)
        plane = _plane(self._places)
        if np.linalg.matrix_rank(plane, tol=1e-9) < 3:
            raise ValueError("the places lie on one line")
        count = len(values)
        system = np.zeros((count + 3, count + 3))
        system[:count, :count] = _bending(_squares(self._places, self._places))
        system[:count, count:] = plane
        system[count:, :count] = plane.T
        solved = np.linalg.solve(system, np.concatenate([values, np.zeros((3, *values.shape[1:]))]))
        self._weights, self._tilt = solved[:count], solved[count:]

    def at(self, places: Floats) -> Floats:
        """Return the sheet's height at places of shape (m, 2), shape (m,) or (m, k)."""
        bending = _bending(_squares(places, self._places))
        heights: Floats = bending @ self._weights + _plane(places) @ self._tilt
        return heights

    def slope(self, places: Floats) -> Floats:
        """Return how steeply the sheet rises across and up, shape (m, 2) or (m, 2, k)."""
        apart = places[:, None, :] - self._places[None, :, :]
        squares = np.sum(apart**2, axis=2)
        # The derivative of ½ s log s by the two ways, s being the squared distance.
        steep = np.log(np.where(squares > 0, squares, 1.0)) + 1.0
        slopes: Floats = np.einsum("mn,mnd,n...->md...", steep, apart, self._weights)
        return slopes + self._tilt[1:]


def _each_once(places: Floats, values: Floats) -> tuple[Floats, Floats]:
    near = np.abs(places[:, None, :] - places[None, :, :]).max(axis=2) < _SAME_PLACE
    first, group = np.unique(near.argmax(axis=1), return_inverse=True)
    means = np.stack([values[group == index].mean(axis=0) for index in range(len(first))])
    return places[first], means


def _squares(some: Floats, others: Floats) -> Floats:
    squares: Floats = np.sum((some[:, None, :] - others[None, :, :]) ** 2, axis=2)
    return squares


def _bending(squares: Floats) -> Floats:
    """Return r² log r, as ½ s log s of the squared distance; 0 where there is none."""
    bending: Floats = 0.5 * squares * np.log(np.where(squares > 0, squares, 1.0))
    return bending


def _plane(places: Floats) -> Floats:
    return np.column_stack([np.ones(len(places)), places])
