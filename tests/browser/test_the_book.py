"""The book on the phone, its server dead: pick-ups, search, mending, sharing, paper."""

from __future__ import annotations

import io
import json
import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
import zxingcpp
from conftest import PHONE, ROOT, Site, offline_page, wait_for_kernel
from hands import (
    go,
    headline,
    keep,
    keep_light,
    open_demo,
    open_setup,
    open_slip,
    type_xy,
    until_on_disk,
)
from long_book import fill_with_readings
from PIL import Image
from playwright.sync_api import Browser, Locator, Page, Playwright, expect
from pypdf import PdfReader
from test_access import AXE, violations_in_both

from evenkelvin.desk import answer

DEMO = json.loads((ROOT / "demo_readings" / "night_ferry.json").read_text())


@pytest.fixture(scope="module")
def shared(phone_browser: Browser, dist: Path) -> Iterator[Page]:
    """One page for the whole module, its server stopped."""
    with offline_page(
        phone_browser,
        dist,
        permissions=("geolocation",),
        locale="en-GB",
        geolocation={"latitude": 54.3213, "longitude": 10.1349},
    ) as page:
        yield page


@pytest.fixture
def demo(shared: Page) -> Page:
    wait_for_kernel(shared)
    open_demo(shared)
    return shared


@pytest.fixture
def own(shared: Page) -> Page:
    """The person's own book, as empty as on the first day."""
    leave_demo(shared)
    empty_own_book(shared)
    return shared


def leave_demo(page: Page) -> None:
    button = page.get_by_role("button", name="Leave the demo")
    if button.is_visible():
        button.click()
    expect(page.get_by_text("Demo: The Night Ferry")).to_have_count(0)


def empty_own_book(page: Page) -> None:
    page.evaluate(
        """() => new Promise((resolve, reject) => {
            const gone = indexedDB.deleteDatabase("evenkelvin");
            gone.onsuccess = resolve;
            gone.onerror = reject;
        })"""
    )
    page.evaluate("location.hash = '#light'")
    page.reload()
    wait_for_kernel(page)


def to(page: Page, address: str) -> None:
    page.evaluate("address => { location.hash = address; }", address)


def share_page(page: Page, setup: str) -> None:
    open_setup(page, setup)
    page.get_by_role("link", name="Share", exact=True).click()
    expect(page.get_by_test_id("read-back")).to_contain_text("Written and read back")


def link_of(page: Page, setup: str) -> str:
    share_page(page, setup)
    page.get_by_role("button", name="Send the link").click()
    expect(page.get_by_text("The link is copied")).to_be_visible()
    return str(page.evaluate("navigator.clipboard.readText()"))


def downloaded(page: Page, button: str) -> tuple[str, str]:
    """Name and text of the file that a button hands over."""
    with page.expect_download() as taking:
        page.get_by_role("button", name=button).click()
    return taking.value.suggested_filename, Path(taking.value.path()).read_text("utf-8")


# ------------------------------------------------------------------------- logging on location


def test_a_pick_up_brings_each_light_to_what_it_was(demo: Page) -> None:
    open_setup(demo, "3 Between the cars")
    demo.get_by_role("button", name="Duplicate for a pick-up").click()
    expect(demo.get_by_role("heading", name="3 still to read")).to_be_visible()
    expect(demo.locator(".against summary")).to_contain_text("3200 K")
    demo.get_by_role("button", name="Read HMI through the doorway").click()
    expect(demo.locator(".against summary")).to_contain_text("itself on Wed")
    type_xy(demo, "0.4214", "0.4022")
    expect(headline(demo)).not_to_be_empty()
    keep(demo)
    open_setup(demo, "3 Between the cars, pick-up")
    light = demo.locator(".lights > li", has_text="HMI through the doorway")
    light.get_by_role("link", name="Then and now").click()
    expect(demo.get_by_role("img", name=re.compile("^Drift, With"))).to_be_visible()
    expect(demo.locator("ek-since .headline").last).not_to_be_empty()
    rows = demo.locator("ek-since section", has_text="With full CTO").locator("tbody tr")
    assert rows.count() >= 2  # then, and now
    expect(rows.last.locator("td").first).to_contain_text("mired")


