"""The purl side: the piece as it hangs on the machine, L on the left, the mirror image of the front."""

from __future__ import annotations

from wedgework.draw.piece import piece_svg
from wedgework.formats.plan import Plan
from wedgework.replay.result import Replay

__all__ = ["purl_svg"]


def purl_svg(plan: Plan, judged: Replay, *, prefix: str = "purl", show_grid: bool = False) -> str:
    """SVG text; `prefix` keeps ids apart on a page with several drawings."""
    return piece_svg(plan, judged, "purl", prefix=prefix, show_grid=show_grid)
