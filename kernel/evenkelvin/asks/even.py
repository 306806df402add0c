"""How even the light on a surface is: a green screen, a cyc, a backdrop, a table.

``{"ask": "even", "points": [P…], "aim"?: {"illuminance_lx"|"illuminance_fc"} | "mean" |
{"point": index}, "within_stops"?: 1/3, "say"?: "thirds" | "tenths"}`` with P
``{"across": 0…1, "up": 0…1, R or "illuminance_lx" | "illuminance_fc" | "exposure_lx_s" |
"luminance_cd_m2"}``, from the lower left corner.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.fields import Fields
from evenkelvin.replies.each import unusable_plain
from evenkelvin.replies.sweep import contours_plain, evenness_plain, evenness_words, point_words
from evenkelvin.requests.camera import SAYINGS
from evenkelvin.requests.each import name_of
from evenkelvin.requests.sweep import AIM, POINT, Surface, read_aim, read_surface, read_within
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Many
from evenkelvin.sweep.evenness import Evenness, contours, widest_pair

FIELDS: Group = {"points": Many(POINT), **AIM}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the figures of the surface, each point against the aim, and the map between.

    ``least_lx``, ``mean_lx`` and ``greatest_lx`` are in ``unit`` ("lx", "lx s" or "cd/m2");
    ``uniformity`` is the least over the mean, U0 of EN 12464-1. ``points`` are in the question's
    order: {"problem": null, "stops", "holds", "words"}, or name and problem. ``colour`` (null for
    fewer than two colours) is {"steps", "pair"}: the widest difference, and between which points.
    ``map`` (null for points on one line) has the contour lines in stops against the aim:
    {"across", "up", "step_stops", "lines": [{"stops", "words", "paths"}]}. ``worst`` is the point
    farthest off.
    """
    fields.refuse_unknown("ask", *FIELDS)
    say = fields.choice("say", SAYINGS, "thirds")
    surface = read_surface(fields)
    aim = read_aim(fields, surface)
    even = Evenness(surface.levels, aim, read_within(fields))
    stops = even.stops
    drawn = contours(surface.places, stops)
    return {
        "unit": surface.unit,
        **evenness_plain(even),
        "aim_lx": aim,
        "within_stops": even.within_stops,
        "points": _points(fields, surface, even, say),
        "worst": surface.indices[int(np.argmax(np.abs(stops)))],
        "colour": _colour(surface),
        "map": contours_plain(drawn, say) if drawn else None,
        "words": evenness_words(even, surface.places.tolist(), say),
    }


def _points(fields: Fields, surface: Surface, even: Evenness, say: str) -> list[dict[str, Any]]:
    found = {
        index: {
            "problem": None,
            "stops": off,
            "holds": holds,
            "words": point_words(off, even.within_stops, say),
        }
        for index, off, holds in zip(surface.indices, even.stops.tolist(), even.holds, strict=True)
    }
    for index, problem in surface.problems.items():
        group = fields.groups("points")[index]
        name = name_of(group, index) if group.given("name") else Said("point {n}", n=index + 1)
        found[index] = unusable_plain(name, problem)
    return [found[index] for index in sorted(found)]


def _colour(surface: Surface) -> dict[str, Any] | None:
    known = np.flatnonzero(~np.isnan(surface.uv[:, 0]))
    if len(known) < 2:
        return None
    steps, pair = widest_pair(surface.uv[known])
    return {"steps": steps, "pair": [surface.indices[known[k]] for k in pair]}
