"""Describe and fix against the same job written with colour-science, in one run."""

from __future__ import annotations

from itertools import combinations_with_replacement
from typing import Any

import colour
import numpy as np
from colour.temperature import uv_to_CCT_Ohno2013
from timing import seconds

from evenkelvin.desk import answer
from evenkelvin.filters.kit import nominal_kit

READING = {"x": 0.3805, "y": 0.3769, "lamp": "fluorescent"}
SHAPE = colour.SpectralShape(380, 780, 5)
CMFS = colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"].copy().align(SHAPE)


def _describe_with_colour() -> tuple[Any, Any]:
    xy = np.array([READING["x"], READING["y"]])
    return colour.xy_to_Luv_uv(xy), uv_to_CCT_Ohno2013(colour.xy_to_UCS_uv(xy))


def _fix_with_colour(stacks: list[tuple[int, ...]]) -> float:
    """Try stacks one at a time, as a script on colour-science would."""
    light = colour.SDS_ILLUMINANTS["FL11"].copy().align(SHAPE).values
    target = colour.xy_to_Luv_uv(colour.temperature.CCT_to_xy_CIE_D(5600))
    curves = [gel.transmittance for gel in nominal_kit()]
    best = np.inf
    for stack in stacks:
        lit = colour.SpectralDistribution(
            light * np.prod([curves[i] for i in stack], axis=0), SHAPE.wavelengths
        )
        uv = colour.xy_to_Luv_uv(
            colour.XYZ_to_xy(colour.sd_to_XYZ(lit, CMFS, method="Integration"))
        )
        best = min(best, float(np.hypot(*(uv - target))))
    return best


def run() -> list[tuple[str, float, str]]:
    """Return rows of name, ratio (ours over theirs) and detail."""
    describe = seconds(lambda: answer({"ask": "describe", "reading": READING}), 15)
    describe_colour = seconds(_describe_with_colour, 5)
    request = {"ask": "fix", "reading": READING, "target": {"cct_K": 5600}}
    fix = seconds(lambda: answer(request), 15)
    count = len(nominal_kit())
    stacks = [
        stack for n in range(1, 4) for stack in combinations_with_replacement(range(count), n)
    ]
    sample = stacks[:: len(stacks) // 60]
    fix_colour = seconds(lambda: _fix_with_colour(sample), 1) * len(stacks) / len(sample)
    return [
        (
            "describe, against colour-science (u′v′, CCT, Duv only)",
            describe / describe_colour,
            f"{describe * 1e3:.1f} ms against {describe_colour * 1e3:.1f} ms",
        ),
        (
            f"fix over {len(stacks)} stacks, against a loop over colour-science",
            fix / fix_colour,
            f"{fix * 1e3:.1f} ms against {fix_colour:.1f} s (scaled from {len(sample)} stacks)",
        ),
    ]


if __name__ == "__main__":
    for row in run():
        print(*row, sep=" | ")
