"""The planner: reads like its table of contents."""

from __future__ import annotations

from collections.abc import Sequence

from wedgework.bed import Side, float_limit, opposite, place
from wedgework.formats.design import Design
from wedgework.formats.plan import Cut, Edges, Plan, Start, Summary, Thread
from wedgework.layout import grid_of, layout_problems, resolve, size_problems
from wedgework.layout.sizes import Sizes
from wedgework.plan.arrange import arrange
from wedgework.plan.arranged import Arranged, Wishes
from wedgework.plan.borders import Stretch, slits_of, stairs_of
from wedgework.plan.bound import Around
from wedgework.plan.complete import complete, wish_problems
from wedgework.plan.division import divided
from wedgework.plan.edges import Style
from wedgework.plan.feed import Change, Passage, feed
from wedgework.plan.fit import Fits
from wedgework.plan.order import Searched, best_order
from wedgework.plan.price import Prices
from wedgework.plan.record import Recorder
from wedgework.plan.regions import Chain, chains_of
from wedgework.plan.strand import Strand
from wedgework.plan.tally import columns_of, fold_of, heights_of, holes_of, uneven_of
from wedgework.problems import Refused
from wedgework.say import say
from wedgework.version import VERSION

__all__ = ["plan_piece"]


def plan_piece(design: Design) -> Plan:
    """Steps that knit `design`. Raises Refused with everything that stands in the way, nothing half done."""
    found = layout_problems(design) + size_problems(design) + wish_problems(design)
    if found:
        raise Refused(found)
    sizes = resolve(design)
    chains = chains_of(grid_of(design, sizes).mirrored())
    wishes = wishes_of(design, sizes)
    searched = _ordered(design, chains, wishes)
    order = searched.order
    edges = _edges(design, order)
    passages = [*_base_below(edges, sizes, design), *(Passage(b.yarn, b.begins, b.ends) for b in order)]
    columns = columns_of(order, sizes.needles)
    passages += _base_above(edges, sizes, passages[-1].ends, columns)
    prices = Prices(wishes.costs, wishes.needles)
    changes = feed(passages, wishes.strand_limit, design.bed.machine.yarns_on_mast, prices)
    recorder = _record(order, edges, changes, sizes, design, wishes.style)
    return Plan(
        design=complete(design),
        first_needle=sizes.first_needle,
        last_needle=sizes.last_needle,
        start=Start(design.options.start_side, (sizes.first_needle, sizes.last_needle)),
        edges=edges,
        blocks=tuple(recorder.blocks),
        steps=tuple(recorder.steps),
        summary=_summary(order, columns, edges, recorder, passages, changes, sizes, wishes.style),
        made_by=VERSION,
    )


def _ordered(design: Design, chains: Sequence[Chain], wishes: Wishes) -> Searched:
    """The blocks in a best order that the person's own wishes allow."""
    fits = Fits(wishes.rows, wishes.style)
    at_hand, pieces = arrange(chains, wishes, fits)
    division = divided(pieces, wishes.needles, design.options.order)
    first = [(k, block.fitted.start) for k, block in enumerate(at_hand)]
    return best_order(division, wishes, _around(design), design.bed.machine.yarns_on_mast, fits, first)


def style_of(design: Design) -> Style:
    """How several needles go to hold at once, as the design wants it."""
    limit = float_limit(design.bed.pitch_mm)
    wanted = design.options.step_style
    return Style(at_carriage=limit if wanted == "carriage-side" else 1, by_hand=wanted == "by-hand")


def wishes_of(design: Design, sizes: Sizes) -> Wishes:
    options = design.options
    start: Side = options.start_side if options.base_rows_bottom % 2 == 0 else opposite(options.start_side)
    return Wishes(
        needles=sizes.needles,
        rows=sizes.rows,
        start=start,
        strand_limit=float_limit(design.bed.pitch_mm),
        costs=options.costs,
        style=style_of(design),
    )


def _around(design: Design) -> Around:
    options = design.options
    return Around(options.base_rows_bottom > 0, options.base_yarn_bottom, options.base_rows_top > 0, options.base_yarn_top)


