"""Who judges a set: an eye that takes the white for white, or a camera balanced for it."""

from __future__ import annotations

from evenkelvin.data import Floats
from evenkelvin.fields import Fields
from evenkelvin.lights.camera_agreement import target_light
from evenkelvin.lights.reading import Reading
from evenkelvin.problem import Problem
from evenkelvin.rendering.camera import Camera, standard_camera
from evenkelvin.requests.sensitivities import OWN_CAMERA, read_own_camera
from evenkelvin.said import Said
from evenkelvin.shapes import Choice, Group


def judge_fields(eye: str) -> Group:
    """Return the fields that say who judges; ``eye`` is what the eye is called there."""
    return {"judge": Choice((eye, "camera")), "camera": OWN_CAMERA}


def read_judge(fields: Fields, eye: str) -> Camera | None:
    """Return the camera that judges, None where it is the eye.

    Raises
    ------
    Problem
        When a camera is given and the eye judges, or the camera cannot be one.
    """
    by_camera = fields.choice("judge", (eye, "camera"), eye) == "camera"
    own = read_own_camera(fields)
    if own is not None and not by_camera:
        raise Problem(
            fields.at("judge"),
            Said("A camera is given: say that the camera judges, or leave it out."),
        )
    return (own or standard_camera()) if by_camera else None


def read_balance(fields: Fields, name: str, white: Reading, blame: str = "judge") -> Floats:
    """Return the light that the camera is balanced for, shape (81,).

    Parameters
    ----------
    fields
        Of the question.
    name
        The field that holds the white, where it is given.
    white
        As it was read.
    blame
        The field at fault where the camera cannot judge.

    Raises
    ------
    Problem
        When the spectrum of that light is not known.
    """
    is_white = fields.given(name) and set(fields.raw(name)) <= {"cct_K", "duv"}
    light = target_light(white, is_white)
    if light is None:
        raise Problem(
            fields.at(blame),
            Said(
                "A camera can judge only against a spectrum: take a white as the target, or a "
                "light whose spectrum was measured."
            ),
        )
    return light
