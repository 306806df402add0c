"""Cut random jobs by the thousand and measure every plan with geometry of its own.

As a script:  python tests/kernel/fuzz_cutting.py [jobs] [seed]
A bounded part of it runs with the other tests.

One property, for the cut list of windows and for an order alike: every piece that was asked for
is cut once or told as left over, inside its roll, on no other piece, and the way up it has to lie.
"""

from __future__ import annotations

import random
import sys
import time
from collections import Counter
from collections.abc import Sequence
from pathlib import Path
from typing import Any, NamedTuple

#: How far pieces may reach into each other, in m: no cutter sees a tenth of a millimetre.
TOLERANCE = 1.1e-4


class Job(NamedTuple):
    """What is to be covered, (width, height) in m, with which rolls (width, length, count)."""

    panes: list[tuple[float, float]]
    rolls: list[tuple[float, float, int | None]]
    overlap: float
    direction: str


def jobs(count: int, seed: int) -> list[Job]:
    """Return random jobs: few windows and many, alike and unlike, scarce rolls and plenty."""
    chance = random.Random(seed)
    return [_job(chance) for _ in range(count)]


def _job(chance: random.Random) -> Job:
    grid = chance.choice((0.1, 0.05, 0.01, 0.001))

    def size(low: float, high: float) -> float:
        return max(0.05, round(round(chance.uniform(low, high) / grid) * grid, 4))

    panes: list[tuple[float, float]] = []
    for _ in range(chance.randint(1, 5)):
        biggest = chance.choice((0.8, 1.2, 3.0))
        kind = size(0.05, biggest), size(0.05, biggest)
        panes += [kind] * chance.randint(1, chance.choice((1, 3, 6)))
    rolls: list[tuple[float, float, int | None]] = []
    for _ in range(chance.choice((1, 1, 1, 2, 3))):
        long = chance.choice((size(1.0, 3.0), size(3.0, 8.0), 7.62))
        roll = (chance.choice((1.22, 1.2, 0.61, size(0.3, 2.0))), long)
        rolls.append((*roll, chance.choice((None, None, chance.randint(1, 3)))))
    overlap = chance.choice((0.0, 0.05, 0.05, round(chance.uniform(0, 0.1), 3)))
    return Job(panes, rolls, overlap, chance.choice(("any", "any", "upright", "across")))


def check_plan(plan: Any, wanted: Sequence[Any], stocks: Sequence[Any]) -> None:
    """Assert that a plan cuts the wanted pieces, and nothing that scissors could not.

    Parameters
    ----------
    plan
        A ``Plan`` of the kernel.
    wanted
        The ``Piece`` list that it was made for.
    stocks
        Each ``Stock`` it may be cut from.
    """
    for roll in plan.rolls:
        laid = [
            (p.at_across, p.at_across + p.piece.across, p.at_along, p.at_along + p.piece.along)
            for p in roll.placed
        ]
        assert laid, "a roll is opened for nothing"
        for left, right, near, far in laid:
            assert min(left, near) >= -TOLERANCE, "a piece begins outside its roll"
            assert right <= roll.stock.width + TOLERANCE, "a piece is wider than its roll"
            assert far <= roll.stock.length + TOLERANCE, "a piece goes beyond its roll"
            assert far <= roll.used + TOLERANCE, "a piece goes beyond what is cut off"
        for i, (left, right, near, far) in enumerate(laid):
            for other_left, other_right, other_near, other_far in laid[:i]:
                across = min(right, other_right) - max(left, other_left)
                along = min(far, other_far) - max(near, other_near)
                assert min(across, along) <= TOLERANCE, "two pieces lie on each other"
    cut = [placed.piece for roll in plan.rolls for placed in roll.placed]
    assert Counter(map(_identity, [*cut, *plan.left_out])) == Counter(map(_identity, wanted))
    for piece in (piece for piece in cut if not piece.turns):
        # Its direction is kept: across stays across.
        assert any(
            (piece.window, piece.strip, piece.across, piece.along)
            == (one.window, one.strip, one.across, one.along)
            for one in wanted
        ), "a piece is turned that must not be"
    used = sum(roll.stock.width * roll.used for roll in plan.rolls)
    area = sum(piece.across * piece.along for piece in cut)
    assert area <= used + TOLERANCE * len(cut), "more is cut than there is"
    opened = Counter((roll.stock.width, roll.stock.length) for roll in plan.rolls)
    for size, count in opened.items():
        there = [stock.count for stock in stocks if (stock.width, stock.length) == size]
        assert None in there or count <= sum(there), "more rolls are opened than there are"


def _identity(piece: Any) -> tuple[Any, ...]:
    return (piece.window, piece.strip, piece.strips, *sorted((piece.across, piece.along)))


def check_pieces(pieces: Sequence[Any], job: Job, lead: Any) -> None:
    """Assert that the pieces for a roll cover every pane, in the direction that was asked for."""
    for window, (width, height) in enumerate(job.panes):
        own = [piece for piece in pieces if piece.window == window]
        assert [piece.strip for piece in own] == list(range(1, len(own) + 1))
        assert all(piece.strips == len(own) for piece in own)
        assert all(piece.turns == (job.direction == "any") for piece in own)
        for piece in own:
            assert piece.across <= lead.width + TOLERANCE
            assert piece.along <= lead.length + TOLERANCE
        ways = {"any": (True, False), "upright": (True,), "across": (False,)}[job.direction]
        assert any(
            _covers(own, (width, height) if upright else (height, width), job.overlap)
            for upright in ways
        ), "glass stays bare"


