"""Two cameras side by side: where they do not see the same.

``{"ask": "cameras", "lights": [R…], "white": T, "first": C, "second"?: C, "own_gels"?}`` with C as
:mod:`evenkelvin.requests.sensitivities` has it
"""

from __future__ import annotations

from itertools import combinations
from typing import Any

import numpy as np

from evenkelvin.colorimetry.display import DISPLAY_WHITE
from evenkelvin.colorimetry.temperature import xy_to_cct
from evenkelvin.data import Floats
from evenkelvin.fields import Fields
from evenkelvin.lights.camera_agreement import camera_shift
from evenkelvin.lights.field import frame
from evenkelvin.lights.reading import Reading
from evenkelvin.problem import Problem
from evenkelvin.rendering.camera import Camera, standard_camera
from evenkelvin.rendering.reference import Unrated
from evenkelvin.replies.each import left_out_words, unusable_plain
from evenkelvin.replies.plain import white as white_plain
from evenkelvin.requests.each import name_of, read_each
from evenkelvin.requests.judge import read_balance
from evenkelvin.requests.kit import OWN_GELS, read_kit
from evenkelvin.requests.reading import READING, TARGET, read_reading, read_target
from evenkelvin.requests.sensitivities import OWN_CAMERA, read_own_camera
from evenkelvin.said import Said
from evenkelvin.shapes import Group, Many

FIELDS: Group = {
    "lights": Many(READING), "white": TARGET["target"], "first": OWN_CAMERA, "second": OWN_CAMERA,
    **OWN_GELS,
}  # fmt: skip
_MOST_LIGHTS = 200
#: Below a step two cameras see alike (CIE TN 001:2014).
_ALIKE = 1.0


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with what each of two cameras makes of each light, both balanced for the white.

    ``lights`` [{"name", "problem": null, "first": S | null, "second": S | null, "apart": S with
    "words" | null}], S being {"steps", "across", "up"}: how far a grey card in the light is off
    white on the display, in steps, ``across`` positive for cool and ``up`` for green; ``apart`` is
    the first less the second. All three are null for a light without a spectrum: a camera goes by
    nothing else. ``edge`` {"pair": [place, place], "steps", "across", "up", "words"} is the pair
    of lights on whose edge the two differ most, the second light beside the first; null with fewer
    than two lights. A light that cannot be used has only its ``name`` and a ``problem``. The
    second camera is the standard one of EBU Tech 3355 unless given.
    """
    fields.refuse_unknown("ask", *FIELDS)
    kit = read_kit(fields)
    groups = fields.groups("lights", most=_MOST_LIGHTS)
    if not groups:
        raise Problem(fields.at("lights"), Said("There are no lights yet: keep a reading first."))
    first = read_own_camera(fields, "first")
    if first is None:
        raise Problem(fields.at("first"), Said("Give the camera to compare."))
    second = read_own_camera(fields, "second") or standard_camera()
    if first.name == second.name:
        raise Problem(
            fields.at("second.name"),
            Said("Both cameras are called “{name}”: name them apart.", name=first.name),
        )
    white = read_target(fields.group("white"), kit)
    balanced_for = read_balance(fields, "white", white, "white")
    across_up = frame(DISPLAY_WHITE, xy_to_cct(DISPLAY_WHITE)[0]).turn

    warnings: list[Said] = []
    shown: list[dict[str, Any]] = []
    names: list[str] = []
    apart: dict[int, Floats] = {}
    for place, light in enumerate(read_each(groups, lambda group: read_reading(group, kit))):
        names.append(name_of(groups[place], place))
        if isinstance(light, Problem):
            shown.append(unusable_plain(names[-1], light))
            continue
        names[-1] = light.name or names[-1]
        one: dict[str, Any] = {"name": names[-1], "problem": None}
        one |= dict.fromkeys(("first", "second", "apart"))
        shown.append(one)
        try:
            both = [across_up @ _shift(light, balanced_for, eyes) for eyes in (first, second)]
        except Unrated as why:
            warnings.append(Said("{name}: {why}", name=names[-1], why=why.words))
            continue
        apart[place] = both[0] - both[1]
        one |= {
            "first": _away(both[0]),
            "second": _away(both[1]),
            "apart": {
                **_away(apart[place]),
                "words": _light_words(apart[place], names[-1], first, second),
            },
        }
    lost = [one["name"] for one in shown if one["problem"] is not None]
    return {
        "white": white_plain(white.xy),
        "first": first.name,
        "second": second.name,
        "lights": shown,
        "edge": _edge(apart, names, first, second),
        "warnings": left_out_words(lost) + warnings,
    }


def _shift(light: Reading, balanced_for: Floats, camera: Camera) -> Floats:
    if light.spectrum is None:
        raise Unrated(Said("a camera can judge only against a spectrum, and this light has none."))
    return camera_shift(light.spectra[0], balanced_for, None, camera)


def _away(vector: Floats) -> dict[str, float]:
    """Return a vector of steps as plain data."""
    return {
        "steps": float(np.hypot(*vector)), "across": float(vector[0]), "up": float(vector[1]),
    }  # fmt: skip


def _how(vector: Floats) -> Said:
    """Return a difference as people say it: '6 steps greener'."""
    across, up = vector
    size = float(np.hypot(*vector))
    if abs(up) >= abs(across):
        return (
            Said("{steps:.1f} colour steps greener", steps=size)
            if up > 0.0
            else Said("{steps:.1f} colour steps more magenta", steps=size)
        )
    return (
        Said("{steps:.1f} colour steps cooler", steps=size)
        if across > 0.0
        else Said("{steps:.1f} colour steps warmer", steps=size)
    )


def _light_words(vector: Floats, name: str, first: Camera, second: Camera) -> Said:
    if np.hypot(*vector) < _ALIKE:
        return Said(
            "{first} and {second} see {light} alike.",
            first=first.name,
            second=second.name,
            light=name,
        )
    return Said(
        "{first} sees {light} {how} than {second}.",
        first=first.name,
        light=name,
        how=_how(vector),
        second=second.name,
    )


def _edge(
    apart: dict[int, Floats], names: list[str], first: Camera, second: Camera
) -> dict[str, Any] | None:
    """Return the pair of lights on whose edge two cameras differ most."""
    if len(apart) < 2:
        return None
    pair = max(combinations(apart, 2), key=lambda two: np.hypot(*(apart[two[1]] - apart[two[0]])))
    vector = apart[pair[1]] - apart[pair[0]]
    if np.hypot(*vector) < _ALIKE:
        words = Said(
            "{first} and {second} see every edge alike.", first=first.name, second=second.name
        )
    else:
        words = Said(
            "{first} sees {light} {how} beside {other} than {second} does.",
            first=first.name,
            light=names[pair[1]],
            how=_how(vector),
            other=names[pair[0]],
            second=second.name,
        )
    return {"pair": list(pair), **_away(vector), "words": words}
