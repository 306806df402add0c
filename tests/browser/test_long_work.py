"""Work that takes more than a second says how far it is, and can be stopped.

The kernel is made slow by keeping one kind of question from it, as if it took for ever.
"""

from __future__ import annotations

import re

import pytest
from hands import go, keep_light, open_demo
from playwright.sync_api import Locator, Page, expect

#: Questions that name `window.kept` never reach the worker.
KEEP_BACK = """
const send = Worker.prototype.postMessage;
Worker.prototype.postMessage = function (message, ...rest) {
    const held = window.kept && message.request?.includes(`"ask":"${window.kept}"`);
    if (!held) send.call(this, message, ...rest);
};
"""


@pytest.fixture
def slow(app: Page) -> Page:
    app.add_init_script(KEEP_BACK)
    app.evaluate(f"() => {{ {KEEP_BACK} }}")
    return app


def keep_back(page: Page, ask: str | None) -> None:
    page.evaluate("ask => { window.kept = ask; }", ask)


def bar(page: Page) -> Locator:
    return page.locator("ek-long-work progress")


def stop(page: Page) -> None:
    expect(bar(page)).to_be_visible()
    page.get_by_role("button", name="Stop", exact=True).click()
    expect(bar(page)).to_have_count(0)


def test_a_folder_of_files_counts_and_stops(app: Page) -> None:
    app.evaluate("location.hash = '#files'")
    rows = "".join(f"{nm};{nm % 7 + 1}\n" for nm in range(380, 781))
    app.locator("#more-files").set_input_files(
        [
            {"name": f"batten {n}.csv", "mimeType": "text/csv", "buffer": f"nm;W\n{rows}".encode()}
            for n in range(150)
        ]
    )
    expect(app.get_by_label(re.compile(r"^Read ([3-9]|\d\d+) of 150 files$"))).to_be_visible()
    stop(app)
    expect(app.get_by_text(re.compile(r"Stopped: \d+ files were not read\."))).to_be_visible()
    expect(app.locator(".in-file[aria-busy=true]")).to_have_count(0)
    read = app.locator(".in-file").count()
    assert 0 < read < 150
    # What was read can be kept, and nothing comes after.
    app.get_by_role("button", name=re.compile(rf"^Keep all {read} in ")).click()
    go(app, "Set")
    expect(app.locator(".slip")).to_have_count(read)


def test_a_balance_is_stopped_and_taken_up_again(slow: Page) -> None:
    keep_light(slow, "key", "0.4102", "0.3941")
    keep_back(slow, "balance")
    go(slow, "Set")
    slow.evaluate("location.hash = '#balance'")
    stop(slow)
    expect(slow.get_by_text("Stopped before it was done.")).to_be_visible()
    # The rest of the app goes on meanwhile.
    go(slow, "Set")
    expect(slow.locator(".slip .verdict").first).to_be_visible()
    slow.evaluate("location.hash = '#balance'")
    stop(slow)
    keep_back(slow, None)
    slow.get_by_role("button", name="Go on").click()
    expect(slow.locator(".plan")).not_to_have_count(0)
    expect(slow.get_by_text("Stopped before it was done.")).to_have_count(0)


@pytest.mark.parametrize("ask", ["report", "field"])
def test_a_report_is_stopped_and_taken_up_again(slow: Page, ask: str) -> None:
    open_demo(slow)
    go(slow, "Book")
    keep_back(slow, ask)
    slow.locator("main a[href^='#setup/']").first.click()
    slow.get_by_role("link", name="Report", exact=True).click()
    stop(slow)
    expect(slow.get_by_text("Stopped before it was done.")).to_be_visible()
    sheet = slow.locator(".sheet")
    expect(sheet).to_have_count(0 if ask == "report" else 1)
    keep_back(slow, None)
    slow.get_by_role("button", name="Go on").click()
    expect(sheet.locator(".chart").first).to_be_visible()
    expect(bar(slow)).to_have_count(0)


def test_a_book_that_takes_long_to_look_at_can_be_left_alone(slow: Page) -> None:
    keep_back(slow, "book_check")
    slow.evaluate("location.hash = '#receive'")
    book = '{"format": "evenkelvin-book", "version": 2, "entries": []}'
    slow.locator("#receive-file").set_input_files(
        {"name": "b.json", "mimeType": "application/json", "buffer": book.encode()}
    )
    stop(slow)
    expect(slow.get_by_text("Stopped: nothing was brought in.")).to_be_visible()
    keep_back(slow, None)
    slow.locator("#receive-file").set_input_files(
        {"name": "b.json", "mimeType": "application/json", "buffer": book.encode()}
    )
    expect(slow.locator("main .problem, main .answer").first).to_be_visible()
    expect(slow.get_by_text("Stopped: nothing was brought in.")).to_have_count(0)
