"""A server for static files that behaves as a good host does."""

from __future__ import annotations

import functools
import http.server
from pathlib import Path

MEDIA_TYPES = {
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".json": "application/json",
    ".webmanifest": "application/manifest+json",
    ".wasm": "application/wasm",
    ".svg": "image/svg+xml",
    ".png": "image/png",
    ".txt": "text/plain; charset=utf-8",
    ".csv": "text/csv; charset=utf-8",
    ".zip": "application/zip",
    ".pack": "application/octet-stream",
}

#: As in index.html, and what only a header can say.
CSP = (
    "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'; "
    "worker-src 'self'; style-src 'self'; img-src 'self' data: blob:; manifest-src 'self'; "
    "base-uri 'none'; form-action 'none'; require-trusted-types-for 'script'; "
    "trusted-types evenkelvin lit-html; frame-ancestors 'none'"
)


class Handler(http.server.SimpleHTTPRequestHandler):
    """Static files with the media types and headers a good host gives."""

    protocol_version = "HTTP/1.1"
    extensions_map = {"": "application/octet-stream", **MEDIA_TYPES}  # noqa: RUF012

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-cache")
        self.send_header("Content-Security-Policy", CSP)
        self.send_header("X-Content-Type-Options", "nosniff")
        self.send_header("Referrer-Policy", "no-referrer")
        super().end_headers()

    def log_message(self, format: str, *args: object) -> None:
        """Say nothing about ordinary requests."""


def make_server(folder: Path, port: int, *, lan: bool = False) -> http.server.ThreadingHTTPServer:
    handler = functools.partial(Handler, directory=str(folder))
    return http.server.ThreadingHTTPServer(("0.0.0.0" if lan else "127.0.0.1", port), handler)
