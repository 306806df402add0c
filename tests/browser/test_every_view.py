"""Every view and print of a book that holds every kind of thing and field, under hard names.

What no other test had filled shows here: something that is no text, a name that is too long for the
page, a name that turns round the words after it (UAX #9, the Unicode bidirectional algorithm).
"""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import phone_with
from paper import lines_of
from places import VIEWS, open_all, visit
from playwright.sync_api import Browser, Page, expect
from pypdf import PdfReader

import complete_book

LOOKING = Path(__file__).parent / "looking.js"
#: What shows where something else than text was put on the page.
NO_TEXT = re.compile(r"\[?object Object|\bundefined\b|\bNaN\b|\bnull\b|\bInfinity\b|function \w*\(")

#: All that is read or spoken: text, what fields hold, labels, and the texts of pictures.
SHOWN = """() => [...document.querySelectorAll("body *")]
    .filter(e => !e.closest(".licence")).flatMap(e => [
    ...[...e.childNodes].filter(n => n.nodeType === 3).map(n => n.data),
    ...["aria-label", "alt", "title", "placeholder", "aria-description", "download"]
        .map(name => e.getAttribute(name) ?? ""),
    e.matches("input, textarea, select") ? e.value : "",
]).filter(words => words.trim() && words.length < 100000)"""

#: Words that follow a mark of direction which is still open, within one isolated run of text.
TURNED = """() => {
    const found = [];
    const isolates = e => getComputedStyle(e).unicodeBidi.match(/isolate|plaintext/)
        || !/^(inline|contents)$/.test(getComputedStyle(e).display);
    const walk = (e, run) => {
        for (const node of e.childNodes) {
            if (node.nodeType === 1 && !node.matches("script, style, select, textarea"))
                walk(node, isolates(node) ? {open: []} : run);
            if (node.nodeType !== 3) continue;
            for (const sign of node.data) {
                if (/[\\u202a\\u202b\\u202d\\u202e\\u2066-\\u2068]/.test(sign)) run.open.push(sign);
                else if (sign === "\\u202c") run.open.pop();
                else if (sign === "\\u2069") {
                    const at = run.open.findLastIndex(one => /[\\u2066-\\u2068]/.test(one));
                    if (at >= 0) run.open.length = at;
                } else if (run.open.includes("\\u202e") && run.node !== node && sign.trim())
                    found.push(node.data.trim().slice(0, 60) + " in " + e.outerHTML.slice(0, 80));
                if (sign === "\\u202e") run.node = node;
            }
            // Within one text: whatever is not the name itself.
            const [, after] = node.data.split("siht");
            if (after?.trim() && !/^[\\u202c\\u2069]/.test(after))
                found.push("same text: " + node.data.trim().slice(0, 80));
        }
    };
    walk(document.body, {open: []});
    return [...new Set(found)];
}"""


