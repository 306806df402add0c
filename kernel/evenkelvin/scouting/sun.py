"""Where the sun is through one day, and when it shines into a window.

Positions are astral's, after Meeus, *Astronomical Algorithms* (1998), chapter 25: within 0.01° from
1950 to 2100. Nothing here reads a clock or a table of time zones: the date and the offset from
UTC come in.

Altitudes of events are those of the sun's centre without refraction: sunrise and sunset at
−0.833° (34′ of refraction and 16′ of radius at sea level, the convention of nautical almanacs);
golden hour from 6° down to −4°, blue hour from −4° down to −6° (common practice, no source).
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from datetime import UTC, date, datetime, timedelta, timezone
from functools import cached_property
from itertools import pairwise

import numpy as np
from astral import Observer, refraction_at_zenith
from astral.sun import zenith_and_azimuth

from evenkelvin.data import Floats
from evenkelvin.said import Said

MINUTES = 1440
#: Sampling of the day in minutes: a shorter span can be missed.
STEP = 4
SUNRISE_DEG = -0.833
GOLDEN_DEG = (-4.0, 6.0)
BLUE_DEG = (-6.0, -4.0)

_POINTS = (
    Said("north"), Said("north-east"), Said("east"), Said("south-east"),
    Said("south"), Said("south-west"), Said("west"), Said("north-west"),
)  # fmt: skip


@dataclass(frozen=True)
class Place:
    """A place and its clock.

    Attributes
    ----------
    latitude, longitude
        In degrees, north and east positive.
    utc_offset_h
        What local time is ahead of UTC, in hours.
    """

    latitude: float
    longitude: float
    utc_offset_h: float


@dataclass(frozen=True)
class Position:
    """The sun's centre: altitude without and with refraction, azimuth from north by east, in °."""

    geometric_deg: float
    altitude_deg: float
    azimuth_deg: float


@dataclass(frozen=True)
class Span:
    """A part of the day in minutes of local time; None where it reaches beyond the day."""

    start: float | None
    end: float | None


def position(place: Place, day: date, minute: float) -> Position:
    """Return the sun's position at a minute of local time."""
    zone = timezone(timedelta(hours=place.utc_offset_h))
    moment = datetime(day.year, day.month, day.day, tzinfo=zone) + timedelta(minutes=minute)
    # Observer at sea level: astral's own allowance for height is for a horizon out at sea.
    observer = Observer(place.latitude, place.longitude, 0.0)
    zenith, azimuth = zenith_and_azimuth(observer, moment.astimezone(UTC), with_refraction=False)
    lifted = refraction_at_zenith(zenith)
    return Position(90.0 - zenith, 90.0 - zenith + lifted, azimuth)


class Day:
    """The sun through one day at one place."""

    def __init__(self, place: Place, day: date) -> None:
        self._place = place
        self._day = day
        self._known: dict[float, Position] = {}
        self._samples = [self.at(minute) for minute in range(0, MINUTES + 1, STEP)]

    def at(self, minute: float) -> Position:
        """Return the position at a minute of the day."""
        known = self._known.get(minute)
        if known is None:
            known = self._known[minute] = position(self._place, self._day, minute)
        return known

    def curve(self, step: int) -> list[tuple[int, Position]]:
        """Return positions every ``step`` minutes, midnight to midnight."""
        return [(minute, self.at(minute)) for minute in range(0, MINUTES + 1, step)]

    def spans(self, inside: Callable[[Position], float]) -> list[Span]:
        """Return the parts of the day where a continuous function of position is positive."""
        values = [inside(sample) for sample in self._samples]
        edges = [
            self._crossing(inside, index * STEP)
            for index, (one, two) in enumerate(pairwise(values))
            if (one > 0.0) != (two > 0.0)
        ]
        marks: list[float | None] = [*edges]
        if values[0] > 0.0:
            marks.insert(0, None)
        if len(marks) % 2:
            marks.append(None)
        return [Span(start, end) for start, end in zip(marks[::2], marks[1::2], strict=True)]

    def _crossing(self, inside: Callable[[Position], float], start: float) -> float:
        low, high = start, start + STEP
        rising = inside(self.at(low)) <= 0.0
        while high - low > 1.0 / 120.0:
            middle = (low + high) / 2.0
            if (inside(self.at(middle)) > 0.0) == rising:
                high = middle
            else:
                low = middle
        return (low + high) / 2.0

    def highest(self) -> tuple[float, Position]:
        """Return the minute at which the sun stands highest, and its position."""
        best = max(range(len(self._samples)), key=lambda i: self._samples[i].geometric_deg)
        low, high = max(0.0, (best - 1.0) * STEP), min(float(MINUTES), (best + 1.0) * STEP)
        while high - low > 0.02:
            third = (high - low) / 3.0
            if self.at(low + third).geometric_deg < self.at(high - third).geometric_deg:
                low += third
            else:
                high -= third
        minute = (low + high) / 2.0
        return minute, self.at(minute)


