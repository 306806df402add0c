"""What `build.py check` and `build.py test` run.

All of it is a test of pytest, so that one scheduler (pytest-xdist) keeps every core busy: also lint
and types, the app's tests under Node, and the kernel's inside Pyodide (tests/checks).
"""

from __future__ import annotations

import json
import os
import subprocess
import time
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from machine import find_chromium, make_venv
from make_dist import build_dist
from python_packs import unpack
from steps import (
    CACHE,
    DIST,
    PYODIDE,
    ROOT,
    TOOLS,
    VENV_PYTHON,
    WEBAPP,
    BuildError,
    cached,
    in_pyodide,
    key_of,
    project,
    run,
    say,
)
from wheels import pyodide_lock, verified_wheel

#: What runs the kernel's tests inside Pyodide: the last releases in plain Python.
TEST_TOOLS_IN_PYODIDE = ["pytest==9.2.0", "hypothesis==6.155.7"]

TESTS = ROOT / "tests"

#: Lint and types: what each runs, and where.
SOURCES = {
    "ruff": ([VENV_PYTHON, "-m", "ruff", "check"], ROOT),
    "ruff format": ([VENV_PYTHON, "-m", "ruff", "format", "--check"], ROOT),
    "mypy": ([VENV_PYTHON, "-m", "mypy"], ROOT),
    "biome": (["npx", "--no-install", "biome", "ci", ".", TESTS / "app"], WEBAPP),
    "TypeScript": (["npx", "--no-install", "tsc"], WEBAPP),
}

#: Tests that need no finished app.
WITHOUT_DIST = [TESTS / "kernel", TESTS / "outside"]

#: One worker a core. A file's tests stay together: they may share a page. The files come in the
#: order of tests/conftest.py, not sorted by number.
IN_PARALLEL = ["--dist", "loadfile", "--no-loadscope-reorder", "-n", str(os.cpu_count() or 1)]

#: What failed in the run before, and nothing where nothing did.
LAST_FAILED = ROOT / ".pytest_cache/v/cache/lastfailed"
ONCE_MORE = ["-q", "--last-failed", "--last-failed-no-failures", "none"]

#: What pytest ends with when tests failed.
SOME_FAILED = 1


def check() -> None:
    """Lint and types, all of them even when one fails."""

    def look(name: str) -> tuple[str, float, bool, str]:
        command, folder = SOURCES[name]
        start = time.monotonic()
        done = subprocess.run(command, cwd=folder, capture_output=True, text=True, check=False)
        return name, time.monotonic() - start, done.returncode == 0, done.stdout + done.stderr

    failed = []
    with ThreadPoolExecutor(os.cpu_count()) as pool:
        for name, seconds, passed, words in pool.map(look, SOURCES):
            say(f"{name}: {'passed' if passed else 'FAILED'} in {seconds:.1f} s")
            if not passed:
                failed.append(name)
                print(words, flush=True)
    if failed:
        raise BuildError(f"Failed: {', '.join(failed)}.")


def test(wanted: list[str], wheels_folder: Path | None) -> None:
    """All tests, or those of the folders of tests/ and of the paths that are named."""
    paths = [named(each) for each in wanted] or [TESTS]
    for_node = [path for path in paths if within(path, [TESTS / "app"])]
    for_pytest = [path for path in paths if path not in for_node]
    failed = []
    if for_node and node_tests(for_node):
        failed.append("the app's tests under Node")
    if for_pytest and pytest(for_pytest, wheels_folder):
        failed.append("pytest")
    if failed:
        raise BuildError(f"Failed: {', '.join(failed)}; the messages are above.")


def named(what: str) -> Path:
    """What a person calls a part of the tests: a folder of tests/, or a path, with ``::test``."""
    for folder in (TESTS, Path.cwd(), ROOT):
        if (folder / what.partition("::")[0]).exists():
            return folder / what
    parts = sorted(path.name for path in TESTS.iterdir() if any(path.glob("*test*")))
    raise BuildError(f"'{what}' is not a path, and not one of {', '.join(parts)}.")


