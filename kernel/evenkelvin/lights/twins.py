"""One pack for lights that are alike: battens of one row shall not hang two recipes.

Lights are twins where they are meant to be the same and read within a step of each other. A plan
picks for each light by itself, so that a hair between two readings can part their packs; here the
twins of a plan are brought back to one, as long as each still holds and nothing more is to be hung.
"""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np

from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.data import Floats
from evenkelvin.lights.allotment import Options, Whole

#: Twins read within so many steps of the first of them.
TWIN_STEPS = 1.0


def twins(read_uv: Floats, aims_uv: Sequence[Floats | None]) -> list[tuple[int, ...]]:
    """Return the groups of two and more twins, by index.

    Parameters
    ----------
    read_uv
        What the lights read, u′ v′, shape (n, 2).
    aims_uv
        What each is meant to be, u′ v′, shape (2,); None for one that is not judged.
    """
    groups: list[tuple[int, ...]] = []
    left = [index for index, aim in enumerate(aims_uv) if aim is not None]
    while left:
        first = left[0]
        group = tuple(
            index
            for index in left
            if np.allclose(aims_uv[index], aims_uv[first], rtol=0.0, atol=1e-9)  # type: ignore[arg-type]
            and np.hypot(*(read_uv[index] - read_uv[first])) <= TWIN_STEPS * STEP_UV
        )
        left = [index for index in left if index not in group]
        if len(group) > 1:
            groups.append(group)
    return groups


def one_pack(
    choice: tuple[int, ...],
    white: int,
    groups: Sequence[tuple[int, ...]],
    options: Sequence[Options],
    what: Sequence[Whole],
    stock: Whole,
    unit: int,
    allowed: int,
) -> tuple[int, ...]:
    """Return a plan's choice with one stack for all twins of a group wherever that is free.

    Free is a stack with which each of them holds, that hangs no more pieces on the group, takes no
    more gel than there is, and loses at most ``allowed`` units of light more.

    Parameters
    ----------
    choice
        The row of each light in its options.
    white
        Which white the plan is at.
    groups
        See :func:`twins`.
    options, what
        Of each light, and what each option does: the row of a stack, or negative.
    stock
        How much there is of each good.
    unit
        Cost of one unit of light lost.
    allowed
        Units of light.
    """
    taken = np.array(choice)
    for group in groups:
        mine = {int(what[light][taken[light]]) for light in group}
        if len(mine) == 1 or any(options[light].out[taken[light]] for light in group):
            continue
        rows = [_holding(options[light], what[light], white) for light in group]
        shared = set.intersection(*(set(each) for each in rows))
        pieces = sum(int(options[i].pieces[taken[i]]) for i in group)
        most = sum(int(options[i].cost[taken[i]]) // unit for i in group) + allowed
        ranked = sorted(
            (
                sum(int(options[i].cost[each[stack]]) for i, each in zip(group, rows, strict=True)),
                stack,
            )
            for stack in shared
        )
        for cost, stack in ranked:
            if cost // unit > most:
                break
            new = taken.copy()
            new[list(group)] = [each[stack] for each in rows]
            hung = sum(int(options[i].pieces[new[i]]) for i in group)
            if hung <= pieces and _fits(new, options, stock):
                taken = new
                break
    return tuple(int(row) for row in taken)


def _holding(options: Options, what: Whole, white: int) -> dict[int, int]:
    """The stacks with which a light holds at a white, and the light left bare, by what they are."""
    rows = np.nonzero((options.white == white) & (options.out == 0) & (what >= -1))[0]
    return {int(what[row]): int(row) for row in rows}


def _fits(choice: Whole, options: Sequence[Options], stock: Whole) -> bool:
    used = np.zeros(len(stock), dtype=np.int64)
    for some, row in zip(options, choice, strict=True):
        goods = some.takes[row]
        np.add.at(used, goods[goods >= 0], some.each)
    return bool(np.all(used <= stock))
