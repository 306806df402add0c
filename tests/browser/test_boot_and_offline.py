"""The app starts, answers, and goes on doing so with the server dead and after an update."""

from __future__ import annotations

import re
import shutil
from collections.abc import Callable
from pathlib import Path
from urllib.request import urlopen

from conftest import Site, Watch, ask, wait_for_kernel, wait_until_kept
from make_dist import put_service_worker
from playwright.sync_api import BrowserContext, Page, expect
from steps import DIST

Launch = Callable[[], BrowserContext]

QUESTION = {"ask": "describe", "reading": {"x": "0.4215", "y": "0.4022"}}


def assert_answers(page: Page) -> None:
    assert abs(ask(page, QUESTION)["cct_K"] - 3262) < 1


def test_it_boots_and_answers(page: Page, site: Site) -> None:
    page.goto(site.url)
    wait_for_kernel(page)
    assert_answers(page)


def test_it_works_from_a_subfolder(dist: Path, tmp_path: Path, page: Page) -> None:
    shutil.copytree(dist, tmp_path / "department" / "light")
    site = Site(tmp_path)
    try:
        page.goto(f"{site.url}department/light/")
        wait_for_kernel(page)
        wait_until_kept(page)
        site.stop()
        page.reload()
        wait_for_kernel(page)
        assert_answers(page)
    finally:
        site.stop()


def test_it_opens_and_answers_after_a_relaunch_with_the_server_dead(
    site: Site, profile: Launch
) -> None:
    context = profile()
    page = context.pages[0]
    page.goto(site.url)
    wait_for_kernel(page)
    wait_until_kept(page)
    site.stop()
    page.reload()
    wait_for_kernel(page)
    context.close()

    page = profile().pages[0]
    page.goto(f"{site.url}index.html?from=home#light")
    wait_for_kernel(page)
    assert_answers(page)


def test_flight_mode_is_told_once_it_is_true_and_never_before(
    own_dist: Path, page: Page, watch: Watch
) -> None:
    site = Site(own_dist)
    watch.expected += ["Failed to load", "404"]
    ready = page.get_by_text("Ready for flight mode")
    # A file that this page does without: the app runs, but could not be opened without a network.
    icon = next(own_dist.glob("**/*.png"))
    held = icon.read_bytes()
    icon.unlink()
    try:
        page.goto(site.url)
        wait_for_kernel(page)
        expect(page.locator(".toast")).to_contain_text("could not be kept", timeout=60_000)
        expect(ready).to_have_count(0)
        icon.write_bytes(held)
        page.reload()
        # The very moment it is said, the network goes.
        expect(ready).to_be_visible(timeout=60_000)
        site.stop()
        page.reload()
        wait_for_kernel(page)
        assert_answers(page)
        expect(ready).to_be_visible()
        # A file that the browser dropped, and nowhere to fetch it from: not said again.
        icon.unlink()
        page.evaluate(
            """async icon => {
                const cache = await caches.open((await caches.keys())[0]);
                const [dropped] = (await cache.keys()).filter(({url}) => url.includes(icon));
                await cache.delete(dropped);
            }""",
            icon.name,
        )
        watch.expected += ["Failed to fetch", "net::ERR"]
        page.reload()
        wait_for_kernel(page)
        expect(ready).to_have_count(0)
    finally:
        site.stop()


def test_a_new_version_waits_for_consent(
    own_dist: Path, page: Page, context: BrowserContext
) -> None:
    site = Site(own_dist)
    try:
        page.goto(site.url)
        wait_until_kept(page)
        html = own_dist / "index.html"
        html.write_text(html.read_text().replace("<html ", "<html data-edition=new "))
        (own_dist / "sw.js").unlink()
        build_again(own_dist)

        page.reload()
        page.locator("html[data-offline=update]").wait_for(state="attached", timeout=60_000)
        expect(page.locator("html")).not_to_have_attribute("data-edition", "new")
        other = context.new_page()
        other.goto(site.url)
        expect(other.locator("html")).not_to_have_attribute("data-edition", "new")

        site.stop()
        page.evaluate(
            """() => new Promise(resolve => {
                const {serviceWorker} = navigator;
                serviceWorker.addEventListener("message", ({data}) => {
                    if (data.shown && data.shown === data.newest) resolve();
                });
                serviceWorker.controller.postMessage("apply");
            })"""
        )
        page.locator("html[data-offline=update]").wait_for(state="attached")
        page.reload()
        expect(page.locator("html")).to_have_attribute("data-edition", "new")
        wait_for_kernel(page)
        assert_answers(page)
    finally:
        site.stop()


def build_again(folder: Path) -> None:
    """Give a changed dist/ a service worker that knows the change."""
    script = (DIST / "sw.js").read_text().split("\n", 1)[1]
    (folder / "sw.js").write_text(script)
    put_service_worker(folder)


def test_bytes_other_than_those_built_are_not_kept(
    own_dist: Path, page: Page, watch: Watch
) -> None:
    watch.expected += ["integrity", "Failed to load resource"]
    lock = own_dist / "pyodide" / "pyodide-lock.json"
    lock.write_text(lock.read_text() + " ")
    site = Site(own_dist)
    try:
        page.goto(site.url)
        wait_for_kernel(page)
        expect(page.get_by_text("could not be kept for use without a network")).to_be_visible()
        assert page.evaluate("caches.keys().then(names => names.length)") <= 1
        assert page.get_attribute("html", "data-offline") is None
    finally:
        site.stop()


def test_a_lost_file_is_told_and_can_be_tried_again(
    own_dist: Path, page: Page, watch: Watch
) -> None:
    watch.expected += ["404", "could not be read"]
    pack = own_dist / "pyodide" / "library.pack"
    bytes_of_pack = pack.read_bytes()
    pack.unlink()
    site = Site(own_dist)
    try:
        page.goto(site.url)
        page.locator("html[data-kernel=failed]").wait_for(state="attached", timeout=60_000)
        pack.write_bytes(bytes_of_pack)
        page.reload()
        wait_for_kernel(page)
    finally:
        site.stop()


def test_the_server_tells_media_types_and_policy(site: Site) -> None:
    # IANA media type registrations: application/octet-stream (RFC 2046),
    # text/javascript (RFC 9239), application/manifest+json (W3C Web Application Manifest).
    wanted = {
        "pyodide/runtime.wasm.pack": "application/octet-stream",
        "main.js": "text/javascript; charset=utf-8",
        "manifest.webmanifest": "application/manifest+json",
        "": "text/html; charset=utf-8",
    }
    for name, media_type in wanted.items():
        with urlopen(site.url + name) as answer:
            assert answer.headers["Content-Type"] == media_type
            assert (
                "script-src 'self' 'wasm-unsafe-eval'" in answer.headers["Content-Security-Policy"]
            )


def test_what_is_shipped_names_no_other_host_to_load_from(dist: Path) -> None:
    for path in (dist / "index.html", dist / "sw.js", dist / "styles.css"):
        text = re.sub(r"/\*.*?\*/", "", path.read_text(), flags=re.DOTALL)
        # Not just "//", which a hash in base64 may hold.
        assert not re.search(r"""https?://|["'(=]//""", text), path.name


def test_every_part_that_is_shipped_comes_with_its_licence(dist: Path) -> None:
    text = (dist / "pyodide" / "licences.txt").read_text()
    for words in ("Evenkelvin, MIT", "numpy 2.0.2", "Pyodide 0.27.8, MPL-2.0", "lit "):
        assert words in text
