"""What nobody waits for any more does not keep the kernel from what is wanted now."""

from __future__ import annotations

import json
from collections.abc import Iterator

import pytest
from conftest import PHONE, Site, Watch, wait_for_kernel
from hands import go, headline, type_xy
from playwright.sync_api import Browser, Page, expect

#: Writes down what the kernel is asked, and swallows what `window.held` names, as if the answer
#: took for ever; that question has no other end than a fresh worker.
LISTEN = """{
    const Own = Worker;
    window.asked = [];
    window.workers = 0;
    window.held = "";
    window.Worker = class extends Own {
        constructor(...all) {
            super(...all);
            window.workers += String(all[0]).endsWith("/worker.js");
        }
        postMessage(message, handedOver) {
            if (!message.request) return super.postMessage(message, handedOver);
            window.asked.push(message.request);
            const {ask} = JSON.parse(message.request);
            if (ask !== window.held) return super.postMessage(message);
            window.held = "";
        }
    };
}"""


@pytest.fixture
def heard(phone_browser: Browser, site: Site, watch: Watch) -> Iterator[Page]:
    """The app, with its kernel ready and its questions written down."""
    context = phone_browser.new_context(viewport=PHONE, has_touch=True)
    watch.follow(context)
    context.add_init_script(LISTEN)
    page = context.new_page()
    page.goto(site.url)
    wait_for_kernel(page)
    yield page
    context.close()


def until_asked(page: Page) -> None:
    """Wait until the question that is held is on its way."""
    while page.evaluate("window.held"):
        page.wait_for_timeout(20)


def asked(page: Page, ask: str) -> list[str]:
    """The readings that one kind of question was asked about."""
    requests = [json.loads(text) for text in page.evaluate("window.asked")]
    return [request["reading"]["x"] for request in requests if request["ask"] == ask]


def test_ten_characters_typed_quickly_are_asked_about_once(heard: Page) -> None:
    heard.get_by_label("y", exact=True).fill("0.3770")
    heard.get_by_label("x", exact=True).press_sequentially("0.38101234")
    expect(headline(heard)).to_be_visible()
    assert asked(heard, "fix")[-1] == "0.38101234"
    assert len(asked(heard, "fix")) <= 2


def test_of_what_is_typed_while_the_kernel_is_busy_only_the_last_is_asked(heard: Page) -> None:
    type_xy(heard, "0.38", "0.3770")
    expect(headline(heard)).to_be_visible()
    heard.evaluate("window.asked = []; window.held = 'fix'")
    heard.get_by_label("x", exact=True).press("End")
    heard.get_by_label("x", exact=True).press_sequentially("1")
    until_asked(heard)
    # Slower than the pause that a question waits for: each of these would be one.
    heard.get_by_label("x", exact=True).press_sequentially("2345", delay=80)
    expect(headline(heard)).to_be_visible(timeout=60_000)
    expect(heard.locator("section.answer")).to_have_attribute("aria-busy", "false", timeout=60_000)
    assert asked(heard, "fix") == ["0.381", "0.3812345"]


def test_an_abandoned_answer_does_not_keep_the_next_screen_waiting(heard: Page) -> None:
    type_xy(heard, "0.38", "0.3770", name="key")
    heard.get_by_role("button", name="Keep", exact=True).click()
    expect(heard.locator(".kept")).to_be_visible()
    heard.evaluate("window.held = 'book_check'")
    heard.evaluate("location.hash = '#share'")
    expect(heard.get_by_text("Writing")).to_be_visible()
    until_asked(heard)
    assert heard.evaluate("window.workers") == 1
    go(heard, "Light")
    type_xy(heard, "0.44758", "0.40745", name="practical")
    expect(headline(heard)).to_contain_text("CTB", timeout=60_000)
    assert heard.evaluate("window.workers") == 2
    # The screen that was left asks anew when somebody comes back.
    heard.evaluate("location.hash = '#share'")
    expect(heard.get_by_test_id("read-back")).to_be_visible()


def test_a_wanted_answer_is_waited_for_however_long_it_takes(heard: Page) -> None:
    type_xy(heard, "0.38", "0.3770")
    expect(headline(heard)).to_be_visible()
    heard.clock.install()
    heard.evaluate("window.held = 'fix'")
    heard.get_by_label("x", exact=True).fill("0.381")
    expect(heard.locator("section.answer")).to_have_attribute("aria-busy", "true")
    until_asked(heard)
    heard.clock.run_for(4000)
    assert heard.evaluate("window.workers") == 1
