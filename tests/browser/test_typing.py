"""Typing a reading with one thumb: digits alone, a whole line, keys that go on, signs, units."""

from __future__ import annotations

import pytest
from conftest import wait_for_kernel
from hands import go, headline, keep, open_slip, type_xy
from playwright.sync_api import Locator, Page, expect


def field(page: Page, label: str) -> Locator:
    return page.get_by_label(label, exact=True)


def kept_reading(page: Page) -> Locator:
    page.evaluate("location.hash = '#book'")
    page.get_by_role("link", name="Setup 1").click()
    # The list says what was read as CCT; the reading itself says it as typed.
    page.locator(".lights > li .readings a").first.click()
    return page.locator("ek-reading .facts")


def test_digits_without_a_point_are_understood_and_shown(app: Page) -> None:
    field(app, "x").fill("4012")
    field(app, "y").fill("3991")
    expect(headline(app)).to_be_visible()
    field(app, "Illuminance").click()
    expect(field(app, "x")).to_have_value("0.4012")
    expect(field(app, "y")).to_have_value("0.3991")
    keep(app)
    expect(kept_reading(app)).to_contain_text("x 0.4012 y 0.3991")


def test_digits_that_can_be_read_in_two_ways_are_refused(app: Page) -> None:
    type_xy(app, "0412", "3991")
    expect(app.locator("#light-x-problem")).to_be_visible()
    expect(app.get_by_role("button", name="Keep", exact=True)).to_be_disabled()
    expect(field(app, "x")).to_have_value("0412")


@pytest.mark.parametrize("line", ["0.4012 0.3991 860", "4012 3991 860", "x=0.4012, y=0.3991, 860"])
def test_a_whole_line_in_one_field_fills_all(app: Page, line: str) -> None:
    field(app, "x").fill(line)
    expect(field(app, "x")).to_have_value("0.4012")
    expect(field(app, "y")).to_have_value("0.3991")
    expect(field(app, "Illuminance")).to_have_value("860")
    expect(field(app, "Illuminance")).to_be_focused()
    expect(headline(app)).to_be_visible()


def test_a_line_typed_key_by_key_goes_on_in_the_next_field(app: Page) -> None:
    field(app, "x").click()
    app.keyboard.type("4012 3991 860", delay=20)
    expect(field(app, "x")).to_have_value("0.4012")
    expect(field(app, "y")).to_have_value("0.3991")
    expect(field(app, "Illuminance")).to_have_value("860")


def test_enter_goes_through_the_fields_and_keeps_at_the_end(app: Page) -> None:
    field(app, "x").click()
    for text, label in [("4012", "y"), ("3991", "Illuminance"), ("860", "Name")]:
        app.keyboard.type(text)
        app.keyboard.press("Enter")
        expect(field(app, label)).to_be_focused()
    app.keyboard.type("key")
    app.keyboard.press("Enter")
    expect(app.locator(".kept")).to_contain_text("key kept")
    expect(field(app, "x")).to_be_focused()

    # From here on it is known that this meter gives four digits.
    app.keyboard.type("3810")
    expect(field(app, "y")).to_be_focused()
    app.keyboard.type("3770")
    expect(field(app, "Illuminance")).to_be_focused()
    app.keyboard.type("305")
    app.get_by_role("button", name="fill", exact=True).click()
    field(app, "Illuminance").press("Enter")
    expect(app.locator(".kept")).to_contain_text("fill kept")
    go(app, "Set")
    expect(app.locator(".slip h2")).to_have_text(["key", "fill"])


def test_a_meter_with_five_digits_is_not_cut_short(app: Page) -> None:
    type_xy(app, "0.38115", "0.37702")
    keep(app)
    field(app, "x").click()
    app.keyboard.type("4012")
    expect(field(app, "x")).to_be_focused()
    app.keyboard.type("5")
    expect(field(app, "y")).to_be_focused()
    expect(field(app, "x")).to_have_value("0.40125")


def test_a_full_field_that_is_put_right_keeps_the_caret(app: Page) -> None:
    type_xy(app, "0.3811", "0.3770")
    keep(app)
    type_xy(app, "0.4012", "0.3991")
    field(app, "x").press("End")
    app.keyboard.press("Backspace")
    app.keyboard.type("3")
    expect(field(app, "x")).to_be_focused()
    expect(field(app, "x")).to_have_value("0.4013")
    expect(field(app, "y")).to_have_value("0.3991")


def test_the_sign_key_turns_duv_about(app: Page) -> None:
    app.get_by_role("radio", name="CCT and Duv").check()
    field(app, "CCT").fill("5600 K")
    field(app, "Duv").fill("0.006")
    expect(app.locator("ek-light .answer")).to_contain_text("+0.0060")
    app.get_by_role("button", name="Change the sign of Duv").click()
    expect(field(app, "Duv")).to_have_value("-0.006")
    expect(app.locator("ek-light .answer")).to_contain_text("−0.0060")
    app.get_by_role("button", name="Change the sign of Duv").click()
    expect(field(app, "Duv")).to_have_value("0.006")


@pytest.mark.parametrize(
    ("typed", "kept"), [("941 lx", "941 lx"), ("87 fc", "87 fc"), ("941", "941 lx")]
)
def test_a_unit_behind_a_number_is_taken_at_its_word(app: Page, typed: str, kept: str) -> None:
    type_xy(app, "0.4012", "0.3991")
    field(app, "Illuminance").fill(typed)
    expect(headline(app)).to_be_visible()
    keep(app)
    expect(kept_reading(app)).to_contain_text(kept)


