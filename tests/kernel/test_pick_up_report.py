"""A pick-up's light is reported against itself as it was, and amounts against the chosen key."""

from __future__ import annotations

from typing import Any

from evenkelvin.desk import answer


def entry(thing: str, id_: str, parent: str | None, minute: int, **data: Any) -> dict[str, Any]:
    return {
        "id": id_, "at": f"2026-10-28T20:{minute:02d}:00+01:00", "thing": thing, "of": id_,
        "parent": parent, "after": [], "data": data,
    }  # fmt: skip


WHITE = {"cct_K": 5600, "duv": 0}
ENTRIES = [
    entry("production", "p", None, 0, name="The Night Ferry"),
    entry("location", "l", "p", 1, name="Car deck"),
    entry("setup", "then", "l", 2, name="3", target=WHITE),
    entry("light", "hmi", "then", 3, name="HMI", lamp="hmi"),
    entry("reading", "r1", "hmi", 4, cct_K=4300, duv=0, illuminance_lx=800, target=WHITE),
    entry("setup", "now", "l", 10, name="3, pick-up", target=WHITE, pickup_of="then", key="fill"),
    entry("light", "again", "now", 11, name="HMI", lamp="hmi", pickup_of="hmi", order=2),
    entry("light", "fill", "now", 12, name="fill", lamp="led", order=1),
    entry("reading", "r2", "again", 13, cct_K=4320, duv=0, illuminance_lx=800, target=WHITE),
    entry("reading", "r3", "fill", 14, cct_K=4300, duv=0, illuminance_lx=400, target=WHITE),
]


def slips(entries: list[dict[str, Any]]) -> dict[str, dict[str, Any]]:
    book = {"format": "evenkelvin-book", "version": 2, "entries": entries}
    report = answer({"ask": "report", "book": book, "of": "now"})
    (setup,) = report["setups"]
    return {slip["light"]: slip for slip in setup["slips"]}


def test_the_light_of_a_pick_up_is_measured_against_itself() -> None:
    found = slips(ENTRIES)
    assert found["again"]["verdict"] == "holds"
    assert abs(found["again"]["offset"]["mired"] - (1e6 / 4320 - 1e6 / 4300)) < 0.01
    # A light that is new on the day has only the white.
    assert found["fill"]["verdict"] == "out"
    assert abs(found["fill"]["offset"]["mired"] - (1e6 / 4300 - 1e6 / 5600)) < 0.01


def test_a_pick_up_of_a_pick_up_goes_back_to_the_latest_reading_there_is() -> None:
    unread = [one for one in ENTRIES if one["id"] != "r2"]
    again = [
        entry("light", "third", "now", 20, name="HMI", lamp="hmi", pickup_of="again"),
        entry("reading", "r4", "third", 21, cct_K=4300, duv=0),
    ]
    assert slips([*ENTRIES, *again])["third"]["offset"]["mired"] > 1  # as it was at r2
    assert abs(slips([*unread, *again])["third"]["offset"]["mired"]) < 0.01  # as it was at r1
    # A circle, which only a made-up book has, ends where it closes.
    circle = [one if one["id"] != "hmi" else {**one, "data": {**one["data"], "pickup_of": "third"}}
              for one in [*unread, *again]]  # fmt: skip
    assert slips(circle)["third"]["verdict"] == "holds"


def test_order_and_key_are_those_of_the_book() -> None:
    found = slips(ENTRIES)
    assert list(found) == ["fill", "again"]
    assert abs(found["again"]["stops_to_hero"] - 1.0) < 1e-9
    assert found["fill"]["stops_to_hero"] == 0.0
