"""The choice of a drawing of one's own in the panel plan: the design file that the layout board made, as text in a field.

What the form asks for (title, bed, gauge, size, the first yarns, making) holds as it stands in the form; everything else, the
shapes above all, is taken from the file. The other way round a design becomes what would be typed.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import replace
from fractions import Fraction

from wedgework.bed import USUAL_BEDS
from wedgework.calculators.layout_fields import DRAWN, MOST_YARNS, yarn_id
from wedgework.declare import Field, Inputs, Only, lines
from wedgework.formats import canonical, nearest_decimal, read_design
from wedgework.formats.brief import brief_value
from wedgework.formats.design import Bed, Design, DrawnLayout, Edging, Extent, Hem, OrderWish, Shape, SwatchState, Yarn
from wedgework.layout import resolve
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.units import short_point

__all__ = ["DRAWING_FIELD", "drawing_problems", "over_drawing", "typed_bed", "typed_of", "with_plain_ids"]

_LONGEST = 150_000
DRAWING_FIELD: Field = lines("drawing", "", longest=_LONGEST, optional=True, only=Only("layout", (DRAWN,)))


def drawing_problems(inputs: Inputs) -> list[Problem]:
    """What is wrong with the file, each thing under the field."""
    if not (inputs.has("layout") and inputs.text("layout") == DRAWN):
        return []
    if not inputs.given("drawing"):
        code = "panel-plan.no-drawing"
        return [Problem("drawing", code, say(f"calculators.{code}"), say(f"calculators.{code}.way-out"))]
    if not inputs.has("drawing"):
        return []
    try:
        _drawing(inputs)
    except Refused as refused:
        return [replace(p, where="drawing", sentence=f"{p.where}: {p.sentence}".removeprefix(": ")) for p in refused.problems]
    return []


def over_drawing(inputs: Inputs, typed: Design) -> Design:
    """The drawing with what was typed laid over it; `typed` itself for every other layout."""
    if inputs.text("layout") != DRAWN:
        return typed
    drawing = _drawing(inputs)
    return replace(
        drawing,
        title=typed.title,
        bed=replace(typed.bed, machine=drawing.bed.machine),
        gauge=typed.gauge,
        panel=typed.panel,
        yarns=tuple(_yarns(drawing.yarns, typed.yarns)),
        hems=typed.hems,
        edging=typed.edging,
        options=replace(
            drawing.options,
            start_side=typed.options.start_side,
            base_rows_bottom=typed.options.base_rows_bottom,
            base_rows_top=typed.options.base_rows_top,
            order=typed.options.order,
            merge_below=typed.options.merge_below,
        ),
    )


def _drawing(inputs: Inputs) -> Design:
    """The design in the field, its yarns called as the form calls them. Raises Refused."""
    design = with_plain_ids(read_design(inputs.text("drawing")))
    if not isinstance(design.layout, DrawnLayout):
        code = "panel-plan.not-drawn"
        raise Refused([Problem("", code, say(f"calculators.{code}"), say(f"calculators.{code}.way-out"))])
    return design


def _yarns(drawn: Sequence[Yarn], typed: Sequence[Yarn]) -> list[Yarn]:
    """The yarns of the drawing, those of the form in their colours; then what the form has more."""
    named = {yarn.id: yarn for yarn in typed}
    found = []
    for yarn in drawn:
        over = named.pop(yarn.id, None)
        if over is not None:
            yarn = replace(yarn, name=over.name, colour=over.colour, tension=over.tension)
            if over.ball_g is not None:
                yarn = replace(yarn, ball_g=over.ball_g, metres_per_gram=over.metres_per_gram)
        found.append(yarn)
    return found + list(named.values())


def with_plain_ids(design: Design) -> Design:
    """The same design with the yarns called yarn-1, yarn-2 ... in their order, as the form calls them."""
    ids = {yarn.id: yarn_id(str(number)) for number, yarn in enumerate(design.yarns, 1)}
    if len(ids) != len(design.yarns) or not isinstance(design.layout, DrawnLayout):
        return design
    layout = replace(
        design.layout,
        background=ids.get(design.layout.background, design.layout.background),
        shapes=tuple(Shape(ids.get(shape.yarn, shape.yarn), shape.points, shape.holes) for shape in design.layout.shapes),
    )
    options = replace(
        design.options,
        base_yarn_bottom=ids.get(design.options.base_yarn_bottom or ""),
        base_yarn_top=ids.get(design.options.base_yarn_top or ""),
    )
    return replace(design, layout=layout, options=options, yarns=tuple(replace(yarn, id=ids[yarn.id]) for yarn in design.yarns))


def typed_of(design: Design) -> dict[str, str]:
    """What would be typed into the panel plan for a design. Raises Refused where its size is none.

    What the form does not ask for (notes, step style, margins) is kept with a drawn layout, and left out with a named one.
    """
    resolve(design)
    plain = with_plain_ids(design)
    typed = {"title": plain.title, **_layout(plain), **typed_bed(plain.bed), **_gauge(plain), **_size(plain)}
    for number in range(1, MOST_YARNS + 1):
        yarn = plain.yarns[number - 1] if number <= len(plain.yarns) else None
        typed[f"yarn_{number}_name"] = yarn.name or yarn.id if yarn else ""
        if yarn:
            typed[f"yarn_{number}_colour"] = yarn.colour.lower()
            typed[f"yarn_{number}_tension"] = "" if yarn.tension is None else short_point(yarn.tension, 6)
            if yarn.ball_g and yarn.metres_per_gram:
                typed[f"yarn_{number}_ball_g"] = f"{short_point(yarn.ball_g, 6)} g"
                typed[f"yarn_{number}_ball_m"] = f"{short_point(yarn.ball_g * yarn.metres_per_gram, 6)} m"
    options = plain.options
    typed |= {
        "start_side": "left" if options.start_side == "L" else "right",
        "base_rows_bottom": f"{options.base_rows_bottom}",
        "base_rows_top": f"{options.base_rows_top}",
        "own_order": "\n".join(_wish(wish) for wish in options.order),
        "merge_below": f"{options.merge_below}",
    }
    typed |= _edging(plain.edging)
    for edge, hem in (("bottom", plain.hems.bottom), ("top", plain.hems.top), ("sides", plain.hems.sides)):
        typed |= _hem(f"hem_{edge}", hem, resolve(plain).row_mm)
    return typed


def _layout(design: Design) -> dict[str, str]:
    if isinstance(design.layout, DrawnLayout):
        # A semicolon ends a line in the field, and spaces are tidied there: in a file both may stand in other words too.
        drawing = canonical(brief_value(design)).replace(";", "\\u003b").replace("  ", " \\u0020")
        return {"layout": DRAWN, "drawing": drawing}
    numbers = {yarn.id: f"{number}" for number, yarn in enumerate(design.yarns, 1)}

    def said(value: str | Fraction) -> str:
        if isinstance(value, Fraction):
            return short_point(value, 9)
        return " ".join(numbers.get(word, word) for word in value.split())

    return {"layout": design.layout.name} | {key: said(value) for key, value in design.layout.parameters.items()}


def typed_bed(bed: Bed) -> dict[str, str]:
    """A bed as it is typed."""
    usual = next((one.key for one in USUAL_BEDS if (one.pitch_mm, one.needles) == (bed.pitch_mm, bed.needles)), "own")
    return {"bed": usual, "bed_pitch": _mm(bed.pitch_mm), "bed_needles": f"{bed.needles}"}


def _gauge(design: Design) -> dict[str, str]:
    swatch = design.gauge.swatch
    state: SwatchState | None = None if swatch is None else swatch.washed or swatch.unwashed
    if swatch is None or state is None:
        stitches, rows = (Fraction(each or 0) for each in (design.gauge.stitches_per_10cm, design.gauge.rows_per_10cm))
        return {
            "gauge_from": "figures",
            "stitches_per_10cm": short_point(stitches, 6),
            "rows_per_10cm": short_point(rows, 6),
        }
    return {
        "gauge_from": "swatch",
        "swatch_stitches": short_point(swatch.stitches, 6),
        "swatch_rows": short_point(swatch.rows, 6),
        "swatch_width": "; ".join(map(_mm, state.widths_mm)),
        "swatch_height": "; ".join(map(_mm, state.heights_mm)),
    }


def _size(design: Design) -> dict[str, str]:
    """Lengths where both are; else the counts of both."""
    sizes, panel = resolve(design), design.panel
    if panel.width.mm is not None and panel.height.mm is not None:
        return {"size_in": "lengths", "width": _mm(panel.width.mm), "height": _mm(panel.height.mm)}
    return {"size_in": "counts", "needles": f"{sizes.across}", "rows": f"{sizes.rows}"}


def _hem(name: str, hem: Hem, row_mm: Fraction) -> Mapping[str, str]:
    if hem.kind == "none" or hem.depth is None:
        return {name: "none"}
    depth: Extent = hem.depth
    mm = depth.mm if depth.mm is not None else nearest_decimal(Fraction(depth.count or 1) * row_mm, 3)
    return {name: hem.kind, f"{name}_depth": _mm(mm)}


def _edging(edging: Edging | None) -> dict[str, str]:
    if edging is None:
        return {"edging": "none"}
    stitches, repeat = f"{edging.stitches}", f"{edging.repeat}"
    return {"edging": edging.along, "edging_stitches": stitches, "edging_repeat": repeat, "edging_corner": edging.corner}


def _wish(wish: OrderWish) -> str:
    if wish.start is not None:
        return f"{wish.block} from the {'left' if wish.start == 'L' else 'right'}"
    return f"{wish.block} before {wish.before}" if wish.before else f"{wish.block} after {wish.after}"


def _mm(value: Fraction) -> str:
    return f"{short_point(value, 6)} mm"
