"""The English sentences, one module for each room that speaks; a key begins with the room's name."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from wedgework.say.english import (
    app,
    app_board,
    app_class,
    app_fabric,
    app_keep,
    app_onward,
    blankets,
    board,
    calculators,
    calculators_blocking,
    calculators_carry_on,
    calculators_circle,
    calculators_edging,
    calculators_even_shaping,
    calculators_hem,
    calculators_of_plans,
    calculators_panels,
    calculators_practice_piece,
    calculators_scraps,
    calculators_shelf,
    calculators_short_row_shape,
    calculators_side_hem,
    calculators_size,
    calculators_stripes,
    calculators_tension,
    calculators_time,
    calculators_written_pattern,
    calculators_yarn_count,
    calculators_yarn_needs,
    common,
    declare,
    draw,
    draw_calculators,
    draw_finish,
    faces,
    faces_links,
    faces_tools,
    formats,
    formats_about,
    gauge,
    layout,
    layouts,
    machine,
    machine_help,
    plan,
    practice,
    replay,
    reports,
    site,
    site_tables,
    units,
    words,
    yarn,
)

__all__ = ["MESSAGES"]

Forms = str | tuple[str, str]


def _joined(rooms: Iterable[Mapping[str, Forms]]) -> dict[str, Forms]:
    """All rooms in one mapping; a key that two rooms claim is a mistake."""
    everything: dict[str, Forms] = {}
    for room in rooms:
        twice = everything.keys() & room.keys()
        if twice:
            raise KeyError(f"said twice: {sorted(twice)}")
        everything.update(room)
    return everything


MESSAGES: Mapping[str, Forms] = _joined(
    [
        app.MESSAGES,
        app_board.MESSAGES,
        app_class.MESSAGES,
        app_fabric.MESSAGES,
        app_keep.MESSAGES,
        app_onward.MESSAGES,
        blankets.MESSAGES,
        board.MESSAGES,
        calculators.MESSAGES,
        calculators_blocking.MESSAGES,
        calculators_carry_on.MESSAGES,
        calculators_circle.MESSAGES,
        calculators_edging.MESSAGES,
        calculators_even_shaping.MESSAGES,
        calculators_of_plans.MESSAGES,
        calculators_hem.MESSAGES,
        calculators_panels.MESSAGES,
        calculators_practice_piece.MESSAGES,
        calculators_short_row_shape.MESSAGES,
        calculators_scraps.MESSAGES,
        calculators_shelf.MESSAGES,
        calculators_side_hem.MESSAGES,
        calculators_size.MESSAGES,
        calculators_stripes.MESSAGES,
        calculators_tension.MESSAGES,
        calculators_time.MESSAGES,
        calculators_yarn_count.MESSAGES,
        calculators_written_pattern.MESSAGES,
        calculators_yarn_needs.MESSAGES,
        common.MESSAGES,
        declare.MESSAGES,
        draw.MESSAGES,
        draw_calculators.MESSAGES,
        draw_finish.MESSAGES,
        faces.MESSAGES,
        faces_links.MESSAGES,
        faces_tools.MESSAGES,
        formats.MESSAGES,
        formats_about.MESSAGES,
        gauge.MESSAGES,
        layout.MESSAGES,
        layouts.MESSAGES,
        machine.MESSAGES,
        machine_help.MESSAGES,
        plan.MESSAGES,
        practice.MESSAGES,
        replay.MESSAGES,
        reports.MESSAGES,
        site.MESSAGES,
        site_tables.MESSAGES,
        units.MESSAGES,
        words.MESSAGES,
        yarn.MESSAGES,
    ]
)
