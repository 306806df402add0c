"""What has to be on this machine: Node, Python packages, npm packages, a Chromium for tests."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path

from steps import (
    BUILD_LOCK,
    CACHE,
    ROOT,
    TEST_LOCK,
    VENV,
    VENV_PYTHON,
    WEBAPP,
    BuildError,
    key_of,
    run,
    say,
    sha256,
)


def set_up(*, for_tests: bool = False) -> None:
    """Fetch what is missing: a handful of Python packages to build, many more to test."""
    check_tools()
    CACHE.mkdir(exist_ok=True)
    with ThreadPoolExecutor() as pool:
        for_node = pool.submit(ensure_node_modules)
        for lock in [BUILD_LOCK, TEST_LOCK][: 1 + for_tests]:
            pins = ["--require-hashes", "--requirement", str(lock.relative_to(ROOT))]
            make_venv(VENV, pins, lock.read_text(), name=lock.stem)
        for_node.result()


def check_tools() -> None:
    if not shutil.which("npm"):
        raise BuildError("Node.js 20 or newer with npm is needed to build the web app: install it.")
    version = subprocess.run(
        ["node", "--version"], capture_output=True, text=True, check=False
    ).stdout
    if int(re.sub(r"v?(\d+).*", r"\1", version.strip()) or 0) < 20:
        raise BuildError(f"Node.js 20 or newer is needed; this is {version.strip() or 'missing'}.")


def make_venv(folder: Path, pins: list[str], lock: str = "", name: str = "pins") -> Path:
    """A virtual environment that holds what pip is asked for; returns its Python.

    What was installed under each name is remembered, so that one environment can serve both locks.
    """
    python = folder / VENV_PYTHON.relative_to(VENV)
    stamp = folder / f"evenkelvin-{name}"
    wanted = key_of(sys.version, *pins, lock)
    if stamp.exists() and stamp.read_text() == wanted:
        return python
    if not python.exists():
        say(f"Making the virtual environment {folder.name}")
        run([sys.executable, "-m", "venv", folder])
    say(f"Installing Python packages into {folder.name} (once)")
    # Most modules are never imported: Python compiles those that are.
    pip = [python, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--no-compile"]
    run([*pip, *pins])
    stamp.write_text(wanted)
    return python


def ensure_node_modules() -> None:
    """npm packages, exactly as in package-lock.json."""
    lock = (WEBAPP / "package-lock.json").read_bytes()
    modules = WEBAPP / "node_modules"
    stamp = modules / ".evenkelvin-lock"
    if stamp.exists() and stamp.read_text() == sha256(lock):
        return
    if modules.is_symlink():  # shared with another checkout, whose build may be running
        modules.unlink()
    say("Installing npm packages")
    run(["npm", "ci", "--no-fund", "--no-audit", "--loglevel=error"], cwd=WEBAPP)
    stamp.write_text(sha256(lock))


#: Debian's Chromium without windows of its own: a page costs half as much there.
WITHOUT_WINDOWS = "chromium-headless-shell"


def find_chromium(*, for_tests: bool = False) -> str:
    """The path of a Chromium; for tests the one that costs least."""
    names = ["chromium", "chromium-browser", "google-chrome", "google-chrome-stable"]
    for name in [WITHOUT_WINDOWS] * for_tests + names:
        path = shutil.which(name)
        if path:
            return path
    ask = (
        "from playwright.sync_api import sync_playwright as s\n"
        "with s() as p: print(p.chromium.executable_path)"
    )
    done = subprocess.run([VENV_PYTHON, "-c", ask], capture_output=True, text=True, check=False)
    if done.returncode == 0 and Path(done.stdout.strip()).exists():
        return done.stdout.strip()
    raise BuildError(
        "No Chromium for the browser tests. Install one: `apt-get install chromium` on Debian, "
        "or `.venv/bin/playwright install chromium`."
    )
