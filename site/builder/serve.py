"""Build the pages and serve them on this machine, until Ctrl-C.

    PYTHONPATH=site python -m builder.serve

A small server of files for looking and for the tests; the built folder needs nothing from it and can lie on any
server of files.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from http.server import SimpleHTTPRequestHandler, ThreadingHTTPServer
from pathlib import Path
from threading import Thread

from builder.build import TOP
from builder.build import main as build_main

__all__ = ["PagesServer", "main", "serving"]

HOST = "127.0.0.1"
FIRST_PORT = 8000
TRIES = 50
# Said here, because what the system's own table says differs from machine to machine.
TYPES = {
    ".css": "text/css; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".mjs": "text/javascript; charset=utf-8",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".wasm": "application/wasm",
    ".webmanifest": "application/manifest+json",
    ".xml": "application/xml",
}


class Files(SimpleHTTPRequestHandler):
    """Files with their types, never kept by the browser, and the site's own page for what is not there."""

    def guess_type(self, path: str | os.PathLike[str]) -> str:
        return TYPES.get(Path(path).suffix) or super().guess_type(path)

    def end_headers(self) -> None:
        self.send_header("Cache-Control", "no-store")
        super().end_headers()

    def send_error(self, code: int, message: str | None = None, explain: str | None = None) -> None:
        own = Path(self.directory) / "404.html"
        if code != 404 or not own.is_file():
            super().send_error(code, message, explain)
            return
        body = own.read_bytes()
        self.send_response(404)
        self.send_header("Content-Type", TYPES[".html"])
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        if self.command != "HEAD":
            self.wfile.write(body)

    def log_message(self, format: str, *args: object) -> None:
        """Quiet: the address is all that a person wants to see."""


class PagesServer(ThreadingHTTPServer):
    daemon_threads = True
    # A port that another program holds must be refused, so that the next one is tried.
    allow_reuse_address = sys.platform != "win32"


def listen(folder: Path, first_port: int = FIRST_PORT) -> PagesServer:
    """A server on the first free port from `first_port` on; 0 takes any."""
    handler = partial(Files, directory=str(folder))
    for port in range(first_port, first_port + TRIES):
        try:
            return PagesServer((HOST, port), handler)
        except OSError:
            continue
    raise OSError(f"no free port from {first_port} to {first_port + TRIES - 1}")


@contextmanager
def serving(folder: Path) -> Iterator[str]:
    """Serve `folder` on any free port while the block runs; the address ends with a slash."""
    with listen(folder, 0) as server:
        Thread(target=server.serve_forever, daemon=True).start()
        try:
            yield f"http://{HOST}:{server.server_port}/"
        finally:
            server.shutdown()


def main() -> int:
    target = TOP / "build" / "site"
    if build_main([str(target)]):
        return 1
    with listen(target) as server:
        print(f"Serving at http://{HOST}:{server.server_port}/ (stop with Ctrl-C)", flush=True)
        try:
            server.serve_forever()
        except KeyboardInterrupt:
            print()
    return 0


if __name__ == "__main__":
    sys.exit(main())
