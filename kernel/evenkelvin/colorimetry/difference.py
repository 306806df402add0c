"""How far two chromaticities are apart, in u′ v′ and in steps."""

from __future__ import annotations

import numpy as np

from evenkelvin.data import Floats

#: Radius in u′ v′ of a circle of one step (CIE TN 001:2014).
STEP_UV = 0.0011


def delta_uv_prime(first: Floats, second: Floats) -> Floats:
    """Return the distance in CIE 1976 u′ v′: (..., 2) and (..., 2) to (...)."""
    return np.asarray(np.hypot(*np.moveaxis(np.asarray(first) - np.asarray(second), -1, 0)))
