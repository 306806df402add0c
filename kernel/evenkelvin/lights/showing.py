"""What a light may be, to be shown: its spectra, its colour where it is known, and how surely."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.meant import stands_for
from evenkelvin.lights.reading import Reading, pack_transmittance
from evenkelvin.lights.stand_in import stand_ins


@dataclass(frozen=True, eq=False)
class Shown:
    """A light to be shown.

    ``spectra`` (n, 81) is what it may be, the likeliest first; ``xy`` (2,) is its colour, None
    where that follows only from the spectra. ``measured`` is whether the spectrum is known,
    ``white`` whether it is the very white that all is seen at.
    """

    spectra: Floats
    xy: Floats | None
    measured: bool
    white: bool = False


@lru_cache(maxsize=256)
def _stands_for(cct_k: float, x: float, y: float) -> Floats:
    """Return the light that a white stands for; the same come again with every question."""
    return stands_for(np.array([cct_k]), np.array([[x, y]]))


def as_read(light: Reading) -> Shown:
    """Return a light as it was read."""
    return Shown(light.spectra, light.xy, light.spectrum is not None)


def with_pack(light: Reading, gels: tuple[Gel, ...]) -> Shown:
    """Return a light as it will be when exactly these gels hang on it."""
    through = pack_transmittance(gels) / pack_transmittance(light.pack)
    if np.allclose(through, 1.0):
        return as_read(light)
    return replace(as_read(light), spectra=light.spectra * through, xy=None)


def as_meant(target: Reading, white: Reading, through: tuple[Gel, ...] = ()) -> Shown:
    """Return the light that another is meant to be.

    Parameters
    ----------
    target
        What it is meant to be.
    white
        The white that the camera is set to.
    through
        The gels through which the target is that white.

    Raises
    ------
    Problem
        When no spectrum has that colour.
    """
    if target.spectrum is not None:
        return as_read(target)
    if through:
        return Shown(target.spectra, target.xy, white.spectrum is not None)
    spectra = target.spectra if len(target.spectra) else stand_ins(target.lamp, target.xy)
    if np.isfinite(target.cct_k):
        first = _stands_for(target.cct_k, *map(float, target.xy))
        spectra = np.concatenate([first[np.isfinite(first).all(axis=1)], spectra])
    return Shown(spectra, target.xy, False, bool(np.array_equal(target.xy, white.xy)))
