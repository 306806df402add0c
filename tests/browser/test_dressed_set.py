"""A dressed set: lights that are not meant to be the white, from typing to the visitor's copy."""

from __future__ import annotations

import re
from typing import Any

from conftest import wait_for_kernel, wait_until_kept
from hands import (
    chip,
    choose,
    copied_link,
    go,
    headline,
    keep,
    open_demo,
    open_slip,
    share_by_clipboard,
    type_xy,
    visitor,
    work_here,
)
from playwright.sync_api import Page, expect

from evenkelvin.desk import answer

WHITE = {"cct_K": "3200", "duv": "0"}

#: A night interior: the lights, and what those are meant to be that are not meant white.
INTERIOR: dict[str, dict[str, Any]] = {
    "key": {},
    "fill": {},
    "back": {},
    "bedside practical": {"warmer_mired": "60"},
    "moon at the window": {"cooler_mired": "65"},
    "hall door": {"as_through": ["1/2 CTO"]},
}


def where(meant: dict[str, Any]) -> tuple[str, str]:
    """The x y that a light reads which is what it is meant to be."""
    question = {"ask": "fix", "reading": WHITE, "target": WHITE, "meant": meant or None}
    aim = answer(question)["target"]
    return f"{aim['x']:.4f}", f"{aim['y']:.4f}"


def mean(page: Page, meant: dict[str, Any]) -> None:
    """Say on Light what the light that is typed is meant to be."""
    if "warmer_mired" in meant:
        row = choose(page, "Warmer")
        row.get_by_role("button", name="5 mired more").click(click_count=1)
        row.get_by_role("button", name="5 mired more").click()
        expect(row.get_by_label("Beside the white")).to_have_value("60")
        expect(row.get_by_test_id("meant-at")).to_have_text("That is 2680 K, beside 3200 K.")
        expect(chip(page)).to_contain_text("60 mired warmer")
    elif "cooler_mired" in meant:
        row = choose(page, "Cooler")
        row.get_by_label("Beside the white").fill(meant["cooler_mired"])
        expect(row.get_by_test_id("meant-at")).to_have_text("That is 4040 K, beside 3200 K.")
    elif meant:
        row = choose(page, "As through gel")
        expect(row).to_contain_text("Nothing changes until this is filled in")
        row.get_by_label("As the white would be through").select_option(meant["as_through"][0])
        expect(chip(page)).to_contain_text("the white through 1/2 CTO")


def dress(page: Page) -> None:
    page.locator(".against summary").click()
    page.get_by_role("button", name="3200 K").click()
    for name, meant in INTERIOR.items():
        type_xy(page, *where(meant), name=name)
        mean(page, meant)
        expect(page.locator(".answer .now")).to_contain_text("holds")
        keep(page)
        expect(page.get_by_label("x", exact=True)).to_have_value("")


def test_a_night_interior_is_dressed_shared_and_opened_by_a_visitor(app: Page) -> None:
    share_by_clipboard(app)
    wait_until_kept(app)
    dress(app)
    go(app, "Set")
    expect(headline(app)).to_have_text("All 6 where they are meant to be")
    expect(app.locator(".slip > details > summary .verdict.holds")).to_have_count(6)
    # A ring for each colour that is meant: the white, and three beside it.
    expect(app.locator("ek-set .chart .tolerance")).to_have_count(4)
    expect(app.locator("ek-set .chart .tolerance.beside")).to_have_count(3)

    app.get_by_role("button", name="Share as text").click()
    expect(app.get_by_text("Copied. Paste it")).to_be_visible()
    text = app.evaluate("navigator.clipboard.readText()")
    assert "Meant: 60 mired warmer" in text
    assert text.count("Meant: ") == 3
    assert "null" not in text
    assert "undefined" not in text

    # Taken back, it is out; nobody judges it as found; and back again.
    practical = open_slip(app, "bedside practical")
    choose(practical, "White")
    expect(headline(app)).to_have_text("1 of 6 out")
    expect(practical.locator(".hang")).not_to_have_text("Leave it alone")
    choose(practical, "As found")
    expect(headline(app)).to_have_text("All 5 where they are meant to be")
    expect(app.locator("ek-set .answer")).to_contain_text("1 as found: bedside practical")
    expect(practical.locator("> details > summary .verdict")).to_have_text("as found")
    row = choose(practical, "Warmer")
    row.get_by_label("Beside the white").fill("60")
    expect(headline(app)).to_have_text("All 6 where they are meant to be")
    app.reload()
    wait_for_kernel(app)
    expect(headline(app)).to_have_text("All 6 where they are meant to be")
    expect(chip(open_slip(app, "bedside practical"))).to_contain_text("60 mired warmer")

    # The list to send for and the print say the same.
    app.evaluate("location.hash = '#balance'")
    expect(app.locator(".plan").first).to_contain_text(
        re.compile(r"all 6 (are )?where they are meant")
    )

    go(app, "Book")
    app.get_by_role("link", name="Setup 1").click()
    expect(app.locator(".lights .verdict.holds")).to_have_count(6)
    setup = app.evaluate("location.hash.split('/')[1]")
    app.evaluate(f"location.hash = '#report/{setup}'")
    printed = app.locator("ek-report .slip", has_text="moon at the window")
    expect(printed).to_contain_text("Meant: 65 mired cooler than the white")
    expect(printed.locator(".verdict.holds")).to_be_visible()
    app.evaluate(f"location.hash = '#share/{setup}'")
    visit(app, copied_link(app))


