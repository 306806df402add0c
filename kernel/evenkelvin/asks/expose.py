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
from dataclasses import dataclass, replace
from typing import Any

from evenkelvin.asks.units import LIGHT, LIGHT_BOUNDS, both, either
from evenkelvin.exposure import flash, flicker, stops
from evenkelvin.fields import Fields, parse_number
from evenkelvin.problem import Problem

OPEN = ("illuminance_lx", "exposure_lx_s", "iso", "time_s", "fps", "f_number", "filter_stops")
#: What each open figure is called, and the fields that would settle it.
_SETTLES = {
    "light": "illuminance_lx, illuminance_fc or exposure_lx_s",
    "iso": "iso",
    "time_s": "time_s, or shutter_deg with fps",
    "f_number": "f_number or t_number",
}


#: How words tell stops.
SAYINGS = ("thirds", "tenths")
_CAMERA = (
    "iso", "fps", "shutter_deg", "time_s", "filter_stops", "filter_factor", "lens_stops",
    "receptor", "constant",
)  # fmt: skip


@dataclass(frozen=True)
class Camera:
    """What the camera is set to, and what stands before its sensor; None where it is open."""

    iso: float | None
    fps: float | None
    shutter_deg: float | None
    time_s: float | None
    filter_stops: float | None
    lens_stops: float
    constant: float

    @property
    def loss_stops(self) -> float:
        return (self.filter_stops or 0.0) + self.lens_stops


@dataclass(frozen=True)
class _Known(Camera):
    """What is settled; None where it is open."""

    illuminance_lx: float | None
    exposure_lx_s: float | None
    bursts: int
    f_number: float | None


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    fields.refuse_unknown("ask", "known", "solve", "say")
    say = fields.choice("say", SAYINGS, "thirds")
    group = fields.group("known")
    known = _read(group)
    solve = fields.choice("solve", OPEN) if fields.given("solve") else None
    solved = _which(known, solve, group)
    settled = _settle(known, solved, group)
    return _answer(settled, solved, say)


def _one(fields: Fields, *names: str) -> str | None:
    given = [name for name in names if fields.given(name)]
    if len(given) > 1:
        raise Problem(fields.at(given[1]), f"Give {given[0]} or {given[1]}, not both of them.")
    return given[0] if given else None


def _read(fields: Fields) -> _Known:
    fields.refuse_unknown(
        "illuminance_lx", "illuminance_fc", "exposure_lx_s", "bursts", "f_number", "t_number",
        *_CAMERA,
    )  # fmt: skip
    illuminance = either(fields, "illuminance", LIGHT, LIGHT_BOUNDS)
    burst = None
    if fields.given("exposure_lx_s"):
        if illuminance is not None:
            raise Problem(
                fields.at("exposure_lx_s"),
                "Give a steady light (lx) or a flash (lx·s), not both of them.",
            )
        burst = fields.number("exposure_lx_s", low=1e-4, high=1e6)
    camera = _read_camera(fields)
    stop = _one(fields, "f_number", "t_number")
    if stop == "t_number" and camera.lens_stops:
        raise Problem(
            fields.at("lens_stops"), "A T-number holds the loss of the lens already: leave it out."
        )
    return _Known(
        **vars(camera),
        illuminance_lx=illuminance,
        exposure_lx_s=burst,
        bursts=fields.whole("bursts", 1, 1, 1000),
        f_number=_read_stop(fields, stop) if stop else None,
    )


def read_camera(fields: Fields) -> Camera:
    """Return the camera from a group that holds nothing else."""
    fields.refuse_unknown(*_CAMERA)
    return _read_camera(fields)


def _read_camera(fields: Fields) -> Camera:
    fps, angle, time = read_shutter(fields)
    loss = _one(fields, "filter_stops", "filter_factor")
    filter_stops = None
    if loss == "filter_stops":
        filter_stops = fields.number(loss, low=0.0, high=30.0)
    elif loss == "filter_factor":
        filter_stops = math.log2(fields.number(loss, low=1.0, high=1e9))
    receptor = fields.choice("receptor", tuple(stops.CONSTANTS), "flat")
    return Camera(
        iso=fields.number("iso", low=0.1, high=1e8) if fields.given("iso") else None,
        fps=fps,
        shutter_deg=angle,
        time_s=time,
        filter_stops=filter_stops,
        lens_stops=fields.number("lens_stops", 0.0, 0.0, 10.0),
        constant=fields.number("constant", stops.CONSTANTS[receptor], 100.0, 1000.0),
    )


