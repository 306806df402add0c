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


#: Folders of tests that take milliseconds each.
QUICK = {"kernel", "outside", "words"}


@pytest.hookimpl(trylast=True)
def pytest_collection_modifyitems(
    session: pytest.Session, config: pytest.Config, items: list[pytest.Item]
) -> None:
    """Spread the tests over the workers of pytest-xdist (`build.py test`).

    What shares a page (a fixture of its module) stays together; so do some dozens of quick tests,
    as handing out takes longer than most of them; every other test goes to whoever is free. What
    takes longest comes first, so that no worker ends alone with it.
    """
    if not config.pluginmanager.hasplugin("xdist"):
        return
    manager = session._fixturemanager
    for number, item in enumerate(items):
        names = getattr(item, "fixturenames", ())
        fixtures = [one for name in names for one in manager.getfixturedefs(name, item) or ()]
        path = Path(item.path)
        if any(fixture.scope == "module" for fixture in fixtures):
            item.add_marker(pytest.mark.xdist_group(path.stem))
        elif path.parent.name in QUICK:
            item.add_marker(pytest.mark.xdist_group(f"{path.stem} {number // 40}"))
    first = ("checks/test_elsewhere", "browser", "checks")
    items.sort(key=lambda item: next((n for n, s in enumerate(first) if f"/{s}" in item.nodeid), 9))
