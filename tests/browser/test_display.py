"""The meter's display read by the camera: from getting the reader to the reading that is kept."""

from __future__ import annotations

import base64
import io
import struct
import zlib
from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import PHONE, Site, Watch, wait_for_kernel, wait_until_kept
from hands import go, headline, keep, type_xy
from PIL import Image
from playwright.sync_api import Browser, Page, Playwright, expect
from reading_displays import camera_of, film_of, read_all
from thumb import BY_CAMERA, Thumb

from displays import CLEAR, display, first_showing

#: How many are read in a row. The bench reads more, from other seeds.
DISPLAYS = range(1, 31)
RIGHT = 0.97


def open_reader(page: Page) -> None:
    # An answer that comes meanwhile would move the button.
    expect(page.locator("main [aria-busy=true]")).to_have_count(0)
    page.get_by_role("button", name="Read the meter's display").click()


def get_reader(page: Page) -> None:
    open_reader(page)
    page.get_by_role("button", name="Get the reader").click()
    expect(page.get_by_text("From a picture")).to_be_visible()


def choose_picture(page: Page, name: str, data: bytes, kind: str = "image/jpeg") -> None:
    page.get_by_label("From a picture").set_input_files(
        {"name": name, "mimeType": kind, "buffer": data}
    )


@pytest.fixture(scope="module")
def reading(playwright: Playwright, chromium_path: str, dist: Path) -> Iterator[Page]:
    """One page with the reader got and the server stopped since."""
    film = film_of(display(CLEAR))
    browser = playwright.chromium.launch(
        executable_path=chromium_path,
        args=[
            "--no-sandbox",
            "--disable-dev-shm-usage",
            *camera_of(film),
        ],
    )
    watch = Watch()
    context = browser.new_context(viewport=PHONE, has_touch=True)
    watch.follow(context)
    site = Site(dist)
    page = context.new_page()
    page.goto(site.url)
    wait_until_kept(page)
    wait_for_kernel(page)
    get_reader(page)
    page.get_by_role("button", name="Close").click()
    site.stop()
    page.reload()
    wait_for_kernel(page)
    yield page
    browser.close()
    film.unlink()
    assert watch.faults == []


def test_the_camera_reads_a_display_and_the_reading_is_kept(reading: Page) -> None:
    shows = display(CLEAR).shows
    open_reader(reading)
    taken = reading.locator(".from-display")
    expect(taken).to_be_visible(timeout=30_000)
    expect(taken.locator("img")).to_be_visible()
    expect(taken).to_contain_text("agree")
    assert reading.locator("video").count() == 0
    assert reading.get_by_label("x", exact=True).input_value() == shows["x"]
    assert reading.get_by_label("y", exact=True).input_value() == shows["y"]
    level = reading.locator("#light-illuminance").input_value()
    assert level == shows["illuminance_lx"]
    expect(headline(reading)).to_be_visible()
    keep(reading)
    expect(taken).to_have_count(0)


def test_six_lights_by_the_camera_cost_few_taps(reading: Page) -> None:
    thumb = Thumb(reading)
    BY_CAMERA.does(thumb)
    assert thumb.taps <= BY_CAMERA.taps
    assert BY_CAMERA.characters
    assert thumb.characters <= BY_CAMERA.characters


def test_a_hand_that_shakes_loses_nothing_and_two_looks_still_agree(no_camera: Page) -> None:
    """A look that sees nothing stands between two that read the same."""
    page = no_camera
    open_reader(page)
    picture = base64.b64encode(display(CLEAR).picture).decode()
    shown = page.evaluate(
        """async text => {
            const bytes = Uint8Array.from(atob(text), sign => sign.charCodeAt(0));
            const picture = await createImageBitmap(new Blob([bytes], {type: "image/jpeg"}));
            const blank = new OffscreenCanvas(640, 480);
            blank.getContext("2d").fillRect(0, 0, 640, 480);
            const element = document.querySelector("ek-read-display");
            element.looking = true;
            const steady = () => element.lookAt(picture, picture.width, picture.height);
            await steady();
            await element.lookAt(blank, 640, 480);
            const kept = element.read.answer.ways.length;
            await steady();
            return kept;
        }""",
        picture,
    )
    assert shown == 1
    expect(page.locator(".from-display")).to_contain_text("agree")
    page.get_by_role("button", name="Take back").click()


