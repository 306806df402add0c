"""The built app on a server of its own, with a browser for it."""

from __future__ import annotations

import os
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from http.server import ThreadingHTTPServer

from playwright.sync_api import Browser, sync_playwright
from static_server import make_server
from steps import DIST


@contextmanager
def app_in_browser(*switches: str) -> Iterator[tuple[Browser, str, ThreadingHTTPServer]]:
    """The browser with its switches, the app's address, and the server, which may be shut down."""
    server = make_server(DIST, 0)
    threading.Thread(target=server.serve_forever, daemon=True).start()
    with sync_playwright() as play:
        browser = play.chromium.launch(
            executable_path=os.environ["EVENKELVIN_CHROMIUM"], args=["--no-sandbox", *switches]
        )
        yield browser, f"http://localhost:{server.server_address[1]}/", server
        browser.close()
    server.shutdown()
