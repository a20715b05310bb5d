"""What is done after the piece is off the machine, as one list."""

from __future__ import annotations

from wedgework.bed import name
from wedgework.formats.plan import Plan, Slit
from wedgework.layout.sizes import resolve
from wedgework.replay.result import Replay
from wedgework.say import say, say_n
from wedgework.units import both_text

__all__ = ["finish_list"]


def finish_list(plan: Plan, judged: Replay) -> tuple[str, ...]:
    """Lay, close what stays open, ends, wash, block, measure."""
    summary, sizes = judged.summary, resolve(plan.design)
    said = [say("words.finish-lay"), say("words.finish-press")]
    if summary.slits:
        where = "; ".join(_slit(slit) for slit in summary.slits)
        said.append(say_n("words.finish-slits", len(summary.slits), where=where))
    if summary.holes:
        where = "; ".join(say("words.finish-hole", needle=name(h.needle), row=h.row) for h in summary.holes)
        said.append(say_n("words.finish-holes", len(summary.holes), where=where))
    if summary.ends:
        edge = summary.ends - summary.ends_inside
        said.append(say_n("words.finish-ends", summary.ends, inside=summary.ends_inside, edge=edge))
    said.append(say("words.finish-wash"))
    base = sum(rows for _, rows in (*judged.piece.base_below, *judged.piece.base_above))
    height = (sizes.rows + base) * sizes.row_mm
    said.append(say("words.finish-block", width=both_text(sizes.width_mm), height=both_text(height)))
    said.append(say("words.finish-measure"))
    return tuple(said)


def _slit(slit: Slit) -> str:
    if slit.to_needle is None:
        return say_n("words.finish-slit", slit.rows, needle=name(slit.needle), row=slit.from_row)
    return say_n(
        "words.finish-slit-in-steps",
        slit.steps,
        needle=name(slit.needle),
        last=name(slit.to_needle),
        row=slit.from_row,
        rows=say_n("common.rows", slit.rows),
    )
