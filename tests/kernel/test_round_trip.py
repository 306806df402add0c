"""Whatever the app writes it reads back: tables of both kinds, TM-27, the book, a link, codes."""

from __future__ import annotations

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import complete_book
from evenkelvin.desk import answer
from evenkelvin.problem import Problem
from examples import examples

ENTRIES = complete_book.entries()
BOOK = {"format": "evenkelvin-book", "version": 2, "entries": ENTRIES}
#: Names that a table, a spreadsheet or XML could trip over.
HARD_NAMES = [*complete_book.NAMES, "=1+1", "-x", "'quoted", 'a "b" c', "a;b,c|d", "<b>&amp;", "x"]
names = st.one_of(
    st.sampled_from(HARD_NAMES),
    st.text(st.characters(exclude_categories=["C"]), min_size=1, max_size=40),
)


def asked(**request: Any) -> dict[str, Any]:
    found = answer(request)
    if "problem" in found:
        raise Problem(**found["problem"])
    return found


def said(name: str) -> str:
    return " ".join(name.split())[:80]


@pytest.mark.parametrize("style", ["comma", "semicolon"])
def test_the_table_of_a_book_gives_its_readings_back(style: str) -> None:
    table = asked(ask="book_csv", book=BOOK, style=style)["text"]
    found = asked(ask="import", text=table)
    assert (found["spectra"], found["questions"]) == ([], [])
    logged = asked(ask="report", book=BOOK, of=complete_book.PRODUCTION)
    rows = [
        (said(slip["name"]), each)
        for setup in logged["setups"]
        for slip in setup["slips"]
        for each in slip["readings"]
    ]
    coloured = [(name, each) for name, each in rows if each["x"] is not None]
    # A reading without a colour is none here, and said to be none.
    assert len(found["problems"]) == len(rows) - len(coloured)
    back = {(each["name"], round(each["x"], 4), round(each["y"], 4)) for each in found["readings"]}
    assert back == {(name, round(each["x"], 4), round(each["y"], 4)) for name, each in coloured}
    assert all(each["white"] and not each["problem"] for each in found["readings"])
    for name in ("illuminance_lx", "exposure_lx_s"):
        amounts = {float(f"{each[name]:.6g}") for _, each in coloured if each[name] is not None}
        assert {each[name] for each in found["readings"] if name in each} == amounts
    for name in ("ra", "r9"):
        typed = {float(one["data"][name]) for one in complete_book.entries() if name in one["data"]}
        assert typed
        assert {each[name] for each in found["readings"] if name in each} == typed
    gels = {tuple(each["pack"]) for _, each in coloured if each["pack"]}
    assert {tuple(each["pack"]) for each in found["readings"] if "pack" in each} == gels


SPECTRA = st.lists(
    st.fixed_dictionaries(
        {
            "name": names,
            "quantity": st.sampled_from(["light", "transmittance", "reflectance"]),
            "step": st.sampled_from([5, 10]),
            "slope": st.floats(-1, 1),
        }
    ),
    min_size=1,
    max_size=3,
    unique_by=lambda one: said(one["name"]),
)


@settings(deadline=None, max_examples=examples(40))
@given(SPECTRA)
def test_written_spectra_read_back(drawn: list[dict[str, Any]]) -> None:
    spectra = []
    for one in drawn:
        nm = list(range(380, 781, one["step"]))
        values = [round(0.5 + 0.4 * one["slope"] * (n - 580) / 200, 6) for n in nm]
        spectra.append(
            {"name": one["name"], "quantity": one["quantity"], "wavelengths_nm": nm,
             "values": values}
        )  # fmt: skip
    for style in ("csv", "tm27"):
        files = asked(ask="write", format=style, spectra=spectra)["files"]
        back = [
            found for file in files for found in asked(ask="import", text=file["text"])["spectra"]
        ]
        assert len(back) == len(spectra)
        for place, (found, wanted) in enumerate(zip(back, spectra, strict=True), 1):
            # A column without a name among others is told by its place.
            named = {said(wanted["name"])} if said(wanted["name"]) else {"", f"spectrum {place}"}
            assert found["name"] in named, style
            assert found["wavelengths_nm"] == wanted["wavelengths_nm"]
            assert found["values"] == pytest.approx(wanted["values"], abs=1e-12)
            assert found["quantity"] == wanted["quantity"]


def test_the_book_reads_back_as_a_file_a_link_and_codes() -> None:
    first = asked(ask="book_check", book=BOOK, give="text")
    again = asked(ask="book_check", book=first["text"], give="book")
    assert again["sha256"] == first["sha256"]
    link = asked(ask="book_link", book=BOOK)["link"]
    assert asked(ask="open_link", link=link)["sha256"] == first["sha256"]
    parts = asked(ask="book_parts", book=BOOK)["parts"]
    assert asked(ask="join_parts", parts=parts[::-1])["sha256"] == first["sha256"]
