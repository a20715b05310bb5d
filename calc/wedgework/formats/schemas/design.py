"""Schema of the design. Ranges are wide: they keep mistakes and mischief out, not unusual pieces."""

from __future__ import annotations

from wedgework.formats.design import Costs, Edging, Hem, Machine, Options
from wedgework.formats.schemas.pieces import (
    Schema,
    above,
    block_id,
    closed,
    colour,
    document,
    exactly,
    many,
    number,
    numbers_by_name,
    one_of,
    side,
    text,
    whole,
    words,
    yarn_id,
)
from wedgework.formats.values_design import edging_value, hem_value, machine_value, options_value

__all__ = ["BED", "DESIGN", "DESIGN_INSIDE", "MOST_CORNERS", "MOST_SHAPES", "MOST_YARNS", "SWATCH", "YARN"]

# The finest usual bed has 250 needles and the tallest panel that makes sense some thousand rows: four times as much.
MOST_NEEDLES = 1000
MOST_ROWS = 20_000
# A picture over several panels; a width in mm may give more stitches than any bed has needles.
MOST_ACROSS = 20_000
MOST_PANELS = 100
MOST_SHAPES = 400
MOST_CORNERS = 2000
MOST_YARNS = 64

MACHINE = closed(
    "machine",
    {
        "name": text("machine.name", 100),
        "hold_levers": whole("machine.hold_levers", 1, 2),
        "tension_min": number("machine.tension_min", 0, 100),
        "tension_max": number("machine.tension_max", 0, 100),
        "counter_place": words("machine.counter_place", "middle", "left", "right", "none"),
        "counter_digits": whole("machine.counter_digits", 1, 6),
        "yarns_on_mast": whole("machine.yarns_on_mast", 1, 12),
        "position_names": closed(
            "machine.position_names",
            {
                position: text(f"machine.position_names.{position}", 40, least=1)
                for position in ("non-working", "working", "upper-working", "holding")
            },
            optional=("non-working", "working", "upper-working", "holding"),
        ),
    },
    defaults=machine_value(Machine()),
)

BED = closed(
    "bed",
    {"pitch_mm": number("bed.pitch_mm", 1, 30), "needles": whole("bed.needles", 4, MOST_NEEDLES), "machine": MACHINE},
    defaults={"machine": machine_value(Machine())},
)


def _measured(about: str) -> Schema:
    """One state of a swatch; five measurements each way are plenty to see how they scatter."""
    return closed(
        about,
        {
            "widths_mm": many("swatch.widths_mm", above("swatch.width", 0, 2000), 1, 5),
            "heights_mm": many("swatch.heights_mm", above("swatch.height", 0, 2000), 1, 5),
        },
    )


SWATCH = closed(
    "swatch",
    {
        "stitches": above("swatch.stitches", 0, 1000),
        "rows": above("swatch.rows", 0, 1000),
        "washed": _measured("swatch.washed"),
        "unwashed": _measured("swatch.unwashed"),
    },
    optional=("washed", "unwashed"),
    least=3,
)


def _gauge(about: str) -> Schema:
    figures = closed(
        "gauge.figures",
        {
            "stitches_per_10cm": number("gauge.stitches_per_10cm", 1, 200),
            "rows_per_10cm": number("gauge.rows_per_10cm", 1, 200),
        },
    )
    return one_of(about, figures, closed("gauge.swatch", {"swatch": SWATCH}))


def _extent(about: str, counted: str, least: int, most: int) -> Schema:
    """Millimetres, or a count of needles or rows."""
    return one_of(
        about,
        closed("extent.in-mm", {"mm": number("extent.mm", 10, 10_000)}),
        closed("extent.counted", {counted: whole(f"extent.{counted}", least, most)}),
    )


