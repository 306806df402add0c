"""Property tests draw the same examples every time, so that a run can be trusted to repeat.

To search for new ones:  HYPOTHESIS_PROFILE=search pytest …
"""

from __future__ import annotations

import os
from pathlib import Path

import pytest
from hypothesis import settings

settings.register_profile("same", derandomize=True, database=None)
settings.register_profile("search", print_blob=True)
settings.load_profile(os.environ.get("HYPOTHESIS_PROFILE", "same"))


@pytest.fixture(scope="session")
def dist(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The app, built once from the sources as they are (`build.py test` has done so already)."""
    from filelock import FileLock
    from machine import set_up
    from make_dist import build_dist
    from steps import DIST

    if "EVENKELVIN_CHROMIUM" not in os.environ:
        # Of several workers the first builds; all have the folder above their own in common.
        run = tmp_path_factory.getbasetemp().parent
        built = run / f"built-{os.environ.get('PYTEST_XDIST_TESTRUNUID', os.getpid())}"
        with FileLock(run / "building.lock"):
            if not built.exists():
                set_up(for_tests=True)
                build_dist()
                built.touch()
    return DIST


#: What takes longest begins first, so that no worker ends alone with it.
FIRST = ("checks/test_elsewhere", "browser", "checks", "outside")


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    def turn(item: pytest.Item) -> int:
        return next((n for n, part in enumerate(FIRST) if f"/{part}" in item.nodeid), len(FIRST))

    items.sort(key=turn)
