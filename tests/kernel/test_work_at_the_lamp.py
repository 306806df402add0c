"""What is advised is the surest, then the least work at the lamp, by brute force over one hand."""

from __future__ import annotations

from itertools import combinations_with_replacement

import numpy as np
import pytest

from evenkelvin.colorimetry.chromaticity import xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV
from evenkelvin.desk import answer
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel, cancels
from evenkelvin.filters.pack import all_stacks, touched
from evenkelvin.lights.fixing import Landing, land, landings
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.region import PROMISE_RANK
from evenkelvin.requests.kit import read_kit
from evenkelvin.requests.reading import read_reading, read_target

KIT = read_kit(Fields({}))
RADIUS = 4.0
WHITE = read_target(Fields({"cct_K": 3200}), ())


def moves(landing: Landing) -> int:
    return len(landing.add) + len(landing.take_off)


def surest(landing: Landing) -> tuple[int, int]:
    """What may be promised comes first, then the work."""
    return PROMISE_RANK[landing.promise], moves(landing)


def random_light(seed: int) -> Reading:
    """A lamp with one or two gels on it, read some way off the white."""
    chance = np.random.default_rng(seed)
    pack = [KIT[i].name for i in chance.choice(len(KIT), chance.integers(1, 3), False)]
    kelvin = float(chance.uniform(2900, 3700))
    duv = float(chance.uniform(-0.006, 0.006))
    return read_reading(Fields({"cct_K": kelvin, "duv": duv, "lamp": "led", "pack": pack}), KIT)


def one_hand(pack: tuple[Gel, ...]) -> list[tuple[Gel, ...]]:
    """All stacks of at most three gels in which one gel came, went or was swapped."""
    opposed = cancels(KIT)

    def together(new: Gel, rest: list[Gel]) -> bool:
        return not any(opposed[KIT.index(new), KIT.index(gel)] for gel in rest)

    found = []
    for at in range(len(pack)):
        rest = [gel for i, gel in enumerate(pack) if i != at]
        found.append(tuple(rest))
        found += [(*rest, gel) for gel in KIT if together(gel, rest)]
    if len(pack) < 3:
        found += [(*pack, gel) for gel in KIT if together(gel, list(pack))]
    return found


@pytest.mark.parametrize("seed", range(40))
def test_no_more_is_asked_for_than_one_hand_would_do(seed: int) -> None:
    light = random_light(seed)
    packs = landings(light, WHITE, KIT, RADIUS)
    tried = [land(light, WHITE.xy, gels, RADIUS) for gels in one_hand(light.pack)]
    holding = [surest(each) for each in tried if each.verdict == "holds" and moves(each)]
    holds_now = land(light, WHITE.xy, light.pack, RADIUS).verdict == "holds"
    if holding and not holds_now:  # what holds is left alone
        assert packs[0].verdict == "holds"
        assert surest(packs[0]) <= min(holding)
    order = [surest(each) for each in packs if each.verdict == "holds"]
    assert order == sorted(order)


def test_one_hand_at_the_lamp_is_one_gel_less_one_more_or_one_swapped() -> None:
    kit = KIT[:6]
    for hung in combinations_with_replacement(range(6), 2):
        expected = {
            tuple(sorted(kit.index(gel) for gel in stack))
            for stack in one_hand(tuple(kit[i] for i in hung))
            if all(gel in kit for gel in stack)
        } - {hung}
        assert set(touched(hung, kit, 3)) == expected


def test_what_is_read_through_its_gels_is_mended_by_one_more() -> None:
    """The same light with its gels told and not told: telling them must not make more work."""
    reading = {"cct_K": 3350, "duv": 0.001, "lamp": "fluorescent"}
    told = {**reading, "pack": ["1/2 CTO", "1/4 minus green"]}
    packs = answer({"ask": "fix", "reading": told, "target": {"cct_K": 3200}})["packs"]
    assert packs[0]["work"] in ("add", "take off", "swap")
    assert packs[0]["verdict"] == "holds"
    bare = answer({"ask": "fix", "reading": reading, "target": {"cct_K": 3200}})["packs"]
    assert bare[0]["work"] == "add"


def test_words_for_the_work() -> None:
    light = read_reading(Fields({"cct_K": 3350, "duv": 0, "pack": ["1/2 CTO", "1/8 CTO"]}), KIT)
    named = {gel.name: gel for gel in KIT}
    for names, word in [
        (["1/2 CTO", "1/8 CTO"], "leave"),
        (["1/2 CTO", "1/8 CTO", "1/8 CTO"], "add"),
        (["1/2 CTO"], "take off"),
        (["1/2 CTO", "1/4 CTO"], "swap"),
        (["full CTO", "1/4 CTO"], "hang anew"),
    ]:
        hung = tuple(named[name] for name in names)
        assert land(light, WHITE.xy, hung, RADIUS).work == word


def test_a_kit_too_large_to_be_kept_gives_the_same_stacks(monkeypatch: pytest.MonkeyPatch) -> None:
    light = random_light(0).spectra[0]
    kept = all_stacks(light, KIT, 3)
    monkeypatch.setattr("evenkelvin.filters.pack._kept_through", lambda *_: None)
    anew = all_stacks(light, KIT, 3)
    for one, other in zip(kept, anew, strict=True):
        assert np.array_equal(one.gels, other.gels)
        assert np.allclose(one.xyz, other.xyz, rtol=1e-12)


def test_distances_are_those_of_the_light_itself() -> None:
    light = random_light(3)
    for pack in landings(light, WHITE, KIT, RADIUS):
        there = land(light, WHITE.xy, pack.gels, RADIUS)
        assert abs(there.delta_uv - pack.delta_uv) < 1e-12
        apart = np.hypot(*(xy_to_uv_prime(there.xy) - xy_to_uv_prime(WHITE.xy)))
        assert abs(apart / STEP_UV - pack.delta_uv / STEP_UV) < 1e-9
