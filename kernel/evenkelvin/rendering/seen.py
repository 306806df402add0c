"""What a light looks like: cards and surfaces in it, as X, Y, Z for a screen.

Each light is shown at its own exposure: a grey card in it has the luminance of 18 %, whatever the
light's level. What is told apart is colour; how bright a light is, is told in stops elsewhere.
"""

from __future__ import annotations

from functools import cache
from typing import TYPE_CHECKING

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_xyz
from evenkelvin.colorimetry.observer import GRID, observer_at, observer_grid
from evenkelvin.data import Floats, load_table
from evenkelvin.rendering.camera import GREY_CARD, NM, Camera, displayed, undone
from evenkelvin.rendering.reference import Unrated
from evenkelvin.said import Said

if TYPE_CHECKING:
    from numpy.typing import NDArray

#: The surfaces, in order. Cards reflect all wavelengths alike: 90 % and 18 %.
SURFACES = ("white", "grey", "skin_light", "skin_dark", "red", "foliage")
#: Of these the first so many are cards.
CARDS = 2
_GREY = SURFACES.index("grey")
#: The skins are CIE 13.3-1995 number 13 and that of JIS Z 8726, red and foliage 9 and 14.
_SAMPLES = ("r13", "r15", "r9", "r14")
_WHITE_CARD = 0.9
_NOTHING = Said("No picture: the camera sees nothing of so pure a colour.")


@cache
def reflectances() -> Floats:
    """Return the reflectance of :data:`SURFACES` on the search grid, shape (81, 6)."""
    table = load_table("cie_test_colours")
    on_grid = np.isin(table["wavelength_nm"], GRID)
    cards = [np.full(len(GRID), _WHITE_CARD), np.full(len(GRID), GREY_CARD)]
    return np.column_stack([*cards, *(table[name][on_grid] for name in _SAMPLES)])


def exposed(xyz: Floats) -> Floats:
    """Return X, Y, Z of :data:`SURFACES`, (..., 6, 3), at the exposure that suits the grey card."""
    return np.asarray(xyz * (GREY_CARD / xyz[..., _GREY : _GREY + 1, 1:2]))


def by_eye(lights: Floats, adapt: Floats) -> Floats:
    """Return :data:`SURFACES` in some lights as an eye adapted to a white sees them.

    Parameters
    ----------
    lights
        Relative power on the search grid, shape (n, 81).
    adapt
        From X, Y, Z at the white to the display's, by :func:`.display.adaptation`, shape (3, 3).

    Returns
    -------
    array
        X, Y, Z in the white of the display at Y = 1, shape (n, 6, 3).
    """
    weights = reflectances()[:, :, np.newaxis] * observer_grid()[:, np.newaxis, :]
    return exposed(np.tensordot(lights, weights, axes=1) @ adapt.T)


def cards_by_eye(xy: Floats, adapt: Floats) -> Floats:
    """Return the cards alone in lights of which only the colour is known, shape (..., 2, 3)."""
    card = (xy_to_xyz(xy) @ adapt.T)[..., np.newaxis, :]
    return np.asarray(card / card[..., 1:2] * [[_WHITE_CARD], [GREY_CARD]])


def by_camera(
    lights: Floats, balanced_for: Floats, camera: Camera | None = None
) -> tuple[Floats, NDArray[np.bool_]]:
    """Return :data:`SURFACES` in some lights as a camera shows them, balanced for another light.

    The colour is exactly that which the display of the camera shows, the one that a set is judged
    by; of its contrast the luminance is freed, so that a card in the white looks alike by eye and
    by camera.

    Parameters
    ----------
    lights
        Relative power on the search grid, shape (n, 81).
    balanced_for
        The same of the light that the camera takes for white, shape (81,).
    camera
        The standard one unless given.

    Returns
    -------
    tuple
        X, Y, Z in the white of the display at Y = 1, shape (n, 6, 3), and which of them the
        camera can hold, shape (n, 6).

    Raises
    ------
    Unrated
        When the camera sees nothing of one of the lights.
    """
    luminance = observer_at(NM)[:, 1]
    lit, white = lights[:, : len(NM)], balanced_for[: len(NM)]
    level = (lit @ luminance)[:, np.newaxis]
    if np.any(level <= 0.0) or white @ luminance <= 0.0:
        raise Unrated(_NOTHING)
    lit = lit / level
    surfaces = lit.T[:, :, np.newaxis] * reflectances()[: len(NM), np.newaxis, :]
    # The light is in the surfaces already.
    shown, held = displayed(
        np.ones(len(NM)), surfaces.reshape(len(NM), -1), white / (white @ luminance), camera
    )
    shown = shown.reshape(len(lights), -1, 3)
    level = shown[..., 1:2]
    if np.any(level[:, _GREY] <= 0.0):
        raise Unrated(_NOTHING)
    # What is black to the camera stays black.
    factor = np.where(level > 0.0, undone(level) / np.maximum(level, 1e-12), 0.0)
    return exposed(shown * factor), held.reshape(len(lights), -1)
