"""What the panel plan shows: both faces, blocks in order, rows on each needle, ends, written instructions."""

from __future__ import annotations

from wedgework.bed import name, opposite
from wedgework.calculators.balls_view import balls_view
from wedgework.declare import Figure, Figures, Picture, Plain, Shown, Table, Written
from wedgework.draw import front_svg, levels_svg, purl_svg
from wedgework.finish import strip_of
from wedgework.formats import steps_digest
from wedgework.formats.design import Hems
from wedgework.formats.plan import Knit, Plan, is_edge
from wedgework.layout.sizes import resolve
from wedgework.replay.result import Replay
from wedgework.say import say, say_n
from wedgework.units import both_text, decimal_text, short_decimal
from wedgework.words.finishing import base_rows, finished_mm
from wedgework.words.instructions import instructions
from wedgework.yarn.needs import planned_needs
from wedgework.yarn.path import path_of

__all__ = ["panel_values", "panel_view"]


def panel_values(plan: Plan, judged: Replay) -> dict[str, Plain]:
    """The figures of the replay. `stitches` are those of the picture, by yarn id; `edge_stitches` those of base rows and end
    hems."""
    sizes, found = resolve(plan.design), judged.summary
    width, height = finished_mm(plan, judged)
    return _edging_values(plan, judged) | {
        "needles": sizes.needles,
        "rows": sizes.rows,
        "first_needle": name(plan.first_needle),
        "last_needle": name(plan.last_needle),
        "width_mm": sizes.width_mm,
        "height_mm": sizes.height_mm,
        "finished_width_mm": width,
        "finished_height_mm": height,
        "blocks": len(_blocks(plan)),
        "ends": found.ends,
        "ends_inside": found.ends_inside,
        "free_passes": found.free_passes,
        "inside_starts": found.inside_starts,
        "rows_min": found.rows_min,
        "rows_max": found.rows_max,
        "steepest_fold": found.steepest_fold,
        "slits": len(found.slits),
        "holes": len(found.holes),
        "stairs": len(found.stairs),
        "floats": found.floats,
        "dropped": found.dropped,
        "passes": sum(judged.block_rows.values()),
        "stitches": dict(found.stitches),
        "edge_stitches": dict(found.edge_stitches),
        "block_metres": {block.block: block.mm / 1000 for block in planned_needs(plan, judged).blocks},
        "steps_digest": steps_digest(plan.steps),
    }


def _edging_values(plan: Plan, judged: Replay) -> dict[str, Plain]:
    strip = strip_of(plan.design, resolve(plan.design), resolve(plan.design).rows + base_rows(judged))
    if strip is None:
        return {}
    rows, joins = strip.strips * strip.rows, strip.strips * strip.joins
    return {"edging_rows": rows, "edging_joins": joins, "edging_stitches": strip.knitted}


def panel_view(plan: Plan, judged: Replay, whole: tuple[Shown, ...] = ()) -> tuple[Shown, ...]:
    """In the order in which a knitter asks: how big, how it looks, what is knitted when, what it costs, how it is done.

    `whole`: what is shown of a picture of which this is one panel.
    """
    written = instructions(plan, judged)
    return (
        _figures(plan, judged),
        *whole,
        Picture(_say("front"), front_svg(plan, judged), _say("front-caption")),
        Picture(_say("purl"), purl_svg(plan, judged), _say("purl-caption")),
        _table(plan, judged),
        Picture(_say("levels"), levels_svg(plan, judged), _say("levels-caption")),
        _ends(judged),
        _yarns(plan, judged),
        *balls_view(plan, path_of(plan, judged)),
        Written(_say("instructions"), written.as_html(level=3), written.as_text()),
    )


def _say(key: str, **values: object) -> str:
    return say(f"calculators.panel-plan.{key}", **values)


def _span(first: object, last: object) -> str:
    return _say("span", first=first, last=last)


def _blocks(plan: Plan) -> list[str]:
    """Ids of the blocks of the picture; base rows and hems are not among them."""
    return [block.id for block in plan.blocks if not is_edge(block.id)]


