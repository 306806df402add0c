"""Nominal gels and fixes against common practice, physics and brute force on colour-science."""

from __future__ import annotations

from itertools import combinations, combinations_with_replacement
from typing import Any

import colour
import numpy as np
import pytest

from evenkelvin.colorimetry.chromaticity import uv_prime_to_uv, xy_to_uv_prime, xyz_to_uv_prime
from evenkelvin.colorimetry.illuminant import C2_NM_K, illuminant, planck
from evenkelvin.colorimetry.observer import GRID, observer_grid
from evenkelvin.colorimetry.temperature import cct_to_xy, uv_to_cct
from evenkelvin.desk import answer
from evenkelvin.filters.gel import Gel, shifts_of
from evenkelvin.filters.kit import cc_transmittance, nominal_kit
from evenkelvin.filters.pack import all_stacks, search
from evenkelvin.lights.stand_in import LAMPS, stand_ins
from evenkelvin.lights.tint import neutralising_cc

SHAPE = colour.SpectralShape(380, 780, 5)
CMFS = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE)
KIT = {gel.name: gel for gel in nominal_kit()}


SMALL_KIT = (
    *("full CTO", "1/4 CTO", "1/8 CTO", "1/2 CTB", "1/4 CTB", "1/8 CTS"),
    *("1/8 plus green", "1/4 minus green", "CC10 magenta", "ND 0.3"),
)


def _xyz(spectrum: np.ndarray) -> np.ndarray:
    sd = colour.SpectralDistribution(spectrum, GRID)
    return np.asarray(colour.sd_to_XYZ(sd, CMFS, method="Integration"))


def _on(gel: str, kelvin: float) -> tuple[float, float, float]:
    """Return CCT, Duv and stops of a black body through a gel, by colour-science."""
    bare = colour.sd_blackbody(kelvin, SHAPE)
    before, after = _xyz(bare.values), _xyz(bare.values * KIT[gel].transmittance)
    uv = colour.xy_to_UCS_uv(colour.XYZ_to_xy(after))
    cct, duv = colour.temperature.uv_to_CCT_Ohno2013(uv)
    return float(cct), float(duv), float(np.log2(before[1] / after[1]))


def test_full_cto_turns_daylight_into_tungsten() -> None:
    """Common practice, no source: 5500 to 3200 K, two thirds of a stop to one stop."""
    cct, duv, stops = _on("full CTO", 5500)
    assert cct == pytest.approx(3200, abs=15)
    assert abs(duv) < 0.002
    assert 0.6 < stops < 1.0


def test_full_ctb_turns_tungsten_into_daylight() -> None:
    """Common practice, no source: 3200 to 5500 K, one and a half to two stops."""
    cct, duv, stops = _on("full CTB", 3200)
    assert cct == pytest.approx(5500, abs=45)
    assert abs(duv) < 0.002
    assert 1.5 <= stops < 2.0


@pytest.mark.parametrize(("cut", "mireds"), [("1/2", 64), ("1/4", 34), ("1/8", 20)])
def test_cuts_of_amber(cut: str, mireds: float) -> None:
    """Common practice, no source: about 64, 34 and 20 mired."""
    cct, _, _ = _on(f"{cut} CTO", 5500)
    assert 1e6 / cct - 1e6 / 5500 == pytest.approx(mireds, abs=1)


@pytest.mark.parametrize(("cut", "cc"), [("full", 30), ("1/2", 15), ("1/4", 7.5), ("1/8", 3.5)])
def test_cuts_of_green_have_their_cc_density(cut: str, cc: float) -> None:
    """Common practice, no source: full minus green is about CC30 magenta, and so on."""
    magenta = KIT[f"{cut} minus green"].transmittance
    assert 100 * np.log10(magenta.max() / magenta.min()) == pytest.approx(cc, rel=0.02)
    green = KIT[f"{cut} plus green"].transmittance
    assert 100 * np.log10(green.max() / green.min()) == pytest.approx(cc, rel=0.02)


@pytest.mark.parametrize("density", [0.15, 0.3, 0.6, 1.2])
def test_neutral_density_costs_its_stops_and_no_colour(density: float) -> None:
    """ISO 5-1: density is −log10 T, so 0.3 is one stop."""
    gel = KIT[f"ND {density:g}"]
    (shift,) = shifts_of([gel])
    assert shift.stops == pytest.approx(density / np.log10(2), abs=1e-9)
    assert abs(shift.mired) < 1e-6
    assert abs(shift.duv) < 1e-9


def test_the_ideal_converter_shifts_black_bodies_by_constant_mired() -> None:
    """By definition, in Wien's approximation: exp(−c2·ΔM/λ), within 2 mired up to 5600 K."""
    for shift, kelvin in ((131.0, 5500), (64.0, 5600), (-131.0, 3200), (-34.0, 3200)):
        ideal = np.exp(-C2_NM_K * shift * 1e-6 / GRID)
        xyz = (planck(GRID, kelvin) * ideal) @ observer_grid()
        cct = uv_to_cct(uv_prime_to_uv(xyz_to_uv_prime(xyz))[np.newaxis])[0, 0]
        assert 1e6 / cct - 1e6 / kelvin == pytest.approx(shift, abs=2.0)


