"""Camera, glass, sun and distance: expose, flicker, windows, hold, sun, even, falloff."""

from __future__ import annotations

import argparse
import re

from evenkelvin.cli.lights import aim, stated_lights
from evenkelvin.cli.outcome import Outcome, Plain, Read, asked, given, shown, told, warned
from evenkelvin.cli.tables import table, white
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


def hold(options: argparse.Namespace, read: Read) -> Outcome:
    """Answer with what a window needs at one time, and how long what hangs there holds."""
    readings, date = _timed(options, read)
    place = options.where or (None, None)
    found = asked(
        "hold",
        time=options.at,
        windows=[
            given(
                readings=readings, gels=options.gel, facing_deg=options.facing,
                horizon_deg=options.horizon,
            )
        ],
        **given(
            lat_deg=place[0], lon_deg=place[1], date=date if options.where else None,
            utc_offset_h=options.utc, sky=options.sky, wanted_lx=options.wanted, most=options.most,
        ),
        **aim(options),
    )  # fmt: skip
    (window,) = found["windows"]
    light = white(window["light"]) if window["light"] else []
    lines = ["  ".join([found["time"], *light, window["basis_words"]])]
    lines.append(f"{' + '.join(window['gels']) or 'no gel'}: {window['words']}")
    rows = [
        (one["from"], one["to"], f"{one['verdict']}{' (estimate)' if one['estimated'] else ''}")
        for one in window["stretches"]
        if one["verdict"] is not None
    ]
    lines += [table([("from", "to", ""), *rows])] if rows else []
    for pack in window["packs"]:
        beside = pack["nd"]["gels"] if pack["nd"] else []
        lines.append(f"{' + '.join([*pack['gels'], *beside])}: {pack['hold_words']}")
    return shown(found, warned("\n".join(lines), *window["warnings"]), options.json)


def _timed(options: argparse.Namespace, read: Read) -> tuple[list[Plain], str | None]:
    """The readings of one day with their times, and the day."""
    timed = []
    for name in options.file:
        for number, (light, beside) in enumerate(stated_lights(options, name, read), 1):
            time = light.get("time") or beside.get("time", "")[:5]
            if time:
                timed.append((beside.get("date"), {**light, "time": time}))
            else:
                options.noted.left_out = True
                named = light.get("name") or f"light {number}"
                options.noted.notes.append(f"{name}: {named} has no time of day; it is left out.")
    days = sorted({day for day, _ in timed if day})
    date = options.date or (days[0] if len(days) == 1 else None)
    if date is None and days:
        raise Problem("date", told(f"The readings are of {', '.join(days)}: choose one."))
    kept = [
        {field: value for field, value in light.items() if field != "name"}
        for day, light in timed
        if day in (None, date)
    ]
    if len(kept) < len(timed):
        options.noted.left_out = True
        options.noted.notes.append(
            f"{len(timed) - len(kept)} of {len(timed)} readings are of another day; left out."
        )
    return kept, date


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
