"""The readings of a surface, point by point, as a question states them."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.data import Floats
from evenkelvin.exposure.stops import FLASH_BOUNDS, LIGHT_BOUNDS
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.requests.camera import SAYINGS
from evenkelvin.requests.each import read_each
from evenkelvin.requests.forms import in_usual_form
from evenkelvin.requests.reading import READING, read_reading
from evenkelvin.requests.units import LIGHT, either, light_fields
from evenkelvin.said import Said
from evenkelvin.shapes import Choice, Group, Number, OneOf, Whole

#: More points than the largest grid (8 × 5) has, for those put on a photo.
MOST_POINTS = 200
#: A reading off the surface, for a screen that is lit from behind or shows itself.
_LUMINANCE = "luminance_cd_m2"
_PLACE: Group = {"across": Number(0, 1), "up": Number(0, 1)}
_COLOUR = ("x", "y", "cct_K", "duv", "spectrum")
POINT: Group = {**_PLACE, **READING, _LUMINANCE: Number(*LIGHT_BOUNDS)}
#: What each point is held against, how far it may be off, and how stops are said.
AIM: Group = {
    "aim": OneOf((Choice(("mean",)), light_fields("illuminance"), {"point": Whole(0, 3)})),
    "within_stops": Number(0.05, 3.0), "say": Choice(SAYINGS),
}  # fmt: skip
WITHIN_STOPS = 1.0 / 3.0


@dataclass(frozen=True, eq=False)
class Surface:
    """The points that can be used: which of the question's they are, where, and what they read.

    ``places`` has shape (n, 2), ``levels`` (n,) in ``unit`` ("lx", "lx s" or "cd/m2"), ``uv``
    (n, 2), NaN where no colour was given. ``problems`` says what is wrong with the others.
    """

    indices: list[int]
    places: Floats
    levels: Floats
    uv: Floats
    unit: str
    problems: dict[int, Problem]


def read_surface(fields: Fields) -> Surface:
    """Return the points of a question.

    Raises
    ------
    Problem
        When there are none, or they are in units that do not compare.
    """
    groups = fields.groups("points", most=MOST_POINTS)
    if not groups:
        raise Problem(fields.at("points"), Said("There are no readings of this surface yet."))
    read = read_each(groups, _point)
    problems = {index: one for index, one in enumerate(read) if isinstance(one, Problem)}
    usable = [(index, one) for index, one in enumerate(read) if not isinstance(one, Problem)]
    if not usable:
        raise first_problem(fields, problems)
    units = [one[2] for _, one in usable]
    for (index, _), unit in zip(usable, units, strict=True):
        if unit != units[0]:
            raise Problem(
                groups[index].path,
                Said(
                    "Point {n} is in {unit}, the first in {other}: read them all in one unit.",
                    n=index + 1,
                    unit=unit,
                    other=units[0],
                ),
            )
    return Surface(
        [index for index, _ in usable],
        np.array([one[0] for _, one in usable]).reshape(-1, 2),
        np.array([one[1] for _, one in usable]),
        np.array([one[3] for _, one in usable]).reshape(-1, 2),
        units[0],
        problems,
    )


def first_problem(fields: Fields, problems: dict[int, Problem]) -> Problem:
    """Return what is wrong with the first of the points, its field named in the question."""
    index, problem = min(problems.items())
    where = f"{fields.at('points')}.{index}.{problem.field}"
    return Problem(where, problem.message, problem.line, problem.choices)


def _point(fields: Fields) -> tuple[tuple[float, float], float, str, Floats]:
    fields.refuse_unknown(*POINT)
    fields, _ = in_usual_form(fields)
    place = (fields.number("across", low=0.0, high=1.0), fields.number("up", low=0.0, high=1.0))
    uv = np.full(2, np.nan)
    if any(fields.given(name) for name in _COLOUR):
        reading = read_reading(fields.without(*_PLACE, _LUMINANCE), (), stand_in="none")
        uv = xy_to_uv_prime(reading.xy)
    given = [
        (unit, value)
        for unit, value in (
            ("lx", either(fields, "illuminance", LIGHT, LIGHT_BOUNDS)),
            ("lx s", _amount(fields, "exposure_lx_s", FLASH_BOUNDS)),
            ("cd/m2", _amount(fields, _LUMINANCE, LIGHT_BOUNDS)),
        )
        if value is not None
    ]
    if len(given) != 1:
        raise Problem(
            fields.at("illuminance_lx"),
            Said("Type how much light there is.")
            if not given
            else Said("Give one amount of light, not several."),
        )
    return place, given[0][1], given[0][0], uv


def _amount(fields: Fields, name: str, bounds: tuple[float, float]) -> float | None:
    return fields.number(name, low=bounds[0], high=bounds[1]) if fields.given(name) else None


def read_aim(fields: Fields, surface: Surface) -> float:
    """Return the level that each point is held against: the mean where nothing is said.

    Raises
    ------
    Problem
        When it is a point that cannot be used, or an illuminance beside points in another unit.
    """
    raw = fields.raw("aim")
    if raw is None or isinstance(raw, str):
        fields.choice("aim", ("mean",), "mean")
        return float(surface.levels.mean())
    group = fields.group("aim")
    group.refuse_unknown("point", *light_fields("illuminance"))
    if group.given("point"):
        point = group.whole("point", 0, 0, MOST_POINTS - 1)
        if point not in surface.indices:
            raise Problem(group.at("point"), Said("There is no reading at that point yet."))
        return float(surface.levels[surface.indices.index(point)])
    level = either(group, "illuminance", LIGHT, LIGHT_BOUNDS)
    if level is None or surface.unit != "lx":
        raise Problem(
            group.at("illuminance_lx"),
            Said("The aim is a level in lux for readings in lux; else choose a point or the mean."),
        )
    return level


def read_within(fields: Fields) -> float:
    """Return by how many stops a point may be off its aim."""
    return fields.number("within_stops", WITHIN_STOPS, 0.05, 3.0)
