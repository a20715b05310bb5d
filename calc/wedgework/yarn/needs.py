"""How much yarn a piece takes: block by block along the replayed path, and beside the blocks what else runs off the cone.

    needs = needs_of(lay(path_of(plan, judged), measures))
    needs.blocks[0].mm, needs.total_mm("a"), needs.beside("a", "ends")

A block's own yarn is that of its stitches and of the strands that it lays over held needles; ends, cast-on and binding
off, base rows and hems stand beside it. Lengths in mm, exact.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.exact import nearest
from wedgework.formats.design import Design, Yarn
from wedgework.formats.plan import Plan
from wedgework.layout.sizes import figures, resolve
from wedgework.replay.result import Replay
from wedgework.yarn.laid import Laid, Measures, lay
from wedgework.yarn.loops import Loop, from_gauge
from wedgework.yarn.path import path_of

__all__ = [
    "TAIL_MM",
    "BesideKind",
    "BlockNeed",
    "Needs",
    "loop_of",
    "measures_of",
    "needs_of",
    "planned_measures",
    "planned_needs",
]

TAIL_MM = Fraction(180)
"""A yarn end, 15 to 20 cm. Common practice, no source."""

BesideKind = Literal["base", "edges", "ends"]


@dataclass(frozen=True, slots=True)
class BlockNeed:
    """One block of the picture, in knitting order."""

    block: str
    name: str
    yarn: str
    stitches: int
    mm: Fraction
    """Stitches and strands."""
    strands_mm: Fraction
    tails: int


@dataclass(frozen=True, slots=True)
class Needs:
    blocks: tuple[BlockNeed, ...]
    others: Mapping[tuple[str, BesideKind], Fraction]
    """By yarn and kind, mm: base rows and hems of the plan; cast-on and binding off; ends."""
    skipped: Mapping[str, Fraction]
    """By yarn, mm wound off so that blocks begin with their colour."""

    def blocks_mm(self, yarn: str) -> Fraction:
        return sum((block.mm for block in self.blocks if block.yarn == yarn), Fraction(0))

    def beside(self, yarn: str, kind: BesideKind) -> Fraction:
        return self.others.get((yarn, kind), Fraction(0))

    def total_mm(self, yarn: str) -> Fraction:
        """All that the plan lays of this yarn."""
        others = sum((mm for (of, _), mm in self.others.items() if of == yarn), Fraction(0))
        return self.blocks_mm(yarn) + others + self.skipped.get(yarn, Fraction(0))


def needs_of(laid: Laid) -> Needs:
    """The yarn of a path that was laid."""
    blocks: list[BlockNeed] = []
    others: dict[tuple[str, BesideKind], Fraction] = {}
    skipped: dict[str, Fraction] = {}

    def add(yarn: str, kind: BesideKind, um: int) -> None:
        if um:
            others[yarn, kind] = others.get((yarn, kind), Fraction(0)) + Fraction(um, 1000)

    for number, stretch in enumerate(laid.path.stretches):
        knitted, strands, tails = laid.knitted(stretch), laid.strands[number], laid.tails[number]
        stitches = sum(laid.path.stitches[stretch.begin : stretch.end])
        mm = Fraction(knitted + strands, 1000)
        if stretch.outside:
            add(stretch.yarn, "base", knitted + strands)
        else:
            blocks.append(BlockNeed(stretch.block, stretch.name, stretch.yarn, stitches, mm, Fraction(strands, 1000), tails))
        add(stretch.yarn, "edges", laid.edges[number])
        add(stretch.yarn, "ends", tails * laid.measures[stretch.yarn].tail)
        skipped[stretch.yarn] = skipped.get(stretch.yarn, Fraction(0)) + Fraction(laid.skipped[number], 1000)
    return Needs(tuple(blocks), others, skipped)


def loop_of(yarn: Yarn, design: Design) -> Loop:
    """The loop by the geometry of the yarn's own gauge, or of the piece's where the yarn has none."""
    gauge = yarn.gauge or design.gauge
    return from_gauge(*figures(gauge))


def measures_of(loop_mm: Fraction, design: Design, tail_mm: Fraction = TAIL_MM) -> Measures:
    """In whole micrometres, as `lay` takes them."""
    sizes = resolve(design)
    return Measures(
        loop=max(nearest(loop_mm * 1000), 1),
        tail=nearest(tail_mm * 1000),
        pitch=nearest(design.bed.pitch_mm * 1000),
        row=nearest(sizes.row_mm * 1000),
    )


def planned_needs(plan: Plan, judged: Replay) -> Needs:
    """What the planner can say before anything was weighed: loops by geometry alone, 10 per cent either way."""
    return needs_of(lay(path_of(plan, judged), planned_measures(plan.design)))


def planned_measures(design: Design) -> dict[str, Measures]:
    """Each yarn by the geometry of its gauge."""
    return {yarn.id: measures_of(loop_of(yarn, design).mm, design) for yarn in design.yarns}
