"""Which lamps to dim so that a surface is as even as they can make it, and which to move.

The light at every place is the sum of the lamps, each times its dimmer, and of what is there
without them. The least ratio of the brightest place to the darkest is a linear programme, once
the set is scaled so that the darkest is 1 (Charnes and Cooper 1962, for ratios):

    least t  with  1 ≤ L·y + a·z ≤ t,  y ≤ z,  y, z ≥ 0;  the dimmers are y / z.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from evenkelvin.data import Floats
from evenkelvin.lights.nonnegative import nonnegative_least_squares
from evenkelvin.sweep.simplex import maximise
from evenkelvin.sweep.surface import Sheet

#: What a place that is brighter or darker than it should be weighs against a dimmer, both squared.
#: With it readings that are off by up to 2 % move no dimmer by more than 5 % on rigs of battens,
#: and the spread stays within some tenths of a stop of the least; found by trials on random rigs.
_WEIGHT = 20.0
#: A meter's scatter: what is there without the lamps counts only beyond this part of the reading.
_SCATTER = 0.05
#: A lamp whose light is nowhere more than this part of what is read adds nothing.
_NOTHING = 0.01
#: How little the darkest place's level weighs against a dimmer in the search.
_FREE = 0.01


@dataclass(frozen=True, eq=False)
class Rig:
    """Lamps on a surface.

    Parameters
    ----------
    places
        Across and up, shape (n, 2).
    together
        Levels with all lamps as they are, shape (n,).
    each
        What each lamp adds, shape (n, k), in the same unit.
    """

    places: Floats
    together: Floats
    each: Floats

    @property
    def ambient(self) -> Floats:
        """What is there without the lamps, shape (n,), beyond the readings' scatter."""
        rest: Floats = self.together - self.each.sum(axis=1) - _SCATTER * self.together
        return np.maximum(rest, 0.0)

    @property
    def missing_part(self) -> float:
        """The most by which lamps alone read more than all together, as a part of it."""
        return float(np.max(self.each.sum(axis=1) / self.together)) - 1.0

    @property
    def idle(self) -> list[int]:
        """The lamps that add nothing anywhere."""
        part = (self.each / self.together[:, None]).max(axis=0)
        return [int(k) for k in np.flatnonzero(part <= _NOTHING)]


@dataclass(frozen=True, eq=False)
class Trim:
    """Dimmers, each a part of the lamp's light as read, shape (k,), and the levels with them (n,).

    ``least_spread_stops`` is the least spread that any dimmers leave; ``moves`` how the spread
    falls, in stops, as each lamp's light moves across and up by the whole surface, shape (k, 2):
    its direction is the way to move.
    """

    dimmers: Floats
    levels: Floats
    least_spread_stops: float
    moves: Floats


def trim(rig: Rig, *, steady: bool) -> Trim:
    """Return dimmers that make a surface even.

    Parameters
    ----------
    rig
        The lamps.
    steady
        Whether to stop short of the least spread, where the last tenths of a stop would hang on
        every reading's scatter and cost light.

    Raises
    ------
    ValueError
        When a place gets no light of any lamp and none besides: no dimmer makes it even.
    """
    ambient = rig.ambient
    if np.any(rig.each.sum(axis=1) + ambient <= 0):
        raise ValueError("a place has no light")
    # Of about 1 each, so that one set of tolerances fits every surface.
    scale = float(np.mean(rig.each.sum(axis=1) + ambient))
    each, ambient = rig.each / scale, ambient / scale
    ratio, pulls, least = _least_ratio(each, ambient)
    dimmers = _steady(each, ambient, ratio) if steady else least
    levels = (each @ dimmers + ambient) * scale
    return Trim(dimmers, levels, float(np.log2(ratio)), _moves(rig, each, pulls, ratio))


def _least_ratio(each: Floats, ambient: Floats) -> tuple[float, Floats, Floats]:
    """Return t, what each lamp's light at each place pulls at it (n, k), and the dimmers.

    It solves the dual programme, which can be begun at nothing: most Σu with, for each lamp,
    (u − v)·L ≤ w, for what is there besides (u − v)·a + Σw ≤ 0, and Σv ≤ 1.
    """
    places, lamps = each.shape
    rows = np.zeros((lamps + 2, 2 * places + lamps))
    rows[:lamps, :places], rows[:lamps, places : 2 * places] = each.T, -each.T
    rows[:lamps, 2 * places :] = -np.eye(lamps)
    rows[lamps, :places], rows[lamps, places : 2 * places] = ambient, -ambient
    rows[lamps, 2 * places :] = 1.0
    rows[lamps + 1, places : 2 * places] = 1.0
    gain = np.zeros(rows.shape[1])
    gain[:places] = 1.0
    limits = np.zeros(lamps + 2)
    limits[-1] = 1.0
    ratio, pull, worth = maximise(gain, rows, limits)
    lit = worth[:lamps]
    pulls = (pull[:places] - pull[places : 2 * places])[:, None] * lit[None, :]
    # Without light besides, the scale is free: the brightest lamp stays as it is.
    whole = worth[lamps] if np.any(ambient > 0) else lit.max()
    return max(ratio, 1.0), pulls, np.clip(lit / max(whole, lit.max()), 0.0, 1.0)


def _steady(each: Floats, ambient: Floats, ratio: float) -> Floats:
    """Return the dimmers with the least of two squares: how far they are from 1, and how far the
    places are outside of a band from some level s to ``ratio`` times s.

    Least distance programming by non-negative least squares (Lawson and Hanson 1974, chapter 23),
    in what each lamp is dimmed by, s, and what each place is outside by:
    s ≤ L·d + a + outside, L·d + a − outside ≤ ratio·s, 0 ≤ d ≤ 1.
    """
    places, lamps = each.shape
    full = each.sum(axis=1) + ambient
    band, bounds = 2 * places, 2 * lamps
    rows = np.zeros((band + bounds, lamps + 1 + band))
    rows[:places, :lamps], rows[:places, lamps] = -each, -1.0 / _FREE
    rows[places:band, :lamps], rows[places:band, lamps] = each, ratio / _FREE
    rows[band : band + lamps, :lamps] = np.eye(lamps)
    rows[band + lamps :, :lamps] = -np.eye(lamps)
    rows[:band, lamps + 1 :] = np.eye(band) / np.sqrt(_WEIGHT)
    at_least = np.concatenate([-full, full, np.zeros(lamps), -np.ones(lamps)])
    system = np.vstack([rows.T, at_least])
    aim = np.zeros(len(system))
    aim[-1] = 1.0
    weights, _ = nonnegative_least_squares(system, aim)
    rest = aim - system @ weights
    # What is outside may be as large as need be, so there always are such dimmers.
    dimmers: Floats = np.clip(1.0 + rest[:lamps] / rest[-1], 0.0, 1.0)
    return dimmers


def _moves(rig: Rig, each: Floats, pulls: Floats, ratio: float) -> Floats:
    """Return how the least spread falls as each lamp's light moves, in stops, shape (k, 2).

    By the prices of the programme: moving a lamp's light by δ changes it at a place by its slope
    there times −δ.
    """
    try:
        slopes = Sheet(rig.places, each).slope(rig.places)
    except ValueError:
        return np.zeros((each.shape[1], 2))
    moves: Floats = -np.einsum("nk,ndk->kd", pulls, slopes) / (ratio * np.log(2.0))
    return moves