def test_light_set_and_report_say_one_thing_of_a_pick_up(demo: Page) -> None:
    """Each with the same distance from the same target, which is the light as it was."""
    open_setup(demo, "3 Between the cars")
    demo.get_by_role("button", name="Duplicate for a pick-up").click()
    demo.get_by_role("button", name="Read HMI through the doorway").click()
    demo.get_by_role("radio", name="x y", exact=True).check()
    type_xy(demo, "0.4014", "0.3922")
    expect(headline(demo)).not_to_be_empty()
    now = demo.locator(".answer .now").inner_text()
    (away,) = re.findall(r"(\d+) mired", now)
    (verdict,) = re.findall("holds|near|out", now)
    to_do = headline(demo).inner_text()
    keep(demo)
    expect(demo.locator(".answer .now")).to_contain_text(f"{away} mired")

    go(demo, "Set")
    slip = demo.locator(".slip", has_text="HMI through the doorway")
    expect(slip).to_contain_text(f"{away} mired")
    expect(slip.locator("> details > summary")).to_contain_text(verdict)
    expect(slip.locator(".hang")).to_contain_text(to_do)
    # The whole set heads with what drifted, and has it in one table.
    expect(headline(demo)).to_contain_text(re.compile(r"1 of \d drifted since Wed"))
    row = demo.locator("ek-set .compare tr", has_text="HMI through the doorway")
    expect(row).to_contain_text(re.compile(rf"[+−]{away} mired"))
    expect(row.locator(".verdict")).to_have_text(verdict)

    open_setup(demo, "3 Between the cars, pick-up")
    setup = demo.evaluate("location.hash.split('/')[1]")
    to(demo, f"report/{setup}")
    row = demo.locator("ek-report .slip", has_text="HMI through the doorway")
    expect(row).to_contain_text(f"{away} mired")
    expect(row).to_contain_text(verdict)


def test_the_light_at_dusk_is_seen_to_drift(demo: Page) -> None:
    open_setup(demo, "1 The queue")
    demo.get_by_role("link", name="Then and now: north windows").click()
    expect(demo.locator("ek-since .headline")).to_contain_text("cooler")
    expect(demo.locator("ek-since .headline")).to_contain_text("stops darker")
    points = demo.locator(".drift circle")
    expect(points).to_have_count(3 * demo.locator("ek-since tbody tr").count())
    lights = [e["of"] for e in DEMO["entries"] if e["data"].get("name") == "north windows"]
    since = answer({"ask": "since", "book": DEMO, "lights": lights[:1]})
    moved = since["series"][0]["points"][-1]["drift"]
    expect(demo.locator("ek-since .headline")).to_contain_text(moved["words"])


def test_a_window_that_came_back_is_still_told_by_its_noon(own: Page) -> None:
    go(own, "Light")
    type_xy(own, "0.3302", "0.3442", name="north window")
    own.get_by_label("Illuminance").fill("100")
    keep(own)
    for x, y, lux in (("0.3670", "0.3690", "2800"), ("0.3306", "0.3446", "102")):
        go(own, "Set")
        open_slip(own, "north window")
        own.get_by_role("button", name="Read again: north window").click()
        own.locator("#light-illuminance").wait_for()  # all of Light is drawn
        # What was advised was not hung: the window is read bare again.
        for gel in own.locator(".chips .chip").all()[::-1]:
            gel.click()
        type_xy(own, x, y)
        own.get_by_label("Illuminance").fill(lux)
        keep(own)
        expect(own.get_by_label("x", exact=True)).to_have_value("")
    go(own, "Book")
    own.locator("main a[href^='#setup/']").first.click()
    own.get_by_role("link", name="Then and now: north window").click()
    expect(own.locator("ek-since .headline")).to_contain_text("warmer")
    expect(own.locator("ek-since .headline")).to_contain_text("4.8 stops brighter")
    expect(own.locator("ek-since .reason")).to_contain_text("Last read")


