"""A server for what is measured: as the app's own, without the policy that seals its page."""

from __future__ import annotations

import functools
import http.server
from pathlib import Path

from static_server import Handler


class Unsealed(Handler):
    """Bare Pyodide loads its parts in ways that the app's policy forbids."""

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-cache")
        http.server.SimpleHTTPRequestHandler.end_headers(self)


def make_server(folder: Path) -> http.server.ThreadingHTTPServer:
    handler = functools.partial(Unsealed, directory=str(folder))
    return http.server.ThreadingHTTPServer(("127.0.0.1", 0), handler)
