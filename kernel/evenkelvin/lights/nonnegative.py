"""Least squares with no negative part."""

from __future__ import annotations

import numpy as np

from evenkelvin.data import Floats


def nonnegative_least_squares(a: Floats, b: Floats) -> tuple[Floats, float]:
    """Return x ≥ 0 that minimises |a·x − b|, and that norm.

    The active-set method of Lawson and Hanson, 'Solving Least Squares Problems' (1974), chapter
    23. Columns may depend on each other; one of the solutions is then returned.

    Parameters
    ----------
    a
        Shape (m, n).
    b
        Shape (m,).
    """
    n = a.shape[1]
    x = np.zeros(n)
    if not n:
        return x, float(np.linalg.norm(b))
    passive = np.zeros(n, dtype=bool)
    scale = np.linalg.norm(a, axis=0) * max(float(np.linalg.norm(b)), 1e-300)
    scale = np.where(scale > 0.0, scale, 1.0)
    # Columns that were let in but could not stay positive, until x has moved.
    refused = np.zeros(n, dtype=bool)
    for _ in range(30 * n):
        gain = a.T @ (b - a @ x) / scale
        gain[passive | refused] = -np.inf
        best = int(np.argmax(gain))
        if gain[best] <= 1e-13:
            break
        passive[best] = True
        while True:
            trial = np.zeros(n)
            trial[passive] = np.linalg.lstsq(a[:, passive], b, rcond=None)[0]
            if np.all(trial[passive] > 0.0):
                break
            # Go as far as the first part that would turn negative, and let it go.
            short = passive & (trial <= 0.0)
            stride = np.min(x[short] / np.maximum(x[short] - trial[short], 1e-300))
            x = x + stride * (trial - x)
            passive &= ~(short & (x <= 1e-15 * max(float(x.max()), 1e-300)))
            x[~passive] = 0.0
            if not passive.any():
                trial = np.zeros(n)
                break
        refused[:] = False
        if not passive[best]:
            refused[best] = True
        x = trial
    return x, float(np.linalg.norm(a @ x - b))
