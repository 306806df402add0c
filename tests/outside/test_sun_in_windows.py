"""When the sun shines into each window of a place, against every minute of the day by itself.

The positions are astral's, as the sun is computed from Meeus (1998); what a window sees of them is
worked out here anew, by rays: geometry.
"""

from __future__ import annotations

import math
from datetime import UTC, datetime, timedelta, timezone
from itertools import pairwise
from typing import Any

import pytest
from astral import Observer
from astral.sun import zenith_and_azimuth

from evenkelvin.desk import answer

Plain = dict[str, Any]
#: The centre of the sun at sunrise: 34′ of refraction and 16′ of radius (Meeus 1998, chapter 15).
RISES_DEG = -0.833
#: How near the edge of a span a minute may be told either way.
EDGE_MIN = 1.0
LONG = "Clerestory above the ticket counter, third bay, left pane"

#: Twelve windows all round, some behind roofs: points (degrees from straight ahead, height).
LINES: list[list[tuple[float, float]]] = [
    [], [(0, 12)], [(-60, 5), (-10, 30), (40, 8)], [(-89, 2), (89, 25)], [(0, 80)], [],
    [(-30, 20), (-29, 0), (30, 0), (31, 20)], [], [(10, 18)], [(-45, 40), (45, 0)], [], [(0, 6)],
]  # fmt: skip
WINDOWS = [
    {"name": f"{n} {LONG}", "facing_deg": 30 * n,
     "horizon": [{"azimuth_deg": (30 * n + aside) % 360, "altitude_deg": height}
                 for aside, height in line]}
    for n, line in enumerate(LINES)
]  # fmt: skip
DAYS = {
    "autumn in the north": (53.55, 9.99, 1.0, "2026-10-27"),
    "polar day": (71.2, 25.8, 2.0, "2026-06-21"),
    "polar night": (71.2, 25.8, 1.0, "2026-12-21"),
    "midsummer, the sun past midnight by the clock": (64.1, -21.9, 0.0, "2026-06-21"),
    "the south": (-42.88, 147.33, 11.0, "2026-01-10"),
    "under the sun": (0.5, 101.4, 7.0, "2026-03-20"),
}


def ahead_of(line: list[tuple[float, float]], aside: float) -> float:
    """Return the height of a line straight from point to point, level beyond its ends."""
    line = sorted(line)
    if not line:
        return 0.0
    for (left, low), (right, high) in pairwise(line):
        if left <= aside <= right:
            return low + (high - low) * (aside - left) / (right - left)
    return line[0][1] if aside < line[0][0] else line[-1][1]


def lit(place: tuple[float, float, float, str], minute: int, n: int) -> bool:
    """Tell whether direct sun meets the nth window at a minute of the clock."""
    lat, lon, offset, day = place
    at = datetime.fromisoformat(day).replace(tzinfo=timezone(timedelta(hours=offset)))
    moment = (at + timedelta(minutes=minute)).astimezone(UTC)
    true, azimuth = zenith_and_azimuth(Observer(lat, lon, 0.0), moment, with_refraction=False)
    seen, _ = zenith_and_azimuth(Observer(lat, lon, 0.0), moment, with_refraction=True)
    across, along = math.sin(math.radians(azimuth)), math.cos(math.radians(azimuth))
    facing = math.radians(30 * n)
    if across * math.sin(facing) + along * math.cos(facing) <= 0.0 or 90.0 - true <= RISES_DEG:
        return False
    height = ahead_of(LINES[n], (azimuth - 30 * n + 180.0) % 360.0 - 180.0)
    return height == 0.0 or 90.0 - seen > height


def ask(place: tuple[float, float, float, str]) -> Plain:
    lat, lon, offset, day = place
    return answer({
        "ask": "sun", "lat_deg": lat, "lon_deg": lon, "utc_offset_h": offset, "date": day,
        "windows": WINDOWS, "step_min": 60,
    })  # fmt: skip


@pytest.mark.parametrize("day", DAYS)
def test_direct_sun_of_each_window_is_that_of_every_minute(day: str) -> None:
    """Brute force over the minutes, by the positions of astral."""
    found = ask(DAYS[day])["windows"]
    assert [one["name"] for one in found] == [one["name"] for one in WINDOWS]
    wrong = []
    for n, one in enumerate(found):
        ends = [
            (span["from"]["minute"] if span["from"] else -1e9,
             span["to"]["minute"] if span["to"] else 1e9)
            for span in one["window"]["direct"]
        ]  # fmt: skip
        for minute in range(1440):
            if any(abs(minute - end) <= EDGE_MIN for span in ends for end in span):
                continue
            told = any(start <= minute <= end for start, end in ends)
            if told != lit(DAYS[day], minute, n):
                wrong.append((n, minute, told))
    assert wrong == []


def test_a_window_that_never_gets_sun_says_so() -> None:
    """By definition: north of the tropics an autumn sun never stands in the north."""
    north = ask(DAYS["autumn in the north"])["windows"][0]["window"]
    assert north["direct"] == []
    assert north["words"] == "No direct sun in the window facing north on this day."
    night = ask(DAYS["polar night"])["windows"][6]["window"]
    assert night["direct"] == []
    assert "the sun does not rise on this day" in night["words"]


def test_on_a_polar_day_the_sun_goes_round_all_open_windows() -> None:
    """By definition: where it does not set, the sun goes once round the horizon in a day."""
    found = ask(DAYS["polar day"])["windows"]
    # North of the house the sun stands at midnight: a span over both ends of the day.
    north = found[0]["window"]["direct"]
    assert north[0]["from"] is None
    assert north[-1]["to"] is None
    assert all(found[n]["window"]["direct"] for n in (0, 5, 7, 10))
    assert found[4]["window"]["direct"] == []  # a wall up to 80°
