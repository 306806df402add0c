"""How far to drive each primary of a lamp for a wanted white.

Primaries add, each in proportion to its level from 0 to 1. In u′ v′ the mixture is the mean of
the primaries weighted by X + 15 Y + 3 Z, so a wanted chromaticity is two linear equations. The
most light under them is a linear programme; the best spectral similarity a non-negative least
squares. Two primaries are the bi-colour lamp.
"""

from __future__ import annotations

from collections.abc import Sequence
from itertools import combinations, product

import numpy as np

from evenkelvin.colorimetry.chromaticity import UV_PRIME_BELOW, xyz_to_uv_prime
from evenkelvin.colorimetry.difference import delta_uv_prime
from evenkelvin.colorimetry.spectrum import Spectrum, tristimulus
from evenkelvin.data import Floats
from evenkelvin.lights.allotment import Whole
from evenkelvin.lights.gamut import Polygon, hull
from evenkelvin.lights.nonnegative import nonnegative_least_squares
from evenkelvin.rendering.ssi import band_sums, difference_matrix

#: Points closer than this in u′ v′ are one; a primary this near an edge lies on it.
_SAME_UV = 1e-9
#: How much heavier the wanted white weighs than similarity while the primaries are chosen.
_HELD = 1e5


def most(gain: Floats, balance: Floats) -> Floats:
    """Return d, 0 ≤ d ≤ 1, with balance·d = 0 and the largest gain·d.

    Exact, by the corners of the dual: one price a row of ``balance``, at which as many parts as
    there are rows are worth just nothing. Those worth more are driven fully, those worth less not
    at all, and the few in between make up the balance.

    Parameters
    ----------
    gain
        Shape (n,).
    balance
        Of full row rank, shape (r, n); r from 0 to 2.
    """
    rows, count = balance.shape
    if rows == 0:
        return np.ones(count)
    scale = np.abs(balance).max(axis=1)[:, np.newaxis]
    balance = balance / scale
    lowest, best = np.inf, np.zeros(count)
    for corner in combinations(range(count), rows):
        square = balance[:, corner].T
        if abs(np.linalg.det(square)) < 1e-12:
            continue
        worth = gain - np.linalg.solve(square, gain[list(corner)]) @ balance
        value = float(np.maximum(worth, 0.0).sum())
        if value < lowest:
            lowest, best = value, worth
    just = np.abs(best) <= 1e-9 * np.abs(gain).max()
    levels = np.where((best > 0.0) & ~just, 1.0, 0.0)
    return _made_up(levels, np.nonzero(just)[0], gain, balance)


def _made_up(levels: Floats, free: Whole, gain: Floats, balance: Floats) -> Floats:
    """Return the levels with those of ``free`` set so that the balance is zero."""
    rows = len(balance)
    closest, best = np.inf, levels
    for size in range(min(rows, len(free)) + 1):
        for chosen in combinations(free, size):
            rest = [index for index in free if index not in chosen]
            for ends in product((0.0, 1.0), repeat=len(rest)):
                trial = levels.copy()
                trial[rest] = ends
                if chosen:
                    part = balance[:, chosen]
                    trial[list(chosen)] = np.linalg.lstsq(part, -balance @ trial, rcond=None)[0]
                if trial.min() < -1e-9 or trial.max() > 1.0 + 1e-9:
                    continue
                trial = np.clip(trial, 0.0, 1.0)
                miss = float(np.abs(balance @ trial).max())
                if miss < closest - 1e-12 or (
                    miss <= closest + 1e-12 and gain @ trial > gain @ best
                ):
                    closest, best = miss, trial
    return best


