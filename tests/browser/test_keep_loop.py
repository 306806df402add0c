"""Light after light: what is kept stays, the form is ready for the next, nobody is overwritten."""

from __future__ import annotations

import re

import pytest
from conftest import wait_for_kernel
from hands import HALL, go, headline, type_xy
from playwright.sync_api import Page, expect

from evenkelvin.desk import answer


def press_keep(page: Page) -> None:
    page.get_by_role("button", name="Keep", exact=True).click()


def check_ready(page: Page) -> None:
    """The form is empty and the last light's answer stands, with its ways back and on."""
    for label in ("x", "y", "Illuminance", "Name"):
        expect(page.get_by_label(label, exact=True)).to_have_value("")
    expect(page.get_by_role("button", name="Undo", exact=True)).to_be_visible()
    expect(page.get_by_role("button", name="Read again", exact=True)).to_be_visible()


def cct_words(x: str, y: str) -> str:
    """What the list says of a reading: the CCT, to the ten kelvin that it shows."""
    read = answer({"ask": "describe", "reading": {"x": x, "y": y}})
    return f"{round(read['cct_K'], -1):.0f} K"


def check_set(page: Page, lights: list[tuple[str, str, str, str]]) -> None:
    """Set has just these lights, in the order they were read, each with its own reading."""
    go(page, "Set")
    expect(page.locator(".slip h2")).to_have_text([name for name, *_ in lights])
    page.evaluate("location.hash = '#book'")
    page.get_by_role("link", name="Setup 1").click()
    for name, x, y, _ in lights:
        own = page.locator(".lights > li").filter(has=page.get_by_role("heading", name=name))
        expect(own.locator(".readings li")).to_have_count(1)
        expect(own).to_contain_text(f"{cct_words(x, y)}, Duv")


@pytest.mark.parametrize("reload", [False, True], ids=["straight through", "reloaded between"])
def test_six_lights_are_six_lights(app: Page, reload: bool) -> None:
    for name, x, y, lux in HALL:
        type_xy(app, x, y, name)
        app.get_by_label("Illuminance", exact=True).fill(lux)
        press_keep(app)
        expect(app.locator(".kept")).to_contain_text(f"{name} kept at")
        check_ready(app)
        if reload:
            app.reload()
            wait_for_kernel(app)
            expect(app.locator(".kept")).to_contain_text(f"{name} kept at")
            check_ready(app)
    check_set(app, HALL)


def test_six_lights_without_a_name_are_six_lights(app: Page) -> None:
    for _, x, y, _ in HALL:
        type_xy(app, x, y)
        press_keep(app)
        expect(app.get_by_label("x", exact=True)).to_have_value("")
    check_set(app, [(f"Light {n}", *rest) for n, (_, *rest) in enumerate(HALL, 1)])


def test_the_answer_of_what_was_kept_stands_until_the_next_is_typed(app: Page) -> None:
    type_xy(app, "0.3810", "0.3770", "key")
    expect(headline(app)).not_to_be_empty()
    said = headline(app).inner_text()
    press_keep(app)
    expect(app.locator(".kept")).to_be_visible()
    expect(app.locator(".whose")).to_have_text("key")
    expect(headline(app)).to_have_text(said)
    app.get_by_label("x", exact=True).fill("0.45")
    expect(headline(app)).to_have_count(0)
    expect(app.locator(".kept")).to_have_count(0)


def test_what_was_kept_is_taken_back_and_stands_as_it_was_typed(app: Page) -> None:
    type_xy(app, "0.3810", "0.3770", "key")
    press_keep(app)
    expect(app.locator(".kept")).to_be_visible()
    app.reload()  # also later
    wait_for_kernel(app)
    app.get_by_role("button", name="Undo", exact=True).click()
    expect(app.get_by_label("x", exact=True)).to_have_value("0.3810")
    expect(app.get_by_label("Name", exact=True)).to_have_value("key")
    go(app, "Set")
    expect(app.locator(".slip")).to_have_count(0)
    go(app, "Light")
    press_keep(app)
    go(app, "Set")
    expect(app.locator(".slip")).to_have_count(1)


