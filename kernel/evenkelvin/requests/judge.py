"""Who judges a set: an eye that takes the white for white, or a camera balanced for it."""

from __future__ import annotations

from evenkelvin.data import Floats
from evenkelvin.fields import Fields
from evenkelvin.lights.camera_agreement import target_light
from evenkelvin.lights.reading import Reading
from evenkelvin.problem import Problem
from evenkelvin.said import Said


def read_balance(fields: Fields, name: str, white: Reading) -> Floats:
    """Return the light that the camera is balanced for, shape (81,).

    Parameters
    ----------
    fields
        Of the question.
    name
        The field that holds the white, where it is given.
    white
        As it was read.

    Raises
    ------
    Problem
        Field ``judge``, when the spectrum of that light is not known.
    """
    is_white = fields.given(name) and set(fields.raw(name)) <= {"cct_K", "duv"}
    light = target_light(white, is_white)
    if light is None:
        raise Problem(
            fields.at("judge"),
            Said(
                "A camera can judge only against a spectrum: take a white as the target, or a "
                "light whose spectrum was measured."
            ),
        )
    return light
