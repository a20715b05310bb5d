"""Scraps: which leftover for which block of a piece, so that none runs out inside one; or what is missing."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from wedgework.bed import float_limit
from wedgework.calculators import panel_plan
from wedgework.calculators.layout_fields import yarn_problems
from wedgework.calculators.leftovers import Leftover, read_fixed, read_leftovers
from wedgework.calculators.plan_groups import PLAN_GROUPS
from wedgework.calculators.scraps_view import Change, Shown, scraps_values, scraps_view
from wedgework.declare import Calculator, Group, Inputs, Result, choice, decimal, length, lines, whole
from wedgework.exact import down, up
from wedgework.formats.plan import Plan
from wedgework.layout.sizes import figures
from wedgework.problems import Problem, Refused
from wedgework.replay.result import Replay
from wedgework.say import say
from wedgework.yarn.alike import difference
from wedgework.yarn.beside import neighbours
from wedgework.yarn.laid import lay
from wedgework.yarn.loops import from_gauge
from wedgework.yarn.needs import measures_of, needs_of
from wedgework.yarn.path import YarnPath, between, path_of
from wedgework.yarn.scraps import Found, Task, assign, shortage

__all__ = ["CALCULATOR", "assigned"]

BLOCKS, AREAS = "blocks", "areas"
MOST_BLOCKS = 300
CLIMB = 8
"""Rows that a strand may climb before the yarn must be cut. Common practice, no source."""
FEWER_NODES = 8_000
"""For each of the changes that are tried when it cannot be done."""
MOST_NEW_COLOURS = 3
"""Four colours do for every map."""


@dataclass(frozen=True, slots=True)
class _Piece:
    """What does not hang on the leftovers: blocks in knitting order, without base rows."""

    names: tuple[str, ...]
    mm: tuple[Fraction, ...]
    areas: tuple[int, ...]
    beside: tuple[tuple[int, int, bool], ...]
    carried: tuple[bool, ...]
    others_mm: Fraction
    """Base rows, cast-on and binding off with their ends: of any yarn, not one of the leftovers."""


def _say(key: str, **values: object) -> str:
    return say(f"calculators.scraps.{key}", **values)


def compute(inputs: Inputs) -> Result:
    """The blocks' own yarn comes from the replay; the assignment is searched for and never guessed."""
    shown, warnings = assigned(inputs)
    return Result(scraps_values(shown), scraps_view(shown), warnings)


def assigned(inputs: Inputs) -> tuple[Shown, tuple[Problem, ...]]:
    """What was found, and what the plan warns of. Raises Refused."""
    leftovers = read_leftovers("leftovers", inputs.text("leftovers"))
    plan, judged = panel_plan.planned(inputs)
    path = path_of(plan, judged)
    piece = _piece(inputs, plan, judged, path)
    fixed = read_fixed("fixed", inputs.text("fixed"), leftovers, len(piece.names)) if inputs.has("fixed") else {}
    margin, least, kinds = inputs.number("margin_percent"), inputs.number("least_difference"), inputs.whole("most_kinds")

    def task(margin: Fraction = margin, least: Fraction = least, kinds: int = kinds) -> Task:
        return _task(piece, leftovers, fixed, _needs(piece, inputs, margin), least, kinds)

    found = assign(task())
    changes: list[Change] = [] if isinstance(found, Found) else _changes(task, leftovers, margin, least, kinds)
    shown = Shown(_needs(piece, inputs, margin), leftovers, found, tuple(changes), piece.others_mm, plan, path)
    return shown, judged.warnings


def _piece(inputs: Inputs, plan: Plan, judged: Replay, path: YarnPath) -> _Piece:
    design = plan.design
    loop = inputs.mm("loop") if inputs.has("loop") else from_gauge(*figures(design.gauge)).mm
    measures = {yarn.id: measures_of(loop, design, inputs.mm("tail")) for yarn in design.yarns}
    needs = needs_of(lay(path, measures))
    blocks = needs.blocks
    if len(blocks) > MOST_BLOCKS:
        sentence = _say("blocks-many", found=len(blocks))
        raise Refused([Problem("layout", "scraps.blocks", sentence, _say("blocks.way-out", most=MOST_BLOCKS))])
    number = {block.block: i for i, block in enumerate(blocks)}
    pairs = sorted(sorted((number[a], number[b])) for a, b in neighbours(judged.piece) if a in number and b in number)
    same = {(i, k) for i, k in pairs if blocks[i].yarn == blocks[k].yarn}
    areas = _areas(len(blocks), same) if inputs.text("each") == AREAS else tuple(range(len(blocks)))
    limit = float_limit(design.bed.pitch_mm)
    in_path = [i for i, stretch in enumerate(path.stretches) if not stretch.outside]

    def goes_on(i: int) -> bool:
        if i == 0 or in_path[i] != in_path[i - 1] + 1:
            return False
        over, climb = between(path, judged, in_path[i - 1])
        return over <= limit and climb <= CLIMB

    others = sum((mm for mm in (needs.total_mm(yarn.id) - needs.blocks_mm(yarn.id) for yarn in design.yarns)), Fraction(0))
    ends = sum((needs.beside(yarn.id, "ends") for yarn in design.yarns), Fraction(0))
    return _Piece(
        tuple(block.name.partition(",")[0] for block in blocks),
        tuple(block.mm for block in blocks),
        areas,
        tuple((i, k, (i, k) in same) for i, k in pairs),
        tuple(goes_on(i) for i in range(len(blocks))),
        others - ends,
    )


