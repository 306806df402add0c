"""What lights look like at a white.

``{"ask": "seen", "lights": [L…], "white": T, "judge"?: "eye" | "camera", "camera"?: C,
"own_gels"?}``

Each L is R with ``pack``?, the gels that shall hang on it in all, and ``meant``? (see
:mod:`evenkelvin.requests.meant`). A light that was read through gels is ``{"reading": R, "pack"?,
"meant"?}``: there ``pack`` of R is what hung on it when it was read.
"""

from __future__ import annotations

from collections.abc import Callable
from functools import partial
from typing import Any

from evenkelvin.colorimetry.display import ADAPTATION
from evenkelvin.fields import Fields
from evenkelvin.filters.gel import Gel
from evenkelvin.lights.meant import meant_words
from evenkelvin.lights.reading import Reading
from evenkelvin.lights.showing import Shown, as_meant, as_read, with_pack
from evenkelvin.problem import Problem
from evenkelvin.rendering.reference import Unrated
from evenkelvin.replies.each import left_out_words, unusable_plain
from evenkelvin.replies.plain import white as white_plain
from evenkelvin.replies.seen import Look, camera_balanced_for, eye_at
from evenkelvin.requests.judge import judge_fields, read_balance, read_judge
from evenkelvin.requests.kit import GEL, OWN_GELS, read_kit
from evenkelvin.requests.lit import LitSet
from evenkelvin.requests.meant import MEANT
from evenkelvin.requests.reading import READING, TARGET, read_pack, read_reading, read_target
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Many, OneOf

_MOST_LIGHTS = 200
_HUNG: Group = {"reading": READING, "pack": Many(GEL), "meant": MEANT}
FIELDS: Group = {
    "lights": Many(OneOf(({**READING, "meant": MEANT}, _HUNG))), "white": TARGET["target"],
    **judge_fields("eye"), **OWN_GELS,
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with the colours in which a screen shows cards and surfaces in each light.

    ``lights`` [{"name", "problem": null, "meant": words, "as_read", "with_pack" | null, "as_meant"
    | null, "warnings"}]: ``with_pack`` is null where no ``pack`` is given, ``as_meant`` where the
    light is as found or nothing has that colour. A light that cannot be used has only its ``name``
    and a ``problem``, its field named within the light.

    Each look is {"white", "grey", "skin_light", "skin_dark", "red", "foliage"}: cards of 90 and
    18 %, and the samples 13, of JIS Z 8726, 9 and 14 of CIE 13.3-1995. Each of these is {"srgb":
    [r, g, b], "p3": [r, g, b], "clipped", "guess", "range" | null}, in 8 bits; ``clipped`` when
    sRGB (or the camera) cannot hold it, and it was drawn in towards the grey of the same luminance;
    ``guess`` when it rests on stand-ins for a spectrum that is not known, and then ``range`` holds
    the two sRGB colours most unlike that it may have. From a bare x y the cards are exact to the
    eye, as read and as meant; to a camera nothing is.

    A patch shows colour, not level: each light is exposed for its own grey card, which has the
    luminance of 18 % (118 of sRGB under the white itself). How much brighter a light is than
    another is for levels.

    To the ``judge`` "eye", colours are adapted from the white to that of the screen by
    ``adaptation``; to the "camera" they are what the display of EBU Tech 3355 shows of its standard
    camera, or of C (see :mod:`evenkelvin.requests.sensitivities`), balanced for the white;
    ``camera`` then is its name.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    groups = fields.groups("lights", most=_MOST_LIGHTS)
    if not groups:
        raise Problem(fields.at("lights"), Said("There are no lights yet: keep a reading first."))
    packs: dict[str, tuple[Gel, ...] | None] = {}

    def read(group: Fields) -> Reading:
        light, packs[group.path] = read_light(group, kit)
        return light

    lit = LitSet(groups, kit, read)
    white = read_target(fields.group("white"), kit)
    camera = read_judge(fields, "eye")
    if camera is not None:
        look = camera_balanced_for(read_balance(fields, "white", white), camera)
    else:
        look = eye_at(white.xy)
    targets = lit.targets(white)

    answered: list[dict[str, Any]] = []
    for place, name, light, means, target in zip(
        lit.places, lit.names, lit.lights, lit.meant, targets, strict=True
    ):
        warnings: list[Said] = []
        gels = packs[groups[place].path]
        answered.append(
            {
                "name": name,
                "problem": None,
                "meant": meant_words(means),
                "as_read": _look(look, partial(as_read, light), warnings),
                "with_pack": None
                if gels is None
                else _look(look, partial(with_pack, light, gels), warnings),
                "as_meant": None
                if target is None
                else _look(look, partial(as_meant, target, white, means.gels), warnings),
                "warnings": list(dict.fromkeys(warnings)),
            }
        )
    for place, problem in sorted(lit.problems.items()):
        answered.insert(place, unusable_plain(lit.name_at(place), problem))
    return {
        "white": white_plain(white.xy),
        "judge": "eye" if camera is None else "camera",
        "camera": None if camera is None else camera.name,
        "adaptation": ADAPTATION if camera is None else None,
        "lights": answered,
        "warnings": left_out_words(lit.left_out()),
    }


def _look(look: Look, light: Callable[[], Shown], warnings: list[Said]) -> dict[str, Any] | None:
    """Return the look of a light; None, with a warning, where there is none."""
    try:
        return look.at(light())
    except Unrated as why:
        warnings.append(why.words)
    except Problem as problem:
        warnings.append(problem.message)
    return None


def read_light(group: Fields, kit: tuple[Gel, ...]) -> tuple[Reading, tuple[Gel, ...] | None]:
    """Return a light as it was read, and the gels that shall hang on it, None where not said."""
    if group.given("reading"):
        group.refuse_unknown(*_HUNG)
        reading = group.group("reading")
        light = read_reading(reading, kit)
    else:
        reading = group
        light = read_reading(group.without("pack"), kit, ("meant",))
    if group.raw("pack") is None:
        return light, None
    brought = {"own_gels": reading.raw("own_gels"), "pack": group.raw("pack")}
    return light, read_pack(Fields(brought, group.path), kit)
