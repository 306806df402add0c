"""Balancing, mixing, unmixing, dialling and driving, against loops written with colour-science."""

from __future__ import annotations

from itertools import combinations_with_replacement, product
from typing import Any

import colour
import numpy as np
from timing import seconds

from evenkelvin.desk import answer
from evenkelvin.fields import Fields
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.lights.balancing import SetLight, balance, white_grid
from evenkelvin.lights.driving import brightest
from evenkelvin.requests.reading import read_reading

Row = tuple[str, float | None, str]

KIT = nominal_kit()
SHAPE = colour.SpectralShape(380, 780, 5)
CMFS = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE)
RADIUS_UV = 4 * 0.0011
#: Lamp kinds with the CCT and Duv that they may have.
KINDS = {
    "tungsten": (2700.0, 3300.0, 0.0),
    "daylight": (4800.0, 9000.0, 0.004),
    "fluorescent": (3000.0, 6000.0, 0.012),
    "led": (2800.0, 6200.0, 0.005),
}


def _readings(count: int) -> list[dict[str, Any]]:
    rng = np.random.default_rng(7)
    found = []
    for _ in range(count):
        lamp = str(rng.choice(list(KINDS)))
        low, high, tint = KINDS[lamp]
        kelvin, duv = float(rng.uniform(low, high)), float(rng.uniform(-tint / 3, tint))
        found.append({"cct_K": kelvin, "duv": duv, "lamp": lamp})
    return found


def _set(count: int) -> list[SetLight]:
    return [SetLight(read_reading(Fields(one), KIT)) for one in _readings(count)]


def _balance_seconds(lights: int = 12, gels: int = len(KIT), whites: int = 76) -> float:
    grid = white_grid(np.linspace(2500.0, 10_000.0, whites), np.zeros(1))
    kit, some = KIT[:gels], _set(lights)
    return seconds(lambda: balance(some, grid, kit, {gel.name: 2 for gel in kit}, 4.0, 3), 3)


def _combination(readings: list[SetLight], kit: Any, choice: Any, centre: Any) -> bool:
    """Try one combination as a script on colour-science would: does every light hold?"""
    holds = True
    for light, stack in zip(readings, choice, strict=True):
        values = light.reading.spectra[0]
        for index in stack:
            values = values * kit[index].transmittance
        lit = colour.SpectralDistribution(values, SHAPE.wavelengths)
        xyz = colour.sd_to_XYZ(lit, CMFS, method="Integration")
        uv = colour.xy_to_Luv_uv(colour.XYZ_to_xy(xyz))
        holds &= bool(np.hypot(*(uv - centre)) <= RADIUS_UV)
    return holds


