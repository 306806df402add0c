"""Which readings of a day's files belong together: setups, and the lights in them.

Two titles are two lights, however close in time; one title is one light, however long it was read.
What bears no title is told apart by pauses, where the person wants that.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from itertools import pairwise

#: How setups begin: all in one, one for each title, or another after each pause.
SETUPS = ("one", "title", "time")
#: What readings without a title are: each a light of its own, one light until a pause or a title
#: comes between, or all one light.
UNTITLED = ("each", "time", "one")
#: The shortest pause, in s, and how many times longer it is than the day's other gaps are. Common
#: practice, no source: a walk to the next place takes longer than the next reading.
_PAUSE_S = 30 * 60.0
_LONGER = 3.0


@dataclass(frozen=True)
class Logged:
    """A reading of a file: its title, empty where it has none, and when it was, in s since 1970."""

    title: str = ""
    at: float | None = None

    @property
    def key(self) -> str:
        """The title as people tell titles apart."""
        return " ".join(self.title.casefold().split())


@dataclass
class Light:
    """A light, by the places of its readings among those given, in time."""

    title: str
    readings: list[int] = field(default_factory=list)


@dataclass
class Setup:
    """Lights of one title (of many: empty) or one stretch of time (else None), in time."""

    title: str = ""
    stretch: int | None = None
    lights: list[Light] = field(default_factory=list)

    @property
    def readings(self) -> list[int]:
        """The places of all readings."""
        return [index for light in self.lights for index in light.readings]


def in_time(readings: Sequence[Logged]) -> list[int]:
    """Return the places of the readings, the earliest first; those without a time stand last."""
    return sorted(range(len(readings)), key=lambda i: (readings[i].at is None, readings[i].at or 0))


def stretches(readings: Sequence[Logged]) -> list[int | None]:
    """Return for each reading in which stretch of time it lies, 0 the first; None without a time.

    A pause parts two stretches: a gap of half an hour at least that is three times as long as half
    of the day's other gaps, so that a window read every hour makes no pause.
    """
    found: list[int | None] = [None] * len(readings)
    order = [index for index in in_time(readings) if readings[index].at is not None]
    times = [readings[index].at or 0.0 for index in order]
    gaps = [later - earlier for earlier, later in pairwise(times)]
    ranked = sorted(gaps)
    number = 0
    for place, index in enumerate(order):
        if place:
            gap = gaps[place - 1]
            # Of equal gaps it does not matter which is left out.
            at = ranked.index(gap)
            others = ranked[:at] + ranked[at + 1 :]
            usual = others[(len(others) - 1) // 2] if others else 0.0
            number += gap >= max(_PAUSE_S, _LONGER * usual)
        found[index] = number
    return found


def proposed(readings: Sequence[Logged]) -> str:
    """Return how setups should begin: by time where no light is read on both sides of a pause."""
    lies = stretches(readings)
    if not any(lies):
        return "one"
    times: dict[str, set[int]] = {}
    for reading, stretch in zip(readings, lies, strict=True):
        if reading.key and stretch is not None:
            times.setdefault(reading.key, set()).add(stretch)
    apart = times and all(len(found) == 1 for found in times.values())
    return "time" if apart else "one"


def grouped(readings: Sequence[Logged], setups: str, untitled: str) -> list[Setup]:
    """Return the setups, the earliest first, with each reading in one light.

    Parameters
    ----------
    readings
        In any order.
    setups
        One of :data:`SETUPS`. A reading without a time goes with its title, if another reading of
        that title has one; what has neither goes into a setup without a title and a stretch.
    untitled
        One of :data:`UNTITLED`.
    """
    lies = stretches(readings)
    home: dict[str, int] = {}
    for index in in_time(readings):
        stretch = lies[index]
        if readings[index].key and stretch is not None:
            home.setdefault(readings[index].key, stretch)
    found: dict[tuple[str, int | None], Setup] = {}
    lights: dict[tuple[tuple[str, int | None], object], Light] = {}
    run, before = 0, None
    for index in in_time(readings):
        reading = readings[index]
        stretch = lies[index] if lies[index] is not None else home.get(reading.key)
        where = (
            reading.key if setups == "title" else "",
            stretch if setups == "time" else None,
        )
        name = reading.title.strip()
        setup = found.setdefault(where, Setup(name if setups == "title" else "", where[1]))
        run += before is not None and (before != ("", lies[index]))
        before = (reading.key, lies[index])
        of: object = reading.key or {"each": index, "time": run, "one": -1}[untitled]
        light = lights.get((where, of))
        if light is None:
            light = lights[where, of] = Light(name)
            setup.lights.append(light)
        light.readings.append(index)
    return list(found.values())
