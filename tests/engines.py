"""Firefox and WebKitGTK, each spoken to in its own tongue: two small clients of WebDriver, standard library only.

    with open_engine("webkit") as tab:
        tab.go(address)
        tab.wait("document.documentElement.dataset.engine === 'ready'")

WebKitGTK brings a server that speaks WebDriver over HTTP (W3C, WebDriver, section 6). Firefox speaks the same commands over a
socket when it is started with --marionette: a length, a colon, and [0, number, command, parameters]
(firefox-source-docs.mozilla.org, Marionette, Protocol). Chromium is driven by the test tool (chromium.py).
"""

from __future__ import annotations

import base64
import json
import os
import shutil
import socket
import subprocess
import tempfile
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from typing import Any

from builder.environment import find_firefox, find_webkit
from builder.serve import HOST

__all__ = ["ENGINES", "PATIENCE", "Tab", "Told", "engine_missing", "open_engine"]

ENGINES = ("firefox", "webkit")
PATIENCE = 60.0
"""Seconds: a start on a busy machine."""
ELEMENT = "element-6066-11e4-a52e-4f735466cecf"
"""The key of an element in WebDriver's answers (W3C, WebDriver, section 11)."""
WINDOW = {"width": 1040, "height": 900}
PREFERENCES = {
    "app.normandy.enabled": False,
    "app.update.enabled": False,
    "browser.shell.checkDefaultBrowser": False,
    "browser.startup.homepage_override.mstone": "ignore",
    "browser.topsites.contile.enabled": False,
    "datareporting.policy.dataSubmissionEnabled": False,
    "extensions.update.enabled": False,
    "network.captive-portal-service.enabled": False,
    "network.connectivity-service.enabled": False,
    "services.settings.server": "data:,",
    "toolkit.telemetry.enabled": False,
    "toolkit.telemetry.reportingpolicy.firstRun": False,
}


class Told(Exception):
    """The engine refused a command; its own words."""


