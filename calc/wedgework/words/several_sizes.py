"""One text for several sizes: "19 (24, 29) times", where the sentences of all sizes differ in nothing but their counts.

    >>> one_text(("Knit 40 rows over L20-R20.", "Knit 50 rows over L24-R24."))
    'Knit 40 (50) rows over L20-R20 (L24-R24).'

The figure of the first size stands before the bracket, those of the others in it, in their order. A sentence that would not be
read back exactly is not written so: `one_text` gives None, and each size gets its own.
"""

from __future__ import annotations

import re
from collections.abc import Sequence

__all__ = ["for_size", "one_text"]

_NEEDLES = r"[LR]\d+(?:-[LR]\d+)?"
_FIGURE = re.compile(rf"{_NEEDLES}|\d+ \d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?")


def one_text(versions: Sequence[str]) -> str | None:
    """The sentences of all sizes in one, or None where they differ in more than figures and needles; or where all say the same,
    but a name in them would be read as a count: a yarn called Merino 8 (4)."""
    words = [_FIGURE.split(version) for version in versions]
    if any(other != words[0] for other in words[1:]):
        return None
    figures = zip(*(_FIGURE.findall(version) for version in versions), strict=True)
    parts = [words[0][0]]
    for own, after in zip(figures, words[0][1:], strict=True):
        parts += [own[0] if len(set(own)) == 1 else f"{own[0]} ({', '.join(own[1:])})", after]
    text = "".join(parts)
    # Read back it must be the same for each.
    back = [for_size(text, k, len(versions)) for k in range(len(versions))]
    return text if back == list(versions) else None


def for_size(text: str, k: int, sizes: int) -> str:
    """What `text` says for size k of so many."""
    figure = _FIGURE.pattern
    several = re.compile(rf"({figure}) \(((?:{figure})(?:, (?:{figure})){{{sizes - 2}}})\)") if sizes > 1 else None
    if several is None:
        return text
    return several.sub(lambda found: found[1] if k == 0 else _FIGURE.findall(found[2])[k - 1], text)