@pytest.fixture(scope="module")
def page(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """The app with the complete book, brought in by the door for books."""
    with phone_with(
        phone_browser,
        dist,
        complete_book.book(),
        complete_book.SETUP,
        has_touch=True,
        accept_downloads=True,
    ) as page:
        page.add_init_script(path=LOOKING)
        page.evaluate(LOOKING.read_text())
        yield page


def things(*kinds: str) -> list[str]:
    return sorted({e["of"] for e in complete_book.entries() if e["thing"] in kinds} - {"lost"})


#: Every view of everything in the book.
ADDRESSES = [
    *(name for name in VIEWS if name not in ("copy", "setup", "reading", "since")),
    *(f"setup/{id_}" for id_ in things("setup")),
    *(f"reading/{id_}" for id_ in things("reading")),
    *(f"since/{id_}" for id_ in things("light")),
    *(f"report/{id_}" for id_ in things("production", "location", "setup")),
    *(f"share/{id_}" for id_ in things("production", "location", "setup", "light")),
    *(f"{view}/{id_}" for id_ in things("location") for view in ("sun", "windows")),
    *(f"{view}/{complete_book.PANEL}" for view in ("dial", "mix", "spectrum")),
    f"spectrum/{complete_book.KEY}",
    f"pair/{complete_book.KEY}/{complete_book.PANEL}",
    *(f"order/{scope}" for scope in ("setup", "location", "book")),
]


def settle(page: Page, address: str) -> None:
    visit(page, address)
    open_all(page)
    expect(page.locator("main [aria-busy=true]")).to_have_count(0)


def complaints(page: Page, place: str) -> list[str]:
    found = [f"{place}: {words[:90]}" for words in page.evaluate(SHOWN) if NO_TEXT.search(words)]
    found += [f"{place}: {one}" for one in page.evaluate("looking.room()")]
    found += [f"{place}: turned: {one}" for one in page.evaluate(TURNED)]
    return found


def test_everything_is_shown_as_text_within_the_page_and_turns_nothing_round(page: Page) -> None:
    found = []
    for address in ADDRESSES:
        settle(page, address)
        found += complaints(page, address)
        name = address.partition("/")[0]
        if name == "reading":
            page.get_by_role("button", name="Change").click()
            open_all(page)
            found += complaints(page, f"{address}, changed")
            page.get_by_role("button", name="Cancel").click()
        if name in ("report", "balance"):
            page.emulate_media(media="print")
            found += complaints(page, f"{address}, printed")
            page.emulate_media(media="null")
    assert found == [], "\n" + "\n".join(found)


def test_daylight_behind_a_cut_list_is_counted_with_it_and_not_as_a_lamp(page: Page) -> None:
    settle(page, "order/location")
    told = page.locator("ek-order .answer .hint", has_text="daylight through the windows")
    expect(told).to_contain_text(complete_book.ARABIC)
    assert complete_book.ARABIC not in page.get_by_test_id("order").inner_text()


def test_the_report_tells_place_position_and_photo_of_each_reading(page: Page) -> None:
    settle(page, f"report/{complete_book.SETUP}")
    key = page.locator(".slip", has=page.get_by_role("heading", name=complete_book.UNBROKEN))
    row = key.locator("tr.beside").first
    expect(row).to_contain_text(complete_book.UNBROKEN)  # the place
    expect(row).to_contain_text("54.00021, 8.50043 (±12 m)")
    expect(key.get_by_role("img", name="Photo")).to_have_count(1)


def test_columns_of_the_report_stand_under_each_other_and_page_one_is_filled(page: Page) -> None:
    settle(page, f"report/{complete_book.SETUP}")
    expect(page.locator("ek-report .slip table").nth(3)).to_be_visible()
    edges = page.locator("ek-report .slip table").evaluate_all(
        """tables => tables.map(table => [...table.querySelectorAll("thead th")]
            .map(cell => Math.round(cell.getBoundingClientRect().left)).join())"""
    )
    assert len(edges) > 3
    assert len(set(edges)) == 1


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_on_paper_page_one_is_filled_and_headings_stay_with_their_lists(
    page: Page, paper: str
) -> None:
    settle(page, f"report/{complete_book.SETUP}")
    sheets = [lines_of(sheet) for sheet in PdfReader(io.BytesIO(page.pdf(format=paper))).pages]
    assert len(sheets) > 1
    # The last line of page 1 stands in its lowest quarter.
    assert sheets[0][-1][0] < 0.25, sheets[0][-1]
    # A name that a note has too would be taken for its heading.
    rest = page.locator("ek-report .sheet :is(td, p)").all_inner_texts()
    headings = {
        heading
        for heading in page.locator("ek-report .sheet :is(h2, h3)").all_inner_texts()
        if not any(heading in text for text in rest)
    }
    assert headings >= {"Lights", "Panel 1.5"}
    assert "Cautions" in [text for lines in sheets for _, text in lines]
    for lines in sheets:
        assert lines[-1][1] not in headings