def _naive_rows() -> list[Row]:
    lights, kit = _set(2), KIT[:6]
    grid = white_grid(np.linspace(2800.0, 6500.0, 8), np.zeros(1))
    stacks = [s for n in range(3) for s in combinations_with_replacement(range(len(kit)), n)]
    every = list(product(stacks, repeat=len(lights)))
    sample = every[:: max(1, len(every) // 40)]
    centre = grid.uv_prime[0]
    ours = seconds(lambda: balance(lights, grid, kit, {}, 4.0, 2), 5)
    one = seconds(lambda: [_combination(lights, kit, c, centre) for c in sample], 1) / len(sample)
    whole = one * len(every) * len(grid.cct_k)
    combinations = len(every) * len(grid.cct_k)
    return [
        (
            f"balance 2 lights × 6 gels × 8 whites, against all {combinations} combinations",
            ours / whole,
            f"{ours * 1e3:.1f} ms against {whole:.0f} s (scaled from {len(sample)})",
        )
    ]


def _growth_rows() -> list[Row]:
    base = _balance_seconds()
    cases = [
        ("6 lights", {"lights": 6}),
        ("24 lights", {"lights": 24}),
        ("20 gels", {"gels": 20}),
        ("30 gels", {"gels": 30}),
        ("19 whites", {"whites": 19}),
        ("304 whites", {"whites": 304}),
    ]
    rows: list[Row] = []
    for words, change in cases:
        taken = _balance_seconds(**change)
        name = f"balance with {words}, against 12 lights × {len(KIT)} gels × 76 whites"
        rows.append((name, taken / base, f"{taken * 1e3:.0f} ms against {base * 1e3:.0f} ms"))
    return rows


def _mix_rows() -> list[Row]:
    readings = [one | {"illuminance_lx": 100.0 * (i + 1)} for i, one in enumerate(_readings(12))]
    request = {"ask": "mix", "lights": [{"reading": one} for one in readings]}
    spectra = [read_reading(Fields(one), KIT).spectra[0] for one in readings]

    def naive_mix() -> Any:
        total = np.zeros(3)
        for one in readings:
            uv = colour.temperature.CCT_to_uv_Ohno2013([one["cct_K"], one["duv"]])
            xy = colour.UCS_uv_to_xy(uv)
            total += colour.xyY_to_XYZ([*xy, one["illuminance_lx"]])
        xy = colour.XYZ_to_xy(total)
        return xy, colour.temperature.uv_to_CCT_Ohno2013(colour.xy_to_UCS_uv(xy))

    def curve(values: Any) -> dict[str, Any]:
        return {"wavelengths_nm": SHAPE.wavelengths.tolist(), "values": values.tolist()}

    lights = [{"spectrum": curve(values)} for values in spectra[:5]]
    total = {"spectrum": curve(sum(spectra[:5])), "illuminance_lx": 500.0}
    unmixing = {"ask": "unmix", "lights": lights, "sum": total}

    def naive_unmix() -> Any:
        # Shares on a grid of twentieths, two lights only: the loop without a method.
        best = np.inf
        for share in np.linspace(0.0, 1.0, 21):
            mixed = colour.SpectralDistribution(
                share * spectra[0] + (1 - share) * spectra[1], SHAPE.wavelengths
            )
            xyz = colour.sd_to_XYZ(mixed, CMFS, method="Integration")
            best = min(best, float(np.ptp(colour.xy_to_Luv_uv(colour.XYZ_to_xy(xyz)))))
        return best

    pairs = [
        ("mix 12 lights, against a loop over colour-science", request, naive_mix),
        (
            "unmix 5 spectra with uncertainty, against 21 trial mixtures of two",
            unmixing,
            naive_unmix,
        ),
    ]
    rows: list[Row] = []
    for name, ask, naive in pairs:
        ours, theirs = seconds(lambda ask=ask: answer(ask), 9), seconds(naive, 3)
        rows.append((name, ours / theirs, f"{ours * 1e3:.1f} ms against {theirs * 1e3:.1f} ms"))
    return rows


def _lamp_rows() -> list[Row]:
    whites = [{"cct_K": k, "duv": 0.002} for k in (4300.0, 4200.0, 4280.0)]
    history = [{"dialled": one, "measured": other} for one in whites for other in whites]
    ask = {"ask": "dial", "target": {"cct_K": 4300, "duv": 0}, "history": history}

    def naive_dial() -> Any:
        for one in whites:
            for other in whites:
                for white in (one, other):
                    colour.temperature.CCT_to_uv_Ohno2013([white["cct_K"], white["duv"]])

    dial, naive = seconds(lambda: answer(ask), 9), seconds(naive_dial, 3)
    rng = np.random.default_rng(3)
    xy = rng.uniform(0.1, 0.6, (7, 2))
    xyz = np.array([colour.xyY_to_XYZ([x, y / 1.5, 300.0]) for x, y in xy])
    uv = colour.xy_to_Luv_uv(colour.XYZ_to_xy(xyz.sum(axis=0)))
    levels = np.linspace(0.0, 1.0, 5)
    trials = list(product(levels, repeat=len(xyz)))
    sample = trials[:: len(trials) // 300]

    def naive_drive() -> Any:
        for trial in sample:
            np.hypot(*(colour.xy_to_Luv_uv(colour.XYZ_to_xy(np.array(trial) @ xyz)) - uv))

    drive = seconds(lambda: brightest(xyz, uv), 9)
    tried = seconds(naive_drive, 1) * len(trials) / len(sample)
    return [
        (
            f"dial after {len(history)} pairs, against reading them with colour-science",
            dial / naive,
            f"{dial * 1e3:.1f} ms against {naive * 1e3:.1f} ms",
        ),
        (
            f"drive 7 primaries exactly, against {len(trials)} trial levels with colour-science",
            drive / tried,
            f"{drive * 1e3:.2f} ms against {tried:.1f} s (scaled from {len(sample)})",
        ),
    ]


def run() -> list[Row]:
    """Return rows of name, ratio (ours over theirs) and detail."""
    return [*_naive_rows(), *_growth_rows(), *_mix_rows(), *_lamp_rows()]


if __name__ == "__main__":
    for row in run():
        print(*row, sep=" | ")
