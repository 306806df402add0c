"""Cutting, flicker and the sun: how good the plans are, and what the answers take."""

from __future__ import annotations

import math
import random
from datetime import date

from astral import Observer
from astral import sun as astral_sun
from cutting import shortest_length
from scipy.integrate import quad
from timing import seconds

from evenkelvin.exposure import flicker
from evenkelvin.scouting import sun, windows

ROLL = windows.Stock(1.22, 30.0)


def sizes(seed: int, count: int) -> tuple[tuple[float, float], ...]:
    chance = random.Random(seed)
    return tuple(
        (round(chance.uniform(0.2, 1.2), 2), round(chance.uniform(0.2, 2.2), 2))
        for _ in range(count)
    )


def cut(pieces: tuple[tuple[float, float], ...]) -> tuple[float, float]:
    """Return the length cut and the area bound."""
    listed = [windows.Piece(i, a, b, True) for i, (a, b) in enumerate(pieces)]
    plan = windows.pack(listed, [ROLL])
    return sum(roll.used for roll in plan.rolls), windows.area_bound(listed, ROLL)[0]


def run() -> list[tuple[str, float | None, str]]:
    """Return rows of name, ratio and detail."""
    few = [sizes(seed, 2 + seed % 4) for seed in range(40)]
    ratios = [cut(pieces)[0] / shortest_length(pieces, ROLL.width) for pieces in few]
    best = sum(ratio < 1.0 + 1e-6 for ratio in ratios)
    many = [cut(sizes(seed, 40)) for seed in range(6)]
    wave = flicker.Wave(100.0, 0.4)

    def integrated() -> None:
        for start in range(64):
            quad(lambda t: 0.43 + 0.57 * abs(math.sin(math.pi * t)), start / 64, start / 64 + 2.1)

    day, place = date(2026, 11, 25), sun.Place(57.7, 11.9, 1.0)
    whole = seconds(lambda: sun.Day(place, day).spans(sun.up))
    alone = seconds(lambda: astral_sun.sun(Observer(57.7, 11.9), day))
    return [
        (
            "length of roll / shortest there is",
            sum(ratios) / len(ratios),
            f"2 to 5 pieces, 40 lists: shortest in {best}, worst {max(ratios):.2f}",
        ),
        (
            "length of roll / area bound",
            sum(ours for ours, _ in many) / sum(bound for _, bound in many),
            "40 pieces, 6 lists; wide pieces keep any plan above the bound",
        ),
        (
            "ripple in closed form / integrated",
            seconds(lambda: flicker.ripple(wave, 0.021)) / seconds(integrated),
            "time; the integral over 64 phases by scipy",
        ),
        (
            "sunrise by sampling the day / astral's",
            whole / alone,
            "time; ours also finds two rises, none, and windows",
        ),
    ]
