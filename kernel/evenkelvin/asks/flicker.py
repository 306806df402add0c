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
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.requests.camera import read_shutter

_SOURCES = ("mains_hz", "light_hz", "measured")
#: Slowest picture pulse that is told as a beat in seconds rather than as flicker.
_SLOW_HZ = 0.5


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    fields.refuse_unknown(
        "ask", "fps", "shutter_deg", "time_s", "modulation_percent", "duty_percent", "place",
        *_SOURCES,
    )  # fmt: skip
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
            f"A shutter of {stops.time_words(time)} is longer than a frame at {fps:.4g} frames a "
            "second.",
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
            "Which light? Give mains_hz (50 or 60), light_hz (a PWM frequency) or two measured "
            "shutter results.",
        )
    if len(given) > 1:
        raise Problem(given[1], f"Give {given[0]} or {given[1]}, not both of them.")
    if given[0] == "mains_hz":
        mains = fields.number("mains_hz", low=10.0, high=500.0)
        answer["mains_hz"] = mains
        if not any(abs(mains - usual) <= 0.02 * usual for usual in (50.0, 60.0)):
            warnings.append(
                f"Mains of {mains:g} Hz is unusual: 50 and 60 Hz are what public grids run at."
            )
        return flicker.pulses_of_mains(mains)
    if given[0] == "light_hz":
        hz = fields.number("light_hz", low=10.0, high=1e6)
        if hz in (50.0, 60.0):
            warnings.append(
                f"light_hz counts pulses of light: a lamp on {hz:g} Hz mains pulses {2 * hz:g} "
                f"times a second. If you mean the mains, give mains_hz {hz:g}."
            )
        return hz
    return _measured(fields, fps, answer, warnings)


def _measured(
    fields: Fields, fps: float | None, answer: dict[str, Any], warnings: list[str]
) -> float:
    clean: list[float] = []
    seen: list[float] = []
    for result in fields.groups("measured", most=20):
        result.refuse_unknown("shutter_deg", "time_s", "fps", "flicker")
        rate, angle, time = read_shutter(result)
        if time is None and angle is not None:
            rate = rate or fps
            if rate is None:
                raise Problem(result.at("fps"), "A shutter angle needs the frame rate, fps.")
            time = flicker.shutter_time(rate, angle)
        if time is None:
            raise Problem(result.at("time_s"), "Each result needs its time_s or shutter_deg.")
        told = result.raw("flicker")
        if not isinstance(told, bool):
            raise Problem(result.at("flicker"), "flicker must be true (seen) or false (none seen).")
        (seen if told else clean).append(time)
    if len(clean) < 2 or max(clean) < (1.0 + 2.0 * flicker.BY_EYE) * min(clean):
        raise Problem(
            "measured",
            "An unknown light needs two different shutter times at which no flicker was seen.",
        )
    found = flicker.infer(clean, seen)
    if found is None:
        raise Problem(
            "measured",
            "No one frequency explains these results. Check them, and measure at shorter "
            "shutters: the two shortest without flicker tell most.",
        )
    answer["inferred"] = {"light_hz": found.hz, "pulses": list(found.pulses)}
    warnings.append(
        f"{found.hz:.4g} Hz is the lowest frequency that fits. The light may pulse at a whole "
        "multiple of it: the shutters below are safe for those as well."
    )
    if max(found.pulses) > 6:
        warnings.append(
            "The shutters hold many pulses, so the frequency is loose: measure again with "
            "shorter ones."
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


def _angle(value: float) -> str:
    return f"{round(value, 2):g}°"


def _advice(answer: dict[str, Any], fps: float | None, time: float | None) -> str:
    if fps is None:
        best = _nearest(answer["safe_time_s"], time or 1 / 48)
        return f"take {stops.time_words(best)}" if best else ""
    now = answer.get("shutter_deg", 180.0)
    # Many shutters end at 180°, and a longer one blurs more: go down unless up is close by.
    reach = [angle for angle in answer["safe_shutter_deg"] if angle <= 1.1 * now]
    angle = _nearest(reach or answer["safe_shutter_deg"], now)
    rate = _nearest(answer["safe_fps"], fps)
    if angle is None:
        return f"no shutter holds a whole pulse at {fps:.5g} frames a second"
    if rate is not None and rate == round(rate) and abs(rate - fps) <= 1.0:
        return f"take {_angle(angle)}, or run {rate:.5g}"
    return f"take {_angle(angle)}"


def _words(answer: dict[str, Any], fps: float | None, time: float | None) -> str:
    if time is None:
        if fps is not None and not answer["safe_shutter_deg"]:
            return _advice(answer, fps, time)
        if fps is not None and answer["beat_hz"] < 1e-9 * answer["light_hz"]:
            return f"Any shutter is steady at {fps:.5g} frames a second"
        advice = _advice(answer, fps, time)
        return advice[:1].upper() + advice[1:]
    if answer["safe_by"] == "shutter":
        count = round(answer["pulses"])
        return f"Steady: the shutter holds {count} pulse{'' if count == 1 else 's'}"
    if answer["safe_by"] == "rate":
        return "Steady from frame to frame: each frame starts at the same point of a pulse"
    depth = answer["ripple"]
    size = (
        "to black"
        if depth["stops"] is None
        else f"{depth['stops']:.2g} stop{'s' if depth['stops'] > 1.0 else ''}"
    )
    return f"Flickers by up to {depth['percent']:.2g} % ({size}): {_advice(answer, fps, time)}"


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
    return (
        f"{fields.text('place', 'This place', longest=200)} is on {answer['mains_hz']:g} Hz mains "
        f"and the shoot runs {fps:.5g} frames a second: at {_angle(angle)} lamps on the mains "
        f"pulse in the picture; {_advice(answer, fps, time)}."
    )


def _warnings(answer: dict[str, Any], fps: float | None, depth_known: bool) -> list[str]:
    hz = answer["light_hz"]
    found = [answer["collision"]] if answer["collision"] else []
    if fps is not None and fps > hz:
        found.append(
            f"Above {hz:.4g} frames a second every frame sees a part of one pulse, whatever the "
            "shutter: light this shot with lamps on direct current or a much faster drive."
        )
    if answer.get("safe_by") == "rate":
        found.append(
            "A rolling shutter can still show a standing band: a shutter that holds whole pulses "
            "loses it."
        )
    if fps is not None and 1e-9 * hz < answer["beat_hz"] < _SLOW_HZ and not answer.get("safe"):
        found.append(
            f"The pulse drifts through the picture once in {1.0 / answer['beat_hz']:.3g} s: a "
            "short test does not show it."
        )
    if answer.get("safe") is False and not depth_known:
        found.append(
            "The depth is for a light that falls to nothing between pulses; filaments and "
            "smoothed drives pulse less. Type the modulation where it is known."
        )
    return found
