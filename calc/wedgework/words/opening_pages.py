"""What a knitter reads before the first row: the piece, its yarns, the words and signs, cautions, notes."""

from __future__ import annotations

from wedgework.bed import name, span
from wedgework.finish import END_HEMS, end_hem
from wedgework.formats.design import Hems
from wedgework.formats.plan import Plan
from wedgework.layout import Sizes, is_shaped, resolve
from wedgework.replay.result import Replay
from wedgework.say import say, say_n
from wedgework.units import both_text, short_decimal
from wedgework.words.finishing import finished_mm
from wedgework.words.phrases import Speaker, position_sign
from wedgework.words.titles import block_count

__all__ = ["cautions", "key", "notes", "piece", "yarns"]


def piece(plan: Plan, judged: Replay) -> tuple[str, ...]:
    """Size, gauge, bed and needles."""
    design, sizes = plan.design, resolve(plan.design)
    needles = span(plan.first_needle, plan.last_needle)
    said = _size(plan, judged, sizes)
    said.append(_gauge(plan, sizes))
    said.append(
        say("words.piece-bed", needles=say_n("common.needles", design.bed.needles), pitch=short_decimal(design.bed.pitch_mm, 2))
    )
    said.append(
        say(
            "words.piece-needles",
            first=name(plan.first_needle),
            last=name(plan.last_needle),
            count=say_n("common.needles", needles),
        )
    )
    left = -plan.first_needle if plan.first_needle < 0 else 0
    if needles % 2 and abs(2 * left - needles) == 1:
        said.append(say("words.piece-odd-L" if 2 * left > needles else "words.piece-odd-R"))
    said.append(say_n("words.piece-blocks", block_count(plan), ends=say_n("words.ends", judged.summary.ends)))
    low, high = judged.rows_min, judged.rows_max
    if is_shaped(plan.design):
        said.append(say("words.piece-rows-shaped", low=low, high=say_n("common.rows", high)))
    elif low == high:
        said.append(say("words.piece-rows", rows=say_n("common.rows", low)))
    else:
        said.append(say("words.piece-rows-between", low=low, high=say_n("common.rows", high)))
    said.append(say("words.piece-purl"))
    return tuple(said)


def _size(plan: Plan, judged: Replay, sizes: Sizes) -> list[str]:
    """The finished piece, with base rows, hems and edging; the picture in it, or the panel of it; each hem."""
    width, height = finished_mm(plan, judged)
    picture = {
        "width": both_text(sizes.width_mm),
        "height": both_text(sizes.height_mm),
        "stitches": say_n("common.stitches", sizes.needles),
        "rows": say_n("common.rows", sizes.rows),
    }
    design, part = plan.design, plan.design.panel.part
    added = "edging" if design.edging is not None else "hems" if design.hems != Hems() else "base"
    if added == "base" and part is None and height == sizes.height_mm:
        return [say("words.piece-size", **picture)]
    finished = say(f"words.piece-size-{added}", width=both_text(width), height=both_text(height))
    said = [finished]
    if part is None:
        said.append(say("words.piece-picture", **picture))
    else:
        place = {"n": part.number, "panels": part.panels, "first": part.first, "last": part.last}
        said.append(say("words.piece-panel", **place, **picture))
    for end in END_HEMS:
        hem = end_hem(plan.design, sizes, end)
        if hem is not None:
            said.append(
                say(
                    f"words.piece-hem-{'picot' if hem.picot else 'plain'}",
                    end=say(f"words.piece-hem-{end}"),
                    depth=both_text(hem.outside * sizes.row_mm),
                    outside=say_n("common.rows", hem.outside),
                    facing=hem.facing,
                )
            )
    return said


def _gauge(plan: Plan, sizes: Sizes) -> str:
    swatch = plan.design.gauge.swatch
    treated = "typed" if swatch is None else "unwashed" if swatch.washed is None else "washed"
    inch = sizes.stitches_per_10cm * 254 / 1000, sizes.rows_per_10cm * 254 / 1000
    return say(
        "words.piece-gauge",
        stitches=short_decimal(sizes.stitches_per_10cm, 1),
        rows=short_decimal(sizes.rows_per_10cm, 1),
        stitches_in=short_decimal(inch[0], 2),
        rows_in=short_decimal(inch[1], 2),
        treated=say(f"words.piece-gauge-{treated}"),
    )


def yarns(plan: Plan, judged: Replay) -> tuple[str, ...]:
    """Each yarn of the piece with its stitches, base rows and end hems counted in."""
    said = []
    speaker = Speaker.of(plan)
    for yarn in plan.design.yarns:
        count = judged.summary.stitches.get(yarn.id, 0) + judged.summary.edge_stitches.get(yarn.id, 0)
        if not count:
            continue
        stitches = say_n("common.stitches", count)
        if yarn.tension is None:
            said.append(say("words.yarn", name=speaker.yarn(yarn.id), stitches=stitches))
        else:
            said.append(
                say("words.yarn-tension", name=speaker.yarn(yarn.id), stitches=stitches, tension=short_decimal(yarn.tension, 2))
            )
    return tuple(said)


def key(plan: Plan) -> tuple[str, ...]:
    """The words and signs, with the person's own names of the needle positions."""
    speaker = Speaker.of(plan)
    said = [say("words.key-COL"), say("words.key-RC", counter=speaker.counter(0))]
    said += [say(f"words.key-{sign}") for sign in ("NWP", "WP", "UWP", "HP")]
    for which, own in plan.design.bed.machine.position_names.items():
        if own:
            said.append(say("words.key-own", position=position_sign(which), own=own))
    # From here on a position has the name that it has in the sentences.
    said.append(say("words.key-hold", position=speaker.position("holding")))
    said.append(say("words.key-return", position=speaker.position("upper-working")))
    said += [say("words.key-opposite"), say("words.key-T")]
    return tuple(said)


def cautions() -> tuple[str, ...]:
    """The usual ones; common practice, and the infants' safe-sleep advice of the AAP (2022) and the US CPSC (2021)."""
    return tuple(say(f"words.caution-{what}") for what in ("needles", "weights", "strain", "infants"))


def notes(judged: Replay) -> tuple[str, ...]:
    """What holds for the whole piece."""
    said = [say(f"words.notes-{what}") for what in ("clear", "wrap", "weights")]
    if judged.summary.steepest_fold:
        said.append(say_n("words.notes-fold", judged.summary.steepest_fold))
    said += [say("words.notes-even"), say("words.notes-counter")]
    return tuple(said)
