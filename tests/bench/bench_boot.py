"""Boot to the first answer, and the bytes for it, against bare Pyodide with numpy.

Bare means: the files as they come, numpy by `packages: ["numpy"]` from the lock, and a 32 × 32
least squares for an answer. Ours answers a real question. Both run in a worker of the same page,
in turn, each in a fresh browser profile (cold) and again in the same one (warm).
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
from pathlib import Path
from urllib.parse import quote

import build
from plain_server import make_server
from playwright.sync_api import Browser, BrowserContext, sync_playwright

ROUNDS = 5
QUESTION = '{"ask":"describe","reading":{"x":"0.4349","y":"0.4024"}}'

BARE_WORKER = """
importScripts("./pyodide.js");
loadPyodide({ indexURL: new URL("./", location.href).href, packages: ["numpy"] }).then((py) => {
  py.runPython("import numpy; numpy.linalg.lstsq(numpy.eye(32), numpy.ones(32), rcond=None)[0]");
  postMessage({ answer: "" });
});
"""

PAGE_SCRIPT = """
const [folder, question] = JSON.parse(decodeURIComponent(location.hash.slice(1)));
const worker = new Worker(folder + "/worker.js");
worker.onmessage = ({ data }) => {
  if (data.stage === "ready") worker.postMessage({ id: 1, request: question });
  if (data.fatal) document.title = "failed: " + data.fatal;
  if (data.answer !== undefined) document.title = "answered " + performance.now();
};
"""


def run() -> list[tuple[str, float | None, str]]:
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder)
        lay_out(site)
        return [*boot_rows(site), *size_rows(site)]


def lay_out(site: Path) -> None:
    """One page, and beside it the two things that it can start."""
    shutil.copytree(build.DIST, site / "ours")
    bare = site / "bare"
    bare.mkdir()
    numpy_wheel = build.browser_python.pyodide_lock()["packages"]["numpy"]["file_name"]
    files = ["pyodide.js", "pyodide.asm.js", "pyodide.asm.wasm", "python_stdlib.zip"]
    for name in [*files, "pyodide-lock.json"]:
        shutil.copyfile(build.PYODIDE / name, bare / name)
    shutil.copyfile(build.CACHE / "wheels" / numpy_wheel, bare / numpy_wheel)
    (bare / "worker.js").write_text(BARE_WORKER)
    (site / "page.js").write_text(PAGE_SCRIPT)
    (site / "index.html").write_text(
        "<!doctype html><link rel=icon href=data:,><script src=./page.js></script>"
    )


def boot_rows(site: Path) -> list[tuple[str, float | None, str]]:
    server = make_server(site)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    address = f"http://localhost:{server.server_address[1]}/"
    times: dict[tuple[str, str], list[float]] = {}
    with sync_playwright() as driver:
        browser = driver.chromium.launch(
            executable_path=os.environ.get("EVENKELVIN_CHROMIUM") or build.find_chromium(),
            args=["--no-sandbox"],
        )
        for _ in range(ROUNDS):
            for which in ("bare", "ours"):
                for state, time in zip(
                    ("cold", "warm"), visits(browser, address, which), strict=True
                ):
                    times.setdefault((state, which), []).append(time)
        browser.close()
    server.shutdown()
    rows: list[tuple[str, float | None, str]] = []
    for state in ("cold", "warm"):
        ours, bare = (statistics.median(times[state, which]) for which in ("ours", "bare"))
        detail = f"{ours:.0f} ms against {bare:.0f} ms, median of {ROUNDS}"
        rows.append((f"boot to first answer, {state}", ours / bare, detail))
    return rows


def visits(browser: Browser, address: str, which: str) -> list[float]:
    context: BrowserContext = browser.new_context()
    times = [visit(context, address, which) for _ in range(2)]
    context.close()
    return times


def visit(context: BrowserContext, address: str, which: str) -> float:
    """Milliseconds from navigation to the first answer."""
    page = context.new_page()
    fragment = quote(json.dumps([which, QUESTION]))
    page.goto(f"{address}#{fragment}")
    while not (title := page.title()).startswith("answered"):
        if title.startswith("failed"):
            raise RuntimeError(title)
        page.wait_for_timeout(20)
    page.close()
    return float(title.split()[1])


def size_rows(site: Path) -> list[tuple[str, float | None, str]]:
    """Bytes of the whole app against those of bare Pyodide and numpy alone."""
    rows: list[tuple[str, float | None, str]] = []
    for words, measure in (("as gzip sends them", gzipped), ("as files", plain)):
        ours, bare = (sum(map(measure, build.files_below(site / w))) for w in ("ours", "bare"))
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
