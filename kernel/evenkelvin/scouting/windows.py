"""Gel on glass: the pieces that cover windows, and how they are cut from rolls and sheets.

A roll is cut the way a person with a long table does it, each cut going right across what it
divides (guillotine patterns: Gilmore and Gomory, 1965, 'Multistage cutting stock problems of two
and more dimensions', Oper. Res. 13): first a length off the roll, then that length into pieces.
Pieces are placed by falling size (decreasing height: Coffman, Garey, Johnson and Tarjan, 1980,
SIAM J. Comput. 9), each into the free rectangle, length or roll that it fits best (guillotine
algorithm with best fit: Jylänki, 2010, 'A thousand ways to pack the bin'); a length may be cut
a little longer for a piece that nearly fits. That order is a heuristic, so it is tried again with
pieces turned, rests split the other way and orders slightly disturbed, from a fixed seed, and the
best plan is kept: most pieces placed, fewest seams, least gel bought, least cut off, fewest
lengths.
"""

from __future__ import annotations

import math
import random
from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from typing import Literal, NamedTuple

Direction = Literal["any", "upright", "across"]

#: Neutral density of one stop.
DENSITY_PER_STOP = math.log10(2.0)
#: Narrowest strip that is worth hanging; a narrower rest takes more overlap instead.
NARROWEST_M = 0.10
#: Most pieces of one plan.
MOST_PIECES = 2000
#: Sizes are compared to a tenth of a millimetre.
_FINE = 1e-4
#: How many orders are tried: so many at the most, and for long lists as many as take about a
#: second in a browser. The work of one order grows with the square of its pieces.
_MOST_TRIES, _PLACEMENTS, _COMPARISONS = 300, 8000, 400_000


@dataclass(frozen=True)
class Stock:
    """A size of roll or sheet: metres, and how many there are (None: as many as it takes)."""

    width: float
    length: float
    count: int | None = None


@dataclass(frozen=True)
class Pane:
    """One stretch of glass to cover, in metres; ``window`` is its place in the caller's list."""

    window: int
    width: float
    height: float


@dataclass(frozen=True)
class Piece:
    """A piece of gel: ``across`` the roll and ``along`` it, in metres.

    ``strip`` of ``strips`` on its pane; ``turns`` when it may lie either way on the roll.
    """

    window: int
    across: float
    along: float
    turns: bool
    strip: int = 1
    strips: int = 1


class Placed(NamedTuple):
    """A piece on a roll, its near corner ``at_across``, ``at_along`` in metres."""

    piece: Piece
    at_across: float
    at_along: float


class _Free(NamedTuple):
    """A rectangle of a length that nothing is cut from yet.

    ``grows``: it reaches the end of its length all across, so that a longer length makes it
    longer too. Those of one length that grow lie side by side, never one beyond another.
    """

    at_across: float
    at_along: float
    across: float
    along: float
    grows: bool


@dataclass
class _Level:
    """A length cut off the roll."""

    along: float
    free: list[_Free]


@dataclass
class Roll:
    """A roll with what is cut from it; ``open`` are the levels that still have room."""

    stock: Stock
    placed: list[Placed] = field(default_factory=list)
    levels: list[_Level] = field(default_factory=list)
    open: list[_Level] = field(default_factory=list)
    used: float = 0.0


@dataclass(frozen=True)
class Plan:
    """How everything is cut.

    Attributes
    ----------
    rolls
        Those that are opened, with their pieces.
    left_out
        Pieces for which the stock does not suffice.
    seams
        Lines along which two pieces meet on the glass.
    """

    rolls: tuple[Roll, ...]
    left_out: tuple[Piece, ...]
    seams: int

    @property
    def cut_area(self) -> float:
        """Return the area of all pieces that are cut, in m²."""
        return area_of([placed.piece for roll in self.rolls for placed in roll.placed])

    @property
    def used_area(self) -> float:
        """Return the area cut off the rolls, in m²; what stays on a roll is not used."""
        return sum(roll.stock.width * roll.used for roll in self.rolls)

    @property
    def offcuts(self) -> float:
        """Return the area in m² that is cut off the rolls and is no piece."""
        # Sizes that agree to a tenth of a millimetre count as equal.
        return max(0.0, self.used_area - self.cut_area)

    @property
    def score(self) -> tuple[float, ...]:
        """Return what a better plan has less of, first things first."""
        bought = sum(roll.stock.width * roll.stock.length for roll in self.rolls)
        lengths = sum(len(roll.levels) for roll in self.rolls)
        return (len(self.left_out), self.seams, bought, round(self.used_area, 4), lengths)


