"""Every fault is told in a sentence and loses nothing: kernel, storage, update, clock.

What storage refuses when the database cannot be opened, or is full, is in test_keeping.py.
"""

from __future__ import annotations

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from conftest import (
    LAUNCH,
    PHONE,
    Site,
    Watch,
    until_nothing_installs,
    wait_for_kernel,
    wait_until_kept,
)
from hands import go, headline, keep, keep_light, open_slip, type_xy, until_on_disk
from playwright.sync_api import Browser, BrowserContext, Page, Playwright, Route, expect
from test_boot_and_offline import build_again

#: Ends the worker without a word, `kills` times, when it is asked for a fix.
KILL_ON_FIX = """{
    const Own = Worker;
    window.kills = 0;
    window.Worker = class extends Own {
        postMessage(message, handedOver) {
            super.postMessage(message, handedOver);
            if (!window.kills || !message.request?.includes('"ask":"fix"')) return;
            window.kills -= 1;
            this.terminate();
            document.documentElement.dataset.killed = "yes";
        }
    };
}"""
#: Put in front of the worker: reports what a browser without memory throws, at every fix.
OUT_OF_MEMORY_ON_FIX = """addEventListener("message", event => {
    if (!event.data.request?.includes('"ask":"fix"')) return;
    event.stopImmediatePropagation();
    postMessage({fatal: "RangeError: out of memory", booting: false});
});
"""
NO_ROOM_TO_START = """WebAssembly.instantiate = WebAssembly.instantiateStreaming = async () => {
    throw new RangeError("WebAssembly.Memory(): could not allocate memory");
};
"""
#: The next `refusals` transactions find the connection lost.
LOSE_CONNECTION = """{
    const {transaction} = IDBDatabase.prototype;
    window.refusals = 0;
    IDBDatabase.prototype.transaction = function (...all) {
        if (!window.refusals) return transaction.apply(this, all);
        window.refusals -= 1;
        throw new DOMException("The database connection is closing.", "InvalidStateError");
    };
}"""
#: What a browser does that forbids every storage.
NOTHING_STORED = """{
    const refuse = () => { throw new DOMException("denied", "SecurityError"); };
    IDBFactory.prototype.open = refuse;
    for (const name of ["sessionStorage", "localStorage"])
        Object.defineProperty(window, name, {get: refuse});
    window.BroadcastChannel = function () { refuse(); };
    for (const name of ["serviceWorker", "locks"]) delete Navigator.prototype[name];
    for (const name of ["persist", "persisted", "estimate"])
        StorageManager.prototype[name] = async () => refuse();
}"""


@pytest.fixture
def plain_context(phone_browser: Browser, watch: Watch) -> Iterator[BrowserContext]:
    """A profile without service worker, so that a test can change what the server gives."""
    made = phone_browser.new_context(viewport=PHONE, has_touch=True, service_workers="block")
    watch.follow(made)
    watch.expected += ["offline", "Service Worker"]
    yield made
    made.close()


def put_before_worker(context: BrowserContext, code: str) -> None:
    def answer(route: Route) -> None:
        given = route.fetch()
        route.fulfill(response=given, body=code + given.text())

    context.route("**/worker.js", answer)


def expect_typed(page: Page, x: str, y: str, name: str) -> None:
    expect(page.get_by_label("x", exact=True)).to_have_value(x)
    expect(page.get_by_label("y", exact=True)).to_have_value(y)
    expect(page.get_by_label("Name", exact=True)).to_have_value(name)


# ---------------------------------------------------------------------------- the kernel


def test_a_worker_killed_mid_answer_is_replaced_and_asked_again(
    plain_context: BrowserContext, site: Site
) -> None:
    plain_context.add_init_script(KILL_ON_FIX)
    page = plain_context.new_page()
    page.clock.install()
    page.goto(site.url)
    wait_for_kernel(page)
    page.evaluate("window.kills = 1")
    type_xy(page, "0.44758", "0.40745", name="practical")
    page.locator("html[data-killed]").wait_for(state="attached")
    page.clock.fast_forward(121_000)  # the patience of the client
    expect(headline(page)).to_contain_text("CTB", timeout=30_000)
    expect_typed(page, "0.44758", "0.40745", "practical")


def test_a_kernel_out_of_memory_gives_up_in_a_sentence_and_the_reading_is_kept(
    plain_context: BrowserContext, site: Site
) -> None:
    put_before_worker(plain_context, OUT_OF_MEMORY_ON_FIX)
    page = plain_context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    type_xy(page, "0.44758", "0.40745", name="practical")
    told = page.locator("section.answer .problem")
    expect(told).to_contain_text("gave up on this question (RangeError: out of memory)")
    expect(told).to_contain_text("Nothing you entered is lost")
    keep(page)
    page.reload()
    go(page, "Set")
    expect(page.locator(".slip")).to_contain_text("practical")