def _areas(count: int, same: set[tuple[int, int]]) -> tuple[int, ...]:
    """Blocks of one yarn that touch are one area."""
    areas = list(range(count))
    for i, k in sorted(same):
        one, other = sorted((areas[i], areas[k]))
        areas = [one if area == other else area for area in areas]
    return tuple(areas)


def _needs(piece: _Piece, inputs: Inputs, margin: Fraction) -> tuple[int, ...]:
    """Whole mm, rounded up: the block with the margin, and two ends."""
    return tuple(up(mm * (1 + margin / 100) + 2 * inputs.mm("tail")) for mm in piece.mm)


def _task(
    piece: _Piece,
    leftovers: tuple[Leftover, ...],
    fixed: dict[int, int],
    needs: tuple[int, ...],
    least: Fraction,
    most_kinds: int,
) -> Task:
    kinds = sorted({one.kind.casefold() for one in leftovers})
    return Task(
        needs=needs,
        stocks=tuple(down(one.metres * 1000) for one in leftovers),
        may=tuple((fixed[i],) if i in fixed else tuple(range(len(leftovers))) for i in range(len(needs))),
        areas=piece.areas,
        beside=piece.beside,
        distinct=tuple(tuple(Fraction(difference(a.colour, b.colour)) >= least for b in leftovers) for a in leftovers),
        kinds=tuple(kinds.index(one.kind.casefold()) for one in leftovers),
        most_kinds=most_kinds,
        carried=piece.carried,
    )


def _changes(
    task: Callable[..., Task], leftovers: tuple[Leftover, ...], margin: Fraction, least: Fraction, kinds: int
) -> list[Change]:
    """What is missing at the least, and each single change that would do; the search for each is a short one."""
    changes: list[Change] = []
    if more := _more(task(), leftovers, "more-yarn"):
        changes.append(more)
    low, high = 0, down(margin)
    if high > 0 and _does(task(margin=Fraction(0))):
        while high - low > 1:
            middle = (low + high) // 2
            low, high = (middle, high) if _does(task(margin=Fraction(middle))) else (low, middle)
        changes.append(Change("margin", figure=Fraction(low)))
    for smaller in (least * part for part in (Fraction(3, 4), Fraction(1, 2), Fraction(1, 4), Fraction(0))):
        if _does(task(least=smaller)):
            changes.append(Change("difference", figure=smaller))
            break
    if _does(task(kinds=kinds + 1)):
        changes.append(Change("kinds", figure=Fraction(kinds + 1)))
    return changes or _two_changes(task, leftovers, least, kinds)


def _two_changes(task: Callable[..., Task], leftovers: tuple[Leftover, ...], least: Fraction, kinds: int) -> list[Change]:
    """Where no single change would do: more yarn together with a rule that is eased, or with colours that are not there yet."""
    changes: list[Change] = []
    for smaller in (least * Fraction(1, 2), Fraction(0)):
        if more := _more(task(least=smaller), leftovers, "difference", Fraction(smaller)):
            changes.append(more)
            break
    if more := _more(task(kinds=kinds + 1), leftovers, "kinds", Fraction(kinds + 1)):
        changes.append(more)
    for count in range(1, MOST_NEW_COLOURS + 1):
        if more := _more(task().with_others(count), leftovers, "colours", Fraction(count)):
            changes.append(more)
            break
    return changes


def _more(task: Task, leftovers: tuple[Leftover, ...], what: str, figure: Fraction | None = None) -> Change | None:
    """The yarn that is missing at the least; of what is no leftover yet, in metres."""
    lacks = shortage(task, FEWER_NODES)
    if lacks is None or not any(lacks.missing):
        return None
    grams = {one.name: Fraction(mm, 1000) / one.metres_per_gram for one, mm in zip(leftovers, lacks.missing, strict=False) if mm}
    others = tuple(Fraction(mm, 1000) for mm in lacks.missing[len(leftovers) :])
    known = max(lacks.leftovers) < len(leftovers)
    return Change(what, figure, grams, lacks.proved, lacks.leftovers if known else (), others)


def _does(task: Task) -> bool:
    return isinstance(assign(task, FEWER_NODES), Found)


# Of our own invention.
_LEFTOVERS = """#efe8d8 Chalk, 180 g, 1.2 m/g, wool
#3f5566 Slate, 90 g, 1.2 m/g, wool
#b4533f Rust, 75 g, 1.2 m/g, wool
#7a8f5a Moss, 80 g, 1.2 m/g, wool
#d9a441 Amber, 70 g, 1.2 m/g, cotton
#6d4a6b Plum, 90 g, 1.2 m/g, wool
#a9c1c9 Mist, 140 g, 1.2 m/g, wool"""

CALCULATOR = Calculator(
    "scraps",
    (
        Group("leftovers", (lines("leftovers", _LEFTOVERS, longest=4000), lines("fixed", "", longest=1000, optional=True))),
        Group(
            "rules",
            (
                decimal("margin_percent", "10", 0, 100, "percent"),
                decimal("least_difference", "10", 0, 100),
                whole("most_kinds", "2", 1, 40),
                choice("each", BLOCKS, (BLOCKS, AREAS)),
            ),
        ),
        Group("stitch", (length("loop", "", 1, 300, "mm", optional=True), length("tail", "18 cm", 5, 60, "cm"))),
        *PLAN_GROUPS,
    ),
    compute,
    yarn_problems,
)
