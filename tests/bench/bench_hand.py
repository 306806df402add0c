"""What jobs of a night cost the hand, on the screen of a phone: taps and characters.

The jobs and the counting stand in tests/browser/thumb.py.
"""

from __future__ import annotations

import sys
from pathlib import Path

from app_browser import app_in_browser

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))


def run() -> list[tuple[str, float | None, str]]:
    from conftest import PHONE, wait_for_kernel
    from test_taps import prepare
    from thumb import JOBS, Thumb

    rows: list[tuple[str, float | None, str]] = []
    with app_in_browser() as (browser, address, _):
        for job in JOBS:
            context = browser.new_context(viewport=PHONE, has_touch=True, is_mobile=True)
            page = context.new_page()
            page.goto(address)
            wait_for_kernel(page)
            prepare(page, job)
            thumb = Thumb(page)
            job.does(thumb)
            context.close()
            rows.append(
                (f"hand: {job.name}, taps", thumb.taps / job.taps, f"{thumb.taps} of {job.taps}")
            )
            if job.characters:
                share = thumb.characters / job.characters
                typed = f"{thumb.characters} of {job.characters}"
                rows.append((f"hand: {job.name}, characters", share, typed))
    return rows