def test_a_kernel_without_room_to_start_is_told_and_starts_when_there_is(
    plain_context: BrowserContext, site: Site, watch: Watch
) -> None:
    watch.expected += ["could not allocate memory"]
    put_before_worker(plain_context, NO_ROOM_TO_START)
    page = plain_context.new_page()
    page.goto(site.url)
    type_xy(page, "0.44758", "0.40745", name="practical")
    told = page.locator("section.answer [role=alert]").first
    expect(told).to_contain_text("What you type is still saved", timeout=30_000)
    told.locator("summary").click()
    expect(told).to_contain_text("could not allocate memory")
    plain_context.unroute("**/worker.js")
    page.get_by_role("button", name="Try again").click()
    expect(headline(page)).to_contain_text("CTB", timeout=30_000)
    expect_typed(page, "0.44758", "0.40745", "practical")


def test_python_out_of_memory_refuses_one_question_and_answers_the_next(
    plain_context: BrowserContext, site: Site, watch: Watch
) -> None:
    watch.expected += ["MemoryError", "Out of memory", "RangeError"]
    page = plain_context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    worker = next(one for one in page.workers if one.url.endswith("/worker.js"))
    worker.evaluate(
        """() => {
            const {grow} = WebAssembly.Memory.prototype;
            self.giveWay = () => { WebAssembly.Memory.prototype.grow = grow; };
            WebAssembly.Memory.prototype.grow = () => {
                throw new RangeError("WebAssembly.Memory.grow(): Maximum memory size exceeded");
            };
        }"""
    )
    page.evaluate("location.hash = '#files'")
    rows = "".join(f"{380 + n / 2000};{n % 7}\n" for n in range(250_000))
    page.locator("#more-files").set_input_files(
        {"name": "huge.csv", "mimeType": "text/csv", "buffer": f"nm;W\n{rows}".encode()}
    )
    told = page.locator(".in-file .problem").first
    expect(told).to_contain_text("too little memory", timeout=60_000)
    worker.evaluate("giveWay()")  # another tab was closed
    go(page, "Light")
    type_xy(page, "0.44758", "0.40745", name="practical")
    expect(headline(page)).to_contain_text("CTB", timeout=30_000)


def test_a_part_of_the_app_that_cannot_be_read_is_told_and_tried_again(
    plain_context: BrowserContext, site: Site, watch: Watch
) -> None:
    watch.expected.append("Failed to load resource")
    opening = (site.folder / "index.html").read_text()
    later = [path.name for path in site.folder.glob("part-*.js") if path.name not in opening]
    assert later
    lost = re.compile("|".join(map(re.escape, later)))
    plain_context.route(lost, lambda route: route.abort())
    page = plain_context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    type_xy(page, "0.44758", "0.40745", name="practical")
    expect(headline(page)).to_contain_text("CTB")
    page.get_by_role("navigation").get_by_role("link", name="Book").click()
    told = page.get_by_role("alert")
    expect(told).to_contain_text("could not be read")
    expect(told).to_contain_text("Nothing you entered is lost")
    plain_context.unroute(lost)
    page.get_by_role("button", name="Try again").click()
    expect(page.get_by_label("Search the readings")).to_be_visible()
    go(page, "Light")
    expect_typed(page, "0.44758", "0.40745", "practical")


# ---------------------------------------------------------------------------- storage


def test_a_lost_connection_is_opened_again_and_a_lasting_loss_is_told(
    context: BrowserContext, site: Site
) -> None:
    context.add_init_script(LOSE_CONNECTION)
    page = context.new_page()
    page.goto(site.url)
    type_xy(page, "0.3810", "0.3770", name="key")
    page.evaluate("window.refusals = 1")
    keep(page)
    page.evaluate("window.refusals = 1e9")
    type_xy(page, "0.4215", "0.4022", name="fill")
    page.get_by_role("button", name="Keep", exact=True).click()
    expect(page.locator("ek-light .problem")).to_contain_text("not kept")
    page.reload()
    expect_typed(page, "0.4215", "0.4022", "fill")
    keep(page)
    go(page, "Set")
    expect(page.locator(".slip")).to_have_count(2)


def test_full_storage_is_told_for_what_is_typed_and_set_too(page: Page, site: Site) -> None:
    page.goto(site.url)
    page.evaluate(
        """() => { IDBObjectStore.prototype.put = () => {
            throw new DOMException("full", "QuotaExceededError");
        }; }"""
    )
    type_xy(page, "0.4215", "0.4022", name="fill")
    alert = page.get_by_role("alert")
    expect(alert).to_contain_text("storage is full")
    alert.get_by_role("button", name="Dismiss").click()
    go(page, "Kit")
    page.get_by_role("button", name="4300 K").click()
    expect(page.get_by_role("alert")).to_contain_text("storage is full")
    page.reload()
    go(page, "Light")
    expect_typed(page, "0.4215", "0.4022", "fill")


def test_where_every_storage_is_forbidden_it_answers_and_says_that_nothing_is_kept(
    page: Page, site: Site
) -> None:
    page.add_init_script(NOTHING_STORED)
    page.goto(site.url)
    expect(page.get_by_role("alert")).to_contain_text("private window nothing can be")
    type_xy(page, "0.44758", "0.40745", name="practical")
    wait_for_kernel(page)
    expect(headline(page)).to_contain_text("CTB")
    page.get_by_role("button", name="Keep", exact=True).click()
    expect(page.locator("ek-light .problem")).to_contain_text("not kept")
    go(page, "Kit")
    expect(page.locator("ek-storage-truth")).to_contain_text("may clear it")
    go(page, "Light")
    expect_typed(page, "0.44758", "0.40745", "practical")


