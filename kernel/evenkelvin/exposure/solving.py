"""The one open figure of an exposure, solved from the others (ISO 2720, incident light).

Complaints name a field of ``known``, as the question about an exposure calls it.
"""

from __future__ import annotations

from dataclasses import dataclass, replace

from evenkelvin.exposure import flash, flicker, stops
from evenkelvin.field_names import field_name
from evenkelvin.problem import Problem
from evenkelvin.said import Said, joined

OPEN = ("illuminance_lx", "exposure_lx_s", "iso", "time_s", "fps", "f_number", "filter_stops")
#: What each open figure is called, and the fields that would settle it.
_SETTLES = {
    "light": Said("the light in lux, foot-candles or lx·s"),
    "iso": "iso",
    "time_s": Said("the shutter time, or its angle with the frame rate"),
    "f_number": Said("the f-number or T-number"),
}


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
class Known(Camera):
    """What is settled; None where it is open."""

    illuminance_lx: float | None
    exposure_lx_s: float | None
    bursts: int
    f_number: float | None


def which(known: Known, solve: str | None) -> str | None:
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
            raise Problem("known.shutter_deg", Said("A frame rate is solved from a shutter angle."))
        if solve in ("time_s", "fps") and burst:
            raise Problem("known.exposure_lx_s", Said("A flash does not depend on the shutter."))
        settled = target not in missing
        if settled and not (solve == "filter_stops" and known.filter_stops is None):
            raise Problem(
                "solve",
                Said(
                    "{Name} is given already: leave it empty for it to be found.",
                    Name=field_name(solve),
                ),
            )
        rest = [name for name in missing if name != target]
    else:
        target = missing[0] if missing else ""
        rest = missing[1:]
    if rest:
        raise Problem(
            f"known.{'illuminance_lx' if rest[0] == 'light' else rest[0]}",
            Said(
                "Still open: {open}. One figure can be found at a time.",
                open=joined((_SETTLES[name] for name in rest), "; "),
            ),
        )
    if not target:
        return None if known.filter_stops is not None else "filter_stops"
    if target == "light":
        return "exposure_lx_s" if flashing else "illuminance_lx"
    return "fps" if target == "time_s" and rate_open else target


def settle(known: Known, solved: str | None) -> Known:
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
    raise Problem("known", Said("This exposure cannot be solved as it stands."))
