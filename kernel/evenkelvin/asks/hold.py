"""``hold``: what each window needs at one time of a day, and how long what hangs there holds.

Fields: ``windows`` [{``name``, ``gels`` that hang there, ``readings`` [R with its ``time``],
``facing_deg``, ``horizon_deg`` | ``horizon``}]; ``time`` of the day ("16:00"); ``target`` T,
``tolerance``, ``kit``, ``own_gels``, ``gel_scatter_percent``, ``depth``, ``most`` packs (3);
``wanted_lx`` | ``wanted_fc`` behind the glass. For what lies before the first and after the last
reading: ``lat_deg``, ``lon_deg``, ``date`` and ``utc_offset_h`` as ask "sun" has them, ``sky``.

``{"ask": "hold", "time": "16:00", "target": {"cct_K": 3200}, "windows": [{"name": "left",
"gels": ["full CTO"], "readings": [{"time": "14:10", "cct_K": 5600, "duv": 0.002}]}]}``
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from evenkelvin.data import Floats
from evenkelvin.exposure.stops import LIGHT_BOUNDS, LX_PER_FC, ratio_stops
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.fixing import land, landings
from evenkelvin.lights.reading import Reading, pack_transmittance
from evenkelvin.lights.through_day import SKIES, Basis, Daylight, Stretch, estimate
from evenkelvin.problem import Problem
from evenkelvin.replies.fix import landing_plain, landings_plain
from evenkelvin.replies.neutral import neutral_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.requests.kit import GEL, KIT, find_gel, read_kit
from evenkelvin.requests.reading import READING, TARGET, read_reading, read_target
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.requests.units import LIGHT, either, light_fields
from evenkelvin.requests.where import DAY, VIEW, read_day, read_view
from evenkelvin.said import Said, listed
from evenkelvin.scouting import sun
from evenkelvin.shapes import Choice, Group, Many, Text, Whole

#: Windows that are answered together, and readings of one.
MOST_WINDOWS, MOST_READINGS = 40, 200
#: Between readings further apart than this, in minutes, the light may have been anywhere (common
#: practice, no source).
GAP = 120

_TIME = Text(("16:00", "9:05"))
_WINDOW: Group = {
    "name": Text(), **VIEW, "gels": Many(GEL), "readings": Many({**READING, "time": _TIME}),
}  # fmt: skip
FIELDS: Group = {
    "windows": Many(_WINDOW), "time": _TIME, **DAY, "sky": Choice(SKIES), **TARGET, **TOLERANCE,
    **KIT, "depth": Whole(1, 3), "most": Whole(1, 12), **light_fields("wanted"),
}  # fmt: skip
_CLOCK = re.compile(r"\s*([01]?\d|2[0-3])[:.]([0-5]\d)\s*")


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with each window's light at the time, its packs, and the stretches of the day.

    A window's ``light`` is None where it is not known, and ``basis`` says what it rests on:
    "reading", "between" two, "estimate", "unknown", or "none" without any reading. ``hung`` is
    where it lands behind its gels. ``stretches`` are those of what hangs, each of one
    ``verdict``, null where it is not known; ``words`` say them. Every pack has its own. Neutral
    density counts for the level only: ``packs`` leave it out and have ``nd`` beside them where a
    level is wanted and was read.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    every = read_kit(fields.without("kit"))
    target = read_target(fields.group("target"), every)
    radius = read_tolerance(fields)
    minute = _minute(fields)
    over = fields.choice("sky", SKIES, "clear")
    place = read_day(fields) if fields.given("lat_deg") else None
    wanted = either(fields, "wanted", LIGHT, LIGHT_BOUNDS)
    depth = fields.whole("depth", DEEPEST, 1, DEEPEST)
    most = fields.whole("most", 3, 1, 12)
    groups = fields.groups("windows", most=MOST_WINDOWS)
    if not groups:
        raise Problem(fields.at("windows"), Said("No windows yet: name one and what it reads."))
    found = []
    for group in groups:
        group.refuse_unknown(*_WINDOW)
        view = read_view(group)
        name = group.text("name", "", longest=80)
        gels = _gels(group, every)
        readings, warnings = _readings(group, every)
        answer: dict[str, Any] = {
            "name": name,
            "light": None,
            "light_K": None,
            "illuminance_lx": None,
            "illuminance_fc": None,
            "basis": "none",
            "basis_words": Said("No reading of this window on this day."),
            "gels": [gel.name for gel in gels],
            "hung": None,
            "nd": None,
            "stretches": [],
            "words": Said("Read this window to see how long its gel holds."),
            "packs": [],
            "warnings": warnings,
        }
        found.append(answer)
        if not readings:
            continue
        light = Daylight(readings, None if place is None else estimate(*place, view), over)
        warnings += _gaps(light)
        window = _Window(light, gels, target.xy, radius, minute)
        answer |= window.plain(place is not None)
        now = light.at(minute)
        if now is None:
            continue
        over_stops = None
        if wanted is not None and now.illuminance_lx is not None:
            over_stops = ratio_stops(now.illuminance_lx, wanted)
        answer |= window.hanging(now, over_stops, [gel.name for gel in kit])
        answer["packs"] = window.packs(now, target, kit, depth, most, over_stops)
    return {
        "time": sun.clock(minute),
        "target": white(target.xy),
        "tolerance": tolerance_plain(radius),
        "windows": found,
    }


def _minute(fields: Fields) -> int:
    typed = fields.text("time", longest=40)
    clock = _CLOCK.fullmatch(typed)
    if not clock:
        raise Problem(
            fields.at("time"),
            Said("“{typed}” is not a time of day. Type it as 16:00.", typed=typed[:24]),
        )
    return 60 * int(clock[1]) + int(clock[2])


def _gels(group: Fields, every: tuple[Gel, ...]) -> tuple[Gel, ...]:
    known = {gel.name: gel for gel in every}
    names = group.texts("gels")
    return tuple(find_gel(known, name, f"{group.at('gels')}.{i}") for i, name in enumerate(names))


def _readings(
    group: Fields, every: tuple[Gel, ...]
) -> tuple[list[tuple[int, Reading]], list[Said]]:
    """Return the readings with their minutes, and what is said of those that cannot be used."""
    found, warnings = [], []
    for one in group.groups("readings", most=MOST_READINGS):
        one.refuse_unknown(*READING, "time")
        minute = _minute(one)
        try:
            found.append((minute, read_reading(one, every, ("time",))))
        except Problem as why:
            warnings.append(
                Said(
                    "The reading of {time} is left out. {why}",
                    time=sun.clock(minute),
                    why=why.message,
                )
            )
    return found, warnings


def _gaps(light: Daylight) -> list[Said]:
    return [
        Said(
            "No reading between {one} and {two}: a cloud may have come and gone.",
            one=sun.clock(one),
            two=sun.clock(two),
        )
        for one, two in zip(light.minutes, light.minutes[1:], strict=False)
        if two - one > GAP
    ]


class _Window:
    """One window's light against a white: what the answer says of it."""

    def __init__(
        self, light: Daylight, gels: tuple[Gel, ...], target_xy: Floats, radius: float, minute: int
    ) -> None:
        self._light = light
        self._colour = tuple(gel for gel in gels if gel.family != "neutral")
        self._neutral = tuple(gel for gel in gels if gel.family == "neutral")
        self._target_xy = target_xy
        self._radius = radius
        self._minute = minute

    def plain(self, placed: bool) -> dict[str, Any]:
        """Return the light of the time, what it rests on, and the stretches of what hangs."""
        light, minute = self._light, self._minute
        basis = light.basis(minute)
        now = light.at(minute)
        lux = None if now is None else now.illuminance_lx
        skies = None
        if basis == "estimate":
            kelvins = [white(xy)["cct_K"] for xy in light.skies(minute)]
            kelvins = [one for one in kelvins if one is not None]
            skies = [min(kelvins), max(kelvins)] if kelvins else None
        stretches = self._stretches(self._colour)
        return {
            "light": None if now is None else white(now.xy),
            "light_K": skies,
            "illuminance_lx": lux,
            "illuminance_fc": None if lux is None else lux / LX_PER_FC,
            "basis": basis,
            "basis_words": self._basis_words(basis, skies, placed),
            "stretches": [_plain(stretch, light) for stretch in stretches],
            "words": self._words(stretches, self._colour),
        }

    def hanging(self, now: Reading, over: float | None, carried: Sequence[str]) -> dict[str, Any]:
        """Return where the light lands behind what hangs, and the neutral density for it."""
        hung = land(now, self._target_xy, self._colour, self._radius)
        return {
            "hung": landing_plain(hung),
            "nd": None if over is None else neutral_plain(over - hung.stops_lost, carried),
        }

    def packs(
        self, now: Reading, target: Reading, kit: tuple[Gel, ...], depth: int, most: int,
        over: float | None,
    ) -> list[dict[str, Any]]:  # fmt: skip
        """Return the packs of the time, best first, each with its stretches of the day."""
        colour = tuple(gel for gel in kit if gel.family != "neutral")
        carried = [gel.name for gel in kit]
        found = []
        landed = landings(now, target, colour, self._radius, depth, most)
        for landing, shown in zip(landed, landings_plain(landed), strict=True):
            stretches = self._stretches(landing.gels)
            found.append(
                {
                    **shown,
                    "nd": None
                    if over is None
                    else neutral_plain(over - landing.stops_lost, carried),
                    "stretches": [_plain(stretch, self._light) for stretch in stretches],
                    "hold_words": self._words(stretches, landing.gels),
                }
            )
        return found

    def _stretches(self, gels: tuple[Gel, ...]) -> list[Stretch]:
        return self._light.stretches(pack_transmittance(gels), self._target_xy, self._radius)

    def _basis_words(self, basis: Basis, skies: Sequence[float] | None, placed: bool) -> Said:
        light, minute = self._light, self._minute
        if basis == "reading":
            return Said("As read at {time}.", time=sun.clock(minute))
        if basis == "between":
            one = max(each for each in light.minutes if each < minute)
            two = min(each for each in light.minutes if each > minute)
            return Said(
                "Between the readings of {one} and {two}.", one=sun.clock(one), two=sun.clock(two)
            )
        if minute < light.first:
            none = Said("No reading before {time}", time=sun.clock(light.first))
        else:
            none = Said("No reading after {time}", time=sun.clock(light.last))
        if basis == "estimate" and skies is not None:
            return Said(
                "{none}: by the sun's estimate {low:.0f} to {high:.0f} K, from cloud to clear sky.",
                none=none,
                low=skies[0],
                high=skies[1],
            )
        if basis == "estimate":
            return Said("{none}: estimated from the sun.", none=none)
        if not placed:
            return Said("{none}, and no estimate: type where the location lies.", none=none)
        return Said("{none}, and the sun is too low for an estimate: read again.", none=none)

    def _words(self, stretches: list[Stretch], gels: tuple[Gel, ...]) -> Said:
        """Return how long it holds: 'Holds 14:10 to 16:40, near until 18:00.'"""
        at = next(
            index for index, one in enumerate(stretches) if one.first <= self._minute <= one.last
        )
        here = stretches[at]
        holds = [one for one in stretches if one.verdict == "holds"]
        if here.verdict == "holds":
            words = _held(stretches, at)
            spoken = stretches[max(0, at - 1) : at + 2]
        else:
            spans = listed(_span(one) for one in holds)
            words = _else(here, sun.clock(self._minute), spans if holds else None)
            spoken = [here, *holds]
        words = self._rests(words, [one for one in spoken if one.verdict in ("holds", "near")])
        if not holds or self._promised(here if here.verdict == "holds" else holds[0], gels):
            return words
        if gels:
            return Said("{words} A best guess: read it behind the gel.", words=words)
        return Said("{words} A best guess: read it again.", words=words)

    def _promised(self, stretch: Stretch, gels: tuple[Gel, ...]) -> bool:
        """Tell whether more than a best guess says that a stretch holds: asked at one minute."""
        inside = stretch.first <= self._minute <= stretch.last
        minute = self._minute if inside else (stretch.first + stretch.last) // 2
        light = self._light.at(minute)
        assert light is not None  # its verdict is known
        return land(light, self._target_xy, gels, self._radius).promise == "holds"

    def _rests(self, words: Said, spoken: list[Stretch]) -> Said:
        """Return words with what of them is an estimate."""
        first, last = sun.clock(self._light.first), sun.clock(self._light.last)
        before = any(one.first < self._light.first for one in spoken)
        after = any(one.last > self._light.last for one in spoken)
        if before and after:
            return Said(
                "{words} Before {first} and after {last} by the sun's estimate.",
                words=words,
                first=first,
                last=last,
            )
        if before:
            return Said("{words} Before {first} by the sun's estimate.", words=words, first=first)
        if after:
            return Said("{words} After {last} by the sun's estimate.", words=words, last=last)
        return words