def within(path: Path, folders: list[Path]) -> bool:
    return any(folder in (path, *path.parents) for folder in folders)


def pytest(paths: list[Path], wheels_folder: Path | None) -> int:
    environment = {}
    if not all(within(path, WITHOUT_DIST) for path in paths):
        environment["EVENKELVIN_CHROMIUM"] = find_chromium(for_tests=True)
        build_dist(wheels_folder)

    def go(*options: str | Path, **more: str) -> int:
        command = [VENV_PYTHON, "-m", "pytest", *options]
        env = {**os.environ, **environment, **more}
        return subprocess.run(command, cwd=ROOT, env=env, check=False).returncode

    LAST_FAILED.unlink(missing_ok=True)
    result = go(*IN_PARALLEL, *paths)
    if result == SOME_FAILED:
        failed = last_failed()
        say(f"{len(failed)} failed and run once more, alone; browser tests leave a trace")
        result = go(*ONCE_MORE, *paths, EVENKELVIN_TRACES="1")
        for test in sorted(failed - last_failed()):
            say(f"RERUN {test} passed only the second time, and wants mending")
    return result


def last_failed() -> set[str]:
    return set(json.loads(LAST_FAILED.read_text())) if LAST_FAILED.exists() else set()


def node_tests(paths: list[Path]) -> int:
    """The app's own modules that need no browser."""
    files = sorted(
        {file for path in paths for file in [path, *path.rglob("*")] if is_for_node(file)}
    )
    if not files:
        raise BuildError("There is no test for Node there: they are called NAME.test.js.")
    return subprocess.run(["node", "--test", *files], cwd=ROOT, check=False).returncode


def is_for_node(file: Path) -> bool:
    return file.name.endswith((".test.js", ".test.mjs"))


# ---------------------------------------------------------------------------- for tests/checks


def golden_answers_on(numpy_version: str) -> None:
    """The golden answers, natively, with nothing but the kernel's needs and this numpy."""
    needs = [need for need in project()["project"]["dependencies"] if not need.startswith("numpy")]
    pins = [f"numpy=={numpy_version}", "pytest==9.2.0", *needs]
    python = make_venv(CACHE / f"venv-numpy-{numpy_version}", pins)
    run([python, "-m", "pytest", "-q", "--noconftest", TESTS / "kernel/test_golden.py"])


def kernel_tests_in_pyodide() -> None:
    """The kernel's own tests on the very files that the browser gets."""
    mounts = {
        "/work/tests": TESTS,
        "/work/demo_readings": ROOT / "demo_readings",
        "/work/replies": ROOT / "kernel" / "evenkelvin" / "replies",
        "/work/tools": test_tools_in_pyodide(),
        "/work/numpy": whole_numpy(),
        "/work/pyodide": PYODIDE,
    }
    options = ["--boot", str(DIST)]
    for guest, host in mounts.items():
        options += ["--mount", f"{host}={guest}"]
    in_pyodide(TOOLS / "kernel_tests.py", options=options)


def test_tools_in_pyodide() -> Path:
    def make(target: Path) -> None:
        pip = [VENV_PYTHON, "-m", "pip", "--quiet", "--disable-pip-version-check"]
        run([*pip, "install", "--target", target, *TEST_TOOLS_IN_PYODIDE])

    return cached(f"pytest-{key_of(*TEST_TOOLS_IN_PYODIDE)}", make)


def whole_numpy() -> Path:
    """What the browser's numpy leaves out and tests may use."""
    entry = pyodide_lock()["packages"]["numpy"]

    def make(target: Path) -> None:
        unpack(verified_wheel(CACHE / "wheels", entry), target, lambda name: False)

    return cached(f"numpy-{entry['sha256'][:20]}", make)
