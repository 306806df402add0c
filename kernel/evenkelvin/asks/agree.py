"""How all lights of a setup agree.

``{"ask": "agree", "lights": [R…], "target": T | "hero": index, "tolerance"?, "kit"?,
"own_gels"?, "depth"?}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.asks.plain import landing_plain, offset_plain, white
from evenkelvin.fields import Fields
from evenkelvin.filters.kit import read_kit
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.agreement import agree, spread
from evenkelvin.lights.reading import read_reading, read_target
from evenkelvin.lights.tolerance import plain, read_tolerance
from evenkelvin.problem import Problem


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with each light's standing, the odd ones out, the spread and the work.

    ``odd_ones_out`` are the lights that do not hold. With both ``target`` and ``hero``, colour
    is judged against the target and stops against the hero.
    """
    fields.refuse_unknown(
        "ask", "lights", "target", "hero", "tolerance", "kit", "own_gels", "depth"
    )
    kit = read_kit(fields)
    every = read_kit(Fields({"own_gels": fields.items("own_gels")}))
    lights = [read_reading(group, every) for group in fields.groups("lights", most=200)]
    if not lights:
        raise Problem(fields.at("lights"), "There are no lights yet: keep a reading first.")
    hero_index = fields.whole("hero", -1, 0, len(lights) - 1) if fields.given("hero") else None
    hero = lights[hero_index] if hero_index is not None else None
    if fields.given("target"):
        target = read_target(fields.group("target"), every)
    elif hero is not None:
        target = hero
    else:
        raise Problem(fields.at("target"), "Give a target white, or name the hero light.")
    radius = read_tolerance(fields)
    depth = fields.whole("depth", DEEPEST, 1, DEEPEST)

    members = agree(lights, target, kit, radius, hero, depth)
    odd = [index for index, member in enumerate(members) if member.verdict != "holds"]
    fixable = [members[index].best for index in odd]
    pieces = sum(len(best.add) for best in fixable if best is not None)
    costs = [best.stops_lost for best in fixable if best is not None]
    if not odd:
        words = "Every light holds."
    else:
        gelled = sum(best is not None for best in fixable)
        words = f"{len(odd)} of {len(lights)} out"
        words += f": {pieces} gels on {gelled} of them" if gelled else ": no gel helps them"
        still = sum(best is None or best.verdict != "holds" for best in fixable)
        words += f", {still} still not within tolerance." if still else "."
    apart = spread(lights)
    whites = [white(light.xy) for light in lights]
    mireds = [shown["mired"] for shown in whites if shown["mired"] is not None]
    return {
        "target": white(target.xy),
        "tolerance": plain(radius),
        "lights": [
            {
                "name": light.name,
                **shown,
                "offset": offset_plain(member.offset),
                "delta_uv": member.offset.delta_uv,
                "steps": member.offset.steps,
                "verdict": member.verdict,
                "stops_to_hero": member.stops_to_hero,
                "pack": landing_plain(member.best) if member.best is not None else None,
                "warnings": light.warnings,
            }
            for light, shown, member in zip(lights, whites, members, strict=True)
        ],
        "odd_ones_out": odd,
        "spread": {
            "steps": apart.steps,
            "mired": [min(mireds), max(mireds)] if mireds else None,
            "pair": list(apart.pair),
        },
        "work": {
            "pieces": pieces,
            "stops_lost_max": max(costs, default=0.0),
            "words": words,
        },
        "warnings": [],
    }
