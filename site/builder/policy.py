"""The last hand on every page: what its scripts may do, and the two words by which scripts and tests see its state.

Each page gets a Content-Security-Policy as a meta tag, before anything that it must hold for. It allows no inline
script but the theme's own, by their sha-256, no inline style, no inline handler, no other host. The build fails where
a page would need more.

A worker does not inherit the policy of a meta tag, so the page's own needs no word for WebAssembly.
"""

from __future__ import annotations

import base64
import hashlib
import re
from collections.abc import Iterable
from html.parser import HTMLParser
from pathlib import Path

__all__ = ["apply_policy", "inline_scripts", "policy", "unwanted"]

_HEAD = re.compile(r'<meta charset="utf-8">')
_HTML = re.compile(r"<html ")
# Kinds of script that a browser runs; others, such as JSON, are data.
_RUN = {"", "module", "text/javascript", "application/javascript"}
STATES = 'data-engine="static" data-offline="none" '


class _Parts(HTMLParser):
    """Collects inline scripts, and what no page may have."""

    def __init__(self) -> None:
        super().__init__(convert_charrefs=False)
        self.scripts: list[str] = []
        self.unwanted: list[str] = []
        self._inside = False

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = dict(attrs)
        if tag == "script" and "src" not in given and (given.get("type") or "") in _RUN:
            self._inside = True
            self.scripts.append("")
        if tag in ("style", "base", "iframe", "object", "embed"):
            self.unwanted.append(f"<{tag}>")
        for name, value in attrs:
            handler = name.startswith("on") or name in ("style", "srcdoc")
            if handler or (value or "").strip().lower().startswith("javascript:"):
                self.unwanted.append(f'<{tag} {name}="{(value or "")[:60]}">')

    def handle_startendtag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.handle_starttag(tag, attrs)

    def handle_endtag(self, tag: str) -> None:
        if tag == "script":
            self._inside = False

    def handle_data(self, data: str) -> None:
        if self._inside:
            self.scripts[-1] += data


def _parts(html: str) -> _Parts:
    parts = _Parts()
    parts.feed(html)
    return parts


def inline_scripts(html: str) -> list[str]:
    """The text of each script that stands in the page itself and would run."""
    return _parts(html).scripts


def unwanted(html: str) -> list[str]:
    """What the policy would stop: inline styles and handlers, frames, a base."""
    return _parts(html).unwanted


def policy(scripts: Iterable[str]) -> str:
    """The policy that allows exactly these inline scripts."""
    hashes = sorted({base64.b64encode(hashlib.sha256(script.encode()).digest()).decode() for script in scripts})
    allowed = "".join(f" 'sha256-{one}'" for one in hashes)
    return "; ".join(
        (
            "default-src 'self'",
            f"script-src 'self'{allowed}",
            "style-src 'self'",
            "img-src 'self' data: blob:",
            "connect-src 'self'",
            "worker-src 'self'",
            "base-uri 'none'",
            "form-action 'none'",
            "object-src 'none'",
        )
    )


def apply_policy(folder: Path) -> list[str]:
    """Write the policy, one for all pages, and the states into every page; gives back what stands in its way."""
    pages = {file: file.read_text(encoding="utf-8") for file in sorted(folder.rglob("*.html"))}
    flaws = [f"{file.relative_to(folder)}: {what}" for file, html in pages.items() for what in unwanted(html)]
    ours = policy(script for html in pages.values() for script in inline_scripts(html))
    meta = f'<meta charset="utf-8">\n      <meta http-equiv="Content-Security-Policy" content="{ours}">'
    for file, html in pages.items():
        html, heads = _HEAD.subn(meta, html, count=1)
        html, roots = _HTML.subn(f"<html {STATES}", html, count=1)
        if not heads or not roots:
            flaws.append(f"{file.relative_to(folder)}: no place for the policy")
        file.write_text(html, encoding="utf-8")
    return flaws