def area_of(pieces: Sequence[Piece]) -> float:
    """Return the area of pieces in m²."""
    return sum(piece.across * piece.along for piece in pieces)


def area_bound(pieces: Sequence[Piece], stock: Stock) -> tuple[float, int]:
    """Return the length in m, and the rolls, that no way of cutting can do with less of.

    The area bound: all pieces laid without a gap over the full width.
    """
    length = area_of(pieces) / stock.width
    return length, math.ceil(length / stock.length - 1e-9)


def _strips(total: float, most: float, overlap: float) -> list[float] | None:
    """Return strip widths that cover a total with an overlap at each seam; None: impossible."""
    if total <= most + _FINE:
        return [total]
    if most <= overlap + NARROWEST_M:
        return None
    count = math.ceil((total - overlap) / (most - overlap) - 1e-9)
    rest = total - (count - 1) * (most - overlap)
    return [most] * (count - 1) + [max(rest, NARROWEST_M)]


def _laid(
    pane: Pane, stock: Stock, overlap: float, upright: bool, fixed: bool
) -> list[Piece] | None:
    """Return the pieces of a pane with the roll's length up the glass, or across it."""
    wide, long = (pane.width, pane.height) if upright else (pane.height, pane.width)
    across = _strips(wide, stock.width, overlap)
    along = _strips(long, stock.length, overlap)
    if across is None or along is None:
        return None
    number = len(across) * len(along)
    sizes = [(a, b) for a in across for b in along]
    return [
        Piece(pane.window, a, b, not fixed, index, number)
        for index, (a, b) in enumerate(sizes, start=1)
    ]


def cover(
    pane: Pane, stock: Stock, overlap: float = 0.05, direction: Direction = "any"
) -> list[Piece] | None:
    """Return the pieces that cover one pane with the fewest seams, then the least gel.

    ``direction`` fixes how the roll's length lies on the glass. None when the stock is too narrow
    for any strip beside the overlap.
    """
    ways = {"any": (True, False), "upright": (True,), "across": (False,)}[direction]
    laid = [_laid(pane, stock, overlap, up, direction != "any") for up in ways]
    found = [pieces for pieces in laid if pieces is not None]
    return min(
        found,
        key=lambda pieces: (len(pieces), sum(p.across * p.along for p in pieces)),
        default=None,
    )


def seams_of(pieces: Sequence[Piece]) -> int:
    """Return how many more pieces there are than panes: each adds a seam."""
    return sum(1 for piece in pieces if piece.strip > 1)


def _ways(piece: Piece) -> list[tuple[float, float]]:
    ways = [(piece.across, piece.along)]
    if piece.turns and abs(piece.across - piece.along) > _FINE:
        ways.append((piece.along, piece.across))
    return ways


def _lay(
    roll: Roll, level: _Level, free: _Free, piece: Piece, way: tuple[float, float], slit: bool,
    least: float,
) -> None:  # fmt: skip
    """Cut a piece from the corner of a free rectangle and keep the rests that can hold another.

    ``slit``: the first cut runs along the roll, so that the rest beside keeps the full length.
    A piece that takes the full length is always slit off. ``least``: the shortest side of any
    piece.
    """
    across, along = way
    turned = across != piece.across or along != piece.along
    laid = replace(piece, across=across, along=along) if turned else piece
    roll.placed.append(Placed(laid, free.at_across, free.at_along))
    level.free.remove(free)
    beside, beyond = free.across - across, free.along - along
    slit = slit or beyond <= _FINE
    # Cut right across, the rest beside ends where the rest beyond begins.
    rests = (
        _Free(
            free.at_across + across, free.at_along, beside, free.along if slit else along,
            free.grows and slit,
        ),
        _Free(
            free.at_across, free.at_along + along, across if slit else free.across, beyond,
            free.grows,
        ),
    )  # fmt: skip
    last = level is roll.levels[-1]
    level.free += [
        rest
        for rest in rests
        if rest.across >= least - _FINE and (rest.along >= least - _FINE or (rest.grows and last))
    ]
    _close(roll, level)


