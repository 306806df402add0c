"""One light against a white: how far it is off, and the packs that bring it there."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

import numpy as np

from evenkelvin.colorimetry.chromaticity import (
    uv_prime_to_xy,
    xy_to_uv_prime,
    xyz_to_uv_prime,
)
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import mired, xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.filters.gel import Gel
from evenkelvin.filters.pack import DEEPEST, SAME_STOPS, SAME_UV, Pack, search, touched
from evenkelvin.filters.scatter import landing_scatters
from evenkelvin.lights.reading import Reading, difference, moved, pack_transmittance
from evenkelvin.lights.region import PROMISE_RANK, UNSURE, Promise, Region, promise
from evenkelvin.lights.stand_in import guess
from evenkelvin.lights.tint import tint_words
from evenkelvin.lights.tolerance import RANK, Verdict, verdict
from evenkelvin.problem import Problem
from evenkelvin.said import Figure, Said, joined

#: What no stand-in shows: the last digit of a meter, and of the model (1 σ in each direction).
FLOOR_STEPS = 0.35
#: A pack that eats more than this many stops deserves a second thought (common practice).
HUNGRY_STOPS = 2.0


#: Of how many packs of the front, the best by their means, the odds are reckoned at least.
_TRIED = 12

#: What is to be done at the lamp, the least first.
Work = Literal["leave", "add", "take off", "swap", "hang anew"]


@dataclass(frozen=True)
class Offset:
    """How far a light is from a target: mired (+ warmer), Duv (+ greener), in u′ v′, and in x y.

    ``mired`` is None when one of the two has no CCT.
    """

    mired: float | None
    duv: float
    delta_uv: float
    xy: tuple[float, float]

    @property
    def steps(self) -> float:
        """The distance in steps of CIE TN 001:2014."""
        return self.delta_uv / STEP_UV


@dataclass(frozen=True, eq=False)
class Landing:
    """A pack on a light: what hangs, what changes, where it lands and what it costs.

    ``verdict`` is that of the best guess; ``odds`` are those that the light holds, and
    ``promise`` what may be said by them.
    """

    gels: tuple[Gel, ...]
    add: tuple[Gel, ...]
    take_off: tuple[Gel, ...]
    xy: Floats
    target_xy: Floats
    region: Region
    delta_uv: float
    verdict: Verdict
    odds: float
    promise: Promise
    stops_lost: float

    @property
    def pieces(self) -> int:
        """Number of gels that hang."""
        return len(self.gels)

    @property
    def work(self) -> Work:
        """What is to be done at the lamp."""
        on, off = len(self.add), len(self.take_off)
        if not on and not off:
            return "leave"
        if not off:
            return "add"
        if not on:
            return "take off"
        return "swap" if on == off == 1 else "hang anew"


def offset(light: Reading, target: Reading) -> Offset:
    """Return how far a light is from a target."""
    apart = None
    if np.isfinite(light.cct_k) and np.isfinite(target.cct_k):
        apart = float(mired(light.cct_k) - mired(target.cct_k))
    delta = float(delta_uv_prime(xy_to_uv_prime(light.xy), xy_to_uv_prime(target.xy)))
    x, y = light.xy - target.xy
    return Offset(apart, light.duv - target.duv, delta, (float(x), float(y)))


def offset_words(found: Offset, from_white: bool = True) -> Said:
    """Return an offset as people say it: '34 mired too cool, a hair green'.

    A light that is not meant to be the white itself is not too warm: it is 'warmer than meant'.
    """
    if found.mired is None:
        x, y = (Figure(f"{value:+.4f}".replace("-", "−")) for value in found.xy)
        return Said("{steps:.1f} colour steps away: x {x}, y {y}", steps=found.steps, x=x, y=y)
    size, warm = abs(found.mired), found.mired > 0
    if size < 0.5:
        warmth = Said("as warm as the target") if from_white else Said("as warm as meant")
    elif from_white:
        warmth = (
            Said("{mired:.0f} mired too warm", mired=size)
            if warm
            else Said("{mired:.0f} mired too cool", mired=size)
        )
    else:
        warmth = (
            Said("{mired:.0f} mired warmer than meant", mired=size)
            if warm
            else Said("{mired:.0f} mired cooler than meant", mired=size)
        )
    return joined([warmth, tint_words(found.duv)])


def land(light: Reading, target_xy: Floats, gels: tuple[Gel, ...], radius: float) -> Landing:
    """Return where a light lands with these gels on (see :func:`lands`)."""
    return lands(light, target_xy, [gels], radius)[0]


def lands(
    light: Reading, target_xy: Floats, packs: Sequence[tuple[Gel, ...]], radius: float
) -> list[Landing]:
    """Return where a light lands with each of these packs on, in place of what hangs now.

    Parameters
    ----------
    light
        As it was read; stops are counted from there.
    target_xy
        The white it should have, shape (2,).
    packs
        Each is everything that shall hang.
    radius
        Tolerance in steps.
    """
    wanted = xy_to_uv_prime(target_xy)
    found = []
    for gels, (region, stops_lost) in zip(packs, landing_regions(light, packs), strict=True):
        delta = float(delta_uv_prime(region.mean, wanted))
        odds, word = region.odds(wanted, radius), verdict(delta / STEP_UV, radius)
        found.append(
            Landing(
                gels=gels,
                add=difference(gels, light.pack),
                take_off=difference(light.pack, gels),
                xy=uv_prime_to_xy(region.mean),
                target_xy=target_xy,
                region=region,
                delta_uv=delta,
                verdict=word,
                odds=odds,
                promise=promise(odds, word),
                stops_lost=stops_lost,
            )
        )
    return found


def landing_regions(light: Reading, packs: Sequence[tuple[Gel, ...]]) -> list[tuple[Region, float]]:
    """Return where a light lands with each of these packs on in place of what hangs now, as far as
    its spectrum and the gels are known; and the stops that each costs.
    """
    if not packs:
        return []
    bars = observer_grid()
    count = len(light.spectra)
    changes = [moved(light.pack, gels) for gels in packs]
    through = np.stack([pack_transmittance(gels) for gels in packs])
    through = through / pack_transmittance(light.pack)
    # X, Y, Z of every pack on everything that the light may be, (packs, n, 3), by one product.
    lit = (light.spectra[:, np.newaxis] * bars.T).reshape(-1, len(GRID))
    xyz = (through @ lit.T).reshape(len(packs), count, 3)
    uv_prime = xyz_to_uv_prime(xyz)
    gained = np.log2(xyz[..., 1] / (light.spectra @ bars)[:, 1])
    of_gels, stops_of_gels = landing_scatters(light.spectra[0] * through, changes)
    if count == 1:
        return [
            (Region(uv_prime[k, 0], of_gels[k], float(stops_of_gels[k]), 1.0), -float(gained[k, 0]))
            for k in range(len(packs))
        ]
    weights = np.full(count, 1.0 / count) if light.weights is None else light.weights
    apart = uv_prime - uv_prime[:, :1]
    lamp = light.widen**2 * (np.swapaxes(apart, 1, 2) @ (apart * weights[:, np.newaxis]))
    spread = np.sqrt((gained - (gained @ weights)[:, np.newaxis]) ** 2 @ weights)
    found = []
    for k, changed in enumerate(changes):
        floor = np.eye(2) * (FLOOR_STEPS * STEP_UV) ** 2 if changed else 0.0
        whole = lamp[k] + floor + of_gels[k]
        region = Region(
            uv_prime[k, 0],
            whole,
            float(np.hypot(light.widen * spread[k], stops_of_gels[k])),
            float(np.trace(of_gels[k]) / np.trace(whole)) if changed else 0.0,
        )
        found.append((region, -float(gained[k, 0])))
    return found


def narrowing(light: Reading, landing: Landing) -> Said | None:
    """Return what would tell most where a light lands; None where it is told well enough."""
    if landing.promise not in UNSURE:
        return None
    vague = [gel for gel in landing.add + landing.take_off if gel.scatter]
    if landing.region.gel_share > 0.5 and vague:
        most = max(vague, key=lambda gel: gel.scatter)
        return Said("To know better, learn {gel} once: two readings of one lamp.", gel=most.name)
    if not light.evidence:
        return Said("To know better, type the Ra that the meter shows, under More to log.")
    return Said("To know better, load a spectrum of this light.")


def landings(
    light: Reading,
    target: Reading,
    kit: tuple[Gel, ...],
    radius: float,
    depth: int = DEEPEST,
    most: int | None = None,
) -> list[Landing]:
    """Return the packs worth hanging on a light, best first.

    The light is searched bare: gels already on it are divided out, may stay, go or change, and
    stops are counted from the light as it was read. The search is on the mean of what the light
    may be, the odds are of what it finds. A pack that holds for certain comes before one that
    should hold, that before one to be read again, and those before one that is near or out.
    Among those whose best guess holds, the least work at the lamp comes first (each gel put on or
    taken off is one move), then the brightest; among the others the closest. No pack that
    leaves the light as it is is listed.

    Parameters
    ----------
    light, target
        The reading and the white it should have.
    kit
        Gels to choose from; those on the light count as being at hand.
    radius
        Tolerance in steps.
    depth
        Most pieces.
    most
        How many packs at most; all of them by default.

    Returns
    -------
    list of Landing
        The Pareto front of distance, stops and pieces, and what one move or one swap on the gels
        that hang brings beyond it; empty when no gel helps.
    """
    at_hand = kit + tuple(gel for gel in dict.fromkeys(light.pack) if gel not in kit)
    bare = light.spectra[0] / pack_transmittance(light.pack)
    now = light.spectra[0] @ observer_grid()
    wanted = xy_to_uv_prime(target.xy)
    front = search(bare, wanted, at_hand, depth, now)
    hung = tuple(at_hand.index(gel) for gel in light.pack)
    if hung:
        front = _with_one_hand(front, hung, light, wanted, at_hand, depth)

    def place(pack: Pack) -> tuple[float, ...]:
        word = verdict(pack.delta_uv / STEP_UV, radius)
        if word == "holds":
            return (RANK[word], _moves(pack.gels, hung), pack.stops_lost)
        return (RANK[word], pack.delta_uv)

    work = sorted((pack for pack in front if _moves(pack.gels, hung)), key=place)
    tried = work if most is None else work[: max(most, _TRIED)]
    packs = [tuple(at_hand[index] for index in pack.gels) for pack in tried]
    return sorted(lands(light, target.xy, packs, radius), key=rank)[:most]


def rank(one: Landing) -> tuple[float, ...]:
    """Return what to sort packs by, the best first (see :func:`landings`)."""
    if one.verdict == "holds":
        return (PROMISE_RANK[one.promise], len(one.add) + len(one.take_off), one.stops_lost)
    return (PROMISE_RANK[one.promise], one.delta_uv)


def _moves(gels: tuple[int, ...], hung: tuple[int, ...]) -> int:
    """Return how many gels have to be put on or taken off."""
    if not hung:
        return len(gels)
    new, old = Counter(gels), Counter(hung)
    return (new - old).total() + (old - new).total()


def _with_one_hand(
    front: list[Pack],
    hung: tuple[int, ...],
    light: Reading,
    wanted_uv: Floats,
    at_hand: tuple[Gel, ...],
    depth: int,
) -> list[Pack]:
    """Return a front and what one hand at the lamp brings beyond it.

    The front counts pieces. With gels on the lamp it is moves that count: one more gel on what
    hangs may be three pieces, and yet less work than two others in its place.
    """
    stacks = touched(hung, at_hand, max(depth, len(hung)))
    through = np.stack([pack_transmittance(tuple(at_hand[i] for i in stack)) for stack in stacks])
    xyz = (light.spectra[0] / pack_transmittance(light.pack) * through) @ observer_grid()
    delta = delta_uv_prime(xyz_to_uv_prime(xyz), wanted_uv)
    stops = np.log2((light.spectra[0] @ observer_grid())[1] / xyz[:, 1])
    found = list(front)
    for at in np.lexsort((stops, delta)):
        pack = Pack(stacks[at], float(delta[at]), float(stops[at]))
        moves = _moves(pack.gels, hung)
        if not any(
            _moves(other.gels, hung) <= moves
            and other.delta_uv <= pack.delta_uv + SAME_UV
            and other.stops_lost <= pack.stops_lost + SAME_STOPS
            for other in found
        ):
            found.append(pack)
    return found


def pack_words(gels: tuple[Gel, ...]) -> Said:
    """Return a pack as it is called out: '1/2 CTO + 1/8 minus green'."""
    counts = {gel.name: 0 for gel in gels}
    for gel in gels:
        counts[gel.name] += 1
    if not gels:
        return Said("no gel")
    return joined(
        (Said("{n} × {gel}", n=n, gel=name) if n > 1 else name for name, n in counts.items()), " + "
    )


def closing_pack(
    aim: Floats, wanted_uv: Floats, lamp: str, kit: tuple[Gel, ...], radius: float
) -> Landing | None:
    """Return the pack that brings a lamp from the nearest it can do to the target, or None."""
    aim_xy, wanted_xy = uv_prime_to_xy(aim), uv_prime_to_xy(wanted_uv)
    try:
        may_be = guess(lamp, aim_xy)
    except Problem:
        # A colour too deep for any lamp's spectrum is not one that gel brings to a white.
        return None
    light = Reading(
        aim_xy, *xy_to_cct(aim_xy), may_be.spectra, weights=may_be.weights, widen=may_be.widen
    )
    target = Reading(wanted_xy, *xy_to_cct(wanted_xy), np.empty((0, len(GRID))))
    found = landings(light, target, kit, radius)
    if not found or found[0].delta_uv >= float(delta_uv_prime(aim, wanted_uv)):
        return None
    return found[0]
