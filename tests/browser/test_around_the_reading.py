"""Exposure, flicker, windows, order and sun, where the question arises; with the server dead."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import offline_page, wait_for_kernel
from hands import go, headline, keep, open_demo, open_slip, type_xy
from playwright.sync_api import Browser, Locator, Page, expect

# CIE illuminant D55: x 0.33243, y 0.34744 (CIE 15; Ohno 2013).
D55 = ("0.33243", "0.34744")


@pytest.fixture(scope="module")
def shared(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """One page for the whole module, its server stopped; every test opens the demo afresh."""
    with offline_page(phone_browser, dist, timezone_id="Europe/Berlin") as page:
        yield page


@pytest.fixture
def demo(shared: Page) -> Page:
    """The demo afresh, with the units of a new phone: it opens in those of the person."""
    go(shared, "Kit")
    shared.get_by_role("radio", name="Metres").check()
    shared.locator("summary", has_text="Filter, lens").click()
    shared.get_by_role("radio", name="Thirds").check()
    open_demo(shared)
    return shared


def stop_line(page: Page) -> Locator:
    return page.locator(".stop-line strong")


def shared_text(page: Page, button: str) -> str:
    page.get_by_role("button", name=button).click()
    expect(page.get_by_text("Copied")).to_be_visible()
    text: str = page.evaluate("navigator.clipboard.readText()")
    page.get_by_role("button", name="Dismiss").last.click()
    return text


def test_a_reading_with_lux_tells_the_stop_and_more_on_demand(demo: Page) -> None:
    go(demo, "Light")
    type_xy(demo, *D55, name="window")
    expect(demo.locator(".stop-line")).to_have_count(0)
    # ISO 2720 with C 250: at ISO 800 and 1/48 s, E = 4²·250·48/800 = 240 lx asks for f/4.
    demo.get_by_label("Illuminance").fill("240")
    expect(stop_line(demo)).to_have_text("f/4")
    expect(demo.locator(".stop-line")).to_contain_text("ISO 800, 24 fps, 180°")
    expect(demo.locator(".stop-line")).to_contain_text("with the gel")
    demo.get_by_role("link", name="More on exposure").click()
    answer = demo.get_by_test_id("exposure-answer")
    expect(answer).to_have_text("f/4")
    # Two stops less at twice the distance: the inverse square.
    demo.get_by_label("Distance from the lamp where").fill("2")
    demo.get_by_label("It is to read").fill("60")
    expect(demo.get_by_test_id("falloff-answer")).to_contain_text("4 m (13.1 ft) from the lamp")
    expect(demo.get_by_test_id("falloff-answer")).to_contain_text("2 stops less")
    demo.get_by_label("Asked").select_option("How far to lose…")
    demo.get_by_label("It is to lose").fill("1")
    expect(demo.get_by_test_id("falloff-answer")).to_contain_text("2.83 m")
    demo.get_by_label("Wanted").select_option("How much light it takes")
    demo.get_by_label("Stop on the lens").fill("f/5.6")
    # f/5.6 stands for 4·√2, a stop more than 240 lx.
    expect(answer).to_contain_text("470 lx")
    demo.get_by_role("link", name="Back to the light").click()
    expect(stop_line(demo)).to_have_text("f/4")


def test_a_flash_is_read_in_lux_seconds(demo: Page) -> None:
    go(demo, "Light")
    type_xy(demo, *D55, name="strobe")
    demo.get_by_label("Lamp type").select_option("Flash")
    # N² = H·S/C = 20·800/250 = 64.
    demo.get_by_label("A burst reads").fill("20")
    expect(stop_line(demo)).to_have_text("f/8")
    keep(demo)
    go(demo, "Set")
    strobe = demo.locator(".slip", has=demo.get_by_role("heading", name="strobe"))
    expect(strobe.locator(".level")).to_contain_text("f/8")
    # Lux and lux·s have no ratio.
    expect(strobe.locator(".level")).not_to_contain_text("to key")


def test_the_camera_of_the_kit_moves_the_stop_and_a_bad_one_is_told(demo: Page) -> None:
    go(demo, "Kit")
    demo.get_by_label("Speed").fill("200")
    demo.locator("summary", has_text="Filter, lens").click()
    demo.get_by_role("radio", name="Tenths").check()
    demo.get_by_label("Filter on the lens").fill("x")
    expect(demo.locator("#camera-filter-problem")).to_contain_text("not a number")
    go(demo, "Light")
    type_xy(demo, *D55)
    demo.get_by_label("Illuminance").fill("240")
    expect(demo.locator(".stop-line")).to_contain_text("not a number")
    demo.locator(".stop-line a").click()
    demo.locator("summary", has_text="Filter, lens").click()
    demo.get_by_label("Filter on the lens").fill("1,1")
    go(demo, "Light")
    # Two stops slower and 1.1 for the filter: f/4 less 3.1 stops.
    expect(stop_line(demo)).to_have_text("f/1 and 9 tenths")


def test_the_set_tells_each_light_against_the_key_and_warns_of_the_mains(demo: Page) -> None:
    fill = demo.locator(".slip", has=demo.get_by_role("heading", name="fill"))
    # 330 lx on the key, 160 on the fill: a ratio of 2.06.
    expect(fill.locator(".level")).to_contain_text("to key 1:2.06, 1 stop under")
    # 24 frames at 180° on 50 Hz beat; 172.8° holds two pulses (common practice, no source).
    warning = demo.locator("ek-mains-warning")
    expect(warning).to_contain_text("Ticket hall is on 50 Hz mains")
    warning.get_by_role("link").click()
    expect(demo.get_by_test_id("flicker-answer")).to_contain_text("use 172.8°")
    expect(demo.locator(".values", has_text="172.8°").first).to_be_visible()
    demo.locator("summary", has_text="Camera").click()
    demo.get_by_label("Angle").last.fill("172.8")
    expect(demo.get_by_test_id("flicker-answer")).to_contain_text("Steady")
    go(demo, "Set")
    open_slip(demo, "fill")
    expect(fill.locator(".level")).to_be_visible()
    expect(warning).not_to_contain_text("50 Hz")


def test_an_unknown_light_is_told_from_two_shutters(demo: Page) -> None:
    demo.evaluate("location.hash = '#flicker'")
    expect(demo.get_by_test_id("flicker-answer")).to_be_visible()  # it stands above the form
    demo.get_by_role("radio", name="Not known").check()
    demo.get_by_label("Shutter 1").fill("1/60")
    demo.get_by_label("Shutter 2").fill("1/80")
    expect(demo.locator("ek-flicker")).to_contain_text("240 pulses a second")
    demo.get_by_label("Shutter 2").fill("1/60")
    expect(demo.locator("ek-flicker .problem")).to_contain_text("two different shutter times")
    demo.get_by_role("radio", name="Known rate").check()
    demo.get_by_label("Pulses of light").fill("1000")
    demo.locator("summary", has_text="How deep").click()
    demo.get_by_label("Duty of the pulse").fill("20")
    expect(demo.get_by_test_id("flicker-answer")).to_be_visible()


def open_windows(page: Page) -> None:
    go(page, "Book")
    page.get_by_role("link", name="Windows of Ticket hall").click()
    expect(page.get_by_role("heading", name="Windows: Ticket hall")).to_be_visible()


def test_windows_are_planned_kept_shared_and_ordered(demo: Page) -> None:
    open_windows(demo)
    demo.get_by_role("button", name="Take full CTO off").click()
    demo.get_by_label("Panes across").fill("1")
    demo.get_by_label("Name").fill("North")
    demo.get_by_label("Width").fill("2,4")
    demo.get_by_label("Height").fill("wide")
    expect(demo.locator("#windows-0-height-problem")).to_contain_text("not a number")
    demo.get_by_label("Height").fill("1.8")
    demo.get_by_label("How many").fill("3")
    # Strips of 1.2 m leave no room for the overlap of two on 2.4 m: seams, unless by panes.
    expect(headline(demo)).to_contain_text("seams")
    demo.get_by_label("Panes across").fill("2")
    expect(headline(demo)).to_contain_text("2 rolls of 1.22 × 7.62 m; no seam")
    demo.get_by_label("Take it from the fix").select_option("north windows")
    demo.get_by_role("button", name="Hang full CTO").click()
    demo.locator("summary", has_text="Where each piece").click()
    drawing = demo.get_by_role("img", name="Roll 1,")
    expect(drawing.locator("rect.piece")).to_have_count(4)
    expect(demo.locator("ek-windows .cautions")).to_contain_text("traps heat")
    text = shared_text(demo, "Share the cut list")
    assert "6 of 1.2 × 1.8 m, North" in text
    assert "Hang full CTO" in text
    assert "traps heat" in text
    demo.locator("summary", has_text="Neutral density").click()
    demo.get_by_label("Light inside the window now").fill("4000")
    demo.get_by_label("It is to read").fill("500")
    expect(demo.get_by_test_id("nd-answer")).to_contain_text("ND 0.6")
    # f/4 takes 240 lx at ISO 800 and 1/48 s: four stops under 4000, of which the colour takes one.
    demo.get_by_role("radio", name="As a stop on the lens").check()
    demo.get_by_role("textbox", name="Stop on the lens").fill("4")
    expect(demo.get_by_test_id("nd-answer")).to_contain_text("ND 0.9")
    demo.get_by_role("button", name="Keep with the location").click()
    expect(demo.get_by_text("Kept with Ticket hall")).to_be_visible()
    demo.reload()
    wait_for_kernel(demo)
    expect(demo.get_by_label("Width")).to_have_value("2,4")
    demo.evaluate("location.hash = '#report/Ov7BHcvnGzKkkOCyDdFerg'")
    expect(demo.locator("div.sheet")).to_contain_text("3 of 2,4 m × 1.8 m, 2 × 1 panes each, North")
    demo.go_back()
    expect(demo.locator(".chips")).to_contain_text("full CTO")
    go(demo, "Kit")
    demo.get_by_role("link", name="Order", exact=True).click()
    order = demo.get_by_test_id("order")
    expect(order).to_contain_text("full CTO: 2 of 1.22 × 7.62 m")
    expect(order).to_contain_text("6 of 1.2 × 1.8 m (Ticket hall, North)")
    # What the set advises is in it too, until it is left out.
    expect(order).to_contain_text("1/8 minus green")
    demo.get_by_label("With what is advised").uncheck()
    expect(order).not_to_contain_text("1/8 minus green")
    demo.get_by_label("With what is advised").check()
    demo.get_by_role("radio", name="All").check()
    expect(order).to_contain_text("HMI")
    demo.get_by_role("radio", name="Location").check()
    expect(order).not_to_contain_text("HMI")
    demo.get_by_role("link", name="Stock and sizes").click()
    demo.get_by_role("button", name="Add to the stock").click()
    demo.get_by_label("Gel", exact=True).select_option("full CTO")
    demo.get_by_label("Width").fill("1.22")
    demo.get_by_label("Length").fill("7.62")
    demo.get_by_label("How many").fill("3")
    demo.get_by_role("link", name="Order", exact=True).click()
    expect(order).to_contain_text("full CTO: enough in stock")
    assert "full CTO: enough in stock" in shared_text(demo, "Share the order")


def test_the_order_counts_every_layer_and_takes_off_what_is_cut_already(demo: Page) -> None:
    # A doubled gel of 12 pieces a layer, 0.6 m square: 24 of them are a roll of 1.22 × 7.62 m full.
    go(demo, "Set")
    open_slip(demo, "practical on the counter").get_by_role(
        "button", name="Read again: practical"
    ).click()
    for _ in range(2):
        demo.get_by_label("Gel already on it").select_option("1/2 CTB")
    demo.get_by_role("radio", name="x y", exact=True).check()
    type_xy(demo, "0.3740", "0.3730")
    keep(demo)
    go(demo, "Kit")
    demo.get_by_role("link", name="Order", exact=True).click()
    demo.get_by_label("With what is advised").uncheck()
    demo.get_by_label("To stay uncut").fill("0")
    order = demo.get_by_test_id("order").locator("li", has_text="1/2 CTB")
    expect(order).to_contain_text("2 of 0.6 × 0.6 m (practical on the counter)")
    demo.get_by_text("Size of each lamp's gel").click()
    size = demo.get_by_role("group", name="practical on the counter")
    size.get_by_label("Pieces per layer").fill("13")
    size.get_by_role("button", name="Keep").click()
    expect(order).to_contain_text("26 of 0.6 × 0.6 m (practical on the counter)")
    expect(order).to_contain_text("1/2 CTB: 2 of 1.22 × 7.62 m")
    expect(order).to_contain_text("26 of them hang already")
    go(demo, "Kit")
    demo.locator("summary", has_text="Orange and blue").click()
    demo.get_by_label("Pieces of 1/2 CTB there are").fill("2")
    demo.get_by_role("link", name="Order", exact=True).click()
    expect(order).to_contain_text("1/2 CTB: 1 of 1.22 × 7.62 m")
    expect(order).to_contain_text("2 pieces are cut already")
    assert "  2 pieces are cut already" in shared_text(demo, "Share the order")


def test_sizes_in_feet_and_inches(demo: Page) -> None:
    go(demo, "Kit")
    demo.get_by_role("radio", name="Feet").check()
    open_windows(demo)
    demo.get_by_role("button", name="Remove north windows").click()
    demo.get_by_label("Width").fill("3' 6\"")
    demo.get_by_label("Height").fill("5")
    demo.get_by_role("button", name="Take full CTO off").click()
    expect(headline(demo)).to_contain_text("1 roll of 4′ × 25′")
    demo.locator("summary", has_text="Cut list").click()
    expect(demo.locator("ek-windows")).to_contain_text("1 of 3′ 6″ × 5′")


def open_sun(page: Page, place: str) -> None:
    go(page, "Book")
    page.get_by_role("link", name=f"Sun at {place}").click()
    expect(page.get_by_role("heading", name=f"Sun: {place}")).to_be_visible()


def test_the_day_of_the_sun_with_the_readings_of_the_book(demo: Page) -> None:
    open_sun(demo, "Ticket hall")
    expect(headline(demo)).to_contain_text("No direct sun in the window facing north")
    demo.get_by_label("Latitude").fill("53.55")
    demo.get_by_label("Longitude").fill("9.99")
    demo.get_by_role("button", name="Tue, Oct 27, 2026").click()
    # At noon 90° − 53.55° − 12.9° of southern declination: 23.6° (geometry).
    expect(demo.locator("ek-sun .change")).to_contain_text("24° high at most")
    demo.get_by_label("The window looks").fill("200")
    expect(headline(demo)).to_contain_text("Direct sun in the window facing south")
    expect(demo.get_by_role("img", name="Height of the sun").locator(".direct")).to_have_count(1)
    colour = demo.get_by_role("img", name="Colour of daylight")
    expect(colour.locator("circle.light")).to_have_count(6)
    expect(demo.locator("ek-sun")).to_contain_text("Estimate, not a reading")
    expect(demo.locator("ek-sun .caution").first).to_contain_text("never through a lens")
    demo.get_by_role("button", name="Keep with the location").click()
    expect(demo.get_by_text("Kept with Ticket hall")).to_be_visible()
    demo.reload()
    wait_for_kernel(demo)
    expect(demo.get_by_label("Latitude")).to_have_value("53.55")
    expect(demo.get_by_role("button", name="Keep with the location")).to_be_disabled()
    # The report has the day, the mains and the stops too.
    demo.evaluate("location.hash = '#report/Ov7BHcvnGzKkkOCyDdFerg'")
    sheet = demo.locator("div.sheet")
    expect(sheet).to_contain_text("Direct sun in the window facing south", timeout=20_000)
    expect(sheet).to_contain_text("Ticket hall is on 50 Hz mains")
    expect(sheet.locator(".slip").first).to_contain_text("at ISO 800, 24 fps, 180°")


def test_where_the_sun_does_not_set_it_says_so(demo: Page) -> None:
    open_sun(demo, "Car deck")
    expect(demo.locator(".answer")).to_contain_text("Type where it is")
    demo.get_by_label("Latitude").fill("70")
    demo.get_by_label("Longitude").fill("25")
    demo.get_by_label("Date").fill("2026-06-21")
    # The zone of this phone on that day, until it is typed.
    expect(demo.get_by_label("Clock ahead")).to_have_value("2")
    demo.get_by_label("Clock ahead").fill("3")
    expect(headline(demo)).to_contain_text("does not set")
    demo.get_by_label("Latitude").fill("700")
    expect(demo.locator("#sun-lat_deg-problem")).to_contain_text("between")
    demo.get_by_role("button", name="Use where I am").click()
    expect(demo.get_by_text("no permission to say where you are")).to_be_visible()
    demo.get_by_role("button", name="Dismiss").click()
    expect(demo.get_by_label("Latitude")).to_have_value("700")
    demo.context.grant_permissions(["geolocation"])
    demo.context.set_geolocation({"latitude": 53.54321, "longitude": -9.98765})
    demo.get_by_role("button", name="Use where I am").click()
    expect(demo.get_by_label("Latitude")).to_have_value("53.54321")
    expect(demo.get_by_label("Longitude")).to_have_value("-9.98765")


def test_a_location_that_is_gone_says_so(demo: Page) -> None:
    for place in ("windows", "sun"):
        demo.evaluate(f"location.hash = '#{place}/nowhere'")
        expect(demo.locator(".empty")).to_contain_text("not in the book")


def test_each_window_hangs_what_its_own_readings_ask_for_through_the_day(demo: Page) -> None:
    open_windows(demo)
    day = demo.locator("ek-windows section", has_text="Through the day").last
    held = demo.locator("ek-windows section.window")
    # The demo's day at the ticket hall has six readings of its daylight.
    expect(held).to_have_count(1)
    expect(held.locator("circle.ink")).to_have_count(6)
    expect(held).to_contain_text("As read at")
    slider = demo.get_by_label("Time of day")
    slider.fill("600")
    expect(held).to_contain_text("No reading before 16:")
    slider.fill("1010")
    expect(held).to_contain_text("Between the readings of")
    demo.locator("summary", has_text="Its facing, readings and gel").click()
    demo.get_by_role("radio", name="Its own").check()
    demo.get_by_label("The window looks toward").fill("NW")
    demo.locator("summary", has_text="What fits at 16:50").click()
    hang = held.locator("details li").get_by_role("button").first
    expect(hang).to_be_visible()
    gels = hang.inner_text().removeprefix("Hang ")
    hang.click()
    expect(held.locator("p").first).to_contain_text(gels)
    expect(held.get_by_role("img", name=re.compile("16:50|holds|Holds"))).to_be_visible()
    demo.get_by_role("button", name="Another size").click()
    demo.locator("#windows-1-name").fill("roof")
    demo.locator("#windows-1-width").fill("1")
    demo.locator("#windows-1-height").fill("1")
    expect(held).to_have_count(2)
    # What hangs otherwise is cut from rolls of its own, and the list says which.
    demo.locator("summary", has_text="Cut list").click()
    expect(demo.locator("ek-windows .answer li", has_text="m, roof")).to_contain_text("full CTO")
    expect(demo.locator("ek-windows .answer li", has_text="m, north windows")).to_contain_text(gels)
    expect(day).to_be_visible()
    demo.get_by_role("button", name="Keep with the location").click()
    expect(demo.get_by_text("Kept with Ticket hall")).to_be_visible()
    demo.reload()
    wait_for_kernel(demo)
    expect(held.first.locator("p").first).to_contain_text(gels)
    demo.evaluate("location.hash = '#order/location'")
    order = demo.locator("ek-order")
    for gel in dict.fromkeys(gels.split(" + ")):
        expect(order).to_contain_text(f"{gel}:")
    expect(order).to_contain_text("Ticket hall, roof")
    demo.evaluate("location.hash = '#report/Ov7BHcvnGzKkkOCyDdFerg'")
    sheet = demo.locator("div.sheet")
    expect(sheet).to_contain_text(f"hangs {gels}", timeout=20_000)
    expect(sheet).to_contain_text(re.compile("north windows: .*in the window facing north-west"))
    # How long it holds stands there as the windows' own page says it, on their last day.
    expect(sheet).to_contain_text(re.compile("How long what hangs holds, .*2026, for \\d+ K"))
    told = sheet.locator(".together", has_text="north windows").locator("p").inner_text()
    assert re.search(r": (Holds|Near|Out|Not known) ", told), told
    expect(sheet.locator(".together").get_by_role("img").first).to_be_visible()


def test_what_the_kit_has_none_of_is_marked_on_order_and_windows(demo: Page) -> None:
    order = demo.get_by_test_id("order").locator("li", has_text="full CTO").first
    demo.evaluate("location.hash = '#order/location'")
    expect(order).to_contain_text("full CTO")
    expect(order).not_to_contain_text("To fetch")
    go(demo, "Kit")
    demo.locator("summary", has_text="Orange and blue").click()
    gel = demo.locator("ek-kit .stock li").filter(
        has=demo.get_by_role("button", name="Curve of full CTO")
    )
    gel.get_by_role("checkbox").uncheck()
    demo.evaluate("location.hash = '#order/location'")
    expect(order).to_contain_text("To fetch, as the kit has none: full CTO")
    go(demo, "Book")
    demo.get_by_role("link", name="Windows of Ticket hall").click()
    marked = demo.get_by_text("To fetch, as the kit has none: full CTO")
    expect(marked.first).to_be_visible()
