"""What a truck carries, by one tap: only that is advised, and the tap can be taken back."""

from __future__ import annotations

import pytest
from conftest import wait_for_kernel
from hands import go, headline, type_xy
from playwright.sync_api import Page, expect


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
