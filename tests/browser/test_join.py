"""Phones joined by sight: one shows a code, the other reads it and shows one back.

WebRTC between contexts of one Chromium over this machine's own addresses, with no server: the
guard of conftest.py fails a test on any request that leaves.
"""

from __future__ import annotations

import time
from collections.abc import Callable
from pathlib import Path

import pytest
from conftest import PHONE, Site, Watch, wait_for_kernel
from hands import go, keep_light, open_demo
from joining import entries, join, read_code, show_code, status
from native_kernel import answer_natively
from playwright.sync_api import Browser, BrowserContext, Page, expect

Phones = Callable[..., Page]


@pytest.fixture
def phone(phone_browser: Browser, watch: Watch, site: Site) -> Phones:
    """Another phone with a book of its own, signed with a name."""

    def open_one(name: str, clock: str = "") -> Page:
        context: BrowserContext = phone_browser.new_context(
            viewport=PHONE, permissions=["clipboard-read"], service_workers="allow"
        )
        watch.follow(context)
        answer_natively(context)
        page = context.new_page()
        if clock:
            page.add_init_script(clock)
        page.goto(site.url)
        wait_for_kernel(page)
        if name:
            page.evaluate("location.hash = '#join'")
            page.get_by_label("Who reads").fill(name)
        return page

    return open_one


def test_three_phones_share_one_book_and_one_comes_back(phone: Phones, tmp_path: Path) -> None:
    host, guest = phone("Nell"), phone("Ives")
    go(host, "Light")
    keep_light(host, "key", "0.3312", "0.3431")
    go(guest, "Light")
    keep_light(guest, "lantern", "0.4561", "0.4098")
    join(host, guest, tmp_path)
    expect(status(host)).to_contain_text("Joined with Ives")
    expect(status(guest)).to_contain_text("Joined with Nell")
    assert entries(host) == entries(guest)

    # What the guest keeps stands on the host's screen at once.
    go(host, "Book")
    expect(host.locator("ek-book a.setup")).to_have_count(2)  # each phone had a first one
    guest.evaluate("location.hash = '#book'")
    guest.get_by_role("button", name="New production").click()
    field = guest.locator("ek-book form input")
    field.fill("A coat of salt")
    field.press("Enter")
    expect(host.get_by_role("heading", name="A coat of salt")).to_be_visible()

    # A third phone gets what the others have, through the one that invited it.
    third = phone("")
    join(host, third, tmp_path)
    expect(status(host)).to_contain_text("Joined with 2 phones")
    assert entries(third) == entries(guest) == entries(host)
    go(third, "Light")
    keep_light(third, "window", "0.3201", "0.3339")
    expect(status(third)).to_contain_text("all sent")
    expect_same(host, guest, third)

    # Whoever stops is gone; the others go on.
    status(third).get_by_role("button", name="Stop").click()
    expect(status(third).locator(".notice")).to_have_count(0)
    expect(status(host)).to_contain_text("Joined with Ives")
    go(guest, "Light")
    keep_light(guest, "kicker", "0.3450", "0.3551")
    expect(status(guest)).to_contain_text("all sent")
    expect_same(host, guest)
    assert entries(third) != entries(host)


def until(page: Page, true: str) -> None:
    end = time.monotonic() + 15
    while not page.evaluate(true):
        assert time.monotonic() < end, true
        page.wait_for_load_state()


def expect_same(*pages: Page) -> None:
    end = time.monotonic() + 15
    while True:
        held = [entries(page) for page in pages]
        if all(each == held[0] for each in held):
            return
        assert time.monotonic() < end, [len(each) for each in held]


def test_only_what_is_chosen_leaves(phone: Phones, tmp_path: Path) -> None:
    host, guest = phone("Nell"), phone("Ives")
    go(host, "Book")
    for name in ("Open water", "Closed book"):
        host.get_by_role("button", name="New production").click()
        host.locator("ek-book form input").fill(name)
        host.locator("ek-book form input").press("Enter")
        expect(host.get_by_role("heading", name=name)).to_be_visible()
        host.get_by_role("button", name="Cancel").click()
    host.evaluate("location.hash = '#join'")
    host.get_by_label("This phone shares").select_option(label="Open water")
    join(host, guest, tmp_path)
    go(guest, "Book")
    expect(guest.get_by_role("heading", name="Open water")).to_be_visible()
    expect(guest.get_by_text("Closed book")).to_have_count(0)
    assert len(entries(guest)) == 1


def test_a_phone_that_lost_the_line_comes_back_without_new_codes(
    phone: Phones, tmp_path: Path
) -> None:
    made = """{
        const Real = RTCPeerConnection;
        window.lines = [];
        window.RTCPeerConnection = class extends Real {
            constructor(...all) { super(...all); lines.push(this); }
        };
    }"""
    host, guest = phone("Nell", made), phone("Ives", made)
    join(host, guest, tmp_path)
    # The spare lines are agreed: one that talks, and three ahead.
    until(guest, "lines.filter(one => one.signalingState === 'have-remote-offer').length === 3")
    guest.evaluate("location.hash = '#light'")
    for page in (host, guest):
        page.evaluate(
            "lines[0].close(); lines[0].dispatchEvent(new Event('connectionstatechange'))"
        )
    keep_light(guest, "key", "0.3312", "0.3431")
    expect_same(host, guest)
    for page in (host, guest):
        expect(status(page)).to_contain_text("all sent")
    assert guest.evaluate("lines[1].connectionState") == "connected"


def test_a_code_that_is_none_and_one_that_nobody_answers_are_said(
    phone: Phones, tmp_path: Path
) -> None:
    host, guest = phone("Nell"), phone("Ives")
    guest.evaluate("location.hash = '#join=AAAA'")
    guest.get_by_role("button", name="Join it").click()
    expect(guest.get_by_role("alert")).to_contain_text("not the code")
    # An answer that belongs to another invitation.
    host.evaluate("location.hash = '#join'")
    host.get_by_role("button", name="Invite a phone").click()
    first = show_code(host, tmp_path, "first")
    guest.evaluate("location.hash = '#join'")
    read_code(guest, first)
    answer = show_code(guest, tmp_path, "answer")
    host.get_by_role("button", name="Cancel").click()
    host.get_by_role("button", name="Invite a phone").click()
    read_code(host, answer)
    expect(host.get_by_role("alert")).to_contain_text("another invitation")
    # Nobody there: the invited phone has gone when its answer is read.
    second = show_code(host, tmp_path, "second")
    guest.get_by_role("button", name="Cancel").click()
    read_code(guest, second)
    answer = show_code(guest, tmp_path, "answer")
    guest.close()
    host.clock.install()
    read_code(host, answer)
    unreached = host.get_by_role("alert").get_by_text("could not be reached")
    while not unreached.is_visible():  # ten seconds, by the page's clock
        host.clock.fast_forward(1000)
    expect(host.get_by_role("link", name="Share or save the whole book")).to_be_visible()


def test_a_browser_that_cannot_and_the_demo_say_so(phone: Phones) -> None:
    page = phone("", "delete window.RTCPeerConnection")
    page.evaluate("location.hash = '#join'")
    expect(page.get_by_role("alert")).to_contain_text("cannot join phones")
    open_demo(page)
    page.evaluate("location.hash = '#join'")
    expect(page.get_by_role("alert")).to_contain_text("demo")
