"""Two joined phones: how long a long book takes from one to the other, and one new reading.

Two contexts of one Chromium over this machine's own addresses. The ratio is that to what is
promised: ten seconds for 20 000 readings, 300 ms for a new one.
"""

from __future__ import annotations

import sys
import tempfile
import time
from pathlib import Path

from app_browser import app_in_browser
from playwright.sync_api import Browser, Page, expect

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

from hands import go
from joining import entries, join, status
from long_book import fill_with_readings

PROMISED_S = 10
PROMISED_MS = 300
#: New readings that are waited for, one after the other.
READINGS = 7

Row = tuple[str, float | None, str]

#: When a heading of that name stands on the screen, by the clock that both pages share.
SEEN = """name => new Promise(resolve => {
    const look = () => [...document.querySelectorAll("ek-book h2")]
        .some(one => one.textContent.includes(name)) && resolve(Date.now());
    look();
    new MutationObserver(look).observe(document.body, {subtree: true, childList: true});
})"""


def phone(browser: Browser, address: str) -> Page:
    page = browser.new_context(viewport={"width": 390, "height": 844}).new_page()
    page.goto(address)
    page.locator("html[data-kernel=ready]").wait_for(state="attached", timeout=120_000)
    return page


def seconds_until_joined(host: Page, guest: Page, folder: Path) -> float:
    join(host, guest, folder, wait=False)
    start = time.perf_counter()
    for page in (host, guest):
        expect(status(page)).to_contain_text("all sent", timeout=120_000)
    return time.perf_counter() - start


def run() -> list[Row]:
    with app_in_browser() as (browser, address, _), tempfile.TemporaryDirectory() as made:
        host, guest = phone(browser, address), phone(browser, address)
        fill_with_readings(host)
        host.reload()
        host.locator("html[data-kernel=ready]").wait_for(state="attached", timeout=120_000)
        new = seconds_until_joined(host, guest, Path(made))
        count = len(entries(guest))
        assert entries(host) == entries(guest)
        status(guest).get_by_role("button", name="Stop").click()
        known = seconds_until_joined(host, guest, Path(made))
        waits = sorted(wait_for_reading(host, guest, n) for n in range(READINGS))
    middle = waits[READINGS // 2]
    return [
        (
            f"joined: {count} entries to an empty phone, of {PROMISED_S} s",
            new / PROMISED_S,
            f"{new:.1f} s; {known:.1f} s where both know them",
        ),
        (
            f"joined: something new on the other screen, of {PROMISED_MS} ms",
            middle / PROMISED_MS,
            f"{middle:.0f} ms, median of {READINGS}; the longest {waits[-1]:.0f}",
        ),
    ]


def wait_for_reading(host: Page, guest: Page, n: int) -> float:
    """Milliseconds from the press that keeps to the other screen."""
    name = f"New {n}"
    for page in (host, guest):
        go(page, "Book")
    guest.get_by_role("button", name="New production").click()
    guest.locator("ek-book form input").fill(name)
    host.evaluate(f"void (window.seen = ({SEEN})({name!r}))")
    pressed = guest.evaluate("Date.now()")
    guest.locator("ek-book form input").press("Enter")
    return float(host.evaluate("window.seen")) - float(pressed)
