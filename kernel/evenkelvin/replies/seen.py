"""Colours for a screen, as the plain data that several asks answer with."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import xyz_to_xy
from evenkelvin.colorimetry.display import adaptation, on_display
from evenkelvin.data import Floats
from evenkelvin.lights.showing import Shown
from evenkelvin.rendering import seen
from evenkelvin.rendering.camera import Camera

if TYPE_CHECKING:
    from numpy.typing import NDArray


class Look:
    """Whose look at lights it is: an eye adapted to a white, or a camera balanced for a light."""

    def __init__(
        self,
        adapt: Floats | None = None,
        balanced_for: Floats | None = None,
        camera: Camera | None = None,
    ) -> None:
        self._adapt, self._balanced_for, self._camera = adapt, balanced_for, camera

    def at(self, one: Shown) -> dict[str, Any]:
        """Return what cards and surfaces look like in a light.

        ``{surface: {"srgb", "p3", "clipped", "guess", "range"}}``. The cards of an eye are exact
        where the colour of the light is known; a camera goes by spectra alone.

        Raises
        ------
        Unrated
            When the camera sees nothing of it.
        """
        if self._balanced_for is not None:
            lights = one.spectra
            if one.white:
                lights = np.stack([self._balanced_for, *lights])
            xyz, held = seen.by_camera(lights, self._balanced_for, self._camera)
            if one.white:
                # It was balanced for it, whatever its spectrum.
                xyz[:, : seen.CARDS], held[:, : seen.CARDS] = xyz[0, : seen.CARDS], True
            return _patches(xyz, held, one.measured or one.white, one.measured)
        assert self._adapt is not None
        xyz = seen.by_eye(one.spectra, self._adapt)
        if one.xy is not None:
            xyz[:, : seen.CARDS] = seen.cards_by_eye(one.xy, self._adapt)
        held = np.ones(xyz.shape[:2], dtype=bool)
        return _patches(xyz, held, one.measured or one.xy is not None, one.measured)


def eye_at(white_xy: Floats) -> Look:
    """Return the look of an eye that is adapted to a white."""
    return Look(adapt=adaptation(white_xy))


def camera_balanced_for(light: Floats, camera: Camera | None = None) -> Look:
    """Return the look of a camera whose white is a light, (81,); the standard one unless given."""
    return Look(balanced_for=light, camera=camera)


def greys_by_eye(xy: Floats, whites: Floats) -> list[dict[str, Any] | None]:
    """Return a grey card in each of many lights, as an eye adapted to a white of its own sees it.

    Both of shape (n, 2). None where either colour is not known.
    """
    known = np.isfinite(xy).all(axis=1) & np.isfinite(whites).all(axis=1)
    xyz = np.full((len(xy), 3), np.nan)
    for white in np.unique(whites[known], axis=0):
        here = known & (whites == white).all(axis=1)
        xyz[here] = seen.cards_by_eye(xy[here], adaptation(white))[:, 1]
    return screen_colours(xyz)


def pairs_by_eye(xyz: Floats) -> list[list[dict[str, Any] | None]]:
    """Return surfaces in a light, each beside itself in another, the eye adapted to either.

    ``xyz`` has white first and then the surfaces, shape (2, 1 + n, 3).
    """
    adapted = [
        each[1:] / each[0, 1] @ adaptation(xyz_to_xy(each[0])).T for each in xyz
    ]  # fmt: skip
    return [list(pair) for pair in zip(*map(screen_colours, adapted), strict=True)]


def screen_colours(xyz: Floats) -> list[dict[str, Any] | None]:
    """Return colours that are known for sure, in the white of the display, shape (n, 3).

    None where one is not known.
    """
    known = np.asarray(np.isfinite(xyz).all(axis=1))
    some = np.where(known[:, np.newaxis], xyz, 0.0)
    codes, clipped = on_display(some, "srgb")
    wide, _ = on_display(some, "p3")
    return [
        {"srgb": srgb, "p3": p3, "clipped": drawn_in, "guess": False, "range": None}
        if sure
        else None
        for srgb, p3, drawn_in, sure in zip(
            codes.tolist(), wide.tolist(), clipped.tolist(), known, strict=True
        )
    ]


def _patches(
    xyz: Floats, held: NDArray[np.bool_], exact_cards: bool, exact: bool
) -> dict[str, Any]:
    codes, drawn_in = on_display(xyz, "srgb")
    wide, _ = on_display(xyz[0], "p3")
    clipped = drawn_in | ~held
    patches = {}
    for k, name in enumerate(seen.SURFACES):
        guess = not (exact_cards if k < seen.CARDS else exact)
        patches[name] = {
            "srgb": codes[0, k].tolist(),
            "p3": wide[k].tolist(),
            "clipped": bool(clipped[0, k]),
            "guess": guess,
            "range": _farthest(codes[:, k]) if guess else None,
        }
    return patches


def _farthest(codes: NDArray[np.int_]) -> list[list[int]]:
    """Return the two colours that are most unlike, of shape (n, 3)."""
    # As a product of matrices, whole numbers throughout: hundreds of stand-ins, and each with each.
    points = codes.astype(np.float64)
    squares = np.sum(points**2, axis=-1)
    apart = squares[:, np.newaxis] + squares - 2.0 * points @ points.T
    first, second = divmod(int(np.argmax(apart)), len(codes))
    return [codes[first].tolist(), codes[second].tolist()]
