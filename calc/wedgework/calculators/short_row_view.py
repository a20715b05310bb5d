"""What the short-row shape shows: size, angles got and wanted, needles a turn, the block in words and as steps at the machine."""

from __future__ import annotations

from collections import Counter
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from html import escape

from wedgework.angles import PI
from wedgework.calculators.short_row_steps import Edge, Turn, Wraps
from wedgework.declare import Bullets, Figure, Figures, Picture, Plain, Table, Written
from wedgework.declare import Shown as Part
from wedgework.draw import front_svg, levels_svg
from wedgework.exact import nearest_part
from wedgework.formats.plan import Plan
from wedgework.layout import Shaping, resolve
from wedgework.replay.result import Replay
from wedgework.say import say, say_n
from wedgework.units import both_text, decimal_text, signed_text
from wedgework.words import Cue, cues
from wedgework.words.instructions import block_sections

__all__ = ["Shown", "shape_values", "shape_view"]


def _say(key: str, **values: object) -> str:
    return say(f"calculators.short-row-shape.{key}", **values)


def _n(key: str, n: int, **values: object) -> str:
    return say_n(f"calculators.short-row-shape.{key}", n, **values)


@dataclass(frozen=True)
class Shown:
    plan: Plan
    judged: Replay
    blocks: tuple[str, ...]
    """Ids of the blocks that make the shape; one, unless it has to be knitted in parts."""
    edges: tuple[Edge, ...]
    turns: tuple[Turn, ...]
    wraps: Wraps
    steepest: Fraction
    """Degrees of an edge that moves one needle every two rows."""
    title: str
    shaping: Shaping | None = None
    """Of a piece that is shaped on purpose, as seen from the front."""
    turned: Fraction | None = None
    """Degrees that a wedge is meant to turn by."""

    @property
    def off(self) -> tuple[int, ...]:
        """Rows that each needle has more than the shaping wants, from the left of the front; none of a flat piece."""
        return () if self.shaping is None else rows_off(self.judged, self.shaping)

    @cached_property
    def cues(self) -> tuple[Cue, ...]:
        return cues(self.plan, self.blocks)

    @property
    def rows(self) -> int:
        return sum(self.judged.block_rows.get(block, 0) for block in self.blocks)

    @property
    def stitches(self) -> int:
        return sum(self.judged.block_stitches.get(block, 0) for block in self.blocks)


def rows_off(judged: Replay, shaping: Shaping) -> tuple[int, ...]:
    """Rows that each needle has more than are wanted, from the left of the front."""
    return tuple(own - wanted for own, wanted in zip(_rows(judged), shaping.wanted, strict=True))


def _rows(judged: Replay) -> list[int]:
    """Rows of each needle, from the left of the front."""
    return [sum(run.rows for run in column) for column in judged.piece.columns[::-1]]


def shape_values(shown: Shown) -> dict[str, Plain]:
    """Figures of the replay; `cues` are the block's steps at the machine in one line each."""
    sizes, found = resolve(shown.plan.design), shown.judged.summary
    shaped: dict[str, Plain] = {}
    if shown.shaping is not None:
        shaped = {"rows_wanted": list(shown.shaping.wanted), "rows_got": _rows(shown.judged)}
    if shown.turned is not None:
        shaped |= {"turned_degrees": shown.turned, "turned_got": _turned(shown)}
    return {
        "needles": sizes.needles,
        "rows": sizes.rows,
        "width_mm": sizes.width_mm,
        "height_mm": sizes.height_mm,
        "block_rows": shown.rows,
        "block_stitches": shown.stitches,
        "parts": len(shown.blocks),
        "edges": [
            {
                "edge": edge.slope.key,
                "angle_wanted": edge.slope.wanted,
                "angle_got": edge.got,
                "needles": edge.needles,
                "rows": edge.rows,
            }
            for edge in shown.edges
        ],
        "steepest_angle": shown.steepest,
        "turns": [{"rows": turn.rows, "left": turn.left, "right": turn.right} for turn in shown.turns],
        "wraps": shown.wraps.by_itself,
        "wraps_by_hand": shown.wraps.by_hand,
        "turns_at_selvedge": shown.wraps.at_selvedge,
        "turns_open": shown.wraps.open,
        "holes": len(found.holes),
        "slits": len(found.slits),
        "rows_min": found.rows_min,
        "rows_max": found.rows_max,
        "cues": [_line(cue) for cue in shown.cues],
        **shaped,
    }


def _turned(shown: Shown) -> Fraction:
    """Degrees between the edges of a fan: what its last needle has more than its first, over the way between their middles."""
    sizes, rows = resolve(shown.plan.design), _rows(shown.judged)
    way = (sizes.needles - 1) * sizes.stitch_mm
    return nearest_part(180 * abs(rows[-1] - rows[0]) * sizes.row_mm / (PI * way), 1000) if way else Fraction(0)


