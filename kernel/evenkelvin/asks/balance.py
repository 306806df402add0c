"""The whole set at once: the camera's white, and what to hang or dial on each light.

``{"ask": "balance", "lights": [{"reading": R, "may"?: ["gel", "dial"], "dial"?: {"from_K", "to_K",
"duv_limit"?} | {"gamut": [R…]}, "cuts"?: n, "name"?, "meant"?: M}…], "kit"?: [names], "own_gels"?,
"stock"?: {gel: cuts | {"sheets", "cuts_per_sheet"}}, "whites"?: {"from_K", "to_K", "step_K" |
"step_mired", "duv_limit", "duv_step"}, "tolerance"?, "depth"?: 3, "most"?: 12,
"judge"?: "observer" | "camera", "camera"?: C}``

M as :mod:`evenkelvin.requests.meant` has it: what the light is meant to be beside the white, and
moving with it. ``may`` is ["gel"] unless stated; [] is a light not to be touched. ``cuts`` is how
many cuts of gel one layer on that light takes, and ``stock`` counts cuts beside what hangs already;
a gel not named in it has no limit. Whites go from 2500 to 10 000 K by 100 K on the black-body line
unless stated.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_prime_to_xy
from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.filters.pack import DEEPEST
from evenkelvin.lights.balancing import (
    MOST_LIGHTS,
    MOST_WHITES,
    Balance,
    Balances,
    Part,
    SetLight,
    WhiteGrid,
    balance,
    possible_whites,
    thin,
    white_grid,
    whites_between,
)
from evenkelvin.lights.before import after_words
from evenkelvin.lights.camera_agreement import camera_steps
from evenkelvin.lights.fixing import Landing, land, pack_words
from evenkelvin.lights.gamut import USUAL_DUV, Whites
from evenkelvin.lights.meant import AS_WHITE, meant_words, stands_for
from evenkelvin.lights.reading import TARGET_K, pack_transmittance
from evenkelvin.lights.region import UNSURE
from evenkelvin.lights.tolerance import verdict
from evenkelvin.problem import Problem
from evenkelvin.rendering.camera import Camera
from evenkelvin.rendering.reference import Unrated
from evenkelvin.replies.each import unusable_plain
from evenkelvin.replies.fix import landing_plain
from evenkelvin.replies.plain import tolerance_plain, white
from evenkelvin.requests.judge import judge_fields, read_judge
from evenkelvin.requests.kit import GEL, KIT, find_gel, read_kit
from evenkelvin.requests.lit import LitSet
from evenkelvin.requests.meant import MEANT
from evenkelvin.requests.reach import REACH, read_reach
from evenkelvin.requests.reading import READING, read_reading
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Said, counted, joined
from evenkelvin.shapes import ByName, Choice, Group, Many, Number, OneOf, Text, Whole

_STEP_K, _DUV_STEP = 100.0, 0.002
_MOST_CUTS = 100_000

_LIGHT: Group = {
    "reading": READING, "may": Many(Choice(("gel", "dial"))), "dial": REACH, "cuts": Whole(1, 10),
    "name": Text(), "meant": MEANT,
}  # fmt: skip
_SHEETS: Group = {"sheets": Whole(0, 20), "cuts_per_sheet": Whole(1, 20)}
_WHITES: Group = {
    "from_K": Number(*TARGET_K), "to_K": Number(*TARGET_K), "step_K": Number(100, 2000),
    "step_mired": Number(10, 100), "duv_limit": Number(0, 0.02), "duv_step": Number(0.002, 0.02),
}  # fmt: skip
FIELDS: Group = {
    "lights": Many(_LIGHT), **KIT, "stock": ByName(GEL.such_as, OneOf((Whole(0, 20), _SHEETS))),
    "whites": _WHITES, **TOLERANCE, "depth": Whole(1, 2), "most": Whole(1, 200),
    **judge_fields("observer"),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the trade-off, the fewest lights out first, and the fewest pieces among those.

    Each of ``front``: ``white``; ``out`` (indices); ``twins``, groups of indices of lights that are
    meant alike, read within a step of each other and hang one pack, for which up to a tenth of a
    stop more is lost; ``pieces`` to hang; ``cuts`` and ``hang`` (gel, cuts, lights) to fetch;
    ``stops_lost``, the sum over the lights, and ``stops_lost_max``; ``per_light`` with ``does``
    "leave" | "gel" | "dial", ``pack`` and ``after`` as in fix, ``dial``, ``steps``, ``verdict`` of
    the best guess and what may be promised (``promise``, as in fix), ``meant`` in words and its
    ``target`` at that white; ``words``; ``exact`` and ``at_least_stops``: no plan
    with as few lights out and as few pieces loses less, light being reckoned in fiftieths of a
    stop.
    ``exact`` at the top says that nothing better was left untried anywhere; otherwise
    ``fewest_out`` is the least number of lights out that could not be ruled out.

    ``lights``: for each its ``name`` and ``problem``, null or what is wrong with it, the field
    named within the light. Only lights without one are balanced: ``per_light`` and ``out`` are
    about these, in their order.

    With ``judge`` "camera" each of ``per_light`` has ``camera`` {"steps", "verdict"}: what the
    standard camera of EBU Tech 3355, or C (see :mod:`evenkelvin.requests.sensitivities`), makes of
    it balanced for the plan's white; null where no spectrum was measured, where it is dialled or as
    found. ``camera_out`` of each plan lists the lights that are out to it, and ``camera`` is its
    name. The plans themselves are still looked for by the observer.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    every = read_kit(fields.without("kit"))
    groups = fields.groups("lights", most=MOST_LIGHTS)
    if not groups:
        raise Problem(fields.at("lights"), Said("There are no lights yet: keep a reading first."))
    lit = LitSet(groups, every, lambda group: _read_light(group, every))
    bounds = _read_whites(fields)
    lights, grid, warnings = _beside(lit, bounds)
    warnings = [
        *(
            Said("{name} is left out: {why}", name=lit.name_at(place), why=problem.message)
            for place, problem in sorted(lit.problems.items())
        ),
        *(
            _assumed_words(light.name)
            for place, light in zip(lit.places, lights, strict=True)
            if light.reach is not None and not groups[place].given("dial")
        ),
        *warnings,
    ]
    radius = read_tolerance(fields)
    depth = fields.whole("depth", DEEPEST, 1, DEEPEST)
    most = fields.whole("most", 12, 1, 200)
    stock = _read_stock(fields, every)
    camera = read_judge(fields, "observer")
    found = Balances((), exact=True, fewest_out=0)
    if lights:
        found = balance(lights, grid, kit, stock, radius, depth)
    bare = [white(light.reading.xy) for light in lights]
    plans = []
    for one in thin(found.front, most):
        plan = _plan(one, lights, bare, grid, radius)
        if camera is not None:
            plan |= _to_camera(camera, one, lights, plan["per_light"], grid, radius)
        plans.append(plan)
    return {
        **({} if camera is None else {"camera": camera.name}),
        "lights": [
            unusable_plain(lit.name_at(place), lit.problems[place])
            if place in lit.problems
            else {"name": lit.name_at(place), "problem": None}
            for place in range(len(groups))
        ],
        "front": plans,
        "plans": len(found.front),
        "exact": found.exact,
        "fewest_out": found.fewest_out,
        "words": _bound_words(found),
        "tolerance": tolerance_plain(radius),
        "whites": len(grid.cct_k),
        "warnings": warnings,
    }


def _beside(
    lit: LitSet[SetLight], bounds: WhiteGrid
) -> tuple[list[SetLight], WhiteGrid, list[Said]]:
    """Return the lights with what each is meant to be, the whites that allow it, and warnings.

    A light for whose sake no white would be left is left out.
    """
    while True:
        names, meant = lit.names, lit.meant
        lights = [
            replace(light, name=name, meant=means)
            for light, name, means in zip(lit.lights, names, meant, strict=True)
        ]
        grid, narrow = possible_whites(bounds, lights)
        if len(grid.cct_k):
            break
        first = narrow[0]
        lit.leave_out(
            first,
            Problem(
                "meant",
                Said(
                    "Beside none of the whites can {name} be {meant}: take other whites, or "
                    "another meaning.",
                    name=names[first],
                    meant=meant_words(meant[first]),
                ),
            ),
        )
    warnings = [
        Said(
            "Whites beside which {name} cannot be {meant} are left out.",
            name=names[index],
            meant=meant_words(meant[index]),
        )
        for index in narrow
    ]
    return lights, grid, warnings


def _read_light(fields: Fields, kit: tuple[Gel, ...]) -> SetLight:
    fields.refuse_unknown(*_LIGHT)
    reading = read_reading(fields.group("reading"), kit)
    may = fields.texts("may") if fields.given("may") else ["gel"]
    for place, word in enumerate(may):
        if word not in ("gel", "dial"):
            raise Problem(
                f"{fields.at('may')}.{place}",
                Said(
                    "“{word}” is not something a light may do. Choose: gel, dial.", word=word[:40]
                ),
            )
    name = fields.text("name", reading.name, longest=200)
    reach = None
    if "dial" in may:
        reach = (
            read_reach(fields.group("dial"), kit)
            if fields.given("dial")
            else Whites(*TARGET_K, USUAL_DUV)
        )
    elif fields.given("dial"):
        raise Problem(
            fields.at("dial"), Said("A range to dial is given, but “may” does not say dial.")
        )
    return SetLight(reading, "gel" in may, reach, fields.whole("cuts", 1, 1, 1000), name)


def _assumed_words(name: str) -> Said:
    return Said(
        "What {name} can be dialled to was not stated: {low:.0f}–{high:.0f} K is assumed.",
        name=name,
        low=TARGET_K[0],
        high=TARGET_K[1],
    )


def _read_stock(fields: Fields, every: tuple[Gel, ...]) -> dict[str, int]:
    if not fields.given("stock"):
        return {}
    group = fields.group("stock")
    known = {gel.name: gel for gel in every}
    stock: dict[str, int] = {}
    for name in fields.raw("stock"):
        find_gel(known, str(name), group.at(str(name)[:40]))
        if isinstance(group.raw(name), dict):
            sheets = group.group(name)
            sheets.refuse_unknown(*_SHEETS)
            per_sheet = sheets.whole("cuts_per_sheet", 1, 1, 1000)
            stock[name] = sheets.whole("sheets", 0, 0, 1000) * per_sheet
        elif group.given(name):
            stock[name] = group.whole(name, 0, 0, _MOST_CUTS)
    return stock


def _read_whites(fields: Fields) -> WhiteGrid:
    group = fields.group("whites") if fields.given("whites") else Fields({}, fields.at("whites"))
    group.refuse_unknown(*_WHITES)
    low, high = TARGET_K
    from_k = group.number("from_K", low, low, high, Said("the lowest white"))
    to_k = group.number("to_K", high, low, high, Said("the highest white"))
    if to_k < from_k:
        raise Problem(
            group.at("to_K"),
            Said(
                "The whites end at {to_k:g} K, below their start at {from_k:g} K.",
                to_k=to_k,
                from_k=from_k,
            ),
        )
    if group.given("step_mired"):
        if group.given("step_K"):
            raise Problem(group.at("step_K"), Said("Give the step in K or in mired, not both."))
        step = group.number("step_mired", low=0.5, high=100.0, label=Said("the step in mired"))
        kelvins = 1e6 / whites_between(1e6 / to_k, 1e6 / from_k, step)[::-1]
    else:
        step = group.number("step_K", _STEP_K, 10.0, 2000.0, Said("the step in K"))
        kelvins = whites_between(from_k, to_k, step)
    limit = group.number("duv_limit", 0.0, 0.0, 0.02, Said("the tint limit in Duv"))
    step = group.number("duv_step", _DUV_STEP, 0.0005, 0.02, Said("the tint step in Duv"))
    tints = step * np.arange(1, int(limit / step + 1e-9) + 1)
    grid = white_grid(kelvins, np.concatenate([-tints[::-1], [0.0], tints]))
    if len(grid.cct_k) > MOST_WHITES:
        raise Problem(
            group.at("step_K"),
            Said(
                "These bounds and steps make {count} whites; at most {most_whites} are tried. "
                "Take a wider step or closer bounds.",
                count=len(grid.cct_k),
                most_whites=MOST_WHITES,
            ),
        )
    return grid


def _bound_words(found: Balances) -> str:
    if not found.front:
        return Said("No light here can be balanced.")
    if found.exact:
        return Said("Every combination was weighed: nothing better exists within these bounds.")
    listed = len(found.front[0].out)
    if all(one.exact for one in found.front) and found.fewest_out < listed:
        return Said(
            "These plans are the best of their kind; whether fewer than {listed} lights "
            "could stay out was not proved.",
            listed=listed,
        )
    return Said(
        "There are too many combinations to weigh all: each plan says how much light a "
        "better one might save at most."
    )


def _part(light: SetLight, bare: dict[str, Any], part: Part, radius: float) -> dict[str, Any]:
    target = None if part.aim_uv is None else uv_prime_to_xy(part.aim_uv)
    shown: dict[str, Any] = {
        "name": light.name,
        "does": "leave",
        "gels": [gel.name for gel in light.reading.pack],
        "dial": None,
        "pack": None,
        "after": None,
        "lands": bare,
        "meant": meant_words(light.meant),
        "target": None if target is None else white(target),
        "steps": part.steps,
        "verdict": None if part.steps is None else verdict(part.steps, radius),
        "promise": None if part.steps is None else verdict(part.steps, radius),
        "stops_lost": 0.0,
        "words": Said("leave as it is"),
    }
    if part.dial_uv is not None:
        dial = white(uv_prime_to_xy(part.dial_uv))
        shown |= {
            "does": "dial",
            "dial": dial,
            "lands": dial,
            "words": Said("dial x {x:.4f} y {y:.4f}", x=dial["x"], y=dial["y"])
            if dial["cct_K"] is None
            else Said(
                "dial {kelvin:.0f} K, x {x:.4f} y {y:.4f}",
                kelvin=dial["cct_K"],
                x=dial["x"],
                y=dial["y"],
            ),
        }
    elif part.gels is not None and target is not None:
        landing = land(light.reading, target, part.gels, radius)
        pack = landing_plain(landing)
        shown |= {
            "does": "gel",
            "gels": pack["gels"],
            "pack": pack,
            "after": after_words(light.reading.after),
            "lands": pack["lands"],
            "promise": landing.promise,
            "stops_lost": landing.stops_lost,
            "words": _hanging(landing),
        }
    return shown


def _hanging(landing: Landing) -> str:
    if not landing.add and not landing.take_off:
        return ""
    if not landing.take_off:
        return Said("hang {pack}", pack=pack_words(landing.add))
    if not landing.add:
        return Said("take off {pack}", pack=pack_words(landing.take_off))
    return Said(
        "take off {pack}, hang {instead}",
        pack=pack_words(landing.take_off),
        instead=pack_words(landing.add),
    )


def _plan(
    one: Balance,
    lights: list[SetLight],
    bare: list[dict[str, Any]],
    grid: WhiteGrid,
    radius: float,
) -> dict[str, Any]:
    centre = uv_prime_to_xy(grid.uv_prime[one.white])
    parts = [
        _part(light, now, part, radius)
        for light, now, part in zip(lights, bare, one.parts, strict=True)
    ]
    hang: dict[str, dict[str, Any]] = {}
    for light, part in zip(lights, parts, strict=True):
        for gel in part["pack"]["add"] if part["pack"] else []:
            row = hang.setdefault(gel, {"gel": gel, "cuts": 0, "lights": []})
            row["cuts"] += light.cuts
            row["lights"].append(light.name)
    lost = [part["stops_lost"] for part in parts]
    shown = white(centre)
    # As the grid has it, not as it comes back from x y.
    shown |= {"cct_K": float(grid.cct_k[one.white]), "duv": float(grid.duv[one.white])}
    return {
        "white": shown,
        "out": list(one.out),
        "twins": [list(group) for group in one.twins],
        "pieces": one.pieces,
        "cuts": sum(row["cuts"] for row in hang.values()),
        "hang": list(hang.values()),
        "stops_lost": sum(lost),
        "stops_lost_max": max(lost),
        "per_light": parts,
        "exact": one.exact,
        "at_least_stops": one.at_least_stops,
        "words": _plan_words(one, parts, shown["cct_K"]),
    }


def _to_camera(
    camera: Camera,
    one: Balance,
    lights: list[SetLight],
    parts: list[dict[str, Any]],
    grid: WhiteGrid,
    radius: float,
) -> dict[str, Any]:
    """Return what the camera makes of a plan, and note it with each light."""
    xy = uv_prime_to_xy(grid.uv_prime[one.white])
    balanced_for = stands_for(grid.cct_k[one.white][np.newaxis], xy[np.newaxis])[0]
    out = []
    for index, (light, part, shown) in enumerate(zip(lights, one.parts, parts, strict=True)):
        shown["camera"] = None
        if light.reading.spectrum is None or part.dial_uv is not None or part.aim_uv is None:
            continue
        gels = light.reading.pack if part.gels is None else part.gels
        through = pack_transmittance(gels) / pack_transmittance(light.reading.pack)
        aim = None
        if not np.allclose(part.aim_uv, grid.uv_prime[one.white], rtol=0.0, atol=1e-9):
            aim_xy = uv_prime_to_xy(part.aim_uv)
            aim = stands_for(np.array([xy_to_cct(aim_xy)[0]]), aim_xy[np.newaxis])[0]
        lights_ = (balanced_for,) if aim is None else (balanced_for, aim)
        if not all(np.isfinite(each).all() for each in lights_):
            continue
        try:
            steps = camera_steps(light.reading.spectra[0] * through, balanced_for, aim, camera)
        except Unrated:
            continue
        word = verdict(steps, radius)
        shown["camera"] = {"steps": steps, "verdict": word}
        if word != "holds":
            out.append(index)
    return {"camera_out": out}


def _plan_words(one: Balance, parts: list[dict[str, Any]], kelvin: float) -> Said:
    packs = [part["pack"] for part in parts if part["pack"]]
    gelled = sum(bool(pack["add"]) for pack in packs)
    work = [counted(gelled, "gel {n} light", "gel {n} lights") if gelled else Said("no gel")]
    if len(packs) > gelled:
        work.append(Said("take gel off {count}", count=len(packs) - gelled))
    dialled = sum(part["does"] == "dial" for part in parts)
    if dialled:
        work.append(Said("dial {dialled}", dialled=dialled))
    lost = sum(part["stops_lost"] for part in parts)
    if packs and lost < -0.05:
        work.append(Said("gains {stops:.1f} stops", stops=-lost))
    elif packs:
        work.append(Said("{stops:.1f} stops in all", stops=max(lost, 0.0)))
    plan = Said("{kelvin:.0f} K: {work}", kelvin=kelvin, work=joined(work))
    # A plan is looked for by the best guess of each lamp; what that promises is told beside it.
    unsure = sum(part["promise"] in UNSURE for part in parts)
    if not one.out:
        if all(part["verdict"] is None for part in parts):
            return Said("{plan}; every light is as found.", plan=plan)
        judged = [part for part in parts if part["verdict"] is not None]
        if any(part["meant"] != meant_words(AS_WHITE) for part in judged):
            if unsure:
                return Said(
                    "{plan}; by the best guess all {n} are where they are meant to be: "
                    "read {again} again when hung.",
                    plan=plan,
                    n=len(judged),
                    again=unsure,
                )
            return Said("{plan}; all {n} where they are meant to be.", plan=plan, n=len(judged))
        if unsure:
            return Said(
                "{plan}; by the best guess every light holds: read {again} again when hung.",
                plan=plan,
                again=unsure,
            )
        return Said("{plan}; every light holds.", plan=plan)
    who = joined(parts[index]["name"] for index in one.out[:3])
    if len(one.out) > 3:
        who = Said("{lights} and {count} more", lights=who, count=len(one.out) - 3)
    if unsure:
        return Said(
            "{plan}; {lights} not matched; read {again} again when hung.",
            plan=plan,
            lights=who,
            again=unsure,
        )
    return Said("{plan}; {lights} not matched.", plan=plan, lights=who)