def test_all_that_is_logged_with_a_reading_is_kept(own: Page) -> None:
    go(own, "Light")
    type_xy(own, "0.3810", "0.3770", name="key")
    own.get_by_text("More to log").click()
    own.get_by_label("Note").fill("=behind the pillar")
    own.get_by_label("Dimmer").fill("62 %")
    own.get_by_label("Dialled on the lamp").fill("4300 K +2")
    own.get_by_label("Place", exact=True).fill("berth 2")
    own.get_by_label("Who reads").fill("best boy")
    own.get_by_role("button", name="Where I am").click()
    expect(own.locator("ek-light")).to_contain_text("54.3213, 10.1349")
    own.get_by_label("Photo").set_input_files(ROOT / "webapp" / "static" / "icon-512.png")
    expect(own.get_by_role("img", name="Photo of this reading")).to_be_visible()
    until_on_disk(own, "data:image/")
    own.reload()  # the half-typed log outlives the tab
    own.get_by_text("More to log").click()
    expect(own.get_by_label("Dimmer")).to_have_value("62 %")
    keep(own)
    open_setup(own, "Setup 1")
    own.locator(".readings a").click()
    facts = own.locator("ek-reading .facts")
    for words in ("62 %", "4300 K +2", "berth 2", "54.3213", "best boy", "5600 K", "UTC"):
        expect(facts).to_contain_text(words)
    photo = own.get_by_role("img", name="Photo of this reading").get_attribute("src") or ""
    assert photo.startswith("data:image/jpeg;base64,")
    assert len(photo) < 40_000 * 4 / 3 + 30
    # The next light of the same kind needs its numbers and one tap.
    go(own, "Light")
    own.get_by_label("Lamp type").select_option("hmi")
    keep_light(own, "fill", "0.3820", "0.3780")
    expect(own.get_by_label("Lamp type")).to_have_value("hmi")


def test_a_reading_is_mended_and_its_earlier_version_restored(demo: Page) -> None:
    open_setup(demo, "1 The queue")
    demo.locator(".lights > li", has_text="batten 1").locator(".readings a").last.click()
    demo.get_by_role("button", name="Change").click()
    demo.get_by_label("x", exact=True).fill("3.7")
    expect(demo.locator("ek-reading .problem")).to_be_visible()
    demo.get_by_label("x", exact=True).fill("0,3700")
    demo.get_by_label("Note").fill("misread")
    until_on_disk(demo, "misread")
    demo.reload()  # the half-done change outlives the tab
    expect(demo.get_by_label("x", exact=True)).to_have_value("0,3700")
    demo.get_by_role("button", name="Save").click()
    expect(demo.locator("ek-reading .facts")).to_contain_text("x 0,3700")
    expect(demo.locator("ek-reading .facts")).to_contain_text("Tue, 27 Oct 2026, 16:21 UTC+01:00")
    demo.get_by_text("1 earlier version").click()
    demo.get_by_role("button", name="Restore").click()
    expect(demo.locator("ek-reading .facts")).to_contain_text("x 0.3761")


# ------------------------------------------------------------------------------------ finding


def test_readings_are_found_by_word_lamp_verdict_and_date(demo: Page) -> None:
    go(demo, "Book")
    found = demo.locator(".found > li")
    demo.get_by_label("Search the readings").fill("BATTEN minus")
    expect(found.first).to_contain_text("batten")
    assert found.count() < len([e for e in DEMO["entries"] if e["thing"] == "reading"])
    demo.get_by_role("button", name="Show the whole book").click()
    demo.get_by_text("By place, lamp").click()
    demo.get_by_label("Lamp type").select_option("sodium")
    expect(found.first).to_contain_text("sodium spill")
    demo.get_by_role("button", name="Show the whole book").click()
    demo.get_by_label("Location", exact=True).select_option("Ticket hall")
    demo.get_by_label("Setup", exact=True).select_option("1 The queue at the counter")
    demo.get_by_label("Verdict").select_option("holds")
    held = [r for r in readings_of("1 The queue at the counter") if verdict_of(r) == "holds"]
    expect(demo.get_by_role("status").first).to_have_text(words_for(len(held)))
    demo.get_by_label("Verdict").select_option("")
    demo.get_by_label("From").fill("2026-10-28")
    expect(demo.get_by_role("status").first).to_have_text("0 readings")
    demo.get_by_role("button", name="Show the whole book").click()


def words_for(count: int) -> str:
    return "1 reading" if count == 1 else f"{count} readings"


def readings_of(setup: str) -> list[dict[str, Any]]:
    """What stands in a setup of the demo, worked out from its file."""
    report = answer({"ask": "report", "book": DEMO, "of": id_of(setup)})
    ids = {r["id"] for s in report["setups"][0]["slips"] for r in s["readings"]}
    return [e["data"] for e in DEMO["entries"] if e["id"] in ids]


def id_of(name: str) -> str:
    return next(e["of"] for e in DEMO["entries"] if e["data"].get("name") == name)