def visit(app: Page, link: str) -> None:
    """As somebody who has never been here opens it, adds it, and looks at the set."""
    with visitor(app, link) as page:
        expect(page.locator("ek-copy")).to_contain_text("moon at the window")
        page.get_by_role("button", name="Add to my book").click()
        page.get_by_role("link", name="To the book").click()
        page.get_by_role("link", name="Setup 1").click()
        expect(page.locator(".lights .verdict.holds")).to_have_count(6)
        work_here(page, "Setup 1")
        go(page, "Set")
        expect(headline(page)).to_have_text("All 6 where they are meant to be")
        expect(chip(open_slip(page, "hall door"))).to_contain_text("the white through 1/2 CTO")


def test_a_practical_is_dimmed_to_what_it_is_meant_to_be(app: Page) -> None:
    lamp = {"x": "0.4234", "y": "0.3990", "lamp": "tungsten"}
    app.get_by_label("Lamp type").select_option("tungsten")
    app.get_by_label("Illuminance", exact=True).fill("200")
    type_xy(app, lamp["x"], lamp["y"], "practical")
    app.locator(".against summary").click()
    app.get_by_role("button", name="3200 K").click()
    choose(app, "Warmer")
    found = answer(
        {"ask": "fix", "reading": lamp | {"role": "practical"}, "target": WHITE}
        | {"meant": {"warmer_mired": 50}}
    )["dim"]
    assert found["verdict"] == "holds"
    expect(headline(app)).to_have_text(found["words"])
    keep(app)
    go(app, "Set")
    expect(open_slip(app, "practical").locator(".hang")).to_have_text(found["words"])
    open_slip(app, "practical").get_by_role("link", name="Dim practical").click()
    expect(app.locator(".answer .now")).to_contain_text("holds")
    slider = app.get_by_label("Dimmed by")
    assert abs(float(slider.input_value()) - found["stops"]) <= 0.05
    expect(app.locator("ek-dim .warnings")).to_contain_text("estimate")
    expect(app.locator("ek-dim .chart circle.light")).to_have_count(2)
    # Elsewhere on the slider it lands elsewhere.
    slider.fill("-4")
    darker = answer({"ask": "dim", "reading": lamp, "stops": "-4"})
    expect(app.locator(".answer .now")).to_contain_text(darker["words"])
    expect(app.locator(".answer .now")).to_contain_text("out")
    app.get_by_role("button", name="Where it is meant to be").click()
    expect(app.locator(".answer .now")).to_contain_text("holds")
    app.get_by_role("button", name="Read it again at that setting").click()
    expect(app.get_by_role("heading", name="practical, again")).to_be_visible()
    share = answer({"ask": "dim", "reading": lamp, "stops": f"{found['stops']:.1f}"})
    expect(app.get_by_label("Dimmer", exact=True)).to_have_value(
        f"{share['percent_light']:.0f} % of its light"
    )
    expect(chip(app)).to_contain_text("50 mired warmer")
    # What is read there corrects the law for this lamp.
    measured = {"x": "0.4630", "y": "0.4080", "lamp": "tungsten"}
    type_xy(app, measured["x"], measured["y"])
    keep(app)
    go(app, "Set")
    open_slip(app, "practical").get_by_role("link", name="Dim practical").click()
    expect(app.locator("ek-dim")).to_contain_text("Corrected by 1 reading of this lamp")
    slider.fill("-4")
    pairs = [{"percent_light": share["percent_light"], "measured": measured}]
    taught = answer({"ask": "dim", "reading": lamp, "stops": "-4", "pairs": pairs})
    assert taught["words"] != darker["words"]
    expect(app.locator(".answer .now")).to_contain_text(taught["words"])


def test_an_offset_carries_its_tint(app: Page) -> None:
    type_xy(app, "0.3810", "0.3770", "moonlight")
    choose(app, "Cooler")
    app.get_by_role("textbox", name="Tint in Duv").fill("-0.003")
    asked = {"cooler_mired": 50, "duv": -0.003}
    white = {"cct_K": 5600}
    found = answer(
        {"ask": "fix", "reading": {"x": "0.3810", "y": "0.3770"}, "target": white, "meant": asked}
    )
    expect(headline(app)).to_have_text(found["packs"][0]["words"], ignore_case=True)
    expect(chip(app)).to_contain_text("50 mired cooler, Duv -0.003")
    choose(app, "Warmer")
    expect(chip(app)).to_contain_text("50 mired warmer, Duv -0.003")


def test_the_demo_shows_what_lights_are_meant_to_be(app: Page) -> None:
    open_demo(app)
    practical = open_slip(app, "practical on the counter")
    expect(chip(practical)).to_contain_text("140 mired warmer")
    expect(practical.locator("> details > summary .verdict")).to_have_text("holds")


def test_a_meaning_that_cannot_be_is_told_where_it_is_typed(app: Page) -> None:
    type_xy(app, "0.4234", "0.3990", "lamp")
    row = choose(app, "Warmer")
    row.get_by_label("Beside the white").fill("lots")
    expect(row.locator(".problem")).to_contain_text("lots")
    expect(row.get_by_label("Beside the white")).to_have_value("lots")
    row.get_by_label("Beside the white").fill("800")
    expect(row.locator(".problem")).not_to_be_empty()
    choose(app, "Own colour")
    row.get_by_label("CCT", exact=True).fill("2700")
    expect(row.get_by_test_id("meant-at")).to_contain_text("2700 K")
    expect(app.locator(".answer .now")).to_contain_text("meant")
    # In a circle, each light says so by name.
    keep(app)
    type_xy(app, "0.4300", "0.4010", "lamp 2")
    choose(app, "Like…")
    expect(chip(app)).to_contain_text("like lamp")
    keep(app)
    go(app, "Set")
    choose(open_slip(app, "lamp"), "Like…")
    expect(open_slip(app, "lamp").locator("> details > summary .problem")).to_contain_text(
        "in a circle"
    )