def read_shutter(fields: Fields) -> tuple[float | None, float | None, float | None]:
    """Return frame rate (exact), shutter angle and time in s, each None where it is open."""
    fps = None
    if fields.given("fps"):
        fps = flicker.exact_rate(fields.number("fps", low=0.01, high=100_000.0))
    way = _one(fields, "shutter_deg", "time_s")
    if way == "time_s":
        time = read_time(fields, way)
        return fps, (flicker.shutter_angle(fps, time) if fps else None), time
    if way is None:
        return fps, None, None
    angle = fields.number(way, low=0.1, high=360.0)
    return fps, angle, (flicker.shutter_time(fps, angle) if fps else None)


def read_time(fields: Fields, name: str) -> float:
    """Return a time in s, typed as a number or as a part of a second (``1/48``)."""
    raw = fields.raw(name)
    low, high = 1e-7, 1e5
    if isinstance(raw, str) and "/" in raw:
        over, _, under = raw.strip().removesuffix("s").partition("/")
        top = parse_number(over, fields.at(name), name)
        bottom = parse_number(under, fields.at(name), name)
        time = top / bottom if bottom else math.inf
        if not low <= time <= high:
            raise Problem(fields.at(name), f"{name}: “{raw.strip()[:24]}” is not a shutter time.")
        return time
    return fields.number(name, low=low, high=high)


def _read_stop(fields: Fields, name: str) -> float:
    raw = fields.raw(name)
    said = stops.parse_stop(raw) if isinstance(raw, str) else None
    if said is not None and 0.1 <= said <= 1000.0:
        return said
    return fields.number(name, low=0.1, high=1000.0)


def _which(known: _Known, solve: str | None, fields: Fields) -> str | None:
    """Return the figure to solve, or None when everything is settled."""
    steady = known.illuminance_lx is not None
    burst = known.exposure_lx_s is not None
    flashing = burst or solve == "exposure_lx_s"
    missing = []
    if not steady and not burst:
        missing.append("light")
    if known.iso is None:
        missing.append("iso")
    if known.time_s is None and not flashing:
        missing.append("time_s")
    if known.f_number is None:
        missing.append("f_number")
    # An angle without a frame rate leaves the rate open, rather than the time.
    rate_open = known.shutter_deg is not None and known.fps is None
    if solve is not None:
        wanted = {"illuminance_lx": "light", "exposure_lx_s": "light", "fps": "time_s"}
        target = wanted.get(solve, solve)
        if solve == "fps" and known.shutter_deg is None:
            raise Problem(fields.at("shutter_deg"), "A frame rate is solved from a shutter angle.")
        if solve in ("time_s", "fps") and burst:
            raise Problem(fields.at("exposure_lx_s"), "A flash does not depend on the shutter.")
        settled = target not in missing
        if settled and not (solve == "filter_stops" and known.filter_stops is None):
            raise Problem(
                "solve", f"{solve} is given already: leave it out of known for it to be solved."
            )
        rest = [name for name in missing if name != target]
    else:
        target = missing[0] if missing else ""
        rest = missing[1:]
    if rest:
        raise Problem(
            fields.at("illuminance_lx" if rest[0] == "light" else rest[0]),
            f"Still open: {'; '.join(_SETTLES[name] for name in rest)}. "
            "One figure can be solved at a time.",
        )
    if not target:
        return None if known.filter_stops is not None else "filter_stops"
    if target == "light":
        return "exposure_lx_s" if flashing else "illuminance_lx"
    return "fps" if target == "time_s" and rate_open else target


