"""A meter that gives mired, CC, cuts or f-numbers: chosen once in Kit, typed so everywhere."""

from __future__ import annotations

import re

from hands import go, headline, keep
from playwright.sync_api import Page, expect


def choose(page: Page, group: str, form: str) -> None:
    page.get_by_role("group", name=group).get_by_role("radio", name=form, exact=True).check()


def by_cct(page: Page, ways: str) -> None:
    page.get_by_role("radio", name=ways, exact=True).check()


def test_mired_and_cuts_are_typed_read_and_kept_as_the_meter_gives_them(app: Page) -> None:
    go(app, "Kit")
    choose(app, "Colour temperature in", "mired")
    choose(app, "Green and magenta as", "cuts of plus and minus green")
    choose(app, "A + of it means", "add plus green")
    go(app, "Light")
    by_cct(app, "Mired and Cuts")
    app.get_by_label("Mired", exact=True).fill("312")
    expect(app.get_by_text("+ wants plus green, − wants minus green")).to_be_visible()
    app.get_by_role("button", name="1/4", exact=True).click()
    app.get_by_role("button", name="Change the sign of Cuts").click()
    expect(app.get_by_label("Cuts", exact=True)).to_have_value("-1/4")
    # It wants minus green: it is green.
    answer = app.locator(".answer")
    expect(answer).to_contain_text("312 mired is 3205 K.")
    expect(answer).to_contain_text(re.compile(r"1/4 minus green wanted is taken as Duv \+0\.00\d"))
    expect(headline(app)).to_contain_text("minus green")
    app.get_by_label("Name", exact=True).fill("batten")
    keep(app)
    go(app, "Book")
    app.get_by_role("link", name="Setup 1").click()
    app.get_by_role("link", name=re.compile("^3210 K")).click()
    expect(app.locator(".facts")).to_contain_text("312 mired, wants 1/4 minus green")


def test_a_hang_card_takes_the_chosen_form_and_keeps_by_it(app: Page) -> None:
    go(app, "Kit")
    choose(app, "Green and magenta as", "CC")
    go(app, "Light")
    by_cct(app, "CCT and CC")
    app.get_by_label("CCT", exact=True).fill("3200")
    app.get_by_label("CC", exact=True).fill("0")
    app.get_by_label("Name", exact=True).fill("key")
    keep(app)
    go(app, "Set")
    app.get_by_role("link", name="Hang cards").click()
    card = app.locator(".card")
    card.get_by_role("button", name="key is hung: read it now").click()  # once its advice is there
    expect(app.locator("#hang-cct_K")).to_be_focused()
    app.keyboard.type("5480 2 810")
    expect(app.locator("#hang-tint_cc")).to_have_value("2")
    app.keyboard.press("Enter")
    expect(card.locator("input")).to_have_count(0)
    expect(card).to_contain_text("5480 K")


def test_a_flash_is_typed_as_its_f_number(app: Page) -> None:
    go(app, "Kit")
    choose(app, "Flash as", "f-number")
    app.get_by_label("ISO of the flash meter").fill("200")
    go(app, "Light")
    app.get_by_label("Lamp type").select_option("flash")
    app.get_by_label("x", exact=True).fill("0.3324")
    app.get_by_label("y", exact=True).fill("0.3474")
    level = app.locator("#light-illuminance")
    level.fill("8")
    expect(app.locator("#light-illuminance-unit")).to_have_text("at ISO 200")
    # ISO 2720: 8² · 250 / 200.
    expect(app.locator(".answer")).to_contain_text("f/8 at ISO 200 is taken as 80 lx·s")
    # The camera's 800 is two stops more.
    expect(app.locator(".stop-line strong")).to_have_text("f/16")
    level.fill("80 lx·s")
    expect(app.locator(".stop-line strong")).to_have_text("f/16")
    expect(app.locator(".answer")).not_to_contain_text("taken as")
    level.fill("8")
    keep(app)
    go(app, "Book")
    app.get_by_role("link", name="Setup 1").click()
    expect(app.locator("main")).to_contain_text("f/8 at ISO 200")


def test_what_the_kernel_refuses_stands_at_its_field_and_stays(app: Page) -> None:
    go(app, "Kit")
    choose(app, "Colour temperature in", "mired")
    go(app, "Light")
    by_cct(app, "Mired and Duv")
    mired = app.get_by_label("Mired", exact=True)
    mired.fill("5600")
    expect(app.locator("#light-cct-problem")).to_contain_text("between 40 and 1000")
    expect(mired).to_have_value("5600")
    # A number in the other form stays in sight when the form is chosen anew.
    go(app, "Kit")
    choose(app, "Colour temperature in", "kelvin")
    go(app, "Light")
    expect(app.get_by_label("Mired", exact=True)).to_have_value("5600")
