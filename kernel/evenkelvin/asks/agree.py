"""How all lights of a setup agree.

``{"ask": "agree", "lights": [R…], "target": T | "hero": index, "tolerance"?, "kit"?,
"own_gels"?, "depth"?, "judge"?: "observer" | "camera",
"camera"?: C}``

Each R may carry ``meant`` (see :mod:`evenkelvin.requests.meant`): what that light is meant to be
beside the target as the camera's white.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.fields import Fields
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.agreement import Member, agree, spread, twins
from evenkelvin.lights.before import after_words
from evenkelvin.lights.camera_agreement import camera_steps, meant_light
from evenkelvin.lights.meant import Meant, groups_alike, meant_words
from evenkelvin.lights.reading import Reading, pack_transmittance
from evenkelvin.lights.region import UNSURE
from evenkelvin.lights.similarity import Unlike, similarities
from evenkelvin.lights.tolerance import VERDICT_WORDS, Verdict, verdict
from evenkelvin.problem import Problem
from evenkelvin.rendering.camera import Camera
from evenkelvin.rendering.reference import Unrated
from evenkelvin.replies.dim import dimming_plain
from evenkelvin.replies.each import left_out_words, unusable_plain
from evenkelvin.replies.fix import landings_plain, offset_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.requests.judge import judge_fields, read_balance, read_judge
from evenkelvin.requests.kit import KIT, read_kit
from evenkelvin.requests.lit import LitSet
from evenkelvin.requests.meant import MEANT
from evenkelvin.requests.reading import READING, TARGET, read_reading, read_target
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Figure, Said, counted
from evenkelvin.shapes import Group, Many, Whole

FIELDS: Group = {
    "lights": Many({**READING, "meant": MEANT}), **TARGET, "hero": Whole(0, 3), **TOLERANCE, **KIT,
    "depth": Whole(1, 3), **judge_fields("observer"),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with each light's standing, the odd ones out, the spread and the work.

    A light that cannot be used has only its ``name`` and a ``problem``, its field named within
    the light, and counts for nothing else; for the others ``problem`` is null.

    Each light states its own ``target`` and, in words, what it is ``meant`` to be; its offset,
    verdict, ``pack`` with ``after``, and ``dim`` (see fix) go by that. ``odd_ones_out`` are the
    lights that do not hold; ``found`` are those meant as found: they have neither target nor
    verdict. With both ``target`` and ``hero``, colour is judged against the target and stops
    against the hero.
    ``spread`` is between what the lights are away from what each is meant to be. ``ssi_to_hero`` is
    null unless both have a spectrum; ``unlike_pairs`` are lights meant alike that agree with each
    other in x y but not in spectrum; ``twins`` are groups of lights meant alike that read alike:
    they share one pack unless that costs a verdict.

    With ``judge`` "camera" the verdicts of measured spectra are those of the standard camera of
    EBU Tech 3355, or of C (see :mod:`evenkelvin.requests.sensitivities`), balanced for the target;
    ``camera`` is its name. Each light then has ``camera`` {"steps", "verdict",
    "with_pack" | null} (null without a spectrum, when the observer judges), ``observer_verdict``,
    and ``disagree`` lists the lights on which camera and observer differ. Packs are still looked
    for by the observer, for the lights that are out to it.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    every = read_kit(fields.without("kit"))
    groups = fields.groups("lights", most=200)
    if not groups:
        raise Problem(fields.at("lights"), Said("There are no lights yet: keep a reading first."))
    lit = LitSet(groups, every, lambda group: read_reading(group, every, ("meant",)))
    hero = lit.hero(fields)
    if fields.given("target"):
        target = read_target(fields.group("target"), every)
    elif hero is not None:
        target = hero
    else:
        raise Problem(fields.at("target"), Said("Give a target white, or name the reference."))
    targets = lit.targets(target)
    places, names, lights, meant = lit.places, lit.names, lit.lights, lit.meant
    radius = read_tolerance(fields)
    depth = fields.whole("depth", DEEPEST, 1, DEEPEST)

    judge = read_judge(fields, "observer")

    members = agree(lights, targets, kit, radius, hero, depth)
    verdicts: list[Verdict | None] = [member.verdict for member in members]
    camera: list[dict[str, Any] | None] = [None] * len(lights)
    warnings: list[Said] = []
    if judge is not None:
        camera, warnings = _by_camera(fields, judge, lights, names, members, target, radius)
        verdicts = [
            seen["verdict"] if seen is not None else word
            for seen, word in zip(camera, verdicts, strict=True)
        ]
    odd = [index for index, word in enumerate(verdicts) if word not in ("holds", None)]
    fixable = [members[index].best for index in odd if not _dims(members[index])]
    pieces = sum(len(best.add) for best in fixable if best is not None)
    costs = [best.stops_lost for best in fixable if best is not None]
    apart = spread(lights, targets) if lights else None
    whites = [white(light.xy) for light in lights]
    similar = similarities(lights, radius, _index(hero, lights), groups_alike(targets))
    # Their whites are found all at once.
    told = iter(landings_plain([one.best for one in members if one.best is not None]))
    packs = [None if one.best is None else next(told) for one in members]
    mireds = [
        shown["mired"]
        for shown, one in zip(whites, targets, strict=True)
        if one is not None and shown["mired"] is not None
    ]
    answer: dict[str, Any] = {
        "target": white(target.xy),
        "tolerance": tolerance_plain(radius),
        "lights": [
            {
                "name": light.name,
                "problem": None,
                **shown,
                "meant": meant_words(means),
                "target": None if member.target is None else white(member.target.xy),
                "offset": None
                if member.offset is None
                else offset_plain(member.offset, means.way == "white"),
                "delta_uv": None if member.offset is None else member.offset.delta_uv,
                "steps": None if member.offset is None else member.offset.steps,
                "verdict": word,
                "stops_to_hero": member.stops_to_hero,
                "ssi_to_hero": likeness,
                "pack": pack,
                "after": after_words(light.after) if pack is not None else None,
                "dim": dimming_plain(member.dim),
                "warnings": light.warnings,
            }
            for light, shown, means, member, pack, word, likeness in zip(
                lights, whites, meant, members, packs, verdicts, similar.to_hero, strict=True
            )
        ],
        "odd_ones_out": [places[index] for index in odd],
        "found": [place for place, one in zip(places, targets, strict=True) if one is None],
        "twins": [[places[index] for index in group] for group in twins(lights, targets)],
        "spread": apart
        and {
            "steps": apart.steps,
            "mired": [min(mireds), max(mireds)] if mireds else None,
            "pair": [places[index] for index in apart.pair],
        },
        "unlike_pairs": [_unlike_plain(pair, names, places) for pair in similar.unlike],
        "work": {
            "pieces": pieces,
            "stops_lost_max": max(costs, default=0.0),
            "words": _work_words(meant, [members[index] for index in odd]),
        },
        "warnings": warnings,
    }
    if judge is not None:
        answer["camera"] = judge.name
        for one, member, seen in zip(answer["lights"], members, camera, strict=True):
            one |= {"camera": seen, "observer_verdict": member.verdict}
        answer["disagree"] = [
            place
            for place, seen, member in zip(places, camera, members, strict=True)
            if seen is not None and seen["verdict"] != member.verdict
        ]
    for place, problem in sorted(lit.problems.items()):
        answer["lights"].insert(place, unusable_plain(lit.name_at(place), problem))
    answer["warnings"] = left_out_words(lit.left_out()) + warnings
    return answer


def _index(hero: Reading | None, lights: list[Reading]) -> int | None:
    return next((index for index, light in enumerate(lights) if light is hero), None)


def _by_camera(
    fields: Fields,
    camera: Camera,
    lights: list[Reading],
    names: list[str],
    members: list[Member],
    target: Reading,
    radius: float,
) -> tuple[list[dict[str, Any] | None], list[Said]]:
    """Return what the camera makes of each light, None where it is not known, and warnings."""
    balanced_for = read_balance(fields, "target", target)
    seen: list[dict[str, Any] | None] = []
    warnings = []
    for light, name, member in zip(lights, names, members, strict=True):
        if member.target is None:
            seen.append(None)
            continue
        if light.spectrum is None:
            warnings.append(
                Said("{name} has no spectrum: the observer judges it, not the camera.", name=name)
            )
            seen.append(None)
            continue
        try:
            aim = None if _same(member.target, target) else meant_light(member.target)
            steps = camera_steps(light.spectra[0], balanced_for, aim, camera)
        except Unrated as why:
            warnings.append(Said("{name}: {why}", name=name, why=why.words))
            seen.append(None)
            continue
        word = verdict(steps, radius)
        after = None
        if member.best is not None:
            through = pack_transmittance(member.best.gels) / pack_transmittance(light.pack)
            lands = camera_steps(light.spectra[0] * through, balanced_for, aim, camera)
            after = {"steps": lands, "verdict": verdict(lands, radius)}
        if member.verdict is not None and word != member.verdict:
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


def _same(target: Reading, white: Reading) -> bool:
    return bool(np.array_equal(target.xy, white.xy))


def _dims(member: Member) -> bool:
    """Tell whether a light is better dimmed than gelled."""
    if member.dim is None or member.dim.verdict != "holds":
        return False
    return member.dim.before_gel or member.best is None or member.best.verdict != "holds"


def _work_words(meant: list[Meant], odd: list[Member]) -> Said:
    """Return what is to be done for the lights that are out, and how many are left aside."""
    if not meant:
        return Said("No reading here can be used.")
    judged = [means for means in meant if means.judged]
    if not judged:
        return Said("Every light is as found: there is nothing to judge.")
    if odd:
        words = _out_words(len(judged), odd)
    elif all(means.way == "white" for means in judged):
        words = Said("Every light holds.")
    else:
        words = counted(
            len(judged),
            "The light is where it is meant to be.",
            "All {n} lights are where they are meant to be.",
        )
    left = len(meant) - len(judged)
    return Said("{words} {n} as found.", words=words, n=left) if left else words


def _out_words(judged: int, odd: list[Member]) -> Said:
    dims = [member for member in odd if _dims(member)]
    packs = [member.best for member in odd if member.best is not None and not _dims(member)]
    out = Said("{out} of {all} out", out=len(odd), all=judged)
    if packs:
        pieces = sum(len(best.add) for best in packs)
        work = counted(
            pieces,
            "{out}: {n} gel on {gelled} of them",
            "{out}: {n} gels on {gelled} of them",
            out=out,
            gelled=len(packs),
        )
        if dims:
            work = Said("{work}, {n} to dim", work=work, n=len(dims))
    elif dims:
        work = Said("{out}: {n} to dim", out=out, n=len(dims))
    else:
        work = Said("{out}: no gel helps them", out=out)
    still = len(odd) - len(dims) - sum(best.verdict == "holds" for best in packs)
    words = (
        Said("{work}, {still} still not within tolerance.", work=work, still=still)
        if still
        else Said("{work}.", work=work)
    )
    unsure = sum(best.promise in UNSURE for best in packs)
    return Said("{words} Read {n} again when hung.", words=words, n=unsure) if unsure else words


def _unlike_plain(pair: Unlike, names: list[str], places: list[int]) -> dict[str, Any]:
    first, second = names[pair.first], names[pair.second]
    shown = Figure(str(pair.ssi).replace("-", "−"))
    return {
        "pair": [places[pair.first], places[pair.second]],
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
