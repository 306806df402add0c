"""How long what hangs on a window holds, against every minute reckoned by itself.

Sources: brute force over the minutes; daylight and its colour by colour-science (CIE 15:2018).
"""

from __future__ import annotations

from datetime import date

import colour
import numpy as np
import pytest

from evenkelvin.desk import answer
from evenkelvin.filters.kit import nominal_kit
from evenkelvin.scouting import sky, sun

NM = np.arange(380, 781, 5)
#: Hamburg in June, its clock two hours ahead.
PLACE = {"lat_deg": 53.55, "lon_deg": 9.99, "date": "2026-06-21", "utc_offset_h": 2}
GELS = {gel.name: gel.transmittance for gel in nominal_kit()}
#: The observer of colour-science (CIE 015:2018), not ours.
BARS = (
    colour.MSDS_CMFS["CIE 1931 2 Degree Standard Observer"]
    .copy()
    .align(colour.SpectralShape(380, 780, 5))
    .values
)


def ask(*windows, **fields):
    fields = {"time": "15:00", "target": {"cct_K": 3200}, "windows": list(windows)} | fields
    return answer({"ask": "hold"} | fields)


def daylight(cct_K, green=0.0):
    """CIE daylight by colour-science, with some green for the leaves before a window."""
    xy = colour.temperature.CCT_to_xy_CIE_D(cct_K)
    made = colour.sd_CIE_illuminant_D_series(xy, shape=colour.SpectralShape(380, 780, 5))
    return made.values * (1.0 + green * np.exp(-(((NM - 550) / 40.0) ** 2)))


def read_at(minute, power):
    spectrum = {"wavelengths_nm": NM.tolist(), "values": power.tolist()}
    return {"time": sun.clock(minute), "spectrum": spectrum, "lamp": "daylight"}


def steps_from(power, through, target_xy):
    """Distance in u' v' over 0.0011, the one-step of CIE TN 001:2014."""
    tristimulus = power * through @ BARS
    apart = colour.xy_to_Luv_uv(tristimulus[:2] / tristimulus.sum()) - colour.xy_to_Luv_uv(
        target_xy
    )
    return float(np.hypot(*apart)) / 0.0011


def word(steps, radius=4.0):
    return "holds" if steps <= radius else "near" if steps <= 2 * radius else "out"


def carried(power, start, minute, facing, turbidity):
    """A reading changed as the sky's estimate changes, each minute by itself; None: too low."""
    place = sun.Place(PLACE["lat_deg"], PLACE["lon_deg"], PLACE["utc_offset_h"])
    seen = []
    for each in (start, minute):
        where = sun.position(place, date.fromisoformat(PLACE["date"]), each)
        if where.altitude_deg < sky.LOWEST_SKY_DEG:
            return None
        light = sky.daylight(where.altitude_deg, turbidity)
        shines = sun.Window(facing).direct(where) > 0
        seen.append(light.open_sky if shines else light.shade)
    return power * seen[1] / seen[0]


def by_hand(readings, through, target_xy, facing, minute):
    """The verdict of one minute, from nothing but its neighbours."""
    minutes = [each for each, _ in readings]
    if minutes[0] <= minute <= minutes[-1]:
        after = next(i for i, each in enumerate(minutes) if each >= minute)
        if minutes[after] == minute:
            mixed = readings[after][1]
        else:
            (start, one), (end, two) = readings[after - 1 : after + 1]
            part = (minute - start) / (end - start)
            mixed = (1 - part) * one / (one @ BARS)[1] + part * two / (two @ BARS)[1]
        return word(steps_from(mixed, through, target_xy))
    start, power = readings[0 if minute < minutes[0] else -1]
    lights = [carried(power, start, minute, facing, one) for one in sky.TURBIDITY.values()]
    if lights[0] is None:
        return None
    return word(max(steps_from(one, through, target_xy) for one in [*lights, power]))


@pytest.mark.parametrize(
    ("facing", "gels", "readings"),
    [
        (270, ["full CTO"], [(850, 5600, 0.02), (1000, 5000, 0.0)]),
        (180, ["3/4 CTO"], [(610, 6100, 0.0), (700, 5200, 0.05), (930, 4700, 0.0)]),
        (20, ["full CTO", "1/4 CTO"], [(540, 9500, 0.0), (845, 7000, 0.0), (1100, 8200, 0.0)]),
        (90, [], [(660, 6500, 0.0)]),
    ],
)
def test_the_stretches_are_those_of_every_minute_by_itself(facing, gels, readings):
    """By brute force over the minutes, colours by colour-science."""
    target = 3200 if gels else 6500
    shown = ask(
        {
            "facing_deg": facing,
            "gels": gels,
            "readings": [read_at(minute, daylight(cct, green)) for minute, cct, green in readings],
        },
        target={"cct_K": target},
        **PLACE,
    )
    (window,) = shown["windows"]
    found = [None] * 1440
    for each in window["stretches"]:
        span = range(each["from_minute"], each["to_minute"] + 1)
        found[span.start : span.stop] = [each["verdict"]] * len(span)
    through = np.prod([GELS[name] for name in gels], axis=0) if gels else np.ones(len(NM))
    known = [(minute, daylight(cct, green)) for minute, cct, green in readings]
    target_xy = np.array([shown["target"]["x"], shown["target"]["y"]])
    want = [by_hand(known, through, target_xy, facing, minute) for minute in range(1440)]
    off = [minute for minute in range(1440) if found[minute] != want[minute]]
    # An edge of the estimate may lie a minute aside: the sun's place is known every four minutes.
    assert all(
        want[minute] in found[minute - 1 : minute + 2] and not known[0][0] <= minute <= known[-1][0]
        for minute in off
    ), [(sun.clock(minute), found[minute], want[minute]) for minute in off]
    assert len(off) <= 4
    assert {"holds", "near"} & set(want)
