"""Neutral density for a window, as the plain data that several asks answer with."""

from __future__ import annotations

from collections.abc import Collection
from typing import Any

from evenkelvin.exposure import stops
from evenkelvin.filters.kit import NEUTRALS
from evenkelvin.said import Said, joined
from evenkelvin.scouting.windows import DENSITY_PER_STOP, neutral_for

#: What is carried will do where it comes as near as this, in stops.
_NEAR_STOPS = 1 / 3


def neutral_plain(over: float, kit: Collection[str] | None = None) -> dict[str, Any]:
    """Return the neutral density for light that is so many stops over, and what it leaves.

    ``kit`` has the names of the gels that are carried, None where all are: what is not among them
    is taken only where they come nowhere near, and stands in ``fetch``.
    """
    names = {f"ND {density:g}": density for density in NEUTRALS}
    carried = [name for name in names if kit is None or name in kit]
    chosen = neutral_for(over, [names[name] for name in carried])
    if abs(over - sum(chosen) / DENSITY_PER_STOP) >= _NEAR_STOPS:
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
        "fetch": [name for name in gels if name not in carried],
        "takes_stops": takes,
        "left_stops": left,
        "words": Said(
            "{gels}, then {rest}", gels=joined(gels, " + ") if gels else Said("No ND"), rest=rest
        ),
    }
