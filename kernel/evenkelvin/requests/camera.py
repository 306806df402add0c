"""The camera, its shutter and its stop, as a question states them."""

from __future__ import annotations

import math

from evenkelvin.exposure import flicker, stops
from evenkelvin.exposure.solving import Camera
from evenkelvin.field_names import field_name, only_one_of
from evenkelvin.fields import Fields, parse_number
from evenkelvin.problem import Problem
from evenkelvin.said import Said
from evenkelvin.shapes import Choice, Group, Number, OneOf, Text

#: How words tell stops.
SAYINGS = ("thirds", "tenths")


#: The fields of a camera.
CAMERA: Group = {
    "iso": Number(25, 25600), "fps": Number(1, 240), "shutter_deg": Number(1, 360),
    "time_s": OneOf((Number(1e-4, 1), Text(("1/48", "1/50", "0.02")))),
    "filter_stops": Number(0, 10), "filter_factor": Number(1, 1000), "lens_stops": Number(0, 3),
    "receptor": Choice(tuple(stops.CONSTANTS)), "constant": Number(100, 1000),
}  # fmt: skip
#: A shutter by itself.
SHUTTER: Group = {name: CAMERA[name] for name in ("fps", "shutter_deg", "time_s")}


def only_one(fields: Fields, *names: str) -> str | None:
    """Return which one of the fields is given, or None; refuse two of them."""
    given = [name for name in names if fields.given(name)]
    if len(given) > 1:
        raise Problem(
            fields.at(given[1]),
            only_one_of(given),
        )
    return given[0] if given else None


def read_camera(fields: Fields) -> Camera:
    """Return the camera from a group that holds nothing else."""
    fields.refuse_unknown(*CAMERA)
    return camera_of(fields)


def camera_of(fields: Fields) -> Camera:
    """Return the camera from a group that holds other fields too."""
    fps, angle, time = read_shutter(fields)
    loss = only_one(fields, "filter_stops", "filter_factor")
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
    way = only_one(fields, "shutter_deg", "time_s")
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
            raise Problem(
                fields.at(name),
                Said(
                    "{Name}: “{typed}” is not a shutter time.",
                    Name=field_name(name),
                    typed=raw.strip()[:24],
                ),
            )
        return time
    return fields.number(name, low=low, high=high)


def read_stop(fields: Fields, name: str) -> float:
    """Return an f-number or T-number, typed as a number or as a stop is said (``2.8⅓``)."""
    raw = fields.raw(name)
    said = stops.parse_stop(raw) if isinstance(raw, str) else None
    if said is not None and 0.1 <= said <= 1000.0:
        return said
    return fields.number(name, low=0.1, high=1000.0)