@pytest.fixture
def no_camera(reading: Page) -> Page:
    """The page with its camera refused: only pictures are left."""
    reading.evaluate(
        """() => { navigator.mediaDevices.getUserMedia =
            () => Promise.reject(new DOMException("", "NotAllowedError")); }"""
    )
    return reading


def test_what_was_typed_comes_back_when_the_display_is_taken_back(no_camera: Page) -> None:
    reading = no_camera
    shown = first_showing({"x", "y", "cct_K"}, range(1000, 1200))
    type_xy(reading, "0.3900", "0.3800", "batten 7")
    open_reader(reading)
    choose_picture(reading, "display.jpg", shown.picture)
    taken = reading.locator(".from-display")
    expect(taken).to_be_visible(timeout=30_000)
    assert reading.get_by_label("x", exact=True).input_value() == shown.shows["x"]
    assert reading.get_by_label("Name", exact=True).input_value() == "batten 7"
    taken.get_by_role("button", name="Take back").click()
    expect(taken).to_have_count(0)
    assert reading.get_by_label("x", exact=True).input_value() == "0.3900"
    reading.get_by_role("button", name="Clear").click()


def test_what_nothing_checks_is_in_sight_to_be_compared(no_camera: Page) -> None:
    page = no_camera
    shown = first_showing({"x", "y", "illuminance_lx"}, range(1, 60))
    open_reader(page)
    choose_picture(page, "display.jpg", shown.picture)
    expect(headline(page)).to_be_visible(timeout=30_000)
    expect(page.locator("button.seen")).to_be_visible()
    expect(page.locator(".from-display .warning")).to_be_in_viewport(ratio=1)
    expect(page.locator(".from-display img")).to_be_in_viewport(ratio=0.5)
    page.get_by_role("button", name="Clear").click()


def bomb() -> bytes:
    """A picture of 60 000 × 60 000 pixels in a few kilobytes."""

    def chunk(kind: bytes, data: bytes) -> bytes:
        body = kind + data
        return struct.pack(">I", len(data)) + body + struct.pack(">I", zlib.crc32(body))

    head = struct.pack(">IIBBBBB", 60_000, 60_000, 1, 0, 0, 0, 0)
    rows = zlib.compress(bytes(100_000), 9)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


def blank() -> bytes:
    data = io.BytesIO()
    Image.new("L", (640, 480), 200).save(data, "PNG")
    return data.getvalue()


def animated() -> bytes:
    data = io.BytesIO()
    frames = [Image.new("L", (200, 200), shade) for shade in (0, 120, 240)]
    frames[0].save(data, "GIF", save_all=True, append_images=frames[1:])
    return data.getvalue()


HOSTILE = {
    "script.svg": (b'<svg xmlns="http://www.w3.org/2000/svg"><script>alert(1)</script></svg>',
                   "image/svg+xml"),
    "code.png": (b"<script>document.title='gone'</script>", "image/png"),
    "empty.jpg": (b"", "image/jpeg"),
    "bomb.png": (bomb(), "image/png"),
    "blank.png": (blank(), "image/png"),
    "moving.gif": (animated(), "image/gif"),
}  # fmt: skip


@pytest.mark.parametrize("name", HOSTILE)
def test_a_picture_that_is_no_display_costs_a_sentence(no_camera: Page, name: str) -> None:
    reading = no_camera
    data, kind = HOSTILE[name]
    title = reading.title()
    open_reader(reading)
    said = reading.locator(".read-display").get_by_role("alert")
    expect(said).to_contain_text("The camera was refused")
    choose_picture(reading, name, data, kind)
    opens = name in ("blank.png", "moving.gif")
    expect(said).to_contain_text(
        "No x y, CCT or lux could be read" if opens else f"{name} cannot be opened as a picture",
        timeout=30_000,
    )
    assert reading.title() == title
    assert reading.get_by_label("x", exact=True).input_value() == ""
    reading.get_by_role("button", name="Close").click()


