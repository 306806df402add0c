"""What is printed of a long book: report, setup, cut list and order, on A4 and on Letter."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from conftest import phone_with
from paper import lines_of
from places import visit
from playwright.sync_api import Browser, Page, expect
from pypdf import PdfReader

import long_sheet

#: Room above what is printed, so that the pages break elsewhere, in CSS px.
ABOVE = {"A4": (0, 290), "Letter": (130, 470)}
#: What begins a picture, which is never cut in two and so may leave a page less full.
PICTURE = re.compile(r"↑ green|Roll \d+:")
SETUPS = {f"{n} {name}" for n, name in enumerate(long_sheet.SETUPS, 1)}
PRINTED = (
    f"report/{long_sheet.PRODUCTION}",
    f"report/{long_sheet.HALL}",
    f"report/{long_sheet.SETUPS[0]}",
    f"windows/{long_sheet.HALL}",
    "order/location",
)


@pytest.fixture(scope="module")
def page(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """The app with the long book, brought in by the door for books."""
    with phone_with(
        phone_browser, dist, long_sheet.book(), long_sheet.SETUPS[0], has_touch=True
    ) as page:
        yield page


def open_to_print(page: Page, address: str) -> None:
    visit(page, address)
    expect(page.locator("main [aria-busy=true]")).to_have_count(0)
    expect(page.get_by_role("button", name="Print or save as PDF")).to_be_enabled()
    expect(page.locator("main progress")).to_have_count(0)


def sheets_of(page: Page, paper: str, above: int = 0) -> list[list[tuple[float, str]]]:
    """The lines of every page, printed with so much room above the first."""
    page.evaluate("px => { document.querySelector('main').style.paddingTop = `${px}px` }", above)
    try:
        pdf = PdfReader(io.BytesIO(page.pdf(format=paper)))
    finally:
        page.evaluate("document.querySelector('main').style.paddingTop = ''")
    return [lines_of(sheet) for sheet in pdf.pages]


def plain(words: str) -> str:
    """Words without blanks, and a heading without the number before it."""
    return re.sub(r"^\d+", "", re.sub(r"\W", "", words))


def complaints(sheets: list[list[tuple[float, str]]], heads: set[str]) -> list[str]:
    """Say which pages end with what should stand before something, or are left too empty."""
    found = []
    for n, (lines, after) in enumerate(zip(sheets, [*sheets[1:], None], strict=True), 1):
        height, foot = lines[-1]
        if after is None:
            continue
        if plain(foot) in heads:
            found.append(f"page {n} ends with {foot!r}")
        begins = after[0][1]
        if height > 1 / 3 and begins not in SETUPS and not PICTURE.search(begins):
            found.append(f"page {n} ends at {height:.2f} of its height with {foot!r}")
    return found


@pytest.mark.parametrize("paper", ["A4", "Letter"])
@pytest.mark.parametrize("address", PRINTED)
def test_no_page_ends_with_a_heading_or_is_left_empty(page: Page, address: str, paper: str) -> None:
    open_to_print(page, address)
    heads = page.locator("main :is(h1, h2, h3, summary, .slip thead tr, .slip > p)")
    words = {plain(text) for text in heads.all_text_contents() if plain(text)}
    # Notes of a setup stand alone as well; what a light's row says is no heading.
    words -= {plain(text) for text in page.locator("article > p, td").all_text_contents()}
    assert len(words) > 2
    found: list[Any] = []
    for above in ABOVE[paper]:
        sheets = sheets_of(page, paper, above)
        found += [(above, one) for one in complaints(sheets, words)]
    assert found == [], "\n".join(f"{above} px above: {one}" for above, one in found)


@pytest.mark.parametrize("address", ["report/hall", "windows/hall", "order/location"])
def test_paper_bears_the_answer_and_nothing_to_touch(page: Page, address: str) -> None:
    open_to_print(page, address)
    # A line that has just been said covers nothing on paper.
    page.evaluate("location.hash = '#windows/hall'")
    page.locator("#windows-0-name").fill(f"Fill, pane 1 for {address}")
    page.get_by_role("button", name="Keep with the location").click()
    expect(page.locator(".toast.shown")).to_be_visible()
    open_to_print(page, address)
    page.emulate_media(media="print")
    expect(page.locator(".toast")).to_be_hidden()
    touch = page.locator("ek-shell :is(button, input, select, textarea, a[href], .segments)")
    shown = [one.evaluate("e => e.outerHTML") for one in touch.all() if one.is_visible()]
    page.emulate_media(media="null")  # what is printed is print again
    assert shown == []
    text = " ".join(line for sheet in sheets_of(page, "A4") for _, line in sheet)
    for words in {
        "report": ("Batten 1 over the queue", "Cautions", "full CTO"),
        "windows": ("36 rolls of 1.22", "8 of 1.2 × 1.8 m, Fill, pane 2", "Roll 12"),
        "order": ("full CTO: 20 of 1.22", "Hangs: 72 of 1.2 × 1.8 m"),
    }[address.partition("/")[0]]:
        assert words in text, words


def test_a_setup_printed_from_the_book_bears_its_lights_and_nothing_to_do(page: Page) -> None:
    visit(page, f"setup/{long_sheet.SETUPS[0]}")
    page.emulate_media(media="print")
    buttons = page.locator("ek-setup button")
    shown = [one.inner_text() for one in buttons.all() if one.is_visible()]
    page.emulate_media(media="null")
    assert shown == []
    text = " ".join(line for sheet in sheets_of(page, "A4") for _, line in sheet)
    assert long_sheet.NAMES[0] in text
    for words in ("With this setup", "pin it to the home screen", "A new surface", "Change"):
        assert words not in text
