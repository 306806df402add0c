"""The same light now against then.

``{"ask": "since", "readings": [R + {"at", "stage"?, "id"?, "target"?, "meant"?}…],
"tolerance"?}``
or ``{"ask": "since", "book": text | plain, "lights": [ids], "tolerance"?}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.entries import moment
from evenkelvin.book.given import book_field
from evenkelvin.book.meaning import find, places, things
from evenkelvin.book.meant import Aim, Aims
from evenkelvin.book.setup_log import ReadingLog, light_log, states
from evenkelvin.fields import Fields
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.lights.drift import drift, drift_words, stops_since
from evenkelvin.lights.meant import meant_words
from evenkelvin.lights.tolerance import verdict
from evenkelvin.problem import Problem
from evenkelvin.replies.book import state_plain
from evenkelvin.replies.fix import offset_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.requests.meant import LoggedTargets
from evenkelvin.requests.reading import READING
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Said
from evenkelvin.shapes import Checked, Group, Many, Text

_LOGGED: Group = {**READING, "id": Text(), "at": Text(("2026-10-27T17:04:00Z",))}
FIELDS: Group = {
    "readings": Many(_LOGGED), "book": Checked(), "lights": Many(Text()), **TOLERANCE,
}  # fmt: skip

#: A reading, and what its light is meant to be.
_Aimed = tuple[ReadingLog, Aim]


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with one series for each pack of gels, since bare and gelled do not compare.

    - ``series``: ``[{"pack": [gel names], "points"}]``, points the oldest first
    - each point: ``id``, ``stage``, ``at``, ``hours`` since the first of the series, ``dialled``,
      ``dimmer``, ``x``, ``y``, ``cct_K``, ``duv``, ``mired``, ``illuminance_lx``,
      ``exposure_lx_s``, ``drift`` against the first of the series, and ``standing``
    - ``drift``: ``mired`` (+ warmer), ``duv`` (+ greener), ``delta_uv``, ``steps``, ``verdict``,
      ``stops`` (+ brighter), ``words``; None where a reading does not say
    - ``greatest``: places among the points, in time, of the one that went farthest in colour and
      the one that went farthest in light; one where they are the same, none of a single point
    - ``standing``: against what the light is meant to be beside the ``target`` that its reading
      has: ``meant`` in words, ``target``, ``offset`` as in fix, ``verdict``; None without a target.
      A light that is meant as found has no verdict at all, in ``drift`` neither

    Several ``lights`` of a book, such as today's and that of the pick-up, go into one series.
    """
    fields.refuse_unknown("ask", *FIELDS)
    radius = read_tolerance(fields)
    logs = _from_book(fields) if fields.given("book") else _from_readings(fields)
    by_pack: dict[tuple[str, ...], list[_Aimed]] = {}
    for log, aim in logs:
        pack = tuple(sorted(map(str, log.data.get("pack") or [])))
        by_pack.setdefault(pack, []).append((log, aim))
    series = []
    for pack, group in by_pack.items():
        points = [_point(log, group[0][0], aim, radius) for log, aim in group]
        series.append({"pack": list(pack), "points": points, "greatest": _greatest(points)})
    return {"series": series, "tolerance": tolerance_plain(radius)}


def _greatest(points: list[dict[str, Any]]) -> list[int]:
    """Return where a light was farthest from its first reading: a day is more than its end."""
    found = set()
    for name in ("steps", "stops"):
        known = [place for place, each in enumerate(points) if each["drift"][name] is not None]
        if len(known) > 1:
            # Of equals the latest.
            found.add(max(known, key=lambda place: (abs(points[place]["drift"][name]), place)))
    return sorted(found)


def _from_readings(fields: Fields) -> list[_Aimed]:
    groups = fields.groups("readings", most=5000)
    if not groups:
        raise Problem(fields.at("readings"), Said("There is no reading of this light yet."))
    raws = fields.items("readings")
    targets = LoggedTargets(nominal_kit())
    logs: list[_Aimed] = []
    for group, raw, state in zip(groups, raws, states(raws), strict=True):
        at = group.text("at", longest=40)
        try:
            moment(at)
        except Problem as problem:
            raise Problem(group.at("at"), problem.message) from None
        log = ReadingLog({"id": group.text("id", ""), "at": at, "data": raw}, state)
        logs.append((log, Aim(*targets.of(raw, raw.get("target")), {})))
    return sorted(logs, key=lambda each: moment(each[0].at))


def _from_book(fields: Fields) -> list[_Aimed]:
    found = things(book_field(fields).entries)
    aims = Aims(found)
    logs: list[_Aimed] = []
    for id_ in fields.texts("lights"):
        light = find(found, id_, ("light",))
        for log in light_log(found, light).readings:
            logs.append((log, aims.of(light, log.data.get("target"))))
    if not logs:
        raise Problem(fields.at("lights"), Said("There is no reading of this light yet."))
    times = places([log.entry for log, _ in logs])
    return sorted(logs, key=lambda each: times[each[0].entry["id"]])


def _standing(now: ReadingLog, aim: Aim, radius: float) -> dict[str, Any] | None:
    if aim.meant is None or aim.target is None or not now.has_colour:
        return None
    x, y = aim.target.xy
    away = drift(now.state, states([{"x": float(x), "y": float(y)}])[0])
    if away is None:
        return None
    return {
        "meant": meant_words(aim.meant),
        "target": white(aim.target.xy),
        "offset": offset_plain(away, aim.meant.way == "white"),
        "verdict": verdict(away.steps, radius),
    }


def _point(now: ReadingLog, then: ReadingLog, aim: Aim, radius: float) -> dict[str, Any]:
    judged = aim.meant is None or aim.meant.judged
    moved, stops = drift(now.state, then.state), stops_since(now.state, then.state)
    return {
        "id": now.entry["id"],
        "stage": now.data.get("stage"),
        "dialled": now.data.get("dialled"),
        "dimmer": now.data.get("dimmer"),
        "at": now.at,
        "hours": (moment(now.at) - moment(then.at)) / 3600.0,
        **state_plain(now.state),
        "drift": {
            "mired": moved.mired if moved else None,
            "duv": moved.duv if moved else None,
            "delta_uv": moved.delta_uv if moved else None,
            "steps": moved.steps if moved else None,
            "verdict": verdict(moved.steps, radius) if moved and judged else None,
            "stops": stops,
            "words": drift_words(moved, stops),
        },
        "standing": _standing(now, aim, radius),
    }
