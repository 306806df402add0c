"""The same light now against then.

``{"ask": "since", "readings": [R + {"at", "stage"?, "id"?}…], "tolerance"?}``
or ``{"ask": "since", "book": text | plain, "lights": [ids], "tolerance"?}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.asks.book_plain import book_field, state_plain
from evenkelvin.fields import Fields
from evenkelvin.interchange.book import find, moment, things
from evenkelvin.interchange.setup_log import ReadingLog, light_log, states
from evenkelvin.lights.drift import drift, drift_words, stops_since
from evenkelvin.lights.tolerance import plain, read_tolerance, verdict
from evenkelvin.problem import Problem


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with one series for each stage, since bare and gelled readings do not compare.

    ``series``: ``[{"stage", "points"}]``, points the oldest first: ``{"id", "at", "hours"`` since
    the first, ``"x", "y", "cct_K", "duv", "mired", "illuminance_lx", "exposure_lx_s", "drift"}``
    with ``drift``: ``{"mired"`` (+ warmer), ``"duv"`` (+ greener), ``"delta_uv", "steps",
    "verdict", "stops"`` (+ brighter), ``"words"}`` against the first point of the series; None
    where a reading does not say. Several ``lights`` of a book, such as one of today and one of
    the pick-up, make one series.
    """
    fields.refuse_unknown("ask", "readings", "book", "lights", "tolerance")
    radius = read_tolerance(fields)
    logs = _from_book(fields) if fields.given("book") else _from_readings(fields)
    logs.sort(key=lambda each: moment(each.entry["at"]))
    by_stage: dict[str, list[ReadingLog]] = {}
    for log in logs:
        by_stage.setdefault(str(log.data.get("stage") or "bare"), []).append(log)
    series = [
        {"stage": stage, "points": [_point(each, group[0], radius) for each in group]}
        for stage, group in by_stage.items()
    ]
    return {"series": series, "tolerance": plain(radius)}


def _from_readings(fields: Fields) -> list[ReadingLog]:
    groups = fields.groups("readings", most=5000)
    if not groups:
        raise Problem(fields.at("readings"), "There is no reading of this light yet.")
    raws = fields.items("readings")
    logs = []
    for group, raw, state in zip(groups, raws, states(raws), strict=True):
        at = group.text("at", longest=40)
        try:
            moment(at)
        except Problem as problem:
            raise Problem(group.at("at"), problem.message) from None
        logs.append(ReadingLog({"id": group.text("id", ""), "at": at, "data": raw}, state))
    return logs


def _from_book(fields: Fields) -> list[ReadingLog]:
    found = things(book_field(fields).entries)
    logs: list[ReadingLog] = []
    for id_ in fields.texts("lights"):
        logs += light_log(found, find(found, id_, ("light",))).readings
    if not logs:
        raise Problem(fields.at("lights"), "There is no reading of this light yet.")
    return logs


def _point(now: ReadingLog, then: ReadingLog, radius: float) -> dict[str, Any]:
    moved, stops = drift(now.state, then.state), stops_since(now.state, then.state)
    return {
        "id": now.entry["id"],
        "at": now.entry["at"],
        "hours": (moment(now.entry["at"]) - moment(then.entry["at"])) / 3600.0,
        **state_plain(now.state),
        "drift": {
            "mired": moved.mired if moved else None,
            "duv": moved.duv if moved else None,
            "delta_uv": moved.delta_uv if moved else None,
            "steps": moved.steps if moved else None,
            "verdict": verdict(moved.steps, radius) if moved else None,
            "stops": stops,
            "words": drift_words(moved, stops),
        },
    }
