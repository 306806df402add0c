"""``windows``: gel on glass as a cut list, and the neutral density for it.

Fields: ``windows`` [{``width_m``, ``height_m``, ``count`` (1), ``name``, ``panes_across``,
``panes_down`` (1)}]: a window divided into panes is covered pane by pane. ``rolls``
[{``width_m``, ``length_m``, ``count``, ``name``}], sheets too (default one roll size),
``overlap_m`` at a seam (0.05), ``margin_m`` around every piece (0), ``direction`` of the roll's
length on the glass: "any", "upright" or "across". ``gels``: the names that hang on every window,
one layer each. Every length may be given in ``_ft`` instead; ``length_unit`` "m" (default) or
"ft" is the one that words use.
``nd``: {``measured_lx`` | ``measured_fc``, ``wanted_lx`` | ``wanted_fc``, ``gel_stops``} or
{``stops``}: how much neutral density the window needs beside its colour.
"""

from __future__ import annotations

from typing import Any, cast

from evenkelvin.exposure import stops
from evenkelvin.field_names import field_name
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
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
        "Reach and height: work from a platform or tower that is made for it, never "
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
}  # fmt: skip
_NEUTRAL: Group = {
    **light_fields("measured"), **light_fields("wanted"), "gel_stops": Number(0, 20),
    "stops": Number(-20, 20),
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


def _panes(groups: list[Fields], margin: float) -> tuple[list[glass.Pane], list[str]]:
    panes: list[glass.Pane] = []
    names = []
    for index, group in enumerate(groups):
        group.refuse_unknown(*_WINDOW)
        names.append(group.text("name", Said("window {n}", n=index + 1), longest=80))
        across = group.whole("panes_across", 1, 1, 50)
        down = group.whole("panes_down", 1, 1, 50)
        width = length(group, "width", 0.05, 100.0) / across + 2.0 * margin
        height = length(group, "height", 0.05, 100.0) / down + 2.0 * margin
        number = group.whole("count", 1, 1, MOST_PANES) * across * down
        if len(panes) + number > MOST_PANES:
            raise Problem(
                group.at("count"),
                Said(
                    "That makes more than {most} panes; ask for fewer windows at a time.",
                    most=MOST_PANES,
                ),
            )
        panes += [glass.Pane(index, width, height)] * number
    return panes, names


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
    panes, names = _panes(groups, margin)
    gels = fields.texts("gels")
    plan = glass.cut_list(panes, stocks, overlap, direction)
    if plan is None:
        raise Problem(
            # Of several none is to blame more than another.
            f"rolls.{to_hand[0]}.width_m" if len(to_hand) == 1 else "rolls",
            Said(
                "The roll is too small for this much glass beside the overlap: take a wider "
                "roll or less overlap, or divide the windows."
            ),
        )
    return _answer(plan, names, gels, direction, length_unit(fields))


def _answer(
    plan: glass.Plan, names: list[str], gels: list[str], direction: str, unit: str
) -> dict[str, Any]:
    layers = max(1, len(gels))
    pieces = [placed.piece for roll in plan.rolls for placed in roll.placed]
    rolls = [
        {
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
        for roll in plan.rolls
    ]
    sizes = list(dict.fromkeys((roll.stock.width, roll.stock.length) for roll in plan.rolls))
    needed = [
        {
            "width_m": width,
            "length_m": along,
            "rolls": layers
            * sum((r.stock.width, r.stock.length) == (width, along) for r in plan.rolls),
            "words": size_words(width, along, unit),
        }
        for width, along in sizes
    ]
    answer: dict[str, Any] = {
        "cuts": _cuts([*pieces, *plan.left_out], names, unit),
        "rolls": rolls,
        "layers": layers,
        "gels": gels,
        "needed": needed,
        "seams": plan.seams,
        "waste": {
            "area_m2": plan.offcuts,
            "percent": 100.0 * plan.offcuts / plan.used_area if plan.used_area else 0.0,
        },
        "left_out": _cuts(list(plan.left_out), names, unit),
    }
    if plan.rolls:
        first = plan.rolls[0].stock
        along, least = glass.area_bound([*pieces, *plan.left_out], first)
        answer["bound"] = {
            "length_m": along,
            "rolls": least,
            "width_m": first.width,
            "words": Said(
                "{length} of that width by area alone, {rolls}",
                length=length_words(along, unit),
                rolls=counted(least * layers, "{n} roll", "{n} rolls"),
            ),
        }
    else:
        answer["bound"] = None
    answer["used_m"] = sum(roll.used for roll in plan.rolls)
    answer["words"] = _words(needed, plan, layers, answer["waste"]["percent"])
    answer["warnings"] = _warnings(plan, direction)
    return answer


def _cuts(pieces: list[glass.Piece], names: list[str], unit: str) -> list[dict[str, Any]]:
    """Return pieces as a list to cut by: equal ones of one window together."""
    found: dict[tuple[int, float, float], int] = {}
    for piece in pieces:
        small, large = sorted((round(piece.across, 4), round(piece.along, 4)))
        key = (piece.window, small, large)
        found[key] = found.get(key, 0) + 1
    return [
        {
            "window": window,
            "name": names[window],
            "width_m": small,
            "length_m": large,
            "count": n,
            "words": piece_words(small, large, unit),
        }
        for (window, small, large), n in sorted(found.items())
    ]


def _words(needed: list[dict[str, Any]], plan: glass.Plan, layers: int, percent: float) -> Said:
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
    parts.append(counted(plan.seams, "{n} seam", "{n} seams") if plan.seams else Said("no seam"))
    parts.append(Said("{percent:.0f} % offcuts", percent=percent))
    return joined(parts, "; ")


def _warnings(plan: glass.Plan, direction: str) -> list[Said]:
    found = []
    if plan.left_out:
        found.append(
            counted(
                len(plan.left_out),
                "The rolls do not suffice: {n} piece left over.",
                "The rolls do not suffice: {n} pieces left over.",
            )
        )
    if plan.seams:
        found.append(
            Said("Hide seams behind a glazing bar where there is one, and tape them flat.")
        )
    if plan.seams and direction != "any":
        found.append(Said("Another direction of the gel may need fewer seams."))
    return found


def _neutral(fields: Fields) -> dict[str, Any]:
    from evenkelvin.filters.kit import NEUTRALS

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
    chosen = glass.neutral_for(over, NEUTRALS)
    takes = sum(chosen) / glass.DENSITY_PER_STOP
    left = over - takes
    gels = [f"ND {density:g}" for density in chosen]
    amount = stops.amount_in_thirds(left)
    if abs(left) < 1 / 6:
        rest = Said("right")
    elif left > 0:
        rest = Said("{stops} over", stops=amount)
    else:
        rest = Said("{stops} under", stops=amount)
    return {
        "stops": over,
        "gels": gels,
        "takes_stops": takes,
        "left_stops": left,
        "words": Said(
            "{gels}, then {rest}", gels=joined(gels, " + ") if gels else Said("No ND"), rest=rest
        ),
    }
