"""What a tunable lamp can reach: a polygon of colours, or a range of whites. In u′ v′."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.chromaticity import (
    uv_prime_to_uv,
    uv_to_uv_prime,
)
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.temperature import cct_to_uv, mired, uv_to_cct
from evenkelvin.data import Floats

#: Tint that a range of whites reaches either side of the black-body line when none is stated.
USUAL_DUV = 0.006
#: Whites without a CCT are brought to a range by its edge, sampled this finely, in mired.
_SAMPLED_MIRED = 2.0
#: Closer than a hundredth of a step is reached.
REACHED_UV = 0.01 * STEP_UV


def hull(points: Floats) -> Floats:
    """Return the corners of the convex hull of points in the plane, counter-clockwise, (m, 2).

    One corner when all coincide, two when they lie on a line (Andrew's monotone chain, 1979).
    """
    rows = np.unique(np.asarray(points, dtype=np.float64), axis=0)
    if len(rows) < 3:
        return rows

    def chain(ordered: Floats) -> list[Floats]:
        kept: list[Floats] = []
        for point in ordered:
            while len(kept) > 1:
                edge, away = kept[-1] - kept[-2], point - kept[-2]
                # Twice the area of the triangle, against a hair of its base.
                if edge[0] * away[1] - edge[1] * away[0] > 1e-12 * np.hypot(*away):
                    break
                kept.pop()
            kept.append(point)
        return kept

    return np.array(chain(rows)[:-1] + chain(rows[::-1])[:-1])


@dataclass(frozen=True, eq=False)
class Polygon:
    """All mixtures of some colours: the convex hull of them in u′ v′, corners (m, 2)."""

    corners: Floats

    def nearest(self, uv_prime: Floats) -> Floats:
        """Return the reachable points nearest to u′ v′: (n, 2) to (n, 2)."""
        points = np.asarray(uv_prime, dtype=np.float64)
        tails = self.corners
        edges = np.roll(tails, -1, axis=0) - tails
        away = points[:, np.newaxis] - tails
        along = np.sum(away * edges, axis=-1) / np.maximum(np.sum(edges**2, axis=-1), 1e-300)
        feet = tails + np.clip(along, 0.0, 1.0)[..., np.newaxis] * edges
        apart = delta_uv_prime(points[:, np.newaxis], feet)
        best = feet[np.arange(len(points)), np.argmin(apart, axis=1)]
        if len(tails) < 3:
            return np.asarray(best)
        inside = np.all(edges[:, 0] * away[..., 1] - edges[:, 1] * away[..., 0] >= 0.0, axis=1)
        return np.where(inside[:, np.newaxis], points, best)


@dataclass(frozen=True)
class Whites:
    """Whites between two CCT in K, within a |Duv|."""

    from_k: float
    to_k: float
    duv_limit: float

    def nearest(self, uv_prime: Floats) -> Floats:
        """Return the reachable points nearest to u′ v′, along and across the black-body line."""
        white = uv_to_cct(uv_prime_to_uv(np.asarray(uv_prime, dtype=np.float64)))
        kelvin = np.clip(white[:, 0], self.from_k, self.to_k)
        duv = np.clip(white[:, 1], -self.duv_limit, self.duv_limit)
        found = uv_to_uv_prime(cct_to_uv(np.nan_to_num(kelvin, nan=self.from_k), duv))
        lost = np.isnan(kelvin)
        if lost.any():
            low, high = float(mired(self.to_k)), float(mired(self.from_k))
            count = 2 + int((high - low) / _SAMPLED_MIRED)
            kelvins = 1e6 / np.linspace(low, high, count)
            edge = np.concatenate(
                [
                    cct_to_uv(kelvins, np.full(count, part * self.duv_limit))
                    for part in (-1.0, 0.0, 1.0)
                ]
            )
            sampled = uv_to_uv_prime(edge)
            apart = delta_uv_prime(uv_prime[lost][:, np.newaxis], sampled)
            found[lost] = sampled[np.argmin(apart, axis=1)]
        return found


Reach = Polygon | Whites


def reached(reach: Reach | None, wanted_uv: Floats) -> tuple[Floats, float]:
    """Return the reachable point nearest to u′ v′, and the steps that remain (0 when reached)."""
    if reach is None:
        return wanted_uv, 0.0
    nearest = reach.nearest(wanted_uv[np.newaxis])[0]
    remains = float(delta_uv_prime(nearest, wanted_uv))
    return (wanted_uv, 0.0) if remains < REACHED_UV else (nearest, remains / STEP_UV)
