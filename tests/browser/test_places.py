"""Set, Book and Kit: the whole setup, the log, and what the answers rest on."""

from __future__ import annotations

import re

from conftest import Site, ask, wait_for_kernel
from hands import go, headline, keep_light, mean_white, open_demo, open_slip, type_xy
from playwright.sync_api import BrowserContext, Page, Route, expect


def test_the_set_says_who_is_out_and_what_to_hang(app: Page) -> None:
    open_demo(app)
    expect(headline(app)).to_have_text("3 of 6 out")
    batten = app.locator(".slip", has_text="batten 2")
    # Strongly green: minus green, or a sheet of magenta.
    expect(batten.locator(".hang")).to_contain_text(re.compile("minus green|magenta"))
    expect(batten).to_contain_text("stop")
    expect(app.locator(".slip", has_text="fill")).to_contain_text("Leave it alone")
    field = app.get_by_role("img", name="Balance field")
    expect(field.locator("circle.light")).to_have_count(6)
    expect(field).to_have_attribute("aria-label", re.compile("batten 2"))
    expect(app.locator(".caution")).to_be_visible()


def test_a_reading_that_cannot_be_used_is_told_and_the_others_are_answered(
    page: Page, site: Site, context: BrowserContext
) -> None:
    # While the kernel is not there yet, whatever is typed is kept.
    held: list[Route] = []
    context.route("**/kernel.pack", lambda route: held.append(route))
    page.goto(site.url)
    keep_light(page, "slip of the finger", "0.3810", "3.770")
    keep_light(page, "fill", "0.3279", "0.3402")
    for route in held:
        route.continue_()
    go(page, "Set")
    wait_for_kernel(page)
    bad = page.locator(".slip", has_text="slip of the finger")
    expect(bad.locator(".problem")).to_be_visible()
    expect(headline(page)).to_have_text("The light is where it is meant to be")
    expect(page.locator(".slip", has_text="fill")).to_contain_text("Leave it alone")
    page.get_by_role("link", name="Balance everything").click()
    expect(page.locator(".warnings")).to_contain_text("slip of the finger is left out")
    expect(page.locator(".hanging > li")).to_have_count(1)


def test_a_reference_light_is_matched(app: Page) -> None:
    open_demo(app)
    app.get_by_text("Match", exact=True).click()
    app.get_by_label("Or match another light").select_option("batten 1")
    hero = app.locator(".slip", has=app.get_by_role("heading", name="batten 1"))
    expect(hero).to_contain_text("reference")
    expect(hero).to_contain_text("holds")
    expect(hero).to_contain_text("Leave it alone")


def test_a_light_of_the_set_is_read_again(app: Page) -> None:
    open_demo(app)
    open_slip(app, "key")
    app.get_by_role("button", name="Read again: key").click()
    expect(app.get_by_role("heading", name="key, again")).to_be_visible()
    expect(app.locator(".chips")).to_contain_text("1/4 CTO")


def test_the_set_is_shared_as_text(app: Page) -> None:
    app.context.grant_permissions(["clipboard-read", "clipboard-write"])
    app.evaluate("delete Navigator.prototype.share")
    open_demo(app)
    mean_white(app, "practical on the counter")
    app.get_by_role("button", name="Share as text").click()
    expect(app.get_by_text("Copied")).to_be_visible()
    text = app.evaluate("navigator.clipboard.readText()")
    assert "Ticket hall · 2 The last sailing, matched to 4300 K" in text
    lines = text.splitlines()
    at = lines.index("practical on the counter: 2690 K, out")
    # What it is off by, what to hang, its stop, its ratio: each on a line of its own.
    block = [line for line in lines[at + 1 : at + 6] if line.startswith("  ")]
    assert any(line.startswith("  Hang full CTB: lands") for line in block)
    assert len(block) >= 3
    assert all(line.count(" · ") <= 1 and ". " not in line for line in block)


def test_an_empty_set_leads_to_light(app: Page) -> None:
    go(app, "Set")
    app.get_by_role("link", name="Read a light").click()
    expect(app.get_by_label("x", exact=True)).to_be_visible()