def _brute_force(light: np.ndarray, target: np.ndarray, kit: list[Gel]) -> dict[Any, Any]:
    """Return every stack's distance and stops, one at a time, through colour-science."""
    found = {}
    whole = (light[:, None] * CMFS.values).sum(0)
    for pieces in range(4):
        for stack in combinations_with_replacement(range(len(kit)), pieces):
            lit = light * np.prod([kit[i].transmittance for i in stack], axis=0)
            xyz = (lit[:, None] * CMFS.values).sum(0)
            uv = colour.xy_to_Luv_uv(colour.XYZ_to_xy(xyz))
            found[stack] = (float(np.hypot(*(uv - target))), float(np.log2(whole[1] / xyz[1])))
    return found


@pytest.mark.parametrize("source", ["FL2", "FL11", "HP4", "LED-B3", "D65", "A"])
def test_the_search_finds_what_brute_force_finds(source: str) -> None:
    """Brute force, summed by colour-science."""
    kit = [KIT[name] for name in SMALL_KIT]
    light = np.array(illuminant(source))
    target = xy_to_uv_prime(cct_to_xy(4300))
    every = _brute_force(light, target, kit)
    stacks = all_stacks(light, tuple(kit), 3)
    for some in stacks:
        uv = xyz_to_uv_prime(some.xyz)
        for gels, place, xyz in zip(some.gels, uv, some.xyz, strict=True):
            delta, stops = every[tuple(int(g) for g in gels)]
            assert np.hypot(*(place - target)) == pytest.approx(delta, abs=1e-9)
            assert np.log2(stacks[0].xyz[0, 1] / xyz[1]) == pytest.approx(stops, abs=1e-9)
    front = search(light, target, tuple(kit))
    sensible = {tuple(int(g) for g in gels) for some in stacks for gels in some.gels}
    for stack in sensible:
        # Nothing that could hang beats the front by more than nobody sees.
        delta, stops = every[stack]
        assert any(
            kept.pieces <= len(stack)
            and kept.delta_uv <= delta + 0.00011 + 1e-9
            and kept.stops_lost <= stops + 0.02 + 1e-9
            for kept in front
        )
    for kept in front:
        for other in front:
            beats = (
                other.pieces <= kept.pieces
                and other.delta_uv < kept.delta_uv - 0.00011
                and other.stops_lost < kept.stops_lost - 0.02
            )
            assert not beats


def _random_gel(chance: np.random.Generator, name: str) -> Gel:
    """Return an own gel with a mixed cast: warm or cool and green or magenta at once."""
    mired, cc = chance.uniform(-90, 90), chance.uniform(-20, 20)
    warmth = np.exp(-C2_NM_K * mired * 1e-6 / GRID)
    curve = warmth / warmth.max() * cc_transmittance(cc) * chance.uniform(0.8, 0.92)
    wave = 1.0 - 0.1 * chance.random() * (1 + np.sin(GRID / chance.uniform(15, 60)))
    return Gel(name, "own", curve * wave, 4300.0, nominal=False)


def _move(*gels: Gel) -> np.ndarray:
    """Return what gels do to a black body of 4300 K in mired and Duv, both in steps."""
    bare = colour.sd_blackbody(4300, SHAPE).values
    lit = bare * np.prod([gel.transmittance for gel in gels], axis=0)
    uv = colour.xy_to_UCS_uv(colour.XYZ_to_xy(np.stack([_xyz(lit), _xyz(bare)])))
    (cct, duv), (_, bare_duv) = colour.temperature.uv_to_CCT_Ohno2013(uv)
    # A step is about 2.7 mired, and 0.0011 in u′ v′, in which v′ is 1.5 v.
    return np.array([(1e6 / cct - 1e6 / 4300) / 2.7, 1.5 * (duv - bare_duv) / 0.0011])


def _truly_cancel(a: Gel, b: Gel) -> bool:
    """Whether one gel straight undoes the other, within 28°."""
    one, other = _move(a), _move(b)
    return bool(one @ other < -np.cos(np.radians(28)) * np.hypot(*one) * np.hypot(*other))


@pytest.mark.parametrize("seed", range(40))
def test_nothing_beats_the_front_but_what_cancels_itself(seed: int) -> None:
    """Own gels of mixed casts against every stack there is, by colour-science."""
    chance = np.random.default_rng(seed)
    kit = [_random_gel(chance, f"own {i}") for i in range(3)]
    kit += [KIT[str(name)] for name in chance.choice(SMALL_KIT, 4, replace=False)]
    light = planck(GRID, chance.uniform(2800, 6500)) * cc_transmittance(chance.uniform(-8, 8))
    target = xy_to_uv_prime(cct_to_xy(chance.uniform(3000, 6000)))
    front = search(light, target, tuple(kit))
    cancel = {pair: _truly_cancel(*(kit[i] for i in pair)) for pair in combinations(range(7), 2)}
    for stack, (delta, stops) in _brute_force(light, target, kit).items():
        assert any(
            kept.pieces <= len(stack)
            and kept.delta_uv <= delta + 0.00011 + 1e-9
            and kept.stops_lost <= stops + 0.02 + 1e-9
            for kept in front
        ) or any(cancel[pair] for pair in combinations(sorted(set(stack)), 2))


