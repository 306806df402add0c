"""A made-up day of a meter's files, and how a folder of them is brought in."""

from __future__ import annotations

import time
from pathlib import Path

import numpy as np
from playwright.sync_api import Page, expect

from evenkelvin.colorimetry.illuminant import planck

NM = range(380, 781, 5)


def meter_file(
    folder: Path, number: int, title: str, day: str = "25.11.2026", lux: str = ""
) -> None:
    """Write the nth file of the day, its name counting down: the light falls and warms."""
    body = planck(np.array(NM, dtype=float), 6000.0 - 40.0 * number).tolist()
    head = [f"Titel: {title}"] if title else []
    hour, minute = divmod(480 + 9 * number, 60)
    head += [f"Beleuchtungsstärke: {lux or 900 - number} lx", f"Datum: {day}, {hour}:{minute:02d}"]
    rows = [
        f"{nm};{value / max(body):.5f}".replace(".", ",")
        for nm, value in zip(NM, body, strict=True)
    ]
    (folder / f"R{60 - number:03d}.txt").write_text("\n".join([*head, *rows]))


def load(page: Page, folder: Path, count: int) -> float:
    """Load a folder of so many files; return how many seconds it takes until all are understood."""
    page.evaluate("location.hash = '#files'")
    with page.expect_file_chooser() as chooser:
        page.get_by_label("Load a folder").click()
    began = time.monotonic()
    chooser.value.set_files(str(folder))
    expect(page.locator(".in-file[aria-busy=false]")).to_have_count(count, timeout=30_000)
    return time.monotonic() - began
