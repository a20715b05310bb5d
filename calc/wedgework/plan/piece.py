"""The planner: reads like its table of contents."""

from __future__ import annotations

from collections.abc import Sequence

from wedgework.bed import Side, float_limit, opposite, place
from wedgework.finish import EndHem, end_hem
from wedgework.formats.design import Design
from wedgework.formats.plan import Cut, Edges, Handling, Plan, Start, Summary, Thread
from wedgework.formats.state import State
from wedgework.layout import grid_of, layout_problems, resolve, shaping_of, shaping_problems, size_problems
from wedgework.layout.grid import Grid
from wedgework.layout.sizes import Sizes
from wedgework.plan.arrange import arrange
from wedgework.plan.arranged import Arranged, Wishes
from wedgework.plan.borders import Stretch, slits_of, stairs_of
from wedgework.plan.complete import complete, wish_problems
from wedgework.plan.division import divided
from wedgework.plan.edges import Style
from wedgework.plan.feed import Change, Passage, feed
from wedgework.plan.fit import Fits
from wedgework.plan.ground import Around, Ground, bare
from wedgework.plan.hems import bottom_hem, top_hem
from wedgework.plan.order import Searched, best_order
from wedgework.plan.price import Prices
from wedgework.plan.record import Recorder
from wedgework.plan.regions import Chain, chains_of
from wedgework.plan.strand import Strand
from wedgework.plan.tally import columns_of, fold_of, heights_of, holes_of, uneven_of
from wedgework.problems import Refused
from wedgework.remembered import Remembered
from wedgework.say import say
from wedgework.version import VERSION

__all__ = ["around_of", "hung", "made", "ordered", "plan_piece", "sizes_of", "wishes_of"]

# What was asked of the last searches, and their answers: a title, a name, a colour or a weight of yarn changes nothing in the
# order of the blocks, and the search for it is most of the planner's time. A piece, the rest of it, and a sample of it.
_searched: Remembered[tuple[object, ...], Searched] = Remembered(3)


def plan_piece(design: Design) -> Plan:
    """Steps that knit `design`. Raises Refused with everything that stands in the way, nothing half done."""
    sizes = sizes_of(design)
    grid = hung(design, sizes)
    chains = chains_of(grid)
    wishes = wishes_of(design, sizes, grid)
    ground = bare(wishes, around_of(design))
    return made(design, sizes, wishes, ordered(design, chains, wishes, ground), ground)


def sizes_of(design: Design) -> Sizes:
    """The sizes of a design in which nothing is wrong by itself. Raises Refused with all that is."""
    found = layout_problems(design) + size_problems(design) + wish_problems(design)
    if found:
        raise Refused(found)
    return resolve(design)


def hung(design: Design, sizes: Sizes) -> Grid:
    """The picture as it hangs on the bed. Raises Refused where no piece can have its outline."""
    front = grid_of(design, sizes)
    found = shaping_problems(design, front, sizes.rows)
    if found:
        raise Refused(found)
    return front.mirrored()


def made(design: Design, sizes: Sizes, wishes: Wishes, searched: Searched, ground: Ground, state: State | None = None) -> Plan:
    """The plan of blocks in their order; from `state`, where the ground is not bare."""
    order = searched.order
    edges = _edges(design, order, state)
    hems = (None if state else end_hem(design, sizes, "bottom")), end_hem(design, sizes, "top")
    passages = _before(edges, sizes, design, hems[0], ground, state)
    passages += [Passage(b.yarn, b.begins, b.ends) for b in order]
    columns = columns_of(order, ground, wishes.shaping)
    last = passages[-1].ends.side if passages else ground.carriage
    closing = searched.closing or last
    passages += _base_above(edges, sizes, closing, heights_of(columns), hems[1])
    prices = Prices(wishes.costs, wishes.needles)
    changes = feed(passages, wishes.strand_limit, design.bed.machine.yarns_on_mast, prices)
    recorder = _record(order, edges, hems, changes, sizes, design, wishes.style, ground, state, closing)
    return Plan(
        design=complete(design),
        first_needle=sizes.first_needle,
        last_needle=sizes.last_needle,
        start=Start(state.carriage if state else design.options.start_side, (sizes.first_needle, sizes.last_needle)),
        edges=edges,
        blocks=tuple(recorder.blocks),
        steps=tuple(recorder.steps),
        summary=_summary(order, columns, edges, hems, recorder, passages, changes, wishes, sizes, ground),
        made_by=VERSION,
        handling=Handling(searched.minutes, searched.at_least),
        state=state,
    )