def _span(one: Stretch) -> Said:
    if one.first == one.last:
        return Said("at {time}", time=sun.clock(one.first))
    return Said("{start} to {end}", start=sun.clock(one.first), end=sun.clock(one.last))


def _held(stretches: list[Stretch], at: int) -> Said:
    span = _span(stretches[at])
    before = stretches[at - 1] if at else None
    after = stretches[at + 1] if at + 1 < len(stretches) else None
    sooner = sun.clock(before.first) if before and before.verdict == "near" else None
    later = sun.clock(after.last) if after and after.verdict == "near" else None
    if sooner and later:
        return Said(
            "Near from {sooner}, holds {span}, near until {later}.",
            sooner=sooner,
            span=span,
            later=later,
        )
    if sooner:
        return Said("Near from {sooner}, holds {span}.", sooner=sooner, span=span)
    if later:
        return Said("Holds {span}, near until {later}.", span=span, later=later)
    return Said("Holds {span}.", span=span)


def _else(here: Stretch, time: str, holds: Said | None) -> Said:
    if here.verdict is None:
        if holds is None:
            return Said("Not known at {time}; nowhere in the day is it known to hold.", time=time)
        return Said("Not known at {time}; holds {spans}.", time=time, spans=holds)
    if here.verdict == "near":
        if holds is None:
            return Said("Near at {time}; nowhere in the day is it known to hold.", time=time)
        return Said("Near at {time}; holds {spans}.", time=time, spans=holds)
    if holds is None:
        return Said("Out at {time}; nowhere in the day is it known to hold.", time=time)
    return Said("Out at {time}; holds {spans}.", time=time, spans=holds)


def _plain(stretch: Stretch, light: Daylight) -> dict[str, Any]:
    return {
        "from_minute": stretch.first,
        "to_minute": stretch.last,
        "from": sun.clock(stretch.first),
        "to": sun.clock(stretch.last),
        "verdict": stretch.verdict,
        "estimated": stretch.first < light.first or stretch.last > light.last,
    }
