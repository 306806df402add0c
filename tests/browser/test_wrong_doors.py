"""A file at the wrong door is sent to the right one, or refused by its own kind."""

from __future__ import annotations

import json
import re

import pytest
from places import visit
from playwright.sync_api import Page, expect

import complete_book

BOOK = json.dumps(complete_book.book()).encode()
TABLE = b"name,x,y,CCT (K)\nkey,0.3810,0.3770,4000\n"
JPEG = b"\xff\xd8\xff\xe0\x00\x10JFIF" + bytes(200)


@pytest.fixture
def page(shared: Page) -> Page:
    return shared


def give(page: Page, field: str, raw: bytes, name: str = "file") -> None:
    file = {"name": name, "mimeType": "", "buffer": raw}
    page.locator(field).set_input_files(file)


def test_a_book_under_light_leads_to_the_visitors_copy(page: Page) -> None:
    visit(page, "files")
    give(page, "#more-files", BOOK, "book.json")
    expect(page.locator("ek-receive")).to_be_visible()
    expect(page.get_by_role("button", name="Add to my book")).to_be_visible()
    visit(page, "files")
    expect(page.locator("ek-files .in-file")).to_have_count(0)


def test_a_book_that_was_cut_off_says_so_and_is_no_spectrum(page: Page) -> None:
    visit(page, "files")
    give(page, "#more-files", BOOK[: len(BOOK) // 3], "book.json")
    expect(page.locator("ek-receive .problem").first).to_contain_text("cut on the way")


def test_readings_at_the_door_for_books_are_looked_at_as_readings(page: Page) -> None:
    visit(page, "receive")
    give(page, "#receive-file", TABLE, "lights.csv")
    expect(page.locator("ek-files .in-file")).to_contain_text("lights.csv")
    expect(page.locator("ek-files .found")).to_contain_text("key")


@pytest.mark.parametrize(
    ("raw", "words"),
    [
        (JPEG, "a picture"),
        (b"", "empty"),
        (b"%PDF-1.7\n", "a PDF"),
        (b"<!doctype html>", "web page"),
    ],
)
@pytest.mark.parametrize("place", ["receive", "files"])
def test_what_is_neither_is_called_by_its_kind(
    page: Page, place: str, raw: bytes, words: str
) -> None:
    visit(page, place)
    give(page, {"receive": "#receive-file", "files": "#more-files"}[place], raw)
    told = page.locator(f"ek-{place} .problem").last
    expect(told).to_contain_text(words)
    assert "link" not in told.inner_text()


def test_the_apps_own_table_comes_back_with_its_lamp_and_gel(page: Page) -> None:
    visit(page, "receive")
    table = (
        b"date,light,lamp,x,y,CCT (K),gels,note\n"
        b'2026-10-28,\'=hall,tungsten,0.3866,0.3850,3900,1/4 CTB,"two\nlines"\n'
    )
    give(page, "#receive-file", table, "book.csv")
    expect(page.locator("ek-files .found li")).to_have_count(1)
    page.get_by_role("button", name=re.compile("^Keep it in ")).click()
    slip = page.locator(".slip", has_text="=hall")
    expect(slip).to_contain_text("1/4 CTB")
    visit(page, "book")
    page.locator("main a[href^='#setup/']").first.click()
    page.locator("main a[href^='#reading/']").first.click()
    facts = page.locator("ek-reading .facts")
    expect(facts).to_contain_text("Tungsten")
    expect(facts).to_contain_text("1/4 CTB")