def test_displays_are_read_right_or_asked_about(reading: Page) -> None:
    """Made from seeds: fonts and bars, tilt, perspective, blur, noise, glare, moiré."""
    tally = read_all(reading, DISPLAYS)
    assert tally.complete > 0.8 * len(DISPLAYS)
    assert tally.false == 0, tally.told
    assert tally.right >= RIGHT * tally.complete, tally.told
    assert tally.silent <= len(DISPLAYS) / 200, tally.told


def test_points_of_a_sweep_are_read_one_after_the_other(no_camera: Page) -> None:
    page = no_camera
    shown = [display(CLEAR), display(7)]
    page.evaluate("location.hash = '#sweep'")
    level = page.get_by_role("textbox", name="Point 1 of 9")
    expect(level).to_be_visible()
    open_reader(page)
    for n, each in enumerate(shown, start=1):
        choose_picture(page, "display.jpg", each.picture)
        lux = each.shows["illuminance_lx"]
        expect(page.locator(".from-display")).to_contain_text(f"lux {lux}", timeout=30_000)
        expect(page.get_by_role("textbox", name=f"Point {n + 1} of 9")).to_be_visible()
    page.get_by_role("button", name="Take back").click()
    expect(page.get_by_role("textbox", name="Point 2 of 9")).to_be_visible()
    page.get_by_role("button", name="Close").click()
    page.evaluate("location.hash = '#light'")


def test_the_picture_is_kept_with_the_reading_on_request(no_camera: Page) -> None:
    page = no_camera
    page.evaluate("location.hash = '#light'")
    open_reader(page)
    choose_picture(page, "display.jpg", display(CLEAR).picture)
    page.get_by_role("button", name="Keep this picture with it").click()
    expect(page.get_by_role("button", name="Keep this picture with it")).to_have_count(0)
    page.get_by_label("Name", exact=True).fill("doorway")
    keep(page)
    photo = page.evaluate(
        """async () => {
            const done = request => new Promise(resolve => {
                request.onsuccess = () => resolve(request.result);
            });
            const opened = await done(indexedDB.open("evenkelvin"));
            const all = await done(opened.transaction("entries").objectStore("entries").getAll());
            opened.close();
            return all.map(entry => entry.data.photo).filter(Boolean).join();
        }"""
    )
    assert photo.startswith("data:image/jpeg;base64,")


def test_the_reader_is_no_part_of_the_first_visit_and_can_be_removed(
    phone_browser: Browser, dist: Path
) -> None:
    site = Site(dist)
    watch = Watch()
    context = phone_browser.new_context(viewport=PHONE, has_touch=True)
    watch.follow(context)
    asked: list[str] = []
    context.on("request", lambda request: asked.append(request.url))
    page = context.new_page()
    page.goto(site.url)
    wait_until_kept(page)
    wait_for_kernel(page)
    assert not [url for url in asked if "/reader/" in url]
    get_reader(page)
    assert len({url for url in asked if "/reader/" in url}) == 3
    go(page, "Kit")
    page.get_by_role("button", name="Remove it").click()
    expect(page.get_by_role("button", name="Remove it")).to_have_count(0)
    go(page, "Light")
    open_reader(page)
    expect(page.get_by_role("button", name="Get the reader")).to_be_visible()
    assert watch.faults == []
    context.close()
    site.stop()


def test_a_reader_that_is_not_the_one_built_is_refused(
    phone_browser: Browser, own_dist: Path
) -> None:
    path = own_dist / "reader" / "letters.part"
    data = bytearray(path.read_bytes())
    data[1000] ^= 1
    path.write_bytes(data)
    site = Site(own_dist)
    context = phone_browser.new_context(viewport=PHONE, has_touch=True)
    page = context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    open_reader(page)
    page.get_by_role("button", name="Get the reader").click()
    expect(page.locator(".read-display").get_by_role("alert")).to_contain_text(
        "could not be fetched"
    )
    context.close()
    site.stop()