def test_what_is_deleted_comes_back_by_undo(app: Page) -> None:
    keep_light(app, "key", "0.3810", "0.3770")
    keep_light(app, "fill", "0.3820", "0.3780")
    go(app, "Book")
    app.get_by_role("link", name="Setup 1").click()
    app.get_by_role("button", name="Delete key").click()
    expect(app.locator(".lights > li")).to_have_count(1)
    app.get_by_role("button", name="Undo").click()
    expect(app.locator(".lights > li")).to_have_count(2)
    app.get_by_text("Change Setup 1").click()
    app.get_by_role("button", name="Delete Setup 1").click()
    expect(app.get_by_text("it may have been deleted")).to_be_visible()
    go(app, "Set")
    expect(app.locator(".slip")).to_have_count(0)
    app.get_by_role("button", name="Undo").click()
    expect(app.locator(".slip")).to_have_count(2)
    app.reload()
    expect(app.locator(".slip")).to_have_count(2)


def test_locations_and_setups_are_named_and_opened_again(app: Page) -> None:
    keep_light(app, "key", "0.3810", "0.3770")
    go(app, "Book")
    app.get_by_role("button", name="New location in Production").click()
    app.get_by_role("textbox", name="New location").fill("Car deck")
    app.get_by_role("button", name="Save").click()
    expect(app.get_by_role("heading", name="Car deck")).to_be_visible()
    app.get_by_role("button", name="New setup in Car deck").click()
    app.get_by_role("textbox", name="New setup").fill("Headlights")
    app.get_by_role("button", name="Save").click()
    go(app, "Light")
    expect(app.locator(".place")).to_contain_text("Car deck · Headlights")
    go(app, "Book")
    first = app.locator(".location", has=app.get_by_role("heading", name="First location"))
    first.get_by_role("link", name="Setup 1").click()
    app.get_by_text("Change Setup 1").click()
    app.get_by_role("button", name="Rename Setup 1").click()
    app.get_by_label("Name", exact=True).fill("Counter")
    app.get_by_role("button", name="Save").click()
    app.get_by_role("button", name="Work here: Counter").click()
    expect(app.locator(".place")).to_contain_text("First location · Counter")


def test_a_setup_is_opened_with_the_white_it_was_read_against(app: Page) -> None:
    open_demo(app)
    go(app, "Book")
    app.get_by_role("link", name="3 Between the cars").click()
    app.get_by_role("button", name="Work here: 3 Between the cars").click()
    expect(app.locator(".against summary")).to_contain_text("3200 K")


def test_a_book_of_many_setups_shows_the_newest_first(app: Page) -> None:
    open_demo(app)
    app.evaluate(
        """() => new Promise((resolve, reject) => {
            const opening = indexedDB.open("evenkelvin-demo");
            opening.onsuccess = () => {
                const tx = opening.result.transaction("entries", "readwrite");
                const store = tx.objectStore("entries");
                const all = store.getAll();
                all.onsuccess = () => {
                    const hall = all.result.find(e => e.data.name === "Ticket hall").of;
                    for (let i = 0; i < 300; i += 1) {
                        const id = `many-${String(i).padStart(17, "0")}`;
                        const at = new Date(Date.UTC(2026, 0, 1) + i * 3600e3).toISOString();
                        store.put({id, at, thing: "setup", of: id, parent: hall, after: [],
                                   data: {name: `Old ${i}`}});
                    }
                };
                tx.oncomplete = () => { opening.result.close(); resolve(); };
                tx.onerror = reject;
            };
        })"""
    )
    app.reload()
    go(app, "Book")
    expect(app.locator("a.setup")).to_have_count(20)
    old = app.locator(".setup", has_text="Old ")
    expect(old.first).to_contain_text("Old 299")
    expect(old.nth(1)).to_contain_text("Old 298")
    app.get_by_role("button", name="earlier setups").click()
    expect(app.locator(".setup")).to_have_count(40)


