"""A server that can be stopped, and a visitor who notices everything that goes wrong."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from functools import partial
from pathlib import Path
from threading import Thread
from typing import Any
from urllib.parse import urlsplit

import pytest
from playwright.sync_api import Browser, BrowserContext, Frame, Page

from builder.serve import HOST, Files, PagesServer

LIVE = "() => ['ready', 'failed'].includes(document.documentElement.dataset.engine)"
STORED = "() => ['ready', 'paused', 'impossible'].includes(document.documentElement.dataset.offline)"
PATIENCE = 30_000
GONE = ("console: Failed to load resource", "console: An unknown error occurred when fetching the script")
"""What the browser itself says when the server is gone and it looks for a newer worker."""
SCRIPTS = "window.scriptAt = (name) => new URL(name, document.querySelector('script[type=module][src]').src).href;"
"""In a page: the address of one of our scripts. Their folder has the name of what is in it."""
NOTE_VIOLATIONS = """document.addEventListener('securitypolicyviolation',
    (event) => console.error(`policy: ${event.violatedDirective} ${event.blockedURI} ${event.sample}`))"""


class Noting(Files):
    """Serves, notes what was asked for, and refuses what it is told to refuse."""

    def __init__(self, *arguments: Any, host: Host, **settings: Any) -> None:
        self.host = host
        super().__init__(*arguments, **settings)

    def do_GET(self) -> None:
        path = urlsplit(self.path).path.removeprefix("/")
        self.host.asked.append(path)
        for_store = self.headers.get("Referer", "").endswith("/sw.js")
        if for_store and self.host.drops and path in self.host.cut:
            self.close_connection = True
        elif path in self.host.refused or (for_store and path in self.host.cut):
            self.send_error(503)
        elif self.host.unpacks and path.endswith(".gz"):
            self.send_unpacked(Path(self.translate_path(self.path)))
        elif path in self.host.spoilt:
            self.send_spoilt(Path(self.translate_path(self.path)), self.host.spoilt[path])
        else:
            super().do_GET()

    def send_unpacked(self, file: Path) -> None:
        """As hosts do that take the ending for a way of sending: the browser unpacks it."""
        body = file.read_bytes()
        self.send_response(200)
        self.send_header("Content-Type", "application/octet-stream")
        self.send_header("Content-Encoding", "gzip")
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        self.wfile.write(body)

    def send_spoilt(self, file: Path, how: str) -> None:
        """Cut in the middle, one bit of it another, or what belongs to another file; the length is said as it should be."""
        file = file / "index.html" if file.is_dir() else file
        body = bytearray(file.read_bytes())
        self.send_response(200)
        self.send_header("Content-Type", self.guess_type(file))
        self.send_header("Content-Length", str(len(body)))
        self.end_headers()
        match how:
            case "cut":
                body = body[: len(body) // 2]
                self.close_connection = True
            case "flipped":
                body[len(body) // 2] ^= 1
            case "swapped":
                body = bytearray(b"another file ") * (len(body) // 13 + 1)
        self.wfile.write(body[: file.stat().st_size])

    def handle(self) -> None:
        """A browser that closes in the middle of an answer is no mistake."""
        with suppress(ConnectionError):
            super().handle()


class Host:
    """A folder on a port of its own; stopped and started again, it has the same address."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.asked: list[str] = []
        self.refused: set[str] = set()
        self.cut: set[str] = set()
        """Refused to the offline worker only: the page itself has been loaded."""
        self.drops = False
        """What is cut gets no answer at all: the line drops."""
        self.spoilt: dict[str, str] = {}
        """What comes in another state than it should: "cut", "flipped", "swapped"."""
        self.unpacks = False
        """What ends in .gz is sent as if that were the way of sending it."""
        self._port = 0
        self._server: PagesServer | None = None
        self.start()

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self._port}/"

    def start(self) -> None:
        self._server = PagesServer((HOST, self._port), partial(Noting, host=self, directory=str(self.folder)))
        self._port = self._server.server_port
        Thread(target=self._server.serve_forever, daemon=True).start()

    def stop(self) -> None:
        if self._server is not None:
            self._server.shutdown()
            self._server.server_close()
            self._server = None


