"""The words of the calculator of practice pieces."""

from __future__ import annotations

_KEY = "calculators.practice-piece"

MESSAGES: dict[str, str | tuple[str, str]] = {
    f"{_KEY}.title": "Practice piece",
    f"{_KEY}.what": "The smallest sample of a piece in which each kind of edge, start, turn and join comes up once, to be knitted before the piece itself.",
    f"{_KEY}.figure-width": "Width",
    f"{_KEY}.figure-height": "Height",
    f"{_KEY}.figure-stitches": "Stitches",
    f"{_KEY}.figure-stitches-note": "of {whole} in the whole piece",
    f"{_KEY}.figure-ends": "Yarn ends",
    f"{_KEY}.shows": "What comes up in it",
    f"{_KEY}.lacks": "What does not",
    f"{_KEY}.file": "The design file",
    f"{_KEY}.file-open": "Show it, to be copied into a file of its own",
}
