"""The sheet that one draws on: the panel in needles and rows, and the design with all its shapes drawn out on it."""

from __future__ import annotations

from dataclasses import dataclass, replace
from fractions import Fraction

from wedgework.exact import nearest
from wedgework.formats import nearest_decimal
from wedgework.formats.design import Design, DrawnLayout, NamedLayout, Point, Shape
from wedgework.formats.schemas.design import MOST_CORNERS, MOST_SHAPES, MOST_YARNS
from wedgework.layout import drawn_layout, layout_problems, resolve, size_problems
from wedgework.layout.sizes import Sizes
from wedgework.layout.straight import JOINED_ROWS, WIDE_NEEDLES
from wedgework.problems import Refused

__all__ = ["Surface", "counted", "rules_value", "surface", "with_layout"]


@dataclass(frozen=True, slots=True)
class Surface:
    """`design` has a drawn layout whose points are counted in the needles and rows of `sizes`."""

    design: Design
    sizes: Sizes
    moved: bool
    """Whether corners had to go to the nearest half needle or row: the drawing was counted on a panel of another size."""


def surface(design: Design) -> Surface:
    """`design` on its sheet. Raises Refused where it has none, or where its layout cannot be drawn."""
    found = size_problems(design) + layout_problems(design)
    if found:
        raise Refused(found)
    sizes = resolve(design)
    drawn = drawn_layout(design, sizes)
    moved = drawn.counted is not None and drawn.counted != (sizes.across, sizes.rows)
    return Surface(replace(design, layout=counted(drawn, sizes)), sizes, moved)


def with_layout(design: Design, name: str) -> Design:
    """The design with a named layout, drawn out with its defaults on this panel. Raises Refused for a name that is none."""
    return surface(replace(design, layout=NamedLayout(name))).design


def counted(drawn: DrawnLayout, sizes: Sizes) -> DrawnLayout:
    """The same drawing counted in needles and rows. From a panel of another size corners come to the nearest half needle or row;
    what is no decimal even then is rounded, far below what a cell could show."""
    to_half = drawn.counted is not None and drawn.counted != (sizes.across, sizes.rows)

    def place(part: Fraction, whole: int) -> Fraction:
        at = part * whole
        return (Fraction(nearest(2 * at), 2) if to_half else nearest_decimal(at)) / whole

    def ring(points: tuple[Point, ...]) -> tuple[Point, ...]:
        return tuple((place(x, sizes.across), place(y, sizes.rows)) for x, y in points)

    return replace(
        drawn,
        shapes=tuple(Shape(shape.yarn, ring(shape.points), tuple(map(ring, shape.holes))) for shape in drawn.shapes),
        gaps=tuple(map(ring, drawn.gaps)),
        counted=(sizes.across, sizes.rows),
    )


def rules_value() -> dict[str, int]:
    """What drawing has to know of knitting, as plain numbers: the steepest and the flattest slope that joins by itself, the rows
    by which a border moves, and how much a file can hold."""
    return {
        "joined_rows": JOINED_ROWS,
        "wide_needles": WIDE_NEEDLES,
        "turn_rows": 2,
        "most_shapes": MOST_SHAPES,
        "most_corners": MOST_CORNERS,
        "most_yarns": MOST_YARNS,
    }
