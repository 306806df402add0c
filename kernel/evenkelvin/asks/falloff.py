"""``falloff``: the inverse square of a small source.

Fields: ``illuminance_lx`` or ``illuminance_fc`` read at ``distance_m`` or ``distance_ft`` from the
lamp, and one question: ``at_m`` or ``at_ft`` (what does it read there?), ``wanted_lx`` or
``wanted_fc`` (where must it go?), ``lose_stops`` (how far to lose that much; negative gains).
Optional ``source_m`` or ``source_ft``: the widest measure of the lamp or frame; ``say`` "thirds"
(default) or "tenths", how words tell stops.
"""

from __future__ import annotations

from typing import Any

from evenkelvin.exposure import stops
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.units import both
from evenkelvin.requests.camera import SAYINGS
from evenkelvin.requests.units import (
    LENGTH,
    LENGTH_BOUNDS,
    LIGHT,
    either,
    length_fields,
    light_fields,
)
from evenkelvin.said import Said
from evenkelvin.shapes import Choice, Group, Number

#: How many times its own width a source must be away for the inverse square to hold within about
#: one percent: the five-times rule of photometry (IES Lighting Handbook; from memory).
FIVE_TIMES = 5.0

FIELDS: Group = {
    **light_fields("illuminance"), **length_fields("distance", *LENGTH_BOUNDS),
    **length_fields("at", *LENGTH_BOUNDS), **light_fields("wanted"), "lose_stops": Number(-20, 20),
    **length_fields("source", *LENGTH_BOUNDS), "say": Choice(SAYINGS),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    fields.refuse_unknown("ask", *FIELDS)
    light = either(fields, "illuminance", LIGHT, stops.LIGHT_BOUNDS)
    distance = either(fields, "distance", LENGTH, LENGTH_BOUNDS)
    if distance is None:
        raise Problem(
            "distance_m", Said("The distance is missing: how far the lamp is where it was read.")
        )
    at = either(fields, "at", LENGTH, LENGTH_BOUNDS)
    wanted = either(fields, "wanted", LIGHT, stops.LIGHT_BOUNDS)
    lose = fields.number("lose_stops", low=-20, high=20) if fields.given("lose_stops") else None
    asked = [
        name
        for name in ("at_m", "at_ft", "wanted_lx", "wanted_fc", "lose_stops")
        if fields.given(name)
    ]
    if len(asked) != 1:
        raise Problem(
            asked[1] if asked else "at_m",
            Said("Ask one thing: a distance, the light wanted, or the stops to lose."),
        )
    if light is None and wanted is not None:
        raise Problem(
            "illuminance_lx",
            Said("The light is missing: what it reads now, in lux or foot-candles."),
        )
    if at is not None:
        there = at
    elif wanted is not None and light is not None:
        there = stops.distance_for(light, distance, wanted)
    else:
        there = stops.distance_to_lose(distance, lose or 0.0)
    change = stops.ratio_stops(stops.lux_at(1.0, distance, there), 1.0)
    say = fields.choice("say", SAYINGS, "thirds")
    answer: dict[str, Any] = both(there, "distance", LENGTH) | {"stops": change}
    reads = None
    if light is not None:
        reads = stops.lux_at(light, distance, there)
        answer |= both(reads, "illuminance", LIGHT)
    answer["words"] = _words(there, change, reads, say)
    answer["warnings"] = _warnings(either(fields, "source", LENGTH, LENGTH_BOUNDS), distance, there)
    return answer


def _words(there: float, change: float, reads: float | None, say: str) -> Said:
    place = Said(
        "{metres:.3g} m ({feet:.3g} ft) from the lamp", metres=there, feet=there / stops.M_PER_FT
    )
    amount = stops.amount_words(change, say)
    if round(abs(change) * 10.0) == 0:
        moved = Said("{place}: no change", place=place)
    elif change > 0:
        moved = Said("{place}: {stops} more", place=place, stops=amount)
    else:
        moved = Said("{place}: {stops} less", place=place, stops=amount)
    if reads is None:
        return moved
    return Said(
        "{moved}, reads {lux:.3g} lx ({fc:.3g} fc)",
        moved=moved,
        lux=reads,
        fc=reads / stops.LX_PER_FC,
    )


def _warnings(source: float | None, distance: float, there: float) -> list[Said]:
    near = min(distance, there)
    if source is None:
        found = [
            Said(
                "Inverse square: for a bare lamp further away than five times its width. A "
                "lens, a reflector or a large frame falls off more slowly; read it there."
            )
        ]
    elif near < FIVE_TIMES * source:
        found = [
            Said(
                "At {near:.3g} m the source of {source:.3g} m is nearer than five times its "
                "width: it falls off more slowly than the inverse square. Read it there.",
                near=near,
                source=source,
            )
        ]
    else:
        found = []
    if there < distance:
        found.append(Said("Mind the heat on skin, cloth and gel when a lamp comes nearer."))
    return found
