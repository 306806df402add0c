"""Typing for long does not grow the kernel's memory without bound."""

from __future__ import annotations

from collections.abc import Callable

from conftest import Site, wait_for_kernel
from playwright.sync_api import BrowserContext

START = """() => new Promise((resolve, reject) => {
    const worker = new Worker(borrowedPolicy.createScriptURL("./worker.js"));
    window.askEach = (requests) => new Promise((done) => {
        let next = 0;
        const send = () =>
            worker.postMessage({ id: next, request: JSON.stringify(requests[next]) });
        worker.onmessage = ({ data }) => {
            if (data.id === undefined) return;
            next += 1;
            if (next < requests.length) send();
            else done(JSON.parse(data.answer));
        };
        send();
    });
    worker.onmessage = ({ data }) => {
        if (data.stage === "ready") resolve();
        if (data.fatal) reject(new Error(data.fatal));
    };
})"""

#: Counts from now on how often the machine's memory grows, and by how many bytes.
COUNT = """() => {
    const { grow } = WebAssembly.Memory.prototype;
    self.grown = 0;
    WebAssembly.Memory.prototype.grow = function (pages) {
        self.grown += pages * 65536;
        return grow.call(this, pages);
    };
}"""


def keystrokes(first: int, count: int) -> list[dict[str, object]]:
    """Return what is asked while somebody types: every x is new, so nothing is remembered."""
    readings = [{"x": f"{0.38 + n * 1e-5:.5f}", "y": "0.3850"} for n in range(first, first + count)]
    return [
        {"ask": "describe", "reading": reading}
        if n % 4
        else {"ask": "fix", "reading": reading, "target": {"cct_K": 5600}}
        for n, reading in enumerate(readings)
    ]


def test_hundreds_of_keystrokes_do_not_grow_the_kernels_memory(
    profile: Callable[[], BrowserContext], site: Site
) -> None:
    app = profile().pages[0]
    app.goto(site.url)
    wait_for_kernel(app)
    app.evaluate(START)
    app.evaluate("questions => askEach(questions)", keystrokes(0, 200))
    worker = next(worker for worker in app.workers[::-1] if worker.url.endswith("/worker.js"))
    worker.evaluate(COUNT)
    answer = app.evaluate("questions => askEach(questions)", keystrokes(200, 250))
    assert answer["cct_K"] > 3000
    # The memory grows by a fifth at a time: once may happen, with every question may not. What
    # each of them leaves behind shows from 64 kB on.
    assert worker.evaluate("self.grown") < 16e6
