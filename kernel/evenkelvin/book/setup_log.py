"""A setup as the book has it: its lights, their readings in time, and the white it was set to."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from evenkelvin.book.entries import Entry, moment
from evenkelvin.book.logged import light_amounts, logged_cct, logged_xy
from evenkelvin.book.meaning import Found, Thing, below, places, taken_at
from evenkelvin.fields import Fields
from evenkelvin.lights.drift import State
from evenkelvin.lights.stand_in import LAMPS
from evenkelvin.problem import Problem
from evenkelvin.requests.reading import read_target
from evenkelvin.said import Said


@dataclass(frozen=True, eq=False)
class ReadingLog:
    """One reading: its entry, and what it says in numbers (NaN where it says nothing)."""

    entry: Entry
    state: State
    edited_twice: bool = False

    @property
    def data(self) -> dict[str, Any]:
        """What was typed."""
        data: dict[str, Any] = self.entry["data"]
        return data

    @property
    def at(self) -> str:
        """When it was taken."""
        return taken_at(self.entry)

    @property
    def has_colour(self) -> bool:
        """Whether it says a colour."""
        return bool(np.isfinite(self.state.xy).all())


@dataclass(frozen=True, eq=False)
class LightLog:
    """One light and its readings, the oldest first."""

    thing: Thing
    readings: tuple[ReadingLog, ...]

    @property
    def now(self) -> ReadingLog | None:
        """Its latest reading that says a colour."""
        return next((each for each in reversed(self.readings) if each.has_colour), None)

    @property
    def lamp(self) -> str:
        """The kind of lamp that its latest reading or the light itself states."""
        stated = [each.data.get("lamp") for each in reversed(self.readings)]
        stated.append(self.thing.present["data"].get("lamp"))
        return next((str(lamp) for lamp in stated if lamp in LAMPS), "unknown")


@dataclass(frozen=True, eq=False)
class SetupLog:
    """A setup and its lights in their order.

    ``hero`` is the light whose colour the others match, ``key`` the one that their amounts are a
    ratio to: the one chosen for that, else the hero; None where none was named.
    """

    thing: Thing
    lights: tuple[LightLog, ...]
    hero: LightLog | None
    key: LightLog | None


@dataclass(frozen=True)
class White:
    """A target white as the desk takes it, and where the book had it from."""

    target: dict[str, Any]
    words: str


def states(readings: list[dict[str, Any]]) -> list[State]:
    """Return what logged readings say in numbers."""
    xys = logged_xy(readings)
    return [
        State(xy, float(white[0]), float(white[1]), *light_amounts(plain))
        for plain, xy, white in zip(readings, xys, logged_cct(xys), strict=True)
    ]


def light_log(found: Found, light: Thing) -> LightLog:
    """Return a light with its readings."""
    heads = [
        (head, bool(thing.heads[1:]))
        for thing in below(found, "light", light.id)
        for head in thing.heads
        if not head.get("gone", False)
    ]
    times = places([head for head, _ in heads])
    heads.sort(key=lambda pair: (*times[pair[0]["id"]], pair[0]["id"]))
    numbers = states([head["data"] for head, _ in heads])
    return LightLog(
        light,
        tuple(
            ReadingLog(head, state, twice)
            for (head, twice), state in zip(heads, numbers, strict=True)
        ),
    )


def setup_log(found: Found, setup: Thing) -> SetupLog:
    """Return a setup with its lights."""
    lights = tuple(light_log(found, light) for light in below(found, "setup", setup.id))
    by_id = {light.thing.id: light for light in lights}
    data = setup.present["data"]
    hero = by_id.get(str(data.get("hero")))
    return SetupLog(setup, lights, hero, by_id.get(str(data.get("key")), hero))


def white_of(setup: SetupLog) -> White | None:
    """Return the white that a setup was set to, so that another day can match it.

    The target stated for the setup; else that of its latest reading; else the hero light as it
    was last read. None when the book has none of them.
    """
    latest = sorted(
        (each for light in setup.lights for each in light.readings),
        key=lambda each: moment(each.at),
        reverse=True,
    )
    stated = [(setup.thing.present["data"].get("target"), Said("the target of the setup"))]
    stated += [
        (each.data.get("target"), Said("the target of its latest reading")) for each in latest
    ]
    for target, words in stated:
        if not isinstance(target, dict) or not target:
            continue
        try:
            read_target(Fields(target), ())
        except Problem:
            continue
        return White(target, words)
    hero = setup.hero.now if setup.hero else None
    if hero is None:
        return None
    x, y = (float(value) for value in hero.state.xy)
    return White({"x": x, "y": y}, Said("the reference as it was last read"))