class WebKit:
    """Commands over HTTP."""

    def __init__(self, folder: Path) -> None:
        programs = find_webkit()
        assert programs is not None
        with socket.create_server((HOST, 0)) as free:
            port = free.getsockname()[1]
        self._display = Display()
        self._server = subprocess.Popen(
            [programs[0], f"--port={port}"],
            env={**os.environ, **self._display.environment, "HOME": str(folder), "XDG_RUNTIME_DIR": str(folder)},
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        self._at = f"http://{HOST}:{port}/session"
        options = {"binary": programs[1], "args": ["--automation"]}
        wanted = {"capabilities": {"alwaysMatch": {"webkitgtk:browserOptions": options}}}
        begun = time.monotonic()
        while True:
            try:
                session = self._send("POST", "", wanted)["sessionId"]
                break
            except (ConnectionError, urllib.error.URLError):
                if time.monotonic() > begun + PATIENCE:
                    raise
                time.sleep(0.05)
        self._at += f"/{session}"

    def _send(self, method: str, path: str, body: object = None) -> Any:
        data = json.dumps(body if body is not None else {}).encode() if method == "POST" else None
        asked = urllib.request.Request(self._at + path, data, {"Content-Type": "application/json"}, method=method)
        try:
            with urllib.request.urlopen(asked, timeout=PATIENCE * 3) as answer:
                return json.load(answer)["value"]
        except urllib.error.HTTPError as refused:
            with refused:
                raise Told(json.load(refused)["value"].get("message") or refused.reason) from None

    def command(self, name: str, about: dict[str, Any]) -> Any:
        element, window = about.pop("element", ""), {"handle": about.get("handle", "")}
        match name:
            case "Navigate":
                return self._send("POST", "/url", about)
            case "Refresh":
                return self._send("POST", "/refresh")
            case "Back":
                return self._send("POST", "/back")
            case "SetTimeouts":
                return self._send("POST", "/timeouts", about)
            case "SetWindowRect":
                return self._send("POST", "/window/rect", about)
            case "ExecuteAsyncScript":
                return self._send("POST", "/execute/async", about)
            case "FindElement":
                return self._send("POST", "/element", about)
            case "ElementClick":
                return self._send("POST", f"/element/{element}/click")
            case "ElementSendKeys":
                return self._send("POST", f"/element/{element}/value", about)
            case "NewWindow":
                return self._send("POST", "/window/new", about)
            case "GetWindowHandle":
                return self._send("GET", "/window")
            case "SwitchToWindow":
                return self._send("POST", "/window", window)
            case "SwitchToFrame":
                return self._send("POST", "/frame", about)
            case "SwitchToParentFrame":
                return self._send("POST", "/frame/parent")
            case "CloseWindow":
                return self._send("DELETE", "/window")
            case "TakeScreenshot":
                return self._send("GET", "/screenshot")
        raise Told(f"{name} is not among the commands here")

    def close(self) -> None:
        with suppress(Told, OSError):
            self._send("DELETE", "")
        end(self._server)
        self._display.close()


class Firefox:
    """The same commands over a socket."""

    def __init__(self, folder: Path) -> None:
        program = find_firefox()
        assert program is not None
        lines = [f"user_pref({json.dumps(name)}, {json.dumps(value)});" for name, value in PREFERENCES.items()]
        (folder / "user.js").write_text("\n".join([*lines, 'user_pref("marionette.port", 0);']), encoding="utf-8")
        self._program = subprocess.Popen(
            [
                program,
                "--headless",
                "--no-remote",
                "--marionette",
                "--remote-allow-system-access",
                "--profile",
                folder,
                "about:blank",
            ],
            env={**os.environ, "HOME": str(folder), "MOZ_HEADLESS_WIDTH": "1280", "MOZ_HEADLESS_HEIGHT": "1000"},
            stdout=subprocess.DEVNULL,
            stderr=subprocess.DEVNULL,
        )
        port, begun = folder / "MarionetteActivePort", time.monotonic()
        while not (port.is_file() and port.read_text()):
            if time.monotonic() > begun + PATIENCE:
                raise Told("Firefox does not answer")
            time.sleep(0.05)
        self._socket = socket.create_connection((HOST, int(port.read_text())), timeout=PATIENCE * 3)
        self._file = self._socket.makefile("rb")
        self._read()
        self._number = 0
        self.command("NewSession", {})

    def _read(self) -> Any:
        length = b""
        while (one := self._file.read(1)) != b":":
            if not one:
                raise Told("Firefox has gone")
            length += one
        return json.loads(self._file.read(int(length)))

    def command(self, name: str, about: dict[str, Any]) -> Any:
        self._number += 1
        if "element" in about:
            about["id"] = about.pop("element")
        # The name of the prefix is the one of the commands of WebDriver.
        said = json.dumps([0, self._number, f"WebDriver:{name}", about]).encode()
        self._socket.sendall(b"%d:%s" % (len(said), said))
        _, number, wrong, value = self._read()
        assert number == self._number
        if wrong:
            raise Told(wrong.get("message") or wrong["error"])
        return value["value"] if isinstance(value, dict) and set(value) == {"value"} else value

    def close(self) -> None:
        with suppress(Told, OSError):
            self.command("DeleteSession", {})
        self._file.close()
        self._socket.close()
        end(self._program)


class Display:
    """A screen that nobody sees, for an engine that wants one."""

    def __init__(self) -> None:
        self._server: subprocess.Popen[str] | None = None
        self.environment = {"LIBGL_ALWAYS_SOFTWARE": "1", "GDK_BACKEND": "x11", "NO_AT_BRIDGE": "1"}
        program = shutil.which("Xvfb")
        if program is None:
            return
        command = [program, "-displayfd", "1", "-screen", "0", "1280x1024x24", "-nolisten", "tcp"]
        self._server = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.DEVNULL, text=True)
        assert self._server.stdout is not None
        self.environment["DISPLAY"] = f":{self._server.stdout.readline().strip()}"

    def close(self) -> None:
        if self._server is not None:
            assert self._server.stdout is not None
            self._server.stdout.close()
            end(self._server)


def end(process: subprocess.Popen[Any]) -> None:
    process.terminate()
    try:
        process.wait(10)
    except subprocess.TimeoutExpired:
        process.kill()
        process.wait()