class Visitor:
    """A browser of one person: what it stores is its own. `wrong` fills with everything that should not happen."""

    def __init__(self, context: BrowserContext) -> None:
        self.context = context
        self.wrong: list[str] = []
        context.add_init_script(NOTE_VIOLATIONS)
        context.add_init_script(SCRIPTS)
        context.on("page", self._watch)

    def _watch(self, page: Page) -> None:
        page.on("console", lambda said: self.wrong.append(f"console: {said.text}") if said.type in ("error", "warning") else None)
        page.on("pageerror", lambda error: self.wrong.append(f"error: {error}"))
        page.on("request", lambda asked: self.wrong.append(f"foreign: {asked.url}") if _foreign(asked.url) else None)
        page.on("dialog", lambda dialog: (self.wrong.append(f"dialog: {dialog.message}"), dialog.dismiss()))

    def open(self, address: str, live: bool = False, stored: bool = False) -> Page:
        page = self.context.new_page()
        page.set_default_timeout(PATIENCE)
        page.goto(address)
        if live:
            page.wait_for_function(LIVE)
        if stored:
            page.wait_for_function(STORED)
        return page


def _foreign(url: str) -> bool:
    there = urlsplit(url)
    return there.scheme in ("http", "https", "ws", "wss") and there.hostname != "127.0.0.1"


@pytest.fixture
def host(built: Path) -> Iterator[Callable[[Path | None], Host]]:
    """`host()` serves the built pages, `host(folder)` another folder."""
    hosts: list[Host] = []

    def serve(folder: Path | None = None) -> Host:
        hosts.append(Host(folder or built))
        return hosts[-1]

    yield serve
    for one in hosts:
        one.stop()


@pytest.fixture
def visitor(browser: Browser) -> Callable[..., Any]:
    """`with visitor() as one:` and nothing may go wrong inside but what `allow` says begins so."""

    @contextmanager
    def visit(allow: tuple[str, ...] = (), **settings: Any) -> Iterator[Visitor]:
        context = browser.new_context(**{"viewport": {"width": 1024, "height": 768}, **settings})
        one = Visitor(context)
        try:
            yield one
        finally:
            context.close()
        wrong = [words for words in one.wrong if not words.startswith(allow or ("\0",))]
        assert wrong == [], "\n".join(wrong)

    return visit


def gone_and_live(one: Visitor, here: Host, address: str) -> Page:
    """The page with its live answers once more, after all was stored and the server has gone."""
    page = one.open(f"{here.address}{address}", live=True, stored=True)
    assert page.get_attribute("html", "data-offline") == "ready"
    here.stop()
    page.reload()
    page.wait_for_function(LIVE)
    assert page.get_attribute("html", "data-engine") == "ready"
    return page


def settled(page: Page | Frame) -> None:
    """Waits until the form has answered what is in it."""
    page.wait_for_function("() => document.querySelector('form[data-live]').dataset.live === 'answered'")


def answer_html(page: Page) -> str:
    """What stands in the answer; without the marks of frame.js on parts that it has brought out."""
    shown = re.sub(r'(<section class="[^"]*"[^>]*?) style="[^"]*"', r"\1", page.inner_html("output"))
    return shown.replace("&nbsp;", "\u00a0")


def script_at(page: Page, name: str) -> str:
    """The address of one of our scripts, as this page loads it."""
    found: str = page.evaluate("name => scriptAt(name)", name)
    return found


def figures(page: Page) -> dict[str, str]:
    """The figures on the page by their names."""
    read = "all => Object.fromEntries(all.map(one => [one.dataset.result, one.textContent]))"
    found: dict[str, str] = page.eval_on_selector_all("output [data-result]", read)
    return found


def right(page: Page) -> None:
    """40 stitches over 10 cm are 40 per 10 cm, whoever counts."""
    page.fill("[name=stitches]", "40")
    page.fill("[name=width]", "10 cm")
    settled(page)
    assert figures(page)["stitches_per_10cm"] == "40.00"
