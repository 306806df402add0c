"""Camera, glass, sun and distance: expose, flicker, windows, sun, even, falloff."""

from __future__ import annotations

import argparse
import re

from evenkelvin.cli.outcome import Outcome, Plain, Read, asked, given, shown, told
from evenkelvin.cli.tables import table
from evenkelvin.problem import Problem

#: How many settings a line lists.
_MOST = 12


def expose(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with the open figure; with all known, how far over or under it is."""
    known = given(
        illuminance_lx=options.lux, illuminance_fc=options.fc, exposure_lx_s=options.flash,
        bursts=options.bursts, iso=options.iso, fps=options.fps, shutter_deg=options.shutter,
        time_s=options.time, f_number=options.stop, t_number=options.t_stop,
        filter_stops=options.nd, lens_stops=options.lens,
        receptor="dome" if options.dome else None,
    )  # fmt: skip
    found = asked("expose", known=known, say="tenths" if options.tenths else "thirds")
    return shown(found, found["words"], options.json)


def flicker(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with the shutters and frame rates that see every pulse alike."""
    found = asked(
        "flicker",
        **given(
            mains_hz=options.mains, light_hz=options.pulses, fps=options.fps,
            shutter_deg=options.shutter, time_s=options.time,
            modulation_percent=options.modulation,
        ),
    )  # fmt: skip
    rows = [("pulses of light", f"{found['light_hz']:.6g} Hz")]
    for name, values, unit in (
        ("frame rates", found.get("safe_fps_at_shutter") or found["safe_fps"], ""),
        ("shutter angles", found["safe_shutter_deg"], "°"),
    ):
        if values:
            rows.append((name, _few([f"{value:.5g}{unit}" for value in values])))
    if found["safe_time_words"]:
        rows.append(("shutter times", _few(found["safe_time_words"])))
    return shown(found, f"{found['words']}\n{table(rows)}", options.json)


def _few(words: list[str]) -> str:
    more = f" and {len(words) - _MOST} more" if len(words) > _MOST else ""
    return ", ".join(words[:_MOST]) + more


_SIZE = re.compile(r"([^x×:]+)[x×]([^x×:]+)(?::(.+))?")


def _sizes(texts: list[str], unit: str, second: str) -> list[Plain]:
    """Widths and heights or lengths, as ``2.4x1.8:3`` has them."""
    found = []
    for text in texts:
        match = _SIZE.fullmatch(text)
        if not match:
            raise Problem(
                "", told(f"A size is WIDTHx{second.upper()}, such as 2.4x1.8, not “{text}”.")
            )
        width, other, count = match.groups()
        found.append(given(**{f"width_{unit}": width, f"{second}_{unit}": other}, count=count))
    return found


def windows(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with the cut list and the rolls that it takes."""
    unit = options.unit
    found = asked(
        "windows",
        windows=_sizes(options.pane, unit, "height"),
        length_unit=unit,
        **given(
            rolls=_sizes(options.roll, unit, "length"),
            gels=options.gel,
            **{f"overlap_{unit}": options.overlap},
        ),
    )
    rows = [("cut", "pieces", "for")]
    for cut in found["cuts"]:
        rows.append((cut["words"], str(cut["count"]), cut["name"]))
    lines = [found["words"], table(rows), *(roll["words"] for roll in found["rolls"])]
    if found["left_out"]:
        options.noted.left_out = True
        for cut in found["left_out"]:
            options.noted.notes.append(f"{cut['name']}: {cut['count']} × {cut['words']} left out.")
    return shown(found, "\n".join(lines), options.json)


def sun(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with the day's spans, and when the sun is in the window."""
    found = asked(
        "sun", lat_deg=options.lat, lon_deg=options.lon, date=options.date,
        utc_offset_h=options.utc,
        **given(facing_deg=options.facing, horizon_deg=options.horizon, sky=options.sky),
    )  # fmt: skip
    rows = [
        (name, ", ".join(span["words"] for span in found[key]) or "–")
        for name, key in (("sun up", "up"), ("golden hour", "golden"), ("blue hour", "blue"))
    ]
    lines = [found["words"], table(rows)]
    if "window" in found:
        lines.append(found["window"]["words"])
    return shown(found, "\n".join(lines), options.json)


def even(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with how even the surface is, point by point."""
    points = []
    for text in options.point:
        parts = text.split(":")
        if len(parts) != 3:
            raise Problem("", told(f"A point is ACROSS:UP:LUX, such as 0.5:1:320, not “{text}”."))
        points.append(dict(zip(("across", "up", "illuminance_lx"), parts, strict=True)))
    found = asked("even", points=points, **given(within_stops=options.within))
    rows = [("point", "stops", "")]
    for text, point in zip(options.point, found["points"], strict=True):
        if point["problem"] is not None:
            options.noted.left_out = True
            options.noted.notes.append(f"{text}: {point['problem']['message']}")
            continue
        rows.append(
            (text, f"{round(point['stops'], 1) + 0.0:+.1f}", "holds" if point["holds"] else "out")
        )
    return shown(found, f"{found['words']}\n{table(rows)}", options.json)


def falloff(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer by the inverse square."""
    found = asked(
        "falloff", illuminance_lx=options.lux, distance_m=options.distance,
        **given(at_m=options.at, wanted_lx=options.wanted, lose_stops=options.lose,
                source_m=options.source),
    )  # fmt: skip
    return shown(found, found["words"], options.json)