def _close(roll: Roll, level: _Level) -> None:
    """Look no more at a level without room."""
    if not level.free:
        roll.open = [other for other in roll.open if other is not level]


def _into_open(
    rolls: list[Roll], piece: Piece, ways: list[tuple[float, float]], rule: int, least: float
) -> bool:
    """Place a piece into the free rectangle of an opened length that it fits best."""
    fits = [
        ((min(beside, beyond), max(beside, beyond)), roll, level, free, way)
        for roll in rolls
        for level in roll.open
        for free in level.free
        for way in ways
        if (beside := free.across - way[0]) >= -_FINE and (beyond := free.along - way[1]) >= -_FINE
    ]
    if not fits:
        return False
    (near, _), roll, level, free, way = min(fits, key=lambda fit: fit[0])
    # Rule 0 slits, rule 1 cuts across, rule 2 keeps the rest on the shorter side small.
    shorter = free.across - way[0] <= near + _FINE
    _lay(roll, level, free, piece, way, (True, False, not shorter)[rule], least)
    return True


def _into_new(
    rolls: list[Roll], stocks: list[Stock], piece: Piece, ways: list[tuple[float, float]],
    least: float,
) -> bool:  # fmt: skip
    """Cut a new length for a piece off an opened roll, or open one."""
    for roll in rolls:
        for way in ways:
            fits = way[0] <= roll.stock.width + _FINE
            if fits and roll.used + way[1] <= roll.stock.length + _FINE:
                _cut_level(roll, piece, way, least)
                return True
    for stock in stocks:
        opened = sum(roll.stock is stock for roll in rolls)
        if stock.count is not None and opened >= stock.count:
            continue
        for way in ways:
            if way[0] <= stock.width + _FINE and way[1] <= stock.length + _FINE:
                rolls.append(Roll(stock))
                _cut_level(rolls[-1], piece, way, least)
                return True
    return False


def _cut_level(roll: Roll, piece: Piece, way: tuple[float, float], least: float) -> None:
    if roll.levels:
        # The length before this one can no longer be cut longer.
        before = roll.levels[-1]
        before.free = [rest for rest in before.free if rest.along >= least - _FINE]
        _close(roll, before)
    free = _Free(0.0, roll.used, roll.stock.width, way[1], True)
    level = _Level(way[1], [free])
    roll.levels.append(level)
    roll.open.append(level)
    roll.used += way[1]
    _lay(roll, level, free, piece, way, True, least)


def _into_longer(
    rolls: list[Roll], piece: Piece, ways: list[tuple[float, float]], rule: int, most: float,
    least: float,
) -> bool:  # fmt: skip
    """Cut the last length of a roll a little longer, so that it holds a piece that nearly fits.

    ``most``: by how much, as a part of the piece's own length.
    """
    fits = [
        (more, roll, free, way)
        for roll in rolls
        for free in roll.levels[-1].free
        for way in ways
        if free.grows
        and way[0] <= free.across + _FINE
        and (more := way[1] - free.along) <= most * way[1]
        and roll.used + more <= roll.stock.length + _FINE
    ]
    if not fits:
        return False
    more, roll, free, way = min(fits, key=lambda fit: fit[0])
    level = roll.levels[-1]
    longer = [rest._replace(along=rest.along + more) if rest.grows else rest for rest in level.free]
    grown = longer[level.free.index(free)]
    level.free = longer
    level.along += more
    roll.used += more
    _lay(roll, level, grown, piece, way, (True, False, True)[rule], least)
    return True


def _place(
    pieces: Sequence[tuple[Piece, list[tuple[float, float]]]],
    stocks: list[Stock],
    rule: int,
    longer: float,
) -> Plan:
    rolls: list[Roll] = []
    left_out = []
    least = min((min(way) for _, ways in pieces for way in ways), default=0.0)
    for piece, ways in pieces:
        if (
            not _into_open(rolls, piece, ways, rule, least)
            and not _into_longer(rolls, piece, ways, rule, longer, least)
            and not _into_new(rolls, stocks, piece, ways, least)
        ):
            left_out.append(piece)
    return Plan(tuple(rolls), tuple(left_out), seams_of([piece for piece, _ in pieces]))


