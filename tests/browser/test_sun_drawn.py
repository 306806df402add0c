"""The sun's day as it is drawn: a bar for each window, and the horizon that is tapped."""

from __future__ import annotations

import json
from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import PHONE, offline_page
from hands import headline
from places import open_all, visit
from playwright.sync_api import Browser, Locator, Page, expect

import long_sheet


@pytest.fixture(scope="module")
def page(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """The app with a location of nine windows, its server stopped."""
    with offline_page(phone_browser, dist) as page:
        page.evaluate("location.hash = '#receive'")
        text = json.dumps(long_sheet.book(lights=2)).encode()
        file = {"name": "book.json", "mimeType": "application/json", "buffer": text}
        page.locator("#receive-file").set_input_files(file)
        page.get_by_role("button", name="Add to my book").click()
        yield page


def open_day(page: Page, facing: str = "") -> None:
    visit(page, f"sun/{long_sheet.HALL}")
    page.get_by_label("Date").fill("2026-10-27")
    page.get_by_label("The window looks").fill(facing)
    expect(page.locator("ek-sun section[aria-busy=true]")).to_have_count(0)


def test_each_window_has_a_bar_from_and_to_by_its_own_sun(page: Page) -> None:
    open_day(page)
    rows = page.locator(".sun-windows li")
    expect(rows).to_have_count(9)
    # Facing north no sun at all, and the words say so; facing south all day.
    expect(rows.first).to_contain_text("No direct sun in the window facing north on this day.")
    expect(rows.first.locator("rect.ink")).to_have_count(0)
    expect(rows.nth(6)).to_contain_text("Direct sun in the window facing south")
    expect(rows.nth(6).locator("rect.ink")).to_have_count(1)
    for width in (320, 390, 1280):
        page.set_viewport_size({"width": width, "height": 800})
        # One time axis: each bar as wide as the others, inside its row; nothing cut off.
        boxes = rows.locator("svg").evaluate_all(
            """bars => bars.map(bar => {
                const {left, width} = bar.getBoundingClientRect();
                return `${Math.round(left)} ${Math.round(width)}`;
            })"""
        )
        assert len(boxes) == 9
        assert len(set(boxes)) == 1
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    page.set_viewport_size(PHONE)


def tap(page: Page, drawing: Locator, across: float, up: float) -> None:
    """Tap so far across and up the field of the drawing, both 0 to 1."""
    drawing.scroll_into_view_if_needed()
    box = drawing.bounding_box()
    assert box
    scale = box["width"] / 340
    x = box["x"] + (30 + across * 302) * scale
    page.mouse.click(x, box["y"] + (196 - up * 184) * scale)


def test_the_horizon_is_tapped_moved_taken_off_and_brought_back(page: Page) -> None:
    open_day(page, "180")
    open_all(page)
    drawing = page.get_by_role("img", name="What stands before the window")
    expect(drawing).to_be_visible()
    expect(headline(page)).to_contain_text("Direct sun in the window facing south 07:1")
    rows = page.locator("[id^=sun-horizon-][id$=altitude_deg]")
    expect(rows).to_have_count(0)
    share = page.locator("ek-sun p.reason").filter(has_text="% of the sky")
    tap(page, drawing, 0.25, 0.5)
    expect(rows).to_have_count(1)
    expect(page.locator("#sun-horizon-0-azimuth_deg")).to_have_value("135")
    height = int(page.locator("#sun-horizon-0-altitude_deg").input_value())
    assert 12 <= height <= 20
    # One point is a level line: the sun, 23° high at noon, clears it later and for shorter.
    expect(headline(page)).not_to_contain_text("07:1")
    expect(share.last).not_to_contain_text("100 %")
    tap(page, drawing, 0.75, 0.95)
    expect(rows).to_have_count(2)
    # A drag moves the first; the list and the words follow.
    words = headline(page).inner_text()
    grip = drawing.locator(".grip").first
    box = grip.bounding_box()
    assert box
    assert min(box["width"], box["height"]) >= 44
    page.mouse.move(box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
    page.mouse.down()
    page.mouse.move(box["x"] + box["width"] / 2 + 10, box["y"] + box["height"] / 2 - 40, steps=4)
    page.mouse.up()
    expect(page.locator("#sun-horizon-0-azimuth_deg")).not_to_have_value("135")
    expect(headline(page)).not_to_have_text(words)
    expect(rows).to_have_count(2)
    # A tap takes it off, and undo goes back step by step.
    drawing.locator(".grip").first.click()
    expect(rows).to_have_count(1)
    undo = page.locator("ek-sun").get_by_role("button", name="Undo")
    undo.click()
    expect(rows).to_have_count(2)
    undo.click()
    expect(page.locator("#sun-horizon-0-azimuth_deg")).to_have_value("135")
    undo.click()
    undo.click()
    expect(rows).to_have_count(0)
    expect(undo).to_be_disabled()


def test_the_typed_list_moves_the_drawing_and_is_what_is_kept(page: Page) -> None:
    open_day(page, "S")
    open_all(page)
    drawing = page.get_by_role("img", name="What stands before the window")
    page.get_by_role("button", name="Add a point").click()
    page.locator("#sun-horizon-0-azimuth_deg").fill("SE")
    page.locator("#sun-horizon-0-altitude_deg").fill("12,5")
    point = drawing.locator("circle.light")
    expect(point).to_have_count(1)
    before = point.get_attribute("cy")
    page.locator("#sun-horizon-0-altitude_deg").fill("20")
    expect(point).not_to_have_attribute("cy", before or "")
    page.get_by_role("button", name="Keep with the location").click()
    expect(page.get_by_text("Kept with")).to_be_visible()
    page.reload()
    open_all(page)
    expect(page.locator("#sun-horizon-0-azimuth_deg")).to_have_value("SE")
