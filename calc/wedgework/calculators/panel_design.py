"""Panels of a design: the picture over the whole width, cut beside its blocks, each panel with its own needles."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from fractions import Fraction

from wedgework.bed import name, panel_needles
from wedgework.calculators.layout_fields import LAYOUT_FIELDS, layout_from
from wedgework.calculators.panel_cuts import Cut
from wedgework.calculators.panel_cutting import Cutting, cut_picture
from wedgework.declare import Field, Inputs, Picture, Plain, Prose, Shown, Table
from wedgework.draw.panel_design import panel_design_svg
from wedgework.exact import nearest, nearest_even
from wedgework.finish import seam_turns
from wedgework.formats.design import DrawnLayout
from wedgework.layout.library import named
from wedgework.problems import Problem, Refused
from wedgework.say import say, say_n
from wedgework.units import both_text, decimal_text

__all__ = ["GEOMETRY_FIELDS", "NO_LAYOUT", "cutting", "design_values", "design_view"]

NO_LAYOUT = "none"
MOST_STITCHES = 2000
# The yarns of the picture. Of our own invention.
YARNS = {"a": "#efe8d8", "b": "#3f5566", "c": "#b4533f"}

GEOMETRY_FIELDS: tuple[Field, ...] = tuple(field for field in LAYOUT_FIELDS if field.kind in ("whole", "decimal"))
"""What shapes a layout; which yarn is where does not move a border."""


def _say(key: str, **values: object) -> str:
    return say(f"calculators.panels.{key}", **values)


def cutting(inputs: Inputs, seam: Fraction) -> Cutting:
    """The design over the whole width, in the fewest panels or in as many as are asked for. Raises Refused."""
    stitches = max(2, nearest(inputs.mm("width") * inputs.number("stitches_per_10cm") / 100))
    rows = max(2, nearest_even(inputs.mm("height") * inputs.number("rows_per_10cm") / 100))
    if stitches > MOST_STITCHES:
        sentence = _say("design-too-wide", stitches=stitches, most=MOST_STITCHES)
        raise Refused([Problem("width", "panels.design-too-wide", sentence, _say("too-many.way-out"))])
    drawn = _drawn(inputs, stitches, rows)
    wanted = inputs.whole("panels") if inputs.has("panels") else None
    return cut_picture(drawn, stitches, rows, inputs.whole("bed_needles"), seam, wanted)


def _drawn(inputs: Inputs, stitches: int, rows: int) -> DrawnLayout:
    chosen = layout_from(inputs)
    declared = named(chosen.name)
    if declared is None:
        raise AssertionError(chosen.name)
    found = declared.problems(chosen.parameters, list(YARNS))
    if found:
        raise Refused(replace(p, where=p.where.removeprefix("layout.parameters.")) for p in found)
    return declared.shapes(chosen.parameters, list(YARNS), stitches, rows)


def design_values(found: Cutting) -> dict[str, Plain]:
    """Beside the figures of any split."""
    inside_all, inside_equal = (sum(cut.turns_inside for cut in cuts) for cuts in (found.cuts, found.equal))
    return {
        "cuts": [
            {
                "after_stitch": cut.after,
                "inside_percent": cut.inside_share(found.turns) * 100,
                "blocks_cut": cut.blocks,
            }
            for cut in found.cuts
        ],
        "design_stitches": [{"from": first, "to": last} for first, last in found.spans],
        "rows_through_blocks": 2 * inside_all,
        "rows_through_blocks_if_equal": 2 * inside_equal,
    }


def design_view(
    found: Cutting, stitch_mm: Fraction, height_mm: Fraction, colours: Mapping[str, str] = YARNS, chosen: int | None = None
) -> tuple[Shown, ...]:
    """The picture with its cuts, each panel, each cut; `chosen`: the panel that is knitted here."""
    widths = [width * stitch_mm for width in found.widths]
    drawn = panel_design_svg(found.layout, colours, widths, height_mm, seam_turns(len(widths)), chosen)
    view: list[Shown] = [Picture(_say("picture"), drawn, _say("picture-design" if chosen is None else "picture-chosen"))]
    view.append(_each(found, stitch_mm))
    if found.cuts:
        view.append(_cuts(found))
    if found.cuts and all(cut.inside_share(found.turns) > Fraction(1, 2) for cut in found.cuts):
        view.append(Prose(_say("through-blocks"), (_say("through-blocks-note"), *_another(found))))
    return tuple(view)


def _another(found: Cutting) -> tuple[str, ...]:
    """Whether one panel more would cut fewer blocks, all seams together."""
    now, then = (sum(cut.blocks for cut in cuts) for cuts in (found.cuts, found.more))
    if not found.more or then >= now:
        return ()
    return (say_n("calculators.panels.another", then, panels=len(found.more) + 1, now=now),)


def _each(found: Cutting, stitch_mm: Fraction) -> Table:
    rows = []
    for i, ((first, last), needles, width) in enumerate(zip(found.spans, found.needles, found.widths, strict=True), 1):
        low, high = panel_needles(needles)
        span = _say("needles-span", first=name(low), last=name(high))
        rows.append((f"{i}", _say("design-span", first=first, last=last), f"{needles}", span, both_text(width * stitch_mm)))
    heads = tuple(_say(f"each-{key}") for key in ("panel", "design", "stitches", "needles", "width"))
    return Table(_say("each"), heads, tuple(rows))


def _cuts(found: Cutting) -> Table:
    rows = tuple(_row(i, cut, equal, found.turns) for i, (cut, equal) in enumerate(zip(found.cuts, found.equal, strict=True), 1))
    return Table(_say("cuts"), tuple(_say(f"cuts-{key}") for key in ("seam", "after", "inside", "blocks", "equal")), rows)


def _row(i: int, cut: Cut, equal: Cut, turns: int) -> tuple[str, ...]:
    percent = decimal_text(cut.inside_share(turns) * 100, 0)
    share = _say("cut-inside", percent=percent) if cut.turns_inside else _say("cut-beside")
    blocks = say_n("calculators.panels.blocks-cut", cut.blocks)
    against = _say("cut-equal", percent=decimal_text(equal.inside_share(turns) * 100, 0), after=equal.after)
    return _say("cut-between", left=i, right=i + 1), f"{cut.after}", share, blocks, against
