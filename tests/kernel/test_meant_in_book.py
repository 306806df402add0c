"""What lights of a book are meant to be: in its report, table, link and history."""

from __future__ import annotations

import csv
import io
import json
from typing import Any

import pytest

from evenkelvin.desk import answer

AT = "2026-11-25T19:42:10+01:00"
WHITE = {"cct_K": "5600", "duv": "0"}
CURTAIN = {
    "name": "curtain",
    "wavelengths_nm": [400, 550, 700],
    "transmittance": [0.2, 0.5, 0.8],
}


def entry(id_: str, thing: str, parent: str | None, **data: Any) -> dict[str, Any]:
    return {
        "id": f"e-{id_}", "at": AT, "thing": thing, "of": id_, "parent": parent, "after": [],
        "data": data,
    }  # fmt: skip


def book(*lights: tuple[str, Any, dict[str, Any]]) -> dict[str, Any]:
    entries = [
        entry("l", "location", None, name="Ticket hall"),
        entry("s", "setup", "l", name="wide", target=WHITE),
        entry("g", "gel", None, **CURTAIN),
    ]
    for id_, meant, reading in lights:
        data = {"name": id_} | ({"meant": meant} if meant is not None else {})
        entries.append(entry(id_, "light", "s", **data))
        entries.append(entry(f"r-{id_}", "reading", id_, target=WHITE, **reading))
    return {"format": "evenkelvin-book", "version": 2, "entries": entries}


KEY = {"x": "0.3302", "y": "0.3411"}
WARM = {"x": "0.4587", "y": "0.4119", "lamp": "tungsten"}
BOOK = book(
    ("key", None, KEY),
    ("practical", {"warmer_mired": "190"}, WARM),
    ("sign", {"as": "found"}, {"x": "0.53", "y": "0.415"}),
    ("back", {"like": "key"}, {"x": "0.3305", "y": "0.3414"}),
    ("window", {"as_through": ["curtain"], "gel_ids": ["g"]}, {"x": "0.36", "y": "0.37"}),
    ("pick-up", {"like": {"x": 0.4590, "y": 0.4120}}, WARM),
)


def slips(of: dict[str, Any]) -> dict[str, dict[str, Any]]:
    report = answer({"ask": "report", "book": of, "of": "s"})
    assert "problem" not in report, report
    return {slip["light"]: slip for slip in report["setups"][0]["slips"]}


def test_a_report_judges_each_light_by_what_it_is_meant_to_be() -> None:
    found = slips(BOOK)
    assert {id_: slip["meant"] for id_, slip in found.items()} == {
        "key": None,
        "practical": "190 mired warmer than the white",
        "sign": "as found",
        "back": "like key",
        "window": "the white through curtain",
        "pick-up": "like the reading it is to match",
    }
    assert found["practical"]["verdict"] == "holds"
    assert found["practical"]["offset"]["words"] == "2 mired cooler than meant, a hair green"
    assert found["sign"]["verdict"] is None
    assert found["sign"]["offset"] is None
    assert found["back"]["target"]["x"] == pytest.approx(0.3302)
    assert found["pick-up"]["verdict"] == "holds"
    assert found["window"]["target"]["mired"] > 1e6 / 5600 + 50
    assert slips(book(("practical", None, WARM)))["practical"]["verdict"] == "out"


def test_the_field_of_a_report_can_be_asked_as_it_stands() -> None:
    report = answer({"ask": "report", "book": BOOK, "of": "s"})["setups"][0]
    field = answer(report["field"])
    assert "problem" not in field, field
    assert [ring["lights"] for ring in field["targets"]] == [[1], [0], [2], [3], [5]]
    assert field["lights"][4]["target"] is None


@pytest.mark.parametrize("meant", [{"warmer_mired": "a lot"}, {"like": "gone"}, {"as": "?"}])
def test_a_meaning_that_cannot_be_read_stops_nothing(meant: Any) -> None:
    found = slips(book(("key", None, KEY), ("fill", meant, KEY)))
    assert found["key"]["verdict"] == "holds"
    assert found["fill"]["verdict"] is None
    assert found["fill"]["meant"] is None
    report = answer({"ask": "report", "book": book(("fill", meant, KEY)), "of": "s"})
    assert "problem" not in answer(report["setups"][0]["field"])


def test_without_a_white_a_meaning_is_still_said() -> None:
    of = book(("practical", {"warmer_mired": 60}, WARM))
    for each in of["entries"]:
        each["data"].pop("target", None)
    slip = slips(of)["practical"]
    assert slip["meant"] == "60 mired warmer than the white"
    assert slip["target"] is None