PART = closed(
    "panel.part",
    {
        "number": whole("panel.part.number", 1, MOST_PANELS),
        "panels": whole("panel.part.panels", 1, MOST_PANELS),
        "first": whole("panel.part.first", 1, MOST_ACROSS),
        "last": whole("panel.part.last", 1, MOST_ACROSS),
        "seam_left": whole("panel.part.seam_left", 0, 10),
        "seam_right": whole("panel.part.seam_right", 0, 10),
    },
    defaults={"seam_left": 0, "seam_right": 0},
)

PANEL = closed(
    "panel",
    {
        "width": _extent("panel.width", "needles", 2, MOST_NEEDLES),
        "height": _extent("panel.height", "rows", 2, MOST_ROWS),
        "side_of_origin": exactly("panel.side_of_origin", "front-lower-left"),
        "part": PART,
    },
    defaults={"side_of_origin": "front-lower-left"},
    optional=("part",),
)

YARN = closed(
    "yarn",
    {
        "id": yarn_id("yarn.id"),
        "name": text("yarn.name", 100),
        "colour": colour("yarn.colour"),
        "gauge": _gauge("yarn.gauge"),
        "tension": number("yarn.tension", 0, 100),
        "tex": above("yarn.tex", 0, 100_000),
        "metres_per_gram": above("yarn.metres_per_gram", 0, 1000),
        "on_hand_g": number("yarn.on_hand_g", 0, 1_000_000),
        "stripe": many(
            "yarn.stripe",
            closed(
                "stripe",
                {
                    "colour": colour("stripe.colour"),
                    "metres": above("stripe.metres", 0, 100_000),
                    "name": text("stripe.name", 60, 1),
                },
                optional=("name",),
            ),
            0,
            200,
        ),
        "ball_g": above("yarn.ball_g", 0, 100_000),
        "kind": text("yarn.kind", 40),
    },
    defaults={"stripe": [], "kind": ""},
    optional=("gauge", "tension", "tex", "metres_per_gram", "on_hand_g", "ball_g"),
)

# A point may lie up to one panel outside; the picture is clipped. Where points are counted, a panel has up to so many rows;
# whether one lies too far outside is looked at with the panel, see `layout.checks`.
_POINT = many("point", number("point.coordinate", -1, 2), 2, 2)
_COUNTED = many("point.counted", number("point.counted-coordinate", -MOST_ROWS, 2 * MOST_ROWS), 2, 2)


def _ring(about: str, point: Schema) -> Schema:
    return many(about, point, 3, MOST_CORNERS)


def _drawn(about: str, point: Schema, more: dict[str, Schema]) -> Schema:
    """Shapes of one's own; `more` is what tells these points from others."""
    shape = closed(
        "shape",
        {
            "yarn": yarn_id("shape.yarn"),
            "points": _ring("shape.points", point),
            "holes": many("shape.holes", _ring("shape.hole", point), 0, 50),
        },
        defaults={"holes": []},
    )
    keys = {
        "background": yarn_id("layout.background"),
        **more,
        "shapes": many("layout.shapes", shape, 0, MOST_SHAPES),
        "profile": many("layout.profile", whole("layout.profile-rows", 0, MOST_ROWS), 2, MOST_NEEDLES),
        "gaps": many("layout.gaps", _ring("layout.gap", point), 0, 100),
    }
    return closed(about, keys, defaults={"shapes": []}, optional=("profile", "gaps"))


LAYOUT = one_of(
    "layout",
    closed(
        "layout.named",
        {
            "name": text("layout.name", 64, least=1),
            "parameters": numbers_by_name(
                "layout.parameters",
                text("layout.parameter-name", 64, least=1),
                # A list of yarns is written as ids with spaces between: 64 ids of 32 characters.
                one_of(
                    "layout.parameter",
                    text("layout.parameter-text", 2200),
                    number("layout.parameter-number", -10_000, 10_000),
                ),
                64,
            ),
        },
        defaults={"parameters": {}},
    ),
    _drawn("layout.drawn", _POINT, {}),
    _drawn(
        "layout.drawn-counted",
        _COUNTED,
        {
            "counted": closed(
                "layout.counted",
                {
                    "needles": whole("layout.counted.needles", 1, MOST_ACROSS),
                    "rows": whole("layout.counted.rows", 1, MOST_ROWS),
                },
            )
        },
    ),
)


