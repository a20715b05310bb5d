"""The rest of a piece, planned anew from what is really there: also from a bed that no plan foresaw.

A needle too many was knitted, a hold was forgotten, rows were taken back: only the real rows on each needle count, the needles
in holding position, the carriage and the yarn in the feeder. Yarns that rest on the mast are cut first.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from wedgework.bed import at_place, name, place, range_name
from wedgework.formats.design import Design
from wedgework.formats.plan import Plan
from wedgework.formats.state import State
from wedgework.layout.sizes import Sizes
from wedgework.layout.yarns import unknown_yarn
from wedgework.plan.ground import Ground
from wedgework.plan.order import Searched
from wedgework.plan.piece import hung, made, ordered, sizes_of, wishes_of
from wedgework.plan.regions import chains_of
from wedgework.plan.remaining import remaining
from wedgework.plan.strand import Strand
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["replan"]

HIGHER = 20
"""Rows above the panel that a needle may have; more is a slip of the pen."""
MOST = 20
"""So many problems are told at once."""


def replan(design: Design, state: State) -> Plan:
    """Steps that knit what is left of `design` from this state of the bed. Raises Refused with everything in the way."""
    sizes = sizes_of(design)
    found = _state_problems(design, sizes, state)
    if found:
        raise Refused(found)
    grid = hung(design, sizes)
    wishes = wishes_of(design, sizes, grid)
    ground = _ground(sizes, state)
    reached = [ground.reached(place, wishes.shaping) for place in range(sizes.needles)]
    chains = chains_of(remaining(grid, reached, ground.held))
    if not chains and not design.options.base_rows_top:
        raise Refused([Problem("rows", "state.finished", say("plan.state-finished"), say("plan.state-finished.way-out"))])
    # Wishes for the order name blocks of the whole piece; the rest is divided anew.
    free = replace(design, options=replace(design.options, order=()))
    searched = ordered(free, chains, wishes, ground) if chains else Searched([], Fraction(0), Fraction(0))
    return made(design, sizes, wishes, searched, ground, state)


def _ground(sizes: Sizes, state: State) -> Ground:
    origin = place(sizes.first_needle)
    held = frozenset(place(needle) - origin for needle in state.held)
    if state.feeder is None:
        return Ground(tuple(state.rows), state.carriage, None, None, held)
    hangs = place(state.feeder.needle) - origin
    strand = Strand(hangs, state.rows[hangs], state.carriage)
    return Ground(tuple(state.rows), state.carriage, state.feeder.yarn, strand, held)


def _state_problems(design: Design, sizes: Sizes, state: State) -> list[Problem]:
    """A state that is not one of this design."""
    found: list[Problem] = []
    wanted = range_name(sizes.first_needle, sizes.last_needle)

    def told(where: str, code: str, **values: object) -> None:
        found.append(Problem(where, f"state.{code}", say(f"plan.state-{code}", **values), say(f"plan.state-{code}.way-out")))

    if state.first_needle != sizes.first_needle:
        told("first_needle", "other-needles", found=name(state.first_needle), wanted=wanted)
    if len(state.rows) != sizes.needles:
        told("rows", "needle-count", found=len(state.rows), wanted=sizes.needles)
    if found:
        return found
    for i, rows in enumerate(state.rows):
        if rows > sizes.rows + HIGHER:
            told(f"rows[{i}]", "too-high", needle=name(at_place(place(sizes.first_needle) + i)), found=rows, top=sizes.rows)
    outside = set(state.held) - {at_place(place(sizes.first_needle) + i) for i in range(sizes.needles)}
    for i, needle in enumerate(state.held):
        if needle in outside:
            told(f"held[{i}]", "not-there", needle=name(needle), wanted=wanted)
    ids = [yarn.id for yarn in design.yarns]
    for where, hanging in (("feeder", state.feeder), *((f"mast[{i}]", one) for i, one in enumerate(state.mast))):
        if hanging is None:
            continue
        if hanging.yarn not in ids:
            found.append(unknown_yarn(f"{where}.yarn", hanging.yarn, ids))
        if not 0 <= place(hanging.needle) - place(sizes.first_needle) < sizes.needles:
            told(f"{where}.needle", "not-there", needle=name(hanging.needle), wanted=wanted)
    return found[:MOST]
