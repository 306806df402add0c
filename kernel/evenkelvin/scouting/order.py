"""The order: everything that hangs, by gel and size, against what is in stock."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from evenkelvin.scouting.windows import Pane, Plan, Stock, divide, pack


@dataclass(frozen=True)
class GelOrder:
    """What one gel needs.

    Attributes
    ----------
    plan
        How its pieces are cut, from stock first.
    owned
        Rolls and sheets taken from stock, each with how many.
    buy
        Those to order, each with how many.
    spare
        Area in m² that stays uncut on all of them and on the rest of the stock.
    wanted_spare
        Area in m² that was to stay.
    """

    plan: Plan
    owned: tuple[tuple[Stock, int], ...]
    buy: tuple[tuple[Stock, int], ...]
    spare: float
    wanted_spare: float


def _area(stock: Stock) -> float:
    return stock.width * stock.length


def _counted(stocks: Sequence[Stock]) -> tuple[tuple[Stock, int], ...]:
    return tuple((stock, stocks.count(stock)) for stock in dict.fromkeys(stocks))


def order_gel(
    panes: Sequence[Pane],
    owned: Sequence[Stock],
    sizes: Sequence[Stock],
    overlap: float,
    spare_part: float,
) -> GelOrder | None:
    """Return the least that must be bought of one gel.

    Parameters
    ----------
    panes
        What is to be covered.
    owned
        Stock, each with its count.
    sizes
        Rolls and sheets that can be bought, without a count.
    overlap
        At each seam, in m.
    spare_part
        Gel that is to stay uncut, as a part of what is cut.

    Returns
    -------
    GelOrder or None
        None when no size is wide enough for any strip.
    """
    found = []
    for size in sizes:
        for lead in dict.fromkeys([size, *owned]):
            pieces = divide(panes, lead, overlap)
            if pieces is not None:
                found.append(_priced(pack(pieces, [*owned, size]), owned, size, spare_part))
    return min(found, key=_least, default=None)


def _least(order: GelOrder) -> tuple[float, ...]:
    bought = sum(_area(stock) * count for stock, count in order.buy)
    return (len(order.plan.left_out), order.plan.seams, bought, order.plan.used_area)


def _priced(plan: Plan, owned: Sequence[Stock], size: Stock, spare_part: float) -> GelOrder:
    opened = [roll.stock for roll in plan.rolls]
    taken = [stock for stock in opened if stock.count is not None]
    buy = [stock for stock in opened if stock.count is None]
    have = sum(_area(stock) * (stock.count or 0) for stock in owned)
    spare = have + sum(_area(stock) for stock in buy) - plan.used_area
    wanted = spare_part * plan.cut_area
    while spare < wanted - 1e-9:
        buy.append(size)
        spare += _area(size)
    return GelOrder(plan, _counted(taken), _counted(buy), spare, wanted)
