"""The first question of a kind after the kernel has started, and whom its practice keeps waiting.

On a first visit, in a process of its own: asked the moment the kernel is ready, which is what a
draft left on the screen does, and after a pause like that before somebody has typed a reading, in
which the kernel practises. Then a trifle is asked again and again while it practises: what it waits
for is a step of practice that has just begun.
"""

from __future__ import annotations

import json
import os
import shutil
import statistics
import tempfile
import threading
from pathlib import Path
from typing import Any

from machine import find_chromium
from plain_server import make_server
from playwright.sync_api import sync_playwright
from steps import DIST

ROUNDS = 5
#: Milliseconds in which practice comes to its end on a desk.
PAUSE = 4000
#: Milliseconds promised for the first of a kind, and for whatever a person asks meanwhile.
PROMISED = {"render": 150, "fix": 80}
STEP_MS = 50

LED = {"wavelengths_nm": list(range(380, 781, 5)), "values": [1 + k % 40 for k in range(81)]}
ASKED: dict[str, dict[str, Any]] = {
    "render": {"ask": "render", "reading": {"spectrum": LED}},
    "fix": {
        "ask": "fix",
        "reading": {"x": "0.4215", "y": "0.4022", "lamp": "led"},
        "target": {"cct_K": "3200"},
    },
}

#: A page with nothing but the kernel: another kernel in its process would lend it compiled code.
PAGE = "<!doctype html><link rel=icon href=data:,><title>warm</title>"
RUN = """({requests, pause, between}) => new Promise((resolve, reject) => {
    const worker = new Worker("./worker.js");
    const times = [];
    let start;
    const send = () => {
        start = performance.now();
        worker.postMessage({id: 1, request: requests[times.length]});
    };
    worker.onmessage = ({data}) => {
        if (data.fatal) reject(new Error(data.fatal));
        if (data.stage === "ready") setTimeout(send, pause);
        if (data.id !== 1) return;
        times.push(performance.now() - start);
        if (times.length < requests.length) setTimeout(send, between);
        else resolve(times);
    };
})"""


def run() -> list[tuple[str, float | None, str]]:
    rows: list[tuple[str, float | None, str]] = []
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as driver:
        site = Path(folder) / "site"
        shutil.copytree(DIST, site)
        (site / "warm.html").write_text(PAGE)
        server = make_server(site)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        browser = driver.chromium.launch(
            executable_path=os.environ.get("EVENKELVIN_CHROMIUM") or find_chromium(),
            args=["--no-sandbox"],
        )

        def times(requests: list[dict[str, Any]], pause: float, between: float = 0) -> list[float]:
            page = browser.new_context().new_page()
            page.goto(f"http://localhost:{server.server_address[1]}/warm.html")
            texts = [json.dumps(request) for request in requests]
            given = {"requests": texts, "pause": pause, "between": between}
            taken: list[float] = page.evaluate(RUN, given)
            page.context.close()
            return taken

        for name, request in ASKED.items():
            at_once = statistics.median(times([request], 0)[0] for _ in range(ROUNDS))
            later = statistics.median(times([request], PAUSE)[0] for _ in range(ROUNDS))
            promised = PROMISED[name]
            detail = f"{later:.0f} ms; {at_once:.0f} ms when asked the moment the kernel is ready"
            rows.append((f"first {name}, of {promised} ms", later / promised, detail))
        trifle = {"ask": "units", "illuminance_fc": 100}
        # A little longer than the worker waits for before it goes on.
        waits = [wait for k in range(3) for wait in times([trifle] * 20, 400, 330 + 15 * k)[1:]]
        detail = f"{max(waits):.0f} ms at most, {statistics.median(waits):.0f} as a rule"
        rows.append((f"waiting for practice, of {STEP_MS} ms", max(waits) / STEP_MS, detail))
        browser.close()
        server.shutdown()
    return rows
