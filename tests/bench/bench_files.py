"""How long a folder of a meter's files takes until all are understood, against the promise."""

from __future__ import annotations

import sys
import tempfile
from pathlib import Path

from app_browser import app_in_browser

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))
FILES, PROMISE_S = 60, 3.0


def run() -> list[tuple[str, float | None, str]]:
    from conftest import wait_for_kernel
    from day_of_files import load, meter_file

    taken = []
    with app_in_browser() as (browser, address, _), tempfile.TemporaryDirectory() as folder:
        for number in range(FILES):
            meter_file(Path(folder), number, f"window {number % 3}")
        for _round in range(2):
            page = browser.new_page(viewport={"width": 390, "height": 844})
            page.goto(address)
            wait_for_kernel(page)
            taken.append(load(page, Path(folder), FILES))
            page.close()
    best = min(taken)
    return [(f"{FILES} files understood, of {PROMISE_S:.0f} s", best / PROMISE_S, f"{best:.2f} s")]
