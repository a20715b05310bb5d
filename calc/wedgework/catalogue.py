"""The list of all calculators, in the order in which a piece meets them. Nothing is found by searching."""

from __future__ import annotations

from wedgework.calculators import blocking, circle, even_shaping, gauge, panel_plan, panels, size, tension, time, yarn_count
from wedgework.declare import Calculator

__all__ = ["CALCULATORS", "calculator"]

CALCULATORS: tuple[Calculator, ...] = (
    gauge.CALCULATOR,
    tension.CALCULATOR,
    yarn_count.CALCULATOR,
    size.CALCULATOR,
    panels.CALCULATOR,
    even_shaping.CALCULATOR,
    circle.CALCULATOR,
    panel_plan.CALCULATOR,
    time.CALCULATOR,
    blocking.CALCULATOR,
)


def calculator(slug: str) -> Calculator | None:
    """The calculator of that slug, if there is one."""
    return next((one for one in CALCULATORS if one.slug == slug), None)
