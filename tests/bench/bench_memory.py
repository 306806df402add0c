"""What an hour of work takes of the device's memory: the whole tab, app and kernel together.

Read from the system, as a phone's would that ends tabs for want of it: the pages of the renderer's
process, those that it shares with other processes by its share (Pss, proc_pid_smaps(5)). A tab that
was opened before is opened again with no network, every field of Light is typed over for as many
characters as an hour holds, and the places are visited. The service worker is ended as the browser
ends it when nobody asks it for half a minute. Of the browser's processes the largest counts, which
is the app's. Only Linux tells.
"""

from __future__ import annotations

import re
import sys
from pathlib import Path

from app_browser import app_in_browser
from playwright.sync_api import Browser, Page

sys.path.insert(0, str(Path(__file__).parents[1] / "browser"))
PROMISED_MB = 150
STROKES = 3600
#: Milliseconds in which the worker that unpacked ends, and what is left over is taken out.
REST = 25_000


def renderers(browser: Browser) -> list[int]:
    session = browser.new_browser_cdp_session()
    found = session.send("SystemInfo.getProcessInfo")["processInfo"]
    session.detach()
    return [process["id"] for process in found if process["type"] == "renderer"]


def megabytes(process: int) -> float:
    text = Path(f"/proc/{process}/smaps_rollup").read_text()
    kib = re.search(r"^Pss:\s+(\d+) kB", text, re.MULTILINE)
    assert kib
    return int(kib[1]) * 1024 / 1e6


def end_service_worker(page: Page) -> None:
    session = page.context.new_cdp_session(page)
    session.send("ServiceWorker.enable")
    session.send("ServiceWorker.stopAllWorkers")
    session.detach()


def run() -> list[tuple[str, float | None, str]]:
    name = f"memory of the tab after an hour of work, of {PROMISED_MB} MB"
    if not Path("/proc/self/smaps_rollup").exists():
        return [(name, None, "not run: this system does not tell what a process shares")]
    from conftest import wait_for_kernel
    from endurance import type_for_long
    from hands import go

    with app_in_browser() as (browser, address, server):
        context = browser.new_context(viewport={"width": 390, "height": 844}, has_touch=True)
        page = context.new_page()
        page.goto(address)
        page.locator("html[data-offline=ready]").wait_for(state="attached", timeout=120_000)
        page.close()
        context.set_offline(True)
        server.shutdown()
        page = context.new_page()
        page.goto(address)
        wait_for_kernel(page)
        page.wait_for_timeout(REST)
        end_service_worker(page)
        page.wait_for_timeout(2000)
        opened = max(megabytes(process) for process in renderers(browser))
        type_for_long(page, first=0, strokes=STROKES)
        page.get_by_role("button", name="Keep", exact=True).click()
        page.locator(".kept").wait_for()
        for place in ("Set", "Book", "Kit", "Light"):
            go(page, place)
        for hash in ("#balance", "#mix", "#sun", "#order/shoot", "#exposure", "#light"):
            page.evaluate("to => { location.hash = to; }", hash)
            page.wait_for_timeout(1500)
        page.wait_for_timeout(REST)
        end_service_worker(page)
        page.wait_for_timeout(2000)
        worked = max(megabytes(process) for process in renderers(browser))
    detail = f"{worked:.0f} MB after {STROKES} characters and 10 visits, {opened:.0f} when opened"
    return [(name, worked / PROMISED_MB, detail)]
