"""Whether lights agree to a camera, which need not see what the eye sees.

The camera is the standard one of EBU Tech 3355 (TLCI-2012), or one's own, balanced for the
target: a grey card
in each light in turn is shown on its display, and its distance from the display's white is
counted in the same steps of u′ v′ as the eye's.
"""

from __future__ import annotations

import numpy as np

from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.data import Floats
from evenkelvin.lights.meant import stands_for
from evenkelvin.lights.reading import Reading
from evenkelvin.rendering.camera import NM, Camera, white_shift


def target_light(target: Reading, is_white: bool) -> Floats | None:
    """Return the light that the camera is balanced for, shape (81,); None when it is not known.

    Parameters
    ----------
    target
        The target.
    is_white
        Whether it is a white that the camera is set to, not a light that was read: a black body
        or daylight then stands for it.
    """
    if target.spectrum is not None:
        return np.asarray(target.spectra[0])
    if not is_white or not np.isfinite(target.cct_k):
        return None
    light = stands_for(np.array([target.cct_k]), target.xy[np.newaxis])[0]
    return light if np.isfinite(light).all() else None


def meant_light(target: Reading) -> Floats | None:
    """Return a light of the colour that another is meant to be, shape (81,); None without one.

    Its own spectrum where it has one, else what a white of that x y stands for.
    """
    if len(target.spectra):
        return np.asarray(target.spectra[0])
    return target_light(target, True)


def camera_steps(
    light: Floats,
    balanced_for: Floats,
    meant: Floats | None = None,
    camera: Camera | None = None,
) -> float:
    """Return how far a light is out to the camera, in steps, all of shape (81,).

    ``meant`` is the light that it should look like, that which the camera is balanced for unless
    given; ``camera`` is the standard one unless given.

    Raises
    ------
    Unrated
        When the camera sees nothing of one of them.
    """
    return float(np.hypot(*camera_shift(light, balanced_for, meant, camera)) / STEP_UV)


def camera_shift(
    light: Floats,
    balanced_for: Floats,
    meant: Floats | None = None,
    camera: Camera | None = None,
) -> Floats:
    """Return the same as a vector in u′ v′ of the display, shape (2,).

    Raises
    ------
    Unrated
        When the camera sees nothing of one of them.
    """
    shift = white_shift(light[: len(NM)], balanced_for[: len(NM)], camera)
    if meant is not None:
        shift = shift - white_shift(meant[: len(NM)], balanced_for[: len(NM)], camera)
    return shift
