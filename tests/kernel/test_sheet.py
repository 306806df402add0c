"""The table opens in a spreadsheet as it is, and nothing in it runs."""

from __future__ import annotations

import csv
import io
import re
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import complete_book
from evenkelvin.book.sheet import COLUMNS, STYLES, write_csv
from evenkelvin.desk import answer
from evenkelvin.interchange.csv_text import defused
from examples import examples

AT = "2026-11-25T19:42:10.123+01:00"
#: OWASP, 'CSV Injection': the characters that start a formula.
FORMULA = ("=", "+", "-", "@", "\t", "\r")


def entry(id_: str, thing: str, parent: str | None, **data: Any) -> dict[str, Any]:
    return {
        "id": id_, "at": AT, "thing": thing, "of": id_, "parent": parent, "after": [], "data": data,
    }  # fmt: skip


def book(**reading: Any) -> list[dict[str, Any]]:
    return [
        entry("p", "production", None, name="The Night Ferry"),
        entry("l", "location", "p", name="Ticket hall"),
        entry("s", "setup", "l", name="=2+3"),
        entry("k", "light", "s", name="key", lamp="led"),
        entry("r", "reading", "k", **reading),
    ]


def rows(text: str, style: str) -> list[dict[str, str]]:
    assert text.startswith("\ufeff")
    separator = {"comma": ",", "semicolon": ";"}[style]
    table = list(csv.reader(io.StringIO(text[1:], newline=""), delimiter=separator))
    assert all(len(row) == len(COLUMNS) for row in table)
    return [dict(zip(table[0], row, strict=True)) for row in table[1:]]


@pytest.mark.parametrize(("style", "x"), [("comma", "0.4215"), ("semicolon", "0,4215")])
def test_a_reading_is_a_row_with_the_decimal_sign_of_the_place(style: str, x: str) -> None:
    (row,) = rows(write_csv(book(x="0,4215", y=0.4022, stage="bare"), style), style)
    assert (row["x"], row["stage"], row["light"], row["lamp"]) == (x, "bare", "key", "led")
    assert (row["date"], row["time"], row["zone"]) == ("2026-11-25", "19:42:10", "UTC+01:00")
    assert row["location"] == "Ticket hall"
    assert row["setup"] == "'=2+3"
    assert abs(int(row["CCT (K)"]) - 3262) < 1


def test_a_negative_duv_stays_a_number() -> None:
    (row,) = rows(write_csv(book(cct_K="4200", duv="-0,003"), "semicolon"), "semicolon")
    assert (row["Duv"], row["CCT (K)"]) == ("-0,0030", "4200")
    assert row["x"].startswith("0,37")


@pytest.mark.parametrize("odd", [{}, {"x": "abc", "y": "0.4"}, {"x": 2, "y": 3}, {"cct_K": "9"}])
def test_a_reading_that_says_no_colour_still_has_its_row(odd: dict[str, Any]) -> None:
    (row,) = rows(write_csv(book(**odd, illuminance_lx="941", note="n")), "comma")
    assert (row["x"], row["CCT (K)"], row["illuminance (lx)"], row["note"]) == ("", "", "941", "n")


def test_deleted_readings_are_left_out_and_double_edits_are_marked() -> None:
    entries = book(note="one")
    other = {**entries[-1], "id": "r2", "of": "r", "after": ["r"], "data": {"note": "two"}}
    third = {**other, "id": "r3", "data": {"note": "three"}}
    gone = {**entry("g", "reading", "k"), "gone": True}
    table = rows(write_csv([*entries, other, third, gone]), "comma")
    assert [(row["note"], row["edited in two places"]) for row in table] == [
        ("two", "yes"),
        ("three", "yes"),
    ]


def test_a_reading_whose_light_is_not_in_the_book_has_its_row() -> None:
    (row,) = rows(write_csv(book(note="n")[-1:]), "comma")
    assert (row["light"], row["note"]) == ("", "n")


@settings(deadline=None, max_examples=examples(200))
@given(
    st.builds(str.__add__, st.sampled_from(["", " ", *FORMULA, "＝", "\n="]), st.text(max_size=20)),
    st.sampled_from(["comma", "semicolon"]),
)
def test_no_text_cell_starts_a_formula_and_every_text_survives(text: str, style: str) -> None:
    text = text.replace("\x00", "")
    entries = book(note=text, lamp=text, pack=[text], dialled=text)
    (row,) = rows(write_csv(entries, style), style)
    for column in ("note", "lamp", "gels", "dialled", "setup"):
        assert not row[column].startswith(FORMULA)
        assert not row[column].lstrip().startswith(FORMULA)
    assert row["note"].removeprefix("'") == text or row["note"] == text


@pytest.mark.parametrize("cell", ["=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", " =1", "＝1"])
def test_what_could_run_is_defused(cell: str) -> None:
    assert defused(cell) == f"'{cell}"


@pytest.mark.parametrize("cell", ["", "key", "1/2 CTO", "a=b", "3200"])
def test_what_cannot_run_is_left_as_it_is(cell: str) -> None:
    assert defused(cell) == cell


def test_place_and_position_of_a_reading_are_in_its_row() -> None:
    where = {"latitude": 54.00021, "longitude": -8.5, "accuracy_m": 12}
    (row,) = rows(write_csv(book(place="upper level", position=where), "semicolon"), "semicolon")
    assert (row["place"], row["latitude"], row["longitude"]) == (
        "upper level", "54,00021", "-8,50000",
    )  # fmt: skip


@pytest.mark.parametrize("odd", [None, "54 N", {}, {"latitude": "x"}, {"latitude": 99}, [1, 2]])
def test_a_position_that_is_none_leaves_its_cells_empty(odd: Any) -> None:
    (row,) = rows(write_csv(book(position=odd), "comma"), "comma")
    assert (row["latitude"], row["longitude"]) == ("", "")


@pytest.mark.parametrize("style", ["comma", "semicolon"])
def test_a_surface_is_a_table_of_its_points(style: str) -> None:
    got = answer({"ask": "book_csv", "book": complete_book.book(), "of": "screen", "style": style})
    separator, decimal = STYLES[style]
    rows = list(csv.reader(io.StringIO(got["text"].removeprefix("\ufeff")), delimiter=separator))
    assert rows[0] == [as_cell for as_cell in rows[0] if as_cell]
    assert len(rows[0]) == len(got["columns"]) == 10
    first = [cell.replace(decimal, ".") for cell in rows[1]]
    assert first[:6] == ["1", "0.25", "0.5", "0.2912", "0.5804", "412"]
    assert first[7:] == ["300", "290", "398"]
    assert rows[2][6:] == ["48", "120", "110", ""]


def test_what_is_typed_at_a_point_runs_in_no_spreadsheet() -> None:
    book = complete_book.book()
    screen = next(each for each in book["entries"] if each["id"] == "screen")
    screen["data"]["points"][0]["illuminance_lx"] = "=2+2"
    screen["data"]["lamps"][0]["name"] = "=cmd"
    got = answer({"ask": "book_csv", "book": book, "of": "screen"})
    assert not re.search(r"(^|,)\"?=", got["text"], re.M)
