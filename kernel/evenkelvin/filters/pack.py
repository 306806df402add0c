"""The search for a pack: every stack of gels, tried on the light's own spectrum.

Log transmittances add, so transmittances multiply: a stack of n gels is a stack of n − 1 with one
more on top. All stacks of one depth are put on the spectrum and integrated by three matrix
products. Nothing is predicted from mired shifts.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from evenkelvin.colorimetry.chromaticity import xyz_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import observer_grid
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel, pulls

#: Most pieces on one light that are searched.
DEEPEST = 3
#: Differences below these are not differences to a person: a tenth of a step, 1/50 stop.
_SAME_UV, _SAME_STOPS = 0.1 * STEP_UV, 0.02


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


def all_stacks(light: Floats, kit: tuple[Gel, ...], depth: int) -> list[Stacks]:
    """Return every multiset of up to ``depth`` gels in which none cancels another.

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
    if not kit:
        return found
    curves = np.stack([gel.transmittance for gel in kit])
    ways = pulls(kit)
    # What a stack lets through, and the pulls in it: the last gel of each is its highest index,
    # so that adding only equal or higher ones makes every multiset once.
    through = np.ones((1, curves.shape[1]))
    warm_or_green = np.zeros((1, 2), dtype=bool)
    cool_or_magenta = np.zeros((1, 2), dtype=bool)
    last = np.zeros(1, dtype=np.intp)
    for _ in range(depth):
        cancels = (warm_or_green[:, np.newaxis] & (ways < 0)) | (
            cool_or_magenta[:, np.newaxis] & (ways > 0)
        )
        rising = np.arange(len(kit)) >= last[:, np.newaxis]
        below, top = np.nonzero(rising & ~cancels.any(axis=-1))
        lit = through * light
        xyz = np.stack([(lit * bar) @ curves.T for bar in bars.T], axis=-1)[below, top]
        gels = np.column_stack([found[-1].gels[below], top])
        found.append(Stacks(gels, xyz))
        if len(found) <= depth:
            through = through[below] * curves[top]
            warm_or_green = warm_or_green[below] | (ways[top] > 0)
            cool_or_magenta = cool_or_magenta[below] | (ways[top] < 0)
            last = top
    return found


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
            alive &= (delta < kept.delta_uv - _SAME_UV) | (stops < kept.stops_lost - _SAME_STOPS)
        order = np.nonzero(alive)[0]
        order = order[np.lexsort((stops[order], delta[order]))]
        brightest = np.inf
        for index in order:
            if stops[index] < brightest - _SAME_STOPS:
                brightest = float(stops[index])
                gels = tuple(int(gel) for gel in some.gels[index])
                front.append(Pack(gels, float(delta[index]), brightest))
    return front
