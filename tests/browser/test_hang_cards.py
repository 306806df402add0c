"""Hang cards: what to do at each lamp, the reading typed right there, planned beside measured.

And what a visitor sees first of a setup that was shared: how each light stands and what hangs.
"""

from __future__ import annotations

import io
import re

import pytest
import zxingcpp
from hands import copied_link, go, headline, keep_light, share_by_clipboard, visitor
from PIL import Image
from playwright.sync_api import Locator, Page, expect
from pypdf import PdfReader

from evenkelvin.desk import answer

#: Lights of our own scenario, with where they stand: two are too warm, one holds.
HALL = [
    ("key", "0.3810", "0.3770", "balcony"),
    ("fill", "0.3850", "0.3800", "hall floor"),
    ("panel 1", "0.3300", "0.3410", "balcony"),
]

#: Six lights of one setup.
SIX = [
    ("key", "0.3810", "0.3770"), ("fill", "0.3850", "0.3800"), ("batten 1", "0.3760", "0.3860"),
    ("batten 2", "0.3740", "0.3870"), ("practical", "0.4590", "0.4100"),
    ("window", "0.3050", "0.3230"),
]  # fmt: skip


@pytest.fixture
def hung(app: Page) -> Page:
    """The lights are read, the cards are open."""
    app.evaluate("location.hash = '#kit'")
    go(app, "Light")
    for name, x, y, place in HALL:
        app.locator("#log-place").evaluate("field => { field.closest('details').open = true; }")
        app.locator("#log-place").fill(place)
        keep_light(app, name, x, y)
    go(app, "Set")
    expect(headline(app)).to_be_visible()
    # By the keyboard: answers that come meanwhile move the page under a finger.
    app.get_by_role("link", name="Hang cards").press("Enter")
    expect(card(app, "key").locator(".hang")).not_to_be_empty()
    return app


def card(page: Page, name: str) -> Locator:
    return page.locator(".card", has=page.get_by_role("heading", name=name, exact=True))


def test_cards_stand_by_place(hung: Page) -> None:
    expect(hung.locator("ek-hang h2")).to_have_text(["balcony", "hall floor"])
    expect(hung.locator("ek-hang h3")).to_have_text(["key", "panel 1", "fill"])


def test_what_hangs_is_read_on_its_card_and_stands_beside_the_plan(hung: Page) -> None:
    wanted = card(hung, "key").locator(".planned").inner_text()
    card(hung, "key").get_by_role("button", name="key is hung: read it now").click()
    expect(hung.locator("#hang-x")).to_be_focused()
    hung.keyboard.type("3312")
    expect(hung.locator("#hang-y")).to_be_focused()
    hung.keyboard.type("3420")
    expect(hung.locator("#hang-illuminance")).to_be_focused()
    hung.keyboard.type("420")
    hung.keyboard.press("Enter")
    both = card(hung, "key").locator(".planned")
    expect(both).to_have_count(2)
    expect(both.first).to_contain_text("Planned")
    assert both.first.inner_text() == wanted
    expect(both.last).to_contain_text("Measured since")
    expect(both.last).to_contain_text(" K")
    # It is in the book as a reading through the gels that were advised.
    go(hung, "Book")
    hung.get_by_role("link", name="Setup 1").click()
    own = hung.locator(".lights > li").filter(has=hung.get_by_role("heading", name="key"))
    expect(own.locator(".readings li")).to_have_count(2)
    expect(own.locator(".readings li").first).to_contain_text("CTB")


def test_what_does_not_hang_yet_is_not_read(hung: Page) -> None:
    card(hung, "fill").get_by_role("button").first.click()
    hung.get_by_role("button", name="Not yet").click()
    expect(hung.locator("#hang-x")).to_have_count(0)
    go(hung, "Light")
    expect(hung.get_by_label("x", exact=True)).to_have_value("")


def test_on_paper_each_card_has_its_box_and_room_for_the_reading(hung: Page) -> None:
    text = "".join(page.extract_text() for page in PdfReader(io.BytesIO(hung.pdf())).pages)
    assert text.count("________") == 3 * len(HALL)
    assert "Hung: read it now" not in text


def test_a_visitor_sees_first_how_each_light_stands(hung: Page) -> None:
    share_by_clipboard(hung)
    hung.get_by_role("link", name="Share the hang cards").click()
    with visitor(hung, copied_link(hung)) as page:
        lights = page.locator("ek-copy .lights > li")
        expect(lights).to_have_count(3)
        expect(lights.first.locator(".now")).to_contain_text(" K · Duv ")
        expect(lights.first.locator(".verdict")).to_be_visible()
        expect(lights.first).to_contain_text("no gel")
        # The readings stand below, folded.
        expect(lights.first.locator(".readings li")).not_to_be_visible()
        lights.first.locator("summary").click()
        expect(lights.first.locator(".readings li")).to_be_visible()


def test_six_hang_cards_are_one_code_that_a_camera_reads(app: Page) -> None:
    for name, x, y in SIX:
        keep_light(app, name, x, y)
    go(app, "Set")
    app.get_by_role("link", name="Hang cards").click()
    expect(app.locator(".card .hang")).to_have_count(6)
    app.get_by_role("link", name="Share the hang cards").click()
    expect(app.get_by_role("radio", name="Hang cards")).to_be_checked()
    expect(app.get_by_text("or 1 code")).to_be_visible()
    app.get_by_role("button", name="Show the codes").click()
    code = app.locator("svg.code")
    expect(app.get_by_text("Code 1 of 1", exact=True)).to_be_visible()
    expect(code).to_be_in_viewport(ratio=1)
    # An independent reader, as in any phone's camera.
    for _ in range(5):
        found = zxingcpp.read_barcodes(Image.open(io.BytesIO(code.screenshot())))
        if found:
            break
    link = found[0].text.partition("#copy=")[2]
    opened = answer({"ask": "open_link", "link": link})
    assert (opened["things"]["light"], opened["things"]["reading"]) == (6, 6)
    # All of it goes as well, in two at most.
    app.get_by_role("radio", name="All of it").check()
    app.get_by_role("button", name="Show the codes").click()
    expect(app.get_by_text(re.compile("^Code 1 of [12]$"))).to_be_visible()
