"""Colours as a screen shows them: adapted to its white, within its gamut, in 8 bits.

Adaptation is CAT16 in one step, complete (D = 1): Li, Li, Wang, Zu, Luo, Cui, Melgosa, Brill and
Pointer (2017), 'Comprehensive color solutions: CAM16, CAT16, and CAM16-UCS', Color Research and
Application 42:6. Displays are sRGB (IEC 61966-2-1) and Display P3 (the primaries of SMPTE RP 431-2
with the white D65 and the curve of sRGB).
"""

from __future__ import annotations

from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_xyz
from evenkelvin.data import Floats

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: How the white is brought to that of the display.
ADAPTATION = "CAT16"
#: x, y of the white of both displays, as IEC 61966-2-1 rounds D65.
DISPLAY_WHITE = np.array([0.3127, 0.3290])

_CAT16 = np.array(
    [
        [0.401288, 0.650173, -0.051461],
        [-0.250268, 1.204414, 0.045854],
        [-0.002079, 0.048952, 0.953127],
    ]
)
#: x, y of red, green and blue.
_PRIMARIES = {
    "srgb": np.array([[0.640, 0.330], [0.300, 0.600], [0.150, 0.060]]),
    "p3": np.array([[0.680, 0.320], [0.265, 0.690], [0.150, 0.060]]),
}


def _rgb_to_xyz(primaries: Floats) -> Floats:
    columns = xy_to_xyz(primaries).T
    return np.asarray(columns * np.linalg.solve(columns, xy_to_xyz(DISPLAY_WHITE)))


_FROM_XYZ = {name: np.linalg.inv(_rgb_to_xyz(corners)) for name, corners in _PRIMARIES.items()}


def adaptation(white_xy: Floats) -> Floats:
    """Return the matrix from X, Y, Z at a white to those that look alike at the display's, (3, 3).

    Any white that is a real colour will do: no response to it is negative.
    """
    seen_at = _CAT16 @ xy_to_xyz(white_xy)
    gains = (_CAT16 @ xy_to_xyz(DISPLAY_WHITE)) / seen_at
    return np.asarray(np.linalg.inv(_CAT16) @ (gains[:, np.newaxis] * _CAT16))


def on_display(xyz: Floats, display: str) -> tuple[NDArray[np.int_], NDArray[np.bool_]]:
    """Return the 8-bit colour of a display, and whether it had to be drawn in.

    What the display cannot show is always drawn in the same way: on a straight line in linear
    light towards the grey of the same luminance, just until it can be shown.

    Parameters
    ----------
    xyz
        In the white of the display at Y = 1, shape (..., 3).
    display
        "srgb" or "p3".

    Returns
    -------
    tuple
        Red, green and blue from 0 to 255, shape (..., 3), and shape (...).
    """
    rgb = xyz @ _FROM_XYZ[display].T
    grey = np.clip(xyz[..., 1:2], 0.0, 1.0)
    away = rgb - grey
    with np.errstate(divide="ignore", invalid="ignore"):
        room = np.where(away > 0.0, (1.0 - grey) / away, np.where(away < 0.0, -grey / away, 1.0))
    part = np.clip(np.min(room, axis=-1, keepdims=True), 0.0, 1.0)
    drawn_in = np.any((rgb < -1e-6) | (rgb > 1.0 + 1e-6), axis=-1)
    return _encoded(np.clip(grey + part * away, 0.0, 1.0)), drawn_in


def brightest(xyz: Floats, display: str) -> NDArray[np.int_]:
    """Return the nearest thing of a display to pure colours, as bright as it goes, shape (..., 3).

    What a primary would have to give below zero is left out. Common practice, no source.
    """
    rgb = np.clip(xyz @ _FROM_XYZ[display].T, 0.0, None)
    return _encoded(rgb / np.max(rgb, axis=-1, keepdims=True))


def _encoded(linear: Floats) -> NDArray[np.int_]:
    """Return linear light from 0 to 1 in the curve of IEC 61966-2-1, in 8 bits."""
    curved = 1.055 * linear ** (1.0 / 2.4) - 0.055
    encoded = np.where(linear <= 0.0031308, 12.92 * linear, curved)
    return np.rint(255.0 * encoded).astype(int)
