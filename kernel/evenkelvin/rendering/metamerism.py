"""What two lights make of the same surfaces, to the eye and to a camera.

Two lights can agree in x y and still show colours differently. Here the eighteen coloured patches
of the TLCI-2012 chart (EBU Tech 3355, appendix 4) are seen under both by the CIE 1931 2° observer
and by the TLCI-2012 standard camera, and compared by CIEDE2000 (ISO/CIE 11664-6).
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.difference import delta_e_2000, xyz_to_lab
from evenkelvin.colorimetry.observer import observer_at
from evenkelvin.colorimetry.spectrum import Spectrum
from evenkelvin.data import Floats
from evenkelvin.rendering.camera import GREY_CARD, NM, Camera, chart, sampled, seen_by_camera
from evenkelvin.rendering.reference import Unrated
from evenkelvin.said import Said

EYE = Said("CIE 1931 2°, each light's own white adapted to")
CAMERA = Said("TLCI-2012 standard camera and BT.709 display")
EDITION = Said("CIEDE2000 (ISO/CIE 11664-6:2014) on the chart of EBU Tech 3355 (TLCI-2012), 2013")

#: Patches 1 and 2 of the chart.
SKIN = slice(0, 2)


@dataclass(frozen=True)
class Metamerism:
    """Colour differences ΔE₀₀ of the chart's patches under two lights, each of shape (18,).

    ``eye`` and ``camera`` are balanced for each light in turn; ``camera`` is NaN where a patch
    falls outside what the camera can hold. ``grey`` is the difference of a grey card when the
    camera stays balanced for the first light and sees the second at the same luminance,
    ``grey_shift`` that of its a* (positive magenta, negative green) and b* (positive warm), and
    ``eye_grey`` the same difference to an eye that stays adapted to the first light.
    """

    eye: Floats
    camera: Floats
    grey: float
    eye_grey: float
    grey_shift: tuple[float, float]


def metamerism(first: Spectrum, second: Spectrum, camera: Camera | None = None) -> Metamerism:
    """Return how differently two lights show the chart, to the standard camera unless given.

    Raises
    ------
    Unrated
        When the eye or the camera cannot take one of the lights for a white.
    """
    lights = np.stack([sampled(first), sampled(second)])
    bars = observer_at(NM)
    white = lights @ bars
    if np.any(white <= 0.0):
        raise Unrated(Said("Not compared: one of the lights is too pure a colour to adapt to."))
    lights = lights / white[:, 1:2]
    white = white / white[:, 1:2]

    xyz = np.einsum("ln,np,nc->lpc", lights, chart(), bars)
    eye = xyz_to_lab(xyz, white[:, np.newaxis])
    (camera_1, held_1), (camera_2, held_2) = (
        seen_by_camera(light, chart(), camera=camera) for light in lights
    )
    grey = np.full((len(NM), 1), GREY_CARD)
    balanced, _ = seen_by_camera(lights[0], grey, camera=camera)
    unbalanced, _ = seen_by_camera(lights[1], grey, lights[0], camera)
    shift = unbalanced[0] - balanced[0]
    eye_grey = xyz_to_lab(GREY_CARD * white, white[0])
    return Metamerism(
        eye=delta_e_2000(eye[0], eye[1]),
        camera=np.where(held_1 & held_2, delta_e_2000(camera_1, camera_2), np.nan),
        grey=float(delta_e_2000(balanced, unbalanced)[0]),
        eye_grey=float(delta_e_2000(eye_grey[0], eye_grey[1])),
        grey_shift=(float(shift[1]), float(shift[2])),
    )