class Tab:
    """The page in front, and what a person does there."""

    def __init__(self, name: str, driver: WebKit | Firefox) -> None:
        self.name = name
        self.driver = driver
        driver.command("SetTimeouts", {"script": int(PATIENCE * 1000), "pageLoad": int(PATIENCE * 1000)})
        with suppress(Told):
            driver.command("SetWindowRect", dict(WINDOW))

    def go(self, address: str) -> None:
        self.driver.command("Navigate", {"url": address})

    def reload(self) -> None:
        """As a person does it. Raises Told when an error page comes (Firefox).

        Firefox's own command is the forced one, as with Shift held: it goes past the offline worker, which the standard wants
        (W3C, Service Workers, "force reload"; Firefox's marionette/navigate.sys.mjs reloads with LOAD_FLAGS_BYPASS_CACHE).
        """
        if self.name != "firefox":
            self.driver.command("Refresh", {})
            return
        with suppress(Told):  # another page comes
            self.run("window.before = true; setTimeout(() => location.reload());")
        fault = "document.documentURI.startsWith('about:neterror')"
        self.wait(f"window.before === undefined && (document.readyState === 'complete' || {fault})")
        if self.value(fault):
            raise Told("an error page came")

    def run(self, body: str, *given: Any) -> Any:
        """The value of `body`, statements of an async function with `given` as its arguments a, b, c."""
        names = "abcdef"[: len(given)]
        script = (
            f"const done = arguments[arguments.length - 1]; (async ({', '.join(names)}) => {{ {body} }})(...arguments)"
            ".then((value) => done([true, value ?? null]), (fault) => done([false, `${fault}`]));"
        )
        told = self.driver.command("ExecuteAsyncScript", {"script": script, "args": list(given)})
        if told is None:
            raise Told("another page came before the answer")
        good, value = told
        if not good:
            raise Told(value)
        return value

    def value(self, expression: str, *given: Any) -> Any:
        return self.run(f"return ({expression});", *given)

    def wait(self, expression: str, *given: Any, patience: float = PATIENCE) -> None:
        """Until `expression` is true; looked at afresh, so that it outlives a page that loads again."""
        begun = time.monotonic()
        last: object = "false"
        while time.monotonic() < begun + patience:
            try:
                if self.value(expression, *given):
                    return
            except Told as told:
                last = told
            time.sleep(0.05)
        raise AssertionError(f"{self.name}: for {patience:.0f} s it was not so: {expression} ({last})")

    def text(self, selector: str) -> str:
        """As it stands in the page: what is out of sight is not painted, and then has no words for `innerText`."""
        return " ".join(str(self.value("document.querySelector(a)?.textContent ?? ''", selector)).split())

    def _find(self, selector: str) -> str:
        found = self.driver.command("FindElement", {"using": "css selector", "value": selector})
        return str(found[ELEMENT])

    def click(self, selector: str) -> None:
        self.run("document.querySelector(a).scrollIntoView({block: 'center', behavior: 'instant'});", selector)
        self.driver.command("ElementClick", {"element": self._find(selector)})

    def type(self, selector: str, words: str) -> None:
        """Key by key, as a person does; what stood there is marked before, and goes with the first."""
        self.run("const one = document.querySelector(a); one.focus(); one.select();", selector)
        self.driver.command("ElementSendKeys", {"element": self._find(selector), "text": words})

    def choose(self, selector: str, value: str) -> None:
        self.run(
            "const one = document.querySelector(a); one.value = b; one.dispatchEvent(new Event('input', {bubbles: true}));",
            selector,
            value,
        )

    def printed(self) -> bytes:
        """The page on paper. Raises Told where the engine's driver cannot print."""
        return base64.b64decode(self.driver.command("Print", {"background": True}))

    def picture(self) -> bytes:
        return base64.b64decode(self.driver.command("TakeScreenshot", {}))

    @contextmanager
    def beside(self, address: str) -> Iterator[Tab]:
        """Another tab of the same person."""
        mine = self.driver.command("GetWindowHandle", {})
        other = self.driver.command("NewWindow", {"type": "tab"})["handle"]
        self.driver.command("SwitchToWindow", {"handle": other, "focus": True})
        try:
            self.go(address)
            yield self
            self.driver.command("CloseWindow", {})
        finally:
            self.driver.command("SwitchToWindow", {"handle": mine, "focus": True})

    @contextmanager
    def inside(self) -> Iterator[Tab]:
        """In the only frame of the page, whoever it comes from."""
        self.driver.command("SwitchToFrame", {"id": 0})
        try:
            yield self
        finally:
            self.driver.command("SwitchToParentFrame", {})


def engine_missing(name: str) -> str:
    """What is not here, in a sentence; empty where the engine can be used."""
    if name == "firefox":
        return "" if find_firefox() else "Firefox is not here; on Debian type: sudo apt install firefox-esr"
    return "" if find_webkit() else "WebKitGTK's driver is not here; on Debian type: sudo apt install webkit2gtk-driver xvfb"


@contextmanager
def open_engine(name: str) -> Iterator[Tab]:
    """A browser of one person, with nothing stored."""
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as folder:
        driver = Firefox(Path(folder)) if name == "firefox" else WebKit(Path(folder))
        try:
            yield Tab(name, driver)
        finally:
            driver.close()
