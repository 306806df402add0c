"""A first visit on lines of several speeds: packs in zstd that the app unpacks, against gzip.

The other way is a host that compresses plain packs by gzip, which the browser unpacks itself: more
bytes and less work. Both are the same app; the server gives out so many bits a second, all
connections together, and compresses what is not a pack.
"""

from __future__ import annotations

import functools
import gzip
import http.server
import os
import shutil
import statistics
import tempfile
import threading
import time
from pathlib import Path

import zstandard
from bench_boot import keep_all, lay_out, visit
from machine import find_chromium
from plain_server import Unsealed
from playwright.sync_api import sync_playwright

#: Mbit/s: a poor mobile line, a good one, and a local net.
SPEEDS = (10, 30, 100, 300)
ROUNDS = 3
PIECE = 16_384


class Line:
    """So many bits a second, shared by all who send."""

    def __init__(self, mbit_s: float) -> None:
        self.seconds_a_byte = 8 / (mbit_s * 1e6)
        self.free = 0.0
        self.lock = threading.Lock()

    def wait(self, count: int) -> None:
        with self.lock:
            self.free = max(self.free, time.monotonic()) + count * self.seconds_a_byte
            till = self.free
        time.sleep(max(0.0, till - time.monotonic()))


class Narrow(Unsealed):
    """Sends what was compressed beforehand, as fast as its line lets it."""

    def __init__(self, *args: object, line: Line, **more: object) -> None:
        self.line = line
        super().__init__(*args, **more)  # type: ignore[arg-type]

    def do_GET(self) -> None:  # noqa: N802
        path = Path(self.translate_path(self.path))
        path = path / "index.html" if path.is_dir() else path
        if not path.is_file():
            self.send_error(404)
            return
        zipped = path.with_name(f"{path.name}.gz")
        body = (zipped if zipped.exists() else path).read_bytes()
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(str(path)))
        self.send_header("Content-Length", str(len(body)))
        if zipped.exists():
            self.send_header("Content-Encoding", "gzip")
        self.end_headers()
        for at in range(0, len(body), PIECE):
            piece = body[at : at + PIECE]
            self.line.wait(len(piece))
            self.wfile.write(piece)


def lay_out_both(site: Path) -> None:
    """The app with its packs as they are, and with plain ones; all else gzipped beside itself."""
    lay_out(site)
    shutil.rmtree(site / "bare")
    (site / "ours").rename(site / "zstd")
    shutil.copytree(site / "zstd", site / "gzip")
    for pack in (site / "gzip").glob("pyodide/*.pack"):
        pack.write_bytes(zstandard.ZstdDecompressor().decompress(pack.read_bytes()))
    keep_all(site / "gzip")
    for path in [path for path in site.rglob("*") if path.is_file()]:
        zipped = gzip.compress(path.read_bytes(), 9)
        if len(zipped) < path.stat().st_size * 0.98:
            path.with_name(f"{path.name}.gz").write_bytes(zipped)


def run() -> list[tuple[str, float | None, str]]:
    rows: list[tuple[str, float | None, str]] = []
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as driver:
        site = Path(folder)
        lay_out_both(site)
        browser = driver.chromium.launch(
            executable_path=os.environ.get("EVENKELVIN_CHROMIUM") or find_chromium(),
            args=["--no-sandbox"],
        )
        for speed in SPEEDS:
            handler = functools.partial(Narrow, directory=str(site), line=Line(speed))
            server = http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
            threading.Thread(target=server.serve_forever, daemon=True).start()
            times: dict[str, list[float]] = {}
            for _ in range(ROUNDS):
                for way in ("zstd", "gzip"):
                    context = browser.new_context()
                    address = f"http://localhost:{server.server_address[1]}/{way}/bench.html"
                    times.setdefault(way, []).append(visit(context, address))
                    context.close()
            server.shutdown()
            zstd, by_host = (statistics.median(times[way]) for way in ("zstd", "gzip"))
            wins = "zstd" if zstd < by_host else "gzip"
            detail = f"{zstd:.0f} ms against {by_host:.0f} ms with gzip by the host: {wins} wins"
            rows.append((f"first visit at {speed} Mbit/s, packs in zstd", zstd / by_host, detail))
        browser.close()
    return rows