def shape_view(shown: Shown) -> tuple[Part, ...]:
    sections = block_sections(shown.plan, shown.judged, shown.blocks)
    kind, levels = "", list[Part]()
    if shown.shaping is not None:
        drawing = levels_svg(shown.plan, shown.judged, prefix="shape-levels")
        kind, levels = "-shaped", [Picture(_say("levels"), drawing, _say("levels-caption"))]
    return (
        _main(shown),
        Picture(_say("picture"), front_svg(shown.plan, shown.judged, prefix="shape"), _say(f"picture-caption{kind}")),
        *levels,
        _angles(shown.edges),
        _steps(shown.turns),
        *(Bullets(section.title, section.sentences, ordered=True) for section in sections),
        _cues(shown.cues),
    )


def _main(shown: Shown) -> Figures:
    sizes, found, wraps = resolve(shown.plan.design), shown.judged.summary, shown.wraps
    hand = _n("wraps-hand", wraps.by_hand) if wraps.by_hand else ""
    return Figures(
        shown.title,
        (
            Figure(_say("needles"), f"{sizes.needles}", both_text(sizes.width_mm), "needles"),
            Figure(_say("rows-high"), f"{sizes.rows}", both_text(sizes.height_mm), "rows"),
            Figure(_say("block-rows"), f"{shown.rows}", _n("parts", len(shown.blocks)), "block_rows"),
            Figure(_say("stitches"), f"{shown.stitches}", "", "block_stitches"),
            Figure(
                _say("wraps"),
                f"{wraps.by_itself}",
                _say("wraps-note", selvedge=wraps.at_selvedge, open=wraps.open) + hand,
                "wraps",
            ),
            Figure(_say("holes"), f"{len(found.holes)}", "", "holes"),
            Figure(_say("slits"), f"{len(found.slits)}", _say("slits-note"), "slits"),
            *_shaped_figures(shown),
            Figure(_say("steepest"), _degrees(shown.steepest), _say("steepest-note"), "steepest_angle"),
        ),
    )


def _shaped_figures(shown: Shown) -> tuple[Figure, ...]:
    """How the rows came out, and what a fan turns by."""
    if shown.shaping is None:
        return ()
    rows, exact = _rows(shown.judged), shown.off.count(0)
    note = _say("exact-all")
    if exact < len(rows):
        note = _say("exact", exact=exact, needles=len(rows), off=say_n("common.rows", max(map(abs, shown.off))))
    found = [Figure(_say("rows-each"), _say("from-to", least=min(rows), most=max(rows)), note, "rows_got")]
    if shown.turned is not None:
        note = _say("turned-note", got=_degrees(_turned(shown)), circle=decimal_text(360 / shown.turned, 2))
        found.append(Figure(_say("turned"), _degrees(shown.turned), note, "turned_degrees"))
    return tuple(found)


def _degrees(angle: Fraction) -> str:
    return f"{decimal_text(angle, 1)}\u00b0"


def _angles(edges: Sequence[Edge]) -> Table:
    rows = []
    for edge in edges:
        got = _say("no-angle") if edge.got is None else _degrees(edge.got)
        off = "" if edge.got is None else f"{signed_text(edge.got - edge.slope.wanted, 1)}\u00b0"
        needles, up = say_n("common.needles", edge.needles), say_n("common.rows", edge.rows)
        rows.append((_say(f"edge-{edge.slope.key}"), _degrees(edge.slope.wanted), got, off, needles, up))
    heads = tuple(_say(f"angles-{key}") for key in ("edge", "wanted", "got", "off", "needles", "rows"))
    return Table(_say("angles"), heads, tuple(rows))


def _steps(turns: Sequence[Turn]) -> Table:
    """How often an end moves by so many needles in two rows."""
    rows = []
    for end in ("left", "right"):
        moves = Counter(turn.left if end == "left" else turn.right for turn in turns)
        for size in sorted((size for size in moves if size), key=lambda size: (size > 0, abs(size))):
            words = _n("returned" if size > 0 else "held", abs(size))
            rows.append((_say(f"end-{end}"), words, say_n("common.times", moves[size])))
        if moves[0]:
            rows.append((_say(f"end-{end}"), _say("no-move"), say_n("common.times", moves[0])))
    return Table(_say("steps"), tuple(_say(f"steps-{key}") for key in ("end", "needles", "times")), tuple(rows))


def _cues(found: Sequence[Cue]) -> Written:
    """Folded under its heading: a shape has dozens of them."""
    lines = [_line(cue) for cue in found]
    items = "".join(f"<li>{escape(line)}</li>" for line in lines)
    summary = escape(_n("cues-count", len(lines)))
    text = "\n".join(f"{i:>3}. {line}" for i, line in enumerate(lines, 1))
    return Written(_say("cues"), f"<details><summary>{summary}</summary><ol>{items}</ol></details>", text)


def _line(cue: Cue) -> str:
    return " ".join(part for part in (cue.where, *cue.before, cue.knit, cue.check) if part)
