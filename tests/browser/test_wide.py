"""Tablet and laptop: panes side by side, the places in a rail, keys for who has a keyboard."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import Site, Watch, wait_for_kernel
from hands import keep, open_demo, type_xy
from native_kernel import answer_natively
from places import open_all, visit, wear
from playwright.sync_api import Browser, Page, expect
from test_access import AXE, LOOKING, at_last_nothing, violations

SIZES = {820: (820, 1180), 1280: (1280, 800), 1440: (1440, 900)}


@pytest.fixture(scope="module")
def wide(phone_browser: Browser, dist_site: Site) -> Iterator[Page]:
    """One page for the module; the policy is lifted so that axe and looking.js can be put in."""
    seen = Watch()
    context = phone_browser.new_context(
        viewport={"width": 1280, "height": 800}, bypass_csp=True, color_scheme="dark"
    )
    seen.follow(context)
    context.add_init_script(path=AXE)
    context.add_init_script(path=LOOKING)
    answer_natively(context)
    page = context.new_page()
    page.goto(dist_site.url)
    wait_for_kernel(page)
    open_demo(page)
    yield page
    context.close()
    assert seen.faults == []


@pytest.fixture(scope="module")
def dist_site(dist: Path) -> Iterator[Site]:
    site = Site(dist)
    yield site
    site.stop()


def shown(page: Page) -> list[str]:
    """The views on the screen, from start to end; the one of the address in capitals."""
    names: list[str] = page.locator("main > .pane").evaluate_all(
        """panes => panes.sort((a, b) =>
            a.getBoundingClientRect().left - b.getBoundingClientRect().left).map(pane => {
                const name = pane.firstElementChild.localName.slice(3);
                return pane.matches(".here") ? name.toUpperCase() : name;
            })"""
    )
    return names


def first_of(page: Page, kind: str) -> str:
    return page.locator(f"a[href^='#{kind}/']").first.get_attribute("href")[1:]  # type: ignore[index]


def at(page: Page, width: int) -> None:
    across, down = SIZES.get(width, (width, 844))
    page.set_viewport_size({"width": across, "height": down})


def test_what_stands_beside_what(wide: Page) -> None:
    at(wide, 1280)
    visit(wide, "book")
    setup = first_of(wide, "setup")
    visit(wide, setup)
    reading = first_of(wide, "reading")
    views = {"setup": setup, "reading": reading}
    beside = {
        390: {"set": ["SET"], "light": ["LIGHT"], "reading": ["READING"]},
        820: {
            "set": ["SET", "light"],
            "light": ["set", "LIGHT"],
            "mix": ["set", "MIX"],
            "book": ["BOOK", "setup"],
            "setup": ["book", "SETUP"],
            "reading": ["setup", "READING"],
            "order": ["kit", "ORDER"],
            "report": ["REPORT"],
        },
        1280: {
            "set": ["SET", "light"],
            "mix": ["set", "MIX", "light"],
            "hang": ["set", "HANG", "light"],
            "exposure": ["set", "light", "EXPOSURE"],
            "reading": ["book", "setup", "READING"],
            "kit": ["KIT"],
            "cameras": ["kit", "CAMERAS"],
        },
    }
    for width, all_ in beside.items():
        at(wide, width)
        for name, panes in all_.items():
            visit(wide, views.get(name, name))
            assert shown(wide) == panes, (width, name)


def test_a_light_kept_in_one_pane_stands_in_the_other(wide: Page) -> None:
    at(wide, 1280)
    visit(wide, "light")
    type_xy(wide, "0.4215", "0.4022", "lantern")
    keep(wide)
    expect(wide.locator("ek-set .slip").filter(has_text="lantern")).to_be_visible()
    # What was typed stays where it is when the other pane is gone to.
    type_xy(wide, "0.41", "0.39", "half typed")
    visit(wide, "set")
    expect(wide.get_by_label("Name", exact=True)).to_have_value("half typed")


@pytest.mark.parametrize("width", [820, 1280, 1440])
def test_everybody_can_use_it_at_every_width(wide: Page, width: int) -> None:
    at(wide, width)
    visit(wide, "book")
    setup = first_of(wide, "setup")
    visit(wide, setup)
    found = {}
    for address in ("light", "set", "mix", "balance", "book", setup, first_of(wide, "reading"),
                    "report", "kit", "order"):  # fmt: skip
        visit(wide, address)
        open_all(wide)
        looks = {
            "axe": lambda: violations(wide),  # once: themes differ in contrast alone
            "contrast": lambda: wide.evaluate("looking.text().complaints"),
            "drawings": lambda: wide.evaluate("looking.parts().complaints"),
            "room": lambda: wide.evaluate("looking.room()"),
            "targets": lambda: wide.evaluate("looking.targets()"),
        }
        for theme in ("light", "dark"):
            wear(wide, theme)
            for name, look in looks.items():
                if (theme, name) == ("dark", "axe"):
                    continue
                if told := at_last_nothing(wide, look):
                    found[f"{address} {theme} {name}"] = told[:3]
    assert found == {}


def test_text_at_200_percent_takes_one_column_and_fits(wide: Page) -> None:
    wide.set_viewport_size({"width": 1440, "height": 1000})
    fonts = wide.context.new_cdp_session(wide)
    fonts.send("Page.setFontSizes", {"fontSizes": {"standard": 32, "fixed": 26}})
    try:
        # 1440 px are 45 rem then: a phone's layout, as on any narrow screen.
        for address in ("light", "set", "book", "kit"):
            visit(wide, address)
            assert len(shown(wide)) == 1
            assert wide.evaluate("looking.room()") == []
    finally:
        fonts.send("Page.setFontSizes", {"fontSizes": {"standard": 16, "fixed": 13}})


def test_each_pane_scrolls_by_itself_and_a_place_begins_at_its_top(wide: Page) -> None:
    at(wide, 1280)
    visit(wide, "set")
    wide.evaluate("document.querySelector('.here').scrollTo(0, 400)")
    visit(wide, "light")
    assert wide.evaluate("document.querySelector('main > .pane').scrollTop") == 400
    assert wide.evaluate("document.querySelector('.here').scrollTop") == 0
    assert wide.evaluate("scrollY") == 0


def test_keys_lead_to_the_places_the_next_light_and_the_search(wide: Page) -> None:
    at(wide, 1280)
    visit(wide, "light")
    wide.locator("ek-light h1").focus()
    for key, name in {"s": "set", "b": "book", "k": "kit", "l": "light"}.items():
        wide.keyboard.press(key)
        expect(wide.locator(f".here > ek-{name} h1")).to_be_focused()
    wide.keyboard.press("/")
    expect(wide.locator("#find-text")).to_be_focused()
    wide.keyboard.press("s")  # in a field a key is what it writes
    expect(wide.locator("#find-text")).to_have_value("s")
    wide.locator("#find-text").fill("")
    visit(wide, "kit")
    wide.keyboard.press("n")
    expect(wide.locator("ek-light form input[type=text]").first).to_be_focused()


def test_arrows_lead_through_the_lights(wide: Page) -> None:
    at(wide, 1280)
    visit(wide, "set")
    wide.locator("ek-set h1").focus()
    lights = wide.locator("ek-set .slip > details > summary")
    wide.keyboard.press("ArrowDown")
    expect(lights.nth(0)).to_be_focused()
    wide.keyboard.press("ArrowDown")
    expect(lights.nth(1)).to_be_focused()
    wide.keyboard.press("ArrowUp")
    wide.keyboard.press("ArrowUp")
    expect(lights.nth(0)).to_be_focused()
    wide.keyboard.press("Enter")
    expect(lights.nth(0).locator("..")).to_have_attribute("open", "")


def test_the_keys_are_listed_and_can_be_turned_off(wide: Page) -> None:
    at(wide, 1280)
    visit(wide, "set")
    wide.locator("ek-set h1").focus()
    wide.keyboard.press("Shift+?")
    listed = wide.get_by_role("dialog", name="Keys")
    expect(listed).to_contain_text("next light")
    listed.get_by_label("Single keys").uncheck()
    listed.get_by_role("button", name="Close").click()
    wide.keyboard.press("k")
    expect(wide.locator(".here > ek-set")).to_be_visible()
    wide.get_by_role("button", name="Keys").click()
    listed.get_by_label("Single keys").check()
    wide.keyboard.press("Escape")
    expect(listed).to_be_hidden()
    wide.keyboard.press("k")
    expect(wide.locator(".here > ek-kit")).to_be_visible()
