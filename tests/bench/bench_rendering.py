"""Each rendering metric against colour-science on the same spectra, and all together on the phone.

The browser's row is the ask `render` in a worker of Chromium, once warm, against the same natively.
"""

from __future__ import annotations

import functools
import json
import os
import tempfile
import threading
import time
from collections.abc import Callable
from pathlib import Path
from statistics import median
from typing import Any

import colour
import numpy as np
from machine import find_chromium
from plain_server import make_server
from playwright.sync_api import sync_playwright
from steps import DIST

from evenkelvin.colorimetry.difference import delta_e_2000
from evenkelvin.colorimetry.illuminant import illuminant, planck
from evenkelvin.colorimetry.observer import GRID
from evenkelvin.colorimetry.spectrum import Spectrum
from evenkelvin.desk import answer_json
from evenkelvin.rendering import ssi
from evenkelvin.rendering.cri import colour_rendering_index
from evenkelvin.rendering.tm30 import colour_rendition

NAMES = ("FL2", "FL11", "HP1", "LED-B3", "LED-RGB1")
FINE = np.arange(380.0, 781.0)

PAGE_SCRIPT = """
const worker = new Worker("./worker.js");
const questions = JSON.parse(document.querySelector("meta[name=questions]").content);
const times = [];
let begun = 0;
const next = () => {
  begun = performance.now();
  worker.postMessage({ id: times.length, request: questions[times.length % questions.length] });
};
worker.onmessage = ({ data }) => {
  if (data.fatal) document.title = "failed: " + data.fatal;
  if (data.stage === "ready") next();
  if (data.answer === undefined) return;
  times.push(performance.now() - begun);
  if (times.length < questions.length * ROUNDS) next();
  else document.title = "times " + JSON.stringify(times);
};
"""


def _seconds(job: Callable[[Any], Any], inputs: list[Any], runs: int = 5) -> float:
    """Median over the runs of the time for one of the inputs; the first run is not counted."""
    for one in inputs:
        job(one)
    taken = []
    for _ in range(runs):
        start = time.perf_counter()
        for one in inputs:
            job(one)
        taken.append((time.perf_counter() - start) / len(inputs))
    return median(taken)


def run() -> list[tuple[str, float | None, str]]:
    """Return rows of name, ratio (ours over theirs) and detail."""
    return [*metric_rows(), *browser_rows()]


def metric_rows() -> list[tuple[str, float | None, str]]:
    ours = [Spectrum(GRID, np.array(illuminant(name))) for name in NAMES]
    shape = colour.SpectralShape(380, 780, 5)
    theirs = [colour.SDS_ILLUMINANTS[name].copy().align(shape) for name in NAMES]
    black = Spectrum(FINE, planck(FINE, 3200.0))
    black_theirs = colour.SpectralDistribution(black.values, FINE)
    tm30 = functools.partial(
        colour.colour_fidelity_index, additional_data=True, method="ANSI/IES TM-30-18"
    )
    cri = functools.partial(colour.colour_rendering_index, additional_data=True, method="CIE 2024")
    pairs = [
        ("CRI, Ra and R1–R15", colour_rendering_index, cri),
        ("TM-30, all", colour_rendition, tm30),
        (
            "SSI",
            lambda light: ssi.spectral_similarity(light, black, ""),
            lambda light: colour.spectral_similarity_index(light, black_theirs),
        ),
    ]
    rows: list[tuple[str, float | None, str]] = []
    for name, mine, other in pairs:
        fast, slow = _seconds(mine, ours), _seconds(other, theirs)
        rows.append((f"{name}, against colour-science", fast / slow, _detail(fast, slow)))
    lab = np.random.default_rng(1).uniform([0, -80, -80], [100, 80, 80], size=(2, 5000, 3))
    fast = _seconds(lambda pair: delta_e_2000(*pair), [lab])
    slow = _seconds(lambda pair: colour.delta_E(*pair, method="CIE 2000"), [lab])
    rows.append(
        ("CIEDE2000 of 5000 pairs, against colour-science", fast / slow, _detail(fast, slow))
    )
    return rows


def _detail(fast: float, slow: float) -> str:
    return f"{fast * 1e3:.2f} ms against {slow * 1e3:.2f} ms"


def _question(name: str, step: float) -> str:
    nm = np.arange(380.0, 780.0 + step / 2, step)
    values = np.interp(nm, GRID, illuminant(name))
    spectrum = {"wavelengths_nm": nm.tolist(), "values": values.tolist()}
    return json.dumps({"ask": "render", "reading": {"spectrum": spectrum}})


def browser_rows() -> list[tuple[str, float | None, str]]:
    rows: list[tuple[str, float | None, str]] = []
    for step in (5.0, 1.0):
        questions = [_question(name, step) for name in NAMES]
        native = _seconds(answer_json, questions) * 1e3
        times = _in_browser(questions)
        warm = median(times[len(questions) :])
        rows.append(
            (
                f"all metrics of one {step:g} nm spectrum, browser against native",
                warm / native,
                f"{warm:.0f} ms ({times[0]:.0f} ms the first time) against {native:.1f} ms",
            )
        )
    return rows


def _in_browser(questions: list[str]) -> list[float]:
    """Return the milliseconds of each question, asked three times over, in turn."""
    with tempfile.TemporaryDirectory() as folder:
        site = Path(folder)
        for path in DIST.iterdir():
            (site / path.name).symlink_to(path)
        (site / "bench.js").write_text(PAGE_SCRIPT.replace("ROUNDS", "3"))
        content = json.dumps(questions).replace("&", "&amp;").replace('"', "&quot;")
        (site / "bench.html").write_text(
            f'<!doctype html><meta name=questions content="{content}">'
            "<link rel=icon href=data:,><script src=./bench.js defer></script>"
        )
        server = make_server(site)
        threading.Thread(target=server.serve_forever, daemon=True).start()
        with sync_playwright() as driver:
            browser = driver.chromium.launch(
                executable_path=os.environ.get("EVENKELVIN_CHROMIUM") or find_chromium(),
                args=["--no-sandbox"],
            )
            page = browser.new_page()
            page.goto(f"http://localhost:{server.server_address[1]}/bench.html")
            while not (title := page.title()).startswith("times "):
                if title.startswith("failed"):
                    raise RuntimeError(title)
                page.wait_for_timeout(50)
            browser.close()
        server.shutdown()
    times: list[float] = json.loads(title.removeprefix("times "))
    return times
