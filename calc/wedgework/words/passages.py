"""A plan cut where the knitter would cut it: each block has an opening (the check list before its first row) and
then handfuls, each some moves and the rows that follow until needles move again."""

from __future__ import annotations

from dataclasses import dataclass, replace

from wedgework.formats.plan import Block, Knit, Plan, Step
from wedgework.words.grouping import Grouped, Leaf, Literally, group, read
from wedgework.words.walk import Bed, step_over

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

    @property
    def ready(self) -> Bed:
        """The bed after the moves, before the first row."""
        bed = self.bed
        for step in self.moves:
            bed = step_over(bed, step)
        return bed

    @property
    def done(self) -> Bed:
        """The bed after the last row."""
        bed = self.ready
        for step in self.passes:
            bed = step_over(bed, step)
        return bed

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
        return group(tuple(handful.leaf for handful in self.handfuls))

    @property
    def is_picture(self) -> bool:
        return self.block is not None and self.number > 0

    @property
    def done(self) -> Bed:
        return self.handfuls[-1].done if self.handfuls else self.opening.ready


def passages(plan: Plan) -> tuple[Passage, ...]:
    """The plan block by block; the last passage holds what follows the last row (maybe nothing)."""
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
            between = handful.first + len(handful.moves)
            opening = Handful(handful.first, between - 1, handful.bed, handful.moves, ())
            fresh = replace(handful.ready, block=handful.passes[0].block, block_row=0)
            handfuls = [Handful(between, handful.last, fresh, (), handful.passes)]
        else:
            handfuls.append(handful)
    raise AssertionError("the last handful has no passes")


def is_edge(block_id: str) -> bool:
    """Base rows and hems, by the names that the plan format gives them."""
    return block_id.startswith(("base", "hem"))


def _handfuls(plan: Plan) -> list[Handful]:
    """Moves and the rows after them, in order; the last one has no rows."""
    found: list[Handful] = []
    bed = Bed.at_start(plan)
    first, moves, passes, start = 0, list[Step](), list[Knit](), bed
    for index, step in enumerate(plan.steps):
        same = isinstance(step, Knit) and (not passes or passes[-1].block == step.block)
        if passes and not same:
            found.append(Handful(first, index - 1, start, tuple(moves), tuple(passes)))
            first, moves, passes, start = index, [], [], bed
        if isinstance(step, Knit):
            passes.append(step)
        else:
            moves.append(step)
        bed = step_over(bed, step)
    if passes:
        found.append(Handful(first, len(plan.steps) - 1, start, tuple(moves), tuple(passes)))
        first, moves, start = len(plan.steps), [], bed
    found.append(Handful(first, len(plan.steps) - 1, start, tuple(moves), ()))
    return found
