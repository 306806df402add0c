"""What a tunable lamp can reach, as a question states it."""

from __future__ import annotations

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.field_names import field_name
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.gamut import USUAL_DUV, Polygon, Reach, Whites, hull
from evenkelvin.lights.reading import READING_K
from evenkelvin.problem import Problem
from evenkelvin.requests.reading import READING, read_reading
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Many, Number

#: What a lamp can be dialled to.
REACH: Group = {
    "from_K": Number(*READING_K), "to_K": Number(*READING_K), "duv_limit": Number(0, 0.05),
    "gamut": Many(READING),
}  # fmt: skip


def read_reach(fields: Fields, kit: tuple[Gel, ...]) -> Reach:
    """Return what a lamp reaches: ``{"from_K", "to_K", "duv_limit"?}`` or ``{"gamut": [R…]}``.

    Raises
    ------
    Problem
        Naming the field at fault.
    """
    fields.refuse_unknown(*REACH)
    if fields.given("gamut"):
        for name in ("from_K", "to_K", "duv_limit"):
            if fields.given(name):
                raise Problem(
                    fields.at(name),
                    Said("Give a gamut, or {name}, not both.", name=field_name(name)),
                )
        return read_gamut(fields, "gamut", kit)
    low, high = READING_K
    from_k = fields.number("from_K", low=low, high=high, label=Said("the lowest CCT"))
    to_k = fields.number("to_K", low=low, high=high, label=Said("the highest CCT"))
    if to_k < from_k:
        raise Problem(
            fields.at("to_K"),
            Said(
                "The range ends at {to_k:g} K, below its start at {from_k:g} K.",
                to_k=to_k,
                from_k=from_k,
            ),
        )
    return Whites(from_k, to_k, fields.number("duv_limit", USUAL_DUV, 0.0, 0.05))


def read_gamut(fields: Fields, name: str, kit: tuple[Gel, ...]) -> Polygon:
    """Return the polygon of a list of readings."""
    groups = fields.groups(name, most=24)
    if not groups:
        raise Problem(fields.at(name), Said("A gamut needs one colour or more."))
    corners = np.stack([read_reading(group, kit, stand_in="none").xy for group in groups])
    return Polygon(hull(xy_to_uv_prime(corners)))
