"""``order``: what to order so that everything hangs, by gel and size.

Fields: ``hangs`` [{``gels`` (every layer by name, a doubled gel twice) or ``gel``, ``width_m`` and
``height_m`` (both, or neither where the size is not known yet), ``count`` of pieces that one layer
takes (1), ``panes_across`` and ``panes_down`` (1) that divide it, ``where``, ``on`` "glass"
(default) or "lamp", ``hung`` [gels of what hangs already]}]; ``ready`` {gel: pieces for a lamp that
are cut already, counted as "balance" counts its stock}; ``stock`` [{``gel``, ``width_m``,
``length_m``, ``count``}]; ``rolls``, the sizes that can be bought [{``width_m``, ``length_m``}]
(default one roll size); ``spare_percent`` of what is cut that is to stay uncut (15);
``overlap_m`` at a seam (0.05). Every length may be given in ``_ft`` instead; ``length_unit`` "m"
(default) or "ft" is the one that words use.
"""

from __future__ import annotations

from typing import Any

from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.units import piece_words, size_words
from evenkelvin.requests.kit import GEL
from evenkelvin.requests.stocks import MOST_PANES, STOCK, USUAL_ROLL, read_stocks
from evenkelvin.requests.units import length, length_fields, length_unit
from evenkelvin.said import Said, joined, listed
from evenkelvin.scouting.order import GelOrder, order_gel
from evenkelvin.scouting.windows import Pane, Stock
from evenkelvin.shapes import ByName, Choice, Group, Many, Number, Text, Whole

#: Across and down in m; None where it is not known yet.
Size = tuple[float, float] | None

_HANG: Group = {
    "gel": GEL, "gels": Many(GEL), **length_fields("width", 0.05, 5),
    **length_fields("height", 0.05, 5), "count": Whole(1, 5), "where": Text(),
    "panes_across": Whole(1, 3), "panes_down": Whole(1, 3), "on": Choice(("glass", "lamp")),
    "hung": Many(GEL),
}  # fmt: skip
FIELDS: Group = {
    "hangs": Many(_HANG), "ready": ByName(GEL.such_as, Whole(0, 20)), "stock": Many(STOCK),
    "rolls": Many(STOCK), "spare_percent": Number(0, 500), **length_fields("overlap", 0, 1),
    "length_unit": Choice(("m", "ft")),
}  # fmt: skip


class _Need:
    """What hangs of one gel, and what of it is cut already."""

    def __init__(self) -> None:
        self.sizes: dict[tuple[float, float], tuple[int, list[str]]] = {}
        self.to_cut: dict[Size, int] = {}
        self.on_lamps: dict[Size, int] = {}
        self.ready = 0
        self.hung = 0

    def add(self, size: Size, count: int, where: str, on_lamp: bool) -> None:
        self.to_cut[size] = self.to_cut.get(size, 0) + count
        if on_lamp:
            self.on_lamps[size] = self.on_lamps.get(size, 0) + count
        if size is None:
            return
        number, places = self.sizes.get(size, (0, []))
        if where and where not in places:
            places = [*places, where]
        self.sizes[size] = (number + count, places)

    def take(self, ready: int) -> None:
        """Cover lamps with pieces of unknown size: the smallest first, so that no less is bought
        than it takes, and last those whose own size is not known either."""
        known = sorted(size for size in self.on_lamps if size is not None)
        known.sort(key=lambda size: size[0] * size[1])
        unknown: list[Size] = [None] if None in self.on_lamps else []
        for size in [*known, *unknown]:
            taken = min(ready - self.ready, self.on_lamps[size])
            self.to_cut[size] -= taken
            self.ready += taken

    @property
    def unsized(self) -> int:
        return self.to_cut.get(None, 0)

    @property
    def panes(self) -> list[Pane]:
        """What is still to be cut, in the order it was asked for."""
        return [
            Pane(0, *size)
            for size, count in self.to_cut.items()
            if size is not None
            for _ in range(count)
        ]


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    fields.refuse_unknown("ask", *FIELDS)
    spare = fields.number("spare_percent", 15.0, 0.0, 500.0) / 100.0
    overlap = length(fields, "overlap", 0.0, 1.0, 0.05)
    unit = length_unit(fields)
    needs = _needs(fields)
    ready = fields.group("ready") if fields.given("ready") else Fields({}, fields.at("ready"))
    for name, need in needs.items():
        need.take(ready.whole(name, 0, 0, 10 * MOST_PANES))
    stock = _stock(fields)
    sizes = read_stocks(fields, "rolls") or [USUAL_ROLL]
    for index, size in enumerate(sizes):
        if size.count is not None:
            raise Problem(
                f"rolls.{index}.count", Said("These are sizes to buy: leave the count out.")
            )
        if size.width <= overlap + 0.1:
            raise Problem(
                f"rolls.{index}.width_m",
                Said("The roll is too narrow for the overlap at a seam."),
            )
    gels = [
        _gel(name, need, order_gel(need.panes, stock.get(name, []), sizes, overlap, spare), unit)
        for name, need in needs.items()
    ]
    buy = [gel for gel in gels if gel["order"]]
    if buy:
        words = Said("Order {gels}", gels=joined((gel["words"] for gel in buy), "; "))
    elif any(gel["pieces"] or gel["ready"] for gel in gels):
        words = Said("Nothing to order: there is enough in stock")
    else:
        words = Said("No size is known yet") if gels else Said("Nothing hangs yet")
    unsized = [gel["gel"] for gel in gels if gel["unsized"]]
    warnings = [
        Said("No size yet for some {name}: it is not in the order.", name=name) for name in unsized
    ]
    return {"gels": gels, "words": words, "warnings": warnings}


