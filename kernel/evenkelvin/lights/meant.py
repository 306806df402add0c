"""What a light is meant to be beside the white: the one place where its target is decided.

A target comes from the white that the camera is set to and from what the light means: that white
itself, warmer or cooler beside it, as that white would be through gels, a colour of its own, like
another light or an earlier reading, or none at all. Every offset, verdict, pack and plan goes by
it.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from functools import cached_property
from typing import Literal

import numpy as np

from evenkelvin.colorimetry.bending import bend
from evenkelvin.colorimetry.chromaticity import (
    uv_prime_to_xy,
    uv_to_uv_prime,
    xy_to_uv_prime,
    xyz_to_uv_prime,
)
from evenkelvin.colorimetry.illuminant import daylight, planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import LARGEST_DUV, cct_to_uv, xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.reading import READING_K, Reading, pack_transmittance
from evenkelvin.said import Figure, Said, joined

#: From here on a white stands for daylight, below it for a black body (as SMPTE ST 2122 has it).
DAYLIGHT_FROM_K = 4000.0

Way = Literal["white", "beside", "through", "own", "like", "found"]


@dataclass(frozen=True, eq=False)
class Meant:
    """What one light is meant to be.

    ``mired`` (+ warmer) and ``duv`` are beside the white; ``gels`` are what it would be seen
    through; ``colour`` is a colour of its own or an earlier reading; ``other`` is the index of
    another light. ``name`` is what that light or reading is called.
    """

    way: Way = "white"
    mired: float = 0.0
    duv: float = 0.0
    gels: tuple[Gel, ...] = ()
    colour: Reading | None = None
    other: int | None = None
    name: str = ""

    @property
    def judged(self) -> bool:
        """Whether the light has a target at all."""
        return self.way != "found"


AS_WHITE = Meant()
#: The spectra of a light of which only the colour is known.
_UNKNOWN = np.empty((0, len(GRID)))


class NoTarget(Exception):
    """Why there is no such colour beside this white: a sentence."""


@dataclass(frozen=True, eq=False)
class Whites:
    """Whites that the camera may be set to, n of them.

    ``uv_prime`` (n, 2), ``cct_k`` and ``duv`` (n,), NaN where a white has no CCT; ``light`` is
    the spectrum of the white where it was read, shape (81,).
    """

    uv_prime: Floats
    cct_k: Floats
    duv: Floats
    light: Floats | None = None

    @cached_property
    def lights(self) -> Floats:
        """The light of each white, as read or as it stands for it, shape (n, 81)."""
        if self.light is not None:
            return self.light[np.newaxis]
        return stands_for(self.cct_k, uv_prime_to_xy(self.uv_prime))


def one_white(white: Reading) -> Whites:
    """Return the white that the camera is set to, or a light that was read, as :class:`Whites`."""
    read = white.spectrum is not None or white.lamp != "unknown"
    return Whites(
        xy_to_uv_prime(white.xy)[np.newaxis],
        np.array([white.cct_k]),
        np.array([white.duv]),
        white.spectra[0] if read and len(white.spectra) else None,
    )


def stands_for(cct_k: Floats, xy: Floats) -> Floats:
    """Return the light that each white stands for: (n,) and (n, 2) to (n, 81).

    A black body below 4000 K, daylight from there on, bent to the very x y; NaN where no bent
    spectrum reaches it.
    """
    kelvins = np.where(np.isfinite(cct_k), cct_k, DAYLIGHT_FROM_K)
    lights = np.stack(
        [
            planck(GRID, kelvin) if kelvin < DAYLIGHT_FROM_K else daylight(GRID, min(kelvin, 25e3))
            for kelvin in kelvins
        ]
    )
    together = bend(lights, xy)
    if len(together) == len(lights):
        return together
    found = np.full(lights.shape, np.nan)
    for row, (light, aim) in enumerate(zip(lights, xy, strict=True)):
        bent = bend(light[np.newaxis], aim)
        if len(bent):
            found[row] = bent[0]
    return found


def _beside(whites: Whites, meant: Meant) -> Floats:
    kelvins = 1e6 / (1e6 / whites.cct_k + meant.mired)
    duv = whites.duv + meant.duv
    with np.errstate(invalid="ignore"):
        there = (kelvins >= READING_K[0]) & (kelvins <= READING_K[1])
        there &= np.abs(duv) <= LARGEST_DUV
    aims = np.full(whites.uv_prime.shape, np.nan)
    if there.any():
        aims[there] = uv_to_uv_prime(cct_to_uv(kelvins[there], duv[there]))
    return aims


def _through(whites: Whites, gels: tuple[Gel, ...]) -> Floats:
    """Return the light of each white through gels, shape (n, 81)."""
    return np.asarray(whites.lights * pack_transmittance(gels))


def aims(
    whites: Whites,
    meant: Sequence[Meant],
    lights: Sequence[Reading],
    stays: Sequence[bool] | None = None,
) -> list[Floats | None]:
    """Return where each light shall be at each white, in u′ v′.

    Parameters
    ----------
    whites
        n of them.
    meant
        One for each light, with no circle of lights that are like each other.
    lights
        As they were read.
    stays
        Whether a light stays as it was read. What is like it is then like that reading; what is
        like a light that does not stay shares its target. By default all stay.

    Returns
    -------
    list
        A light each: shape (n, 2), NaN where there is no such colour beside a white; None for a
        light that is not judged.
    """
    found: dict[int, Floats | None] = {}

    def aim(index: int) -> Floats | None:
        if index not in found:
            found[index] = _aim(index)
        return found[index]

    def _aim(index: int) -> Floats | None:
        means = meant[index]
        if means.way == "found":
            return None
        if means.way == "beside":
            return _beside(whites, means)
        if means.way == "through" and means.gels:
            return xyz_to_uv_prime(_through(whites, means.gels) @ observer_grid())
        if means.colour is not None:
            return _all(xy_to_uv_prime(means.colour.xy))
        if means.other is not None:
            shared = None if stays is None or stays[means.other] else aim(means.other)
            return _all(xy_to_uv_prime(lights[means.other].xy)) if shared is None else shared
        return whites.uv_prime

    def _all(uv_prime: Floats) -> Floats:
        return np.broadcast_to(uv_prime, whites.uv_prime.shape)

    return [aim(index) for index in range(len(meant))]


def targets(
    white: Reading, meant: Sequence[Meant], lights: Sequence[Reading]
) -> list[Reading | None]:
    """Return the target of each light beside one white; None for a light that is not judged.

    Raises
    ------
    NoTarget
        With the index of the light and a sentence, when there is no such colour.
    """
    found: list[Reading | None] = []
    for index, (means, aim) in enumerate(
        zip(meant, aims(one_white(white), meant, lights), strict=True)
    ):
        if aim is None:
            found.append(None)
        elif means.way == "white" or (means.way == "through" and not means.gels):
            found.append(_of_any_amount(white))
        elif means.colour is not None:
            found.append(means.colour)
        elif means.other is not None:
            found.append(_of_any_amount(lights[means.other]))
        elif np.isnan(aim).any():
            raise NoTarget(index, why_not(white, means))
        else:
            xy = uv_prime_to_xy(aim[0])
            through = means.way == "through" and means.gels
            spectra = _through(one_white(white), means.gels) if through else _UNKNOWN
            found.append(Reading(xy, *xy_to_cct(xy), spectra))
    return found


def _of_any_amount(light: Reading) -> Reading:
    """Return a target of which only an earlier reading of the light itself has an amount."""
    return replace(light, illuminance_lx=None, exposure_lx_s=None)


def why_not(white: Reading, meant: Meant) -> Said:
    """Return why there is no such colour beside a white."""
    if meant.way == "through":
        return Said("No lamp gives this white: say what the light is meant to be as x y.")
    if not np.isfinite(white.cct_k):
        return Said(
            "This white has no CCT, so nothing is warmer or cooler beside it: "
            "say what the light is meant to be as x y."
        )
    low, high = READING_K
    return Said(
        "Meant {offset} it would lie beyond {low:.0f}–{high:.0f} K, or too far from white: "
        "the white is {white:.0f} K.",
        offset=_beside_words(meant),
        low=low,
        high=high,
        white=white.cct_k,
    )


def groups_alike(targets: Sequence[Reading | None]) -> list[list[int]]:
    """Return groups of lights, by index, that have one target; each light is in one of them.

    Those that are not judged are in none.
    """
    groups: list[tuple[Floats, list[int]]] = []
    for index, target in enumerate(targets):
        if target is None:
            continue
        for xy, group in groups:
            if np.allclose(target.xy, xy, rtol=0.0, atol=1e-9):
                group.append(index)
                break
        else:
            groups.append((target.xy, [index]))
    return [group for _, group in groups]


def meant_words(meant: Meant) -> Said:
    """Return a meaning as people say it: '60 mired cooler than the white'."""
    if meant.way == "beside":
        return _beside_words(meant)
    if meant.way == "through":
        gels = joined([gel.name for gel in meant.gels], " + ") if meant.gels else Said("no gel")
        return Said("the white through {gels}", gels=gels)
    if meant.way == "like":
        if meant.name:
            return Said("like {name}", name=meant.name)
        return Said("like the reading it is to match")
    if meant.colour is not None:
        x, y = meant.colour.xy
        if np.isfinite(meant.colour.cct_k):
            return Said("{kelvin:.0f} K of its own", kelvin=meant.colour.cct_k)
        return Said("x {x:.4f} y {y:.4f} of its own", x=float(x), y=float(y))
    return Said("as found") if meant.way == "found" else Said("as the white")


def _beside_words(meant: Meant) -> Said:
    size = abs(meant.mired)
    beside = (
        Said("{mired:g} mired cooler than the white", mired=size)
        if meant.mired < 0
        else Said("{mired:g} mired warmer than the white", mired=size)
    )
    if not meant.duv:
        return beside
    return joined([beside, Said("Duv {duv}", duv=Figure(f"{meant.duv:+.4f}".replace("-", "−")))])
