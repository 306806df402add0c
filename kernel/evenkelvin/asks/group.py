"""Which readings of a folder of files belong together.

``{"ask": "group", "readings": [{"title"?, "at"?}…], "setups"?: "one" | "title" | "time",
"untitled"?: "each" | "time" | "one"}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.book.entries import moment
from evenkelvin.fields import Fields
from evenkelvin.interchange.grouping import (
    SETUPS,
    UNTITLED,
    Logged,
    Setup,
    grouped,
    proposed,
    stretches,
)
from evenkelvin.problem import Problem
from evenkelvin.shapes import Choice, Group, Many, Text

_LOGGED: Group = {"title": Text(("Bow window",)), "at": Text(("2026-10-27T17:04:00Z",))}
FIELDS: Group = {
    "readings": Many(_LOGGED), "setups": Choice(SETUPS), "untitled": Choice(UNTITLED),
}  # fmt: skip
_MOST = 5000


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the ``groups``, each a setup: ``title`` of all its readings, or "" where they
    have several; ``from`` and ``to``, its first and last time; ``stretch``, its number among those
    that pauses part, or null; and ``lights``, each with a ``title`` and the places of its
    ``readings`` among those asked about, in time.

    ``setups`` is how they begin (as asked, or else as proposed), ``ways`` how else they could,
    ``untitled`` how many readings have no title, ``pauses`` how many pauses the day has.

    Two titles are never one light; one title is one light in a setup however long it was read.
    """
    fields.refuse_unknown("ask", *FIELDS)
    stated = [_read(one) for one in fields.groups("readings", _MOST)]
    readings = [reading for reading, _ in stated]
    ats = [at for _, at in stated]
    setups = fields.choice("setups", SETUPS) if fields.given("setups") else proposed(readings)
    untitled = fields.choice("untitled", UNTITLED) if fields.given("untitled") else "each"
    pauses = max((one for one in stretches(readings) if one is not None), default=0)
    ways = ["one"]
    if len({reading.key for reading in readings if reading.key}) > 1:
        ways.append("title")
    if pauses:
        ways.append("time")
    return {
        "setups": setups,
        "ways": ways,
        "untitled": sum(not reading.key for reading in readings),
        "pauses": pauses,
        "groups": [_plain(setup, readings, ats) for setup in grouped(readings, setups, untitled)],
    }


def _plain(setup: Setup, readings: list[Logged], ats: list[str | None]) -> dict[str, Any]:
    timed = sorted((readings[i].at or 0.0, i) for i in setup.readings if ats[i])
    return {
        "title": setup.title,
        "stretch": setup.stretch,
        "from": ats[timed[0][1]] if timed else None,
        "to": ats[timed[-1][1]] if timed else None,
        "lights": [{"title": one.title, "readings": one.readings} for one in setup.lights],
    }


def _read(one: Fields) -> tuple[Logged, str | None]:
    one.refuse_unknown(*_LOGGED)
    title = one.text("title", "", longest=400)
    if not one.given("at"):
        return Logged(title), None
    at = one.text("at", longest=60)
    try:
        return Logged(title, moment(at)), at
    except Problem as problem:
        raise Problem(one.at("at"), problem.message) from None
