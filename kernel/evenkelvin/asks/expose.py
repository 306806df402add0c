"""``expose``: the one open figure of an exposure, from the others (ISO 2720, incident light).

``known`` holds what is settled; what it leaves out is solved.

- light: ``illuminance_lx`` | ``illuminance_fc`` | flash ``exposure_lx_s`` with ``bursts`` (1)
- ``iso``
- time: ``time_s`` (a number or text such as "1/48") | ``shutter_deg`` with ``fps``
- ``f_number`` | ``t_number`` (numbers, or stops as said: "2.8⅓", "f/2.8 and 3 tenths")
- ``filter_stops`` | ``filter_factor``; ``lens_stops``, what the glass loses
- ``receptor`` "flat" (C = 250, default) | "dome" (C = 340) | ``constant``, C in lx·s

With everything but the filter known, the answer is the filter. With everything known, it is how
far over or under the exposure is. ``solve`` names the figure where that leaves a doubt
("exposure_lx_s" asks for flash). ``say`` "thirds" (default) or "tenths": how words tell stops.
"""

from __future__ import annotations

import math
from typing import Any

from evenkelvin.exposure import flash, stops
from evenkelvin.exposure.solving import OPEN, Known, settle, which
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.replies.units import both
from evenkelvin.requests.camera import CAMERA, SAYINGS, camera_of, only_one, read_stop
from evenkelvin.requests.forms import FLASH_FORMS, in_usual_form
from evenkelvin.requests.units import LIGHT, either, light_fields
from evenkelvin.said import Figure, Said
from evenkelvin.shapes import Choice, Group, Number, OneOf, Text, Whole

_STOP = OneOf((Number(0.7, 64), Text(("2.8⅓", "f/4 and 3 tenths"))))
_KNOWN: Group = {
    **light_fields("illuminance"), "exposure_lx_s": Number(*stops.FLASH_BOUNDS),
    **FLASH_FORMS, "bursts": Whole(1, 20), "f_number": _STOP, "t_number": _STOP, **CAMERA,
}  # fmt: skip
FIELDS: Group = {"known": _KNOWN, "solve": Choice(OPEN), "say": Choice(SAYINGS)}


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    fields.refuse_unknown("ask", *FIELDS)
    say = fields.choice("say", SAYINGS, "thirds")
    group = fields.group("known")
    known = _read(group)
    solve = fields.choice("solve", OPEN) if fields.given("solve") else None
    solved = which(known, solve)
    settled = settle(known, solved)
    return _answer(settled, solved, say)


def _read(fields: Fields) -> Known:
    fields.refuse_unknown(*_KNOWN)
    fields, _ = in_usual_form(fields)
    illuminance = either(fields, "illuminance", LIGHT, stops.LIGHT_BOUNDS)
    burst = None
    if fields.given("exposure_lx_s"):
        if illuminance is not None:
            raise Problem(
                fields.at("exposure_lx_s"),
                Said("Give a steady light (lx) or a flash (lx·s), not both of them."),
            )
        burst = fields.number(
            "exposure_lx_s", low=stops.FLASH_BOUNDS[0], high=stops.FLASH_BOUNDS[1]
        )
    camera = camera_of(fields)
    stop = only_one(fields, "f_number", "t_number")
    if stop == "t_number" and camera.lens_stops:
        raise Problem(
            fields.at("lens_stops"),
            Said("A T-number holds the loss of the lens already: leave it out."),
        )
    return Known(
        **vars(camera),
        illuminance_lx=illuminance,
        exposure_lx_s=burst,
        bursts=fields.whole("bursts", 1, 1, 1000),
        f_number=read_stop(fields, stop) if stop else None,
    )


