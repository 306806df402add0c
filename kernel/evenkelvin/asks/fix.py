"""What brings a light to a white.

``{"ask": "fix", "reading": R, "target": T, "meant"?: M, "kit"?: [names], "own_gels"?: […],
"gel_scatter_percent"?: 8, "depth"?: 3, "tolerance"?: "tight" | "normal" | "loose" |
{"steps": n}, "most"?: 12}``; M as :mod:`evenkelvin.requests.meant` has it,
beside the target as the camera's white.
"""

from __future__ import annotations

from typing import Any

from evenkelvin.fields import Fields
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.before import after_words
from evenkelvin.lights.dimming import dimming
from evenkelvin.lights.fixing import landings, narrowing, offset
from evenkelvin.lights.meant import meant_words
from evenkelvin.lights.tint import neutralising_cc
from evenkelvin.lights.tolerance import verdict
from evenkelvin.replies.dim import dimming_plain
from evenkelvin.replies.fix import landings_plain, offset_plain
from evenkelvin.replies.plain import to_dial, tolerance_plain, white
from evenkelvin.requests.kit import KIT, read_kit
from evenkelvin.requests.meant import MEANT, read_meant, read_targets
from evenkelvin.requests.reading import READING, TARGET, read_reading, read_target
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.shapes import Group, Whole

FIELDS: Group = {
    "reading": READING, **TARGET, "meant": MEANT, **KIT, "depth": Whole(1, 3), **TOLERANCE,
    "most": Whole(1, 100),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the offset, its verdict, what to dial, and the packs, best first.

    ``target`` is what the light is meant to be, which all goes by, ``meant`` says it in words,
    ``white`` is the camera's. ``packs`` holds at most ``most`` of the Pareto front of distance,
    stops and pieces; ``dim`` is the setting of a tungsten lamp's dimmer (as ask dim has it) with
    "lands", "steps", "verdict" and whether it comes "before_gel", None where none helps. A light
    that is meant as found has none of these, only its reading. ``is_colour`` tells a reading too
    far from white to have a CCT: there are then no packs, unless it is meant to be such a colour.
    A pack's ``promise`` is by ``odds``; ``advice`` says what would tell better where the best pack
    lands, None where that is known well enough; ``after`` whose past has told something of it.
    ``assumed``, where figures came in another form, says what they were taken for.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    every = read_kit(fields.without("kit"))
    reading = read_reading(fields.group("reading"), every)
    centre = read_target(fields.group("target"), every)
    meant = read_meant(fields, every)
    (target,) = read_targets(centre, [meant], [reading], [fields])
    radius = read_tolerance(fields)
    depth = fields.whole("depth", DEEPEST, 1, DEEPEST)
    most = fields.whole("most", 12, 1, 100)

    answer: dict[str, Any] = {
        "reading": white(reading.xy),
        "white": white(centre.xy),
        "is_colour": reading.is_colour,
        "meant": meant_words(meant),
        "target": None,
        "offset": None,
        "verdict": None,
        "tolerance": tolerance_plain(radius),
        "dial": None,
        "packs": [],
        "dim": None,
        "advice": None,
        "after": None,
        "warnings": reading.warnings,
    }
    if reading.assumed:
        answer["assumed"] = list(reading.assumed)
    if target is None:
        return answer
    found = offset(reading, target)
    shown = offset_plain(found, meant.way == "white")
    # Gel for white is no advice for a green screen; a light meant to be coloured may have it.
    advised = target.is_colour or not reading.is_colour
    packs = landings(reading, target, kit, radius, depth, most) if advised else []
    shown["cc"] = neutralising_cc(reading.spectra[0], target.duv)
    return answer | {
        "target": white(target.xy),
        "offset": shown,
        "verdict": verdict(found.steps, radius),
        "dial": to_dial(target.xy),
        "packs": landings_plain(packs),
        "advice": narrowing(reading, packs[0]) if packs else None,
        "after": after_words(reading.after) if packs else None,
        "dim": dimming_plain(dimming(reading, target, radius)),
    }
