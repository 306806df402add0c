"""Rolls and sheets of gel, as a question states them."""

from __future__ import annotations

from evenkelvin.fields import Fields
from evenkelvin.requests.kit import GEL
from evenkelvin.requests.units import length, length_fields
from evenkelvin.scouting import windows as glass
from evenkelvin.shapes import Group, Text, Whole

#: A roll of 48 in by 25 ft (common practice, no source).
USUAL_ROLL = glass.Stock(1.22, 7.62)


#: Most panes of one cut list.
MOST_PANES = 600

#: A size of roll or sheet.
STOCK: Group = {
    "gel": GEL, **length_fields("width", 0.05, 20.0), **length_fields("length", 0.05, 500.0),
    "count": Whole(0, 20), "name": Text(),
}  # fmt: skip


def read_stocks(fields: Fields, name: str, counted: bool = False) -> list[glass.Stock]:
    """Return sizes of rolls and sheets; with ``counted`` each must say how many there are."""
    found = []
    for group in fields.groups(name, most=50):
        group.refuse_unknown(*STOCK)
        counts = counted or group.given("count")
        count = group.whole("count", 1, 0, 10_000) if counts else None
        width = length(group, "width", 0.05, 20.0)
        along = length(group, "length", 0.05, 500.0)
        found.append(glass.Stock(width, along, count))
    return found
