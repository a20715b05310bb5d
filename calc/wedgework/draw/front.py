"""The finished front: the knit side, as the piece will be seen."""

from __future__ import annotations

from wedgework.draw.piece import piece_svg
from wedgework.formats.plan import Plan
from wedgework.replay.result import Replay

__all__ = ["front_svg"]


def front_svg(plan: Plan, judged: Replay, *, prefix: str = "front", show_grid: bool = False) -> str:
    """SVG text; `prefix` keeps ids apart on a page with several drawings."""
    return piece_svg(plan, judged, "front", prefix=prefix, show_grid=show_grid)
