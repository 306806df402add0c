"""Which lamps to dim so that a surface is even, and which to move.

``{"ask": "trim", "points": [P…], "lamps": [{"name", "points": [level…] | "without": [level…],
"dimmer_now"?}…], "unit"?: "lx" | "fc", "settings"?: "steady" | "most_even", "aim"?,
"within_stops"?, "say"?}`` with points as in ask even, read with all lamps on. A lamp's ``points``
are the levels that it gives alone, ``without`` those with all lamps but this one, both in
``unit`` and in the order of the points.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.data import Floats
from evenkelvin.exposure.stops import LIGHT_BOUNDS, LX_PER_FC
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.sweep import evenness_plain, evenness_words, point_words
from evenkelvin.requests.camera import SAYINGS
from evenkelvin.requests.sweep import (
    AIM,
    POINT,
    Surface,
    first_problem,
    read_aim,
    read_surface,
    read_within,
)
from evenkelvin.said import Said, listed
from evenkelvin.shapes import Choice, Group, Many, Number, Text
from evenkelvin.sweep.evenness import Evenness, way_words
from evenkelvin.sweep.trimming import Rig, Trim, trim

MOST_LAMPS = 24
_SETTINGS = ("steady", "most_even")
_UNITS = ("lx", "fc")
_LEVELS = Many(Number(0.0, LIGHT_BOUNDS[1]))
_LAMP: Group = {
    "name": Text(), "points": _LEVELS, "without": _LEVELS, "dimmer_now": Number(1, 100),
}  # fmt: skip
FIELDS: Group = {
    "points": Many(POINT), "lamps": Many(_LAMP), "unit": Choice(_UNITS),
    "settings": Choice(_SETTINGS), **AIM,
}  # fmt: skip
#: Lamps together may read this much less than the sum of each alone before it is said.
_TOO_MUCH = 0.1
#: Moving the light across the whole surface is worth telling from so many stops on.
_WORTH_MOVING = 0.3
_MOVES = 2


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the dimmers, how even the surface then is, and what to move.

    ``dimmers`` [{"name", "percent", "setting_percent" | null, "part", "idle"}]: percent of the
    lamp's light as read, what that is on its dimmer where ``dimmer_now`` was given, its part of
    the light on the surface, and whether it adds nothing anywhere. "steady" settings stop short of
    the least spread, where the rest would hang on the scatter of every reading; "most_even" go all
    the way. ``now`` and ``then`` are the figures of ask even, ``then`` with ``words`` and
    ``points`` [{"lx", "stops", "holds", "words"}]; ``least_spread_stops`` is the least that dimming
    can leave, ``cost_stops`` the light lost on average, ``ambient_part`` what is there without the
    lamps. ``moves`` (at most two, where dimming alone does not hold) [{"name", "across", "up",
    "gain_stops", "words"}] are
    the lamps whose light helps most by moving, and the way: gain for each tenth of the surface.
    """
    fields.refuse_unknown("ask", *FIELDS)
    say = fields.choice("say", SAYINGS, "thirds")
    steady = fields.choice("settings", _SETTINGS, "steady") == "steady"
    surface = read_surface(fields)
    if surface.problems:
        raise first_problem(fields, surface.problems)
    within = read_within(fields)
    names, each, settings = _read_lamps(fields, surface)
    rig = Rig(surface.places, surface.levels, each)
    try:
        found = trim(rig, steady=steady)
    except ValueError:
        raise Problem(
            fields.at("lamps"),
            Said("No lamp lights one of the points: read each lamp there, or leave the point out."),
        ) from None
    now = Evenness(surface.levels, read_aim(fields, surface), within)
    stated = isinstance(fields.raw("aim"), dict) and not fields.group("aim").given("point")
    # What is there without the lamps cannot be turned down with them.
    lower = stated and not rig.ambient.any()
    levels, dimmers = _to_aim(found, now.aim) if lower else (found.levels, found.dimmers)
    then = Evenness(levels, now.aim if stated else float(levels.mean()), within)
    moves = [] if all(then.holds) else _moves(names, found)
    return {
        "unit": surface.unit,
        "within_stops": within,
        "dimmers": [
            {
                "name": name,
                "percent": 100.0 * float(dimmer),
                "setting_percent": None if setting is None else setting * float(dimmer),
                "part": float(np.mean(each[:, lamp] / surface.levels)),
                "idle": lamp in rig.idle,
            }
            for lamp, (name, dimmer, setting) in enumerate(
                zip(names, dimmers, settings, strict=True)
            )
        ],
        "now": evenness_plain(now),
        "then": {
            **evenness_plain(then),
            "words": evenness_words(then, surface.places.tolist(), say),
            "points": [
                {"lx": float(level), "stops": float(off), "holds": holds,
                 "words": point_words(float(off), within, say)}
                for level, off, holds in zip(levels, then.stops, then.holds, strict=True)
            ],
        },
        "least_spread_stops": found.least_spread_stops,
        "cost_stops": float(np.log2(surface.levels.mean() / levels.mean())),
        "ambient_part": float(np.mean(rig.ambient / surface.levels)),
        "moves": moves,
        "words": _words(names, rig, now, then, moves, surface, say),
        "warnings": _warnings(rig),
    }  # fmt: skip