def verdict_of(data: dict[str, Any]) -> str:
    keys = ("x", "y", "cct_K", "duv", "spectrum", "lamp")
    reading = {key: data[key] for key in keys if data.get(key)}
    return str(answer({"ask": "fix", "reading": reading, "target": data["target"]})["verdict"])


def test_a_book_of_20_000_readings_keeps_the_page_small(page: Page, site: Site) -> None:
    page.goto(site.url)
    fill_with_readings(page)
    page.reload()
    go(page, "Book")
    expect(page.locator("a.setup")).to_have_count(20)
    page.get_by_label("Search the readings").fill("light 7 reading 3 of 100")
    expect(page.get_by_role("status").first).to_have_text("10 readings")
    page.get_by_label("Search the readings").fill("lig")
    expect(page.get_by_role("status").first).to_have_text("20000 readings")
    assert page.evaluate("document.querySelectorAll('*').length") < 900
    page.get_by_role("button", name="19980 more").click()
    expect(page.locator(".found > li")).to_have_count(40)


# ------------------------------------------------------------------------- sharing, bringing in


def test_a_link_opens_as_a_visitors_copy_and_is_added_once(shared: Page) -> None:
    open_demo(shared)
    link = link_of(shared, "3 Between the cars")
    fragment = link.split("#", 1)[1]
    assert fragment.startswith("copy=")
    assert answer({"ask": "open_link", "link": link})["title"].endswith("3 Between the cars")
    leave_demo(shared)
    empty_own_book(shared)
    to(shared, fragment)
    expect(headline(shared)).to_have_text("The Night Ferry · Car deck · 3 Between the cars")
    expect(shared.locator("ek-copy")).to_contain_text("sodium spill")
    shared.get_by_role("button", name="Add to my book").click()
    expect(shared.locator(".kept")).to_contain_text("added to your book")
    shared.get_by_role("link", name="To the book").click()
    expect(shared.get_by_role("link", name="3 Between the cars")).to_be_visible()
    shared.reload()
    expect(shared.get_by_role("link", name="3 Between the cars")).to_be_visible()
    to(shared, fragment)
    expect(shared.locator("ek-copy")).to_contain_text("All of it is in your book already")


@pytest.mark.parametrize(
    ("damage", "words"),
    [
        (lambda link: link[:-40], "cut"),
        (lambda link: link[:200] + "A" + link[201:], "changed"),
        (lambda link: "copy=<img src=x onerror=alert(1)>", "not a link"),
        (lambda link: "copy=dAAAAAAAA", "not a link"),
        (lambda link: "copy=", "not a link"),
    ],
)
def test_a_damaged_link_is_refused_whole(own: Page, damage: Any, words: str) -> None:
    book = json.dumps({k: v for k, v in DEMO.items() if k != "settings"})
    link = answer({"ask": "book_link", "book": book, "of": id_of("3 Between the cars")})["link"]
    to(own, damage("copy=" + link))
    if damage("copy=" + link) == "copy=":
        expect(own.get_by_role("heading", name="Preview: not in your book yet")).to_be_visible()
    else:
        expect(own.get_by_role("alert")).to_be_visible()
        assert re.search("cut|changed|not a link|too early", own.get_by_role("alert").inner_text())
    expect(own.get_by_role("button", name="Add to my book")).to_have_count(0)
    go(own, "Book")
    expect(own.locator("ek-book .empty")).to_be_visible()


def text_of(png: bytes) -> str:
    """What a picture's code says; nothing where no code is found."""
    found = zxingcpp.read_barcodes(Image.open(io.BytesIO(png)))
    return found[0].text if found else ""


def picture_of(code: Locator) -> bytes:
    """A code as a reader's camera finds it, which looks until it finds one."""
    for _ in range(5):
        png = code.screenshot()
        if text_of(png):
            break
    return png


