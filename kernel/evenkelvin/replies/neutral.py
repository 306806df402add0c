"""Neutral density for a window, as the plain data that several asks answer with."""

from __future__ import annotations

from typing import Any

from evenkelvin.exposure import stops
from evenkelvin.filters.kit import NEUTRALS
from evenkelvin.said import Said, joined
from evenkelvin.scouting.windows import DENSITY_PER_STOP, neutral_for


def neutral_plain(over: float) -> dict[str, Any]:
    """Return the neutral density for light that is so many stops over, and what it leaves."""
    chosen = neutral_for(over, NEUTRALS)
    takes = sum(chosen) / DENSITY_PER_STOP
    left = over - takes
    gels = [f"ND {density:g}" for density in chosen]
    amount = stops.amount_in_thirds(left)
    if abs(left) < 1 / 6:
        rest = Said("right")
    elif left > 0:
        rest = Said("{stops} over", stops=amount)
    else:
        rest = Said("{stops} under", stops=amount)
    return {
        "stops": over,
        "gels": gels,
        "takes_stops": takes,
        "left_stops": left,
        "words": Said(
            "{gels}, then {rest}", gels=joined(gels, " + ") if gels else Said("No ND"), rest=rest
        ),
    }
