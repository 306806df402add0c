"""What to dial next on a tunable lamp.

``{"ask": "dial", "target": T, "meant"?: M, "history": [{"dialled": R, "measured": R}…], "gamut"?:
[R…] | "range"?: {"from_K", "to_K", "duv_limit"?}, "correction"?: {"matrix", "offset"},
"tolerance"?, "lamp"?: kind, "kit"?, "own_gels"?}``; M as :mod:`evenkelvin.requests.meant` has it.

``dialled`` is x y or CCT and Duv, as the lamp takes it. ``correction`` is what an earlier answer
gave for this lamp.
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.colorimetry.chromaticity import uv_prime_to_xy, xy_to_uv_prime
from evenkelvin.colorimetry.difference import STEP_UV, delta_uv_prime
from evenkelvin.data import Floats
from evenkelvin.fields import Fields, parse_number
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.dialling import SAME_UV, Correction, learn
from evenkelvin.lights.fixing import closing_pack
from evenkelvin.lights.gamut import Reach, reached
from evenkelvin.lights.stand_in import LAMPS
from evenkelvin.lights.tolerance import verdict
from evenkelvin.problem import Problem
from evenkelvin.replies.fix import landing_plain
from evenkelvin.replies.plain import to_dial, tolerance_plain, white
from evenkelvin.requests.kit import KIT, read_kit
from evenkelvin.requests.meant import MEANT, read_aim
from evenkelvin.requests.reach import REACH, read_gamut, read_reach
from evenkelvin.requests.reading import READING, TARGET, read_reading
from evenkelvin.requests.tolerance import TOLERANCE, read_tolerance
from evenkelvin.said import Said, joined
from evenkelvin.shapes import Choice, Group, Many, Number, Text

_MOST_PAIRS = 100
_LAMP = "led rgb"

_CORRECTION: Group = {"matrix": Many(Many(Number(-3, 3))), "offset": Many(Number(-0.1, 0.1))}
_PAIR: Group = {"dialled": READING, "measured": READING, "name": Text(), "note": Text()}
FIELDS: Group = {
    **TARGET, "meant": MEANT, "history": Many(_PAIR), "gamut": Many(READING), "range": REACH,
    "correction": _CORRECTION, **TOLERANCE, "lamp": Choice(tuple(LAMPS)), **KIT,
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the next value, and what the lamp can reach.

    ``next``, what to dial, and ``next_green``, its tint in cuts; ``reachable``, ``nearest`` (what
    the lamp can reach) and ``remains_steps`` from there to the target; ``gel``, the pack as in
    fix that closes what remains, or null; ``steps`` and ``verdict`` of the last measurement (null
    without), ``best``, the index of the closest pair; ``correction`` to keep with the lamp;
    ``words``.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    every = read_kit(fields.without("kit"))
    target = read_aim(fields, every)
    radius = read_tolerance(fields)
    lamp = fields.choice("lamp", tuple(LAMPS), _LAMP)
    reach = _read_reach(fields, every)
    remembered = _read_correction(fields)
    dialled, measured = _read_history(fields, every)

    wanted = xy_to_uv_prime(target.xy)
    aim, remains = reached(reach, wanted)
    correction = learn(dialled, measured, aim, remembered)
    following = correction.dial_for(aim)
    if reach is not None:
        following = reach.nearest(following[np.newaxis])[0]
    apart = delta_uv_prime(measured, wanted) / STEP_UV
    best = int(np.argmin(apart)) if len(apart) else None
    steps = float(apart[-1]) if len(apart) else None
    words = Said("Dial this, then read the lamp.")
    if best is not None and steps is not None:
        if verdict(steps, radius) == "holds":
            following, words = dialled[-1], Said("It holds: leave it.")
        elif verdict(float(apart[best]), radius) == "holds":
            following, words = dialled[best], Said("An earlier setting held: go back to it.")
        elif np.any(delta_uv_prime(dialled, following) < SAME_UV):
            following = dialled[best]
            words = Said("The lamp has no finer setting than those tried: this one came closest.")
        else:
            words = Said("{steps:.1f} colour steps out: dial this, then read again.", steps=steps)
    closing = closing_pack(aim, wanted, lamp, kit, radius) if remains > 0.0 else None
    gel = landing_plain(closing) if closing is not None else None
    if remains > 0.0:
        words = joined([words, *_beyond(remains, gel)], " ")
    return {
        "next": white(uv_prime_to_xy(following)),
        "next_green": to_dial(uv_prime_to_xy(following))["green"],
        "target": white(target.xy),
        "reachable": remains == 0.0,
        "nearest": white(uv_prime_to_xy(aim)),
        "remains_steps": remains,
        "gel": gel,
        "steps": steps,
        "verdict": None if steps is None else verdict(steps, radius),
        "best": best,
        "tolerance": tolerance_plain(radius),
        "correction": {
            "matrix": correction.matrix.tolist(),
            "offset": correction.offset.tolist(),
        },
        "words": words,
        "warnings": [],
    }


def _read_reach(fields: Fields, kit: tuple[Gel, ...]) -> Reach | None:
    if fields.raw("gamut") is not None:
        if fields.given("range"):
            raise Problem(fields.at("range"), Said("Give a gamut or a range, not both."))
        return read_gamut(fields, "gamut", kit)
    return read_reach(fields.group("range"), kit) if fields.given("range") else None


def _beyond(remains: float, gel: dict[str, Any] | None) -> list[Said]:
    words = [
        Said(
            "The target is out of this lamp's reach: {remains:.1f} colour steps remain.",
            remains=remains,
        )
    ]
    if gel is not None:
        words.append(Said("Hang {pack} to close them.", pack=gel["words"]))
    return words


def _read_history(fields: Fields, kit: tuple[Gel, ...]) -> tuple[Floats, Floats]:
    pairs = []
    for pair in fields.groups("history", most=_MOST_PAIRS):
        pair.refuse_unknown(*_PAIR)
        both = (pair.group("dialled"), pair.group("measured"))
        pairs.append([read_reading(one, kit, stand_in="none").xy for one in both])
    if not pairs:
        return np.empty((0, 2)), np.empty((0, 2))
    uv = xy_to_uv_prime(np.array(pairs))
    return uv[:, 0], uv[:, 1]


def _read_correction(fields: Fields) -> Correction | None:
    if not fields.given("correction"):
        return None
    group = fields.group("correction")
    group.refuse_unknown(*_CORRECTION)
    offset = group.numbers("offset")
    rows = group.items("matrix")
    at = group.at("matrix")
    if len(rows) != 2 or not all(isinstance(row, (list, tuple)) and len(row) == 2 for row in rows):
        raise Problem(at, Said("The matrix of a correction has two rows of two numbers."))
    if len(offset) != 2:
        raise Problem(group.at("offset"), Said("The offset of a correction has two numbers."))
    matrix = np.array([[parse_number(value, at) for value in row] for row in rows])
    sizes = np.linalg.svd(matrix, compute_uv=False)
    if sizes[1] < 0.05 or sizes[0] > 20.0:
        raise Problem(
            at, Said("No lamp answers its dial like this matrix: forget it and start again.")
        )
    return Correction(matrix, np.array(offset))
