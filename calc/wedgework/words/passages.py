"""A plan cut where the knitter would cut it: each block has an opening (the check list before its first row) and
then handfuls, each some moves and the rows that follow until needles move again."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

from wedgework.formats.plan import Block, Free, Knit, Plan, Step, Thread, is_edge
from wedgework.words.grouping import Grouped, Leaf, Literally, group, read
from wedgework.words.walk import Bed, edge_line, step_over

__all__ = ["Handful", "Passage", "passages"]


@dataclass(frozen=True, slots=True)
class Handful:
    """Steps `first` ... `last` (both counted; `last` is one less than `first` when there is none): moves, then rows."""

    first: int
    last: int
    bed: Bed
    """Before the first step."""
    moves: tuple[Step, ...]
    passes: tuple[Knit, ...]
    ready: Bed
    """After the moves, before the first row."""
    done: Bed
    """After the last row."""

    @classmethod
    def of(cls, first: int, bed: Bed, moves: Sequence[Step], passes: Sequence[Knit]) -> Handful:
        """The handful that begins with step `first` on `bed`."""
        ready = bed
        for step in moves:
            ready = step_over(ready, step)
        done = ready
        for step in passes:
            done = step_over(done, step)
        return cls(first, first + len(moves) + len(passes) - 1, bed, tuple(moves), tuple(passes), ready, done)

    @property
    def leaf(self) -> Leaf:
        """The same, counted from the carriage."""
        leaves = read(self.bed, (*self.moves, *self.passes))
        if len(leaves) == 1:
            return leaves[0]
        return Leaf(tuple(Literally(step) for step in (*self.moves, *self.passes)), 0)


@dataclass(frozen=True, slots=True)
class Passage:
    """One block: `block` is None for steps after the last row of the piece."""

    block: Block | None
    number: int
    """1, 2, 3 ... in knitting order; 0 for base rows, hems and what follows the last row."""
    opening: Handful
    """Everything before the first row, no passes."""
    handfuls: tuple[Handful, ...]
    """The first one has no moves."""

    @property
    def grouped(self) -> Grouped:
        """The handfuls with their repeats."""
        return group(self.leaves)

    @property
    def leaves(self) -> tuple[Leaf, ...]:
        """The handfuls one by one, counted from the carriage."""
        return tuple(handful.leaf for handful in self.handfuls)

    @property
    def is_picture(self) -> bool:
        return self.block is not None and self.number > 0

    @property
    def done(self) -> Bed:
        return self.handfuls[-1].done if self.handfuls else self.opening.ready


# Of the last plan: its cues and its instructions are most often asked for together.
_last: list[tuple[Plan, tuple[Passage, ...]]] = []


def passages(plan: Plan) -> tuple[Passage, ...]:
    """The plan block by block; the last passage holds what follows the last row (maybe nothing)."""
    if not _last or _last[0][0] is not plan:
        _last[:] = [(plan, _passages(plan))]
    return _last[0][1]


def _passages(plan: Plan) -> tuple[Passage, ...]:
    blocks = {block.id: block for block in plan.blocks}
    picture = [block.id for block in plan.blocks if not is_edge(block.id)]
    found: list[Passage] = []
    opening: Handful | None = None
    handfuls: list[Handful] = []

    def close() -> None:
        if opening is not None and handfuls:
            block = handfuls[0].passes[0].block
            number = picture.index(block) + 1 if block in picture else 0
            found.append(Passage(blocks.get(block), number, opening, tuple(handfuls)))

    for handful in _handfuls(plan):
        if not handful.passes:
            close()
            found.append(Passage(None, 0, handful, ()))
            return tuple(found)
        if not handfuls or handfuls[0].passes[0].block != handful.passes[0].block:
            close()
            opening = Handful.of(handful.first, handful.bed, handful.moves, ())
            fresh = replace(_beside_its_needles(handful), block=handful.passes[0].block, block_row=0)
            handfuls = [Handful.of(opening.last + 1, fresh, (), handful.passes)]
        else:
            handfuls.append(handful)
    raise AssertionError("the last handful has no passes")


def _beside_its_needles(handful: Handful) -> Bed:
    """The bed before the first row of a block: the check list has brought the carriage to its end needle where a yarn was
    threaded or the carriage was in the way; where the yarn knits on, it stands where it stood."""
    bed = handful.ready
    if not bed.working:
        return bed
    line = edge_line(bed.working, bed.carriage)
    moved = any(isinstance(step, Thread | Free) for step in handful.moves)
    in_the_way = bed.beside < line if bed.carriage == "R" else bed.beside > line
    return replace(bed, beside=line) if moved or in_the_way else bed


def _handfuls(plan: Plan) -> list[Handful]:
    """Moves and the rows after them, in order; the last one has no rows."""
    found: list[Handful] = []
    bed, first = Bed.at_start(plan), 0
    moves, passes = list[Step](), list[Knit]()
    for step in plan.steps:
        if passes and not (isinstance(step, Knit) and passes[-1].block == step.block):
            found.append(Handful.of(first, bed, moves, passes))
            bed, first = found[-1].done, found[-1].last + 1
            moves, passes = [], []
        if isinstance(step, Knit):
            passes.append(step)
        else:
            moves.append(step)
    if passes:
        found.append(Handful.of(first, bed, moves, passes))
        bed, first, moves = found[-1].done, found[-1].last + 1, []
    found.append(Handful.of(first, bed, moves, ()))
    return found
