"""``windows``: gel on glass as a cut list, and the neutral density for it.

Fields: ``windows`` [{``width_m``, ``height_m``, ``count`` (1), ``name``, ``panes_across``,
``panes_down`` (1)}]: a window divided into panes is covered pane by pane. ``rolls``
[{``width_m``, ``length_m``, ``count``, ``name``}], sheets too (default one roll size),
``overlap_m`` at a seam (0.05), ``margin_m`` around every piece (0), ``direction`` of the roll's
length on the glass: "any", "upright" or "across". ``gels``: the names that hang on every window
that has no ``gels`` of its own, one layer each; what hangs alike is cut together. Every length may
be given in ``_ft`` instead; ``length_unit`` "m" (default) or "ft" is the one that words use.
``nd``: {``measured_lx`` | ``measured_fc``, ``wanted_lx`` | ``wanted_fc``, ``gel_stops``} or
{``stops``}: how much neutral density the window needs beside its colour.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any, NamedTuple, cast

from evenkelvin.exposure import stops
from evenkelvin.field_names import field_name
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.neutral import neutral_plain
from evenkelvin.replies.units import length_words, piece_words, size_words
from evenkelvin.requests.kit import GEL
from evenkelvin.requests.stocks import MOST_PANES, STOCK, USUAL_ROLL, read_stocks
from evenkelvin.requests.units import (
    LIGHT,
    either,
    length,
    length_fields,
    length_unit,
    light_fields,
)
from evenkelvin.said import Said, counted, joined, listed
from evenkelvin.scouting import windows as glass
from evenkelvin.shapes import Choice, Group, Many, Number, Text, Whole

CAUTIONS = [
    Said(
        "Reach and height: work from a platform or tower made for it, never "
        "lean from a ladder or out of a window; local codes and licensed practice "
        "decide."
    ),
    Said(
        "Wind: gel and frames outside are sails. Tie them off on every side, watch the "
        "forecast, and take them down in time."
    ),
    Said(
        "Never on glass that traps heat (insulating, laminated, wired, coated or "
        "leaded) without asking the building: gel in the sun heats the pane and can "
        "crack it."
    ),
    Said("Keep exits, vents and alarms free."),
]

_WINDOW: Group = {
    "name": Text(), **length_fields("width", 0.05, 5), **length_fields("height", 0.05, 5),
    "count": Whole(1, 5), "panes_across": Whole(1, 3), "panes_down": Whole(1, 3),
    "gels": Many(GEL),
}  # fmt: skip
_NEUTRAL: Group = {
    **light_fields("measured"), **light_fields("wanted"), "gel_stops": Number(0, 20),
    "stops": Number(-20, 20), "kit": Many(GEL),
}  # fmt: skip
FIELDS: Group = {
    "windows": Many(_WINDOW), "rolls": Many(STOCK), **length_fields("overlap", 0, 1),
    **length_fields("margin", 0, 0.5), "direction": Choice(("any", "upright", "across")),
    "gels": Many(GEL), "nd": _NEUTRAL, "length_unit": Choice(("m", "ft")),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    fields.refuse_unknown("ask", *FIELDS)
    answer: dict[str, Any] = {}
    if fields.given("nd"):
        answer["nd"] = _neutral(fields.group("nd"))
    groups = fields.groups("windows", most=200)
    if groups or "nd" not in answer:
        answer |= _cut(fields, groups)
    answer["cautions"] = list(CAUTIONS)
    return answer


class _Glass(NamedTuple):
    """Panes that hang alike, the number of the window that each belongs to in it."""

    gels: list[str]
    panes: list[glass.Pane]

    @property
    def layers(self) -> int:
        return max(1, len(self.gels))


class _Cut(NamedTuple):
    """Panes that hang alike, and how their gel is cut."""

    hung: _Glass
    plan: glass.Plan

    @property
    def placed(self) -> list[glass.Piece]:
        return [placed.piece for roll in self.plan.rolls for placed in roll.placed]

    @property
    def pieces(self) -> list[glass.Piece]:
        return [*self.placed, *self.plan.left_out]


def _alike(
    groups: list[Fields], margin: float, common: list[str]
) -> tuple[list[_Glass], list[str]]:
    """Return the panes by what hangs on them, and the names of the windows."""
    found: dict[tuple[str, ...], _Glass] = {}
    names: list[str] = []
    number = 0
    for index, group in enumerate(groups):
        group.refuse_unknown(*_WINDOW)
        names.append(group.text("name", Said("window {n}", n=index + 1), longest=80))
        across = group.whole("panes_across", 1, 1, 50)
        down = group.whole("panes_down", 1, 1, 50)
        width = length(group, "width", 0.05, 100.0) / across + 2.0 * margin
        height = length(group, "height", 0.05, 100.0) / down + 2.0 * margin
        count = group.whole("count", 1, 1, MOST_PANES) * across * down
        number += count
        if number > MOST_PANES:
            raise Problem(
                group.at("count"),
                Said(
                    "That makes more than {most} panes; ask for fewer windows at a time.",
                    most=MOST_PANES,
                ),
            )
        gels = group.texts("gels") if group.given("gels") else common
        hung = found.setdefault(tuple(sorted(gels)), _Glass(gels, []))
        hung.panes.extend([glass.Pane(index, width, height)] * count)
    return list(found.values()), names


def _cut(fields: Fields, groups: list[Fields]) -> dict[str, Any]:
    if not groups:
        raise Problem(
            "windows", Said("No windows yet: give the width, height and count of each kind.")
        )
    overlap = length(fields, "overlap", 0.0, 1.0, 0.05)
    margin = length(fields, "margin", 0.0, 0.5, 0.0)
    direction = cast(
        glass.Direction, fields.choice("direction", ("any", "upright", "across"), "any")
    )
    stocks = read_stocks(fields, "rolls") or [USUAL_ROLL]
    to_hand = [index for index, stock in enumerate(stocks) if stock.count != 0]
    if not to_hand:
        raise Problem(
            "rolls.0.count" if len(stocks) == 1 else "rolls",
            Said("There is no roll to cut from: every count is 0."),
        )
    alike, names = _alike(groups, margin, fields.texts("gels"))
    found = []
    for hung in alike:
        plan = glass.cut_list(hung.panes, stocks, overlap, direction)
        if plan is None:
            raise Problem(
                # Of several none is to blame more than another.
                f"rolls.{to_hand[0]}.width_m" if len(to_hand) == 1 else "rolls",
                Said(
                    "The roll is too small for this much glass with the overlap: take a wider "
                    "roll or less overlap, or divide the windows."
                ),
            )
        found.append(_Cut(hung, plan))
    return _answer(found, names, direction, length_unit(fields))


def _answer(found: list[_Cut], names: list[str], direction: str, unit: str) -> dict[str, Any]:
    rolls = [
        {
            "gels": cut.hung.gels,
            "width_m": roll.stock.width,
            "length_m": roll.stock.length,
            "used_m": roll.used,
            "left_m": max(0.0, roll.stock.length - roll.used),
            "lengths_m": [level.along for level in roll.levels],
            "words": Said(
                "{size}, {length} used",
                size=size_words(roll.stock.width, roll.stock.length, unit),
                length=length_words(roll.used, unit),
            ),
            "pieces": [
                {
                    "window": placed.piece.window,
                    "name": names[placed.piece.window],
                    "strip": placed.piece.strip,
                    "strips": placed.piece.strips,
                    "at_across_m": placed.at_across,
                    "at_along_m": placed.at_along,
                    "across_m": placed.piece.across,
                    "along_m": placed.piece.along,
                    "words": piece_words(placed.piece.across, placed.piece.along, unit),
                }
                for placed in roll.placed
            ],
        }
        for cut in found
        for roll in cut.plan.rolls
    ]
    opened = [(cut, roll.stock) for cut in found for roll in cut.plan.rolls]
    sizes = list(dict.fromkeys((stock.width, stock.length) for _, stock in opened))
    needed = [
        {
            "width_m": width,
            "length_m": along,
            "rolls": sum(
                cut.hung.layers
                for cut, stock in opened
                if (stock.width, stock.length) == (width, along)
            ),
            "words": size_words(width, along, unit),
        }
        for width, along in sizes
    ]
    offcuts = sum(cut.plan.offcuts for cut in found)
    used = sum(cut.plan.used_area for cut in found)
    percent = 100.0 * offcuts / used if used else 0.0
    seams = sum(cut.plan.seams for cut in found)
    left_out = [piece for cut in found for piece in cut.plan.left_out]
    layers = max(cut.hung.layers for cut in found)
    return {
        "cuts": _cuts(found, names, unit),
        "rolls": rolls,
        "layers": layers,
        "gels": list(dict.fromkeys(gel for cut in found for gel in cut.hung.gels)),
        "alike": len(found) == 1,
        "needed": needed,
        "seams": seams,
        "waste": {"area_m2": offcuts, "percent": percent},
        "left_out": _cuts(
            [_Cut(cut.hung, replace(cut.plan, rolls=())) for cut in found], names, unit
        ),
        "bound": _bound(found[0], unit) if len(found) == 1 else None,
        "used_m": sum(roll.used for cut in found for roll in cut.plan.rolls),
        "words": _words(needed, seams, layers if len(found) == 1 else 1, percent),
        "warnings": _warnings(len(left_out), seams, direction),
    }


def _bound(cut: _Cut, unit: str) -> dict[str, Any] | None:
    if not cut.plan.rolls:
        return None
    first = cut.plan.rolls[0].stock
    along, least = glass.area_bound(cut.pieces, first)
    return {
        "length_m": along,
        "rolls": least,
        "width_m": first.width,
        "words": Said(
            "{length} of that width by area alone, {rolls}",
            length=length_words(along, unit),
            rolls=counted(least * cut.hung.layers, "{n} roll", "{n} rolls"),
        ),
    }


def _cuts(cut: list[_Cut], names: list[str], unit: str) -> list[dict[str, Any]]:
    """Return pieces as a list to cut by: equal ones of one window together."""
    found: dict[tuple[int, float, float], int] = {}
    hangs: dict[int, list[str]] = {}
    for each in cut:
        for piece in each.pieces:
            small, large = sorted((round(piece.across, 4), round(piece.along, 4)))
            key = (piece.window, small, large)
            found[key] = found.get(key, 0) + 1
            hangs[piece.window] = each.hung.gels
    return [
        {
            "window": window,
            "name": names[window],
            "gels": hangs[window],
            "width_m": small,
            "length_m": large,
            "count": n,
            "words": piece_words(small, large, unit),
        }
        for (window, small, large), n in sorted(found.items())
    ]


def _words(needed: list[dict[str, Any]], seams: int, layers: int, percent: float) -> Said:
    parts: list[Said] = []
    if needed:
        bought = listed(
            counted(size["rolls"], "{n} roll of {size}", "{n} rolls of {size}", size=size["words"])
            for size in needed
        )
    else:
        bought = Said("Nothing fits")
    if layers > 1:
        bought = Said("{rolls}, {layers} layers", rolls=bought, layers=layers)
    parts.append(bought)
    parts.append(counted(seams, "{n} seam", "{n} seams") if seams else Said("no seam"))
    parts.append(Said("{percent:.0f} % offcuts", percent=percent))
    return joined(parts, "; ")


def _warnings(left_out: int, seams: int, direction: str) -> list[Said]:
    found = []
    if left_out:
        found.append(
            counted(
                left_out,
                "Not enough roll: {n} piece is left to cut.",
                "Not enough roll: {n} pieces are left to cut.",
            )
        )
    if seams:
        found.append(
            Said("Hide seams behind a glazing bar where there is one, and tape them flat.")
        )
    if seams and direction != "any":
        found.append(Said("Another direction of the gel may need fewer seams."))
    return found


def _neutral(fields: Fields) -> dict[str, Any]:
    fields.refuse_unknown(*_NEUTRAL)
    measured = either(fields, "measured", LIGHT, stops.LIGHT_BOUNDS)
    wanted = either(fields, "wanted", LIGHT, stops.LIGHT_BOUNDS)
    colour = fields.number("gel_stops", 0.0, 0.0, 20.0)
    if fields.given("stops"):
        if measured is not None or wanted is not None:
            raise Problem(fields.at("stops"), Said("Give stops, or what is measured and wanted."))
        over = fields.number("stops", low=-20.0, high=20.0) - colour
    elif measured is None or wanted is None:
        missing = "measured_lx" if measured is None else "wanted_lx"
        raise Problem(
            fields.at(missing),
            Said("{Name} is missing: the light at the window.", Name=field_name(missing)),
        )
    else:
        over = stops.ratio_stops(measured, wanted) - colour
    return neutral_plain(over, fields.texts("kit") if fields.given("kit") else None)
