"""How close is close enough: a circle in u′ v′, and the words for being in or out of it."""

from __future__ import annotations

from typing import Literal

from evenkelvin.said import Said

Verdict = Literal["holds", "near", "out"]

#: Verdicts from the best to the worst.
RANK: dict[Verdict, int] = {"holds": 0, "near": 1, "out": 2}
#: Radius in n-step units of CIE TN 001:2014.
PRESETS: dict[str, float] = {"tight": 2.0, "normal": 4.0, "loose": 7.0}
#: The verdicts in a sentence.
VERDICT_WORDS: dict[Verdict, Said] = {
    "holds": Said("holds"),
    "near": Said("near"),
    "out": Said("out"),
}
#: 'near' reaches to this many radii.
NEAR_RADII = 2.0


def verdict(steps: float, radius: float) -> Verdict:
    """Return 'holds' within the radius, 'near' within twice that, otherwise 'out'."""
    if steps <= radius:
        return "holds"
    return "near" if steps <= NEAR_RADII * radius else "out"