def test_the_table_says_what_each_light_is_meant_to_be() -> None:
    text = answer({"ask": "book_csv", "book": BOOK})["text"]
    rows = {row["light"]: row["meant"] for row in csv.DictReader(io.StringIO(text))}
    assert rows["key"] == ""
    assert rows["practical"] == "190 mired warmer than the white"
    assert rows["sign"] == "as found"
    assert rows["window"] == "the white through curtain"
    odd = book(("fill", {"warmer_mired": "=1+1"}, KEY))
    assert "warmer_mired =1+1" in answer({"ask": "book_csv", "book": odd})["text"]


def test_a_setup_takes_along_what_its_lights_are_meant_to_be() -> None:
    link = answer({"ask": "book_link", "book": BOOK, "of": "s"})["link"]
    opened = answer({"ask": "open_link", "link": link})
    assert "problem" not in opened, opened
    assert opened["things"]["gel"] == 1
    back = slips(opened["book"])
    for id_, slip in slips(BOOK).items():
        assert back[id_]["meant"] == slip["meant"]
        assert back[id_]["verdict"] == slip["verdict"]


def test_history_tells_where_a_light_stood_to_what_was_meant() -> None:
    (series,) = answer({"ask": "since", "book": BOOK, "lights": ["practical"]})["series"]
    standing = series["points"][0]["standing"]
    assert standing["meant"] == "190 mired warmer than the white"
    assert standing["verdict"] == "holds"
    (series,) = answer({"ask": "since", "book": BOOK, "lights": ["sign"]})["series"]
    assert series["points"][0]["standing"] is None
    assert series["points"][0]["drift"]["verdict"] is None
    readings = [WARM | {"at": AT, "target": WHITE, "meant": {"warmer_mired": 150}}]
    (series,) = answer({"ask": "since", "readings": readings})["series"]
    assert series["points"][0]["standing"]["verdict"] == "out"


@pytest.mark.parametrize(
    ("meant", "words"),
    [
        ("warm", "a group of values"),
        ({"as_through": "1/2 CTB"}, "a list"),
        ({"like": 3}, "the id of a light, or a reading"),
        ({"warmer_mired": [1]}, "a number or text"),
    ],
)
def test_the_schema_names_what_cannot_be_kept(meant: Any, words: str) -> None:
    problem = answer({"ask": "book_check", "book": book(("key", meant, KEY))})["problem"]
    assert "meant" in problem["message"]
    assert words in problem["message"]


def test_an_old_book_opens_and_reads_as_it_did() -> None:
    old = json.loads(json.dumps(BOOK))
    for each in old["entries"]:
        each["data"].pop("meant", None)
    assert answer({"ask": "book_check", "book": old})["things"]["light"] == 6
    assert {slip["verdict"] for slip in slips(old).values()} == {"holds", "out"}


def test_a_link_to_one_setup_takes_along_what_its_lights_are_meant_to_match() -> None:
    """Only those lights, each with its latest reading: nothing else of their setups."""
    whole = BOOK["entries"] + [
        entry("t", "setup", "l", name="wide, pick-up", target=WHITE),
        entry("key-again", "light", "t", name="key", pickup_of="key"),
        entry("r-key-again", "reading", "key-again", target=WHITE, x="0.3500", y="0.3600"),
        entry("rim", "light", "t", name="rim", meant={"like": "practical"}),
        entry("r-rim", "reading", "rim", target=WHITE, x="0.4580", y="0.4118"),
        {**entry("r-old", "reading", "key", **KEY), "at": "2026-11-24T19:42:10+01:00"},
    ]
    one = {**BOOK, "entries": whole}
    link = answer({"ask": "book_link", "book": one, "of": "t"})
    assert "problem" not in link, link
    assert link["title"] == "Ticket hall · wide, pick-up"
    read = answer({"ask": "open_link", "link": link["link"]})["book"]
    of = {each["of"] for each in read["entries"]}
    matched = {"key", "r-key", "practical", "r-practical"}
    assert of == {"l", "t", "key-again", "r-key-again", "rim", "r-rim"} | matched

    def told(book_: Any) -> list[Any]:
        report = answer({"ask": "report", "book": book_, "of": "t"})
        return [(one["offset"], one["verdict"]) for one in report["setups"][0]["slips"]]

    assert told(read) == told(one)
    assert [verdict for _, verdict in told(read)] == ["out", "holds"]
