"""``levels``: the lights of a set as stops for the camera, and each one's ratio to the key.

Fields: ``lights`` [{``name``, ``illuminance_lx`` | ``illuminance_fc`` | flash ``exposure_lx_s`` |
``flash_f_number`` with ``flash_iso``,
``loss_stops``, what the gel still to be hung takes (0)}]; ``key``, the index of the key light;
``camera``, the fields of ``expose``'s ``known`` without the light and the stop; ``say`` "thirds"
(default) or "tenths". A light without a level, and a ratio of flash to steady light, is null.
"""

from __future__ import annotations

from typing import Any

from evenkelvin.exposure import stops
from evenkelvin.exposure.solving import Camera
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.each import unusable_plain
from evenkelvin.requests.camera import CAMERA, SAYINGS, read_camera
from evenkelvin.requests.each import name_of, read_each
from evenkelvin.requests.forms import FLASH_FORMS, in_usual_form
from evenkelvin.requests.units import LIGHT, either, light_fields
from evenkelvin.said import Said
from evenkelvin.shapes import Choice, Group, Many, Number, Text, Whole

_LIGHT: Group = {
    "name": Text(), **light_fields("illuminance"), "exposure_lx_s": Number(*stops.FLASH_BOUNDS),
    **FLASH_FORMS,
    "loss_stops": Number(-30, 30),
}  # fmt: skip
FIELDS: Group = {
    "lights": Many(_LIGHT), "key": Whole(0, 3), "camera": CAMERA, "say": Choice(SAYINGS),
}  # fmt: skip


class _Level:
    """How bright one light is: steady in lx, or a burst in lx·s."""

    def __init__(self, fields: Fields) -> None:
        fields.refuse_unknown(*_LIGHT)
        fields, _ = in_usual_form(fields)
        self.name = fields.text("name", "", longest=200)
        self.steady = either(fields, "illuminance", LIGHT, stops.LIGHT_BOUNDS)
        self.burst: float | None = None
        if fields.given("exposure_lx_s"):
            if self.steady is not None:
                raise Problem(
                    fields.at("exposure_lx_s"),
                    Said("Give a steady light (lx) or a flash (lx·s), not both of them."),
                )
            self.burst = fields.number(
                "exposure_lx_s", low=stops.FLASH_BOUNDS[0], high=stops.FLASH_BOUNDS[1]
            )
        self.loss = fields.number("loss_stops", 0.0, -30.0, 30.0)

    def ratio(self, key: _Level, with_gel: bool) -> float | None:
        """Return the stops by which this light is brighter than the key."""
        pair = (self.steady, key.steady) if self.steady is not None else (self.burst, key.burst)
        if pair[0] is None or pair[1] is None:
            return None
        lost = self.loss - key.loss if with_gel else 0.0
        return stops.ratio_stops(pair[0], pair[1]) - lost


def reply(fields: Fields) -> dict[str, Any]:
    """Answer with each light's stop and ratio, as read and once all gels to be hung are on.

    ``lights``: ``[{"name", "problem", "now", "gelled" | null}]``, where neither the light nor the
    key gets a gel null; each ``{"stop", "stops_to_key", "ratio_words"}``, null where it cannot be
    told. A light whose level cannot be read has only its name and a problem, its field named
    within the light.
    """
    fields.refuse_unknown("ask", *FIELDS)
    say = fields.choice("say", SAYINGS, "thirds")
    groups = fields.groups("lights", most=500)
    levels = read_each(groups, _Level)
    key = None
    if fields.given("key"):
        index = fields.whole("key", 0, 0, 499)
        if index >= len(levels):
            raise Problem(
                "key", Said("There is no light number {index} to be the key.", index=index)
            )
        named = levels[index]
        key = named if isinstance(named, _Level) else None
    camera = read_camera(fields.group("camera")) if fields.given("camera") else None
    return {
        "lights": [
            unusable_plain(name_of(groups[index], index), level)
            if isinstance(level, Problem)
            else {
                "name": level.name,
                "problem": None,
                "now": _state(level, key, camera, say, False),
                "gelled": _state(level, key, camera, say, True)
                if level.loss or (key is not None and key.loss)
                else None,
            }
            for index, level in enumerate(levels)
        ]
    }


def _state(
    level: _Level, key: _Level | None, camera: Camera | None, say: str, gelled: bool
) -> dict[str, Any]:
    ratio = level.ratio(key, gelled) if key is not None and level is not key else None
    state: dict[str, Any] = {
        "stop": None,
        "stops_to_key": ratio,
        "ratio_words": stops.ratio_words(ratio, say) if ratio is not None else None,
    }
    if camera is not None:
        light = level.burst
        if level.steady is not None and camera.time_s is not None:
            light = level.steady * camera.time_s
        if light is not None and camera.iso is not None:
            loss = camera.loss_stops + (level.loss if gelled else 0.0)
            n = stops.f_number_for(light, camera.iso, camera.constant, loss)
            state["stop"] = stops.stop_words(n, say)
    return state
