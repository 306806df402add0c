"""Sweep: a wall read point by point, its lamps trimmed and read again, offline and kept."""

from __future__ import annotations

import re

from conftest import wait_for_kernel
from hands import go, headline
from playwright.sync_api import Locator, Page, expect

#: Nine levels in the order of the walk: from the lower left, there and back.
WALK = ["410", "520", "700", "640", "560", "480", "500", "600", "620"]
BATTEN_1 = ["150", "210", "420", "330", "260", "200", "230", "260", "300"]
BATTEN_2 = ["255", "300", "275", "300", "295", "270", "265", "330", "310"]


def open_sweep(page: Page) -> None:
    go(page, "Set")
    page.get_by_role("link", name="Sweep").click()
    expect(pad(page)).to_be_visible()


def pad(page: Page) -> Locator:
    return page.locator("#sweep-level")


def choose(page: Page, name: str) -> None:
    """Tap a choice by its words, which lie over the round."""
    page.locator("label", has=page.get_by_role("radio", name=name)).click()


def press(page: Page, digits: str) -> None:
    """On the pad's own keys, as a thumb does."""
    for digit in digits:
        page.locator(".pad .keys").get_by_role("button", name=digit, exact=True).click()


def walk(page: Page, levels: list[str]) -> None:
    """One walk: the first number is ended by hand, the others move on by themselves."""
    press(page, levels[0])
    page.get_by_role("button", name="Next").click()
    for level in levels[1:]:
        press(page, level)
    expect(pad(page)).to_be_hidden()


def cell(page: Page, n: int) -> Locator:
    return page.get_by_role("button", name=re.compile(f"^Point {n}:"))


def test_a_wall_is_read_trimmed_and_read_again(offline: Page) -> None:
    page = offline
    open_sweep(page)
    walk(page, WALK)
    expect(headline(page)).to_have_text("Lower left is 0.4 stops under; the rest is within ⅓ stop.")
    # Back and forth: the fourth number of the walk stands at the right of the second row.
    expect(cell(page, 6)).to_contain_text("640")
    expect(cell(page, 4)).to_contain_text("480")
    expect(cell(page, 1)).to_contain_text("▼ −0.4")
    expect(page.locator(".surface polyline").first).to_be_attached()

    for name, levels in (("Lamp 1", BATTEN_1), ("Lamp 2", BATTEN_2)):
        page.get_by_role("button", name="Add a lamp").click()
        page.get_by_role("textbox", name=name).fill(f"batten {name[-1]}")
        page.get_by_role("button", name=f"Read batten {name[-1]}").click()
        walk(page, levels)
    table = page.get_by_role("table")
    expect(table).to_contain_text("batten 1")
    expect(table).to_contain_text("batten 2")
    expect(page.get_by_text("Dimming alone does not get there. Move batten 2")).to_be_visible()
    expect(page.get_by_text("let it cool before you move it")).to_be_visible()

    # Planned beside measured.
    choose(page, "Planned")
    planned = cell(page, 1).inner_text()
    assert "410" not in planned
    page.get_by_role("button", name="Dimmed: read again").click()
    walk(page, ["331", "409", "478", "471", "426", "370", "384", "466", "464"])
    expect(page.get_by_role("radio", name="Read again")).to_be_checked()
    expect(cell(page, 1)).to_contain_text("331")
    expect(cell(page, 1)).to_contain_text(f"plan {planned.split()[0]}")

    # Kept: it is there after the app was opened anew, with its lamps.
    page.reload()
    wait_for_kernel(page)
    expect(page.get_by_role("heading", level=1)).to_contain_text("Surface 1")
    expect(cell(page, 3)).to_contain_text("700")
    expect(page.get_by_role("table")).to_contain_text("batten 2")
    go(page, "Book")
    page.get_by_role("link", name=re.compile("Setup 1")).first.click()
    page.get_by_role("link", name="Report").click()
    sheet = page.locator(".surface-sheet")
    expect(sheet).to_contain_text("Lower left is 0.4 stops under")
    expect(sheet).to_contain_text("batten 2 100 %")
    page.go_back()
    page.get_by_role("link", name="Surface 1").click()
    expect(cell(page, 1)).to_contain_text("410")


def test_nine_points_take_nine_times_three_digits_and_two_taps(app: Page) -> None:
    go(app, "Set")
    app.evaluate("""() => {
        window.taps = 0;
        addEventListener("click", () => { window.taps += 1; }, true);
    }""")
    app.get_by_role("link", name="Sweep").click()
    pad(app).wait_for()
    pad(app).focus()
    app.keyboard.type(WALK[0])
    app.get_by_role("button", name="Next").click()
    for level in WALK[1:]:
        app.keyboard.type(level)
    expect(pad(app)).to_be_hidden()
    expect(headline(app)).to_contain_text("Lower left is 0.4 stops under")
    assert app.evaluate("window.taps") <= 2


def test_a_number_with_a_digit_more_waits_for_it(app: Page) -> None:
    open_sweep(app)
    press(app, "980")
    app.get_by_role("button", name="Next").click()
    press(app, "1040")
    expect(cell(app, 2)).to_contain_text("1040")
    press(app, "990")
    app.get_by_role("button", name="Next").click()
    expect(cell(app, 3)).to_contain_text("990")
    # A touch on a cell leads back to it.
    cell(app, 1).click()
    expect(pad(app)).to_have_value("980")
    pad(app).fill("970")
    expect(cell(app, 1)).to_contain_text("970")