def test_gel_out_of_stock_is_not_advised(app: Page) -> None:
    type_xy(app, "0.44758", "0.40745", name="practical")
    expect(headline(app)).to_contain_text("CTB")
    go(app, "Kit")
    app.locator(".family summary", has_text="Orange and blue").click()
    app.get_by_role("button", name="None in stock").first.click()
    expect(app.locator(".family summary").first).to_contain_text("0 of 10")
    go(app, "Light")
    expect(headline(app)).not_to_be_empty()
    expect(headline(app)).not_to_contain_text("CTB")


def test_a_gel_shows_its_curve(app: Page) -> None:
    go(app, "Kit")
    app.locator(".family summary", has_text="Orange and blue").click()
    app.get_by_role("button", name="Curve of full CTO").click()
    curve = app.get_by_role("img", name="full CTO lets through")
    expect(curve.locator("polyline")).to_be_visible()


def test_a_white_that_cannot_be_is_told(app: Page) -> None:
    go(app, "Kit")
    app.get_by_label("CCT", exact=True).fill("32000")
    expect(app.locator("#kit-cct-problem")).to_contain_text("10")
    go(app, "Light")
    type_xy(app, "0.3810", "0.3770")
    expect(app.locator("ek-light .problem")).to_contain_text("white to match")


def test_tolerance_can_be_typed_in_steps(app: Page) -> None:
    type_xy(app, "0.4215", "0.4022")
    go(app, "Kit")
    app.get_by_role("button", name="3200 K").click()
    app.get_by_role("radio", name="Steps").check()
    app.get_by_label("Holds within").fill("40")
    go(app, "Light")
    expect(headline(app)).to_have_text("Leave it alone")


def test_the_lamps_offered_are_those_the_kernel_knows(app: Page) -> None:
    offered = app.get_by_label("Lamp type").locator("option")
    kinds = [lamp["kind"] for lamp in ask(app, {"ask": "kit"})["lamps"]]
    assert offered.evaluate_all("options => options.map(o => o.value)") == kinds


def test_a_production_holds_nothing_that_nobody_made(app: Page) -> None:
    go(app, "Book")
    app.get_by_role("button", name="New production").click()
    app.get_by_role("textbox", name="New production").fill("The Night Ferry")
    app.get_by_role("button", name="Save").click()
    # A production has locations: the first is asked for at once.
    app.get_by_role("textbox", name="New location").fill("Ticket hall")
    app.get_by_role("button", name="Save").click()
    expect(app.get_by_role("heading", level=3)).to_have_text(["Ticket hall"])
    expect(app.locator("a.setup")).to_have_count(0)
    expect(app.get_by_text("First location")).to_have_count(0)
    go(app, "Light")
    expect(app.locator(".place")).to_contain_text("Ticket hall")
    keep_light(app, "key", "0.3810", "0.3770")
    go(app, "Book")
    expect(app.locator("a.setup strong")).to_have_text(["Setup 1"])

    # One whose location nobody named gets one with the first light, and not the light elsewhere.
    app.get_by_role("button", name="New production").click()
    app.get_by_role("textbox", name="New production").fill("Second unit")
    app.get_by_role("button", name="Save").click()
    app.get_by_role("button", name="Cancel").click()
    expect(app.get_by_role("heading", level=3)).to_have_text(["Ticket hall"])
    go(app, "Light")
    keep_light(app, "key", "0.3820", "0.3780")
    go(app, "Book")
    second = app.locator(".production", has=app.get_by_role("heading", name="Second unit"))
    expect(second.locator("a.setup")).to_contain_text("1 light")


def test_a_phone_on_its_side_shows_a_field_in_the_demo(app: Page) -> None:
    open_demo(app)
    app.set_viewport_size({"width": 844, "height": 390})
    go(app, "Light")
    app.wait_for_timeout(300)
    field = app.get_by_label("x", exact=True).bounding_box()
    thumb = app.get_by_role("navigation").bounding_box()
    assert field
    assert thumb
    assert field["y"] > 0
    assert field["y"] + field["height"] <= thumb["y"]
    app.get_by_label("x", exact=True).fill("0.3810")
    expect(app.get_by_label("x", exact=True)).to_be_in_viewport()