def ordered(design: Design, chains: Sequence[Chain], wishes: Wishes, ground: Ground) -> Searched:
    """The blocks in a best order that the person's own wishes allow."""
    around, mast, own_order = around_of(design), design.bed.machine.yarns_on_mast, design.options.order

    def search() -> Searched:
        fits = Fits(wishes.style)
        at_hand, pieces = arrange(chains, wishes, fits, ground)
        division = divided(pieces, wishes.needles, own_order)
        first = [(k, block.fitted.start) for k, block in enumerate(at_hand)]
        return best_order(division, wishes, around, mast, fits, ground, first)

    return _searched.of((list(chains), wishes, ground, own_order, around, mast), search)


def style_of(design: Design) -> Style:
    """How several needles go to hold at once, as the design wants it."""
    limit = float_limit(design.bed.pitch_mm)
    wanted = design.options.step_style
    return Style(at_carriage=limit if wanted == "carriage-side" else 1, by_hand=wanted == "by-hand")


def wishes_of(design: Design, sizes: Sizes, grid: Grid) -> Wishes:
    """`grid` is the picture as it hangs on the bed."""
    options = design.options
    start = _after(options.start_side, options.base_rows_bottom + _rows(end_hem(design, sizes, "bottom")))
    return Wishes(
        needles=sizes.needles,
        shaping=shaping_of(grid, sizes.rows),
        start=start,
        strand_limit=float_limit(design.bed.pitch_mm),
        costs=options.costs,
        style=style_of(design),
    )


def around_of(design: Design) -> Around:
    options = design.options
    return Around(options.base_rows_bottom > 0, options.base_yarn_bottom, options.base_rows_top > 0, options.base_yarn_top)


def _edges(design: Design, order: list[Arranged], state: State | None) -> Edges:
    """Base rows in the yarn of the block beside them, unless the design says otherwise: that saves a change of yarn."""
    options = design.options
    threaded = state.feeder.yarn if state and state.feeder else design.yarns[0].id
    first, last = (order[0].yarn, order[-1].yarn) if order else (threaded, threaded)
    return Edges(
        cast_on="closed" if design.hems.bottom.kind == "none" else "waste",
        base_rows_bottom=0 if state else options.base_rows_bottom,
        base_yarn_bottom=options.base_yarn_bottom or first,
        base_rows_top=options.base_rows_top,
        base_yarn_top=options.base_yarn_top or last,
    )


def _rows(hem: EndHem | None) -> int:
    return hem.rows if hem else 0


def _after(start: Side, rows: int) -> Side:
    """Where the carriage stands after so many rows over every needle."""
    return start if rows % 2 == 0 else opposite(start)


def _base_below(edges: Edges, sizes: Sizes, design: Design, hem: EndHem | None) -> list[Passage]:
    """The hem and the base rows, in one go with one yarn."""
    if not edges.base_rows_bottom:
        return []
    start = design.options.start_side
    end = _after(start, edges.base_rows_bottom + _rows(hem))
    return [Passage(edges.base_yarn_bottom, Strand(_edge(start, sizes), 0, start), Strand(_edge(end, sizes), 0, end))]


def _before(edges: Edges, sizes: Sizes, design: Design, hem: EndHem | None, ground: Ground, state: State | None) -> list[Passage]:
    """What was knitted before the first block: the base rows, or whatever left the yarn of the feeder where it hangs."""
    if state is None:
        return _base_below(edges, sizes, design, hem)
    if ground.yarn is None or ground.strand is None:
        return []
    return [Passage(ground.yarn, ground.strand, ground.strand)]


