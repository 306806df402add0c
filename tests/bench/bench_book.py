"""A book of 20 000 readings: what opening, merging and writing it costs against plain JSON.

The yardstick is the standard library reading and writing the same text, which nothing can beat.
"""

from __future__ import annotations

import json
import random
import time
import tracemalloc
from collections.abc import Callable
from datetime import datetime, timedelta
from typing import Any

from evenkelvin.book.entries import merge
from evenkelvin.book.file import as_text, read_book
from evenkelvin.book.link import make_link, open_link
from evenkelvin.book.meaning import things
from evenkelvin.book.sheet import write_csv

READINGS = 20_000
START = datetime.fromisoformat("2026-01-05T08:00:00+01:00")
Row = tuple[str, float | None, str]


def made_up_entries() -> list[dict[str, Any]]:
    """A production of 20 000 readings: 5 a light, 10 lights a setup, all invented."""
    rng = random.Random(1)
    entries: list[dict[str, Any]] = []

    def add(thing: str, parent: str | None, minute: int, **data: Any) -> str:
        id_ = f"{rng.getrandbits(128):022x}"[:22]
        at = (START + timedelta(minutes=minute)).isoformat()
        entries.append(
            {"id": id_, "at": at, "thing": thing, "of": id_, "parent": parent, "after": [],
             "data": data}
        )  # fmt: skip
        return id_

    production = add("production", None, 0, name="A long shoot")
    for n in range(READINGS):
        if n % 500 == 0:
            location = add("location", production, n, name=f"Location {n // 500}", mains_hz=50)
        if n % 50 == 0:
            setup = add("setup", location, n, name=f"Setup {n // 50}", note="wide, then close")
        if n % 5 == 0:
            light = add("light", setup, n, name=f"light {n // 5 % 10}", lamp="led")
        add(
            "reading", light, n, stage="bare" if n % 5 == 0 else "gelled",
            x=f"{rng.uniform(0.31, 0.44):.4f}", y=f"{rng.uniform(0.32, 0.41):.4f}",
            illuminance_lx=str(rng.randrange(20, 2000)), lamp="led", pack=["1/4 CTO"],
            target={"cct_K": "4300", "duv": "0"}, note="second panel from the door",
        )  # fmt: skip
    return entries


def seconds(work: Callable[[], Any]) -> float:
    best = float("inf")
    for _ in range(3):
        start = time.perf_counter()
        work()
        best = min(best, time.perf_counter() - start)
    return best


def run() -> list[Row]:
    """Rows of name, ratio to plain JSON, and detail."""
    text = as_text(merge(made_up_entries()))
    book = read_book(text)
    plain = seconds(lambda: json.dumps(json.loads(text)))
    link = make_link(book)
    rows: list[Row] = []
    for name, work in (
        ("book: open (check, merge, hash)", lambda: read_book(text)),
        ("book: write the file", lambda: as_text(book)),
        ("book: merge two copies", lambda: merge(book.entries, read_book(text).entries)),
        ("book: what stands now", lambda: things(book.entries)),
        ("book: make a link", lambda: make_link(book)),
        ("book: open a link", lambda: open_link(link)),
        ("book: CSV with CCT and Duv", lambda: write_csv(book.entries)),
    ):
        took = seconds(work)
        rows.append((name, took / plain, f"{took:.2f} s against {plain:.2f} s for plain JSON"))
    tracemalloc.start()
    read_book(text)
    peak = tracemalloc.get_traced_memory()[1]
    tracemalloc.stop()
    rows.append(
        ("book: memory to open", peak / len(text.encode()), f"{peak / 1e6:.0f} MB at the peak")
    )
    rows.append(
        ("book: link to file", len(link) / len(text), f"{len(link)} of {len(text)} characters")
    )
    return rows