def test_codes_are_read_by_any_reader_and_by_this_app_in_any_order(shared: Page) -> None:
    open_demo(shared)
    share_page(shared, "2 The last sailing")
    shared.get_by_role("button", name="Show the codes").click()
    code = shared.locator("svg.code")
    expect(code).to_be_visible()
    total = int(shared.get_by_text(re.compile(r"^Code 1 of \d+$")).inner_text().split()[-1])
    assert total > 1
    pictures = []
    for number in range(1, total + 1):
        expect(shared.get_by_text(f"Code {number} of {total}", exact=True)).to_be_visible()
        pictures.append(picture_of(code))
        shared.get_by_role("button", name="Next code").click()
    # An independent reader, as in any phone's camera, finds an address that opens the app.
    read = [text_of(png) for png in pictures]
    assert all("/#copy=p" in text for text in read)
    joined = answer({"ask": "join_parts", "parts": read})
    assert joined["title"].endswith("2 The last sailing")
    leave_demo(shared)
    empty_own_book(shared)
    to(shared, "receive")
    files = [
        {"name": f"{i}.png", "mimeType": "image/png", "buffer": png}
        for i, png in enumerate(pictures)
    ]
    shared.get_by_label("Read a picture").set_input_files(files[1:2])  # type: ignore[arg-type]
    expect(shared.get_by_role("status").first).to_contain_text(f"1 of {total} scanned")
    # One after the other, as fast as they can be shown: none is lost while another is joined.
    for file in [files[1], files[0], *files[2:]]:
        shared.get_by_label("Read a picture").set_input_files([file])  # type: ignore[list-item]
    expect(headline(shared)).to_contain_text("2 The last sailing")
    shared.get_by_role("button", name="Add to my book").click()
    expect(shared.locator(".kept")).to_be_visible()


def test_a_picture_without_a_code_and_a_refused_camera_are_told(own: Page) -> None:
    to(own, "receive")
    icon = ROOT / "webapp" / "static" / "icon-192.png"
    own.get_by_label("Read a picture").set_input_files(icon)
    expect(own.get_by_role("alert")).to_contain_text("No code was found in icon-192.png")
    own.get_by_role("button", name="Scan with the camera").click()
    expect(own.get_by_role("alert")).to_contain_text("camera")


