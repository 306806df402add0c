"""Whether lights agree to a camera, which need not see what the eye sees.

The camera is the standard one of EBU Tech 3355 (TLCI-2012), balanced for the target: a grey card
in each light in turn is shown on its display, and its distance from the display's white is
counted in the same steps of u′ v′ as the eye's.
"""

from __future__ import annotations

import numpy as np

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.colorimetry.illuminant import daylight, planck
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.data import Floats
from evenkelvin.lights.reading import Reading
from evenkelvin.rendering.camera import NM, white_shift

#: From here on a white stands for daylight, below it for a black body (as SMPTE ST 2122 has it).
_DAYLIGHT_FROM_K = 4000.0


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
    kelvin = target.cct_k
    light = daylight(GRID, kelvin) if kelvin >= _DAYLIGHT_FROM_K else planck(GRID, kelvin)
    bent = bend(light[np.newaxis], target.xy)
    return np.asarray(bent[0]) if len(bent) else None


def camera_steps(light: Floats, balanced_for: Floats) -> float:
    """Return how far a light is off to the camera, in steps: (81,) and (81,).

    Raises
    ------
    Unrated
        When the camera sees nothing of one of them.
    """
    shift = white_shift(light[: len(NM)], balanced_for[: len(NM)])
    return float(np.hypot(*shift) / STEP_UV)
