"""All lights of a setup, each against what it is meant to be: who is out, and what it takes."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.filters.gel import Gel
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.dimming import Dimming, dimming
from evenkelvin.lights.fixing import Landing, Offset, landings, lands, offset, rank
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.tolerance import RANK, Verdict, verdict

#: Lights meant alike that read within so many steps of each other are hung alike.
TWIN_STEPS = 1.0
#: Of how many packs of each twin one for all of them is looked for.
_TWIN_PACKS = 8


@dataclass(frozen=True, eq=False)
class Member:
    """One light of the set: its target, offset and verdict, and its best pack or dimmer setting.

    All of these are None where the light is not judged; ``stops_to_hero`` may still be known.
    """

    target: Reading | None
    offset: Offset | None
    verdict: Verdict | None
    stops_to_hero: float | None
    best: Landing | None
    dim: Dimming | None


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
    lights: Sequence[Reading],
    targets: Sequence[Reading | None],
    kit: tuple[Gel, ...],
    radius: float,
    hero: Reading | None = None,
    depth: int = DEEPEST,
) -> list[Member]:
    """Return each light's standing against its target, None for a light that is not judged.

    A pack is looked for only where a light does not hold, and given only when it helps. Twins get
    one pack (see :func:`twins`).
    """
    members: list[Member] = []
    packs: list[list[Landing]] = []
    groups = twins(lights, targets)
    hung_alike = {k for group in groups for k in group}
    for index, (light, target) in enumerate(zip(lights, targets, strict=True)):
        stops = stops_between(light, hero) if hero is not None else None
        packs.append([])
        if target is None:
            members.append(Member(None, None, None, stops, None, None))
            continue
        found = offset(light, target)
        word = verdict(found.steps, radius)
        if word != "holds":
            most = _TWIN_PACKS if index in hung_alike else 1
            packs[-1] = landings(light, target, kit, radius, depth, most)
        helps = bool(packs[-1]) and packs[-1][0].delta_uv < found.delta_uv
        best = packs[-1][0] if helps else None
        members.append(Member(target, found, word, stops, best, dimming(light, target, radius)))
    for group in groups:
        best_for_all = _one_pack(
            [lights[k] for k in group], [members[k] for k in group], [packs[k] for k in group],
            radius,
        )  # fmt: skip
        for k, best in zip(group, best_for_all, strict=True):
            members[k] = replace(members[k], best=best)
    return members


def twins(lights: Sequence[Reading], targets: Sequence[Reading | None]) -> list[list[int]]:
    """Return groups of lights, by index, that should be hung alike.

    They have one target, the same gel hangs on them now, and each reads within a step of every
    other.
    """
    if not lights:
        return []
    uv = xy_to_uv_prime(np.stack([light.xy for light in lights]))
    near = delta_uv_prime(uv[:, np.newaxis], uv) <= TWIN_STEPS * STEP_UV
    hang = [sorted(gel.name for gel in light.pack) for light in lights]
    groups: list[list[int]] = []
    for index, target in enumerate(targets):
        if target is None:
            continue
        for group in groups:
            if all(
                near[index, k] and hang[index] == hang[k] and _same(target, targets[k])
                for k in group
            ):
                group.append(index)
                break
        else:
            groups.append([index])
    return [group for group in groups if len(group) > 1]


def _same(target: Reading, other: Reading | None) -> bool:
    return other is not None and bool(np.abs(target.xy - other.xy).max() <= 1e-9)


def _one_pack(
    lights: Sequence[Reading],
    members: Sequence[Member],
    packs: Sequence[Sequence[Landing]],
    radius: float,
) -> list[Landing | None]:
    """Return the best pack that all of a group can share; each its own where one would suffer."""
    own = [member.best for member in members]
    if any(best is None for best in own):
        return own
    every = list(dict.fromkeys(landing.gels for some in packs for landing in some))
    of_each = [
        lands(light, member.target.xy, every, radius)
        for light, member in zip(lights, members, strict=True)
        if member.target is not None
    ]
    shared = [
        landed
        for landed in zip(*of_each, strict=True)
        if all(
            best is not None and RANK[one.verdict] <= RANK[best.verdict]
            for one, best in zip(landed, own, strict=True)
        )
    ]
    if not shared:
        return own
    best_shared = min(shared, key=lambda landed: max(rank(one) for one in landed))
    return [*best_shared]


def spread(lights: Sequence[Reading], targets: Sequence[Reading | None]) -> Spread:
    """Return the largest distance between any two lights, what they are meant to be taken away.

    Lights that are not judged do not count.
    """
    judged = [k for k, target in enumerate(targets) if target is not None]
    if not judged:
        return Spread(0.0, (0, 0))
    uv = np.stack(
        [
            xy_to_uv_prime(light.xy) - xy_to_uv_prime(target.xy)
            for light, target in zip(lights, targets, strict=True)
            if target is not None
        ]
    )
    apart = delta_uv_prime(uv[:, np.newaxis], uv[np.newaxis])
    first, second = np.unravel_index(int(np.argmax(apart)), apart.shape)
    return Spread(float(apart.max() / STEP_UV), (judged[int(first)], judged[int(second)]))
