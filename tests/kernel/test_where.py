"""Places, bearings and offsets are understood as people write them."""

from __future__ import annotations

from typing import Any

import pytest

from evenkelvin.desk import answer
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.requests.where import read_facing, read_latitude, read_longitude, read_offset

READ = {
    "lat_deg": read_latitude,
    "lon_deg": read_longitude,
    "utc_offset_h": read_offset,
    "facing_deg": read_facing,
}


@pytest.mark.parametrize(
    ("name", "typed", "meant"),
    [
        ("lat_deg", "42.88 S", -42.88),
        ("lat_deg", "42,88s", -42.88),
        ("lat_deg", "S 42.88", -42.88),
        ("lat_deg", "-42.88", -42.88),
        ("lat_deg", "−42,88", -42.88),
        ("lat_deg", "54° 30′ N", 54.5),
        ("lat_deg", "42° 52' 48\" S", -42.88),
        ("lat_deg", 54, 54),
        ("lon_deg", "147.33 E", 147.33),
        ("lon_deg", "8,5 O", 8.5),
        ("lon_deg", "70° 15′ W", -70.25),
        ("utc_offset_h", "10:30", 10.5),
        ("utc_offset_h", "-3:30", -3.5),
        ("utc_offset_h", "UTC+1", 1),
        ("utc_offset_h", "5,75", 5.75),
        ("utc_offset_h", 0, 0),
        ("facing_deg", "NE", 45),
        ("facing_deg", "nne", 22.5),
        ("facing_deg", "South-West", 225),
        ("facing_deg", "Nordost", 45),
        ("facing_deg", "SO", 135),
        ("facing_deg", "N", 0),
        ("facing_deg", "350", 350),
    ],
)
def test_what_people_write_is_understood(name: str, typed: Any, meant: float) -> None:
    assert READ[name](Fields({name: typed})) == pytest.approx(meant)


@pytest.mark.parametrize(
    ("name", "typed"),
    [
        ("lat_deg", "42.88 E"),
        ("lat_deg", "95 S"),
        ("lat_deg", "-42.88 S"),
        ("lat_deg", "42° 75′ S"),
        ("lat_deg", "S"),
        ("lon_deg", "8.5 N"),
        ("utc_offset_h", "10:75"),
        ("utc_offset_h", "25:00"),
        ("facing_deg", "NNN"),
        ("facing_deg", "400"),
        ("facing_deg", "up"),
    ],
)
def test_what_nobody_can_mean_is_refused_in_words_of_the_trade(name: str, typed: str) -> None:
    with pytest.raises(Problem) as caught:
        READ[name](Fields({name: typed}))
    assert caught.value.field == name
    assert "_deg" not in str(caught.value.message)
    assert "_h" not in str(caught.value.message)


def test_the_sun_is_the_same_however_its_place_is_written() -> None:
    plain = {"ask": "sun", "date": "2026-11-25"}
    figures = {"lat_deg": -42.88, "lon_deg": 147.33, "utc_offset_h": 10.5, "facing_deg": 45}
    typed = {"lat_deg": "42.88 S", "lon_deg": "147.33 E", "utc_offset_h": "10:30",
             "facing_deg": "NE"}  # fmt: skip
    assert answer({**plain, **figures}) == answer({**plain, **typed})
