"""One choice for each light out of a shared stock, at one white for all.

The search under :mod:`evenkelvin.lights.balancing`, free of colour: every light has options, each
at a white, with a cost, pieces, and what it takes from the stock; a light may also stay out. For
every number of lights out and of pieces the cheapest plan is sought.

Without regard to the stock the cheapest completion is a small table, by dynamic programming from
the last light to the first. It bounds the search with the stock: light by light, for all whites
at once, every partial plan is kept that may still beat the best known (breadth-first branch and
bound). When too many may, the goal is moved from the best known towards the bound; what was never
looked at then costs more than that goal, and this is the bound that is answered.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.data import Floats

if TYPE_CHECKING:
    from numpy.typing import NDArray

    Whole = NDArray[np.int64]
else:
    Whole = np.ndarray


#: Partial plans carried from one light to the next, in one try after the other.
_CARRIED = (500, 8_000, 120_000)
#: How far the goal lies from the bound (0) to the best known (1).
_GOALS = (1.0, 0.7, 0.5, 0.35, 0.25, 0.15, 0.1, 0.06, 0.03, 0.015, 0.007, 0.003, 0.0)


@dataclass(frozen=True, eq=False)
class Options:
    """What one light may do: n options.

    Attributes
    ----------
    white
        At which white, 0 to whites − 1, shape (n,).
    out
        1 where the light then stays out, else 0, shape (n,).
    pieces
        Pieces to hang, shape (n,).
    cost
        Whole numbers, shape (n,).
    takes
        Goods taken from the stock, by index, shape (n, m); −1 for none.
    each
        How much of each good it takes.
    """

    white: Whole
    out: Whole
    pieces: Whole
    cost: Whole
    takes: Whole
    each: int = 1


@dataclass(frozen=True)
class Plan:
    """One option for each light (row into its :class:`Options`), all at one white."""

    white: int
    out: int
    pieces: int
    cost: int
    choice: tuple[int, ...]


@dataclass(frozen=True, eq=False)
class Allotment:
    """The cheapest plans found, and what no plan can undercut.

    ``plans`` and ``at_least`` go by the most lights out and the most pieces; ``at_least`` is
    infinite where no plan exists. ``plans`` holds None where none was found.
    """

    plans: list[list[Plan | None]]
    cost: Floats
    at_least: Floats


@dataclass(frozen=True, eq=False)
class _Sorted:
    """Options of one light by white and kind, the cheapest first within each."""

    order: Whole
    start: Whole
    key: Floats
    cost: Whole
    words: NDArray[np.uint64]
    kinds: list[tuple[int, int]]
    cheapest: Floats


def _fields(
    options: Sequence[Options], stock: Whole
) -> tuple[NDArray[np.uint64], NDArray[np.uint64], NDArray[np.uint64]]:
    """Lay the scarce goods out in 64-bit words, a field each with a guard bit on top.

    A field starts so high that its guard bit is set as soon as more is taken than there is: the
    stock of every good is checked by one ``and`` a word.

    Returns
    -------
    tuple
        What one of each good adds, shape (goods + 1, words), the last row for 'none'; the words
        to start from; the guard bits.
    """
    most_at_once = np.zeros(len(stock), dtype=np.int64)
    in_all = np.zeros(len(stock), dtype=np.int64)
    for one in options:
        taken = np.zeros((len(one.takes), len(stock) + 1), dtype=np.int64)
        for column in one.takes.T:
            np.add.at(taken, (np.arange(len(taken)), column), one.each)
        most = taken[:, : len(stock)].max(axis=0, initial=0)
        most_at_once = np.maximum(most_at_once, most)
        in_all += most
    adds: list[list[tuple[int, int]]] = [[]]
    starts, guards, used = [0], [0], 0
    for good in np.nonzero(in_all > stock)[0]:
        width = 1 + int(max(stock[good], most_at_once[good], 1)).bit_length()
        if used + width > 64:
            adds.append([])
            starts.append(0)
            guards.append(0)
            used = 0
        adds[-1].append((int(good), 1 << used))
        starts[-1] += ((1 << (width - 1)) - 1 - int(stock[good])) << used
        guards[-1] += 1 << (used + width - 1)
        used += width
    one_of = np.zeros((len(stock) + 1, len(adds)), dtype=np.uint64)
    for word, fields in enumerate(adds):
        for good, unit in fields:
            one_of[good, word] = unit
    return one_of, np.array(starts, dtype=np.uint64), np.array(guards, dtype=np.uint64)


def _sorted(
    one: Options,
    whites: int,
    one_of: NDArray[np.uint64],
    start: NDArray[np.uint64],
    guards: NDArray[np.uint64],
) -> _Sorted:
    words = one_of[one.takes].sum(axis=1, dtype=np.uint64) * np.uint64(one.each)
    kinds = sorted({(int(o), int(p)) for o, p in zip(one.out, one.pieces, strict=True)})
    kind = np.zeros(len(one.out), dtype=np.int64)
    for index, (out, pieces) in enumerate(kinds):
        kind[(one.out == out) & (one.pieces == pieces)] = index
    group = one.white * len(kinds) + kind
    # Of options that take the same scarce goods the cheapest does for all.
    order = np.lexsort((one.cost, *words.T, group))
    same = (group[order][1:] == group[order][:-1]) & np.all(
        words[order][1:] == words[order][:-1], axis=1
    )
    order = order[np.concatenate([[True], ~same])]
    order = order[np.all(((words[order] + start) & guards) == 0, axis=1)]
    order = order[np.lexsort((one.cost[order], group[order]))]
    group, cost = group[order], one.cost[order]
    starts = np.searchsorted(group, np.arange(whites * len(kinds) + 1))
    cheapest = np.full(whites * len(kinds), np.inf)
    filled = starts[:-1] < starts[1:]
    cheapest[filled] = cost[starts[:-1][filled]]
    return _Sorted(
        order,
        starts.astype(np.int64),
        _key(group, cost),
        cost,
        words[order],
        kinds,
        cheapest.reshape(whites, len(kinds)),
    )


#: Larger than any cost, so that group and cost sort as one exact float.
_SPAN = 2.0**38


def _key(group: Whole, cost: Whole | Floats) -> Floats:
    return np.asarray(group * _SPAN + np.clip(cost, -_SPAN / 4, _SPAN / 4))


def _closed(table: Floats) -> Floats:
    """Turn 'exactly so many out and pieces' into 'at most so many' (last two axes)."""
    return np.asarray(np.minimum.accumulate(np.minimum.accumulate(table, axis=-1), axis=-2))


@dataclass(frozen=True, eq=False)
class _Rest:
    """The cheapest completion from one light on, shape (whites, out + 1, pieces + 1).

    ``corners`` are the (out, pieces) at which it falls: only there can it help to allow more.
    """

    cost: Floats
    corners: list[tuple[int, int]]


def _rest(cost: Floats) -> _Rest:
    falls = np.ones(cost.shape[1:], dtype=bool)
    falls[:, 1:] &= np.any(cost[:, :, 1:] < cost[:, :, :-1], axis=0)
    falls[1:] &= np.any(cost[:, 1:] < cost[:, :-1], axis=0)
    return _Rest(cost, [(int(out), int(pieces)) for out, pieces in np.argwhere(falls)])


def _completions(lights: list[_Sorted], whites: int) -> list[_Rest]:
    """Return the cheapest completion regardless of stock, before each light and after the last."""
    rest = [np.zeros((whites, 1, 1))]
    for light in reversed(lights):
        after = rest[0]
        more = max(pieces for _, pieces in light.kinds)
        table = np.full((whites, after.shape[1] + 1, after.shape[2] + more), np.inf)
        for column, (out, pieces) in zip(light.cheapest.T, light.kinds, strict=True):
            part = table[:, out : out + after.shape[1], pieces : pieces + after.shape[2]]
            np.minimum(part, after + column[:, np.newaxis, np.newaxis], out=part)
        rest.insert(0, _closed(table))
    return [_rest(cost) for cost in rest]


def _allowance(rest: _Rest, goal: Floats, out: int, pieces: int) -> Floats:
    """Return what a partial plan may have cost and still reach the goal somewhere.

    Shape (whites, out + 1, pieces + 1), by what the partial plan has already; −inf where nothing
    can.
    """
    best = np.full((len(rest.cost), out + 1, pieces + 1), -np.inf)
    for k, p in rest.corners:
        aim = goal[k : k + out + 1, p : p + pieces + 1]
        np.maximum(best, aim - rest.cost[:, k, p, np.newaxis, np.newaxis], out=best)
    return best


@dataclass(frozen=True, eq=False)
class _Partial:
    """Partial plans, n of them: where they are, and the row and option that each came from."""

    white: Whole
    out: Whole
    pieces: Whole
    cost: Whole
    words: NDArray[np.uint64]
    parent: Whole
    option: Whole

    def take(self, rows: NDArray[np.intp]) -> _Partial:
        """Return the plans of some rows."""
        return _Partial(**{name: column[rows] for name, column in vars(self).items()})


def _reach(light: _Sorted, plans: _Partial, allowed: Floats) -> list[tuple[Whole, Whole]]:
    """Return, a kind of option, the first option of each plan and how many are cheap enough."""
    found = []
    for index, (out, pieces) in enumerate(light.kinds):
        group = plans.white * len(light.kinds) + index
        spare = allowed[plans.white, plans.out + out, plans.pieces + pieces] - plans.cost
        first = light.start[group]
        last = np.searchsorted(light.key, _key(group, spare), side="right")
        last = np.where(np.isneginf(spare), first, np.clip(last, first, light.start[group + 1]))
        found.append((first, last - first))
    return found


def _children(
    light: _Sorted,
    plans: _Partial,
    reach: list[tuple[Whole, Whole]],
    guards: NDArray[np.uint64],
) -> _Partial:
    """Return every plan with one more light decided that the stock allows, without repeats."""
    parts = []
    for (out, pieces), (first, count) in zip(light.kinds, reach, strict=True):
        count = count.astype(np.intp)  # the browser's Python counts in 32 bits
        parent = np.repeat(np.arange(len(count)), count)
        ends = np.cumsum(count)
        option = np.arange(len(parent)) - np.repeat(ends - count - first, count)
        words = plans.words[parent] + light.words[option]
        fits = np.all((words & guards) == 0, axis=1)
        parent, option = parent[fits], option[fits]
        parts.append(
            _Partial(
                plans.white[parent],
                plans.out[parent] + out,
                plans.pieces[parent] + pieces,
                plans.cost[parent] + light.cost[option],
                words[fits],
                parent,
                option,
            )
        )
    every = _Partial(
        **{name: np.concatenate([vars(part)[name] for part in parts]) for name in vars(parts[0])}
    )
    place = (every.white * 1024 + every.out) * 1024 + every.pieces
    order = np.lexsort((every.cost, *every.words.T, place))
    again = (place[order][1:] == place[order][:-1]) & np.all(
        every.words[order][1:] == every.words[order][:-1], axis=1
    )
    return every.take(order[np.concatenate([np.ones(min(1, len(order)), dtype=bool), ~again])])


@dataclass(eq=False)
class _Known:
    """What is known so far: the best plans, and the bound proved (both by out and pieces)."""

    plans: list[list[Plan | None]]
    cost: Floats
    at_least: Floats

    def keep(self, plan: Plan) -> None:
        """Keep a plan wherever it is the cheapest."""
        cheaper = self.cost[plan.out :, plan.pieces :] > plan.cost
        self.cost[plan.out :, plan.pieces :][cheaper] = plan.cost
        for k, p in np.argwhere(cheaper):
            self.plans[plan.out + k][plan.pieces + p] = plan

    def goal(self, part: float, ceiling: float) -> Floats:
        """Return the cost to reach: from the bound (0) to just below the best known (1)."""
        below = np.where(np.isinf(self.cost), ceiling, self.cost) - 1.0
        open_cells = np.isfinite(self.at_least) & (below >= self.at_least)
        floor = np.where(open_cells, self.at_least, 0.0)
        return np.where(open_cells, np.floor(floor + part * (below - floor)), -np.inf)


def _walk(
    lights: list[_Sorted],
    rest: list[_Rest],
    known: _Known,
    start: NDArray[np.uint64],
    guards: NDArray[np.uint64],
    carried: int,
    goals: Sequence[float],
    ceiling: float,
) -> None:
    """Look through all plans that may reach the first goal; fall back to the next when too many.

    Improves ``known``.
    """
    whites = len(rest[0].cost)
    rung, cut = 0, False
    zeros = np.zeros(whites, dtype=np.int64)
    plans = _Partial(
        np.arange(whites), zeros, zeros, zeros, np.tile(start, (whites, 1)), zeros, zeros
    )
    trail: list[_Partial] = []
    goal = known.goal(goals[rung], ceiling)
    for index, light in enumerate(lights):
        out = int(plans.out.max(initial=0)) + 1
        pieces = int(plans.pieces.max(initial=0)) + max(p for _, p in light.kinds)
        while True:
            allowed = _allowance(rest[index + 1], goal, out, pieces)
            reach = _reach(light, plans, allowed)
            total = sum(int(count.sum()) for _, count in reach)
            if total <= carried * 4 or rung == len(goals) - 1:
                break
            rung += 1
            goal = known.goal(goals[rung], ceiling)
        if total > carried * 40:
            # Even level with the bound there are too many: the cheapest few of each plan must do.
            few = max(1, carried * 4 // max(1, len(plans.white)))
            reach = [(first, np.minimum(count, few)) for first, count in reach]
            cut = True
        plans = _children(light, plans, reach, guards)
        if len(plans.white) > carried:
            spare = allowed[plans.white, plans.out, plans.pieces] - plans.cost
            while len(plans.white) > carried and rung < len(goals) - 1:
                rung += 1
                goal = known.goal(goals[rung], ceiling)
                allowed = _allowance(rest[index + 1], goal, out, pieces)
                spare = allowed[plans.white, plans.out, plans.pieces] - plans.cost
                plans = plans.take(np.nonzero(spare >= 0)[0])
                spare = spare[spare >= 0]
            if len(plans.white) > carried:
                plans = plans.take(np.argsort(-spare, kind="stable")[:carried])
                cut = True
        trail.append(plans)
    _harvest(lights, trail, known)
    if not cut:
        # Whatever was not looked at costs more than the goal.
        reached = known.cost if goals[rung] == 1.0 else np.minimum(known.cost, goal + 1.0)
        proved = np.isfinite(goal)
        known.at_least[proved] = np.maximum(known.at_least, reached)[proved]


def _harvest(lights: list[_Sorted], trail: list[_Partial], known: _Known) -> None:
    last = trail[-1]
    best: dict[tuple[int, int], int] = {}
    for row in np.argsort(last.cost, kind="stable"):
        best.setdefault((int(last.out[row]), int(last.pieces[row])), int(row))
    for (out, pieces), row in best.items():
        if last.cost[row] >= known.cost[out, pieces]:
            continue
        choice = []
        at = row
        for light, step in zip(reversed(lights), reversed(trail), strict=True):
            choice.append(int(light.order[step.option[at]]))
            at = int(step.parent[at])
        known.keep(
            Plan(int(last.white[row]), out, pieces, int(last.cost[row]), tuple(reversed(choice)))
        )


def allot(
    options: Sequence[Options], whites: int, stock: Whole, carried: Sequence[int] = _CARRIED
) -> Allotment:
    """Return the cheapest plans for every number of lights out and pieces.

    Parameters
    ----------
    options
        A light each, at least one option a light; fewer than 1000 lights and pieces.
    whites
        How many whites there are.
    stock
        How much there is of each good, shape (goods,).
    carried
        How many partial plans to carry, in one try after the other; the tries end as soon as
        nothing is left open.

    Returns
    -------
    Allotment
        Exact where ``cost`` equals ``at_least``.
    """
    one_of, start, guards = _fields(options, stock)
    ready = [_sorted(one, whites, one_of, start, guards) for one in options]
    # The light with the fewest options first: what leaves no choice is settled early.
    turn = sorted(range(len(ready)), key=lambda index: len(ready[index].order))
    lights = [ready[index] for index in turn]
    rest = _completions(lights, whites)
    at_least = rest[0].cost.min(axis=0)
    shape = at_least.shape
    known = _Known([[None] * shape[1] for _ in range(shape[0])], np.full(shape, np.inf), at_least)
    ceiling = float(sum(light.cost.max(initial=0) for light in lights)) + 1.0
    _walk(lights, rest, known, start, guards, carried[0], (0.0,), ceiling)
    for most in carried:
        if np.array_equal(known.cost, known.at_least):
            break
        _walk(lights, rest, known, start, guards, most, _GOALS, ceiling)
    plans = [
        [None if plan is None else _in_turn(plan, turn) for plan in row] for row in known.plans
    ]
    return Allotment(plans, known.cost, known.at_least)


def _in_turn(plan: Plan, turn: list[int]) -> Plan:
    choice = [0] * len(turn)
    for index, row in zip(turn, plan.choice, strict=True):
        choice[index] = row
    return Plan(plan.white, plan.out, plan.pieces, plan.cost, tuple(choice))