def test_the_camera_reads_a_code(
    playwright: Playwright, chromium_path: str, dist: Path, tmp_path: Path
) -> None:
    entries = [e for e in DEMO["entries"] if e["thing"] != "reading"][:3]
    book = {"format": "evenkelvin-book", "version": 1, "entries": entries}
    link = answer({"ask": "book_link", "book": book})["link"]
    codes = zxingcpp.create_barcode(f"https://example.org/#copy={link}", zxingcpp.QRCode)
    picture = Image.fromarray(codes.to_image(scale=5)).convert("L")
    frame = Image.new("L", (960, 720), 255)
    frame.paste(picture, (120, 60))
    grey = bytes([128]) * (960 * 720 // 2)
    film = tmp_path / "code.y4m"
    film.write_bytes(
        b"YUV4MPEG2 W960 H720 F10:1 Ip A1:1 C420jpeg\n" + (b"FRAME\n" + frame.tobytes() + grey) * 2
    )
    browser = playwright.chromium.launch(
        executable_path=chromium_path,
        args=[
            "--no-sandbox",
            "--use-fake-ui-for-media-stream",
            "--use-fake-device-for-media-stream",
            f"--use-file-for-fake-video-capture={film}",
        ],
    )
    site = Site(dist)
    page = browser.new_page(viewport=PHONE)
    page.goto(site.url + "#receive")
    wait_for_kernel(page)
    page.get_by_role("button", name="Scan with the camera").click()
    expect(headline(page)).to_contain_text("The Night Ferry", timeout=20_000)
    page.get_by_role("button", name="Stop the camera").click()
    expect(page.locator("video")).to_have_count(0)
    browser.close()
    site.stop()


def test_the_file_of_the_book_reads_back_with_its_count_and_hash(own: Page) -> None:
    for i in range(5):
        keep_light(own, f"light {i}", "0.3810", f"0.377{i}")
    to(own, "share")
    expect(own.get_by_test_id("read-back")).to_be_visible()
    shown = own.get_by_test_id("read-back").inner_text()
    name, text = downloaded(own, "Share the file")
    check = answer({"ask": "book_check", "book": text})
    assert f"{check['count']} entries" in shown
    assert check["sha256"][:12] in shown
    assert re.fullmatch(r"book-\d{4}-\d\d-\d\d\.json", name)
    empty_own_book(own)
    to(own, "receive")
    own.get_by_label("Choose a book's file").set_input_files(
        {"name": name, "mimeType": "application/json", "buffer": text.encode()}
    )
    expect(own.locator("ek-receive")).to_contain_text(check["sha256"][:12])
    own.get_by_role("button", name="Add to my book").click()
    go(own, "Book")
    expect(own.get_by_role("link", name="Setup 1")).to_contain_text("5 lights")


def test_the_book_reminds_of_what_is_on_this_phone_only(own: Page) -> None:
    for i in range(10):
        keep_light(own, f"light {i}", "0.3810", f"0.377{i}")
    go(own, "Book")
    expect(own.get_by_text("23 entries are only on this phone")).to_be_visible()
    own.get_by_role("link", name="Save a file").click()
    expect(own.get_by_test_id("read-back")).to_be_visible()
    downloaded(own, "Share the file")
    go(own, "Book")
    expect(own.get_by_text("only on this phone")).to_have_count(0)


def test_a_table_opens_in_comma_and_semicolon_places(demo: Page) -> None:
    share_page(demo, "1 The queue")
    name, comma = downloaded(demo, "Share the table")
    assert name == "1-The-queue-at-the-counter.csv"
    assert comma.startswith("\ufeff")
    assert "0.3761" in comma
    demo.get_by_role("radio", name="semicolon").check()
    expect(demo.get_by_role("button", name="Share the table")).to_be_enabled()
    _, semicolon = downloaded(demo, "Share the table")
    assert "0,3761" in semicolon
    assert semicolon.count(";") > 10
    with demo.expect_download() as taking:
        demo.get_by_role("button", name="Share spectra").click()
    assert taking.value.suggested_filename.endswith(".spdx")


def test_what_was_edited_in_two_places_stands_twice_and_is_settled(own: Page) -> None:
    keep_light(own, "key", "0.3810", "0.3770")
    to(own, "share")
    expect(own.get_by_test_id("read-back")).to_be_visible()
    _, text = downloaded(own, "Share the file")
    book = json.loads(text)
    setup = next(entry for entry in book["entries"] if entry["thing"] == "setup")
    there = {**setup, "id": "edited-elsewhere-00001", "after": [setup["id"]]}
    there["data"] = {**setup["data"], "name": "Counter"}
    there["at"] = "2099-01-01T00:00:00+00:00"
    open_setup(own, "Setup 1")
    own.get_by_text("Change Setup 1").click()
    own.get_by_role("button", name="Rename Setup 1").click()
    own.get_by_label("Name", exact=True).fill("Bar")
    own.get_by_role("button", name="Save").click()
    expect(own.get_by_role("heading", name="Bar")).to_be_visible()
    to(own, "receive")
    pasted = {"format": "evenkelvin-book", "version": 1, "entries": [*book["entries"], there]}
    own.get_by_label("Link or text").fill(json.dumps(pasted))
    own.get_by_role("button", name="Open it").click()
    expect(own.locator("ek-receive")).to_contain_text("1 entry of it is not in your book")
    own.get_by_role("button", name="Add to my book").click()
    expect(own.locator(".kept")).to_be_visible()
    go(own, "Book")
    expect(own.locator("a.setup")).to_contain_text("edited twice")
    own.locator("a.setup").click()
    expect(own.locator(".versions")).to_contain_text("Bar")
    own.get_by_role("button", name="“Counter”").click()
    expect(own.locator(".versions")).to_have_count(0)
    expect(own.locator("ek-setup h1")).to_contain_text("Counter")


def test_a_hostile_file_is_refused_and_nothing_of_it_applied(own: Page) -> None:
    to(own, "receive")
    good = {k: v for k, v in DEMO.items() if k != "settings"}
    bad = {**good, "entries": [*good["entries"], {"id": "x", "thing": "gadget"}]}
    deep = '{"format":"evenkelvin-book","version":1,"entries":' + "[" * 100_000
    for text in (json.dumps(bad), deep, '{"format":"evenkelvin-book","version":99,"entries":[]}'):
        own.get_by_label("Link or text").fill(text)
        own.get_by_role("button", name="Open it").click()
        expect(own.get_by_role("alert")).to_be_visible()
        expect(own.get_by_role("button", name="Add to my book")).to_have_count(0)
    go(own, "Book")
    expect(own.locator("ek-book .empty")).to_be_visible()


# -------------------------------------------------------------------------------------- paper


@pytest.mark.parametrize(("paper", "size"), [("A4", (595, 842)), ("Letter", (612, 792))])
def test_the_report_prints_whole_on(demo: Page, paper: str, size: tuple[int, int]) -> None:
    to(demo, f"report/{id_of('Ticket hall')}")
    expect(demo.get_by_role("img", name="Balance field")).to_have_count(2)
    pdf = PdfReader(io.BytesIO(demo.pdf(format=paper, print_background=False)))
    box = pdf.pages[0].mediabox
    assert (round(box.width), round(box.height)) == pytest.approx(size, abs=2)
    pages = [" ".join(page.extract_text().split()) for page in pdf.pages]
    whole = " ".join(pages)
    for words in (
        "Ticket hall", "The Night Ferry", "north windows", "1 The queue at the counter",
        "2 The last sailing", "5600 K", "27 Oct, 16:14", "640 lx", "minus green", "Gels hung",
        "sky gone blue", "Cautions", "mains 50 Hz", "Spectrum of batten 1",
        "ring: 4.0 colour steps",
    ):  # fmt: skip
        assert words in whole, words
    for number, text in enumerate(pages, 1):
        assert f"{number} / {len(pages)}" in text
    for words in ("Dark screen", "Leave the demo", "Print or save", "Kit"):
        assert words not in whole  # nothing to touch on paper


# ------------------------------------------------------------------------------------- access


def test_axe_finds_nothing_in_the_book(phone_browser: Browser, site: Site) -> None:
    context = phone_browser.new_context(viewport=PHONE, bypass_csp=True)
    context.add_init_script(Path(AXE).read_text())
    page = context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    open_demo(page)
    light = id_of("north windows")
    reading = next(e["of"] for e in DEMO["entries"] if e["parent"] == light)
    setup = id_of("1 The queue at the counter")
    link = answer({"ask": "book_link", "book": DEMO, "of": setup})["link"]
    for place, there in {
        f"setup/{setup}": ".lights .verdict",
        f"reading/{reading}": ".facts",
        f"since/{light}": ".drift",
        f"share/{setup}": "[data-testid=read-back]",
        "receive": "textarea",
        f"report/{id_of('Ticket hall')}": ".sheet .chart",
        f"copy={link}": ".answer .headline",
    }.items():
        to(page, place)
        expect(page.locator(f"main {there}").first).to_be_visible()
        if place.startswith("share"):
            page.get_by_role("button", name="Show the codes").click()
            expect(page.locator("svg.code")).to_be_visible()
        if place.startswith("reading"):
            page.get_by_role("button", name="Change").click()
        for summary in page.locator("main summary").all():
            if summary.is_visible():
                summary.click()
        assert violations_in_both(page) == [], place
        for width in (320, 390):
            page.set_viewport_size({"width": width, "height": 844})
            assert page.evaluate("document.documentElement.scrollWidth") <= width, place
        if place.startswith("reading"):
            page.get_by_role("button", name="Cancel").click()
    go(page, "Book")
    page.get_by_label("Search the readings").fill("batten")
    expect(page.locator(".found .verdict").first).to_be_visible()
    assert violations_in_both(page) == []
    context.close()


def test_only_the_same_lamp_with_the_same_gel_is_re_checked(own: Page) -> None:
    go(own, "Light")
    for name, lamp, stage in (("window", "daylight", "bare"), ("practical", "tungsten", None)):
        go(own, "Light")
        type_xy(own, "0.3302", "0.3442", name=name)
        own.get_by_label("Lamp type").select_option(lamp)
        keep(own)
        go(own, "Set")
        open_slip(own, name)
        own.get_by_role("button", name=f"Read again: {name}").click()
        type_xy(own, "0.3310", "0.3450")
        keep(own)
        expect(own.get_by_label("x", exact=True)).to_have_value("")
        go(own, "Book")
        own.locator("main a[href^='#setup/']").first.click()
        light = own.locator("section, article, li", has=own.get_by_role("heading", name=name)).last
        expect(light).to_contain_text(stage or "re-checked")
        if stage:
            expect(light).not_to_contain_text("re-checked")


def test_whoever_goes_elsewhere_while_a_setup_opens_stays_there(own: Page) -> None:
    keep_light(own, "key", "0.4102", "0.3941")
    go(own, "Book")
    own.get_by_role("button", name="New setup in First location").click()
    own.get_by_role("button", name="Save", exact=True).click()
    expect(own.locator("ek-setup h1")).to_have_text("Setup 2")
    open_setup(own, "Setup 1")
    # Both taps before the phone has written down where the work is.
    work = own.get_by_role("button", name="Work here: Setup 1")
    work.evaluate("button => { button.click(); location.hash = '#set'; }")
    expect(own.locator("main h1")).to_contain_text("Setup 1")
    expect(own.locator(".slip", has_text="key")).to_be_visible()
    assert own.evaluate("location.hash") == "#set"
