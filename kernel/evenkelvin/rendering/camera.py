"""Cameras, the display they are looked at on, and the chart they are shown.

The standard camera is that of TLCI-2012, and so are the display and the chart for any other:

EBU Tech 3355, 'Method for the assessment of the colorimetric properties of luminaires: the
Television Lighting Consistency Index (TLCI-2012)', edition 2013, appendices 4 and 5.
"""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.chromaticity import xyz_to_uv_prime, xyz_to_xy
from evenkelvin.colorimetry.difference import xyz_to_lab
from evenkelvin.colorimetry.display import adaptation
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


@dataclass(frozen=True, eq=False)
class Camera:
    """What a camera sees: ``curves`` (77, 3) of red, green and blue at :data:`NM`.

    A camera of one's own, of which no more is known, gets for each white the matrix that shows the
    chart in it as nearly as can be as the eye sees it (least squares in linear light), white
    staying white: Finlayson and Drew (1997), 'Constrained least-squares regression in color
    spaces', Journal of Electronic Imaging 6:4. Saturation and display are those of the standard,
    so that cameras can be compared. ``standard`` is the camera of EBU Tech 3355, whose matrix is
    published.
    """

    name: str
    curves: Floats
    standard: bool = False

    def matrices(self, white: Floats) -> tuple[Floats, Floats]:
        """Return what its channels, 1 each in the white, are multiplied by, one after the other.

        ``white`` is the light it is balanced for, shape (77,).
        """
        if self.standard:
            return _COLOUR_MATRIX, _SATURATION
        seen = (chart() * white[:, np.newaxis]).T @ (self.curves / (white @ self.curves))
        bars = observer_at(NM)
        white_xyz = white @ bars
        xyz = (chart() * white[:, np.newaxis]).T @ bars / white_xyz[1]
        wanted = xyz @ adaptation(xyz_to_xy(white_xyz)).T @ np.linalg.inv(_DISPLAY).T
        # Each row of the matrix sums to one: three numbers of which two are free.
        free = seen[:, 1:] - seen[:, :1]
        rest, *_ = np.linalg.lstsq(free, wanted - seen[:, :1], rcond=None)
        return np.column_stack([1.0 - rest.sum(axis=0), rest.T]), _SATURATION


@cache
def standard_camera() -> Camera:
    """Return the camera of EBU Tech 3355."""
    table = load_table("tlci2012_camera")
    curves = np.column_stack([table[channel] for channel in "rgb"])
    return Camera(Said("the standard camera"), curves, standard=True)


def sampled(spectrum: Spectrum) -> Floats:
    """Return a light at :data:`NM`, shape (77,); finer samples are averaged, so no line is lost."""
    return on_grid(spectrum)[: len(NM)]


def displayed(
    light: Floats,
    reflectances: Floats,
    balanced_for: Floats | None = None,
    camera: Camera | None = None,
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
    camera
        The standard one unless given.

    Returns
    -------
    tuple
        X, Y, Z of the display, its white (D65) at Y = 1, shape (n, 3), and which of the surfaces
        the camera can hold, shape (n,): those with no channel below zero after any matrix.

    Raises
    ------
    Unrated
        When a channel sees nothing of the light that the white is to be set to.
    """
    white = light if balanced_for is None else balanced_for
    eyes = standard_camera() if camera is None else camera
    raw = (reflectances * light[:, np.newaxis]).T @ eyes.curves
    peak = _PEAK_WHITE * (white @ eyes.curves)
    if np.any(peak <= 0.0):
        if eyes.standard:
            raise Unrated(
                Said("No score: the standard camera cannot be balanced for so pure a colour.")
            )
        raise Unrated(Said("{camera} cannot be balanced for so pure a colour.", camera=eyes.name))
    rgb = raw / peak
    held = np.ones(len(rgb), dtype=bool)
    for matrix in eyes.matrices(white):
        rgb = rgb @ matrix.T
        held &= np.all(rgb >= 0.0, axis=-1)
    linear = np.clip(rgb, 0.0, None)
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
    light: Floats,
    reflectances: Floats,
    balanced_for: Floats | None = None,
    camera: Camera | None = None,
) -> tuple[Floats, NDArray[np.bool_]]:
    """Return what :func:`displayed` shows as CIE 1976 L*, a*, b* in the white of the display."""
    xyz, held = displayed(light, reflectances, balanced_for, camera)
    return xyz_to_lab(xyz, _D65), held


def white_shift(light: Floats, balanced_for: Floats, camera: Camera | None = None) -> Floats:
    """Return how far a grey card is off white on the display, in u′ v′, shape (2,).

    The camera is balanced for one light and sees the card in another of the same luminance.

    Raises
    ------
    Unrated
        When it sees nothing of either.
    """
    luminance = observer_at(NM)[:, 1]
    lit, white = light / (light @ luminance), balanced_for / (balanced_for @ luminance)
    xyz, _ = displayed(lit, np.full((len(NM), 1), GREY_CARD), white, camera)
    if not np.any(xyz > 0.0):
        if camera is None or camera.standard:
            raise Unrated(Said("Not judged: the standard camera sees nothing of so pure a colour."))
        raise Unrated(Said("{camera} sees nothing of so pure a colour.", camera=camera.name))
    return np.asarray(xyz_to_uv_prime(xyz[0]) - xyz_to_uv_prime(_D65))