def _base_above(edges: Edges, sizes: Sizes, side: Side, heights: Sequence[int], hem: EndHem | None) -> list[Passage]:
    if not edges.base_rows_top:
        return []
    height = heights[_edge(side, sizes)]
    begins = Strand(_edge(side, sizes), height, side)
    end = _after(side, edges.base_rows_top + _rows(hem))
    return [Passage(edges.base_yarn_top, begins, Strand(_edge(end, sizes), height, end))]


def _edge(side: Side, sizes: Sizes) -> int:
    return 0 if side == "L" else sizes.needles - 1


def _record(
    order: list[Arranged],
    edges: Edges,
    hems: tuple[EndHem | None, EndHem | None],
    changes: list[Change],
    sizes: Sizes,
    design: Design,
    style: Style,
    ground: Ground,
    state: State | None,
    closing: Side,
) -> Recorder:
    tensions = {yarn.id: yarn.tension for yarn in design.yarns if yarn.tension is not None}
    carriage = ground.carriage if state else design.options.start_side
    recorder = Recorder(sizes.first_needle, sizes.needles, carriage, tensions, ground.held)
    names = {yarn.id: yarn.name for yarn in design.yarns}
    remaining = iter(changes)
    if state is not None and ground.yarn is not None:
        next(remaining)  # it is threaded already
    if edges.base_rows_bottom:
        change = next(remaining)
        if hems[0] is not None:
            change = bottom_hem(recorder, hems[0], change, edges.base_yarn_bottom, design)
        home = recorder.carriage
        recorder.base(edges.base_rows_bottom, change, "base-bottom", say("plan.base-bottom"), edges.base_yarn_bottom, home)
    for number, block in enumerate(order, 1):
        name = say("plan.block-name", number=number, yarn=names[block.yarn])
        recorder.block(block.fitted, next(remaining), block.id, name, block.yarn, style)
    if edges.base_rows_top:
        recorder.base(edges.base_rows_top, next(remaining), "base-top", say("plan.base-top"), edges.base_yarn_top, closing)
        if hems[1] is not None:
            top_hem(recorder, hems[1], edges.base_yarn_top, design)
    recorder.finish()
    return recorder


def _summary(
    order: list[Arranged],
    columns: list[list[Stretch]],
    edges: Edges,
    hems: tuple[EndHem | None, EndHem | None],
    recorder: Recorder,
    passages: list[Passage],
    changes: list[Change],
    wishes: Wishes,
    sizes: Sizes,
    ground: Ground,
) -> Summary:
    heights = heights_of(columns)
    origin = place(sizes.first_needle)
    threads = [step for step in recorder.steps if isinstance(step, Thread)]
    there = bool(passages) and not edges.base_rows_bottom and ground.yarn is not None  # threaded before the first step
    anew = sum(change.anew for change in changes) - there
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
    for yarn, rows in (
        (edges.base_yarn_bottom, edges.base_rows_bottom + _rows(hems[0])),
        (edges.base_yarn_top, edges.base_rows_top + _rows(hems[1])),
    ):
        if rows:
            edge_stitches[yarn] = edge_stitches.get(yarn, 0) + rows * sizes.needles
    return Summary(
        rows_min=min(heights),
        rows_max=max(heights),
        steepest_fold=fold_of(order, ground.heights),
        ends=anew + cuts,
        ends_inside=inside_starts + cuts_inside,
        free_passes=recorder.free_passes,
        inside_starts=inside_starts,
        slits=slits_of(columns, origin),
        stairs=stairs_of(columns, origin),
        holes=holes_of(order, wishes.style, origin),
        uneven=uneven_of(heights, wishes.shaping.wanted, origin),
        stitches=stitches,
        edge_stitches=edge_stitches,
    )