def test_the_same_again_is_one_tap_and_says_so(app: Page) -> None:
    type_xy(app, "0.3760", "0.3860", "batten 1")
    keep(app)
    app.get_by_role("button", name="Same as batten 1: batten 2").click()
    expect(app.locator(".kept")).to_contain_text("batten 2 kept")
    app.reload()
    wait_for_kernel(app)
    go(app, "Set")
    expect(app.locator(".slip h2")).to_have_text(["batten 1", "batten 2"])
    app.evaluate("location.hash = '#book'")
    app.get_by_role("link", name="Setup 1").click()
    expect(app.locator(".lights")).to_contain_text("Same as batten 1, not read itself")


def test_any_light_of_the_set_has_its_twin_by_one_tap_that_can_be_taken_back(app: Page) -> None:
    for name, x, y in [("batten 1", "0.3760", "0.3860"), ("key", "0.3810", "0.3770")]:
        type_xy(app, x, y, name)
        keep(app)
    go(app, "Set")
    slip = open_slip(app, "batten 1")
    slip.get_by_role("button", name="One more like it: batten 2").click()
    expect(app.get_by_text("batten 2 kept, the same as batten 1")).to_be_visible()
    expect(app.locator(".slip h2")).to_have_text(["batten 1", "key", "batten 2"])
    app.get_by_role("button", name="Undo", exact=True).click()
    expect(app.locator(".slip h2")).to_have_text(["batten 1", "key"])


def test_what_to_dial_stands_in_every_form_and_leads_to_what_the_forms_mean(app: Page) -> None:
    type_xy(app, "0.4476", "0.4074")
    app.get_by_text("Why, and what to dial instead").click()
    facts = app.locator("ek-light .facts")
    expect(facts).to_contain_text("x 0.")
    expect(facts).to_contain_text(" K, no plus or minus green")
    app.get_by_role("link", name="Duv, CC and cuts").click()
    row = app.locator("ek-tint tr", has_text="full minus green")
    expect(row).to_contain_text("−30.0")
    expect(row).to_contain_text("−0.0")


def box(where_: Locator) -> tuple[float, float]:
    """The top and bottom of what is shown, in the view."""
    found = where_.bounding_box()
    assert found
    return found["y"], found["y"] + found["height"]


#: By each way: the labels of its fields, and what is typed.
WAYS = {
    "x y": (["x", "y"], ["4012", "3991"]),
    "CCT and Duv": (["CCT", "Duv"], ["3500", "0.006"]),
    "Mired and Cuts": (["Mired", "Cuts"], ["286", "1/4"]),
}


def with_a_keyboard(page: Page, way: str) -> tuple[list[str], list[str]]:
    """A phone with its keyboard up, one way chosen: labels of the fields, what is typed."""
    if way == "Mired and Cuts":
        go(page, "Kit")
        for form in ("mired", "cuts of plus and minus green"):
            page.get_by_role("radio", name=form, exact=True).check()
        go(page, "Light")
    page.set_viewport_size({"width": 390, "height": 480})
    expect(page.locator("html[data-short]")).to_be_attached()
    page.get_by_role("radio", name=way, exact=True).check()
    return WAYS[way]


@pytest.mark.parametrize("way", WAYS)
def test_over_a_keyboard_fields_and_answer_are_both_in_sight(app: Page, way: str) -> None:
    labels, values = with_a_keyboard(app, way)
    for label, value in zip(labels, values, strict=True):
        field(app, label).click()
        app.keyboard.type(value)
    before = box(field(app, labels[1]))
    expect(headline(app)).to_be_visible()
    assert box(field(app, labels[1])) == before  # no jump as the answer lands
    bar = box(app.locator("ek-light .bar"))[0]
    answer = box(headline(app))
    assert answer[0] >= 0
    for label in labels:
        top, bottom = box(field(app, label))
        assert answer[1] <= top
        assert bottom <= bar
    field(app, "Illuminance").click()
    app.keyboard.type("860")
    assert box(headline(app))[0] >= 0
    assert box(headline(app))[1] <= box(field(app, "Illuminance"))[0]
    assert box(field(app, "Illuminance"))[1] <= bar
    app.get_by_role("button", name="Keep", exact=True).click()
    expect(app.locator(".kept")).to_be_visible()


#: Writes down where the field that is typed into goes, frame by frame, and what is called wrong.
WATCH_THE_FIELD = """() => {
    const told = window.told = [];
    let last = null, top = 0;
    const look = () => {
        const field = document.activeElement;
        const now = field.getBoundingClientRect().top;
        if (field === last && Math.abs(now - top) > 1) told.push(`${field.id} by ${now - top} px`);
        for (const one of document.querySelectorAll("main .problem")) told.push(one.textContent);
        [last, top] = [field, now];
        requestAnimationFrame(look);
    };
    look();
}"""


@pytest.mark.parametrize("way", WAYS)
def test_no_field_moves_nor_complains_while_a_number_is_typed(app: Page, way: str) -> None:
    """So slowly that every keystroke is asked: half a number is often wrong."""
    labels, values = with_a_keyboard(app, way)
    full = [f"0.{value}" if way == "x y" else value for value in values]
    field(app, labels[0]).click()
    expect(app.locator("html[data-short][data-typing]")).to_be_attached()
    app.evaluate(WATCH_THE_FIELD)
    for label, value in [*zip(labels, full, strict=True), ("Illuminance", "860")]:
        field(app, label).click()
        app.evaluate("told.length = 0")  # to a field that is chosen the page may go
        app.keyboard.type(value, delay=150)
        assert app.evaluate("told") == [], label
    expect(headline(app)).to_be_visible()
    field(app, labels[0]).fill("7")
    expect(app.locator("main .problem")).to_be_visible()  # once nothing more is typed
