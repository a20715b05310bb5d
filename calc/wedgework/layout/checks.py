"""What can be wrong with the yarns and the shapes of a design, all found at once."""

from __future__ import annotations

from collections.abc import Sequence

from wedgework.formats.design import Design, DrawnLayout, NamedLayout, Point
from wedgework.layout.library import LAYOUTS, named
from wedgework.layout.sizes import Sizes
from wedgework.layout.yarns import unknown_yarn
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["crossing", "drawn_layout", "layout_problems"]


def drawn_layout(design: Design, sizes: Sizes) -> DrawnLayout:
    """The shapes of the design, a named layout turned into its shapes on a picture of this size.

    Raises Refused when its name or a parameter is wrong.
    """
    layout = design.layout
    if isinstance(layout, DrawnLayout):
        return layout
    declared = named(layout.name)
    found = layout_problems(design)
    if declared is None or found:
        raise Refused(found)
    return declared.shapes(layout.parameters, [y.id for y in design.yarns], sizes.across, sizes.rows)


def layout_problems(design: Design) -> list[Problem]:
    """Yarns that are not there or there twice, an unknown layout or parameter, shapes that cross themselves or hold nothing."""
    ids = [yarn.id for yarn in design.yarns]
    found = [
        Problem(f"yarns[{i}].id", "layout.yarn-twice", say("layout.yarn-twice", yarn=yarn), say("layout.yarn-twice.way-out"))
        for i, yarn in enumerate(ids)
        if yarn in ids[:i]
    ]
    if isinstance(design.layout, NamedLayout):
        return found + _named_problems(design.layout, ids)
    return found + _drawn_problems(design.layout, ids)


def _named_problems(layout: NamedLayout, ids: Sequence[str]) -> list[Problem]:
    declared = named(layout.name)
    if declared is None:
        known = ", ".join(each.name for each in LAYOUTS)
        return [
            Problem(
                "layout.name",
                "layout.unknown-name",
                say("layout.unknown-name", name=layout.name),
                say("layout.unknown-name.way-out", names=known),
            )
        ]
    return declared.problems(layout.parameters, ids)


def _drawn_problems(layout: DrawnLayout, ids: Sequence[str]) -> list[Problem]:
    found: list[Problem] = []

    def yarn_known(where: str, yarn: str) -> None:
        if yarn not in ids:
            found.append(unknown_yarn(where, yarn, ids))

    yarn_known("layout.background", layout.background)
    for i, shape in enumerate(layout.shapes):
        where = f"layout.shapes[{i}]"
        yarn_known(f"{where}.yarn", shape.yarn)
        found += _ring_problems(f"{where}.points", shape.points)
        for k, hole in enumerate(shape.holes):
            found += _ring_problems(f"{where}.holes[{k}]", hole)
    for i, gap in enumerate(layout.gaps):
        found += _ring_problems(f"layout.gaps[{i}]", gap)
    return found


def _ring_problems(where: str, ring: Sequence[Point]) -> list[Problem]:
    """An outline that lies far outside, encloses nothing, or crosses itself."""
    if not all(-1 <= coordinate <= 2 for point in ring for coordinate in point):
        return [Problem(where, "layout.far-outside", say("layout.far-outside"), say("layout.far-outside.way-out"))]
    if _on_one_line(ring):
        return [Problem(where, "layout.no-area", say("layout.no-area"), say("layout.no-area.way-out"))]
    crossed = crossing(ring)
    if crossed is None:
        return []
    one, other = crossed
    return [
        Problem(
            where,
            "layout.crossing-edges",
            say("layout.crossing-edges", one=one, other=other),
            say("layout.crossing-edges.way-out"),
        )
    ]


def _on_one_line(ring: Sequence[Point]) -> bool:
    """Whether the points enclose nothing, because all lie on one line (or there are fewer than three)."""
    other = next((point for point in ring if point != ring[0]), None)
    return other is None or all(_side(ring[0], other, point) == 0 for point in ring)


def crossing(ring: Sequence[Point]) -> tuple[int, int] | None:
    """Indices of two edges that cross or overlap (edge i runs from point i to the next), or None.

    Edges that only share a corner are fine. Sorted by their lower end, so that distant edges are never compared.
    """
    edges = []
    for i, (start, end) in enumerate(zip(ring, [*ring[1:], ring[0]], strict=True)):
        if start != end:
            edges.append((min(start[1], end[1]), max(start[1], end[1]), i, start, end))
    edges.sort(key=lambda e: (e[0], e[1]))
    for k, (_, high, i, a, b) in enumerate(edges):
        for low, _, j, c, d in edges[k + 1 :]:
            if low > high:
                break
            if max(min(a[0], b[0]), min(c[0], d[0])) > min(max(a[0], b[0]), max(c[0], d[0])):
                continue
            if _meet(a, b, c, d):
                return (i, j) if i < j else (j, i)
    return None


def _side(a: Point, b: Point, p: Point) -> int:
    cross = (b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0])
    return (cross > 0) - (cross < 0)


def _meet(a: Point, b: Point, c: Point, d: Point) -> bool:
    """Whether two edges cross, or lie on each other for a length; touching in a point is not crossing."""
    ca, cb = _side(a, b, c), _side(a, b, d)
    if ca == cb == 0:  # on one line: do they share more than a point?
        axis = 0 if a[0] != b[0] else 1
        low = max(min(a[axis], b[axis]), min(c[axis], d[axis]))
        high = min(max(a[axis], b[axis]), max(c[axis], d[axis]))
        return low < high
    return ca * cb < 0 and _side(c, d, a) * _side(c, d, b) < 0
