"""How even a surface is, as plain data."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any

import numpy as np

from evenkelvin.exposure.stops import amount_in_tenths, amount_words
from evenkelvin.said import Said, joined, listed
from evenkelvin.sweep.evenness import Contours, Evenness, place_words

#: Places that one sentence names.
_NAMED = 2


def evenness_plain(even: Evenness) -> dict[str, Any]:
    """Return the figures of a surface; ``_lx`` stands for the unit of its readings."""
    return {
        "least_lx": float(even.levels.min()),
        "mean_lx": float(even.levels.mean()),
        "greatest_lx": float(even.levels.max()),
        "spread_stops": even.spread_stops,
        "uniformity": even.uniformity,
        "least_to_greatest": float(even.levels.min() / even.levels.max()),
        "holds": all(even.holds),
    }


def off_words(stops: float, say: str) -> Said:
    """Return how far a level is off, as said in thirds or tenths."""
    if abs(stops) < 0.05 or (say == "thirds" and round(abs(stops) * 3.0) == 0):
        return Said("level")
    return _off(stops, amount_words(stops, say))


def point_words(stops: float, within: float, say: str) -> Said:
    """Return how far a point is off, so that none that is out seems to hold."""
    for rounded, way in ((round(abs(stops) * 3.0) / 3.0, say), (round(abs(stops), 1), "tenths")):
        if abs(stops) <= within or rounded > within + 1e-9:
            return off_words(stops, way)
    return _off(stops, Said("just over {amount}", amount=_limit_words(within)))


def _off(stops: float, amount: Said) -> Said:
    if stops > 0:
        return Said("{amount} over", amount=amount)
    return Said("{amount} under", amount=amount)


def evenness_words(even: Evenness, places: Sequence[Sequence[float]], say: str) -> Said:
    """Return one sentence: where it is off, and how the rest is."""
    within = _limit_words(even.within_stops)
    holds = even.holds
    if all(holds):
        return Said("Even: every point is within {within}.", within=within)
    stops = even.stops
    worst: dict[Said, float] = {}
    for index in np.argsort(-np.abs(stops)):
        if not holds[index]:
            place = place_words(*places[index])
            worst.setdefault(place, float(stops[index]))
    parts = [
        Said("{place} is {off}", place=place, off=point_words(off, even.within_stops, say))
        for place, off in list(worst.items())[:_NAMED]
    ]
    if not any(holds):
        return Said("{Places}; nothing is within {within}.", Places=listed(parts), within=within)
    if len(worst) > _NAMED:
        more = len(worst) - _NAMED
        return Said(
            "{Places}, and {more} more are off by over {within}.",
            Places=joined(parts),
            more=more,
            within=within,
        )
    return Said("{Places}; the rest is within {within}.", Places=listed(parts), within=within)


def _limit_words(stops: float) -> Said:
    thirds = abs(stops * 3.0 - round(stops * 3.0)) < 1e-3
    return amount_words(stops, "thirds") if thirds else amount_in_tenths(stops)


def contours_plain(drawn: Contours, say: str) -> dict[str, Any]:
    """Return the map's lines: across and up from 0 to 1, to a thousandth."""
    return {
        "across": list(drawn.across),
        "up": list(drawn.up),
        "step_stops": drawn.step_stops,
        "lines": [
            {
                "stops": level,
                "words": off_words(level, "tenths" if drawn.step_stops < 0.3 else say),
                "paths": [np.round(path, 3).tolist() for path in paths],
            }
            for level, paths in drawn.lines
        ],
    }
