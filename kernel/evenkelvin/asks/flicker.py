"""``flicker``: shutters and frame rates that see every pulse of a light alike.

The light, one of: ``mains_hz`` (50, 60 or as measured) · ``light_hz``, pulses of light a second
(a PWM frequency) · ``measured``, an unknown one told from two or more shutter results
``[{"shutter_deg" or "time_s", "flicker": true|false}]``. With ``modulation_percent`` (100: the
light falls to nothing between pulses) and ``duty_percent`` (a PWM dimmer's).

The camera: ``fps`` and ``shutter_deg`` or ``time_s``, as far as they are settled. ``place`` names
the location in a warning. ``collision`` answers with the sentence to warn with where the mains
of a place and the camera do not go together, otherwise null.
"""

from __future__ import annotations

import math
from typing import Any

from evenkelvin.exposure import flicker, stops
from evenkelvin.field_names import only_one_of
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.requests.camera import SHUTTER, read_shutter
from evenkelvin.said import Said, counted
from evenkelvin.shapes import Group, Many, Number, Text, Truth

_SOURCES = ("mains_hz", "light_hz", "measured")
#: Slowest picture pulse that is told as a beat in seconds rather than as flicker.
_SLOW_HZ = 0.5

_RESULT: Group = {**SHUTTER, "flicker": Truth()}
FIELDS: Group = {
    **SHUTTER, "modulation_percent": Number(0, 100), "duty_percent": Number(0.1, 100),
    "place": Text(), "mains_hz": Number(40, 70), "light_hz": Number(10, 1e6),
    "measured": Many(_RESULT),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    fields.refuse_unknown("ask", *FIELDS)
    fps, angle, time = read_shutter(fields)
    answer: dict[str, Any] = {}
    warnings: list[str] = []
    hz = _light(fields, fps, answer, warnings)
    wave = flicker.Wave(
        hz,
        fields.number("modulation_percent", 100.0, 0.0, 100.0) / 100.0,
        fields.number("duty_percent", low=0.1, high=100.0) / 100.0
        if fields.given("duty_percent")
        else None,
    )
    if time is not None and fps is not None and time * fps > 1.0 + 1e-9:
        raise Problem(
            "time_s",
            Said(
                "A shutter of {time_words} is longer than a frame at {fps:.4g} frames a second.",
                time_words=stops.time_words(time),
                fps=fps,
            ),
        )
    answer |= {"light_hz": hz, "safe_fps": flicker.safe_rates(hz, fps or 24.0)}
    if fps is not None:
        answer |= {"fps": fps, "beat_hz": flicker.beat(hz, fps)}
        times = flicker.safe_times(hz, 1.0 / fps, time)
        answer["safe_time_s"] = times
        answer["safe_shutter_deg"] = [flicker.shutter_angle(fps, t) for t in times]
    else:
        answer["safe_time_s"] = flicker.safe_times(hz, max(12.0 / hz, 1.0 / 24.0), time)
        answer["safe_shutter_deg"] = []
    answer["safe_time_words"] = [stops.time_words(t) for t in answer["safe_time_s"]]
    if angle is not None:
        answer["shutter_deg"] = angle
        answer["safe_fps_at_shutter"] = flicker.safe_rates_at_angle(hz, angle, fps or 24.0)
    if time is not None:
        answer["time_s"] = time
        _judge(wave, time, fps, answer)
    answer["words"] = _words(answer, fps, time)
    answer["collision"] = _collision(fields, answer, fps, time)
    answer["warnings"] = warnings + _warnings(answer, fps, fields.given("modulation_percent"))
    return answer


def _light(fields: Fields, fps: float | None, answer: dict[str, Any], warnings: list[str]) -> float:
    """Return pulses of light a second."""
    given = [name for name in _SOURCES if fields.given(name)]
    if not given:
        raise Problem(
            "mains_hz",
            Said(
                "Which light? Give mains_hz (50 or 60), light_hz (a PWM frequency) or two "
                "measured shutter results."
            ),
        )
    if len(given) > 1:
        raise Problem(
            given[1],
            only_one_of(given),
        )
    if given[0] == "mains_hz":
        mains = fields.number("mains_hz", low=10.0, high=500.0)
        answer["mains_hz"] = mains
        if not any(abs(mains - usual) <= 0.02 * usual for usual in (50.0, 60.0)):
            warnings.append(
                Said(
                    "Mains of {mains:g} Hz is unusual: 50 and 60 Hz are what public grids run at.",
                    mains=mains,
                )
            )
        return flicker.pulses_of_mains(mains)
    if given[0] == "light_hz":
        hz = fields.number("light_hz", low=10.0, high=1e6)
        if hz in (50.0, 60.0):
            warnings.append(
                Said(
                    "This counts pulses of light: a lamp on {hz:g} Hz mains pulses {pulses:g} "
                    "times a second. If you mean the mains, give {hz:g} Hz there.",
                    hz=hz,
                    pulses=2 * hz,
                )
            )
        return hz
    return _measured(fields, fps, answer, warnings)


def _measured(
    fields: Fields, fps: float | None, answer: dict[str, Any], warnings: list[str]
) -> float:
    clean: list[float] = []
    seen: list[float] = []
    for result in fields.groups("measured", most=20):
        result.refuse_unknown(*_RESULT)
        rate, angle, time = read_shutter(result)
        if time is None and angle is not None:
            rate = rate or fps
            if rate is None:
                raise Problem(result.at("fps"), Said("A shutter angle needs the frame rate."))
            time = flicker.shutter_time(rate, angle)
        if time is None:
            raise Problem(result.at("time_s"), Said("Each result needs its shutter time or angle."))
        told = result.raw("flicker")
        if not isinstance(told, bool):
            raise Problem(result.at("flicker"), Said("Say whether flicker was seen or not."))
        (seen if told else clean).append(time)
    if len(clean) < 2 or max(clean) < (1.0 + 2.0 * flicker.BY_EYE) * min(clean):
        raise Problem(
            "measured",
            Said(
                "An unknown light needs two different shutter times at which no flicker was seen."
            ),
        )
    found = flicker.infer(clean, seen)
    if found is None:
        raise Problem(
            "measured",
            Said(
                "No one frequency explains these results. Check them, and measure at shorter "
                "shutters: the two shortest without flicker tell most."
            ),
        )
    answer["inferred"] = {"light_hz": found.hz, "pulses": list(found.pulses)}
    warnings.append(
        Said(
            "{hz:.4g} Hz is the lowest frequency that fits. The light may pulse at a whole "
            "multiple of it: the shutters below are safe for those as well.",
            hz=found.hz,
        )
    )
    if max(found.pulses) > 6:
        warnings.append(
            Said(
                "The shutters hold many pulses, so the frequency is loose: measure again with "
                "shorter ones."
            )
        )
    return found.hz


def _judge(wave: flicker.Wave, time: float, fps: float | None, answer: dict[str, Any]) -> None:
    by_shutter = flicker.ripple(wave, time)
    depth = flicker.ripple(wave, time, fps)
    if by_shutter <= flicker.SAFE_RIPPLE:
        answer["safe_by"] = "shutter"
    elif depth <= flicker.SAFE_RIPPLE:
        answer["safe_by"] = "rate"
    else:
        answer["safe_by"] = None
    steps = flicker.ripple_stops(depth)
    answer["safe"] = answer["safe_by"] is not None
    answer["pulses"] = time * wave.hz
    answer["ripple"] = {
        "percent": 100.0 * depth,
        "stops": steps if math.isfinite(steps) else None,
        "model": "square wave" if wave.duty is not None else "full-wave rectified sine",
        "modulation_percent": 100.0 * wave.modulation,
    }


def _nearest(values: list[float], to: float) -> float | None:
    return min(values, key=lambda value: abs(value - to), default=None)


def _angle(value: float) -> Said:
    return Said("{angle:g}°", angle=round(value, 2))


def _advice(answer: dict[str, Any], fps: float | None, time: float | None) -> str:
    if fps is None:
        best = _nearest(answer["safe_time_s"], time or 1 / 48)
        return Said("use {time}", time=stops.time_words(best)) if best else ""
    now = answer.get("shutter_deg", 180.0)
    # Many shutters end at 180°, and a longer one blurs more: go down unless up is close by.
    reach = [angle for angle in answer["safe_shutter_deg"] if angle <= 1.1 * now]
    angle = _nearest(reach or answer["safe_shutter_deg"], now)
    rate = _nearest(answer["safe_fps"], fps)
    if angle is None:
        return Said("no shutter holds a whole pulse at {fps:.5g} frames a second", fps=fps)
    if rate is not None and rate == round(rate) and abs(rate - fps) <= 1.0:
        return Said("use {angle}, or shoot {rate:.5g} fps", angle=_angle(angle), rate=rate)
    return Said("use {angle}", angle=_angle(angle))


def _words(answer: dict[str, Any], fps: float | None, time: float | None) -> str:
    if time is None:
        if fps is not None and not answer["safe_shutter_deg"]:
            return _advice(answer, fps, time)
        if fps is not None and answer["beat_hz"] < 1e-9 * answer["light_hz"]:
            return Said("Any shutter is steady at {fps:.5g} frames a second", fps=fps)
        return Said("{Advice}", Advice=_advice(answer, fps, time))
    if answer["safe_by"] == "shutter":
        count = round(answer["pulses"])
        return counted(
            count, "Steady: the shutter holds {n} pulse", "Steady: the shutter holds {n} pulses"
        )
    if answer["safe_by"] == "rate":
        return Said("Steady from frame to frame: each frame starts at the same point of a pulse")
    depth = answer["ripple"]
    size = (
        Said("to black")
        if depth["stops"] is None
        else Said("{amount:.2g} stops", amount=depth["stops"])
        if depth["stops"] > 1.0
        else Said("{amount:.2g} stop", amount=depth["stops"])
    )
    return Said(
        "Flickers by up to {percent:.2g} % ({size}): {advice}",
        percent=depth["percent"],
        size=size,
        advice=_advice(answer, fps, time),
    )


def _collision(
    fields: Fields, answer: dict[str, Any], fps: float | None, time: float | None
) -> str | None:
    if fps is None or "mains_hz" not in answer:
        return None
    angle = answer.get("shutter_deg", 180.0)
    wave = flicker.Wave(answer["light_hz"])
    depth = flicker.ripple(wave, flicker.shutter_time(fps, angle), fps)
    if depth <= flicker.SAFE_RIPPLE:
        return None
    return Said(
        "{Place} is on {mains_hz:g} Hz mains: at {angle} and {fps:.5g} fps its lamps will "
        "flicker; {advice}.",
        Place=fields.text("place", "", longest=200) or Said("this place"),
        mains_hz=answer["mains_hz"],
        fps=fps,
        angle=_angle(angle),
        advice=_advice(answer, fps, time),
    )


def _warnings(answer: dict[str, Any], fps: float | None, depth_known: bool) -> list[str]:
    hz = answer["light_hz"]
    found = [answer["collision"]] if answer["collision"] else []
    if fps is not None and fps > hz:
        found.append(
            Said(
                "Above {hz:.4g} frames a second every frame sees a part of one pulse, whatever "
                "the shutter: light this shot with lamps on direct current or a much faster "
                "drive.",
                hz=hz,
            )
        )
    if answer.get("safe_by") == "rate":
        found.append(
            Said(
                "A rolling shutter can still show a standing band: a shutter that holds whole "
                "pulses loses it."
            )
        )
    if fps is not None and 1e-9 * hz < answer["beat_hz"] < _SLOW_HZ and not answer.get("safe"):
        found.append(
            Said(
                "The pulse drifts through the picture once in {beat_hz:.3g} s: a short test "
                "does not show it.",
                beat_hz=1.0 / answer["beat_hz"],
            )
        )
    if answer.get("safe") is False and not depth_known:
        found.append(
            Said(
                "The depth is for a light that falls to nothing between pulses; filaments and "
                "smoothed drives pulse less. Type the modulation where it is known."
            )
        )
    return found