def _edges(design: Design, order: list[Arranged]) -> Edges:
    """Base rows in the yarn of the block beside them, unless the design says otherwise: that saves a change of yarn."""
    options = design.options
    return Edges(
        cast_on="closed",
        base_rows_bottom=options.base_rows_bottom,
        base_yarn_bottom=options.base_yarn_bottom or order[0].yarn,
        base_rows_top=options.base_rows_top,
        base_yarn_top=options.base_yarn_top or order[-1].yarn,
    )


def _base_below(edges: Edges, sizes: Sizes, design: Design) -> list[Passage]:
    if not edges.base_rows_bottom:
        return []
    start = design.options.start_side
    end: Side = start if edges.base_rows_bottom % 2 == 0 else opposite(start)
    return [Passage(edges.base_yarn_bottom, Strand(_edge(start, sizes), 0, start), Strand(_edge(end, sizes), 0, end))]


def _base_above(edges: Edges, sizes: Sizes, last: Strand, columns: list[list[Stretch]]) -> list[Passage]:
    if not edges.base_rows_top:
        return []
    height = heights_of(columns)[_edge(last.side, sizes)]
    begins = Strand(_edge(last.side, sizes), height, last.side)
    end: Side = last.side if edges.base_rows_top % 2 == 0 else opposite(last.side)
    return [Passage(edges.base_yarn_top, begins, Strand(_edge(end, sizes), height, end))]


def _edge(side: Side, sizes: Sizes) -> int:
    return 0 if side == "L" else sizes.needles - 1


def _record(order: list[Arranged], edges: Edges, changes: list[Change], sizes: Sizes, design: Design, style: Style) -> Recorder:
    tensions = {yarn.id: yarn.tension for yarn in design.yarns if yarn.tension is not None}
    recorder = Recorder(sizes.first_needle, sizes.needles, design.options.start_side, tensions)
    names = {yarn.id: yarn.name for yarn in design.yarns}
    remaining = iter(changes)
    if edges.base_rows_bottom:
        recorder.base(edges.base_rows_bottom, next(remaining), "base-bottom", say("plan.base-bottom"), edges.base_yarn_bottom)
    for number, block in enumerate(order, 1):
        name = say("plan.block-name", number=number, yarn=names[block.yarn])
        recorder.block(block.fitted, next(remaining), block.id, name, block.yarn, style)
    if edges.base_rows_top:
        recorder.base(edges.base_rows_top, next(remaining), "base-top", say("plan.base-top"), edges.base_yarn_top)
    recorder.finish()
    return recorder


def _summary(
    order: list[Arranged],
    columns: list[list[Stretch]],
    edges: Edges,
    recorder: Recorder,
    passages: list[Passage],
    changes: list[Change],
    sizes: Sizes,
    style: Style,
) -> Summary:
    heights = heights_of(columns)
    origin = place(sizes.first_needle)
    threads = [step for step in recorder.steps if isinstance(step, Thread)]
    anew = sum(change.anew for change in changes)
    cuts = sum(isinstance(step, Cut) for step in recorder.steps)
    inside_starts = sum(step.around is not None for step in threads)
    selvedges = (0, sizes.needles - 1)
    cuts_inside = sum(
        change.away == "cut" and before.ends.place not in selvedges for before, change in zip(passages, changes[1:], strict=False)
    ) + (passages[-1].ends.place not in selvedges)
    stitches: dict[str, int] = {}
    for block in order:
        stitches[block.yarn] = stitches.get(block.yarn, 0) + sum(block.fitted.rows)
    edge_stitches: dict[str, int] = {}
    for yarn, rows in ((edges.base_yarn_bottom, edges.base_rows_bottom), (edges.base_yarn_top, edges.base_rows_top)):
        if rows:
            edge_stitches[yarn] = edge_stitches.get(yarn, 0) + rows * sizes.needles
    return Summary(
        rows_min=min(heights),
        rows_max=max(heights),
        steepest_fold=fold_of(order, sizes.needles),
        ends=anew + cuts,
        ends_inside=inside_starts + cuts_inside,
        free_passes=recorder.free_passes,
        inside_starts=inside_starts,
        slits=slits_of(columns, origin),
        stairs=stairs_of(columns, origin),
        holes=holes_of(order, style, origin),
        uneven=uneven_of(heights, sizes.rows, origin),
        stitches=stitches,
        edge_stitches=edge_stitches,
    )
