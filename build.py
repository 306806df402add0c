#!/usr/bin/env python3
"""The one command for everything about Evenkelvin.

    python3 build.py serve         set up, build and open the app; build again when a file changes
    python3 build.py test          set up, build and run every check
    python3 build.py test WHAT…    only these: kernel, outside, app, browser, checks, or a path
    python3 build.py check         lint and types alone
    python3 build.py dist          only build dist/, for any static host, in any folder
    python3 build.py bench         measure speed and size, as ratios taken in one run
    python3 build.py screens       take pictures of every view, or of those that are named
    python3 build.py data          make kernel/evenkelvin/data again from its sources

Needs Python 3.11 or newer, Node 20 or newer and npm; fetches the rest, once, into .venv,
webapp/node_modules and .cache.
"""

from __future__ import annotations

import argparse
import contextlib
import sys
from pathlib import Path

sys.path.insert(0, str(Path(__file__).resolve().parent / "webapp" / "tools"))

from machine import find_chromium, set_up
from make_dist import build_dist
from steps import ROOT, TOOLS, VENV_PYTHON, BuildError, run, say

import checks


def serve(port: int, *, lan: bool, open_browser: bool) -> None:
    options = ["--lan"] * lan + ["--open"] * open_browser
    with contextlib.suppress(KeyboardInterrupt):  # the server has heard it too, and ended
        run([VENV_PYTHON, TOOLS / "serve.py", str(port), *options])


def make_data() -> None:
    env = {"PYTHONPATH": str(ROOT / "kernel")}
    run([VENV_PYTHON, ROOT / "kernel" / "make_data.py", ROOT / "kernel/evenkelvin/data"], env=env)


def bench() -> None:
    run([VENV_PYTHON, ROOT / "tests/bench"], env={"EVENKELVIN_CHROMIUM": find_chromium()})


def screens(views: list[str]) -> None:
    folder = ROOT / "test-results" / "screens"
    run([VENV_PYTHON, TOOLS / "screens.py", folder, *views])
    say(f"the pictures are in {folder.relative_to(ROOT)}/")


def main() -> None:
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    commands = ["serve", "test", "check", "dist", "bench", "screens", "data"]
    parser.add_argument("command", choices=commands)
    named = "for test: the parts or paths to run; for screens: the views"
    parser.add_argument("what", nargs="*", help=named)
    parser.add_argument("--wheels", type=Path, help="a folder that holds Pyodide's wheels")
    parser.add_argument("--port", type=int, default=8000, help="for serve (default 8000)")
    parser.add_argument("--lan", action="store_true", help="serve to other devices as well")
    parser.add_argument("--no-open", action="store_true", help="serve without opening a browser")
    options = parser.parse_args()
    if options.what and options.command not in ("test", "screens"):
        parser.error(f"{options.command} takes nothing besides: {' '.join(options.what)}")
    try:
        set_up(for_tests=options.command not in ("serve", "dist"))
        if options.command in ("serve", "dist", "bench", "screens"):
            build_dist(options.wheels)
        if options.command == "serve":
            serve(options.port, lan=options.lan, open_browser=not options.no_open)
        if options.command == "test":
            checks.test(options.what, options.wheels)
        if options.command == "check":
            checks.check()
        if options.command == "bench":
            bench()
        if options.command == "screens":
            screens(options.what)
        if options.command == "data":
            make_data()
    except BuildError as error:
        sys.exit(f"✗ {error}")


if __name__ == "__main__":
    main()
