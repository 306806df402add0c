"""The page can be typed into before the app has been read; the app goes on with what was typed."""

from __future__ import annotations

from collections.abc import Callable, Iterator

import pytest
from conftest import PHONE, Site, Watch, wait_for_kernel
from hands import headline, type_xy
from playwright.sync_api import Browser, Page, Route, expect

Opening = Callable[[str], Callable[[], None]]


@pytest.fixture
def plain_page(phone_browser: Browser, watch: Watch) -> Iterator[Page]:
    """A page without service worker, so that a test can hold up what the server gives."""
    context = phone_browser.new_context(viewport=PHONE, has_touch=True, service_workers="block")
    watch.follow(context)
    watch.expected += ["offline", "Service Worker"]
    yield context.new_page()
    context.close()


@pytest.fixture
def open_slowly(plain_page: Page, site: Site) -> Opening:
    """Open an address with the app's script held up; call what it returns to let it through."""

    def open_at(place: str) -> Callable[[], None]:
        held: list[Route] = []
        plain_page.route("**/main.js", lambda route: held.append(route))
        # Another document, not only another place in the same.
        plain_page.goto("about:blank")
        plain_page.goto(site.url + place, wait_until="commit")

        def let_through() -> None:
            while not held:
                plain_page.wait_for_timeout(20)
            held[0].continue_()
            plain_page.unroute("**/main.js")
            expect(plain_page.locator("ek-shell h1").first).to_be_visible()
            expect(plain_page.locator(".opening")).to_have_count(0)

        return let_through

    return open_at


def field(page: Page, label: str) -> str:
    return page.get_by_label(label, exact=True).input_value()


def test_what_is_typed_before_the_app_is_there_goes_on_in_it(
    plain_page: Page, open_slowly: Opening
) -> None:
    let_through = open_slowly("")
    plain_page.get_by_label("x", exact=True).press_sequentially("0.4475")
    plain_page.get_by_label("y", exact=True).press_sequentially("0.407")
    plain_page.get_by_label("y", exact=True).press("ArrowLeft")
    let_through()
    plain_page.keyboard.type("4")  # the caret stands where it stood
    assert (field(plain_page, "x"), field(plain_page, "y")) == ("0.4475", "0.4047")
    wait_for_kernel(plain_page)
    expect(headline(plain_page)).to_contain_text("CTB")


def test_a_half_typed_reading_is_put_aside_and_comes_back(
    plain_page: Page, open_slowly: Opening
) -> None:
    open_slowly("")()
    type_xy(plain_page, "0.3127", "0.3290", name="window")
    let_through = open_slowly("#light")
    plain_page.get_by_label("x", exact=True).press_sequentially("0.44")
    let_through()
    assert (field(plain_page, "x"), field(plain_page, "y")) == ("0.44", "")
    plain_page.get_by_role("button", name="Undo").click()
    assert (field(plain_page, "x"), field(plain_page, "y")) == ("0.3127", "0.3290")
    expect(plain_page.get_by_label("Name", exact=True)).to_have_value("window")


def test_nothing_typed_leaves_what_was_half_typed(plain_page: Page, open_slowly: Opening) -> None:
    open_slowly("")()
    type_xy(plain_page, "0.3127", "0.3290")
    open_slowly("")()
    assert (field(plain_page, "x"), field(plain_page, "y")) == ("0.3127", "0.3290")


def test_it_opens_with_the_fields_that_were_typed_into_last(
    plain_page: Page, open_slowly: Opening
) -> None:
    open_slowly("")()
    plain_page.get_by_role("radio", name="CCT and Duv").check()
    let_through = open_slowly("")
    expect(plain_page.get_by_label("x", exact=True)).to_be_hidden()
    plain_page.get_by_label("CCT").press_sequentially("3020")
    let_through()
    assert field(plain_page, "CCT") == "3020"


def test_it_opens_with_the_form_that_the_meter_gives(
    plain_page: Page, open_slowly: Opening
) -> None:
    open_slowly("#kit")()
    for group, form in [("Colour temperature in", "mired"), ("Green and magenta as", "CC")]:
        radios = plain_page.get_by_role("group", name=group)
        radios.get_by_role("radio", name=form, exact=True).check()
    open_slowly("")()
    plain_page.get_by_role("radio", name="Mired and CC").check()
    let_through = open_slowly("")
    plain_page.get_by_label("Mired").press_sequentially("178")
    plain_page.get_by_label("CC", exact=True).press_sequentially("5")
    let_through()
    assert (field(plain_page, "Mired"), field(plain_page, "CC")) == ("178", "5")


def test_another_place_opens_without_fields(plain_page: Page, open_slowly: Opening) -> None:
    let_through = open_slowly("#book")
    expect(plain_page.locator(".opening")).to_be_visible()
    expect(plain_page.locator(".opening input:visible")).to_have_count(0)
    let_through()
    expect(plain_page.get_by_label("Search the readings")).to_be_visible()
