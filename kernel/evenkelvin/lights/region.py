"""Where a light may land: a mean and a 90 % region in u′ v′, and the odds that it holds."""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import cache, cached_property
from typing import Literal

import numpy as np

from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.data import Floats
from evenkelvin.lights.tolerance import Verdict

#: What may be promised of a landing, from the best to the worst.
Promise = Literal["holds", "should_hold", "read_again", "near", "out"]
PROMISE_RANK: dict[Promise, int] = {
    "holds": 0, "should_hold": 1, "read_again": 2, "near": 3, "out": 4,
}  # fmt: skip
#: What is only a guess of a landing: the light is to be read again when it is hung.
UNSURE: tuple[Promise, ...] = ("should_hold", "read_again")
#: Odds from which a light 'holds', and from which it 'should hold'.
SURE, LIKELY = 0.9, 0.7
#: χ² of two degrees of freedom and |z| of one that 9 in 10 stay below.
CHI_2, Z = 4.605170186, 1.644853627
#: Points of the normal plane by which odds are counted.
_POINTS = 500


@cache
def _normal_plane() -> Floats:
    """Return points spread as evenly as a plane normal distribution allows, shape (500, 2)."""
    part = (np.arange(_POINTS) + 0.5) / _POINTS
    turn = np.arange(_POINTS) * np.pi * (3.0 - np.sqrt(5.0))
    away = np.sqrt(-2.0 * np.log1p(-part))
    return np.stack([away * np.cos(turn), away * np.sin(turn)], axis=1)


def promise(odds: float, best_guess: Verdict) -> Promise:
    """Return what may be promised by the odds that a light holds, else by its best guess."""
    if odds >= SURE:
        return "holds"
    if odds >= LIKELY:
        return "should_hold"
    return "read_again" if best_guess == "holds" else best_guess


@dataclass(frozen=True, eq=False)
class Region:
    """Where a light lands: ``mean`` in u′ v′, shape (2,), and its covariance, shape (2, 2).

    ``stops_sigma`` is the scatter of the stops lost, ``gel_share`` how much of the variance in
    u′ v′ is the gels' own. A light of known spectrum behind gels of
    known curve is a point: all zero.
    """

    mean: Floats
    covariance: Floats
    stops_sigma: float = 0.0
    gel_share: float = 0.0

    @cached_property
    def _axes(self) -> tuple[Floats, Floats]:
        """The variances along the axes of the region, (2,), and the axes as columns, (2, 2)."""
        # In closed form: a landing is one of hundreds, and a library's call costs more than this.
        (a, b), (_, d) = self.covariance.tolist()
        middle, half = (a + d) / 2.0, math.hypot((a - d) / 2.0, b)
        turn = 0.5 * math.atan2(2.0 * b, a - d)
        along, across = math.cos(turn), math.sin(turn)
        values = np.array([middle - half, middle + half])
        return values, np.array([[-across, along], [along, across]])

    @cached_property
    def root(self) -> Floats:
        """A square root of the covariance, shape (2, 2)."""
        values, vectors = self._axes
        return np.asarray(vectors * np.sqrt(np.clip(values, 0.0, None)))

    @cached_property
    def edge(self) -> Floats:
        """The edge of the 90 % region in u′ v′, shape (16, 2)."""
        turn = np.linspace(0.0, 2.0 * np.pi, 16, endpoint=False)
        circle = np.stack([np.cos(turn), np.sin(turn)])
        return np.asarray(self.mean + np.sqrt(CHI_2) * (self.root @ circle).T)

    def odds(self, target_uv: Floats, radius: float) -> float:
        """Return the odds that the light is within so many steps of a target."""
        landed = self.mean + _normal_plane() @ self.root.T
        return float(np.mean(delta_uv_prime(landed, target_uv) <= radius * STEP_UV))

    def steps(self, target_uv: Floats) -> tuple[float, float]:
        """Return the least and the greatest distance of the region from a target, in steps."""
        apart = delta_uv_prime(self.edge, target_uv) / STEP_UV
        away = target_uv - self.mean
        values, vectors = self._axes
        along = (vectors.T @ away)[values > 1e-15 * values.max()]
        inside = float(along @ (along / values[values > 1e-15 * values.max()])) < CHI_2
        known = bool(np.any(self.covariance))
        return (0.0 if inside and known else float(apart.min())), float(apart.max())

    def stops(self, lost: float) -> tuple[float, float]:
        """Return between what the stops lost lie in 9 of 10."""
        return lost - Z * self.stops_sigma, lost + Z * self.stops_sigma
