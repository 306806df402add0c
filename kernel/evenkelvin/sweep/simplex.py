"""The simplex method for small linear programmes in standard form.

Dantzig's tableau, by the steepest price while that gains, then by Bland's rule (1977, Math. Oper.
Res. 2, 103), which ends whatever ties there are.
"""

from __future__ import annotations

import numpy as np

from evenkelvin.data import Floats

_ZERO = 1e-10
#: Turns without a gain, after which ties are broken by Bland's rule.
_PATIENCE = 20


def maximise(gain: Floats, rows: Floats, limits: Floats) -> tuple[float, Floats, Floats]:
    """Return the most of gain·q with rows·q ≤ limits and q ≥ 0.

    Parameters
    ----------
    gain
        Shape (n,).
    rows
        Shape (m, n).
    limits
        Shape (m,), none of them negative.

    Returns
    -------
    tuple
        The most that is gained; q, shape (n,); and what each limit is worth, shape (m,): the
        solution of the dual programme, least limits·p with p·rows ≥ gain and p ≥ 0.

    Raises
    ------
    OverflowError
        When there is no most.
    """
    count, width = rows.shape
    table = np.hstack([rows, np.eye(count), limits[:, None]])
    # Last row: what would be gained; worked on as its negative, as in the books.
    prices = np.concatenate([-gain, np.zeros(count + 1)])
    basis = np.arange(width, width + count)
    idle = 0
    while True:
        entering = np.flatnonzero(prices[:-1] < -_ZERO)
        if not len(entering):
            break
        column = int(entering[0] if idle > _PATIENCE else np.argmin(prices[:-1]))
        rising = table[:, column] > _ZERO
        if not rising.any():
            raise OverflowError("there is no most")
        steps = np.full(count, np.inf)
        steps[rising] = table[rising, -1] / table[rising, column]
        least = np.flatnonzero(steps <= steps.min() + _ZERO)
        row = int(least[np.argmin(basis[least])])
        table[row] /= table[row, column]
        others = np.arange(count) != row
        table[others] -= np.outer(table[others, column], table[row])
        idle = 0 if table[row, -1] > _ZERO else idle + 1
        prices -= prices[column] * table[row]
        basis[row] = column
    q = np.zeros(width + count)
    q[basis] = table[:, -1]
    return float(prices[-1]), q[:width], prices[width:-1]