def test_what_cannot_be_read_is_said_at_its_cell_and_the_others_stand(app: Page) -> None:
    open_sweep(app)
    press(app, "500")
    app.get_by_role("button", name="Next").click()
    press(app, "0.")
    app.get_by_role("button", name="Next").click()
    press(app, "300")
    app.get_by_role("button", name="Next").click()
    expect(cell(app, 2)).to_contain_text("!")
    expect(cell(app, 2)).to_have_accessible_name(re.compile("lux"))
    expect(cell(app, 3)).to_contain_text("▼")


def test_the_aim_is_a_touched_point_or_a_level(app: Page) -> None:
    open_sweep(app)
    walk(app, WALK)
    # At once, while the surface is still being kept: it is not lost.
    choose(app, "a level")
    expect(app.get_by_role("heading", level=1)).to_contain_text("Surface 1")
    expect(app.get_by_role("radio", name="a level")).to_be_checked()
    cell(app, 3).click()
    choose(app, "point 3")
    expect(cell(app, 3)).to_contain_text("● 0.0")
    choose(app, "a level")
    app.get_by_label("Level to aim at").fill("1400")
    expect(cell(app, 3)).to_contain_text("▼ −1.0")


def test_a_green_screen_gets_no_gel_but_a_sweep(app: Page) -> None:
    app.locator("#light-x").fill("0.3012")
    app.locator("#light-y").fill("0.5874")
    expect(headline(app)).to_have_text("This is a colour, not a white")
    expect(app.locator(".packs")).to_have_count(0)
    app.get_by_role("link", name="Sweep this surface").click()
    app.get_by_text("Name, colour, size").click()
    app.get_by_label("Type x and y at each point too").check()
    pad(app).focus()
    app.keyboard.type("301258744")
    expect(pad(app)).to_have_value("4")
    app.keyboard.type("12")
    app.keyboard.press("Enter")
    app.keyboard.type("29885901398")
    app.keyboard.press("Enter")
    expect(cell(app, 2)).to_contain_text("398")
    expect(app.get_by_text(re.compile("The colour differs by up to"))).to_be_visible()
    # What was mistyped is put right from its cell, colour and level.
    cell(app, 1).click()
    expect(pad(app)).to_have_value("0.3012")
    pad(app).fill("3002")
    expect(pad(app)).to_have_value("0.5874")
    pad(app).fill("5874")
    expect(pad(app)).to_have_value("412")
    cell(app, 1).click()
    expect(pad(app)).to_have_value("0.3002")


def test_free_points_on_a_photo(app: Page, tmp_path: object) -> None:
    open_sweep(app)
    app.get_by_label("Points across × up").select_option("Where I tap on a photo")
    picture = app.screenshot()
    app.locator("#sweep-photo").set_input_files(
        {"name": "wall.png", "mimeType": "image/png", "buffer": picture}
    )
    photo = app.locator(".surface img")
    expect(photo).to_be_visible()
    for x, y, lux in ((60, 60, "300"), (250, 80, "420"), (150, 300, "380")):
        photo.click(position={"x": x, "y": y})
        press(app, lux)
        if lux == "300":
            app.get_by_role("button", name="Next").click()
    expect(headline(app)).to_contain_text("stop")
    expect(app.locator(".surface .cell")).to_have_count(3)
    expect(app.locator(".surface polyline").first).to_be_attached()
    # One touched by mistake is taken away, its reading kept for second thoughts.
    cell(app, 2).click()
    app.get_by_role("button", name="Delete point 2").click()
    expect(app.locator(".surface .cell")).to_have_count(2)
    expect(cell(app, 2)).to_contain_text("380")
    app.get_by_role("button", name="Undo").click()
    expect(cell(app, 2)).to_contain_text("420")
    expect(app.locator(".surface .cell")).to_have_count(3)


def test_a_surface_stands_in_its_own_setup_wherever_one_works(app: Page) -> None:
    open_sweep(app)
    walk(app, WALK)
    expect(app.get_by_role("heading", level=1)).to_contain_text("Surface 1")
    mine = app.get_by_role("heading", level=1).get_by_role("link").inner_text()
    expect(app).to_have_url(re.compile("#sweep/."))
    address = app.url
    go(app, "Book")
    app.get_by_role("link", name=re.compile("Setup 1")).first.click()
    app.get_by_role("button", name="Duplicate for a pick-up").click()
    expect(app).to_have_url(re.compile("#set$"))
    app.goto(address)
    expect(app.get_by_role("heading", level=1).get_by_role("link")).to_have_text(mine)
    # From the book a new one goes into the setup it is begun in.
    go(app, "Book")
    app.get_by_role("link", name=re.compile("Setup 1(?!, pick-up)")).first.click()
    app.get_by_role("button", name="A new surface").click()
    expect(pad(app)).to_be_visible()
    expect(app.get_by_role("heading", level=1).get_by_role("link")).to_have_text(mine)


def test_the_points_are_saved_as_a_table(app: Page) -> None:
    open_sweep(app)
    walk(app, WALK)
    expect(app.get_by_role("heading", level=1)).to_contain_text("Surface 1")
    app.get_by_text("Name, colour, size").click()
    with app.expect_download() as download:
        app.get_by_role("button", name="Save as a table").click()
    text = download.value.path().read_text("utf-8")
    assert text.splitlines()[1].startswith("1,0.166667,0.166667,,,410")
