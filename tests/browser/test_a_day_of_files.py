"""A scout's day comes in as a folder of files; the sun is asked by a position in one piece."""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import offline_page
from day_of_files import load, meter_file
from hands import go, headline, open_slip
from playwright.sync_api import Browser, Page, expect
from test_around_the_reading import open_sun, open_windows


@pytest.fixture(scope="module")
def shared(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """One page for the whole module, its server stopped; every test opens the demo afresh."""
    with offline_page(phone_browser, dist, timezone_id="Europe/Berlin") as page:
        yield page


def test_a_folder_of_sixty_readings_becomes_the_day_s_lights(demo: Page, tmp_path: Path) -> None:
    titles = ["Bow window", "Stern window", "Skylight"]
    for number in range(58):
        meter_file(tmp_path, number, titles[number % 3])
    for number in (58, 59):
        meter_file(tmp_path, number, "")
    load(demo, tmp_path, 60)
    # The earliest first, whatever the files are called.
    expect(demo.locator(".in-file h2").first).to_have_text("R060.txt")
    expect(demo.locator(".in-file").first).to_contain_text("900 lx")
    # One question for those that have no title, whatever their number.
    expect(demo.get_by_role("group", name="readings have no title")).to_have_count(1)
    demo.get_by_role("radio", name="readings of one light").check()
    demo.get_by_role("button", name="Keep all 60").click()
    expect(demo.locator("ek-set")).to_contain_text("Bow window", timeout=30_000)
    for title in (*titles, "R002"):
        assert open_slip(demo, title).count() == 1
    go(demo, "Book")
    expect(demo.locator("ek-book")).to_be_visible()


def test_a_folder_asks_what_is_open_once(demo: Page, tmp_path: Path) -> None:
    for number in range(12):
        meter_file(tmp_path, number, "Bow window", day="05/06/2026", lux="100 200")
    meter_file(tmp_path, 12, "Stern window")
    load(demo, tmp_path, 13)
    asked = demo.locator("ek-files select:not([id^=of-], #files-lamp)")
    expect(asked).to_have_count(3)
    order = demo.get_by_label("is the day first, or the month?")
    expect(order).to_have_count(1)
    expect(demo.locator("ek-files")).to_contain_text("12 files ask the same")
    expect(demo.locator(".in-file", has_text="Jun 5").first).to_be_visible()
    order.select_option("month_first")
    expect(demo.locator(".in-file", has_text="May 6")).to_have_count(12)
    expect(asked).to_have_count(3)
    demo.get_by_label("is that one number").select_option("together")
    expect(demo.locator(".in-file", has_text="100200 lx")).to_have_count(12)
    expect(demo.locator(".in-file .problem")).to_have_count(0)
    # Another day is another setup, until the person says otherwise.
    expect(demo.get_by_role("button", name="Keep all 13 in 2 setups")).to_be_visible()
    demo.get_by_role("radio", name="one setup").check()
    demo.get_by_role("button", name="Keep all 13 in 2 The last sailing").click()
    expect(demo.locator("ek-set")).to_contain_text("Stern window", timeout=30_000)
    assert open_slip(demo, "Bow window").count() == 1


def test_a_day_parts_into_setups_as_the_person_says(demo: Page, tmp_path: Path) -> None:
    # Two lights read in turn, within the same minutes; after a pause another two.
    for number, title in enumerate(["Key", "Fill", "Key", "Fill"]):
        meter_file(tmp_path, number, title)
    for number, title in enumerate(["Deck key", "Deck fill", "Deck key"], 20):
        meter_file(tmp_path, number, title)
    load(demo, tmp_path, 7)
    ways = demo.get_by_role("group", name="They make")
    groups = demo.locator("ek-files ul.plain li")
    # Proposed: nothing was read on both sides of the pause.
    expect(ways.get_by_role("radio", name="a setup after each pause")).to_be_checked()
    expect(groups).to_have_text([
        "Wed, Nov 25, 2026, 08:00 AM–08:27 AM: 2 lights, 4 readings",
        "Wed, Nov 25, 2026, 11:00 AM–11:18 AM: 2 lights, 3 readings",
    ])  # fmt: skip
    ways.get_by_role("radio", name="a setup for each title").check()
    expect(groups).to_have_count(4)
    ways.get_by_role("radio", name="one setup").check()
    expect(groups).to_have_count(0)
    expect(demo.get_by_role("button", name="Keep all 7 in 2 The last sailing")).to_be_visible()
    ways.get_by_role("radio", name="a setup after each pause").check()
    demo.get_by_label("Lamp type of all 7").select_option("daylight")
    demo.get_by_role("button", name="Keep all 7 in 2 setups").click()
    expect(demo.locator("ek-set")).to_contain_text("Deck key", timeout=30_000)
    assert open_slip(demo, "Deck fill").count() == 1
    go(demo, "Book")
    for name in ("08:00 AM–08:27 AM", "11:00 AM–11:18 AM"):
        expect(demo.get_by_role("link", name=re.compile(name)).first).to_be_visible()
    demo.get_by_role("link", name=re.compile("08:00 AM–08:27 AM")).first.click()
    expect(demo.locator("main")).to_contain_text("Key")
    expect(demo.locator("main")).to_contain_text("Fill")
    expect(demo.locator("main")).not_to_contain_text("Deck")
    # As daylight they are what a window can go by.
    open_windows(demo)
    expect(demo.locator("#windows-0-light")).to_contain_text("Deck key")


def test_a_second_folder_of_the_day_goes_on_with_the_lights_of_the_first(
    demo: Page, tmp_path: Path
) -> None:
    first, second = tmp_path / "first", tmp_path / "second"
    first.mkdir()
    second.mkdir()
    for number, title in enumerate(["Back Key", "Back Fill", "Back Key", ""]):
        meter_file(first, number, title)
        meter_file(second, number, title)  # the card still holds the morning
    for number, title in enumerate(["back  key ", "Kicker"], 4):
        meter_file(second, number, title)
    # The card still holds the fill under another name, and a twin read the same in that minute.
    fill = (second / "R059.txt").read_text()
    (second / "copy.txt").write_text(fill)
    (second / "twin.txt").write_text(fill.replace("Back Fill", "Back Fill, far side"))
    for folder, count in ((first, 4), (second, 8)):
        load(demo, folder, count)
        demo.get_by_role("radio", name="one setup").check()
        demo.get_by_role("button", name=f"Keep all {count} in").click()
        expect(demo.locator("ek-set")).to_contain_text("Back Key", timeout=30_000)
    expect(demo.get_by_text("3 readings kept. 5 readings were here already.")).to_be_visible()
    for title in ("Back Key", "Back Fill", "Back Fill, far side", "Kicker"):
        assert open_slip(demo, title).count() == 1
    # Seven readings of that day, not twelve.
    go(demo, "Book")
    demo.get_by_role("link", name="2 The last sailing").first.click()
    expect(demo.locator("a.reading", has_text="Nov 25")).to_have_count(7)


def test_a_position_in_one_piece_and_a_horizon_point_by_point(demo: Page) -> None:
    open_sun(demo, "Car deck")
    demo.get_by_label("Latitude").fill("53° 33′ N, 9° 59.4′ E")
    demo.get_by_label("Date").fill("2026-10-27")
    expect(headline(demo)).to_contain_text("Sunrise")
    demo.get_by_label("The window looks").fill("S")
    expect(headline(demo)).to_contain_text("Direct sun in the window facing south")
    demo.locator("summary", has_text="Point by point").click()
    for n, (direction, height) in enumerate([("SE", "40"), ("SW", "40")]):
        demo.get_by_role("button", name="Add a point").click()
        demo.locator(f"#sun-horizon-{n}-azimuth_deg").fill(direction)
        demo.locator(f"#sun-horizon-{n}-altitude_deg").fill(height)
    # At noon the sun stands 23.6° high (geometry): below the line.
    expect(headline(demo)).to_contain_text("No direct sun in the window facing south")
    expect(demo.locator("ek-sun .change")).to_contain_text("% of the sky")
    demo.get_by_role("button", name="Keep with the location").click()
    expect(demo.get_by_text("Kept with Car deck")).to_be_visible()
    expect(demo.get_by_label("Longitude")).to_have_value("9.99")
    expect(demo.locator("#sun-horizon-1-altitude_deg")).to_have_value("40")


def test_the_day_in_one_picture_and_an_hour_of_it_for_the_set(demo: Page) -> None:
    open_sun(demo, "Ticket hall")
    demo.get_by_label("Latitude").fill("53.55, 9.99")
    demo.get_by_role("button", name="Tue, Oct 27, 2026").click()
    rows = demo.locator("ol.numbered li")
    expect(rows).to_have_count(6)
    expect(demo.get_by_role("img", name="Duv", exact=True).locator("circle")).to_have_count(6)
    times = [text.split()[0] for text in rows.all_inner_texts()]
    assert times == sorted(times)
    time_of_day = times[-1]
    rows.last.get_by_role("button").click()
    expect(demo.get_by_text(f"daylight at {time_of_day} is on Set")).to_be_visible()
    go(demo, "Set")
    slip = open_slip(demo, f"daylight at {time_of_day}")
    assert slip.count() == 1
    # A hand that slips finds the same light again, not a second.
    go(demo, "Book")


def test_lists_say_what_was_read_and_a_note_has_several_lines(demo: Page) -> None:
    go(demo, "Book")
    demo.get_by_role("link", name="2 The last sailing").first.click()
    first = demo.locator("a.reading").first
    expect(first).to_contain_text(" K, Duv ", timeout=20_000)
    first.click()
    demo.get_by_role("button", name="Change").click()
    demo.get_by_label("Note").fill("by the door\nsecond line")
    demo.get_by_label("Stage").select_option("repeat")
    demo.get_by_role("button", name="Save").click()
    note = demo.locator("dd .note")
    expect(note).to_have_css("white-space", "pre-line")
    assert note.inner_text().splitlines() == ["by the door", "second line"]
    expect(demo.locator("dl.facts")).to_contain_text("repeat")


def test_what_is_shared_is_chosen_and_its_size_is_said(demo: Page) -> None:
    go(demo, "Book")
    demo.get_by_role("link", name="2 The last sailing").first.click()
    demo.get_by_role("link", name="Share", exact=True).click()
    size = demo.locator("ek-share fieldset [role=status]")
    expect(size).to_contain_text(re.compile(r"^The link: [\d.]+ kB, or \d+ codes$"))
    before = size.inner_text()
    notes = demo.get_by_role("checkbox", name=re.compile("Notes"))
    expect(notes).to_be_checked()
    notes.uncheck()
    expect(size).not_to_have_text(before)
    expect(size).to_contain_text("kB")
    with demo.expect_download() as taking:
        demo.get_by_role("button", name="Share the file").click()
    text = Path(taking.value.path()).read_text("utf-8")
    assert '"note"' not in text
    assert '"reading"' in text
    notes.check()
    expect(size).to_have_text(before)