def _hem(about: str) -> Schema:
    return one_of(
        about,
        exactly("hem.word", "none"),
        closed("hem.none", {"kind": exactly("hem.kind", "none")}),
        closed(
            "hem.folded",
            {
                "kind": words("hem.kind", "plain", "picot"),
                "depth": one_of(
                    "hem.depth",
                    closed("extent.in-mm", {"mm": number("extent.mm", 1, 500)}),
                    closed("extent.counted", {"rows": whole("extent.rows", 1, 500)}),
                ),
            },
        ),
    )


HEMS = closed(
    "hems",
    {"bottom": _hem("hems.bottom"), "top": _hem("hems.top"), "sides": _hem("hems.sides")},
    defaults={key: hem_value(Hem()) for key in ("bottom", "top", "sides")},
)

EDGING = closed(
    "edging",
    {
        "along": words("edging.along", "all", "sides", "ends"),
        "stitches": whole("edging.stitches", 1, 100),
        "repeat": whole("edging.repeat", 1, 200),
        "join_every": whole("edging.join_every", 1, 12),
        "corner": words("edging.corner", "eased", "square", "none"),
    },
    defaults={key: each for key, each in edging_value(Edging("all", 1)).items() if key not in ("along", "stitches")},
)

ORDER_WISH = closed(
    "options.order.wish",
    {
        "block": block_id("options.order.block"),
        "before": block_id("options.order.before"),
        "after": block_id("options.order.after"),
        "start": side("options.order.start"),
    },
    optional=("before", "after", "start"),
)

OPTIONS = closed(
    "options",
    {
        "start_side": side("options.start_side"),
        "shift_needles": whole("options.shift_needles", -MOST_NEEDLES, MOST_NEEDLES),
        "odd_needle": side("options.odd_needle"),
        "base_rows_bottom": whole("options.base_rows_bottom", 0, 200),
        "base_rows_top": whole("options.base_rows_top", 0, 200),
        "base_yarn_bottom": yarn_id("options.base_yarn_bottom"),
        "base_yarn_top": yarn_id("options.base_yarn_top"),
        "order": many("options.order", one_of("options.order.entry", block_id("options.order.in-turn"), ORDER_WISH), 0, 5000),
        "costs": closed(
            "options.costs",
            {key: number(f"options.costs.{key}", 0, 1000) for key in options_value(Options(costs=Costs()))["costs"]},
            defaults=options_value(Options())["costs"],
        ),
        "step_style": words("options.step_style", "split", "carriage-side", "by-hand"),
        "margin_percent": number("options.margin_percent", 0, 100),
        "merge_below": whole("options.merge_below", 0, 1000),
    },
    defaults=options_value(Options()),
    optional=("base_yarn_bottom", "base_yarn_top"),
)

DESIGN = document(
    "design",
    "design",
    {
        "title": text("title", 200, least=1),
        "notes": text("notes", 5000, lines=True),
        "author": text("author", 200),
        "revision": text("revision", 40),
        "date": text("date", 40),
        "permission": text("permission", 500, lines=True),
        "bed": BED,
        "gauge": _gauge("gauge"),
        "panel": PANEL,
        "yarns": many("yarns", YARN, 1, MOST_YARNS),
        "layout": LAYOUT,
        "hems": HEMS,
        "edging": EDGING,
        "options": OPTIONS,
    },
    defaults={
        **dict.fromkeys(("notes", "author", "revision", "date", "permission"), ""),
        "hems": {key: hem_value(Hem()) for key in ("bottom", "top", "sides")},
        "options": options_value(Options()),
    },
    optional=("edging",),
)

DESIGN_INSIDE = {key: value for key, value in DESIGN.items() if key != "$schema"}
"""The same inside another file."""
