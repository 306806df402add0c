"""How even the light on a surface is."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.data import Floats
from evenkelvin.said import Said
from evenkelvin.sweep.contours import contour
from evenkelvin.sweep.surface import Sheet

#: Places across the map's shorter way, and lines at most before they are drawn wider apart.
_FINE = 33
_MOST_LINES = 12
_STEPS = (0.1, 1.0 / 3.0, 1.0, 2.0, 5.0)
#: A hair more than the limit still holds: what was typed is rounded.
_ROUNDING = 1e-9


@dataclass(frozen=True, eq=False)
class Evenness:
    """Levels on a surface against an aim, all in one unit.

    ``uniformity`` is the least over the mean (U0 of EN 12464-1:2021), ``stops`` each level against
    the aim, shape (n,), and ``holds`` whether each is within the limit.
    """

    levels: Floats
    aim: float
    within_stops: float

    @property
    def spread_stops(self) -> float:
        return math.log2(self.levels.max() / self.levels.min())

    @property
    def uniformity(self) -> float:
        return float(self.levels.min() / self.levels.mean())

    @property
    def stops(self) -> Floats:
        stops: Floats = np.log2(self.levels / self.aim)
        return stops

    @property
    def holds(self) -> list[bool]:
        return [abs(off) <= self.within_stops + _ROUNDING for off in self.stops.tolist()]


@dataclass(frozen=True, eq=False)
class Contours:
    """Lines of one level, in stops against the aim, on the box that the readings span."""

    across: tuple[float, float]
    up: tuple[float, float]
    step_stops: float
    lines: tuple[tuple[float, tuple[Floats, ...]], ...]


def contours(places: Floats, stops: Floats) -> Contours | None:
    """Return the contour lines between readings; None where they lie on one line.

    Parameters
    ----------
    places
        Across and up, shape (n, 2).
    stops
        Shape (n,).
    """
    try:
        sheet = Sheet(places, stops)
    except ValueError:
        return None
    low, high = places.min(axis=0), places.max(axis=0)
    sides = high - low
    counts = np.clip(np.round(_FINE * sides / sides.min()), _FINE, 2 * _FINE).astype(int)
    across, up = (np.linspace(low[k], high[k], counts[k]) for k in range(2))
    grid = np.stack(np.meshgrid(across, up), axis=-1).reshape(-1, 2)
    heights = sheet.at(grid).reshape(len(up), len(across))
    bottom, top = float(heights.min()), float(heights.max())
    step = next((s for s in _STEPS if (top - bottom) / s <= _MOST_LINES), _STEPS[-1])
    levels = [k * step for k in range(math.ceil(bottom / step), math.floor(top / step) + 1)]
    drawn = [(level, tuple(contour(across, up, heights, level))) for level in levels]
    return Contours(
        (float(low[0]), float(high[0])),
        (float(low[1]), float(high[1])),
        step,
        tuple((level, lines) for level, lines in drawn if lines),
    )


def widest_pair(uv: Floats) -> tuple[float, tuple[int, int]]:
    """Return the largest distance between chromaticities u′ v′ of shape (n, 2), in steps of
    CIE TN 001:2014, and between which.
    """
    apart = np.linalg.norm(uv[:, None, :] - uv[None, :, :], axis=2) / STEP_UV
    one, other = np.unravel_index(int(np.argmax(apart)), apart.shape)
    return float(apart[one, other]), (int(min(one, other)), int(max(one, other)))


_PLACES = (
    (Said("lower left"), Said("bottom"), Said("lower right")),
    (Said("left side"), Said("middle"), Said("right side")),
    (Said("upper left"), Said("top"), Said("upper right")),
)


def place_words(across: float, up: float) -> Said:
    """Return in which third of the surface a place lies, both ways from 0 to 1."""
    column, row = (min(2, int(part * 3.0)) for part in (across, up))
    return _PLACES[row][column]


def way_words(across: float, up: float) -> Said:
    """Return a direction on the surface as the nearest of eight."""
    angle = round(math.atan2(up, across) / (math.pi / 4.0)) % 8
    column, row = ((2, 1), (2, 2), (1, 2), (0, 2), (0, 1), (0, 0), (1, 0), (2, 0))[angle]
    return _PLACES[row][column]
