"""Boot to the first answer in the engines beside Chromium, as `bench_boot` measures it there.

An engine that the machine lacks is a row that says so.
"""

from __future__ import annotations

import statistics
import sys
import tempfile
import threading
from pathlib import Path

import bench_boot
from plain_server import make_server

sys.path.append(str(Path(__file__).parents[1]))
from engines import ENGINES, Elsewhere, Engine, not_run, until

#: A round boots Python four times, which bare takes long.
ROUNDS = 3


def run() -> list[tuple[str, float | None, str]]:
    rows: list[tuple[str, float | None, str]] = []
    for engine in ENGINES:
        why = not_run(engine)
        if why:
            rows.append((f"boot to first answer, {engine.name}", None, why))
        else:
            rows += rows_of(engine)
    return rows


def rows_of(engine: type[Engine]) -> list[tuple[str, float | None, str]]:
    times: dict[tuple[str, str], list[float]] = {}
    version = ""
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder) / "site"
        site.mkdir()
        bench_boot.lay_out(site)
        for _ in range(ROUNDS):
            for which in ("bare", "ours"):
                version, cold, warm = visits(engine, site, which)
                times.setdefault(("cold", which), []).append(cold)
                times.setdefault(("warm", which), []).append(warm)
    rows: list[tuple[str, float | None, str]] = []
    for state in ("cold", "warm"):
        ours, bare = (statistics.median(times[state, which]) for which in ("ours", "bare"))
        detail = f"{ours:.0f} ms against {bare:.0f} ms, median of {ROUNDS}; {version}"
        words = "cold" if state == "cold" else "warm and offline"
        rows.append((f"boot to first answer, {engine.name}, {words}", ours / bare, detail))
    return rows


def visits(engine: type[Engine], site: Path, which: str) -> tuple[str, float, float]:
    """The engine's version and the times of a first visit and of the next, ours then offline."""
    server = make_server(site)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    page = f"http://localhost:{server.server_address[1]}/{which}/bench.html"
    elsewhere = Elsewhere()
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        browser = engine(elsewhere, Path(folder))
        try:
            first = visit(browser, page)
            if which == "ours":
                server.shutdown()
                server.server_close()
            return f"{engine.name} {browser.version}", first, visit(browser, page)
        finally:
            browser.close()
            elsewhere.close()
            if which == "bare":
                server.shutdown()
                server.server_close()


def visit(browser: Engine, page: str) -> float:
    """Milliseconds from navigation to the first answer."""
    browser.open("about:blank")
    browser.open(page)
    title = until(lambda: (said := str(browser.run("return document.title"))) != "" and said)
    if not title.startswith("answered"):
        raise RuntimeError(title)
    return float(title.split()[1])
