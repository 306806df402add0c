"""``sun``: the sun through one day at a place, and in a window.

Fields: ``lat_deg``, ``lon_deg`` (north and east positive, or ``42.88 S``; both in ``lat_deg`` where
they come as one text), ``date``
("2026-11-25"), ``utc_offset_h`` (or ``10:30``); optional ``facing_deg`` (where the window looks,
from north by east, or ``NE``),
``horizon_deg`` (altitude of what stands before it) or ``horizon`` [{``azimuth_deg``,
``altitude_deg``}], the line of it from point to point; ``windows`` [{``name``, ``facing_deg``,
``horizon_deg`` | ``horizon``}] where a place has several; ``sky`` "clear" (default), "hazy" or
"overcast", ``step_min`` of the curve (10).
"""

from __future__ import annotations

from typing import Any

import numpy as np

from evenkelvin.fields import Fields
from evenkelvin.requests.where import DAY, VIEW, read_day, read_view
from evenkelvin.said import Said, joined, listed
from evenkelvin.scouting import sky, sun
from evenkelvin.shapes import Choice, Group, Many, Text, Whole

_CAUTIONS = [
    Said(
        "Never look at the sun, and never through a lens, a finder or a spot meter: it "
        "blinds. Keep lenses and sensors off it too."
    ),
]
_NEVER = {
    True: Said("The sun does not set on this day."),
    False: Said("The sun does not rise on this day."),
}

#: Windows of one place that are answered together.
MOST_WINDOWS = 40
SKIES = (*sky.TURBIDITY, "overcast")
FIELDS: Group = {
    **DAY, **VIEW, "windows": Many({"name": Text(), **VIEW}),
    "sky": Choice(SKIES),
    "step_min": Whole(5, 120),
}  # fmt: skip


def reply(fields: Fields) -> dict[str, Any]:
    """Answer the ask."""
    fields.refuse_unknown("ask", *FIELDS)
    place, when = read_day(fields)
    over = fields.choice("sky", SKIES, "clear")
    step = fields.whole("step_min", 10, 1, 120)
    view = read_view(fields)
    groups = fields.groups("windows", most=MOST_WINDOWS)
    views = []
    for group in groups:
        group.refuse_unknown("name", *VIEW)
        views.append((group.text("name", "", longest=80), read_view(group)))
    day = sun.Day(place, when)
    light = day.spans(sun.up)
    minute, top = day.highest()
    golden = day.spans(sun.between(sun.GOLDEN_DEG))
    blue = day.spans(sun.between(sun.BLUE_DEG))
    answer: dict[str, Any] = {
        "date": when.isoformat(),
        "lat_deg": place.latitude,
        "lon_deg": place.longitude,
        "utc_offset_h": place.utc_offset_h,
        "up": [_span(day, span) for span in light],
        "golden": [_span(day, span) for span in golden],
        "blue": [_span(day, span) for span in blue],
        "highest": _moment(minute, top),
        "curve": _curve(day.curve(step), over),
        "estimate": _estimate(over),
        "words": _day_words(light, top),
    }
    if view is not None:
        answer["window"] = _window(day, view, light)
    if views:
        answer["windows"] = [
            {"name": name, "window": None if each is None else _window(day, each, light)}
            for name, each in views
        ]
    answer["warnings"] = _warnings(place)
    answer["cautions"] = list(_CAUTIONS)
    return answer


def _window(day: sun.Day, view: sun.Window, light: list[sun.Span]) -> dict[str, Any]:
    direct = day.spans(view.direct)
    share = view.sky_share
    return {
        "facing_deg": view.facing_deg,
        "facing_words": sun.compass(view.facing_deg),
        "horizon": [
            {"azimuth_deg": azimuth, "altitude_deg": altitude} for azimuth, altitude in view.horizon
        ],
        "direct": [_span(day, span) for span in direct],
        "sky_share": share,
        "sky_words": Said(
            "It sees {percent:.0f} % of the sky that an open view would show.",
            percent=100.0 * share,
        ),
        "words": _window_words(direct, light, view.facing_deg),
    }


def _moment(minute: float, where: sun.Position) -> dict[str, Any]:
    return {
        "minute": minute,
        "time": sun.clock(minute),
        "altitude_deg": where.altitude_deg,
        "azimuth_deg": where.azimuth_deg,
    }


def _span(day: sun.Day, span: sun.Span) -> dict[str, Any]:
    """Return both ends of a span, each None where it lies beyond the day."""
    start, end = (
        None if minute is None else _moment(minute, day.at(minute))
        for minute in (span.start, span.end)
    )
    return {"from": start, "to": end, "words": _span_words(span)}