@pytest.mark.parametrize("lamp", LAMPS)
@pytest.mark.parametrize("xy", [(0.4215, 0.4022), (0.3127, 0.3290), (0.3805, 0.3769), (0.36, 0.38)])
def test_stand_ins_have_exactly_the_typed_chromaticity(lamp: str, xy: tuple[float, float]) -> None:
    for spectrum in stand_ins(lamp, np.array(xy)):
        assert spectrum.min() >= 0
        assert colour.XYZ_to_xy(_xyz(spectrum)) == pytest.approx(xy, abs=1e-8)


def test_a_common_fix_is_a_touch_of_green() -> None:
    """Common practice, no source: x .4349 y .4024 wants a touch of green for its own CCT."""
    found = answer({"ask": "describe", "reading": {"x": 0.4349, "y": 0.4024}})
    assert 0 < found["cc"] < 2
    assert found["cc_words"] == "add 1 CC green"
    fix = answer({"ask": "fix", "reading": {"x": 0.4349, "y": 0.4024}, "target": {"cct_K": 3020}})
    assert "a hair magenta" in fix["offset"]["words"]
    assert fix["verdict"] == "holds"
    assert fix["offset"]["cc"] > 0


@pytest.mark.parametrize("cct", [2500, 3200, 4300, 5600, 10000])
def test_cc_takes_the_tint_away(cct: float) -> None:
    """The CC density that is named, hung on the light, leaves no Duv (colour-science as judge)."""
    for duv in (-0.015, -0.004, 0.003, 0.012):
        reading = {"cct_K": cct, "duv": duv, "lamp": "led"}
        cc = answer({"ask": "describe", "reading": reading})["cc"]
        assert np.sign(cc) == -np.sign(duv)
        light = stand_ins("led", cct_to_xy(cct, duv))[0] * cc_transmittance(cc)
        uv = colour.xy_to_UCS_uv(colour.XYZ_to_xy(_xyz(light)))
        assert abs(colour.temperature.uv_to_CCT_Ohno2013(uv)[1]) < 3e-6


def _lights(count: int) -> list[np.ndarray]:
    """Smooth lights, bands, lines and noise, from near infra-red warm to past the blue end."""
    chance = np.random.default_rng(2026)
    found = []
    for n in range(count):
        if n % 4 == 0:
            slope = np.exp(chance.normal(0.0, 0.3, len(GRID)).cumsum() / 6.0)
            found.append(planck(GRID, np.exp(chance.uniform(7.0, 10.8))) * slope)
        elif n % 4 == 1:
            middle, wide = chance.uniform(380.0, 780.0), chance.uniform(3.0, 60.0)
            found.append(np.exp(-(((GRID - middle) / wide) ** 2)) + 1e-6)
        elif n % 4 == 2:
            bands = chance.uniform(400.0, 700.0, 4)[:, np.newaxis]
            found.append(np.exp(-(((GRID - bands) / 12.0) ** 2)).T @ chance.random(4))
        else:
            found.append(chance.random(len(GRID)) ** chance.uniform(1.0, 12.0))
    return found


def test_cc_of_any_light_brings_it_to_the_duv_or_is_not_told() -> None:
    """By definition: through it the light has that Duv; brute force in steps of 0.5 CC where none
    is told: the Duv passes it nowhere but by a leap from one side of the line to the other."""

    def duv_through(light: np.ndarray, cc: np.ndarray) -> np.ndarray:
        through = light * cc_transmittance(cc[:, np.newaxis])
        return uv_to_cct(uv_prime_to_uv(xyz_to_uv_prime(through @ observer_grid())))[:, 1]

    told = 0
    for n, light in enumerate(_lights(800)):
        wanted = 0.0 if n % 3 else 0.004 * (n % 7 - 3)
        cc = neutralising_cc(light, wanted)
        if cc is not None:
            told += 1
            assert abs(cc) <= 120.0, n
            assert duv_through(light, np.array([cc]))[0] == pytest.approx(wanted, abs=2e-5), n
            continue
        steps = np.linspace(-120.0, 120.0, 481)
        apart = duv_through(light, steps) - wanted
        side = slice(240, None) if apart[240] < 0.0 else slice(None, 241)
        here = apart[side]
        first = np.flatnonzero(np.diff(np.sign(here)) > 0)
        if len(first):
            at = first[0] if apart[240] < 0.0 else first[-1]
            finer = np.linspace(steps[side][at], steps[side][at + 1], 2001)
            near = duv_through(light, finer) - wanted
            crossing = np.flatnonzero(np.diff(np.sign(near)) > 0)[0]
            assert near[crossing + 1] - near[crossing] > 1e-4, n
    assert told > 300
