"""What is done after the piece is off the machine, as one list."""

from __future__ import annotations

from fractions import Fraction

from wedgework.bed import name
from wedgework.finish import SideHem, edging_mm, end_hem, finished_width_mm, side_hem, strip_of
from wedgework.formats.design import Design
from wedgework.formats.plan import Plan, Slit, Summary
from wedgework.layout.sizes import Sizes, resolve
from wedgework.replay.result import Replay
from wedgework.say import say, say_n
from wedgework.units import both_text
from wedgework.words.joining import edging_sentences, seam_sentences

__all__ = ["base_rows", "finish_list", "finished_mm", "panel_mm"]


def finish_list(plan: Plan, judged: Replay) -> tuple[str, ...]:
    """Lay, close what stays open, ends, join panels, sides, edging, wash, block, measure."""
    sizes, design = resolve(plan.design), plan.design
    said = [say("words.finish-lay"), say("words.finish-press")]
    hems, part = design.hems, design.panel.part
    if hems.bottom.kind != "none":
        said.insert(0, say("words.finish-ravel"))
    earlier = design.options.base_rows_bottom if plan.state is not None else 0
    high = sizes.rows + base_rows(judged) + earlier
    side, strip = side_hem(design, sizes, high), strip_of(design, sizes, high)
    if part is not None:
        said += _mending(judged.summary)
        width, height = panel_mm(plan, judged)
        said.append(say("words.finish-panel", n=part.number, width=both_text(width), height=both_text(height)))
        said += seam_sentences(part, height)
    if side is not None:
        said += _sides(side)
    elif hems.bottom.kind != "none" or hems.top.kind != "none":
        said.append(say("words.finish-hem-ends"))
    if strip is not None and design.edging is not None:
        said += edging_sentences(strip, design.edging.along)
    if part is None:
        said += _mending(judged.summary)
    said.append(say("words.finish-wash"))
    width, height = finished_mm(plan, judged)
    said.append(say("words.finish-block", width=both_text(width), height=both_text(height)))
    said.append(say("words.finish-measure"))
    return tuple(said)


def _mending(summary: Summary) -> list[str]:
    """Slits, holes and ends."""
    said = []
    if summary.slits:
        where = "; ".join(_slit(slit) for slit in summary.slits)
        said.append(say_n("words.finish-slits", len(summary.slits), where=where))
    if summary.holes:
        where = "; ".join(say("words.finish-hole", needle=name(h.needle), row=h.row) for h in summary.holes)
        said.append(say_n("words.finish-holes", len(summary.holes), where=where))
    if summary.ends:
        edge = summary.ends - summary.ends_inside
        said.append(say_n("words.finish-ends", summary.ends, inside=summary.ends_inside, edge=edge))
    return said


def finished_mm(plan: Plan, judged: Replay) -> tuple[Fraction, Fraction]:
    """Width and height of the whole piece with all that base rows, hems and edging add to the picture; panels joined."""
    sizes = resolve(plan.design)
    return finished_width_mm(plan.design, sizes), panel_mm(plan, judged)[1] + edging_mm(plan.design, sizes)[1]


def panel_mm(plan: Plan, judged: Replay) -> tuple[Fraction, Fraction]:
    """Width and height of what comes off the machine, seam stitches, base rows and end hems in it."""
    sizes, found = resolve(plan.design), judged.piece
    below = found.rows_below if plan.state is None else _rows_below(plan.design, sizes)
    return sizes.width_mm, (sizes.rows + below + found.rows_above) * sizes.row_mm


def _rows_below(design: Design, sizes: Sizes) -> int:
    """What lies below the picture where the plan is of the rest only: knitted before, so as the design wants it."""
    hem = end_hem(design, sizes, "bottom")
    return design.options.base_rows_bottom + (hem.outside if hem else 0)


def base_rows(judged: Replay) -> int:
    """Rows over all needles below and above the picture, without hems."""
    return sum(rows for _, rows in (*judged.piece.base_below, *judged.piece.base_above))


def _sides(hem: SideHem) -> list[str]:
    """Both side hems, which are worked alike: hang, knit, close, sew the ends."""
    rhythm = hem.hung.rhythm()
    said = [
        say("words.finish-sides"),
        say(
            "words.finish-sides-hang",
            stitches=say_n("common.stitches", hem.hung.stitches),
            rows=say_n("common.rows", hem.hung.rows),
            hung=rhythm.numerator,
            of=rhythm.denominator,
        ),
    ]
    said += [
        say_n(f"words.finish-sides-over-{end}", stitches)
        for end, stitches in (("bottom", hem.over_bottom), ("top", hem.over_top))
        if stitches
    ]
    if len(hem.sections) > 1:
        needles = ", ".join(str(section.needles) for section in hem.sections)
        said.append(say_n("words.finish-sides-sections", len(hem.sections), needles=needles))
    fold = say("words.finish-sides-fold-picot" if hem.picot else "words.finish-sides-fold-plain")
    outside, facing = (say_n("common.rows", rows) for rows in (hem.outside, hem.facing))
    said.append(say("words.finish-sides-knit", outside=outside, fold=fold, facing=facing))
    said.append(say("words.hooks"))
    said.append(say("words.finish-sides-close"))
    said.append(say("words.finish-sides-yarn", stitches=say_n("common.stitches", 2 * hem.knitted)))
    return said


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
