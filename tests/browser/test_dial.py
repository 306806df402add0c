"""Dialling: converge on a white, know what is out of reach, remember the lamp; offline."""

from __future__ import annotations

from conftest import wait_for_kernel
from hands import go, headline, keep_light, open_demo, open_slip
from playwright.sync_api import Page, expect

D55 = ("0.33243", "0.34744")


def open_dial(page: Page, light: str) -> None:
    go(page, "Set")
    open_slip(page, light)
    page.get_by_role("link", name=f"What to dial on {light}").click()
    expect(page.locator("ek-dial").get_by_test_id("headline")).to_be_visible()


def measure(page: Page, x: float, y: float) -> None:
    page.locator("#measured-x").fill(f"{x:.4f}")
    page.locator("#measured-y").fill(f"{y:.4f}")
    page.get_by_role("button", name="Keep this reading").click()
    expect(page.locator("#measured-x")).to_have_value("")


def lamp(page: Page) -> tuple[float, float]:
    """What a lamp gives that answers to its dial with less gain and a shift."""
    x, y = (float(page.locator(f"#dialled-{name}").input_value()) for name in "xy")
    return 0.006 + 0.97 * x, -0.004 + 0.98 * y


def test_a_lamp_is_dialled_to_the_white_and_remembered(offline: Page) -> None:
    app = offline
    app.get_by_label("Lamp type").select_option("LED, colour mixing")
    keep_light(app, "panel", *D55)
    open_dial(app, "panel")
    first = headline(app).inner_text().split(" K")[0]
    expect(app.locator("#dialled-x")).not_to_have_value("")
    for _ in range(3):
        if app.get_by_text("It holds: leave it.").is_visible():
            break
        measure(app, *lamp(app))
        expect(app.locator("ek-dial .answer[aria-busy=false] .verdict")).to_be_visible()
    expect(app.get_by_text("It holds: leave it.")).to_be_visible()
    expect(headline(app)).not_to_contain_text(f"{first} K")
    settled = headline(app).inner_text().split(" K")[0]
    expect(app.get_by_role("table", name="Dialled so far")).to_contain_text("closest")

    # The kit remembers it: the same lamp in another setup starts where this one ended.
    go(app, "Kit")
    expect(app.locator("ek-kit-lamps")).to_contain_text("panel")
    go(app, "Book")
    app.get_by_role("button", name="New location").click()
    app.get_by_role("textbox", name="New location").fill("Car deck")
    app.get_by_role("button", name="Save").click()
    go(app, "Light")
    app.get_by_label("Lamp type").select_option("LED, colour mixing")
    keep_light(app, "panel", *D55)
    open_dial(app, "panel")
    expect(app.get_by_role("table", name="Dialled so far")).to_have_count(0)
    expect(headline(app)).to_contain_text(f"{settled} K")
    app.get_by_role("button", name="Forget it").click()
    expect(headline(app)).to_contain_text(f"{first} K")


def test_reach_is_told_with_the_gel_that_helps_and_primaries_are_driven(app: Page) -> None:
    open_demo(app)
    open_dial(app, "edge")
    app.get_by_label("Colour range from").fill("5000")
    app.get_by_label("to", exact=True).fill("6500")
    app.get_by_label("to", exact=True).press("Tab")
    answer = app.locator("ek-dial .answer")
    expect(answer).to_contain_text("out of this lamp's reach")
    expect(answer.locator(".pack")).to_contain_text("CTO")
    expect(headline(app)).to_contain_text("5000 K")
    app.get_by_label("to", exact=True).fill("4000")
    app.get_by_label("to", exact=True).press("Tab")
    expect(app.locator("#dial-to_K-problem")).to_be_visible()
    app.get_by_label("to", exact=True).fill("6500")
    app.get_by_label("to", exact=True).press("Tab")
    expect(headline(app)).to_contain_text("5000 K")
    app.locator("#measured-x").fill("3.7")
    app.locator("#measured-y").fill("0.37")
    expect(app.locator("#measured-x-problem")).to_be_visible()
    expect(app.get_by_role("button", name="Keep this reading")).to_be_disabled()
    app.reload()  # what is half typed is still there
    expect(app.locator("#measured-x")).to_have_value("3.7")

    wait_for_kernel(app)
    app.locator("summary", has_text="Drive its primaries").click()
    # The primaries of ITU-R BT.709, as bright as its white asks for.
    for name, x, y, lux in (
        ("red", "0.64", "0.33", "213"),
        ("green", "0.30", "0.60", "715"),
        ("blue", "0.15", "0.06", "72"),
    ):
        app.get_by_label("Name of the primary").fill(name)
        app.locator("#primary-x").fill(x)
        app.locator("#primary-y").fill(y)
        app.locator("#primary-amount").fill(lux)
        app.get_by_role("button", name="Add this primary").click()
        expect(app.get_by_role("row", name=name)).to_be_visible()
    table = app.get_by_role("table", name="How far to drive")
    expect(table.get_by_role("row", name="red")).to_contain_text("100 %")
    expect(app.locator("ek-drive .figures")).to_contain_text("4300 K")
    app.get_by_role("radio", name="Likest spectrum").check()
    expect(app.locator("ek-drive .problem")).to_contain_text("spectrum of every primary")
    app.get_by_role("radio", name="Most light").check()
    app.locator("ek-drive").get_by_role("button", name="Keep in the book").click()
    go(app, "Set")
    app.locator("summary", has_text="1 result kept here").click()
    expect(app.locator("ek-findings")).to_contain_text("edge: red 100 %")