def up(where: Position) -> float:
    """Return a positive number while the sun is up, from sunrise to sunset."""
    return where.geometric_deg - SUNRISE_DEG


def between(bounds: tuple[float, float]) -> Callable[[Position], float]:
    """Return a function that is positive while the sun's centre is between two altitudes."""
    low, high = bounds
    return lambda where: min(where.geometric_deg - low, high - where.geometric_deg)


@dataclass(frozen=True)
class Window:
    """A vertical window and what stands before it.

    Attributes
    ----------
    facing_deg
        Direction that it looks to, from north by east.
    horizon
        Points (azimuth, altitude) in degrees of the line of what stands before it: straight from
        point to point, level beyond the outermost. One point is a level line; none is an open view.
    """

    facing_deg: float
    horizon: tuple[tuple[float, float], ...] = ()

    @cached_property
    def _line(self) -> tuple[Floats, Floats]:
        """Return the points from left to right as (angle from straight ahead, altitude)."""
        line = sorted((self._aside(azimuth), altitude) for azimuth, altitude in self.horizon)
        aside, altitudes = np.array(line or [(0.0, 0.0)], dtype=np.float64).T
        return aside, altitudes

    def _aside(self, azimuth_deg: float) -> float:
        return (azimuth_deg - self.facing_deg + 180.0) % 360.0 - 180.0

    def horizon_at(self, azimuth_deg: float) -> float:
        """Return how high what stands before the window is in a direction, in degrees."""
        return float(np.interp(self._aside(azimuth_deg), *self._line))

    def direct(self, where: Position) -> float:
        """Return a positive number while direct sun meets the window.

        Over open ground the sun counts from sunrise to sunset, elsewhere once its centre has
        cleared what stands there.
        """
        height = self.horizon_at(where.azimuth_deg)
        cleared = min(up(where), where.altitude_deg - height) if height > 0.0 else up(where)
        ahead = math.cos(math.radians(where.azimuth_deg - self.facing_deg))
        return min(cleared, math.degrees(ahead))

    @property
    def sky_share(self) -> float:
        """What is left of the light that an open, evenly bright sky gives a vertical pane, 0 to 1.

        Each patch of sky counts by the cosine of its angle to the pane: cos²(altitude) ·
        cos(aside), integrated above the line (configuration factor; geometry).
        """
        aside = np.radians(np.arange(-89.75, 90.0, 0.5))
        low = np.radians(np.interp(np.degrees(aside), *self._line))
        above = (np.pi / 2.0 - low) / 2.0 - np.sin(2.0 * low) / 4.0
        return float(np.average(above, weights=np.cos(aside)) / (np.pi / 4.0))


def compass(azimuth_deg: float) -> Said:
    """Return the nearest of the eight points of the compass."""
    return _POINTS[round(azimuth_deg / 45.0) % 8]


def clock(minute: float) -> str:
    """Return a minute of the day as ``HH:MM``, to the nearest minute."""
    hours, minutes = divmod(round(minute), 60)
    return f"{hours:02d}:{minutes:02d}"
