"""The standard camera and display of TLCI-2012, and the chart they are shown.

EBU Tech 3355, 'Method for the assessment of the colorimetric properties of luminaires: the
Television Lighting Consistency Index (TLCI-2012)', edition 2013, appendices 4 and 5.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.chromaticity import xyz_to_uv_prime
from evenkelvin.colorimetry.difference import xyz_to_lab
from evenkelvin.colorimetry.observer import GRID, observer_at
from evenkelvin.colorimetry.spectrum import Spectrum, on_grid
from evenkelvin.data import Floats, load_table
from evenkelvin.rendering.reference import Unrated
from evenkelvin.said import Said

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: Wavelengths of every sum in nm, shape (77,).
NM: Floats = GRID[:77]

#: The coloured patches of the chart, in the order of the table.
PATCHES = (
    Said("dark skin"), Said("light skin"), Said("blue sky"), Said("foliage"),
    Said("blue flower"), Said("bluish green"), Said("orange"), Said("purplish blue"),
    Said("moderate red"), Said("purple"), Said("yellow green"), Said("orange yellow"),
    Said("blue"), Said("green"), Said("red"), Said("yellow"), Said("magenta"), Said("cyan"),
)  # fmt: skip

#: Reflectance of the grey card that a light's white is judged on.
GREY_CARD = 0.18
#: The reflector that is peak white.
_PEAK_WHITE = 0.9
_COLOUR_MATRIX = np.array([[1.182, -0.209, 0.027], [0.107, 0.890, 0.003], [0.040, -0.134, 1.094]])
#: Saturation at 90 %.
_SATURATION = 0.9 * np.eye(3) + (1.0 - 0.9) / 3.0
#: BT.709 primaries with D65 white to X, Y, Z.
_DISPLAY = np.array(
    [[0.412391, 0.357584, 0.180481], [0.212639, 0.715169, 0.072192], [0.019331, 0.119195, 0.950532]]
)
_DISPLAY_GAMMA = 2.4
#: The brightest code of 8 bits over white, both above black.
_CEILING = (255.0 - 16.0) / (235.0 - 16.0)
_D65 = np.array([0.3127 / 0.3290, 1.0, (1.0 - 0.3127 - 0.3290) / 0.3290])


@cache
def chart() -> Floats:
    """Return the reflectance factors of the eighteen patches, shape (77, 18)."""
    table = load_table("tlci2012_patches")
    return np.column_stack([table[f"patch{number}"] for number in range(1, 19)])


@cache
def _curves() -> Floats:
    table = load_table("tlci2012_camera")
    return np.column_stack([table[channel] for channel in "rgb"])


def sampled(spectrum: Spectrum) -> Floats:
    """Return a light at :data:`NM`, shape (77,); finer samples are averaged, so no line is lost."""
    return on_grid(spectrum)[: len(NM)]


def displayed(
    light: Floats, reflectances: Floats, balanced_for: Floats | None = None
) -> tuple[Floats, NDArray[np.bool_]]:
    """Return what the display shows of surfaces in a light.

    Parameters
    ----------
    light
        Relative power at :data:`NM`, shape (77,).
    reflectances
        Shape (77, n).
    balanced_for
        The light the camera's white is set to, on the scale of ``light``; the same light when
        not given.

    Returns
    -------
    tuple
        X, Y, Z of the display, its white (D65) at Y = 1, shape (n, 3), and which of the surfaces
        the camera can hold, shape (n,): those with no channel below zero after either matrix.

    Raises
    ------
    Unrated
        When a channel sees nothing of the light that the white is to be set to.
    """
    white = light if balanced_for is None else balanced_for
    raw = (reflectances * light[:, np.newaxis]).T @ _curves()
    peak = _PEAK_WHITE * (white @ _curves())
    if np.any(peak <= 0.0):
        raise Unrated(
            Said("No score: the standard camera cannot be balanced for so pure a colour.")
        )
    rgb = raw / peak
    coloured = rgb @ _COLOUR_MATRIX.T
    saturated = coloured @ _SATURATION.T
    held = np.all((coloured >= 0.0) & (saturated >= 0.0), axis=-1)
    linear = np.clip(saturated, 0.0, None)
    signal = np.where(linear < 0.018, 4.5 * linear, 1.099 * linear**0.45 - 0.099)
    shown = np.minimum(signal, _CEILING) ** _DISPLAY_GAMMA
    return shown @ _DISPLAY.T, held


def undone(luminance: Floats) -> Floats:
    """Return how much light a neutral surface gave that the display shows at a luminance.

    The contrast of camera and display undone; both relative to a perfect reflector in the white.
    """
    signal = luminance ** (1.0 / _DISPLAY_GAMMA)
    linear = np.where(signal < 4.5 * 0.018, signal / 4.5, ((signal + 0.099) / 1.099) ** (1 / 0.45))
    return np.asarray(_PEAK_WHITE * linear)


def seen_by_camera(
    light: Floats, reflectances: Floats, balanced_for: Floats | None = None
) -> tuple[Floats, NDArray[np.bool_]]:
    """Return what :func:`displayed` shows as CIE 1976 L*, a*, b* in the white of the display."""
    xyz, held = displayed(light, reflectances, balanced_for)
    return xyz_to_lab(xyz, _D65), held


def white_shift(light: Floats, balanced_for: Floats) -> Floats:
    """Return how far a grey card is off white on the display, in u′ v′, shape (2,).

    The camera is balanced for one light and sees the card in another of the same luminance.

    Raises
    ------
    Unrated
        When it sees nothing of either.
    """
    luminance = observer_at(NM)[:, 1]
    lit, white = light / (light @ luminance), balanced_for / (balanced_for @ luminance)
    xyz, _ = displayed(lit, np.full((len(NM), 1), GREY_CARD), white)
    if not np.any(xyz > 0.0):
        raise Unrated(Said("Not judged: the standard camera sees nothing of so pure a colour."))
    return np.asarray(xyz_to_uv_prime(xyz[0]) - xyz_to_uv_prime(_D65))
