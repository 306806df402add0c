"""A scout's day comes in as a folder of files; the sun is asked by a position in one piece."""

from __future__ import annotations

import re
import time
from collections.abc import Iterator
from pathlib import Path

import numpy as np
import pytest
from conftest import offline_page
from hands import go, headline, open_slip
from playwright.sync_api import Browser, Page, expect
from test_around_the_reading import open_sun

from evenkelvin.colorimetry.illuminant import planck

NM = range(380, 781, 5)


@pytest.fixture(scope="module")
def shared(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """One page for the whole module, its server stopped; every test opens the demo afresh."""
    with offline_page(phone_browser, dist, timezone_id="Europe/Berlin") as page:
        yield page


def meter_file(folder: Path, number: int, title: str) -> str:
    """A made-up file: the light falls and warms through the day."""
    body = planck(np.array(NM, dtype=float), 6000.0 - 40.0 * number).tolist()
    head = [f"Titel: {title}"] if title else []
    hour, minute = divmod(480 + 9 * number, 60)
    head += [f"Beleuchtungsstärke: {900 - number} lx", f"Datum: 25.11.2026, {hour}:{minute:02d}"]
    rows = [f"{nm};{value / max(body):.5f}" for nm, value in zip(NM, body, strict=True)]
    path = folder / f"R{60 - number:03d}.txt"
    path.write_text("\n".join([*head, *rows]).replace(".", ",").replace("25,11,2026", "25.11.2026"))
    return str(path)


def test_a_folder_of_sixty_readings_becomes_the_day_s_lights(demo: Page, tmp_path: Path) -> None:
    titles = ["Bow window", "Stern window", "Skylight"]
    for number in range(58):
        meter_file(tmp_path, number, titles[number % 3])
    for number in (58, 59):
        meter_file(tmp_path, number, "")
    demo.evaluate("location.hash = '#files'")
    began = time.monotonic()
    with demo.expect_file_chooser() as chooser:
        demo.get_by_label("Load a folder").click()
    chooser.value.set_files(str(tmp_path))
    expect(demo.locator(".in-file[aria-busy=false]")).to_have_count(60, timeout=30_000)
    print(f"60 files understood in {time.monotonic() - began:.2f} s")
    # The earliest first, whatever the files are called.
    expect(demo.locator(".in-file h2").first).to_have_text("R060.txt")
    expect(demo.locator(".in-file").first).to_contain_text("900 lx")
    # One question for those that bear no title, whatever their number.
    expect(demo.locator("fieldset.segments")).to_have_count(1)
    demo.get_by_role("radio", name="readings of one light").check()
    demo.get_by_role("button", name="Keep all 60").click()
    expect(demo.locator("ek-set")).to_contain_text("Bow window", timeout=30_000)
    for title in (*titles, "R002"):
        assert open_slip(demo, title).count() == 1
    go(demo, "Book")
    expect(demo.locator("ek-book")).to_be_visible()


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
