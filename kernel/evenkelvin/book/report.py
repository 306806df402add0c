"""The report of a setup or a location: what a crew hangs, checks and minds, ready to print.

Here is what the report says; how it is laid out on paper is the app's.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from typing import Any

from evenkelvin.book.entries import Entry
from evenkelvin.book.gel_names import GelNames
from evenkelvin.book.meaning import Found, Thing, above, below, find, things
from evenkelvin.book.meant import Aim, Aims
from evenkelvin.book.setup_log import (
    LightLog,
    ReadingLog,
    SetupLog,
    White,
    setup_log,
    states,
    white_of,
)
from evenkelvin.lights.drift import State, drift, stops_since
from evenkelvin.lights.fixing import Offset
from evenkelvin.lights.tolerance import Verdict, verdict
from evenkelvin.said import Said, joined

#: Usual cautions by kind of lamp; common practice, no source.
_LAMP_CAUTIONS: dict[str, str] = {
    "tungsten": Said(
        "Tungsten heads run hot: let them cool before re-gelling, keep gel clear of "
        "the lens and check it for scorching."
    ),
    "hmi": Said(
        "HMI and metal-halide heads emit UV without their safety glass: never run one "
        "with cracked or missing glass, and keep gel clear of the hot lens."
    ),
    "plasma": Said(
        "Plasma heads run hot and emit UV without their glass: do not open a running head."
    ),
    "fluorescent": Said("Fluorescent tubes hold mercury: pack used and broken ones apart."),
    "mercury": Said(
        "Mercury lamps emit UV when the outer bulb is broken, and hold mercury: leave them to "
        "whoever runs them."
    ),
    "sodium": Said(
        "Sodium street and deck lights are not ours to open or gel: ask whoever runs them."
    ),
    "flash": Said(
        "Flash heads store a deadly charge: switch off and discharge before changing tubes."
    ),
    "daylight": Said("Never look at the sun, and never aim a meter at it by eye."),
}
_GEL_CAUTION = Said(
    "Gel, frames and anything in the wind need safety bonds and a second pair of hands."
)
_GLASS_CAUTION = Said(
    "Never gel glass that traps heat (insulating, laminated, wired, coated or "
    "leaded) without asking the building; tie gel and frames for the wind, and "
    "keep exits and vents free."
)
_ALWAYS = (
    Said("Work at height, rigging and mains power: by those licensed for it, by the local code."),
    Said("Gel figures are nominal unless measured: re-check each light once its gel hangs."),
)


@dataclass(frozen=True, eq=False)
class Slip:
    """One light: its log, what hangs on it now, what it is meant to be, and how it stands to that
    and to the hero.
    """

    light: LightLog
    aim: Aim
    hangs: tuple[str, ...]
    offset: Offset | None
    verdict: Verdict | None
    stops_to_hero: float | None


@dataclass(frozen=True, eq=False)
class SetupReport:
    """One setup: where it is, the white it was set to, and a slip for each light."""

    log: SetupLog
    path: tuple[str, ...]
    white: White | None
    slips: tuple[Slip, ...]


@dataclass(frozen=True)
class Glass:
    """The windows of a location: the gels that hang on them, and a line for each size."""

    id: str
    name: str
    gels: tuple[str, ...]
    lines: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class Report:
    """What is reported on, its setups, what each gel hangs on, the cautions, and the windows.

    ``measured`` are the gels among them that are no nominal ones; ``names`` tells gels of one name
    apart.
    """

    thing: Thing
    path: tuple[str, ...]
    setups: tuple[SetupReport, ...]
    gels: dict[str, tuple[str, ...]]
    cautions: tuple[str, ...]
    windows: tuple[Glass, ...]
    measured: frozenset[str]
    names: GelNames


def hangs(log: ReadingLog, names: GelNames) -> tuple[str, ...]:
    """Return what hung when a reading was taken."""
    return names.called(log.data.get("pack"), log.data.get("gel_ids"))


def _target_state(aim: Aim) -> State | None:
    if aim.target is None:
        return None
    return states([{"x": float(aim.target.xy[0]), "y": float(aim.target.xy[1])}])[0]


def _slip(
    light: LightLog,
    aim: Aim,
    hero: ReadingLog | None,
    radius: float,
    names: GelNames,
) -> Slip:
    latest = light.readings[-1] if light.readings else None
    now = light.now
    target = _target_state(aim)
    moved = drift(now.state, target) if now and target else None
    return Slip(
        light,
        aim,
        hangs(latest, names) if latest else (),
        moved,
        verdict(moved.steps, radius) if moved else None,
        stops_since(latest.state, hero.state) if latest and hero else None,
    )


def _setup_report(found: Found, log: SetupLog, radius: float, names: GelNames) -> SetupReport:
    white = white_of(log)
    aims = Aims(found)
    hero = log.key.readings[-1] if log.key and log.key.readings else None
    return SetupReport(
        log,
        tuple(each.name for each in above(found, log.thing)),
        white,
        tuple(
            _slip(light, aims.of(light.thing, white.target if white else None), hero, radius, names)
            for light in log.lights
        ),
    )


def _glass(location: Thing, names: GelNames) -> Glass | None:
    """Return the windows of a location as they were typed; None where it has none."""
    data = location.present["data"]
    lines = tuple(_window_line(window, names) for window in data.get("windows") or ())
    if not lines:
        return None
    gels = names.called(data.get("window_gels"), data.get("window_gel_ids"))
    return Glass(location.id, location.name, gels, lines)


def _window_line(window: Mapping[str, Any], names: GelNames) -> Said:
    sides = []
    for side in ("width", "height"):
        in_feet = window.get(f"{side}_m") in (None, "")
        typed = window.get(f"{side}_ft" if in_feet else f"{side}_m")
        # Feet and inches bear their own marks.
        unit = "" if in_feet and re.search(r"['′’\"″]", str(typed)) else " ft" if in_feet else " m"
        sides.append("?" if typed in (None, "") else f"{typed}{unit}")
    across, down = (window.get(f"panes_{way}") or 1 for way in ("across", "down"))
    parts: list[str] = [
        Said("{count} of {size}", count=str(window.get("count") or 1), size=" × ".join(sides))
    ]
    if not str(across) == str(down) == "1":
        parts.append(Said("{across} × {down} panes each", across=str(across), down=str(down)))
    if window.get("name"):
        parts.append(str(window["name"]))
    if window.get("facing_deg") not in (None, ""):
        parts.append(Said("facing {where}", where=str(window["facing_deg"])))
    if window.get("gels") is not None:
        own = names.called(window["gels"], window.get("gel_ids"))
        parts.append(Said("hangs {gels}", gels=joined(own, " + ")) if own else Said("no gel"))
    return joined(parts)


def _locations(found: Found, thing: Thing) -> list[Thing]:
    if thing.kind == "production":
        return below(found, "production", thing.id)
    if thing.kind == "location":
        return [thing]
    return [each for each in above(found, thing) if each.kind == "location"]


def make_report(
    entries: Iterable[Entry], of: str, radius: float, tell_apart: Iterable[str] = ()
) -> Report:
    """Return the report of a setup, or of all setups of a location or production.

    Parameters
    ----------
    entries
        Of a checked book.
    of
        The id of what is reported on.
    radius
        Tolerance in steps.
    tell_apart
        Names that mean several measured gels in the longer report that this is a part of.

    Raises
    ------
    Problem
        When the book has no such thing.
    """
    found = things(entries)
    thing = find(found, of, ("setup", "location", "production"))
    setups = [thing]
    while setups and setups[0].kind != "setup":
        setups = [inner for outer in setups for inner in below(found, outer.kind, outer.id)]
    logs = [setup_log(found, setup) for setup in setups]
    places = _locations(found, thing)
    hung = [
        (each.data.get("pack"), each.data.get("gel_ids"))
        for log in logs
        for light in log.lights
        for each in light.readings
    ]
    panes = [
        (each.present["data"].get("window_gels"), each.present["data"].get("window_gel_ids"))
        for each in places
    ] + [
        (window.get("gels"), window.get("gel_ids"))
        for each in places
        for window in each.present["data"].get("windows") or ()
    ]
    names = GelNames(found, frozenset(tell_apart))
    names.learn([*hung, *panes])
    reports = tuple(_setup_report(found, log, radius, names) for log in logs)
    slips = [slip for report in reports for slip in report.slips]
    gels: dict[str, list[str]] = {}
    for slip in slips:
        for gel in slip.hangs:
            gels.setdefault(gel, []).append(slip.light.thing.name)
    lamps = {slip.light.lamp for slip in slips}
    cautions = [words for lamp, words in _LAMP_CAUTIONS.items() if lamp in lamps]
    glass = [each for each in (_glass(place, names) for place in places) if each is not None]
    if gels or glass:
        cautions.append(_GEL_CAUTION)
    if glass:
        cautions.append(_GLASS_CAUTION)
    return Report(
        thing,
        tuple(each.name for each in above(found, thing)),
        reports,
        {gel: tuple(lights) for gel, lights in sorted(gels.items())},
        (*cautions, *_ALWAYS),
        tuple(glass),
        frozenset(gel for row in [*hung, *panes] for gel in names.measured(*row)),
        names,
    )
