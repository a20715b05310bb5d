"""How quick Lighthouse finds the pages, as a telephone on a weak line: mobile performance.

make bench
"""

from __future__ import annotations

import gzip
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from functools import partial
from pathlib import Path
from threading import Thread

from told import line

from builder.build import build
from builder.environment import find_chromium
from builder.serve import Files, PagesServer
from lighthouse import reports

PAGES = {"Home": "", "Gauge": "calculators/gauge/", "Planner": "plan/", "At the machine": "machine/", "Layout board": "board/"}


class Packing(Files):
    """Compresses what is text, as hosts on the open network do."""

    def do_GET(self) -> None:
        file = Path(self.translate_path(self.path))
        file = file / "index.html" if file.is_dir() else file
        if not file.is_file() or file.suffix not in (".css", ".html", ".js", ".json", ".mjs", ".svg"):
            super().do_GET()
            return
        body = gzip.compress(file.read_bytes(), 6)
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(file))
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)


@contextmanager
def packing(folder: Path) -> Iterator[str]:
    server = PagesServer(("127.0.0.1", 0), partial(Packing, directory=str(folder)))
    Thread(target=server.serve_forever, daemon=True).start()
    yield f"http://127.0.0.1:{server.server_port}/"
    server.shutdown()
    server.server_close()


def main() -> int:
    if find_chromium() is None:
        print("lighthouse: no Chromium here")
        return 0
    with tempfile.TemporaryDirectory() as made:
        folder = Path(made) / "site"
        build(folder)
        with packing(folder) as served:
            found = reports([served + address for address in PAGES.values()], ["performance"])
    for title, one in zip(PAGES, found, strict=True):
        what = f"{title}: Lighthouse, performance on a telephone, from a server that compresses texts"
        line("start", what, f"{one.scores['performance']:.2f}", "0.95")
    return 0


if __name__ == "__main__":
    sys.exit(main())