def _figures(plan: Plan, judged: Replay) -> Figures:
    sizes, found = resolve(plan.design), judged.summary
    width_note = say_n("common.needles", sizes.needles)
    height_note = say_n("common.rows", sizes.rows)
    width, height = finished_mm(plan, judged)
    part, added = plan.design.panel.part, _added(plan)
    finished: tuple[Figure, ...] = ()
    of_panel = "" if part is None else "panel-"
    if part is None:
        wider = "with-edging" if added == "edging" else "with-side-hems"
        width_note += _say(wider, size=both_text(width)) if width != sizes.width_mm else ""
        height_note += _say(f"with-{added}", size=both_text(height)) if height > sizes.height_mm else ""
    else:
        width_note += _say("with-seam-stitches") if part.seam_left + part.seam_right else ""
        finished = (
            Figure(_say("figure-panel"), _say("panel-of", n=part.number, panels=part.panels), _say("panel-note"), "panel_number"),
            Figure(_say("figure-finished-width"), both_text(width), _say("finished-joined"), "finished_width_mm"),
            Figure(_say("figure-finished-height"), both_text(height), _say(f"finished-{added}"), "finished_height_mm"),
        )
    return Figures(
        plan.design.title,
        (
            *finished,
            Figure(_say(f"figure-{of_panel}width"), both_text(sizes.width_mm), width_note, "width_mm"),
            Figure(_say(f"figure-{of_panel}height"), both_text(sizes.height_mm), height_note, "height_mm"),
            Figure(_say("figure-needles"), _span(name(plan.first_needle), name(plan.last_needle)), _say("bed-note")),
            Figure(
                _say("figure-gauge"),
                _say("per-10cm", stitches=short_decimal(sizes.stitches_per_10cm, 2), rows=short_decimal(sizes.rows_per_10cm, 2)),
                _say("per-10cm-note"),
            ),
            Figure(_say("figure-blocks"), f"{len(_blocks(plan))}", _order_note(plan), "blocks"),
            Figure(_say("figure-rows"), _span(found.rows_min, found.rows_max), _say("rows-note"), "rows_min"),
            Figure(_say("figure-fold"), say_n("common.rows", found.steepest_fold), _say("fold-note"), "steepest_fold"),
        ),
    )


def _added(plan: Plan) -> str:
    """What is added to the picture, by its largest part."""
    return "edging" if plan.design.edging is not None else "hems" if plan.design.hems != Hems() else "base"


def _order_note(plan: Plan) -> str:
    """What the order of the blocks costs, and whether any other could cost less."""
    found = plan.handling
    if found is None:
        return ""
    minutes = decimal_text(found.minutes, 1)
    if found.minutes == found.at_least:
        return _say("order-best", minutes=minutes)
    return _say("order-good", minutes=minutes, least=decimal_text(found.at_least, 1))


def _table(plan: Plan, judged: Replay) -> Table:
    names = {yarn.id: yarn.name for yarn in plan.design.yarns}
    metres = {block.block: decimal_text(block.mm / 1000, 1) for block in planned_needs(plan, judged).blocks}
    rows, keys, sides = [], [], []
    for block in plan.blocks:
        passes, stitches = judged.block_rows.get(block.id, 0), judged.block_stitches.get(block.id, 0)
        first = next((step for step in plan.steps[block.first_step : block.last_step + 1] if isinstance(step, Knit)), None)
        begins = _say(f"begins-{opposite(first.to)}") if first is not None else ""
        said = "" if is_edge(block.id) else block.id
        name_ = _say("edge-name", name=block.name, yarn=names.get(block.yarn, block.yarn)) if is_edge(block.id) else block.name
        rows.append((name_, said, begins, f"{passes}", f"{stitches}", metres.get(block.id, "")))
        keys.append(block.id)
        sides.append(opposite(first.to) if first is not None else "")
    heads = tuple(_say(f"blocks-{key}") for key in ("name", "id", "begins", "rows", "stitches", "metres"))
    return Table(_say("blocks"), heads, tuple(rows), tuple(keys), tuple(sides))


def _ends(judged: Replay) -> Figures:
    found = judged.summary
    return Figures(
        _say("ends"),
        (
            Figure(_say("ends-all"), f"{found.ends}", "", "ends"),
            Figure(_say("ends-inside"), f"{found.ends_inside}", _say("ends-inside-note"), "ends_inside"),
            Figure(_say("inside-starts"), f"{found.inside_starts}", "", "inside_starts"),
            Figure(_say("free-passes"), f"{found.free_passes}", _say("free-passes-note"), "free_passes"),
            Figure(_say("slits"), f"{len(found.slits)}", "", "slits"),
            Figure(_say("holes"), f"{len(found.holes)}", "", "holes"),
            Figure(_say("stairs"), f"{len(found.stairs)}", "", "stairs"),
            Figure(_say("floats"), f"{found.floats}", "", "floats"),
        ),
    )


def _yarns(plan: Plan, judged: Replay) -> Table:
    found = judged.summary
    rows = []
    for yarn in plan.design.yarns:
        picture, edge = found.stitches.get(yarn.id, 0), found.edge_stitches.get(yarn.id, 0)
        if picture or edge:
            rows.append((yarn.name, f"{picture}", f"{edge}", f"{picture + edge}"))
    heads = tuple(_say(f"yarns-{key}") for key in ("name", "picture", "edge", "all"))
    return Table(_say("yarns"), heads, tuple(rows))
