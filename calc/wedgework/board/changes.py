"""Changes of a drawing that may make it easier to knit: small ones, each at a place where the model bed found trouble.

    for change in changes(found):
        weighed(effort_of(found.plan, found.replay), ...the same of change.design...)

None of them is promised to help: each has to be planned and weighed before anyone is offered it.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, replace
from fractions import Fraction

from wedgework.bed import name
from wedgework.board.judgement import Front, Judgement
from wedgework.board.rings import Ring, Spot, edges_near, moved_line, points_of, with_bend, with_points
from wedgework.formats.design import Design, DrawnLayout, Options
from wedgework.formats.plan import Slit, is_edge
from wedgework.layout.sizes import Sizes
from wedgework.layout.straight import JOINED_ROWS
from wedgework.replay.advice import CRUMB
from wedgework.say import say

__all__ = ["MOST_CHANGES", "Change", "changes"]

MOST_CHANGES = 14
_SLITS, _CRUMBS = 3, 3
_SHORT = 3 * JOINED_ROWS
"""Rows of a slit that one needle may mend."""


@dataclass(frozen=True, slots=True)
class Change:
    """`kind`: ``lean``, ``bend``, ``move``, ``snap``, ``over``, ``merge``, ``start`` or ``order``.

    `at` is where, in needles and rows of the front.
    """

    kind: str
    words: str
    at: Spot
    design: Design


def changes(found: Judgement) -> list[Change]:
    """At most `MOST_CHANGES`, each drawing once. `found` is the judgement of a design whose layout is drawn and counted."""
    layout = found.design.layout
    if not isinstance(layout, DrawnLayout) or layout.counted is None:
        return []
    sheet = _Sheet(found, layout, Front.of(found.plan))
    kept: list[Change] = []
    seen = [found.design]
    for way in (_merge, _snapped, _slits, _moves, _over, _options):
        for change in way(sheet):
            if len(kept) < MOST_CHANGES and change.design not in seen:
                seen.append(change.design)
                kept.append(change)
    return kept


@dataclass(frozen=True, slots=True)
class _Sheet:
    found: Judgement
    layout: DrawnLayout
    front: Front

    @property
    def sizes(self) -> Sizes:
        return self.front.sizes

    @property
    def design(self) -> Design:
        return self.found.design

    def changed(self, kind: str, at: Spot, rings: list[list[Ring]], **values: object) -> Iterator[Change]:
        """The change with these corners, in needles and rows; nothing where a shape would lose its area or leave the sheet."""
        layout = with_points(self.layout, rings, self.sizes.across, self.sizes.rows)
        if layout is not None:
            yield self.change(kind, at, replace(self.design, layout=layout), **values)

    def change(self, kind: str, at: Spot, design: Design, **values: object) -> Change:
        return Change(kind, say(f"board.change-{kind}", **values), at, design)

    def options(self, **kept: object) -> Design:
        return replace(self.design, options=replace(self.design.options, **kept))  # type: ignore[arg-type]

    @property
    def rings(self) -> list[list[Ring]]:
        return points_of(self.layout, self.sizes.across, self.sizes.rows)

    def crumbs(self) -> list[tuple[int, Spot]]:
        """Stitches and middle of the smallest blocks."""
        replay = self.found.replay
        small = {
            block.id: replay.block_stitches[block.id]
            for block in self.found.plan.blocks
            if not is_edge(block.id) and 0 < replay.block_stitches.get(block.id, 0) < CRUMB
        }
        places: dict[str, list[Spot]] = {}
        for at, column in enumerate(replay.piece.columns):
            for run in column:
                if run.block in small:
                    middle = Fraction(2 * self.front.needle(at) + 1, 2), Fraction(run.low + run.high, 2)
                    places.setdefault(run.block, []).append(middle)
        found = []
        for block, stitches in sorted(small.items(), key=lambda item: item[1]):
            spots = places.get(block, [])
            if spots:
                x, y = sum((s[0] for s in spots), Fraction(0)), sum((s[1] for s in spots), Fraction(0))
                found.append((stitches, (x / len(spots), y / len(spots))))
        return found


def _merge(sheet: _Sheet) -> Iterator[Change]:
    """Crumbs to their neighbours."""
    crumbs = sheet.crumbs()
    least = max((stitches for stitches, _ in crumbs), default=0) + 1
    if crumbs and least > sheet.design.options.merge_below:
        yield sheet.change("merge", crumbs[0][1], sheet.options(merge_below=least), least=least)


def _snapped(sheet: _Sheet) -> Iterator[Change]:
    """Every corner to a whole needle and a whole turn."""
    rings = [[[_on_lattice(spot) for spot in ring] for ring in shape] for shape in sheet.rings]
    off = [old for old, new in zip(_spots(sheet.rings), _spots(rings), strict=True) if old != new]
    if off:
        yield from sheet.changed("snap", off[0], rings)


def _spots(rings: list[list[Ring]]) -> list[Spot]:
    return [spot for shape in rings for ring in shape for spot in ring]


def _on_lattice(spot: Spot) -> Spot:
    return Fraction(round(spot[0])), Fraction(2 * round(spot[1] / 2))


def _slits(sheet: _Sheet) -> Iterator[Change]:
    """A border that stands open leans so that it joins, to either side; or it is bent once or three times."""
    slits = sorted(sheet.found.replay.summary.slits, key=lambda slit: -slit.rows)[:_SLITS]
    for bends in (0, 1, 3):
        for slit in slits:
            for edge in _edges(sheet, slit):
                (_, low), (_, high) = edge
                lean = (high - low) / JOINED_ROWS / (bends + 1)
                needles = Fraction(max(1, -(-lean // 1)))
                at = (edge[0][0] + edge[1][0]) / 2, (low + high) / 2
                for way in (1, -1):
                    if bends:
                        rings = with_bend(sheet.rings, edge, bends, way * needles)
                        yield from sheet.changed("bend", at, rings, needle=_needle(sheet, at), parts=bends + 1, needles=needles)
                    else:
                        half = way * needles / 2
                        low_end, high_end = (edge[0][0] - half, low), (edge[1][0] + half, high)
                        rings = moved_line(sheet.rings, edge, (_whole(low_end), _whole(high_end)), sheet.sizes.across)
                        side = _side("right" if way > 0 else "left")
                        yield from sheet.changed("lean", at, rings, needle=_needle(sheet, at), needles=needles, side=side)


def _whole(spot: Spot) -> Spot:
    return Fraction(spot[0] // 1), spot[1]


def _edges(sheet: _Sheet, slit: Slit) -> list[tuple[Spot, Spot]]:
    first, last = sheet.front.after(slit.needle), sheet.front.after(slit.to_needle or slit.needle)
    middle = Fraction(first + last, 2)
    return edges_near(sheet.rings, middle, Fraction(slit.from_row), Fraction(slit.from_row + slit.rows), sheet.sizes.across)[:1]


def _moves(sheet: _Sheet) -> Iterator[Change]:
    """A border beside a crumb, or a short slit, by one needle to either side."""
    spots = [at for _, at in sheet.crumbs()[:_CRUMBS]]
    for slit in sheet.found.replay.summary.slits:
        if slit.rows <= _SHORT:
            spots.append((Fraction(sheet.front.after(slit.needle)), Fraction(slit.from_row) + Fraction(slit.rows, 2)))
    for at in spots[: 2 * _CRUMBS]:
        for edge in edges_near(sheet.rings, at[0], at[1], at[1], sheet.sizes.across, steep=False)[:1]:
            for way in (1, -1):
                ends = tuple((x + way, y) for x, y in edge)
                rings = moved_line(sheet.rings, edge, (ends[0], ends[1]), sheet.sizes.across)
                side = _side("right" if way > 0 else "left")
                yield from sheet.changed("move", at, rings, needle=_needle(sheet, at), side=side)


def _over(sheet: _Sheet) -> Iterator[Change]:
    """Of the shapes round a crumb, the upper one under the next."""
    shapes = sheet.layout.shapes
    for _, at in sheet.crumbs()[:_CRUMBS]:
        here = [i for i, rings in enumerate(sheet.rings) if _round(rings[0], at)]
        if len(here) >= 2:
            low, high = here[-2], here[-1]
            order = list(shapes)
            order[low], order[high] = order[high], order[low]
            design = replace(sheet.design, layout=replace(sheet.layout, shapes=tuple(order)))
            yield sheet.change("over", at, design, upper=high + 1, lower=low + 1)


def _round(ring: Ring, at: Spot) -> bool:
    xs, ys = [x for x, _ in ring], [y for _, y in ring]
    return min(xs) - 1 <= at[0] <= max(xs) + 1 and min(ys) - 2 <= at[1] <= max(ys) + 2


def _options(sheet: _Sheet) -> Iterator[Change]:
    """The carriage at the other side; the person's own wishes for the order, one left out at a time."""
    options: Options = sheet.design.options
    at = Fraction(sheet.sizes.across, 2), Fraction(0)
    for number, wish in enumerate(options.order[:_CRUMBS]):
        order = options.order[:number] + options.order[number + 1 :]
        yield sheet.change("order", at, sheet.options(order=order), block=wish.block)
    other = "L" if options.start_side == "R" else "R"
    yield sheet.change("start", at, sheet.options(start_side=other), side=_side("left" if other == "L" else "right"))


def _side(key: str) -> str:
    return say(f"board.side-{key}")


def _needle(sheet: _Sheet, at: Spot) -> str:
    """The name of the needle at a place of the front."""
    return name(sheet.front.at(at[0]))
