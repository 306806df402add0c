"""A camera of one's own, by what its three channels see.

``{"name", "wavelengths_nm": […], "red": […], "green": […], "blue": […]}``
"""

from __future__ import annotations

import numpy as np

from evenkelvin.colorimetry.spectrum import CAMERA_NEEDED, STEP_NOISE, WIDEST_STEP
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.rendering.camera import NM, Camera
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Many, Number, Text

CHANNELS = ("red", "green", "blue")
#: A camera and what it sees.
OWN_CAMERA: Group = {
    "name": Text(("Camera A", "Camera B")), "wavelengths_nm": Many(Number(380, 780)),
    **dict.fromkeys(CHANNELS, Many(Number(0, 1))),
}  # fmt: skip
CAMERA: Group = {"camera": OWN_CAMERA}
#: What is read below zero by no more than this part of the highest value is noise about zero.
_NOISE = 0.02
_NAMES = {
    "red": Said("the red channel"),
    "green": Said("the green channel"),
    "blue": Said("the blue channel"),
}


def read_own_camera(fields: Fields, name: str = "camera") -> Camera | None:
    """Return the camera that a field of the question states, None where it is not given.

    Raises
    ------
    Problem
        Naming the field at fault.
    """
    return read_camera_eyes(fields.group(name)) if fields.given(name) else None


def read_camera_eyes(fields: Fields) -> Camera:
    """Return a camera from its fields; beyond its wavelengths it sees nothing.

    Raises
    ------
    Problem
        When it has no name, or its curves cannot be a camera's.
    """
    fields.refuse_unknown(*OWN_CAMERA)
    name = fields.text("name", longest=80).strip()
    if not name:
        raise Problem(fields.at("name"), Said("The camera needs a name."))
    nm = np.array(fields.numbers("wavelengths_nm"))
    if len(nm) < 2 or nm[0] > CAMERA_NEEDED[0] or nm[-1] < CAMERA_NEEDED[1]:
        raise Problem(
            fields.at("wavelengths_nm"),
            Said(
                "What a camera sees must be known from {low:g} to {high:g} nm at least.",
                low=CAMERA_NEEDED[0],
                high=CAMERA_NEEDED[1],
            ),
        )
    steps = np.diff(nm)
    if np.any(steps <= 0.0):
        raise Problem(
            fields.at("wavelengths_nm"), Said("The wavelengths of “{name}” must rise.", name=name)
        )
    if np.max(steps) > WIDEST_STEP + STEP_NOISE:
        raise Problem(
            fields.at("wavelengths_nm"),
            Said(
                "The samples are up to {np:g} nm apart; colour needs {widest_step:g} nm or less.",
                np=float(np.max(steps)),
                widest_step=WIDEST_STEP,
            ),
        )
    curves = np.column_stack([_channel(fields, channel, nm) for channel in CHANNELS])
    if np.linalg.matrix_rank(curves / curves.max(axis=0), tol=1e-3) < len(CHANNELS):
        raise Problem(
            fields.at("blue"),
            Said(
                "Two channels of “{name}” see the same, so it tells no colours apart; check the "
                "columns.",
                name=name,
            ),
        )
    return Camera(name, curves)


def _channel(fields: Fields, channel: str, nm: np.ndarray) -> np.ndarray:
    values = np.array(fields.numbers(channel))
    at, called = fields.at(channel), _NAMES[channel]
    if len(values) != len(nm):
        raise Problem(
            at,
            Said(
                "{Channel} has {count} values for {count_2} wavelengths; each "
                "wavelength needs one.",
                Channel=called,
                count=len(values),
                count_2=len(nm),
            ),
        )
    peak = float(np.max(values))
    if peak <= 0.0:
        raise Problem(at, Said("{Channel} sees nothing at all.", Channel=called))
    if np.min(values) < -_NOISE * peak:
        raise Problem(
            at,
            Said(
                "{Channel} is below zero at {nm:g} nm; give what the sensor sees, "
                "not what a matrix made of it.",
                Channel=called,
                nm=float(nm[int(np.argmin(values))]),
            ),
        )
    seen = np.interp(NM, nm, np.clip(values, 0.0, None) / peak, left=0.0, right=0.0)
    if np.max(seen) <= 0.0:
        raise Problem(at, Said("{Channel} sees nothing at all.", Channel=called))
    return seen
