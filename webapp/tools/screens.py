"""Take the README's pictures of the demo shoot, from dist/ as it is built.

.venv/bin/python webapp/tools/screens.py
"""

from __future__ import annotations

import os
import threading

from machine import find_chromium
from playwright.sync_api import sync_playwright
from static_server import make_server
from steps import DIST, WEBAPP

SCREENS = WEBAPP / "screens"
PHONE = {"width": 390, "height": 844}


def main() -> None:
    server = make_server(DIST, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    address = f"http://localhost:{server.server_address[1]}/"
    SCREENS.mkdir(exist_ok=True)
    with sync_playwright() as player:
        chromium = os.environ.get("EVENKELVIN_CHROMIUM") or find_chromium()
        browser = player.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
        page = browser.new_page(viewport=PHONE, color_scheme="dark", locale="en-GB")

        def shoot(name: str) -> None:
            page.wait_for_timeout(2500)
            page.screenshot(path=SCREENS / f"{name}.png")

        # The demo's own notice would fill the top of each picture: scroll past it.
        page.goto(f"{address}#demo")
        page.locator("html[data-kernel=ready]").wait_for(timeout=120_000)
        page.goto(f"{address}#light")
        page.get_by_label("x", exact=True).fill("0.4215")
        page.get_by_label("y", exact=True).fill("0.4022")
        page.wait_for_timeout(2500)
        page.mouse.wheel(0, 190)
        shoot("light")
        page.goto(f"{address}#set")
        page.wait_for_timeout(2500)
        page.mouse.wheel(0, 175)
        shoot("set")
        page.goto(f"{address}#balance")
        page.wait_for_timeout(4000)
        page.mouse.wheel(0, 175)
        shoot("balance")
        browser.close()
    server.shutdown()


if __name__ == "__main__":
    main()
