"""The search for a pack: every stack of gels, tried on the light's own spectrum.

Log transmittances add, so transmittances multiply: a stack of n gels is a stack of n − 1 with one
more on top. All stacks of one depth are put on the spectrum and integrated by matrix products.
Nothing is predicted from mired shifts.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.chromaticity import xyz_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel, cancels

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: Most pieces on one light that are searched.
DEEPEST = 3
#: Differences below these are not differences to a person: a tenth of a step, 1/50 stop.
SAME_UV, SAME_STOPS = 0.1 * STEP_UV, 0.02
#: Stacks whose transmittances are kept for the next light: 13 MB. The nominal kit has 7212.
_MOST_KEPT = 20_000


@dataclass(frozen=True)
class Pack:
    """A stack of gels on one light: which (indices into the kit), and what it does."""

    gels: tuple[int, ...]
    delta_uv: float
    stops_lost: float

    @property
    def pieces(self) -> int:
        """Number of gels."""
        return len(self.gels)


@dataclass(frozen=True, eq=False)
class Stacks:
    """All sensible stacks of one depth: gels (n, depth), and X, Y, Z through them (n, 3)."""

    gels: NDArray[np.intp]
    xyz: Floats


@dataclass(frozen=True, eq=False)
class Level:
    """The stacks of one depth: gels (n, depth), the stack each is built on, the gel on top."""

    gels: NDArray[np.intp]
    below: NDArray[np.intp]
    top: NDArray[np.intp]


@lru_cache(maxsize=8)
def levels(kit: tuple[Gel, ...], depth: int) -> tuple[Level, ...]:
    """Return every multiset of up to ``depth`` gels in which none cancels another.

    One level for each depth from 1; none without gels.
    """
    found: list[Level] = []
    if not kit:
        return ()
    opposed = cancels(kit)
    # What may still go on top of a stack, and its last gel, which is its highest index: adding
    # only equal or higher ones makes every multiset once.
    free = np.ones((1, len(kit)), dtype=bool)
    last = np.zeros(1, dtype=np.intp)
    gels = np.empty((1, 0), dtype=np.intp)
    for _ in range(depth):
        rising = np.arange(len(kit)) >= last[:, np.newaxis]
        below, top = np.nonzero(rising & free)
        gels = np.column_stack([gels[below], top])
        found.append(Level(gels, below, top))
        free = free[below] & ~opposed[top]
        last = top
    return tuple(found)


@lru_cache(maxsize=2)
def _kept_through(kit: tuple[Gel, ...], depth: int) -> tuple[Floats, ...] | None:
    """Return the transmittance of every stack, (n, 81) for each depth from 1; None if too many.

    Light after light is asked about with one kit.
    """
    of_all = levels(kit, depth)
    if sum(len(level.gels) for level in of_all) > _MOST_KEPT:
        return None
    curves = np.array([gel.transmittance for gel in kit])
    found = [np.ones((1, len(GRID)))]
    for level in of_all:
        found.append(found[-1][level.below] * curves[level.top])
    return tuple(found[1:])


def all_stacks(light: Floats, kit: tuple[Gel, ...], depth: int) -> list[Stacks]:
    """Return every sensible stack of up to ``depth`` gels on a light.

    Parameters
    ----------
    light
        On the search grid, shape (81,).
    kit
        The gels to choose from; each may hang more than once.
    depth
        Most pieces, 0 or more.

    Returns
    -------
    list of Stacks
        One for each depth from 0 (the bare light); X, Y, Z on the scale of ``light`` summed
        over the observer.
    """
    bars = observer_grid()
    found = [Stacks(np.empty((1, 0), dtype=np.intp), (light @ bars)[np.newaxis])]
    kept = _kept_through(kit, depth)
    if kept is not None:
        lit = light[:, np.newaxis] * bars
        whole = zip(levels(kit, depth), kept, strict=True)
        return found + [Stacks(level.gels, through @ lit) for level, through in whole]
    through = np.ones((1, len(light)))
    for level in levels(kit, depth):
        curves = np.stack([gel.transmittance for gel in kit])
        lit = through * light
        xyz = np.stack([(lit * bar) @ curves.T for bar in bars.T], axis=-1)
        found.append(Stacks(level.gels, xyz[level.below, level.top]))
        if len(found) <= depth:
            through = through[level.below] * curves[level.top]
    return found


def stacks_on_all(lights: Floats, kit: tuple[Gel, ...], depth: int) -> Floats:
    """Return X, Y, Z of many lights through the same stacks: (m, 81) to (m, n, 3).

    The stacks are those of :func:`all_stacks`, in its order, from the bare light on.
    """
    bars = observer_grid()
    lit = (lights[:, np.newaxis] * bars.T).reshape(-1, lights.shape[1]).T
    through = np.ones((1, lights.shape[1]))
    found = [through @ lit]
    for level in levels(kit, depth):
        curves = np.stack([gel.transmittance for gel in kit])
        through = through[level.below] * curves[level.top]
        found.append(through @ lit)
    return np.moveaxis(np.concatenate(found).reshape(-1, len(lights), 3), 0, 1)


def search(
    light: Floats,
    target_uv: Floats,
    kit: tuple[Gel, ...],
    depth: int = DEEPEST,
    now: Floats | None = None,
) -> list[Pack]:
    """Return the packs worth hanging: the Pareto front of closeness, stops lost and pieces.

    Parameters
    ----------
    light
        The bare light on the search grid, shape (81,).
    target_uv
        Where it should land in u′ v′, shape (2,).
    kit
        The gels to choose from; each may hang more than once.
    depth
        Most pieces.
    now
        X, Y, Z of the light as it is, shape (3,), on the same scale; stops are counted from it.
        By default the bare light.

    Returns
    -------
    list of Pack
        The front, the bare light (no gel) included, by rising pieces and then distance.
        Differences that nobody sees, a tenth of a step or a fiftieth of a stop, do not count.
    """
    stacks = all_stacks(light, kit, depth)
    luminance = stacks[0].xyz[0, 1] if now is None else now[1]
    front: list[Pack] = []
    for some in stacks:
        delta = delta_uv_prime(xyz_to_uv_prime(some.xyz), target_uv)
        stops = np.log2(luminance / some.xyz[:, 1])
        # Not more pieces than what is kept so far can beat it: drop what is no closer and no
        # brighter, then walk the rest from the closest outward.
        alive = np.ones(len(delta), dtype=bool)
        for kept in front:
            alive &= (delta < kept.delta_uv - SAME_UV) | (stops < kept.stops_lost - SAME_STOPS)
        order = np.nonzero(alive)[0]
        order = order[np.lexsort((stops[order], delta[order]))]
        brightest = np.inf
        for index in order:
            if stops[index] < brightest - SAME_STOPS:
                brightest = float(stops[index])
                gels = tuple(int(gel) for gel in some.gels[index])
                front.append(Pack(gels, float(delta[index]), brightest))
    return front


def touched(hung: tuple[int, ...], kit: tuple[Gel, ...], most: int) -> list[tuple[int, ...]]:
    """Return what a stack becomes by one hand at the lamp: a gel less, a gel more, one swapped.

    Parameters
    ----------
    hung
        What hangs, as indices into the kit.
    kit
        The gels to choose from.
    most
        Most pieces; nothing is added to a stack that has as many.

    Returns
    -------
    list of tuple of int
        Stacks, each in rising order and once; none in which a new gel cancels one that stays.
    """
    opposed = cancels(kit)
    less = [hung[:at] + hung[at + 1 :] for at in range(len(hung))]
    onto = [*less, hung] if len(hung) < most else less
    more = [
        (*stack, gel) for stack in onto for gel in range(len(kit)) if not opposed[gel, stack].any()
    ]
    return sorted({tuple(sorted(stack)) for stack in [*less, *more]} - {tuple(sorted(hung))})
