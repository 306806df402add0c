"""What jobs of a night cost the hand, on the screen of a phone: taps and characters.

The jobs and the counting stand in tests/browser/thumb.py.
"""

from __future__ import annotations

import sys
from pathlib import Path
from typing import TYPE_CHECKING

from app_browser import app_in_browser
from playwright.sync_api import Browser, Page

if TYPE_CHECKING:
    from thumb import Job, Thumb

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))


def run() -> list[tuple[str, float | None, str]]:
    from test_taps import prepare
    from thumb import JOBS, Thumb

    rows: list[tuple[str, float | None, str]] = []
    with app_in_browser() as (browser, address, _):
        for job in JOBS:
            page = open_phone(browser, address)
            prepare(page, job)
            thumb = Thumb(page)
            job.does(thumb)
            page.context.close()
            rows += told(job, thumb)
    return [*rows, *by_camera()]


def by_camera() -> list[tuple[str, float | None, str]]:
    """The same six lights off a display that the camera sees."""
    from reading_displays import camera_of, film_of
    from thumb import BY_CAMERA, Thumb

    from displays import CLEAR, display

    film = film_of(display(CLEAR))
    with app_in_browser(*camera_of(film)) as (browser, address, _):
        page = open_phone(browser, address)
        page.get_by_role("button", name="Read the meter's display").click()
        page.get_by_role("button", name="Get the reader").click()
        page.get_by_text("From a picture").wait_for()
        page.get_by_role("button", name="Close").click()
        thumb = Thumb(page)
        BY_CAMERA.does(thumb)
    film.unlink()
    return told(BY_CAMERA, thumb)


def open_phone(browser: Browser, address: str) -> Page:
    from conftest import PHONE, wait_for_kernel

    page = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True).new_page()
    page.goto(address)
    wait_for_kernel(page)
    return page


def told(job: Job, thumb: Thumb) -> list[tuple[str, float | None, str]]:
    taps = f"{thumb.taps} of {job.taps}"
    rows: list[tuple[str, float | None, str]] = [
        (f"hand: {job.name}, taps", thumb.taps / job.taps, taps)
    ]
    if job.characters:
        share = thumb.characters / job.characters
        typed = f"{thumb.characters} of {job.characters}"
        rows.append((f"hand: {job.name}, characters", share, typed))
    return rows
