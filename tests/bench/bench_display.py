"""Displays read by the camera: how many are read right at once, and how long a picture takes."""

from __future__ import annotations

import statistics
import sys
from pathlib import Path

from app_browser import app_in_browser

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))

#: Other than those of the tests, and than those by which the reader was mended.
SEEDS = range(5001, 5401)
#: Milliseconds that a picture may take.
MOST = 300


def run() -> list[tuple[str, float | None, str]]:
    from conftest import PHONE, wait_for_kernel
    from reading_displays import read_all

    with app_in_browser() as (browser, address, _):
        page = browser.new_context(viewport=PHONE, has_touch=True).new_page()
        page.goto(address)
        wait_for_kernel(page)
        page.get_by_role("button", name="Read the meter's display").click()
        page.get_by_role("button", name="Get the reader").click()
        page.get_by_text("From a picture").wait_for()
        tally = read_all(page, SEEDS)
    took = statistics.median(tally.milliseconds)
    told = (
        f"{tally.right} of {tally.complete}; said to agree and wrong {tally.false}, "
        f"unasked {tally.silent}"
    )
    return [
        ("displays with x y and CCT read right at once", tally.right / tally.complete, told),
        ("a picture of a display, of 300 ms", took / MOST, f"{took:.0f} ms in the median"),
    ]
