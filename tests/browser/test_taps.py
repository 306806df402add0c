"""Jobs of a night cost the hand no more than they may."""

from __future__ import annotations

import pytest
from hands import HALL, go, headline, keep, share_by_clipboard, type_xy
from playwright.sync_api import Page, expect
from thumb import JOBS, Job, Thumb


def prepare(page: Page, job: Job) -> None:
    """Have the lights in the book that the job begins with, and Set on the screen."""
    share_by_clipboard(page)
    for name, x, y, lux in HALL[: job.lights_before]:
        type_xy(page, x, y, name)
        page.get_by_label("Illuminance", exact=True).fill(lux)
        keep(page)
    if job.lights_before:
        go(page, "Set")
        expect(headline(page)).to_be_visible()


@pytest.mark.parametrize("job", JOBS, ids=lambda job: job.name)
def test_a_job_costs_the_hand_no_more_than_it_may(app: Page, job: Job) -> None:
    prepare(app, job)
    thumb = Thumb(app)
    job.does(thumb)
    assert thumb.taps <= job.taps
    assert job.characters is None or thumb.characters <= job.characters


def test_what_was_picked_up_last_can_be_taken_back_and_the_next_waits(app: Page) -> None:
    prepare(app, JOBS[3])
    go(app, "Book")
    app.get_by_role("link", name="Setup 1").click()
    app.get_by_role("button", name="Duplicate for a pick-up").click()
    app.get_by_role("button", name="Read key").click()
    expect(app.locator("#light-x")).to_be_focused()
    app.keyboard.type("38123771600")
    app.keyboard.press("Enter")
    expect(app.locator(".kept")).to_contain_text("key kept")
    expect(app.locator("h1")).to_contain_text("fill")
    app.get_by_role("button", name="Undo", exact=True).click()
    expect(app.locator("h1")).to_contain_text("key")
    expect(app.get_by_label("x", exact=True)).to_have_value("0.3812")
    go(app, "Set")
    for name in ("key", "fill", "batten 1"):
        expect(app.get_by_role("button", name=f"Read {name}")).to_be_visible()
