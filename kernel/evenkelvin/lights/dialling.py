"""A tunable lamp that does not quite give what is dialled: what to dial next.

What was dialled and what was measured are both points in u′ v′; near a white a lamp maps one to
the other almost linearly: measured = matrix · dialled + offset. The matrix starts from the
identity, or from what is remembered of the lamp, and is changed as little as the pairs so far
demand: Broyden's secant update (C. G. Broyden, Mathematics of Computation 19 (1965) 577), with
all pairs at once, and damped so that the noise of a meter is not taken for a turn of the lamp.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.data import Floats

#: Scatter of a meter and of a lamp's own steps, in u′ v′ (common practice, no source).
_NOISE_UV = 0.4 * STEP_UV
#: How far a lamp's matrix may be from the identity, or from what is remembered of it.
_NEW_SPREAD, _KNOWN_SPREAD = 0.25, 0.08
#: A lamp answers to a dial by no less and no more than this (times).
_ANSWERS = (0.35, 3.0)
#: What counts as the same setting: half a unit in the fourth decimal of x y, in u′ v′.
SAME_UV = 0.00005


@dataclass(frozen=True, eq=False)
class Correction:
    """What a lamp makes of a dialled u′ v′: measured = matrix · dialled + offset."""

    matrix: Floats
    offset: Floats

    def dial_for(self, wanted_uv: Floats) -> Floats:
        """Return what to dial for a wanted u′ v′, shape (2,)."""
        return np.asarray(np.linalg.solve(self.matrix, wanted_uv - self.offset))


def learn(
    dialled: Floats, measured: Floats, wanted_uv: Floats, remembered: Correction | None = None
) -> Correction:
    """Return the correction that pairs of dialled and measured u′ v′ teach.

    It is exact at the pair that came closest to what is wanted.

    Parameters
    ----------
    dialled, measured
        Shape (n, 2), n ≥ 0.
    wanted_uv
        Shape (2,).
    remembered
        What is known of the lamp from before.
    """
    prior = np.eye(2) if remembered is None else remembered.matrix
    if not len(dialled):
        return remembered or Correction(np.eye(2), np.zeros(2))
    best = int(np.argmin(delta_uv_prime(measured, wanted_uv)))
    moved, answered = dialled - dialled[best], measured - measured[best]
    spread = _NEW_SPREAD if remembered is None else _KNOWN_SPREAD
    damping = (_NOISE_UV / spread) ** 2
    # Least squares about the prior: (prior·λ + Σ Δm Δdᵀ) (λ + Σ Δd Δdᵀ)⁻¹.
    matrix = (damping * prior + answered.T @ moved) @ np.linalg.inv(
        damping * np.eye(2) + moved.T @ moved
    )
    left, sizes, right = np.linalg.svd(matrix)
    matrix = left @ np.diag(np.clip(sizes, *_ANSWERS)) @ right
    return Correction(matrix, measured[best] - matrix @ dialled[best])
