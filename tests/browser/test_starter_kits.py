"""What a truck carries, by one tap: only that is advised, and the tap can be taken back."""

from __future__ import annotations

import pytest
from conftest import Site
from hands import (
    copied_link,
    go,
    headline,
    keep,
    share_by_clipboard,
    type_xy,
    wait_for_kernel,
)
from native_kernel import answer_natively
from playwright.sync_api import BrowserContext, Page, expect


def in_stock(page: Page) -> set[str]:
    """The gels that are ticked in Kit."""
    expect(page.locator("ek-kit .stock li").first).to_be_attached()
    names: list[str] = page.locator("ek-kit .stock li").evaluate_all(
        """rows => rows.filter(row => row.querySelector("input[type=checkbox]").checked)
            .map(row => row.querySelector("button").getAttribute("aria-label"))"""
    )
    return {name.removeprefix("Curve of ") for name in names}


#: What is in each kit, and what is not. Common practice, no source.
HOLDS = {
    "Basic": ({"full CTO", "1/4 CTB", "1/2 minus green", "ND 0.6"}, {"full CTS", "1/8 CTO"}),
    "Big": ({"full CTO", "full CTS", "1/8 CTO", "1/8 minus green"}, set()),
    "Windows": ({"full CTO", "ND 0.9"}, {"full CTB", "full plus green"}),
}


@pytest.mark.parametrize("kit", HOLDS)
def test_a_kit_is_in_stock_by_one_tap_and_stays(app: Page, kit: str) -> None:
    go(app, "Kit")
    everything = in_stock(app)
    button = app.locator("ek-kit").get_by_role("button", name=kit, exact=True)
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")
    there, missing = HOLDS[kit]
    stock = in_stock(app)
    assert there <= stock
    assert not missing & stock
    assert not {name for name in stock if name.startswith("CC")}
    app.reload()
    wait_for_kernel(app)
    expect(button).to_have_attribute("aria-pressed", "true")
    assert in_stock(app) == stock
    assert stock < everything


def test_a_kit_that_was_tapped_by_mistake_is_taken_back(app: Page) -> None:
    go(app, "Kit")
    everything = in_stock(app)
    button = app.locator("ek-kit").get_by_role("button", name="Windows", exact=True)
    button.click()
    expect(button).to_have_attribute("aria-pressed", "true")
    app.get_by_role("button", name="Undo", exact=True).click()
    expect(button).to_have_attribute("aria-pressed", "false")
    assert in_stock(app) == everything


def test_on_first_use_a_tap_says_what_there_is_and_only_that_is_advised(app: Page) -> None:
    app.locator(".welcome").get_by_role("button", name="Windows", exact=True).click()
    type_xy(app, "0.4476", "0.4074")  # CIE illuminant A, from memory: it would take CTB
    expect(headline(app)).to_be_visible()
    expect(headline(app)).not_to_contain_text("CTB")


def save_kit(page: Page, name: str) -> None:
    page.get_by_text("Kits of your own").click()
    page.get_by_label("Name of the kit").fill(name)
    page.get_by_role("button", name="Save what is in stock").click()
    expect(page.get_by_text(f"{name} saved.")).to_be_visible()


def test_a_kit_of_ones_own_is_saved_and_taken_up_by_one_tap(app: Page) -> None:
    go(app, "Kit")
    kit = app.locator("ek-kit .starters")
    kit.get_by_role("button", name="Windows", exact=True).click()
    save_kit(app, "hall truck")
    hall = kit.get_by_role("button", name="hall truck", exact=True)
    expect(hall).to_have_attribute("aria-pressed", "true")
    carried = in_stock(app)
    kit.get_by_role("button", name="Big", exact=True).click()
    expect(hall).to_have_attribute("aria-pressed", "false")
    app.reload()
    wait_for_kernel(app)
    hall.click()
    expect(hall).to_have_attribute("aria-pressed", "true")
    assert in_stock(app) == carried
    app.get_by_role("button", name="Undo", exact=True).click()
    expect(hall).to_have_attribute("aria-pressed", "false")
    assert in_stock(app) > carried
    # Saved under its name again, it holds what is in stock by now.
    app.get_by_text("Kits of your own").click()
    app.get_by_label("Name of the kit").fill("hall truck")
    expect(app.get_by_text("Takes the place of hall truck as it is now.")).to_be_visible()
    app.get_by_role("button", name="Save what is in stock").click()
    expect(hall).to_have_attribute("aria-pressed", "true")
    app.get_by_role("button", name="Delete hall truck").click()
    expect(hall).to_have_count(0)
    app.get_by_role("button", name="Undo", exact=True).click()
    expect(hall).to_have_attribute("aria-pressed", "true")


def test_a_kit_goes_along_where_it_is_chosen_and_is_one_tap_there(
    app: Page, context: BrowserContext, site: Site
) -> None:
    share_by_clipboard(app)
    go(app, "Kit")
    app.locator("ek-kit").get_by_role("button", name="Windows", exact=True).click()
    carried = in_stock(app)
    save_kit(app, "hall truck")
    app.get_by_role("link", name="Share hall truck").click()
    alone = copied_link(app)
    go(app, "Light")
    type_xy(app, "0.3324", "0.3474", "window")
    keep(app)
    go(app, "Set")
    app.get_by_role("link", name="Share this setup").click()
    without = copied_link(app)
    app.get_by_label("Your own kits").check()
    expect(app.get_by_role("button", name="Send the link")).to_be_enabled()
    along = copied_link(app)
    assert context.browser is not None
    stranger = context.browser.new_context(viewport={"width": 390, "height": 844})
    answer_natively(stranger)
    other = stranger.new_page()
    for link, there in ((without, 0), (along, 1), (alone, 1)):
        other.goto("about:blank")
        other.goto(f"{site.url}#{link}")
        wait_for_kernel(other)
        expect(headline(other)).to_be_visible()
        expect(other.get_by_text("Kits of gels: hall truck")).to_have_count(there)
    expect(headline(other)).to_have_text("hall truck")
    other.get_by_role("button", name="Add to my book").click()
    expect(other.locator(".answer .kept")).to_be_visible()
    go(other, "Kit")
    hall = other.locator("ek-kit").get_by_role("button", name="hall truck", exact=True)
    hall.click()
    expect(hall).to_have_attribute("aria-pressed", "true")
    assert in_stock(other) == carried
    stranger.close()
