"""Sentences that the pages need beside the ones written in Markdown."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "site.version": "This is Wedgework {version}.",
    "site.bed-pitch": "Pitch",
    "site.bed-needles": "Needles",
    "site.bed-across": "First needle to last",
    "site.ships-text": "The licence of {name} in full",
    "site.ships-own": "The calculations, the pages and the drawings.",
    "site.ships-theme": "The frame of the pages: navigation, search, styles.",
    "site.ships-icons": "The small signs in the frame of the pages.",
    "site.ships-clipboard": "Bound into the frame's script: copying.",
    "site.ships-escape-html": "Bound into the frame's script: showing text as text.",
    "site.ships-focus-visible": "Bound into the frame's script: showing where the keyboard is.",
    "site.ships-lunr": "Bound into the frame's script: search without a server.",
    "site.ships-rxjs": "Bound into the frame's script: reacting to clicks and scrolling.",
    "site.ships-tslib": "Bound into the frame's script: small helpers of its language.",
}
