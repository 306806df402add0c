"""What a failed test leaves in test-results/: a picture of every open page, and its trace.

A trace opens with `.venv/bin/playwright show-trace test-results/NAME.zip`: every step, with the
page as it was before and after. To write every step down takes longer than the steps, so it is
done where EVENKELVIN_TRACES is set: `build.py test` runs what failed once more with it.
"""

from __future__ import annotations

import contextlib
import os
import re

from playwright.sync_api import BrowserContext, Error
from steps import ROOT

RESULTS = ROOT / "test-results"

TRACED = bool(os.environ.get("EVENKELVIN_TRACES"))

#: The contexts whose steps are written down.
open_ones: list[BrowserContext] = []


def trace(context: BrowserContext) -> None:
    """Write down what is done in a context from now on."""
    if TRACED:
        context.tracing.start(snapshots=True, sources=True)
    open_ones.append(context)
    context.on("close", lambda closed: open_ones.remove(closed))


def begin_anew() -> None:
    """Forget the steps so far: a page that many tests share is traced test by test."""
    for context in open_ones if TRACED else ():
        with contextlib.suppress(Error):  # its browser has been killed
            context.tracing.start_chunk()


def leave(test: str) -> list[str]:
    """Keep pictures and traces of what is open now; returns the paths, as seen from the root."""
    left = []
    for number, context in enumerate(open_ones):
        name = re.sub(r"\W+", "-", test.removeprefix("tests/browser/")).strip("-")[:100]
        start = RESULTS / (f"{name}-{number}" if number else name)
        with contextlib.suppress(Error):
            for tab, page in enumerate(context.pages):
                picture = start.with_name(f"{start.name}{f'-tab-{tab}' if tab else ''}.png")
                page.screenshot(path=picture, timeout=5000)
                left.append(picture)
        if TRACED:
            with contextlib.suppress(Error):
                context.tracing.stop_chunk(path=start.with_name(f"{start.name}.zip"))
                left.append(start.with_name(f"{start.name}.zip"))
                context.tracing.start_chunk()
    return [path.relative_to(ROOT).as_posix() for path in left]