def brightest(primaries: Floats, wanted_uv: Floats) -> Floats:
    """Return the levels that give the most light at the reachable point nearest to u′ v′.

    Parameters
    ----------
    primaries
        X, Y, Z of each at full level, shape (n, 3), Y > 0.
    wanted_uv
        Shape (2,).
    """
    uv = xyz_to_uv_prime(primaries)
    weight = primaries @ UV_PRIME_BELOW
    polygon = Polygon(hull(uv))
    aim = polygon.nearest(wanted_uv[np.newaxis])[0]
    balance = ((uv - aim) * weight[:, np.newaxis]).T
    usable = np.ones(len(uv), dtype=bool)
    edge = _edge(polygon.corners, aim)
    if edge is not None:
        # On the rim only the primaries along that edge can make it; the rest stay dark.
        along, across = edge, np.array([-edge[1], edge[0]])
        usable = np.abs((uv - aim) @ across) <= _SAME_UV
        balance = (along @ balance)[np.newaxis]
        if np.all(np.abs((uv[usable] - aim) @ along) <= _SAME_UV):
            balance = balance[:0]
        elif not (
            np.any((uv[usable] - aim) @ along > _SAME_UV)
            and np.any((uv[usable] - aim) @ along < -_SAME_UV)
        ):
            # A corner: only what lies on it.
            usable &= np.abs((uv - aim) @ along) <= _SAME_UV
            balance = balance[:0]
    levels = np.zeros(len(uv))
    levels[usable] = most(primaries[usable, 1], balance[:, usable])
    return levels


def _edge(corners: Floats, point: Floats) -> Floats | None:
    """Return the direction of the edge of a convex polygon that a point lies on; None inside."""
    if len(corners) == 1:
        return np.array([1.0, 0.0])
    tails, heads = corners, np.roll(corners, -1, axis=0)
    for tail, head in zip(tails, heads, strict=True):
        length = float(delta_uv_prime(head, tail))
        along = (head - tail) / length
        away = point - tail
        if (
            abs(along[0] * away[1] - along[1] * away[0]) <= _SAME_UV
            and -_SAME_UV <= along @ away <= length + _SAME_UV
        ):
            return np.asarray(along)
    return None


def most_similar(
    primaries: Floats, spectra: Sequence[Spectrum], wanted_uv: Floats, reference: Spectrum
) -> Floats:
    """Return the levels of the best spectral similarity at the reachable point nearest to u′ v′.

    Similarity as SMPTE ST 2122 (SSI) has it; the brightest primary is driven fully.

    Parameters
    ----------
    primaries
        X, Y, Z of each at full level, shape (n, 3), Y > 0.
    spectra
        Of each, on any scale.
    wanted_uv
        Shape (2,).
    reference
        The light to be like.
    """
    uv = xyz_to_uv_prime(primaries)
    aim = Polygon(hull(uv)).nearest(wanted_uv[np.newaxis])[0]
    bands = np.stack([band_sums(one) for one in spectra], axis=1)
    # Each on the scale of its light at full level.
    bands = bands * (primaries[:, 1] / np.array([tristimulus(one)[1] for one in spectra]))
    wanted = band_sums(reference)
    wanted = wanted / wanted.sum()
    total = bands.sum(axis=0)
    unlike = difference_matrix(wanted) @ (bands - wanted[:, np.newaxis] * total)
    # All as parts of one unit of light, so that the columns are alike in size.
    size = np.maximum(total, 1e-12 * total.max())
    white = ((uv - aim) * (primaries @ UV_PRIME_BELOW)[:, np.newaxis]).T / (
        primaries @ UV_PRIME_BELOW
    ).mean()
    held = np.vstack([white * total.mean() / size, total / size])
    aims = np.array([0.0, 0.0, 1.0])
    rows = np.vstack([unlike / size, _HELD * held])
    parts, _ = nonnegative_least_squares(
        rows, np.concatenate([np.zeros(len(unlike)), _HELD * aims])
    )
    parts = _exactly(unlike / size, held, aims, parts)
    levels = parts / size
    return np.asarray(levels / levels.max())


def _exactly(unlike: Floats, held: Floats, aims: Floats, parts: Floats) -> Floats:
    """Return the parts that are used, with held·parts = aims to the last digit.

    Least squares of ``unlike`` in the null space of ``held``, on the same primaries.
    """
    used = parts > 0.0
    start = np.linalg.lstsq(held[:, used], aims, rcond=1e-9)[0]
    _, sizes, turns = np.linalg.svd(held[:, used])
    free = turns[int(np.sum(sizes > 1e-9 * sizes[0])) :].T
    step = np.linalg.lstsq(unlike[:, used] @ free, -unlike[:, used] @ start, rcond=None)[0]
    exact = np.zeros(len(parts))
    exact[used] = start + free @ step
    return exact if np.all(exact >= 0.0) else parts
