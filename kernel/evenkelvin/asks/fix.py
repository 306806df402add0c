"""What brings a light to a white.

``{"ask": "fix", "reading": R, "target": T, "kit"?: [names], "own_gels"?: […], "depth"?: 3,
"tolerance"?: "tight" | "normal" | "loose" | {"steps": n}, "most"?: 12}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.fields import Fields
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.fixing import landings, offset
from evenkelvin.lights.tint import neutralising_cc
from evenkelvin.lights.tolerance import verdict
from evenkelvin.replies.fix import landing_plain, offset_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.requests.kit import read_kit
from evenkelvin.requests.reading import read_reading, read_target
from evenkelvin.requests.tolerance import read_tolerance


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the offset, its verdict, what to dial, and the packs, best first.

    ``packs`` holds at most ``most`` of the Pareto front of distance, stops and pieces.
    """
    fields.refuse_unknown(
        "ask", "reading", "target", "kit", "own_gels", "depth", "tolerance", "most"
    )
    kit = read_kit(fields)
    every = read_kit(Fields({"own_gels": fields.items("own_gels")}))
    reading = read_reading(fields.group("reading"), every)
    target = read_target(fields.group("target"), every)
    radius = read_tolerance(fields)
    depth = fields.whole("depth", DEEPEST, 1, DEEPEST)
    most = fields.whole("most", 12, 1, 100)

    found = offset(reading, target)
    word = verdict(found.steps, radius)
    packs = landings(reading, target, kit, radius, depth, most)
    shown = offset_plain(found)
    shown["cc"] = neutralising_cc(reading.spectra[0], target.duv)
    return {
        "reading": white(reading.xy),
        "target": white(target.xy),
        "offset": shown,
        "verdict": word,
        "tolerance": tolerance_plain(radius),
        "dial": {"x": float(target.xy[0]), "y": float(target.xy[1])},
        "packs": [landing_plain(landing) for landing in packs],
        "warnings": reading.warnings,
    }
