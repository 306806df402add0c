"""Boot to the first answer, and the bytes for it, against bare Pyodide with numpy.

Bare means: the files as they come, numpy by `packages: ["numpy"]` from the lock, and a 32 × 32
least squares for an answer. Ours answers a real question. Both run in a worker of the same page,
in turn, each in a fresh browser profile (cold) and again in the same one (warm), ours then with
no network, out of its own cache. Warm is told for the first reload and for a later one: a browser
keeps what it compiled only after it has used it for a while, of theirs and of ours alike.
"""

from __future__ import annotations

import gzip
import json
import os
import shutil
import statistics
import sys
import tempfile
import threading
import time
from pathlib import Path

from machine import find_chromium
from make_dist import put_service_worker
from plain_server import make_server
from playwright.sync_api import Browser, BrowserContext, sync_playwright
from steps import CACHE, DIST, PYODIDE, files_below
from wheels import pyodide_lock

ROUNDS = 5
RELOADS = 3
#: How long a page stays after its answer, in milliseconds; nobody leaves at once.
STAY = 1500
QUESTION = '{"ask":"describe","reading":{"x":"0.4215","y":"0.4022"}}'

FIRST, LATER = "warm and offline, first reload", "warm and offline, later"

BARE_WORKER = """
importScripts("./pyodide.js");
loadPyodide({ indexURL: new URL("./", location.href).href, packages: ["numpy"] }).then((py) => {
  py.runPython("import numpy; numpy.linalg.lstsq(numpy.eye(32), numpy.ones(32), rcond=None)[0]");
  postMessage({ answer: "" });
});
"""

PAGE = "<!doctype html><link rel=icon href=data:,><script src=./bench.js></script>"
PAGE_SCRIPT = """
// As start.js does it.
const worker = new Worker("./worker.js", { name: KEPT ? "helped" : "" });
if (KEPT) {
  new Worker("./unpack.js").onmessage = ({ data }) =>
    worker.postMessage(data, data.files ? [data.files.buffer] : []);
}
worker.onmessage = async ({ data }) => {
  if (data.stage === "ready") worker.postMessage({ id: 1, request: QUESTION });
  if (data.fatal) document.title = "failed: " + data.fatal;
  if (data.answer === undefined) return;
  const taken = performance.now();
  if (KEPT) {
    navigator.serviceWorker.register("./sw.js");
    await navigator.serviceWorker.ready;
  }
  document.title = "answered " + taken;
};
"""


def run() -> list[tuple[str, float | None, str]]:
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder)
        lay_out(site)
        return [*boot_rows(site), *size_rows(site)]


def lay_out(site: Path) -> None:
    """Two folders with the same page, each with the worker that it starts."""
    shutil.copytree(DIST, site / "ours")
    bare = site / "bare"
    bare.mkdir()
    numpy_wheel = pyodide_lock()["packages"]["numpy"]["file_name"]
    files = ["pyodide.js", "pyodide.asm.js", "pyodide.asm.wasm", "python_stdlib.zip"]
    for name in [*files, "pyodide-lock.json"]:
        shutil.copyfile(PYODIDE / name, bare / name)
    shutil.copyfile(CACHE / "wheels" / numpy_wheel, bare / numpy_wheel)
    (bare / "worker.js").write_text(BARE_WORKER)
    for which, kept in (("bare", "false"), ("ours", "true")):
        script = PAGE_SCRIPT.replace("QUESTION", json.dumps(QUESTION)).replace("KEPT", kept)
        (site / which / "bench.html").write_text(PAGE)
        (site / which / "bench.js").write_text(script)
    keep_all(site / "ours")


def keep_all(app: Path) -> None:
    """Have all that lies there kept for offline use, the page as well, as if it were the app's."""
    service_worker = app / "sw.js"
    service_worker.write_text(service_worker.read_text().split("\n", 1)[1])
    put_service_worker(app)


def boot_rows(site: Path) -> list[tuple[str, float | None, str]]:
    server = make_server(site)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    address = f"http://localhost:{server.server_address[1]}/"
    times: dict[tuple[str, str], list[float]] = {}
    with sync_playwright() as driver:
        browser = driver.chromium.launch(
            executable_path=os.environ.get("EVENKELVIN_CHROMIUM") or find_chromium(),
            args=["--no-sandbox"],
        )
        for _ in range(ROUNDS):
            for which in ("bare", "ours"):
                first, *again = visits(browser, address, which)
                for state, taken in (("cold", first), (FIRST, again[0]), (LATER, again[-1])):
                    times.setdefault((state, which), []).append(taken)
        browser.close()
    server.shutdown()
    rows: list[tuple[str, float | None, str]] = []
    for state in ("cold", FIRST, LATER):
        ours, bare = (statistics.median(times[state, which]) for which in ("ours", "bare"))
        detail = f"{ours:.0f} ms against {bare:.0f} ms, median of {ROUNDS}"
        rows.append((f"boot to first answer, {state}", ours / bare, detail))
    return rows


def visits(browser: Browser, address: str, which: str) -> list[float]:
    """Return the times of the first visit and of the next ones, ours with no network then."""
    context: BrowserContext = browser.new_context()
    times = [visit(context, f"{address}{which}/bench.html")]
    context.set_offline(which == "ours")
    times += [visit(context, f"{address}{which}/bench.html") for _ in range(RELOADS)]
    context.close()
    return times


def visit(context: BrowserContext, address: str) -> float:
    """Milliseconds from navigation to the first answer."""
    page = context.new_page()
    page.goto(address)
    give_up = time.monotonic() + 120
    while not (title := page.title()).startswith("answered"):
        if title.startswith("failed") or time.monotonic() > give_up:
            raise RuntimeError(title or "no answer within two minutes")
        page.wait_for_timeout(20)
    page.wait_for_timeout(STAY)
    page.close()
    return float(title.split()[1])


def size_rows(site: Path) -> list[tuple[str, float | None, str]]:
    """Bytes of the whole app against those of bare Pyodide and numpy alone.

    The reader of displays and the install dialogue's pictures are not of the first visit.
    """
    rows: list[tuple[str, float | None, str]] = []
    for words, measure in (("as gzip sends them", gzipped), ("as files", plain)):
        ours, bare = (
            sum(
                measure(file)
                for file in files_below(site / which)
                if not {"reader", "screens"} & set(file.relative_to(site).parts)
            )
            for which in ("ours", "bare")
        )
        detail = f"{ours / 1e6:.2f} MB against {bare / 1e6:.2f} MB"
        rows.append((f"bytes of the whole app, {words}", ours / bare, detail))
    return rows


def plain(path: Path) -> int:
    return path.stat().st_size


def gzipped(path: Path) -> int:
    data = path.read_bytes()
    return min(len(data), len(gzip.compress(data, 9)))


if __name__ == "__main__":
    sys.exit("Run it with: python3 build.py bench")
