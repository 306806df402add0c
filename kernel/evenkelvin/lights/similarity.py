"""How alike the spectra of a set are, where they were measured."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.lights.reading import Reading
from evenkelvin.rendering.ssi import Comparer
from evenkelvin.rendering.verdict import UNLIKE_SSI


@dataclass(frozen=True)
class Unlike:
    """Two lights, by index, whose x y agree and whose spectra do not; SSI against the first."""

    first: int
    second: int
    steps: float
    ssi: int


@dataclass(frozen=True)
class Similarities:
    """SSI of each light against the hero, None where it cannot be told; and the unlike pairs."""

    to_hero: list[int | None]
    unlike: list[Unlike]


def similarities(
    lights: list[Reading],
    radius: float,
    hero: int | None,
    alike: Sequence[Sequence[int]] | None = None,
) -> Similarities:
    """Return how alike the measured spectra are.

    Parameters
    ----------
    lights
        Those without a spectrum are passed over.
    radius
        Distance in steps within which two lights agree in x y.
    hero
        Index of the light that the others are compared with.
    alike
        Groups of lights that are meant alike, by index: only their pairs can be unlike. By
        default all are.
    """
    group = {k: n for n, some in enumerate(alike or [range(len(lights))]) for k in some}
    places = [k for k, light in enumerate(lights) if light.spectrum is not None]
    comparer = Comparer([s for light in lights if (s := light.spectrum) is not None])
    to_hero: list[int | None] = [None] * len(lights)
    if hero is not None and hero in places:
        for at, k in enumerate(places):
            found = comparer.similarity(at, places.index(hero)) if k != hero else None
            to_hero[k] = found.value if found else None
    unlike: list[Unlike] = []
    if len(places) > 1:
        uv = np.stack([xy_to_uv_prime(lights[k].xy) for k in places])
        steps = delta_uv_prime(uv[:, np.newaxis], uv[np.newaxis]) / STEP_UV
        for one, other in np.argwhere(np.triu(steps <= radius, 1)):
            if group.get(places[one], -1) != group.get(places[other], -2):
                continue
            first, second = (other, one) if places[other] == hero else (one, other)
            found = comparer.similarity(int(second), int(first))
            if found is not None and found.value < UNLIKE_SSI:
                apart = float(steps[one, other])
                unlike.append(Unlike(places[first], places[second], apart, found.value))
    return Similarities(to_hero, sorted(unlike, key=lambda pair: pair.ssi))
