"""Which readings of a folder of files are one light's, and where another setup begins.

No source: our own promise. The worst would be to take two lights for one.
"""

from __future__ import annotations

import random
from typing import Any

import pytest

from evenkelvin.desk import answer

Plain = dict[str, Any]


def at(minutes: float) -> str:
    whole = round(minutes * 60)
    return f"2026-10-27T{whole // 3600:02d}:{whole // 60 % 60:02d}:{whole % 60:02d}+01:00"


def read(title: str, minutes: float) -> Plain:
    return {"title": title, "at": at(minutes)}


def group(readings: list[Plain], **how: str) -> Plain:
    return answer({"ask": "group", "readings": readings, **how})


def lights(found: Plain) -> list[tuple[str, list[int]]]:
    return [(one["title"], one["readings"]) for each in found["groups"] for one in each["lights"]]


def test_two_titles_within_the_same_minutes_are_two_lights() -> None:
    readings = [read(("Key", "Fill")[n % 2], 600 + n / 4) for n in range(12)]
    for setups in ("one", "title", "time"):
        for untitled in ("each", "time", "one"):
            found = lights(group(readings, setups=setups, untitled=untitled))
            assert dict(found) == {"Key": [0, 2, 4, 6, 8, 10], "Fill": [1, 3, 5, 7, 9, 11]}


def test_one_title_over_hours_is_one_light_with_its_readings_in_time() -> None:
    minutes = [900, 540, 720, 541, 1080]
    found = group([read("Bow window", one) for one in minutes])
    assert found["setups"] == "one"
    assert lights(found) == [("Bow window", [1, 3, 2, 0, 4])]
    assert found["groups"][0]["from"] == at(540)
    assert found["groups"][0]["to"] == at(1080)


def test_a_title_on_both_sides_of_a_pause_keeps_the_day_in_one_setup() -> None:
    day = [read("Bow window", 540), read("Stern window", 545), read("Bow window", 900)]
    assert group(day)["setups"] == "one"
    # Asked for, the setups part at the pause all the same.
    assert [len(one["lights"]) for one in group(day, setups="time")["groups"]] == [2, 1]


def test_other_titles_after_a_pause_are_proposed_as_another_setup() -> None:
    day = [read("Key", 540), read("Fill", 546), read("Deck key", 660), read("Deck fill", 668)]
    found = group(day)
    assert (found["setups"], found["pauses"]) == ("time", 1)
    assert found["ways"] == ["one", "title", "time"]
    assert [[one["title"] for one in each["lights"]] for each in found["groups"]] == [
        ["Key", "Fill"], ["Deck key", "Deck fill"],
    ]  # fmt: skip


@pytest.mark.parametrize(
    ("minutes", "pauses"),
    [
        ([600, 660, 720, 780], 0),  # a window every hour
        ([600, 601, 602, 640, 641], 1),
        ([600, 601, 602, 629, 630], 0),  # less than half an hour
        ([600, 620, 640, 695], 0),  # half an hour, but less than three times as long as usual
        ([600, 620, 640, 700], 1),
        ([600, 900], 1),
        ([600], 0),
    ],
)
def test_a_pause_is_long_and_longer_than_usual(minutes: list[float], pauses: int) -> None:
    assert group([{"at": at(one)} for one in minutes])["pauses"] == pauses


def test_what_has_no_title_is_parted_as_asked() -> None:
    day = [{"at": at(n)} for n in (600, 603, 700, 702)]
    day.insert(1, read("Key", 601))
    assert group(day)["untitled"] == 4
    assert lights(group(day, setups="one")) == [
        ("", [0]),
        ("Key", [1]),
        ("", [2]),
        ("", [3]),
        ("", [4]),
    ]
    assert lights(group(day, setups="one", untitled="time")) == [
        ("", [0]), ("Key", [1]), ("", [2]), ("", [3, 4]),
    ]  # fmt: skip
    assert lights(group(day, setups="one", untitled="one")) == [("", [0, 2, 3, 4]), ("Key", [1])]


def test_what_has_no_time_goes_with_its_title_or_stands_apart() -> None:
    day = [{"title": "Key"}, read("Fill", 540), read("Key", 700), {}]
    found = group(day, setups="time")["groups"]
    assert [(one["stretch"], one["lights"]) for one in found] == [
        (0, [{"title": "Fill", "readings": [1]}]),
        (1, [{"title": "Key", "readings": [2, 0]}]),
        (None, [{"title": "", "readings": [3]}]),
    ]


def test_zones_are_compared_as_moments() -> None:
    found = group([
        {"title": "Key", "at": "2026-10-27T10:30:00+02:00"},
        {"title": "Key", "at": "2026-10-27T10:00:00+01:00"},
        {"title": "Key", "at": "2026-10-27T08:00:00Z"},
    ])  # fmt: skip
    assert lights(found) == [("Key", [2, 0, 1])]


def test_every_reading_stands_in_one_light_and_no_light_has_two_titles() -> None:
    chance = random.Random(18)
    for _ in range(300):
        day: list[Plain] = []
        for _ in range(chance.randrange(40)):
            one: Plain = {}
            if chance.random() < 0.7:
                one["title"] = chance.choice(["Key", " key", "KEY", "Fill", "Edge"])
            if chance.random() < 0.8:
                one["at"] = at(chance.choice([chance.uniform(480, 1200), 600]))
            day.append(one)
        how = {"setups": chance.choice(["one", "title", "time"]),
               "untitled": chance.choice(["each", "time", "one"])}  # fmt: skip
        found = lights(group(day, **how))
        assert sorted(i for _, places in found for i in places) == list(range(len(day)))
        for _, places in found:
            assert len({day[i].get("title", "").strip().lower() for i in places}) == 1


def test_a_time_that_is_none_is_told_where_it_stands() -> None:
    found = group([read("Key", 540), {"title": "Key", "at": "noon"}])["problem"]
    assert found["field"] == "readings.1.at"
    assert "noon" in found["message"]