def _settle(known: _Known, solved: str | None, fields: Fields) -> _Known:
    """Return everything settled, the open figure solved."""
    if known.exposure_lx_s is not None:
        light: float | None = flash.total(known.exposure_lx_s, known.bursts)
    elif known.illuminance_lx is not None and known.time_s is not None:
        light = known.illuminance_lx * known.time_s
    else:
        light = None
    constant, loss = known.constant, known.loss_stops
    n, iso = known.f_number, known.iso
    if solved == "f_number" and light is not None and iso is not None:
        return replace(known, f_number=stops.f_number_for(light, iso, constant, loss))
    if solved == "iso" and light is not None and n is not None:
        return replace(known, iso=stops.iso_for(light, n, constant, loss))
    if n is not None and iso is not None:
        needed = stops.light_needed(n, iso, constant, loss)
        if solved == "illuminance_lx" and known.time_s is not None:
            return replace(known, illuminance_lx=needed / known.time_s)
        if solved == "exposure_lx_s":
            return replace(known, exposure_lx_s=needed / known.bursts)
        if solved in ("time_s", "fps") and known.illuminance_lx is not None:
            time = needed / known.illuminance_lx
            if solved == "time_s":
                angle = flicker.shutter_angle(known.fps, time) if known.fps else None
                return replace(known, time_s=time, shutter_deg=angle)
            rate = (known.shutter_deg or 0.0) / (360.0 * time)
            return replace(known, time_s=time, fps=rate)
        if solved == "filter_stops" and light is not None:
            left = stops.over_stops(light, n, iso, constant) - known.lens_stops
            return replace(known, filter_stops=left)
        if solved is None:
            return known
    raise Problem(fields.path, "This exposure cannot be solved as it stands.")


def _answer(known: _Known, solved: str | None, say: str) -> dict[str, Any]:
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


def _words(known: _Known, solved: str | None, over: float, say: str) -> str:
    if solved == "f_number":
        return stops.stop_words(known.f_number or 1.0, say)
    if solved == "illuminance_lx":
        lux = known.illuminance_lx or 0.0
        return f"{_plain(lux)} lx ({_plain(lux / stops.LX_PER_FC)} fc)"
    if solved == "exposure_lx_s":
        return f"{known.exposure_lx_s or 0.0:.3g} lx·s a burst"
    if solved == "iso":
        return f"ISO {_plain(known.iso or 0.0)}"
    if solved == "time_s":
        time = stops.time_words(known.time_s or 1.0)
        return time if known.shutter_deg is None else f"{known.shutter_deg:.4g}°, {time}"
    if solved == "fps":
        return f"{known.fps or 0.0:.4g} frames a second"
    if solved == "filter_stops":
        over = known.filter_stops or 0.0
        if over < -1 / 6:
            return f"{stops.amount_words(over, say)} short of light"
        if over < 1 / 6:
            return "right as it is"
        density = over * math.log10(2.0)
        return f"{stops.amount_words(over, say)} of filter (ND {density:.1f})"
    if abs(over) < 1 / 6:
        return "right as it is"
    return f"{stops.amount_words(over, say)} {'over' if over > 0 else 'under'}"


def _plain(value: float) -> str:
    return f"{value:.3g}" if value < 100 else f"{value:.0f}"


def _warnings(known: _Known, solved: str | None) -> list[str]:
    found = []
    if known.shutter_deg is not None and known.shutter_deg > 360.0 + 1e-9:
        found.append(
            f"The shutter would be open for {known.shutter_deg:.0f}°, longer than a frame at "
            f"{known.fps:.4g} frames a second: add light, open the lens or raise the ISO."
        )
    if solved == "filter_stops" and (known.filter_stops or 0.0) < -1 / 6:
        found.append("Too dark without any filter: add light, open the lens or raise the ISO.")
    if solved == "f_number" and (known.f_number or 1.0) < 1.0:
        found.append("Few lenses open this far: add light, or raise the ISO or the time.")
    if solved == "f_number" and (known.f_number or 1.0) > 22.0:
        found.append("Few lenses close this far: take a neutral density filter.")
    if known.exposure_lx_s is not None and known.time_s is not None and known.time_s < 1 / 250:
        found.append(
            "A shutter this short can cut a burst off, or cover a part of the frame: test it."
        )
    return found