def _read_lamps(fields: Fields, surface: Surface) -> tuple[list[str], Floats, list[float | None]]:
    """Return the lamps' names, what each adds at each point (n, k), and where they are dimmed."""
    groups = fields.groups("lamps", most=MOST_LAMPS)
    if not groups:
        raise Problem(
            fields.at("lamps"),
            Said("Read each lamp alone, or all but one of them, to know what it does here."),
        )
    size = LX_PER_FC if fields.choice("unit", _UNITS, "lx") == "fc" else 1.0
    names: list[str] = []
    columns, settings = [], []
    for index, group in enumerate(groups):
        group.refuse_unknown(*_LAMP)
        names.append(group.text("name", "", longest=200) or Said("lamp {n}", n=index + 1))
        way = "without" if group.given("without") else "points"
        if group.given("without") and group.given("points"):
            raise Problem(
                group.at("points"),
                Said("Give {name} alone, or the others without it, not both.", name=names[-1]),
            )
        levels = np.array(group.numbers(way)) * size
        if len(levels) != len(surface.levels):
            raise Problem(
                group.at(way),
                Said(
                    "{name} has {count} readings; the surface has {points} points.",
                    name=names[-1],
                    count=len(levels),
                    points=len(surface.levels),
                ),
            )
        bad = np.flatnonzero((levels < 0.0) | (levels > LIGHT_BOUNDS[1]))
        if len(bad):
            raise Problem(
                f"{group.at(way)}.{bad[0]}",
                Said("{name}: a level is zero or more.", name=names[-1]),
            )
        alone = surface.levels - levels if way == "without" else levels
        columns.append(np.maximum(alone, 0.0))
        settings.append(
            group.number("dimmer_now", low=1.0, high=100.0) if group.given("dimmer_now") else None
        )
    return names, np.column_stack(columns), settings


def _to_aim(found: Trim, aim: float) -> tuple[Floats, Floats]:
    """Return levels and dimmers turned down together to a level, where they are above it."""
    middle = float(np.sqrt(found.levels.min() * found.levels.max()))
    part = min(1.0, aim / middle)
    return found.levels * part, found.dimmers * part


def _moves(names: list[str], found: Trim) -> list[dict[str, Any]]:
    gains = np.linalg.norm(found.moves, axis=1)
    best = [k for k in np.argsort(-gains)[:_MOVES] if gains[k] > _WORTH_MOVING]
    return [
        {
            "name": names[lamp],
            "across": float(found.moves[lamp, 0] / gains[lamp]),
            "up": float(found.moves[lamp, 1] / gains[lamp]),
            "gain_stops": float(gains[lamp]) / 10.0,
            "words": Said(
                "{name} toward the {way}",
                name=names[lamp],
                way=way_words(float(found.moves[lamp, 0]), float(found.moves[lamp, 1])),
            ),
        }
        for lamp in best
    ]


def _words(
    names: list[str], rig: Rig, now: Evenness, then: Evenness, moves: list[dict[str, Any]],
    surface: Surface, say: str,
) -> list[Said]:  # fmt: skip
    words = []
    if all(now.holds):
        words.append(Said("It holds as it is: the lamps may stay as they are."))
    if then.spread_stops < now.spread_stops - 0.05:
        words.append(
            Said(
                "Dimmed so, {then:.1f} stops lie between the darkest and the brightest point, "
                "where it was {now:.1f}.",
                then=then.spread_stops,
                now=now.spread_stops,
            )
        )
    if not all(then.holds):
        words.append(evenness_words(then, surface.places.tolist(), say))
    if moves:
        words.append(
            Said(
                "Dimming alone does not get there. Move {moves}, then read again.",
                moves=listed(move["words"] for move in moves),
            )
        )
    if rig.idle:
        words.append(Said("Adds nothing here: {lamps}.", lamps=listed(names[k] for k in rig.idle)))
    return words


def _warnings(rig: Rig) -> list[Said]:
    if rig.missing_part > _TOO_MUCH:
        return [
            Said(
                "The lamps alone add up to {part:.0%} more than all of them together: read them "
                "again, or see whether one was moved.",
                part=rig.missing_part,
            )
        ]
    return []
