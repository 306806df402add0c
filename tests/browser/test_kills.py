"""A tab killed at any instant: every reading that the screen called kept is in the book."""

from __future__ import annotations

import contextlib
import os
import random
import signal
import time
from collections.abc import Iterator
from typing import Any

import pytest
from conftest import LAUNCH, Site
from hands import keep_light
from playwright.sync_api import Browser, CDPSession, Playwright

#: So many tabs write at once, in so many processes, and die at one instant.
TABS, PROCESSES = 8, 2
#: What this catches is a reading called kept before its write was sent: a tab that dies does not
#: take back what it has sent. To keep takes some 20 ms; were it called kept 5 ms before that, one
#: tab in four would be caught, and thirty would all escape once in five thousand.
ROUNDS = 4
#: A tab lives this long at most, in ms, once it has begun to keep one reading after another.
LONGEST = 160

#: Types and keeps reading after reading as fast as the screen lets it; `told` hears the y of every
#: one that the screen calls kept: no two readings have the same.
KEEP_ON = """([prefix, first]) => {
    const put = (id, value) => {
        const input = document.getElementById(id);
        input.value = value;
        input.dispatchEvent(new Event("input", {bubbles: true}));
    };
    let n = 0;
    const start = () => {
        n += 1;
        put("light-x", "0.3810");
        put("light-y", `0.${first + n}`);
        put("light-name", `${prefix} ${n}`);
        document.querySelector("ek-light").updateComplete.then(
            () => document.querySelector("ek-light button[type=submit]").click());
    };
    new MutationObserver(() => {
        if (!document.querySelector(".kept")) return;
        if (!document.querySelector(".kept").textContent.includes(`${prefix} ${n} kept`)) return;
        window.told(`0.${first + n}`);
        start();
    }).observe(document.querySelector("ek-light"), {subtree: true, childList: true,
                                                    characterData: true});
    start();
}"""

READ = """() => new Promise((resolve, reject) => {
    const opening = indexedDB.open("evenkelvin");
    opening.onerror = reject;
    opening.onsuccess = () => {
        const all = opening.result.transaction("entries").objectStore("entries").getAll();
        all.onsuccess = () => { opening.result.close(); resolve(all.result); };
    };
})"""


#: A tab keeps fewer than ten thousand readings in its life.
MOST_DIGITS = 4


def first_of(tab: int) -> int:
    """Digits after the point of a tab's y before its first reading."""
    return (3000 + tab) * 10**MOST_DIGITS


def renderers(session: CDPSession) -> set[int]:
    """The browser's processes that run tabs, by their ids."""
    found = session.send("SystemInfo.getProcessInfo")["processInfo"]
    return {each["id"] for each in found if each["type"] == "renderer"}


def kill(session: CDPSession) -> None:
    """End the tabs' processes as the system does when it wants the memory: without a word."""
    killed = renderers(session)
    for process in killed:
        with contextlib.suppress(ProcessLookupError):
            os.kill(process, signal.SIGKILL)
    # Until the browser has noticed, it would give a dead process to a new tab.
    while killed & renderers(session):
        time.sleep(0.02)


@pytest.fixture
def browser(playwright: Playwright, chromium_path: str) -> Iterator[Browser]:
    """A browser of its own, whose tabs share their processes: those take longest to start."""
    args = [*LAUNCH["args"], f"--renderer-process-limit={PROCESSES}"]
    launched = playwright.chromium.launch(executable_path=chromium_path, args=args)
    yield launched
    launched.close()


def test_tabs_are_killed_while_keeping(browser: Browser, site: Site) -> None:
    # Keeping asks nothing of the kernel, so the tabs do without it.
    session = browser.new_browser_cdp_session()
    context = browser.new_context(service_workers="block")
    context.route("**/worker.js", lambda route: route.abort())
    told: list[str] = []
    context.expose_binding("told", lambda _source, y: told.append(y))
    page = context.new_page()
    page.goto(site.url)
    keep_light(page, "first", "0.3810", "0.3770")
    page.close()
    chance = random.Random(20261125)
    for number in range(ROUNDS):
        tabs = [context.new_page() for _ in range(TABS)]
        for tab in tabs:
            tab.goto(site.url, wait_until="commit")
        for each, tab in enumerate(tabs):
            tab.locator("#light-name").wait_for()
            tab.evaluate(KEEP_ON, [f"tab {number}.{each}", first_of(number * TABS + each)])
        tabs[0].wait_for_timeout(chance.uniform(0, LONGEST))
        kill(session)  # the dead tabs stay open: closing one takes half a second
    page = context.new_page()
    page.goto(site.url)
    page.locator("#light-name").wait_for()
    entries: list[dict[str, Any]] = page.evaluate(READ)
    context.close()
    by_id = {entry["id"]: entry for entry in entries}
    kept = {entry["data"]["y"] for entry in entries if entry["thing"] == "reading"}
    lived = {y[:-MOST_DIGITS] for y in told}
    assert len(lived) > ROUNDS * TABS / 2  # most tabs lived long enough to keep something
    assert set(told) <= kept
    # Nothing stands half written: whatever belongs to something finds it.
    assert all(entry["parent"] is None or entry["parent"] in by_id for entry in entries)
    assert all(entry["of"] in by_id for entry in entries)