def _span_words(span: sun.Span) -> Said:
    if span.start is None and span.end is None:
        return Said("all day")
    if span.start is None:
        return Said("until {clock}", clock=sun.clock(span.end or 0.0))
    if span.end is None:
        return Said("from {clock}", clock=sun.clock(span.start))
    return Said("{start} to {end}", start=sun.clock(span.start), end=sun.clock(span.end))


def _curve(moments: list[tuple[int, sun.Position]], over: str) -> list[dict[str, Any]]:
    """Return the moments with the estimated colours of the sun, the shade and the open."""
    curve: list[dict[str, Any]] = [
        _moment(minute, where) | {"sun_K": None, "shade_K": None, "open_K": None}
        for minute, where in moments
    ]
    if over == "overcast":
        for moment in curve:
            if moment["altitude_deg"] >= sky.LOWEST_SKY_DEG:
                moment |= {"shade_K": sky.OVERCAST_K, "open_K": sky.OVERCAST_K}
        return curve
    sunny = [moment for moment in curve if moment["altitude_deg"] >= sky.LOWEST_SUN_DEG]
    lights = [sky.daylight(m["altitude_deg"], sky.TURBIDITY[over]) for m in sunny]
    if lights:
        # All at once: a CCT takes far longer to start than to repeat.
        powers = [power for light in lights for power in (light.sun, light.shade, light.open_sky)]
        found = sky.cct(np.array(powers)).reshape(-1, 3).tolist()
        for moment, (direct, shade, whole) in zip(sunny, found, strict=True):
            moment["sun_K"] = direct
            if moment["altitude_deg"] >= sky.LOWEST_SKY_DEG:
                moment |= {"shade_K": shade, "open_K": whole}
    return curve


def _estimate(over: str) -> dict[str, str]:
    if over == "overcast":
        how = Said("An even cloud cover is taken as CIE D65, average daylight, all day.")
    else:
        how = Said(
            "{Sky} after Bird and Riordan (1986): air, haze and ozone colour a sun of 5900 K. "
            "Sun: facing it; shade: sky alone; open: both on level ground. None while the sun is "
            "low (sun under {sun:g}°, sky under {sky:g}°).",
            Sky=Said("a hazy sky") if over == "hazy" else Said("a clear sky"),
            sun=sky.LOWEST_SUN_DEG,
            sky=sky.LOWEST_SKY_DEG,
        )
    return {
        "sky": over,
        "words": Said("Estimate, not a reading. {how} Cloud and walls change it.", how=how),
    }


def _day_words(light: list[sun.Span], top: sun.Position) -> Said:
    if not light:
        return _NEVER[False]
    first, last = light[0], light[-1]
    if first.start is None and first.end is None:
        return Said(
            "{never} It stands {top:.0f}° high at most.", never=_NEVER[True], top=top.altitude_deg
        )
    ups = [sun.clock(span.start) for span in light if span.start is not None]
    downs = [sun.clock(span.end) for span in light if span.end is not None]
    parts = []
    if ups:
        parts.append(Said("sunrise {times}", times=listed(ups)))
    if downs:
        parts.append(Said("sunset {times}", times=listed(downs)))
    if last.end is None and first.start is None:
        parts.reverse()
    day = joined(parts)
    if not downs:
        day = Said("{day} (no sunset on this day)", day=day)
    elif not ups:
        day = Said("{day} (no sunrise on this day)", day=day)
    return Said("{Day}; {top:.0f}° high at most.", Day=day, top=top.altitude_deg)


def _window_words(direct: list[sun.Span], light: list[sun.Span], facing: float) -> Said:
    point = sun.compass(facing)
    if not light:
        return Said(
            "No sun in the window facing {point}: the sun does not rise on this day.", point=point
        )
    if not direct:
        return Said("No direct sun in the window facing {point} on this day.", point=point)
    return Said(
        "Direct sun in the window facing {point} {spans}.",
        point=point,
        spans=listed(_span_words(span) for span in direct),
    )


def _warnings(place: sun.Place) -> list[Said]:
    solar = place.longitude / 15.0
    if abs((place.utc_offset_h - solar + 12.0) % 24.0 - 12.0) > 3.5:
        return [
            Said(
                "Local time of UTC{offset:+g} is far from what longitude {longitude:g}° "
                "suggests (about {solar:+.0f}): check the sign of both.",
                offset=place.utc_offset_h,
                longitude=place.longitude,
                solar=solar,
            )
        ]
    return []
