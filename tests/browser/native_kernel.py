"""The kernel in the tests' own Python, for pages whose test is not about its start in the browser.

It starts at once, answers three times as quickly, and tells again what it was asked before. That
the browser's Python answers the same is shown elsewhere: the kernel's own tests run in it, and a
golden question of every ask is put to it in every engine.
"""

from __future__ import annotations

from functools import cache
from pathlib import Path

from playwright.sync_api import BrowserContext

from evenkelvin.desk import answer_json

SCRIPT = (Path(__file__).parent / "native_kernel.js").read_text()

#: An answer depends on nothing but its question (tests/kernel).
answered = cache(answer_json)


def answer_natively(context: BrowserContext) -> None:
    """Have whatever the pages of a phone ask be answered here."""
    context.expose_function("askNatively", answered)
    context.add_init_script(SCRIPT)