@pytest.mark.parametrize("typed", ["key", " KEY "])
def test_a_name_that_is_there_asks_which_is_meant(app: Page, typed: str) -> None:
    type_xy(app, "0.3810", "0.3770", "key")
    press_keep(app)
    expect(app.locator(".kept")).to_be_visible()

    # It is another light.
    type_xy(app, "0.3850", "0.3800", typed)
    expect(app.get_by_role("button", name="Keep", exact=True)).to_have_count(0)
    expect(app.get_by_text("has a light called key")).to_be_visible()
    app.get_by_role("button", name="Another one").click()
    expect(app.locator(".kept")).to_contain_text("2 kept at")
    go(app, "Set")
    expect(app.locator(".slip")).to_have_count(2)

    # It is that light, once more.
    go(app, "Light")
    type_xy(app, "0.3812", "0.3772", typed)
    app.get_by_role("button", name="key, again").click()
    expect(app.locator(".kept")).to_contain_text("key kept at")
    go(app, "Set")
    expect(app.locator(".slip")).to_have_count(2)
    app.evaluate("location.hash = '#book'")
    app.get_by_role("link", name="Setup 1").click()
    key = app.locator(".lights > li").first
    expect(key.locator(".readings li")).to_have_count(2)


def test_the_same_light_is_read_again_with_a_tap_and_says_what_hangs(app: Page) -> None:
    type_xy(app, "0.4590", "0.4100", "practical")
    expect(headline(app)).not_to_be_empty()
    advised = headline(app).inner_text()
    press_keep(app)
    app.get_by_role("button", name="Read again", exact=True).click()
    expect(app.locator("h1")).to_contain_text("practical, again")
    hung = app.get_by_role("button", name=f"Hung as advised: {advised}")
    expect(hung).to_have_attribute("aria-pressed", "true")
    # The sentence begins with a capital, a gel's own name need not.
    expect(app.locator(".chips li")).to_have_text(
        [re.compile(rf"^\s*{re.escape(gel)}\s*×\s*$", re.I) for gel in advised.split(" + ")]
    )
    app.get_by_role("button", name="As before: no gel").click()  # one tap to change
    expect(hung).to_have_attribute("aria-pressed", "false")
    expect(app.locator(".chips")).to_have_count(0)


def test_a_second_reading_that_is_taken_back_takes_its_new_name_along(app: Page) -> None:
    type_xy(app, "0.3810", "0.3770", "key")
    press_keep(app)
    check_ready(app)
    app.get_by_role("button", name="Read again", exact=True).click()
    type_xy(app, "0.3820", "0.3780", "key by the door")
    app.get_by_label("Lamp type").select_option("hmi")
    press_keep(app)
    expect(app.locator(".kept")).to_contain_text("key by the door kept at")
    app.get_by_role("button", name="Undo", exact=True).click()
    expect(app.get_by_label("Name", exact=True)).to_have_value("key by the door")
    check_set(app, [("key", "0.3810", "0.3770", "")])


def test_names_are_offered_and_count_on(app: Page) -> None:
    app.get_by_role("button", name="key", exact=True).click()
    expect(app.get_by_label("Name", exact=True)).to_have_value("key")
    type_xy(app, "0.3810", "0.3770")
    press_keep(app)
    expect(app.get_by_role("button", name="key", exact=True)).to_have_count(0)
    type_xy(app, "0.3760", "0.3860", "batten 1")
    press_keep(app)
    expect(app.locator(".kept")).to_be_visible()
    app.get_by_role("button", name="batten 2", exact=True).click()
    expect(app.get_by_label("Name", exact=True)).to_have_value("batten 2")


def test_the_light_that_follows_by_itself_is_left_for_the_one_that_is_named(app: Page) -> None:
    for name, x, y in (("key", "0.3810", "0.3770"), ("fill", "0.4020", "0.3890")):
        type_xy(app, x, y, name)
        press_keep(app)
        expect(app.locator(".kept")).to_contain_text(f"{name} kept at")
    go(app, "Book")
    app.get_by_role("link", name="Setup 1").click()
    app.get_by_role("button", name="Duplicate for a pick-up").click()
    expect(app.get_by_role("button", name="Read ", exact=False).first).to_be_visible()
    go(app, "Light")
    type_xy(app, "0.3812", "0.3772", "key")
    app.get_by_role("button", name="key, again").click()
    # Fill waits for its reading, but it is another light that is read now.
    expect(app.get_by_label("Name", exact=True)).to_have_value("fill")
    type_xy(app, "0.4470", "0.4070", "practical")
    expect(app.locator("h1")).not_to_contain_text("again")
    press_keep(app)
    expect(app.locator(".kept")).to_contain_text("practical kept at")
    go(app, "Set")
    expect(app.locator(".slip h2")).to_have_text(["key", "practical"])
    go(app, "Light")
    type_xy(app, "0.4022", "0.3892", "fill")
    app.get_by_role("button", name="fill, again").click()
    go(app, "Set")
    expect(app.locator(".slip h2")).to_have_text(["key", "fill", "practical"])
