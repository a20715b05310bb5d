"""The list of all calculators, in the order in which a piece meets them. Nothing is found by searching."""

from __future__ import annotations

from wedgework.calculators import (
    blocking,
    carry_on,
    circle,
    edging,
    even_shaping,
    gauge,
    hem,
    panel_plan,
    panels,
    practice_piece,
    scraps,
    shelf,
    short_row_shape,
    side_hem,
    size,
    stripes,
    tension,
    time,
    written_pattern,
    yarn_count,
    yarn_needs,
)
from wedgework.declare import Calculator

__all__ = ["CALCULATORS", "calculator"]

CALCULATORS: tuple[Calculator, ...] = (
    gauge.CALCULATOR,
    tension.CALCULATOR,
    yarn_count.CALCULATOR,
    size.CALCULATOR,
    panels.CALCULATOR,
    even_shaping.CALCULATOR,
    short_row_shape.CALCULATOR,
    circle.CALCULATOR,
    panel_plan.CALCULATOR,
    practice_piece.CALCULATOR,
    carry_on.CALCULATOR,
    hem.CALCULATOR,
    side_hem.CALCULATOR,
    edging.CALCULATOR,
    yarn_needs.CALCULATOR,
    stripes.CALCULATOR,
    scraps.CALCULATOR,
    shelf.CALCULATOR,
    time.CALCULATOR,
    blocking.CALCULATOR,
    written_pattern.CALCULATOR,
)


def calculator(slug: str) -> Calculator | None:
    """The calculator of that slug, if there is one."""
    return next((one for one in CALCULATORS if one.slug == slug), None)
