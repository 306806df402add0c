"""Take pictures of the demo shoot, from dist/ as it is built.

    .venv/bin/python webapp/tools/screens.py                the README's three
    .venv/bin/python webapp/tools/screens.py manifest       those of the browser's install dialogue
    .venv/bin/python webapp/tools/screens.py FOLDER [NAME…] every view, or these, at 390 and
                                                            1280 px, dark and in daylight

The last is `build.py screens`. It is for looking at: nothing of it is kept in the repository.
"""

from __future__ import annotations

import os
import sys
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from machine import find_chromium
from playwright.sync_api import Browser, Page, sync_playwright
from static_server import make_server
from steps import DIST, ROOT, WEBAPP

SCREENS = WEBAPP / "screens"
STORE = WEBAPP / "static" / "screens"
PHONE = {"width": 390, "height": 844}
LAPTOP = {"width": 1280, "height": 800}
REST = 2500  # ms until the last answer is drawn


@contextmanager
def chromium() -> Iterator[tuple[Browser, str]]:
    """A browser, and where the app is."""
    server = make_server(DIST, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    with sync_playwright() as player:
        path = os.environ.get("EVENKELVIN_CHROMIUM") or find_chromium()
        browser = player.chromium.launch(executable_path=path, args=["--no-sandbox"])
        yield browser, f"http://localhost:{server.server_address[1]}/"
        browser.close()
    server.shutdown()


def open_demo(page: Page, address: str) -> None:
    page.goto(f"{address}#demo")
    page.locator("html[data-kernel=ready]").wait_for(timeout=120_000)
    page.locator("ek-set .slip").first.wait_for()


def type_reading(page: Page) -> None:
    page.get_by_label("x", exact=True).fill("0.4215")
    page.get_by_label("y", exact=True).fill("0.4022")


def for_the_readme() -> None:
    SCREENS.mkdir(exist_ok=True)
    with chromium() as (browser, address):
        page = browser.new_page(viewport=PHONE, color_scheme="dark", locale="en-GB")

        def shoot(name: str) -> None:
            page.wait_for_timeout(REST)
            page.screenshot(path=SCREENS / f"{name}.png")

        # The demo's own notice would fill the top of each picture: scroll past it.
        open_demo(page, address)
        page.goto(f"{address}#light")
        type_reading(page)
        page.wait_for_timeout(REST)
        page.mouse.wheel(0, 190)
        shoot("light")
        page.goto(f"{address}#set")
        page.wait_for_timeout(REST)
        page.mouse.wheel(0, 175)
        shoot("set")
        page.goto(f"{address}#balance")
        page.wait_for_timeout(4000)
        page.mouse.wheel(0, 175)
        shoot("balance")


def for_the_manifest() -> None:
    """The set on a phone and on a laptop, and one light, in few colours."""
    from PIL import Image

    STORE.mkdir(exist_ok=True)
    with chromium() as (browser, address):
        page = browser.new_page(viewport=PHONE, color_scheme="dark", locale="en-GB")
        open_demo(page, address)
        for name, place, size, down in (
            ("set", "set", PHONE, 175),
            ("light", "light", PHONE, 190),
            ("wide", "set", LAPTOP, 60),
        ):
            page.set_viewport_size(size)  # type: ignore[arg-type]
            page.goto(f"{address}#{place}")
            if place == "light":
                type_reading(page)
            page.locator(f"ek-{place} svg").first.wait_for()
            page.wait_for_timeout(REST)
            page.mouse.wheel(0, down)
            page.wait_for_timeout(REST)
            file = STORE / f"{name}.png"
            page.screenshot(path=file)
            with Image.open(file) as picture:
                picture.convert("RGB").quantize(24, dither=Image.Dither.NONE).save(
                    file, optimize=True
                )


def every_view(folder: Path, only: list[str]) -> None:
    """Each address of the app, found as the tests find them, as a whole screen."""
    sys.path.insert(0, str(ROOT / "tests" / "browser"))
    from places import addresses, visit

    folder.mkdir(parents=True, exist_ok=True)
    with chromium() as (browser, address):
        page = browser.new_page(viewport=PHONE, color_scheme="dark", locale="en-GB")
        open_demo(page, address)
        found = addresses(page)
        if unknown := set(only) - set(found):
            sys.exit(f"No such view: {', '.join(sorted(unknown))}. There are {', '.join(found)}.")
        for name in only or found:
            for place in found[name]:
                for width, size in ((390, PHONE), (1280, LAPTOP)):
                    page.set_viewport_size(size)  # type: ignore[arg-type]
                    visit(page, place)
                    if name == "light":
                        type_reading(page)
                    page.wait_for_timeout(REST // 3)
                    for theme in ("dark", "light"):
                        page.emulate_media(color_scheme=theme)  # type: ignore[arg-type]
                        page.wait_for_timeout(150)
                        which = f"{name}{'-one' * ('/' in place)}-{width}-{theme}.png"
                        page.screenshot(path=folder / which)


if __name__ == "__main__":
    if sys.argv[1:] == ["manifest"]:
        for_the_manifest()
    elif sys.argv[1:]:
        every_view(Path(sys.argv[1]), sys.argv[2:])
    else:
        for_the_readme()
