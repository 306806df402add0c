"""Twelve seconds of a walk by chance; `walk.py` walks for minutes."""

from __future__ import annotations

import os

from conftest import Watch
from places import VIEWS
from playwright.sync_api import Page
from walk import Walk, fill

#: Another one each day would fail on a day when nobody changed anything.
SEED = int(os.environ.get("EVENKELVIN_SEED", "1"))


def test_a_walk_by_chance_finds_nothing_wrong(app: Page, watch: Watch) -> None:
    fill(app)
    walk = Walk(app, VIEWS, SEED, watch.faults)
    walk.for_seconds(12)
    assert walk.steps > 12