def _answer(known: Known, solved: str | None, say: str) -> dict[str, Any]:
    n, iso = known.f_number or 0.0, known.iso or 0.0
    answer: dict[str, Any] = {"solved": solved, "iso": iso, "constant": known.constant}
    if known.exposure_lx_s is not None:
        total = flash.total(known.exposure_lx_s, known.bursts)
        answer |= {"exposure_lx_s": known.exposure_lx_s, "bursts": known.bursts}
    else:
        total = (known.illuminance_lx or 0.0) * (known.time_s or 0.0)
        answer |= both(known.illuminance_lx or 0.0, "illuminance", LIGHT)
    for name in ("time_s", "fps", "shutter_deg"):
        if getattr(known, name) is not None:
            answer[name] = getattr(known, name)
    if known.time_s is not None:
        answer["time_words"] = stops.time_words(known.time_s)
    filter_stops = known.filter_stops or 0.0
    t = stops.t_number(n, known.lens_stops)
    answer |= {
        "f_number": n,
        "t_number": t,
        "filter_stops": filter_stops,
        "filter_factor": math.exp2(filter_stops),
        "lens_stops": known.lens_stops,
        "stop": {"thirds": stops.stop_in_thirds(n), "tenths": stops.stop_in_tenths(n)},
    }
    over = stops.over_stops(total, n, iso, known.constant) - known.loss_stops
    answer["over_stops"] = 0.0 if solved else over
    if known.exposure_lx_s is not None and not solved:
        needed = stops.light_needed(n, iso, known.constant, known.loss_stops)
        answer["bursts_needed"] = flash.bursts_needed(known.exposure_lx_s, needed)
    answer["words"] = _words(known, solved, over, say)
    answer["warnings"] = _warnings(known, solved)
    return answer


def _words(known: Known, solved: str | None, over: float, say: str) -> Said:
    if solved == "f_number":
        return stops.stop_words(known.f_number or 1.0, say)
    if solved == "illuminance_lx":
        lux = known.illuminance_lx or 0.0
        return Said("{lux} lx ({fc} fc)", lux=_plain(lux), fc=_plain(lux / stops.LX_PER_FC))
    if solved == "exposure_lx_s":
        return Said("{amount:.3g} lx·s a burst", amount=known.exposure_lx_s or 0.0)
    if solved == "iso":
        return Said("ISO {iso}", iso=_plain(known.iso or 0.0))
    if solved == "time_s":
        time = stops.time_words(known.time_s or 1.0)
        if known.shutter_deg is None:
            return time
        return Said("{angle:.4g}°, {time}", angle=known.shutter_deg, time=time)
    if solved == "fps":
        return Said("{fps:.4g} frames a second", fps=known.fps or 0.0)
    if solved == "filter_stops":
        over = known.filter_stops or 0.0
        if over < -1 / 6:
            return Said("{stops} short of light", stops=stops.amount_words(over, say))
        if over < 1 / 6:
            return Said("right as it is")
        density = over * math.log10(2.0)
        return Said(
            "{stops} of filter (ND {density:.1f})",
            stops=stops.amount_words(over, say),
            density=density,
        )
    if abs(over) < 1 / 6:
        return Said("right as it is")
    amount = stops.amount_words(over, say)
    return Said("{stops} over", stops=amount) if over > 0 else Said("{stops} under", stops=amount)


def _plain(value: float) -> Figure:
    return Figure(f"{value:.3g}" if value < 100 else f"{value:.0f}")


def _warnings(known: Known, solved: str | None) -> list[Said]:
    found = []
    if known.shutter_deg is not None and known.shutter_deg > 360.0 + 1e-9:
        found.append(
            Said(
                "The shutter would be open for {shutter_deg:.0f}°, longer than a frame at "
                "{fps:.4g} frames a second: add light, open the lens or raise the ISO.",
                shutter_deg=known.shutter_deg,
                fps=known.fps or 0.0,
            )
        )
    if solved == "filter_stops" and (known.filter_stops or 0.0) < -1 / 6:
        found.append(
            Said("Too dark without any filter: add light, open the lens or raise the ISO.")
        )
    if solved == "f_number" and (known.f_number or 1.0) < 1.0:
        found.append(Said("Few lenses open this far: add light, or raise the ISO or the time."))
    if solved == "f_number" and (known.f_number or 1.0) > 22.0:
        found.append(Said("Few lenses close this far: take a neutral density filter."))
    if known.exposure_lx_s is not None and known.time_s is not None and known.time_s < 1 / 250:
        found.append(
            Said("A shutter this short can cut a burst off, or cover a part of the frame: test it.")
        )
    return found
