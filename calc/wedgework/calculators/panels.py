"""Panels: a piece wider than the bed in equal panels or cut beside the blocks of a design; seams and the order of joining."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from fractions import Fraction

from wedgework.bed import name, panel_needles
from wedgework.calculators.panel_cutting import MOST_PANELS, SEAMS, Cutting
from wedgework.calculators.panel_design import GEOMETRY_FIELDS, NO_LAYOUT, cutting, design_values, design_view
from wedgework.declare import (
    Bullets,
    Calculator,
    Figure,
    Figures,
    Group,
    Inputs,
    Only,
    Picture,
    Plain,
    Result,
    Shown,
    Table,
    choice,
    decimal,
    length,
    whole,
)
from wedgework.draw.panels import panels_svg
from wedgework.exact import nearest_even, rounded_with
from wedgework.finish.joining import joins, seam_turns
from wedgework.layout.library import LAYOUTS, named
from wedgework.problems import Problem, Refused
from wedgework.say import say, say_n
from wedgework.units import both_text, decimal_text, short_decimal, signed_text
from wedgework.words.joining import join_sentences

__all__ = ["CALCULATOR"]

# Beyond this a size is not the one that was wanted, in per cent. Our own choice.
FAR_OFF = 3


def _say(key: str, **values: object) -> str:
    return say(f"calculators.panels.{key}", **values)


@dataclass(frozen=True, slots=True)
class _Split:
    panels: int
    needles: int
    """Of each panel, seam stitches in it."""
    seam: Fraction

    @property
    def visible(self) -> tuple[Fraction, ...]:
        """Stitches of each panel that are seen: a panel at the border loses one edge only."""
        edges = [(i > 0) + (i < self.panels - 1) for i in range(self.panels)]
        return tuple(self.needles - count * self.seam for count in edges)

    @property
    def stitches(self) -> Fraction:
        return sum(self.visible, Fraction(0))


def _needles(inputs: Inputs, panels: int) -> int:
    """Of each of so many panels, rounded to the repeat; never narrower than seams and one repeat need."""
    wanted = inputs.mm("width") * inputs.number("stitches_per_10cm") / 100
    seams = 2 * (panels - 1) * SEAMS[inputs.text("seam_stitches")]
    multiple, extra = inputs.whole("stitch_multiple"), inputs.whole("stitch_extra")
    needles = rounded_with((wanted + seams) / panels, "nearest", multiple, extra)
    return max(needles, extra if extra > 1 and multiple > 1 else 2)


def _split(inputs: Inputs) -> _Split:
    """The fewest panels that the bed takes, or as many as are asked for. Raises Refused where it cannot be."""
    bed, seam = inputs.whole("bed_needles"), SEAMS[inputs.text("seam_stitches")]
    fewest = next((p for p in range(1, MOST_PANELS + 1) if _needles(inputs, p) <= bed), None)
    if fewest is None:
        sentence = _say("too-many", most=MOST_PANELS, needles=bed)
        raise Refused([Problem("width", "panels.too-many", sentence, _say("too-many.way-out"))])
    panels = inputs.whole("panels") if inputs.has("panels") else fewest
    needles = _needles(inputs, panels)
    if needles > bed:
        sentence = _say("too-few", panels=panels, needles=say_n("common.needles", needles), bed=bed)
        raise Refused([Problem("panels", "panels.too-few", sentence, _say("too-few.way-out", fewest=fewest))])
    split = _Split(panels, needles, seam)
    if min(split.visible) < 1:
        raise Refused([Problem("panels", "panels.too-narrow", _say("too-narrow"), _say("too-narrow.way-out", fewest=fewest))])
    return split


def compute(inputs: Inputs) -> Result:
    if inputs.text("layout") != NO_LAYOUT:
        return _designed(inputs, cutting(inputs, SEAMS[inputs.text("seam_stitches")]))
    split, stitch_mm, row_mm = _split(inputs), 100 / inputs.number("stitches_per_10cm"), 100 / inputs.number("rows_per_10cm")
    rows = max(2, nearest_even(inputs.mm("height") / row_mm))
    first, last = panel_needles(split.needles)
    order = joins(split.panels)
    width, height, seams = split.stitches * stitch_mm, rows * row_mm, split.panels - 1
    values: dict[str, Plain] = {
        "panels": split.panels,
        "needles_per_panel": split.needles,
        "first_needle": name(first),
        "last_needle": name(last),
        "rows": rows,
        "stitches": split.stitches,
        "visible_stitches": list(split.visible),
        "seams": seams,
        "seam_mm": height,
        "seams_mm": seams * height,
        "width_mm": width,
        "width_off_mm": width - inputs.mm("width"),
        "width_off_percent": (width / inputs.mm("width") - 1) * 100,
        "height_mm": height,
        "joins": [{"left": list(range(a, b + 1)), "right": list(range(c, d + 1))} for (a, b), (c, d) in order],
    }
    drawn = panels_svg([one * stitch_mm for one in split.visible], height, seam_turns(split.panels))
    view: list[Shown] = [
        _main(inputs, split, values, width, height),
        Picture(_say("picture"), drawn, _say("picture-caption")),
        _each(split, stitch_mm, f"{name(first)}\u2013{name(last)}"),
    ]
    if order:
        view.append(_joining(split.panels))
    return Result(values, tuple(view), tuple(_warnings(inputs, split)))


def _joining(panels: int) -> Bullets:
    return Bullets(_say("order"), join_sentences(panels), ordered=True)


def _designed(inputs: Inputs, found: Cutting) -> Result:
    """Panels of their own widths; a needle more or less than half a seam stitch takes is seen."""
    stitch_mm, row_mm = 100 / inputs.number("stitches_per_10cm"), 100 / inputs.number("rows_per_10cm")
    panels, rows = len(found.widths), max(2, nearest_even(inputs.mm("height") / row_mm))
    visible = [needles - found.seam * ((i > 0) + (i < panels - 1)) for i, needles in enumerate(found.needles)]
    width, height = sum(visible, Fraction(0)) * stitch_mm, rows * row_mm
    widest = max(found.needles)
    first, last = panel_needles(widest)
    values: dict[str, Plain] = {
        "panels": panels,
        "needles_per_panel": widest,
        "panel_needles": list(found.needles),
        "first_needle": name(first),
        "last_needle": name(last),
        "rows": rows,
        "stitches": sum(visible, Fraction(0)),
        "visible_stitches": list(visible),
        "seams": panels - 1,
        "seam_mm": height,
        "seams_mm": (panels - 1) * height,
        "width_mm": width,
        "width_off_mm": width - inputs.mm("width"),
        "width_off_percent": (width / inputs.mm("width") - 1) * 100,
        "height_mm": height,
        "joins": [{"left": list(range(a, b + 1)), "right": list(range(c, d + 1))} for (a, b), (c, d) in joins(panels)],
        **design_values(found),
    }
    split = _Split(panels, widest, found.seam)
    view = [_main(inputs, split, values, width, height), *design_view(found, stitch_mm, height)]
    if panels > 1:
        view.append(_joining(panels))
    return Result(values, tuple(view), tuple(_fits(inputs, panels)))


def _warnings(inputs: Inputs, split: _Split) -> Iterable[Problem]:
    """One panel is no split; a repeat can make the whole far too wide or too narrow."""
    yield from _fits(inputs, split.panels)
    off = _off_percent(inputs, split)
    if abs(off) > FAR_OFF:
        able = [p for p in range(1, MOST_PANELS + 1) if _needles(inputs, p) <= inputs.whole("bed_needles")]
        best = min(able, key=lambda p: abs(_off_percent(inputs, _Split(p, _needles(inputs, p), split.seam))))
        best_off = decimal_text(abs(_off_percent(inputs, _Split(best, _needles(inputs, best), split.seam))), 1)
        way_out = _say("far-off.way-out", panels=best, percent=best_off) if best != split.panels else _say("far-off.repeat")
        yield Problem("stitch_multiple", "panels.far-off", _say("far-off", percent=decimal_text(abs(off), 1)), way_out)


def _fits(inputs: Inputs, panels: int) -> Iterable[Problem]:
    if panels == 1 and not inputs.has("panels"):
        yield Problem("width", "panels.fits", _say("fits"), _say("fits.way-out"))


def _off_percent(inputs: Inputs, split: _Split) -> Fraction:
    return (split.stitches * 100 / inputs.number("stitches_per_10cm") / inputs.mm("width") - 1) * 100


def _main(inputs: Inputs, split: _Split, values: dict[str, Plain], width: Fraction, height: Fraction) -> Figures:
    off = width - inputs.mm("width")
    difference = _say("difference", mm=signed_text(off, 0), percent=signed_text(off * 100 / inputs.mm("width"), 1))
    seams, designed = split.panels - 1, "cuts" in values
    return Figures(
        _say("figures"),
        (
            Figure(_say("panels-count"), f"{split.panels}", _say("each-its-own" if designed else "all-alike"), "panels"),
            Figure(
                _say("needles-widest" if designed else "needles"),
                f"{split.needles}",
                _say("span", first=values["first_needle"], last=values["last_needle"]),
                "needles_per_panel",
            ),
            Figure(_say("rows"), f"{values['rows']}", _say("rows-note"), "rows"),
            Figure(_say("width-joined"), both_text(width), difference, "width_mm"),
            Figure(_say("height-each"), both_text(height), "", "height_mm"),
            Figure(
                _say("seams"),
                f"{seams}",
                _say("seams-note", each=both_text(height, 0), all=both_text(seams * height, 0)),
                "seams",
            ),
        ),
    )


def _each(split: _Split, stitch_mm: Fraction, needles: str) -> Table:
    """From the front, left to right."""
    rows = tuple(
        (f"{i}", needles, f"{split.needles}", short_decimal(visible, 1), both_text(visible * stitch_mm))
        for i, visible in enumerate(split.visible, 1)
    )
    return Table(_say("each"), tuple(_say(f"each-{key}") for key in ("panel", "needles", "stitches", "seen", "width")), rows)


def check(inputs: Inputs) -> Iterable[Problem]:
    """A repeat wider than the bed fits no panel; a design has repeats of its own."""
    if inputs.has("layout") and inputs.text("layout") != NO_LAYOUT:
        return
    if all(inputs.has(one) for one in ("stitch_multiple", "stitch_extra", "bed_needles")):
        least = inputs.whole("stitch_multiple") + inputs.whole("stitch_extra")
        if least > inputs.whole("bed_needles") and inputs.whole("stitch_multiple") > 1:
            sentence = _say("repeat-too-wide", stitches=least, needles=inputs.whole("bed_needles"))
            yield Problem("stitch_multiple", "panels.repeat-too-wide", sentence, _say("repeat-too-wide.way-out"))


def _layout_words(key: str) -> str:
    layout = named(key)
    return _say("layout.none") if layout is None else layout.title


NO_DESIGN = Only("layout", (NO_LAYOUT,))

CALCULATOR = Calculator(
    "panels",
    (
        Group("piece", (length("width", "200", 5, 1000, "cm"), length("height", "220", 5, 1000, "cm"))),
        Group(
            "gauge",
            (
                decimal("stitches_per_10cm", "14", 2, 80, "stitches-per-10cm"),
                decimal("rows_per_10cm", "19", 2, 120, "rows-per-10cm"),
            ),
        ),
        Group(
            "panels",
            (
                whole("bed_needles", "110", 10, 400, "needles"),
                whole("panels", "", 1, MOST_PANELS, optional=True),
                choice("seam_stitches", "one", tuple(SEAMS)),
                whole("stitch_multiple", "1", 1, 400, "stitches", only=NO_DESIGN),
                whole("stitch_extra", "0", 0, 400, "stitches", only=NO_DESIGN),
            ),
        ),
        Group(
            "design",
            (
                choice("layout", NO_LAYOUT, (NO_LAYOUT, *(layout.name for layout in LAYOUTS)), words=_layout_words),
                *GEOMETRY_FIELDS,
            ),
        ),
    ),
    compute,
    check,
)
