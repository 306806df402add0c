"""How all lights of a setup agree.

``{"ask": "agree", "lights": [R…], "target": T | "hero": index, "tolerance"?, "kit"?,
"own_gels"?, "depth"?, "judge"?: "observer" | "camera"}``
"""

from __future__ import annotations

from typing import Any

from evenkelvin.fields import Fields
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.agreement import Member, agree, spread
from evenkelvin.lights.camera_agreement import camera_steps, target_light
from evenkelvin.lights.reading import Reading, pack_transmittance
from evenkelvin.lights.similarity import Unlike, similarities
from evenkelvin.lights.tolerance import VERDICT_WORDS, Verdict, verdict
from evenkelvin.problem import Problem
from evenkelvin.rendering.reference import Unrated
from evenkelvin.replies.fix import landing_plain, offset_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.requests.kit import read_kit
from evenkelvin.requests.reading import read_reading, read_target
from evenkelvin.requests.tolerance import read_tolerance
from evenkelvin.said import Figure, Said, counted


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with each light's standing, the odd ones out, the spread and the work.

    ``odd_ones_out`` are the lights that do not hold. With both ``target`` and ``hero``, colour
    is judged against the target and stops against the hero. ``ssi_to_hero`` is null unless both
    have a spectrum; ``unlike_pairs`` are lights that agree with each other in x y but not in
    spectrum.

    With ``judge`` "camera" the verdicts of measured spectra are those of the standard camera of
    EBU Tech 3355, balanced for the target: each light then has ``camera`` {"steps", "verdict",
    "with_pack" | null} (null without a spectrum, when the observer judges), ``observer_verdict``,
    and ``disagree`` lists the lights on which camera and observer differ. Packs are still looked
    for by the observer, for the lights that are out to it.
    """
    fields.refuse_unknown(
        "ask", "lights", "target", "hero", "tolerance", "kit", "own_gels", "depth", "judge"
    )
    kit = read_kit(fields)
    every = read_kit(Fields({"own_gels": fields.items("own_gels")}))
    lights = [read_reading(group, every) for group in fields.groups("lights", most=200)]
    if not lights:
        raise Problem(fields.at("lights"), Said("There are no lights yet: keep a reading first."))
    hero_index = fields.whole("hero", -1, 0, len(lights) - 1) if fields.given("hero") else None
    hero = lights[hero_index] if hero_index is not None else None
    if fields.given("target"):
        target = read_target(fields.group("target"), every)
    elif hero is not None:
        target = hero
    else:
        raise Problem(fields.at("target"), Said("Give a target white, or name the hero light."))
    radius = read_tolerance(fields)
    depth = fields.whole("depth", DEEPEST, 1, DEEPEST)

    by_camera = fields.choice("judge", ("observer", "camera"), "observer") == "camera"

    members = agree(lights, target, kit, radius, hero, depth)
    verdicts: list[Verdict] = [member.verdict for member in members]
    camera: list[dict[str, Any] | None] = [None] * len(lights)
    warnings: list[Said] = []
    if by_camera:
        camera, warnings = _by_camera(fields, lights, members, target, radius)
        verdicts = [
            seen["verdict"] if seen is not None else word
            for seen, word in zip(camera, verdicts, strict=True)
        ]
    odd = [index for index, word in enumerate(verdicts) if word != "holds"]
    fixable = [members[index].best for index in odd]
    pieces = sum(len(best.add) for best in fixable if best is not None)
    costs = [best.stops_lost for best in fixable if best is not None]
    if not odd:
        words = Said("Every light holds.")
    else:
        gelled = sum(best is not None for best in fixable)
        work = (
            counted(
                pieces,
                "{out} of {all} out: {n} gel on {gelled} of them",
                "{out} of {all} out: {n} gels on {gelled} of them",
                out=len(odd),
                all=len(lights),
                gelled=gelled,
            )
            if gelled
            else Said("{out} of {all} out: no gel helps them", out=len(odd), all=len(lights))
        )
        still = sum(best is None or best.verdict != "holds" for best in fixable)
        words = (
            Said("{work}, {still} still not within tolerance.", work=work, still=still)
            if still
            else Said("{work}.", work=work)
        )
    apart = spread(lights)
    whites = [white(light.xy) for light in lights]
    similar = similarities(lights, radius, hero_index)
    mireds = [shown["mired"] for shown in whites if shown["mired"] is not None]
    answer: dict[str, Any] = {
        "target": white(target.xy),
        "tolerance": tolerance_plain(radius),
        "lights": [
            {
                "name": light.name,
                **shown,
                "offset": offset_plain(member.offset),
                "delta_uv": member.offset.delta_uv,
                "steps": member.offset.steps,
                "verdict": word,
                "stops_to_hero": member.stops_to_hero,
                "ssi_to_hero": likeness,
                "pack": landing_plain(member.best) if member.best is not None else None,
                "warnings": light.warnings,
            }
            for light, shown, member, word, likeness in zip(
                lights, whites, members, verdicts, similar.to_hero, strict=True
            )
        ],
        "odd_ones_out": odd,
        "spread": {
            "steps": apart.steps,
            "mired": [min(mireds), max(mireds)] if mireds else None,
            "pair": list(apart.pair),
        },
        "unlike_pairs": [_unlike_plain(pair, lights) for pair in similar.unlike],
        "work": {
            "pieces": pieces,
            "stops_lost_max": max(costs, default=0.0),
            "words": words,
        },
        "warnings": warnings,
    }
    if by_camera:
        for one, member, seen in zip(answer["lights"], members, camera, strict=True):
            one |= {"camera": seen, "observer_verdict": member.verdict}
        answer["disagree"] = [
            index
            for index, (seen, member) in enumerate(zip(camera, members, strict=True))
            if seen is not None and seen["verdict"] != member.verdict
        ]
    return answer


def _by_camera(
    fields: Fields, lights: list[Reading], members: list[Member], target: Reading, radius: float
) -> tuple[list[dict[str, Any] | None], list[Said]]:
    """Return what the camera makes of each light, None where it is not known, and warnings."""
    is_white = fields.given("target") and set(fields.raw("target")) <= {"cct_K", "duv"}
    balanced_for = target_light(target, is_white)
    if balanced_for is None:
        raise Problem(
            fields.at("judge"),
            Said(
                "A camera can judge only against a spectrum: take a white as the target, or a "
                "light whose spectrum was measured."
            ),
        )
    seen: list[dict[str, Any] | None] = []
    warnings = []
    for index, (light, member) in enumerate(zip(lights, members, strict=True)):
        name = light.name or Said("light {n}", n=index + 1)
        if light.spectrum is None:
            warnings.append(
                Said("{name} has no spectrum: the observer judges it, not the camera.", name=name)
            )
            seen.append(None)
            continue
        try:
            steps = camera_steps(light.spectra[0], balanced_for)
        except Unrated as why:
            warnings.append(Said("{name}: {why}", name=name, why=why.words))
            seen.append(None)
            continue
        word = verdict(steps, radius)
        after = None
        if member.best is not None:
            through = pack_transmittance(member.best.gels) / pack_transmittance(light.pack)
            lands = camera_steps(light.spectra[0] * through, balanced_for)
            after = {"steps": lands, "verdict": verdict(lands, radius)}
        if word != member.verdict:
            warnings.append(
                Said(
                    "{name}: {verdict} to the eye, {word} to the camera.",
                    name=name,
                    verdict=VERDICT_WORDS[member.verdict],
                    word=VERDICT_WORDS[word],
                )
            )
        seen.append({"steps": steps, "verdict": word, "with_pack": after})
    return seen, warnings


def _unlike_plain(pair: Unlike, lights: list[Reading]) -> dict[str, Any]:
    first, second = (
        lights[k].name or Said("light {n}", n=k + 1) for k in (pair.first, pair.second)
    )
    shown = Figure(str(pair.ssi).replace("-", "−"))
    return {
        "pair": [pair.first, pair.second],
        "steps": pair.steps,
        "ssi": pair.ssi,
        "words": Said(
            "{first} and {second} agree in x y but not in spectrum (SSI {shown}): colours "
            "under them may differ.",
            first=first,
            second=second,
            shown=shown,
        ),
    }