def test_without_a_secure_connection_it_works_and_keeps_the_book(
    playwright: Playwright, chromium_path: str, site: Site
) -> None:
    """As from another device in the house: no service worker, no locks, no random UUIDs."""
    browser = playwright.chromium.launch(
        executable_path=chromium_path,
        args=[*LAUNCH["args"], "--host-resolver-rules=MAP set.test 127.0.0.1"],
    )
    page = browser.new_context(viewport=PHONE).new_page()
    page.goto(f"http://set.test:{site.port}/")
    assert page.evaluate("isSecureContext") is False
    go(page, "Kit")
    expect(page.locator("main")).to_contain_text("not stored for use without a network yet")
    go(page, "Light")
    keep_light(page, "key", "0.3810", "0.3770")
    type_xy(page, "0.4215", "0.40", name="fill")
    until_on_disk(page, '"fill"')
    page.reload()
    expect_typed(page, "0.4215", "0.40", "fill")
    go(page, "Set")
    expect(page.locator(".slip")).to_contain_text("key")
    browser.close()


# ---------------------------------------------------------------------------- updates


def test_an_update_that_breaks_off_leaves_the_old_version_whole(
    own_dist: Path, page: Page, watch: Watch
) -> None:
    watch.expected += ["404", "Failed to load resource"]
    site = Site(own_dist)
    try:
        page.goto(site.url)
        wait_until_kept(page)
        type_xy(page, "0.4215", "0.40", name="fill")
        html = own_dist / "index.html"
        html.write_text(html.read_text().replace("<html ", "<html data-edition=new "))
        styles = own_dist / "styles.css"
        styles.write_text(f"{styles.read_text()}\n/* new */\n")
        build_again(own_dist)
        whole = styles.read_bytes()
        styles.unlink()  # the connection breaks before this file
        page.evaluate(
            "navigator.serviceWorker.getRegistration().then(r => r.update()).catch(() => {})"
        )
        until_nothing_installs(page)
        assert page.get_attribute("html", "data-offline") == "ready"
        site.stop()
        page.reload()
        expect(page.locator("html")).not_to_have_attribute("data-edition", "new")
        expect_typed(page, "0.4215", "0.40", "fill")
        assert page.evaluate("getComputedStyle(document.body).margin") == "0px"
        wait_for_kernel(page)
        styles.write_bytes(whole)
        site.start()
        page.evaluate("navigator.serviceWorker.getRegistration().then(r => r.update())")
        page.get_by_role("button", name="Use it now").click(timeout=30_000)
        expect(page.locator("html")).to_have_attribute("data-edition", "new")
        expect_typed(page, "0.4215", "0.40", "fill")
    finally:
        site.stop()


def test_a_newer_version_in_another_tab_is_told_and_the_typed_survives_the_reload(
    context: BrowserContext, site: Site
) -> None:
    page = context.new_page()
    page.goto(site.url)
    keep_light(page, "key", "0.3810", "0.3770")
    newer = context.new_page()
    newer.goto(site.url)
    upgraded = newer.evaluate(
        """() => new Promise(resolve => {
            const opening = indexedDB.open("evenkelvin", 2);
            opening.onblocked = () => resolve("blocked");
            opening.onsuccess = () => resolve("upgraded");
        })"""
    )
    assert upgraded == "upgraded", "the old tab must give way"
    type_xy(page, "0.4215", "0.4022", name="fill")
    expect(page.get_by_role("alert")).to_contain_text("newer version of the app")
    page.get_by_role("button", name="Keep", exact=True).click()
    expect(page.locator("ek-light .problem")).to_contain_text("Reload this page")
    page.reload()
    expect_typed(page, "0.4215", "0.4022", "fill")


# ---------------------------------------------------------------------------- the clock


def test_a_clock_set_back_is_told_and_the_newest_reading_stays_the_newest(
    page: Page, site: Site
) -> None:
    page.clock.install(time="2026-11-25T20:00:00")
    page.goto(site.url)
    keep_light(page, "key", "0.3810", "0.3770")
    page.clock.set_system_time("2026-11-25T18:00:00")
    go(page, "Set")
    open_slip(page, "key")
    page.get_by_role("button", name="Read again: key").click()
    type_xy(page, "0.4215", "0.4022")
    keep(page)
    go(page, "Set")
    expect(page.locator(".slip")).to_contain_text("3260 K", timeout=30_000)
    go(page, "Book")
    page.locator("main a[href^='#setup/']").first.click()
    newest = page.locator(".readings a").first
    expect(newest).to_contain_text("3260 K")
    expect(newest).to_contain_text("clock set back")
    newest.click()
    expect(page.locator("ek-reading")).to_contain_text("The clock stood earlier")
