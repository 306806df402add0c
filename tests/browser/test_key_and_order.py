"""Which light the others are a ratio to, and the order of lights: chosen, kept, travelling."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
from conftest import wait_for_kernel
from hands import go, keep, open_slip, type_xy, work_here
from playwright.sync_api import BrowserContext, Page, expect

LIGHTS = [
    ("window", "0.3050", "0.3230", "800"),
    ("key", "0.3810", "0.3770", "400"),
    ("fill", "0.3850", "0.3800", "200"),
]


@pytest.fixture
def lit(app: Page) -> Page:
    for name, x, y, lux in LIGHTS:
        type_xy(app, x, y, name)
        app.get_by_label("Illuminance", exact=True).fill(lux)
        keep(app)
    go(app, "Set")
    return app


def level(page: Page, name: str) -> str:
    slip = page.locator(".slip", has=page.get_by_role("heading", name=name, exact=True))
    open_slip(page, name)
    return slip.locator(".level").inner_text()


def check_by(page: Page, key: str) -> None:
    choice = page.get_by_label("Light that the others are a ratio to")
    expect(choice.locator("option:checked")).to_have_text(key)
    others = [name for name, *_ in LIGHTS if name != key]
    for name in others:
        expect(
            page.locator(".slip", has=page.get_by_role("heading", name=name, exact=True))
        ).to_contain_text(f"to {key}")
    assert f"to {key}" not in level(page, key)


def test_the_key_is_chosen_and_kept(lit: Page) -> None:
    check_by(lit, "window")  # the first by the order, whatever a light is called
    lit.get_by_label("Light that the others are a ratio to").select_option("fill")
    check_by(lit, "fill")
    lit.reload()
    wait_for_kernel(lit)
    check_by(lit, "fill")


def test_key_and_order_go_along_into_a_pick_up_and_to_another_phone(
    lit: Page, context: BrowserContext, tmp_path: Path
) -> None:
    lit.get_by_label("Light that the others are a ratio to").select_option("fill")
    check_by(lit, "fill")
    # An edit of the first light, which a book without its history takes for when it was made.
    lit.evaluate("location.hash = '#light'")
    type_xy(lit, "0.3051", "0.3231", "window")
    lit.get_by_label("Illuminance", exact=True).fill("800")
    lit.get_by_role("button", name="window, again").click()
    expect(lit.locator(".kept")).to_be_visible()

    lit.evaluate("location.hash = '#share'")
    with lit.expect_download() as waiting:
        lit.get_by_role("button", name="Share the file").click()
    plain = json.loads(Path(waiting.value.path()).read_text(encoding="utf-8"))
    lights = [entry for entry in plain["entries"] if entry["thing"] == "light"]
    assert sorted(entry["data"]["order"] for entry in lights) == [1, 2, 3]
    # The others wrote theirs at other times by other clocks.
    for n, entry in enumerate(lights):
        entry["at"] = f"2026-11-0{9 - n}T10:00:00.000+01:00"
    plain.pop("sha256", None)
    file = tmp_path / "book.json"
    file.write_text(json.dumps(plain), encoding="utf-8")

    lit.evaluate(
        """() => new Promise((resolve, reject) => {
            const gone = indexedDB.deleteDatabase("evenkelvin");
            gone.onsuccess = resolve;
            gone.onerror = reject;
        })"""
    )
    lit.reload()
    wait_for_kernel(lit)
    lit.evaluate("location.hash = '#receive'")
    lit.get_by_label("Choose a book's file").set_input_files(file)
    lit.get_by_role("button", name="Add to my book").click()
    expect(lit.locator(".kept")).to_be_visible(timeout=30_000)
    go(lit, "Book")
    lit.get_by_role("link", name="Setup 1").click()
    work_here(lit, "Setup 1")
    go(lit, "Set")
    expect(lit.locator(".slip h2")).to_have_text([name for name, *_ in LIGHTS])
    check_by(lit, "fill")

    lit.evaluate("location.hash = '#book'")
    lit.get_by_role("link", name="Setup 1").click()
    lit.get_by_role("button", name="Duplicate for a pick-up").click()
    expect(lit.get_by_role("button", name="Read ", exact=False).first).to_be_visible()
    go(lit, "Light")
    for name, x, y, lux in reversed(LIGHTS):
        type_xy(lit, x, y, name)
        lit.get_by_label("Illuminance", exact=True).fill(lux)
        # The last one that waits is begun by itself, under its name.
        lit.get_by_role("button", name=re.compile(rf"^({name}, again|Keep)$")).click()
        expect(lit.locator(".kept")).to_contain_text(name)
    go(lit, "Set")
    expect(lit.locator(".slip h2")).to_have_text([name for name, *_ in LIGHTS])
    check_by(lit, "fill")
