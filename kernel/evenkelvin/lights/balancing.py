"""The whole set at once: the camera's white, and what to hang or dial on each light.

All that a light may do is reckoned first, for every white: left as it is, dialled, or with each
sensible stack of gels, on its own spectrum. :mod:`evenkelvin.lights.allotment` then chooses one
of them for each light, at one white for all, out of the gel in stock.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_to_uv_prime, xy_to_uv_prime, xyz_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import observer_grid
from evenkelvin.colorimetry.temperature import cct_to_uv
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel
from evenkelvin.filters.pack import levels, stacks_on_all
from evenkelvin.lights.allotment import Options, Plan, Whole, allot
from evenkelvin.lights.gamut import Reach
from evenkelvin.lights.meant import AS_WHITE, Meant, Whites, aims
from evenkelvin.lights.reading import Reading, pack_transmittance
from evenkelvin.lights.twins import one_pack, twins

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: Light lost is reckoned in fiftieths of a stop for each light: a smaller difference nobody sees.
STOP_PARTS = 50
#: A plan with more pieces, or more lights out, is worth showing when it saves this many stops.
WORTH_STOPS = 0.1
#: Most lights and whites that are balanced at once.
MOST_LIGHTS, MOST_WHITES = 24, 600

#: Cost is light lost first; among equals, the sum of squares of distance over tolerance, in
#: hundredths. One unit of light lost is above any such sum.
_UNIT = 1 << 24
_CLOSENESS, _FARTHEST = 100.0, 1 << 16


@dataclass(frozen=True, eq=False)
class SetLight:
    """A light of the set and what may be done to it.

    ``reach`` is what it can be dialled to, None when it cannot; ``cuts`` is how many cuts of gel
    one layer takes; ``meant`` is what it shall be beside the white.
    """

    reading: Reading
    may_gel: bool = True
    reach: Reach | None = None
    cuts: int = 1
    name: str = ""
    meant: Meant = AS_WHITE

    @property
    def stays(self) -> bool:
        """Whether nothing is done to it at any white."""
        return not self.meant.judged or (not self.may_gel and self.reach is None)


@dataclass(frozen=True, eq=False)
class WhiteGrid:
    """The whites that the camera may be set to: CCT in K and Duv, each (n,)."""

    cct_k: Floats
    duv: Floats

    @cached_property
    def uv_prime(self) -> Floats:
        """The whites in u′ v′, shape (n, 2)."""
        return uv_to_uv_prime(cct_to_uv(self.cct_k, self.duv))


@dataclass(frozen=True, eq=False)
class Part:
    """What one light does in a plan: left (both None), gelled, or dialled to u′ v′.

    ``aim_uv`` is what it is meant to be at that white, ``steps`` how far from that it lands; both
    None where it is not judged.
    """

    gels: tuple[Gel, ...] | None
    dial_uv: Floats | None
    aim_uv: Floats | None
    steps: float | None


@dataclass(frozen=True, eq=False)
class Balance:
    """One plan for the set.

    ``stops_lost`` is the sum over the lights, in fiftieths as it was reckoned; no plan with as
    few lights out and as few pieces loses less than ``at_least_stops``. ``twins`` are the groups
    of lights that are alike and hang one pack, for which up to :data:`WORTH_STOPS` more are lost.
    """

    white: int
    parts: tuple[Part, ...]
    out: tuple[int, ...]
    twins: tuple[tuple[int, ...], ...]
    pieces: int
    stops_lost: float
    at_least_stops: float

    @property
    def exact(self) -> bool:
        """Whether this is proved to be the best."""
        return self.stops_lost <= self.at_least_stops


@dataclass(frozen=True, eq=False)
class Balances:
    """The trade-off, the fewest lights out first; ``exact`` when all of it is proved.

    ``fewest_out`` is the least number of lights out that could not be ruled out.
    """

    front: tuple[Balance, ...]
    exact: bool
    fewest_out: int


@dataclass(frozen=True, eq=False)
class _Stacks:
    """The stacks of gels that all lights choose from, a row each, the bare light first.

    ``gels`` (n, depth) with −1 where fewer hang; ``below`` (n, depth) holds the rows of the
    stacks with one gel less, −1 for none.
    """

    gels: Whole
    below: Whole


def _stacks(kit: tuple[Gel, ...], depth: int) -> _Stacks:
    wide = max(depth, 1)
    gels, below = [np.full((1, wide), -1)], [np.full((1, wide), -1)]
    # Rows of the single gels and of the pairs; a stack of three is built on pairs.
    single, pair = 1 + np.arange(len(kit)), np.full((len(kit), len(kit)), -1, dtype=np.int64)
    done = 1
    for count, level in enumerate(levels(kit, depth), start=1):
        here, under = (np.full((len(level.gels), wide), -1) for _ in range(2))
        here[:, :count] = level.gels
        if count == 1:
            under[:, 0] = 0
        elif count == 2:
            under[:, :2] = single[level.gels]
            pair[level.gels[:, 0], level.gels[:, 1]] = done + np.arange(len(level.gels))
        else:
            a, b, c = level.gels.T
            under[:, :3] = np.column_stack([pair[a, b], pair[a, c], pair[b, c]])
        gels.append(here)
        below.append(under)
        done += len(level.gels)
    return _Stacks(np.concatenate(gels), np.concatenate(below))


def _cost(stops: Floats, distance: Floats, radius: float) -> Whole:
    """Return the cost of options from stops lost and distance in u′ v′."""
    closeness = np.rint(_CLOSENESS * (distance / (radius * STEP_UV)) ** 2)
    lost = np.rint(STOP_PARTS * np.asarray(stops)).astype(np.int64)
    return np.asarray(lost * _UNIT + np.minimum(closeness, _FARTHEST).astype(np.int64))


@dataclass(frozen=True, eq=False)
class _Choices:
    """The options of one light, and what each is: a row of the stacks, −1 left, −2 dialled."""

    options: Options
    what: Whole


_LEFT, _DIALLED = -1, -2


def _gelled(
    light: SetLight,
    xyz: Floats,
    whites: Floats,
    kit: tuple[Gel, ...],
    radius: float,
    stacks: _Stacks,
) -> tuple[Whole, Whole, Whole, Whole]:
    """Return row, white, pieces to hang and cost of the stacks that hold somewhere."""
    reading = light.reading
    uv = xyz_to_uv_prime(xyz)
    reach = radius * STEP_UV
    near = np.nonzero(
        np.all((uv >= whites.min(axis=0) - reach) & (uv <= whites.max(axis=0) + reach), axis=1)
    )[0]
    at = uv[near]
    square = np.sum(at**2, axis=1)[:, np.newaxis] - 2.0 * at @ whites.T + np.sum(whites**2, axis=1)
    holds = np.zeros((len(uv) + 1, len(whites)), dtype=bool)
    holds[near] = square <= reach**2 * (1.0 + 1e-9)
    lost = np.log2((reading.spectra[0] @ observer_grid())[1] / xyz[:, 1])
    row, white = np.nonzero(holds[:-1])
    # A stack is idle where it holds with a gel less and more light.
    parts = np.append(np.rint(STOP_PARTS * lost), np.inf)
    below = stacks.below[row]
    idle = (holds[below, white[:, np.newaxis]] & (parts[below] < parts[row][:, np.newaxis])).any(
        axis=1
    )
    row, white = row[~idle], white[~idle]
    hung = np.sum(stacks.gels >= 0, axis=1)
    for gel in dict.fromkeys(reading.pack):
        here = np.sum(stacks.gels == kit.index(gel), axis=1)
        hung = hung - np.minimum(here, reading.pack.count(gel))
    cost = _cost(lost[row], delta_uv_prime(uv[row], whites[white]), radius)
    return row.astype(np.int64), white.astype(np.int64), hung[row], cost


def _choices(
    light: SetLight,
    xyz: Floats,
    count: int,
    whites: Floats | None,
    kit: tuple[Gel, ...],
    radius: float,
    stacks: _Stacks,
) -> _Choices:
    """Return what one light may do; ``whites`` is what it is meant to be at each, (count, 2)."""
    reading = light.reading
    every, none = np.arange(count), np.zeros(count, dtype=np.int64)
    now = tuple(kit.index(gel) for gel in reading.pack)
    wide = max(stacks.gels.shape[1], len(now))

    def hanging(gels: tuple[int, ...], rows: int) -> Whole:
        return np.tile(np.array(gels + (-1,) * (wide - len(gels)), dtype=np.int64), (rows, 1))

    if whites is None:
        # Not judged: it stays as it is, at no cost and never out.
        left = _cost(np.zeros(count), np.zeros(count), radius)
        return _Choices(
            Options(every, none, none, left, hanging(now, count), light.cuts), none + _LEFT
        )
    apart = delta_uv_prime(xy_to_uv_prime(reading.xy), whites)
    out = (apart > radius * STEP_UV).astype(np.int64)
    columns: list[tuple[Whole, ...]] = [
        (every, out, none, _cost(np.zeros(count), apart, radius), hanging(now, count), none + _LEFT)
    ]
    if light.reach is not None:
        remains = delta_uv_prime(light.reach.nearest(whites), whites)
        good = np.nonzero(remains <= radius * STEP_UV)[0]
        cost = _cost(np.zeros(len(good)), remains[good], radius)
        zero = np.zeros(len(good), dtype=np.int64)
        columns.append((good, zero, zero, cost, hanging(now, len(good)), zero + _DIALLED))
    if light.may_gel:
        row, white, hung, cost = _gelled(light, xyz, whites, kit, radius, stacks)
        gels = np.full((len(row), wide), -1, dtype=np.int64)
        gels[:, : stacks.gels.shape[1]] = stacks.gels[row]
        columns.append((white, np.zeros(len(row), dtype=np.int64), hung, cost, gels, row))
    white, out, hung, cost, gels, what = (
        np.concatenate(column) for column in zip(*columns, strict=True)
    )
    return _Choices(Options(white, out, hung, cost, gels, light.cuts), what)


def _balance(
    plan: Plan,
    at_least: float,
    lights: Sequence[SetLight],
    choices: Sequence[_Choices],
    aimed: Sequence[Floats | None],
    kit: tuple[Gel, ...],
    stacks: _Stacks,
    amounts: Whole,
) -> Balance:
    parts, out = [], []
    groups = twins(
        np.stack([xy_to_uv_prime(light.reading.xy) for light in lights]),
        [None if aim is None else aim[plan.white] for aim in aimed],
    )
    choice = one_pack(
        plan.choice,
        plan.white,
        groups,
        [some.options for some in choices],
        [some.what for some in choices],
        amounts,
        _UNIT,
        round(WORTH_STOPS * STOP_PARTS),
    )
    for index, (light, some, row, aim) in enumerate(
        zip(lights, choices, choice, aimed, strict=True)
    ):
        what = int(some.what[row])
        gels, dial = None, None
        if aim is None:
            parts.append(Part(None, None, None, None))
            continue
        white = aim[plan.white]
        landed = xy_to_uv_prime(light.reading.xy)
        if what == _DIALLED:
            assert light.reach is not None
            dial = landed = light.reach.nearest(white[np.newaxis])[0]
        elif what != _LEFT:
            gels = tuple(kit[gel] for gel in stacks.gels[what] if gel >= 0)
            bare = light.reading.spectra[0] / pack_transmittance(light.reading.pack)
            landed = xyz_to_uv_prime((bare * pack_transmittance(gels)) @ observer_grid())
        parts.append(Part(gels, dial, white, float(delta_uv_prime(landed, white) / STEP_UV)))
        if some.options.out[row]:
            out.append(index)
    return Balance(
        plan.white,
        tuple(parts),
        tuple(out),
        tuple(
            group
            for group in groups
            if parts[group[0]].gels and len({parts[light].gels for light in group}) == 1
        ),
        plan.pieces,
        plan.cost // _UNIT / STOP_PARTS,
        at_least // _UNIT / STOP_PARTS,
    )


def balance(
    lights: Sequence[SetLight],
    grid: WhiteGrid,
    kit: tuple[Gel, ...],
    stock: dict[str, int],
    radius: float,
    depth: int,
) -> Balances:
    """Return the trade-off of lights out, pieces and light lost.

    Every plan sets one white and does one thing to each light: leave it, dial it (at no cost,
    within its reach), or hang a stack of gels in place of what hangs there now. A light that does
    not hold is left as it is. Dialling and gelling the same light at once is not tried. What a
    light is meant to be beside the white moves with the white; one that is meant as found is
    neither out nor a cost. The whites must all have what is meant beside them (see
    :func:`possible_whites`).

    Parameters
    ----------
    lights
        One to :data:`MOST_LIGHTS`.
    grid
        The whites, one to :data:`MOST_WHITES`.
    kit
        Gels to choose from; those on the lights count as being at hand.
    stock
        Cuts in stock beside what hangs already, by name; a gel of the kit that is not named has
        no limit.
    radius
        Tolerance in steps.
    depth
        Most gels on one light.

    Returns
    -------
    Balances
        Of plans with as many lights out and pieces, the one that loses least light, in fiftieths
        of a stop a light; of those, the closest to the white.
    """
    hanging: dict[Gel, int] = {}
    for light in lights:
        for gel in light.reading.pack:
            hanging[gel] = hanging.get(gel, 0) + light.cuts
    kit = tuple(dict.fromkeys(kit))
    at_hand = tuple(gel for gel in kit if stock.get(gel.name, 1) > 0 or gel in hanging)
    at_hand += tuple(gel for gel in hanging if gel not in at_hand)
    plenty = len(lights) * max(light.cuts for light in lights) * (depth + 10)
    amounts = np.array(
        [
            (stock.get(gel.name, plenty) if gel in kit else 0) + hanging.get(gel, 0)
            for gel in at_hand
        ],
        dtype=np.int64,
    )
    aimed = _aimed(grid, lights)
    count = len(grid.cct_k)
    stacks = _stacks(at_hand, depth)
    bare = np.stack(
        [light.reading.spectra[0] / pack_transmittance(light.reading.pack) for light in lights]
    )
    xyz = stacks_on_all(bare, at_hand, depth)
    choices = [
        _choices(light, through, count, aim, at_hand, radius, stacks)
        for light, through, aim in zip(lights, xyz, aimed, strict=True)
    ]
    found = allot([some.options for some in choices], count, amounts)

    lost = np.floor(found.cost / _UNIT)
    least = np.floor(found.at_least / _UNIT)
    front: list[Balance] = []
    best = np.full(lost.shape[1], np.inf)
    for k, row in enumerate(found.plans):
        brightest = np.inf
        for p, plan in enumerate(row):
            brightest = min(brightest, best[p])
            if plan is None or lost[k, p] > brightest - WORTH_STOPS * STOP_PARTS:
                continue
            brightest = best[p] = lost[k, p]
            front.append(
                _balance(
                    plan,
                    float(found.at_least[k, p]),
                    lights,
                    choices,
                    aimed,
                    at_hand,
                    stacks,
                    amounts,
                )
            )
        best = np.minimum.accumulate(best)
        if best[0] <= 0.0:
            # No gel and no loss: what only more lights out could gain is not worth a card.
            break
    return Balances(
        tuple(front),
        bool(np.array_equal(lost, least)),
        int(np.argmax(np.isfinite(least[:, -1]))),
    )


def _aimed(grid: WhiteGrid, lights: Sequence[SetLight]) -> list[Floats | None]:
    return aims(
        Whites(grid.uv_prime, grid.cct_k, grid.duv),
        [light.meant for light in lights],
        [light.reading for light in lights],
        [light.stays for light in lights],
    )


def possible_whites(grid: WhiteGrid, lights: Sequence[SetLight]) -> tuple[WhiteGrid, list[int]]:
    """Return the whites beside which there is what every light is meant to be.

    Also the lights, by index, for whose sake others were left out: nothing is 100 mired cooler
    than a white of 9000 K.
    """
    there = np.ones(len(grid.cct_k), dtype=bool)
    narrow = []
    for index, aim in enumerate(_aimed(grid, lights)):
        if aim is not None and np.isnan(aim).any():
            there &= ~np.isnan(aim).any(axis=1)
            narrow.append(index)
    return WhiteGrid(grid.cct_k[there], grid.duv[there]), narrow


def white_grid(cct_k: Floats, duv: Floats) -> WhiteGrid:
    """Return every CCT with every Duv."""
    kelvins, duvs = np.meshgrid(cct_k, duv, indexing="ij")
    return WhiteGrid(kelvins.ravel(), duvs.ravel())


def thin(front: Sequence[Balance], most: int) -> tuple[Balance, ...]:
    """Return at most so many plans: for every number of lights out the fewest pieces come first,
    then the brightest, then the others.
    """
    groups: dict[int, list[Balance]] = {}
    for one in front:
        groups.setdefault(len(one.out), []).append(one)
    ranked = [group[0] for group in groups.values()]
    ranked += [group[-1] for group in groups.values() if len(group) > 1]
    ranked += [one for group in groups.values() for one in group[1:-1]]
    kept: list[Balance] = ranked[:most]
    return tuple(one for one in front if one in kept)


def whites_between(from_k: float, to_k: float, step_k: float) -> NDArray[np.float64]:
    """Return CCT in K from one to the other, both included, at most ``step_k`` apart."""
    count = max(1, round((to_k - from_k) / step_k + 0.499))
    return np.linspace(from_k, to_k, count + 1) if to_k > from_k else np.array([from_k])