def pack(pieces: Sequence[Piece], stocks: Sequence[Stock]) -> Plan:
    """Return the best plan found for cutting pieces from stock, the first stock preferred."""
    chance = random.Random(7)
    sizes = list(stocks)
    widest = max(stock.width for stock in sizes)

    def flat(ways: list[tuple[float, float]]) -> list[tuple[float, float]]:
        return sorted(ways, key=lambda way: (way[0] > widest + _FINE, way[1]))

    def tall(ways: list[tuple[float, float]]) -> list[tuple[float, float]]:
        return sorted(ways, key=lambda way: (way[0] > widest + _FINE, -way[1]))

    best: Plan | None = None
    # Pieces of one size are alike: few of them come in the same order again and again.
    tried: set[tuple[int, float, tuple[tuple[tuple[float, float], ...], ...]]] = set()
    number = max(1, len(pieces))
    tries = max(4, min(_MOST_TRIES, _PLACEMENTS // number, _COMPARISONS // number**2))
    for attempt in range(tries):
        # The four plain orders first: all tall or all flat, by length or by area.
        plain = attempt < 4
        noise = 0.0 if plain else 0.4 * chance.random()
        listed: list[tuple[float, float, int, Piece, list[tuple[float, float]]]] = []
        for piece in pieces:
            turn = (tall, flat)[attempt % 2 if plain else chance.randrange(2)]
            ways = turn(_ways(piece))
            across, along = ways[0]
            size = along * across if attempt % 4 >= 2 else along
            size *= 1.0 + noise * (chance.random() - 0.5)
            listed.append((-size, -across, len(listed), piece, ways))
        listed.sort(key=lambda entry: entry[:3])
        ordered = [(piece, ways) for *_, piece, ways in listed]
        longer = 0.0 if plain else chance.choice((0.0, 0.2, 0.4, 0.7))
        order = (attempt % 3, longer, tuple(tuple(ways) for _, ways in ordered))
        if order in tried:
            continue
        tried.add(order)
        plan = _place(ordered, sizes, attempt % 3, longer)
        if best is None or plan.score < best.score:
            best = plan
        if not best.left_out and best.used_area <= best.cut_area + _FINE:
            break  # nothing is wasted: no plan is better
    assert best is not None
    return best


def divide(
    panes: Sequence[Pane], lead: Stock, overlap: float, direction: Direction = "any"
) -> list[Piece] | None:
    """Return the pieces of all panes for one size of stock, or None where it is too small."""
    glass = sum(pane.width * pane.height for pane in panes)
    strip = lead.width - overlap
    if strip <= 0.0 or glass / (strip * lead.length) > MOST_PIECES:
        return None
    pieces: list[Piece] = []
    for pane in panes:
        laid = cover(pane, lead, overlap, direction)
        if laid is None or len(pieces) + len(laid) > MOST_PIECES:
            return None
        pieces += laid
    return pieces


def cut_list(
    panes: Sequence[Pane],
    stocks: Sequence[Stock],
    overlap: float = 0.05,
    direction: Direction = "any",
) -> Plan | None:
    """Return the best plan that covers every pane, or None where no stock can.

    Each size of stock leads in turn: the panes are divided for it, and the other sizes take what
    it has not enough of.
    """
    plans = []
    for index, lead in enumerate(stocks):
        pieces = divide(panes, lead, overlap, direction)
        if pieces is not None and lead.count != 0:
            plans.append(pack(pieces, [lead, *stocks[:index], *stocks[index + 1 :]]))
    return min(plans, key=lambda plan: plan.score, default=None)


def neutral_for(stops: float, densities: Sequence[float], most: int = 2) -> list[float]:
    """Return the neutral densities, up to ``most`` of them, whose sum comes nearest to ``stops``.

    One stop is a density of log₁₀ 2. Fewer gels win where two choices come equally near.
    """
    wanted = stops * DENSITY_PER_STOP
    choices: list[list[float]] = [[]]
    for _ in range(most):
        choices += [[*old, d] for old in choices for d in densities if not old or d <= old[-1]]
    return min(choices, key=lambda c: (round(abs(sum(c) - wanted), 6), len(c)))