def _needs(fields: Fields) -> dict[str, _Need]:
    needs: dict[str, _Need] = {}
    total = 0
    for group in fields.groups("hangs", most=2000):
        group.refuse_unknown(*_HANG)
        names = group.texts("gels")
        if group.given("gel"):
            names = [*names, group.text("gel", longest=80)]
        if not names:
            raise Problem(group.at("gels"), Said("Which gel hangs here? Give its name."))
        across = group.whole("panes_across", 1, 1, 50)
        down = group.whole("panes_down", 1, 1, 50)
        size = None
        if any(group.given(name) for name in ("width_m", "width_ft", "height_m", "height_ft")):
            size = (
                length(group, "width", 0.02, 100.0) / across,
                length(group, "height", 0.02, 100.0) / down,
            )
        count = group.whole("count", 1, 1, MOST_PANES) * across * down
        total += count * len(names)
        if total > 10 * MOST_PANES:
            raise Problem(
                group.at("count"), Said("That is more gel than one order can hold; divide it.")
            )
        where = group.text("where", "", longest=120)
        on_lamp = group.choice("on", ("glass", "lamp"), "glass") == "lamp"
        for name in names:
            needs.setdefault(name, _Need()).add(size, count, where, on_lamp)
        hung = group.texts("hung")
        for name in dict.fromkeys(names):
            needs[name].hung += count * min(hung.count(name), names.count(name))
    return dict(sorted(needs.items()))


def _stock(fields: Fields) -> dict[str, list[Stock]]:
    names = [group.text("gel", longest=80) for group in fields.groups("stock", most=50)]
    found: dict[str, list[Stock]] = {}
    for name, stock in zip(names, read_stocks(fields, "stock", counted=True), strict=True):
        found.setdefault(name, []).append(stock)
    return found


def _size(stock: Stock, count: int, unit: str) -> dict[str, Any]:
    words = Said(
        "{count} of {size}",
        count=count,
        size=size_words(stock.width, stock.length, unit),
    )
    return {"width_m": stock.width, "length_m": stock.length, "count": count, "words": words}


def _gel(name: str, need: _Need, order: GelOrder | None, unit: str) -> dict[str, Any]:
    answer: dict[str, Any] = {
        "gel": name,
        "pieces": [
            {
                "width_m": width,
                "height_m": height,
                "count": count,
                "where": places,
                "words": Said(
                    "{count} of {size}",
                    count=count,
                    size=piece_words(width, height, unit),
                ),
            }
            for (width, height), (count, places) in sorted(need.sizes.items())
        ],
        "unsized": need.unsized,
        "ready": need.ready,
        "hung": need.hung,
        "have": [],
        "order": [],
        "cut_m2": 0.0,
        "spare_m2": 0.0,
        "seams": 0,
    }
    if order is not None:
        answer |= {
            "have": [_size(stock, count, unit) for stock, count in order.owned],
            "order": [_size(stock, count, unit) for stock, count in order.buy],
            "cut_m2": order.plan.cut_area,
            "spare_m2": order.spare,
            "seams": order.plan.seams,
        }
    if answer["order"]:
        state = listed(size["words"] for size in answer["order"])
    elif need.panes or not need.unsized:
        state = Said("enough in stock")
    else:
        state = Said("no size yet")
    answer["words"] = Said("{gel}: {state}", gel=name, state=state)
    return answer
