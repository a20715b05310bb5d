"""A drawing planned and knitted on the model bed, and what was found, each thing at its place as the finished front is seen."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Any

from wedgework.bed import at_place, place
from wedgework.board.effort import effort_of
from wedgework.draw.outline import Interval, loops, spot, stack_on
from wedgework.exact import nearest
from wedgework.formats.design import Design
from wedgework.formats.plan import Plan, is_edge
from wedgework.layout.sizes import Sizes, resolve
from wedgework.plan import plan_piece
from wedgework.problems import Refused
from wedgework.replay import replay_plan
from wedgework.replay.result import Replay, Run
from wedgework.say import say, say_n
from wedgework.units import decimal_text, short_decimal
from wedgework.yarn.laid import lay
from wedgework.yarn.needs import loop_of, measures_of, needs_of
from wedgework.yarn.path import YarnPath, path_of

__all__ = ["Front", "Judgement", "judge", "judged_value"]

LOOKED_AT = 8
"""Columns of a block among which the place of its number is looked for: it is judged while a person draws."""

Value = int | str | bool | list["Value"] | dict[str, "Value"]


@dataclass(frozen=True, slots=True)
class Judgement:
    plan: Plan
    replay: Replay

    @property
    def design(self) -> Design:
        return self.plan.design


def judge(design: Design) -> Judgement:
    """Raises Refused where the design cannot be planned, or where the model bed refuses the plan."""
    plan = plan_piece(design)
    replay = replay_plan(plan)
    if replay.problems:
        raise Refused(replay.problems)
    return Judgement(plan, replay)


@dataclass(frozen=True, slots=True)
class Front:
    """From places on the bed to the picture as it is seen from the front; a part of a wider picture lies where it belongs."""

    sizes: Sizes
    origin: int
    shift: int

    @classmethod
    def of(cls, plan: Plan) -> Front:
        part = plan.design.panel.part
        return cls(resolve(plan.design), place(plan.first_needle), 0 if part is None else part.first - 1 - part.seam_left)

    def needle(self, at: int) -> int:
        """The left side of a place's stitch, in needles of the picture."""
        return self.sizes.needles - 1 - at + self.shift

    def after(self, needle: int) -> int:
        """The border at the right of a needle, seen from the bed."""
        return self.needle(place(needle) - self.origin)

    def middle(self, needle: int) -> int:
        """The middle of a needle's stitch, in half needles."""
        return 2 * self.after(needle) + 1

    def at(self, x: Fraction) -> int:
        """The needle at a place of the picture, or the one nearest to it."""
        column = min(max(int(x) - self.shift, 0), self.sizes.needles - 1)
        return at_place(self.origin + self.sizes.needles - 1 - column)


def judged_value(found: Judgement) -> dict[str, Any]:
    """Only text, whole numbers, lists and objects. Places as two numbers: half needles and rows, except for outlines and numbers
    of blocks, which count whole needles."""
    plan, replay = found.plan, found.replay
    front = Front.of(plan)
    sizes = front.sizes
    path = path_of(plan, replay)
    summary, piece = replay.summary, replay.piece
    slits: list[Value] = []
    for slit in summary.slits:
        first, last = front.after(slit.needle), front.after(slit.to_needle or slit.needle)
        slits.append({"from": [2 * first, slit.from_row - 1], "to": [2 * last, _slit_top(slit.from_row, slit.rows, first, last)]})
    stairs: list[Value] = [
        {
            "from": [front.middle(stair.needle), stair.from_row],
            "to": [front.middle(stair.to_needle), stair.to_row],
            "widest": stair.widest,
        }
        for stair in summary.stairs
    ]
    return {
        "blocks": _blocks(found, sizes, front),
        "ends": _ends(replay, path, front),
        "slits": slits,
        "stairs": stairs,
        "holes": [[front.middle(hole.needle), piece.in_picture(hole.needle, hole.row)] for hole in summary.holes],
        "uneven": [[front.middle(one.needle), piece.in_picture(one.needle, one.rows)] for one in summary.uneven],
        "levels": [summary.rows_min, summary.rows_max],
        "figures": _figures(found, sizes),
        "yarns": _yarns(found, path),
        "warnings": [{"code": one.code, "sentence": one.sentence, "way_out": one.way_out} for one in replay.warnings],
        "effort": {**effort_of(plan, replay).value()},
    }


