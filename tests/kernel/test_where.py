"""Places, bearings and offsets are understood as people write them."""

from __future__ import annotations

from typing import Any

import pytest

from evenkelvin.desk import answer
from evenkelvin.fields import Fields
from evenkelvin.problem import Problem
from evenkelvin.requests.where import read_facing, read_offset, read_place
from evenkelvin.scouting.coordinates import read_position

READ = {
    "lat_deg": lambda fields: read_place(fields)[0],
    "lon_deg": lambda fields: read_place(fields)[1],
    "utc_offset_h": read_offset,
    "facing_deg": read_facing,
}
#: Half of a place, where the other half is what is tested.
NEAR = {"lat_deg": 9, "lon_deg": 9}


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
    assert READ[name](Fields({**NEAR, name: typed})) == pytest.approx(meant)


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
        READ[name](Fields({**NEAR, name: typed}))
    assert caught.value.field == name
    assert "_deg" not in str(caught.value.message)
    assert "_h" not in str(caught.value.message)


def test_the_sun_is_the_same_however_its_place_is_written() -> None:
    plain = {"ask": "sun", "date": "2026-11-25"}
    figures = {"lat_deg": -42.88, "lon_deg": 147.33, "utc_offset_h": 10.5, "facing_deg": 45}
    typed = {"lat_deg": "42.88 S", "lon_deg": "147.33 E", "utc_offset_h": "10:30",
             "facing_deg": "NE"}  # fmt: skip
    assert answer({**plain, **figures}) == answer({**plain, **typed})


@pytest.mark.parametrize(
    "typed",
    [
        "-42.88, 147.33",
        "−42,88; 147,33",
        "-42,88 147,33",
        "-42,88,147,33",
        "42.88 S 147.33 E",
        "42.88S147.33E",
        "S42.88 E147.33",
        "147.33 E, 42.88 S",
        "42° 52′ 48″ S, 147° 19′ 48″ E",
        "42°52'48\"S 147°19'48\"E",
        "42 52.8 S, 147 19.8 E",
        "42,88 Süd / 147,33 Ost",
        "42.88 south, 147.33 east",
        "42,88 S 147,33 O",
        # RFC 5870, 'A Uniform Resource Identifier for Geographic Locations'.
        "geo:-42.88,147.33;u=35",
        # ISO 6709 in degrees.
        "-42.88+147.33/",
    ],
)
def test_a_position_in_one_piece_is_read_in_any_common_form(typed: str) -> None:
    assert read_place(Fields({"lat_deg": typed})) == pytest.approx((-42.88, 147.33))


@pytest.mark.parametrize(
    "typed",
    [
        "53.55",
        "53,55,9",
        "1,2,3",
        "91 N 3 E",
        "53.55 N 9.99 N",
        "53.55, 9.99 E",
        "here",
        "12 E 4 E",
    ],
)
def test_what_is_no_position_or_could_be_two_is_refused(typed: str) -> None:
    with pytest.raises(Problem) as caught:
        read_place(Fields({"lat_deg": typed}))
    assert caught.value.field in ("lat_deg", "lon_deg")


def test_a_german_o_is_east_only_where_it_can_be_nothing_else() -> None:
    assert read_position("53,5 N 9,9 O", o_is_east=True) == pytest.approx((53.5, 9.9))
    assert read_position("53,5 N 9,9 O") is None


def test_a_position_in_one_piece_takes_the_place_of_a_longitude_before_it() -> None:
    assert read_place(Fields({"lat_deg": "53.55, 9.99", "lon_deg": "8.5"})) == (53.55, 9.99)
    assert read_place(Fields({"lat_deg": "53,55", "lon_deg": "8.5"})) == (53.55, 8.5)
