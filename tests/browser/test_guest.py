"""The app as a guest of the phone: installed, opened with a file, shared to, started by an address.

What Chromium cannot do without a person, such as its install dialogue and the system's share sheet,
is asked of the browser's own reader of manifests, or done as the system does it: by a POST from
elsewhere, and by a launch with a file. iOS knows neither sharing to web apps nor their files, so
there nothing of it is promised. No source: our own promise.
"""

from __future__ import annotations

import json
import re
from pathlib import Path

from conftest import ROOT, Site, wait_for_kernel, wait_until_kept
from hands import open_demo, open_setup
from PIL import Image
from places import VIEWS
from playwright.sync_api import BrowserContext, Page, expect

SPECTRUM = ROOT / "demo_readings" / "spectra" / "hmi_doorway.csv"
BOOK = ROOT / "demo_readings" / "night_ferry.json"

#: How the system launches an installed app with files: before the page has asked for them.
LAUNCH = """Object.defineProperty(window, "launchQueue", {value: {
    setConsumer(take) { window.launchWith = take; },
}})"""


def test_chromium_finds_the_manifest_whole(app: Page, context: BrowserContext, dist: Path) -> None:
    seen = context.new_cdp_session(app).send("Page.getAppManifest")
    assert seen["errors"] == []
    manifest = json.loads(seen["data"])
    assert manifest == json.loads((dist / "manifest.webmanifest").read_text())
    for shortcut in manifest["shortcuts"]:
        assert shortcut["url"].removeprefix("./#") in VIEWS
    for picture in manifest["screenshots"] + manifest["icons"]:
        if picture["sizes"] != "any":
            with Image.open(dist / picture["src"]) as opened:
                assert "{}x{}".format(*opened.size) == picture["sizes"]
    assert {one["form_factor"] for one in manifest["screenshots"]} == {"narrow", "wide"}
    # Every kind of file that is opened with the app can be shared to it.
    kinds = {end for ends in manifest["file_handlers"][0]["accept"].values() for end in ends}
    (wanted,) = manifest["share_target"]["params"]["files"]
    assert kinds - {".xml"} <= set(wanted["accept"])
    assert {path.suffix for path in SPECTRUM.parent.glob("*.[ctsx][sxpg]*")} <= kinds


def share(page: Page, site: Site, *, text: str = "", files: tuple[Path, ...] = ()) -> Page:
    """Share as the phone does: another page, by a POST that opens the app."""
    other = page.context.new_page()
    other.set_content(
        f"""<form method="post" enctype="multipart/form-data" action="{site.url}share">
        <input name="title"><textarea name="text"></textarea><input name="url">
        <input type="file" multiple name="files"><button>share</button></form>"""
    )
    other.locator("textarea").fill(text)
    other.locator("input[type=file]").set_input_files([str(file) for file in files])
    other.get_by_role("button", name="share").click()
    other.wait_for_url(re.compile(r"#(files|receive)"))
    wait_for_kernel(other)
    return other


def test_what_another_app_shares_opens_in_import_with_no_host_to_see_it(
    app: Page, site: Site
) -> None:
    wait_until_kept(app)
    site.stop()  # What is shared can reach no host.
    other = share(app, site, files=(SPECTRUM,))
    expect(other.locator(".in-file[aria-busy=false]")).to_have_count(1)
    expect(other.locator(".in-file")).to_contain_text(SPECTRUM.name)
    # It is taken once: a reload, or another tab, does not bring it again.
    other.reload()
    wait_for_kernel(other)
    expect(other.locator("ek-files h1")).to_be_visible()
    expect(other.locator(".in-file")).to_have_count(0)
    other.close()
    # A text, such as readings out of a message.
    other = share(app, site, text="name;x;y\nkey;0,3302;0,3441\n")
    expect(other.locator(".in-file[aria-busy=false]")).to_have_count(1)
    expect(other.get_by_role("textbox", name="Name")).to_have_value("key")
    other.close()
    # A book goes on to the door of books, as it does from the chooser.
    other = share(app, site, files=(BOOK,))
    expect(other.locator("ek-receive")).to_contain_text("The queue at the counter")
    assert app.evaluate("caches.keys()") != []


def test_a_file_opened_with_the_app_comes_in(page: Page, site: Site) -> None:
    page.add_init_script(LAUNCH)
    page.goto(site.url)
    wait_for_kernel(page)
    page.evaluate(
        """async ([name, text]) => {
            while (!window.launchWith) await new Promise(requestAnimationFrame);
            launchWith({files: [{getFile: async () => new File([text], name)}]});
        }""",
        [SPECTRUM.name, SPECTRUM.read_text("latin-1")],
    )
    expect(page.locator(".in-file[aria-busy=false]")).to_contain_text(SPECTRUM.name)
    # A launch without a file, such as from a shortcut, changes nothing.
    page.evaluate("launchWith({})")
    expect(page.locator(".in-file")).to_have_count(1)


def test_a_setup_opens_by_its_own_address(shared: Page) -> None:
    open_demo(shared)
    open_setup(shared, "3 Between the cars")
    shared.get_by_role("button", name="Its address").click()
    expect(shared.locator(".toast")).to_contain_text("Address copied")
    address = shared.evaluate("navigator.clipboard.readText()")
    assert "#set/" in address
    shared.goto(address)
    expect(shared.locator("ek-set .slip").first).to_be_visible()
    expect(shared.locator("ek-set")).to_contain_text("3 Between the cars")
    expect(shared).to_have_url(re.compile(r"#set$"))
    # One that is not in this book says so, and Set stays where it was.
    shared.evaluate("location.hash = 'set/nowhere'")
    expect(shared.locator(".toast")).to_contain_text("not in the book")
    expect(shared.locator("ek-set")).to_contain_text("3 Between the cars")


def test_the_page_of_the_kernel_opens_from_about_with_no_network(shared: Page) -> None:
    shared.goto(shared.url.partition("#")[0] + "#about")
    shared.get_by_role("link", name="The kernel in Python").click()
    expect(shared.get_by_role("heading", name="The kernel in Python")).to_be_visible()
    assert shared.evaluate("document.documentElement.scrollWidth <= innerWidth")
    shared.get_by_role("link", name="Evenkelvin", exact=True).click()
    wait_for_kernel(shared)


def test_a_phone_is_told_how_the_app_stands_on_its_home_screen(app: Page) -> None:
    told = app.locator("head meta[name]").evaluate_all(
        "all => Object.fromEntries(all.map(one => [one.name, one.content]))"
    )
    assert told["apple-mobile-web-app-capable"] == told["mobile-web-app-capable"] == "yes"
    assert told["apple-mobile-web-app-title"] == "Evenkelvin"
    # x and y side by side are no telephone number.
    assert told["format-detection"] == "telephone=no"
