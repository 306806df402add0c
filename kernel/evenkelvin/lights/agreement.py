"""All lights of a setup against one white: who holds, who is out, and what it takes."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.filters.gel import Gel
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.fixing import Landing, Offset, landings, offset
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.tolerance import Verdict, verdict


@dataclass(frozen=True, eq=False)
class Member:
    """One light of the set: its offset and verdict, stops to the hero, and its best pack."""

    offset: Offset
    verdict: Verdict
    stops_to_hero: float | None
    best: Landing | None


@dataclass(frozen=True)
class Spread:
    """How far apart the set is: the two farthest lights, and their distance in steps."""

    steps: float
    pair: tuple[int, int]


def stops_between(light: Reading, hero: Reading) -> float | None:
    """Return how many stops brighter a light is than the hero; None when it cannot be told."""
    for mine, other in (
        (light.illuminance_lx, hero.illuminance_lx),
        (light.exposure_lx_s, hero.exposure_lx_s),
    ):
        if mine is not None and other is not None:
            return float(np.log2(mine / other))
    return None


def agree(
    lights: list[Reading],
    target: Reading,
    kit: tuple[Gel, ...],
    radius: float,
    hero: Reading | None = None,
    depth: int = DEEPEST,
) -> list[Member]:
    """Return each light's standing against the target.

    A pack is looked for only where a light does not hold, and given only when it helps.
    """
    members: list[Member] = []
    for light in lights:
        found = offset(light, target)
        word = verdict(found.steps, radius)
        packs = landings(light, target, kit, radius, depth, 1) if word != "holds" else []
        helps = packs[0] if packs and packs[0].delta_uv < found.delta_uv else None
        stops = stops_between(light, hero) if hero is not None else None
        members.append(Member(found, word, stops, helps))
    return members


def spread(lights: list[Reading]) -> Spread:
    """Return the largest distance between any two lights."""
    uv = np.stack([xy_to_uv_prime(light.xy) for light in lights])
    apart = delta_uv_prime(uv[:, np.newaxis], uv[np.newaxis])
    first, second = np.unravel_index(int(np.argmax(apart)), apart.shape)
    return Spread(float(apart.max() / STEP_UV), (int(first), int(second)))
