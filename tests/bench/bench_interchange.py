"""Reading spectra from files against colour-science's readers, in one run."""

from __future__ import annotations

import tempfile
import tracemalloc
from collections.abc import Callable
from pathlib import Path
from typing import Any

import colour
import numpy as np
from timing import seconds

from evenkelvin.desk import answer
from evenkelvin.interchange.recognise import read_bytes

FINE = np.arange(380.0, 780.1, 0.4).round(1)
POWER = np.exp(-(((FINE - 560.0) / 90.0) ** 2)).round(6)


def _peak(job: Callable[[], Any]) -> int:
    tracemalloc.start()
    job()
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    return peak


def run() -> list[tuple[str, float, str]]:
    """Return rows of name, ratio (ours over theirs) and detail."""
    spectrum = {"name": "Key", "wavelengths_nm": FINE.tolist(), "values": POWER.tolist()}
    many = [{**spectrum, "name": f"Light {number}"} for number in range(20)]
    with tempfile.TemporaryDirectory() as folder:
        tm27, csv = Path(folder, "a.spdx"), Path(folder, "a.csv")
        for path, style, spectra in ((tm27, "tm27", [spectrum]), (csv, "csv", many)):
            (file,) = answer({"ask": "write", "format": style, "spectra": spectra})["files"]
            path.write_text(file["text"], encoding="utf-8")
        ours = seconds(lambda: read_bytes(tm27.read_bytes(), {}))
        theirs = seconds(lambda: colour.SpectralDistribution_IESTM2714(tm27).read())
        table = seconds(lambda: read_bytes(csv.read_bytes(), {}), 5)
        plain = seconds(lambda: colour.read_sds_from_csv_file(csv), 5)
        raw = csv.read_bytes()
        memory = _peak(lambda: read_bytes(raw, {}))
    return [
        (
            "read TM-27, 1001 samples",
            ours / theirs,
            f"{ours * 1e3:.1f} ms, colour-science {theirs * 1e3:.1f} ms",
        ),
        (
            "read a table, 20 × 1001 samples",
            table / plain,
            f"{table * 1e3:.0f} ms, its form found out first; "
            f"colour-science, told the form, {plain * 1e3:.0f} ms",
        ),
        (
            "memory while reading that table",
            memory / len(raw),
            f"{memory / 1e6:.1f} MB at most for a file of {len(raw) / 1e6:.2f} MB",
        ),
    ]
