"""The book on the screen: a book of 20 000 readings against one of 200, in the same browser.

Opening the app on it, the first search (which makes the rows), and a search after that.
"""

from __future__ import annotations

import statistics
import sys
from pathlib import Path

from app_browser import app_in_browser
from playwright.sync_api import Browser

sys.path.append(str(Path(__file__).parents[1] / "browser"))
ROUNDS = 3

TIME = """async text => {
    const input = document.getElementById("find-text");
    const start = performance.now();
    input.value = text;
    input.dispatchEvent(new Event("input", {bubbles: true}));
    const book = document.querySelector("ek-book");
    await book.updateComplete;
    // The rows of a long book are worked out in slices: found is what is told with its number.
    while (!/\\d/.test(book.querySelector("[role=status]").textContent))
        await new Promise(done => setTimeout(done));
    return performance.now() - start;
}"""


def run() -> list[tuple[str, float | None, str]]:
    from long_book import FILL

    with app_in_browser() as (browser, address, _):
        long = measured(browser, address, FILL)
        short = measured(
            browser, address, FILL.replace("l < 20;", "l < 1;").replace("s < 10", "s < 2")
        )
    rows: list[tuple[str, float | None, str]] = []
    for name, ours, small in zip(("open", "first search", "search"), long, short, strict=True):
        detail = f"{ours:.0f} ms with 20 000 readings, {small:.0f} ms with 200"
        rows.append((f"the book on screen: {name}", ours / small, detail))
    return rows


def measured(browser: Browser, address: str, fill: str) -> list[float]:
    """Median milliseconds to open the app, to search first, and to search again."""
    context = browser.new_context(service_workers="block")
    # The kernel boots beside and would be measured with it.
    context.route("**/worker.js", lambda route: route.abort())
    page = context.new_page()
    page.goto(address)
    page.locator("h1").first.wait_for()
    page.evaluate(fill)
    times = []
    for _ in range(ROUNDS):
        page.goto("about:blank")
        page.goto(address + "#book")
        page.locator("#find-text").wait_for()
        opened = float(page.evaluate("performance.now()"))
        first = float(page.evaluate(TIME, "light 7"))
        times.append((opened, first, float(page.evaluate(TIME, "light 7 set"))))
    context.close()
    return [statistics.median(each) for each in zip(*times, strict=True)]
