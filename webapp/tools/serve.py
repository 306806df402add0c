"""Serve dist/ and build it again whenever a source changes:  python serve.py PORT [--lan] [--open]

Run by `build.py serve` with the environment that holds what watches the files.
"""

from __future__ import annotations

import argparse
import threading
import time
import webbrowser
from pathlib import Path

from make_dist import SOURCES, build_dist
from static_server import make_server
from steps import DIST, ROOT, BuildError, say
from watchfiles import watch


def main() -> None:
    parser = argparse.ArgumentParser()
    parser.add_argument("port", type=int)
    parser.add_argument("--lan", action="store_true")
    parser.add_argument("--open", action="store_true")
    options = parser.parse_args()
    try:
        server = make_server(DIST, options.port, lan=options.lan)
    except OSError:
        say(f"Port {options.port} is taken; using a free one")
        server = make_server(DIST, 0, lan=options.lan)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    address = f"http://localhost:{server.server_address[1]}/"
    print(f"\nEvenkelvin is at {address} (with the demo shoot: {address}#demo). Ctrl+C stops it.")
    if options.lan:
        print("Other devices reach it by this machine's address, but only https lets them keep it.")
    print("It is built again when a source changes.\n", flush=True)
    if options.open:
        webbrowser.open(f"{address}#demo")
    try:
        build_on_change()
    except KeyboardInterrupt:
        print()


def build_on_change() -> None:
    """Until stopped: a build that fails is told, and the last good one stays."""
    for changes in watch(*SOURCES, raise_interrupt=True):
        names = sorted({Path(name).relative_to(ROOT).as_posix() for _, name in changes})
        say(f"Changed: {', '.join(names[:3])}{f' and {len(names) - 3} more' * (len(names) > 3)}")
        start = time.monotonic()
        try:
            build_dist()
        except BuildError as error:
            print(f"✗ {error} The last good build is still served.", flush=True)
        else:
            say(f"Built again in {time.monotonic() - start:.1f} s: reload the page")


if __name__ == "__main__":
    main()