def _covers(pieces: Sequence[Any], glass: tuple[float, float], overlap: float) -> bool:
    """Tell whether pieces in rows and columns, each over the next by the overlap, cover glass."""
    for columns in range(1, len(pieces) + 1):
        if len(pieces) % columns:
            continue
        rows = len(pieces) // columns
        grid = [pieces[i * rows : (i + 1) * rows] for i in range(columns)]
        even = all(
            piece.across == column[0].across and piece.along == grid[0][row].along
            for column in grid
            for row, piece in enumerate(column)
        )
        wide = sum(column[0].across for column in grid) - overlap * (columns - 1)
        long = sum(piece.along for piece in grid[0]) - overlap * (rows - 1)
        if even and wide >= glass[0] - 1e-9 and long >= glass[1] - 1e-9:
            return True
    return False


def check_windows(job: Job) -> Any:
    """Cut one job as windows, fail on what cannot be cut, and return the plan."""
    from evenkelvin.scouting import windows

    panes = [windows.Pane(i, *size) for i, size in enumerate(job.panes)]
    stocks = [windows.Stock(*roll) for roll in job.rolls]
    divided = {}
    for lead in stocks:
        pieces = windows.divide(panes, lead, job.overlap, job.direction)  # type: ignore[arg-type]
        if pieces is not None:
            check_pieces(pieces, job, lead)
            divided[lead] = pieces
    plan = windows.cut_list(panes, stocks, job.overlap, job.direction)  # type: ignore[arg-type]
    if plan is None:
        assert not divided
    else:
        check_plan(plan, _asked_for(plan, divided.values()), stocks)
    return plan


def check_order(job: Job) -> None:
    """Order for one job, fail on what cannot be cut, and on too little bought."""
    from evenkelvin.scouting import windows
    from evenkelvin.scouting.order import order_gel

    panes = [windows.Pane(i, *size) for i, size in enumerate(job.panes)]
    stocks = [windows.Stock(*roll) for roll in job.rolls]
    owned = [stock for stock in stocks if stock.count is not None]
    sizes = [windows.Stock(stocks[0].width, stocks[0].length)]
    order = order_gel(panes, owned, sizes, job.overlap, 0.15)
    if order is not None:
        ways = [windows.divide(panes, lead, job.overlap) for lead in (*sizes, *owned)]
        asked = _asked_for(order.plan, [way for way in ways if way is not None])
        check_plan(order.plan, asked, [*owned, *sizes])
        _check_bought(order, owned)


def check(job: Job) -> str:
    """Cut one job as windows and as an order; fail on any plan that cannot be cut."""
    plan = check_windows(job)
    if plan is None:
        return "too narrow"
    check_order(job)
    if plan.left_out:
        return "rolls too few"
    return "more than one roll" if len(plan.rolls) > 1 else "one roll"


def _asked_for(plan: Any, ways: Any) -> Sequence[Any]:
    """Return the pieces of the roll that the panes were divided for."""
    cut = [placed.piece for roll in plan.rolls for placed in roll.placed]
    found = Counter(map(_identity, [*cut, *plan.left_out]))
    alike = [pieces for pieces in ways if Counter(map(_identity, pieces)) == found]
    assert alike, "these are not the pieces that cover the panes"
    return alike[0]  # type: ignore[no-any-return]


def _check_bought(order: Any, owned: Sequence[Any]) -> None:
    """Assert that what is taken and bought holds the plan, and leaves the spare that was asked."""
    opened = Counter((roll.stock.width, roll.stock.length) for roll in order.plan.rolls)
    there = Counter[tuple[float, float]]()
    for stock, count in (*order.owned, *order.buy):
        there[stock.width, stock.length] += count
    assert all(there[size] >= count for size, count in opened.items()), "too little is ordered"
    for stock, count in order.owned:
        assert count <= sum(one.count or 0 for one in owned if one == stock)
    assert not order.plan.left_out
    whole = sum(stock.width * stock.length * count for stock, count in order.buy)
    whole += sum(stock.width * stock.length * (stock.count or 0) for stock in owned)
    pieces = [placed.piece for roll in order.plan.rolls for placed in roll.placed]
    area = sum(piece.across * piece.along for piece in pieces)
    assert whole >= 1.15 * area - TOLERANCE * len(pieces), "the spare is missing"


def main() -> None:
    """Cut as many jobs as asked and tell what came of them."""
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 5000
    seed = int(sys.argv[2]) if len(sys.argv) > 2 else 2026
    found: Counter[str] = Counter()
    start = time.perf_counter()
    for number, job in enumerate(jobs(count, seed)):
        try:
            found[check(job)] += 1
        except BaseException:
            print(f"job {number}: {job}", file=sys.stderr)
            raise
    print(f"{count} jobs in {time.perf_counter() - start:.0f} s")
    for kind, times in found.most_common():
        print(f"{times:8d} {kind}")


if __name__ == "__main__":
    sys.path.insert(0, str(Path(__file__).parents[2] / "kernel"))
    main()