def _slit_top(from_row: int, rows: int, first: int, last: int) -> int:
    """Its rows are counted over all its steps; a step that lies beside the one before reaches no higher for that."""
    return from_row - 1 + rows + 2 * max(abs(last - first) - 1, 0)


def _blocks(found: Judgement, sizes: Sizes, front: Front) -> list[Value]:
    plan, columns = found.plan, found.replay.piece.columns
    runs: dict[str, dict[int, tuple[Interval, ...]]] = {}
    for at, column in enumerate(columns):
        for run in column:
            stack_on(runs.setdefault(run.block, {}), front.needle(at), run.low, run.high)
    values: list[Value] = []
    for number, block in enumerate((b for b in plan.blocks if not is_edge(b.id)), 1):
        if block.id not in runs:
            continue
        whole = runs[block.id]
        x, y, across, up = spot(whole, sizes.stitch_mm, sizes.row_mm, LOOKED_AT)
        values.append(
            {
                "number": number,
                "id": block.id,
                "yarn": block.yarn,
                "name": block.name,
                "at": [nearest(2 * x), nearest(y)],
                "free": [across, up],
                "rows": found.replay.block_rows.get(block.id, 0),
                "stitches": found.replay.block_stitches.get(block.id, 0),
                "outline": [[[*corner] for corner in loop] for loop in loops(whole)],
            }
        )
    return values


def _ends(replay: Replay, path: YarnPath, front: Front) -> list[Value]:
    """Where a yarn begins or is cut; those at the edges of the piece are worked into a seam or an edging."""
    found: list[Value] = []
    for tails, places in ((path.anew, path.first), (path.cut, path.last)):
        for at, count in tails.items():
            if count <= 0:
                continue
            spot_ = places[at]
            row = _row_of(replay.piece.columns[spot_], at + 1, replay.piece.rows_below)
            found.append({"at": [2 * front.needle(spot_) + 1, row], "inside": 0 < spot_ < path.needles - 1})
    return found


def _row_of(column: tuple[Run, ...], at_pass: int, below: int) -> int:
    """The row of the picture that a pass has on one needle: where it is of the base rows or a hem, the nearest edge."""
    for run in column:
        if run.first_pass <= at_pass <= run.last_pass:
            return run.low + min(at_pass - run.first_pass, run.rows - 1)
    return 0 if at_pass <= below or not column else column[-1].high


def _figures(found: Judgement, sizes: Sizes) -> list[Value]:
    """Label and value, in the order in which a knitter asks."""
    summary, plan = found.replay.summary, found.plan
    rows = f"{summary.rows_min}" if summary.rows_min == summary.rows_max else f"{summary.rows_min}-{summary.rows_max}"
    minutes = "" if plan.handling is None else decimal_text(plan.handling.minutes, 0)
    width, height = (decimal_text(mm / 10, 1) for mm in (sizes.width_mm, sizes.height_mm))
    pairs = (
        ("size", say("board.size", width=width, height=height)),
        ("needles", f"{sizes.needles}"),
        ("rows", rows),
        ("blocks", f"{sum(not is_edge(block.id) for block in plan.blocks)}"),
        ("ends", say("board.figure-ends-inside", ends=summary.ends, inside=summary.ends_inside)),
        ("slits", f"{len(summary.slits)}"),
        ("stairs", f"{len(summary.stairs)}"),
        ("fold", say_n("common.rows", summary.steepest_fold)),
        ("minutes", minutes),
    )
    return [{"key": key, "label": say(f"board.figure-{key}"), "value": value} for key, value in pairs if value]


def _yarns(found: Judgement, path: YarnPath) -> list[Value]:
    design, summary = found.design, found.replay.summary
    measures = {yarn.id: measures_of(loop_of(yarn, design).mm, design) for yarn in design.yarns}
    needs = needs_of(lay(path, measures))
    values: list[Value] = []
    for yarn in design.yarns:
        stitches = summary.stitches.get(yarn.id, 0) + summary.edge_stitches.get(yarn.id, 0)
        if stitches:
            metres = needs.total_mm(yarn.id) / 1000
            words = say("board.yarn-metres", metres=short_decimal(metres, 0), stitches=stitches)
            values.append({"id": yarn.id, "name": yarn.name, "stitches": stitches, "metres": nearest(metres), "said": words})
    return values
