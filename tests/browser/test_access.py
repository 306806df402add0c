"""Everybody can use it: axe, keyboard, width, size of targets, both themes."""

from __future__ import annotations

from pathlib import Path

import pytest
from conftest import ROOT, Site, wait_for_kernel
from hands import go, headline, keep, open_demo, type_xy
from playwright.sync_api import Browser, Page, expect

AXE = ROOT / "webapp" / "node_modules" / "axe-core" / "axe.min.js"
HALL = "ab8esF7wy12msnhzI2gKcg"  # the ticket hall of the demo
EDGE = "Rm4vQx2TqLw0kE9sYbC7Ag"  # a colour-mixing light of it
PLACES = (
    "light", "set", "balance", "mix", "unmix", "flash", f"dial/{EDGE}", "book", "kit", "cautions",
    "exposure", "flicker", "order", "rolls",
    f"windows/{HALL}", f"sun/{HALL}",
)  # fmt: skip


def show(page: Page, place: str) -> None:
    """Go to a place and give it something to show."""
    page.evaluate(f"location.hash = '#{place}'")
    name = place.split("/")[0]
    expect(page.locator(f"ek-{name} h1")).to_be_visible()
    if name == "rolls":
        page.get_by_role("button", name="Add to the stock").click()
    if name == "balance":
        expect(page.locator(".plan").first).to_be_visible()
    if name in ("unmix", "flash"):
        page.get_by_label("x", exact=True).first.fill("0.3700")
        page.get_by_label("y", exact=True).first.fill("0.3720")
    if name == "flash":
        page.get_by_label("Exposure").fill("12")
        page.get_by_label("Reading of the ambient").select_option("batten 1")
    if name in ("mix", "unmix", "flash", "dial"):
        expect(headline(page)).to_be_visible()
    if name == "windows":
        page.get_by_label("Width").fill("2.4")
        page.get_by_label("Height").fill("1.8")
        expect(headline(page)).to_be_visible()
    if name == "sun":
        page.get_by_label("Latitude").fill("53.55")
        page.get_by_label("Longitude").fill("9.99")
        page.get_by_label("The window looks").fill("200")
        expect(page.get_by_role("img", name="Height of the sun")).to_be_visible()


def violations(page: Page) -> list[str]:
    """What axe-core finds against WCAG 2.2 A and AA and best practice."""
    found = page.evaluate(
        """async () => (await axe.run(document, {
            runOnly: ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"],
        })).violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.html} ${n.failureSummary}`))"""
    )
    return list(found)


@pytest.mark.parametrize("scheme", ["dark", "light"])
def test_axe_finds_nothing(phone_browser: Browser, site: Site, scheme: str) -> None:
    context = phone_browser.new_context(
        viewport={"width": 390, "height": 844},
        color_scheme=scheme,  # type: ignore[arg-type]
        bypass_csp=True,
    )
    context.add_init_script(Path(AXE).read_text())
    page = context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    expected = "daylight" if scheme == "light" else "dark"
    expect(page.locator(f"html[data-theme={expected}]")).to_be_attached()
    assert violations(page) == []  # the empty states
    type_xy(page, "0.4x", "0.40")
    expect(page.locator(".problem")).to_be_visible()
    assert violations(page) == []
    go(page, "Book")
    assert violations(page) == []
    open_demo(page)
    for place in PLACES:
        show(page, place)
        if place == "light":
            type_xy(page, "0.44758", "0.40745", name="practical")
            expect(page.get_by_role("img", name="Balance field")).to_be_visible()
        for summary in page.locator("main summary").all():
            if summary.is_visible():
                summary.click()
        for curve in page.get_by_role("button", name="Curve of full").all():
            if curve.is_visible():
                curve.click()
        assert violations(page) == [], place
    context.close()


def test_the_main_job_by_keyboard_alone(app: Page) -> None:
    def tab_to(role: str, name: str) -> None:
        target = app.get_by_role(role, name=name, exact=True)  # type: ignore[arg-type]
        for _ in range(40):
            if target.evaluate("e => e === document.activeElement"):
                return
            app.keyboard.press("Tab")
        raise AssertionError(f"Tab never reaches {name}")

    tab_to("textbox", "x")
    app.keyboard.type("0.44758")
    tab_to("textbox", "y")
    app.keyboard.type("0.40745")
    tab_to("textbox", "Name")
    app.keyboard.type("practical")
    expect(headline(app)).to_contain_text("CTB")
    app.keyboard.press("Enter")  # Enter in a field keeps
    expect(app.locator(".kept")).to_be_visible()
    tab_to("link", "Set")
    app.keyboard.press("Enter")
    expect(app.locator("ek-set h1")).to_be_focused()
    expect(app.locator(".slip")).to_contain_text("practical")


@pytest.mark.parametrize("width", [390, 320])
def test_nothing_scrolls_sideways_and_targets_are_large(app: Page, width: int) -> None:
    app.set_viewport_size({"width": width, "height": 844})
    open_demo(app)
    for place in PLACES:
        show(app, place)
        if place == "light":
            type_xy(app, "0.44758", "0.40745", name="practical")
            expect(app.get_by_role("img", name="Balance field")).to_be_visible()
            keep(app)
        wide = app.evaluate("document.documentElement.scrollWidth")
        assert wide <= width, f"{place} is {wide} px wide"
        small = app.evaluate(
            """() => [...document.querySelectorAll("button, select, summary, input, a[href]")]
                .filter(e => e.checkVisibility() && !e.closest("p") && !e.matches(".skip"))
                .map(e => ["checkbox", "radio"].includes(e.type) ? e.closest("label") : e)
                .map(e => [e.outerHTML.slice(0, 90), e.getBoundingClientRect()])
                .filter(([, r]) => r.height < 44 || r.width < 44)
                .map(([html, r]) => `${html} ${r.width}×${r.height}`)"""
        )
        assert small == [], place


def test_one_tap_changes_the_theme_and_it_stays(app: Page) -> None:
    before = app.get_attribute("html", "data-theme")
    app.get_by_role("button", name="Go d").click()
    expect(app.locator("html")).not_to_have_attribute("data-theme", before or "")
    after = app.get_attribute("html", "data-theme")
    app.reload()
    expect(app.locator("html")).to_have_attribute("data-theme", after or "")
