"""The English sentences, one module for each room that speaks; a key begins with the room's name."""

from __future__ import annotations

from collections.abc import Iterable, Mapping

from wedgework.say.english import (
    app,
    blankets,
    calculators,
    calculators_blocking,
    calculators_circle,
    calculators_even_shaping,
    calculators_panels,
    calculators_size,
    calculators_tension,
    calculators_time,
    calculators_yarn_count,
    common,
    declare,
    draw,
    draw_calculators,
    faces,
    faces_links,
    formats,
    formats_about,
    gauge,
    layout,
    layouts,
    machine,
    plan,
    replay,
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
        blankets.MESSAGES,
        calculators.MESSAGES,
        calculators_blocking.MESSAGES,
        calculators_circle.MESSAGES,
        calculators_even_shaping.MESSAGES,
        calculators_panels.MESSAGES,
        calculators_size.MESSAGES,
        calculators_tension.MESSAGES,
        calculators_time.MESSAGES,
        calculators_yarn_count.MESSAGES,
        common.MESSAGES,
        declare.MESSAGES,
        draw.MESSAGES,
        draw_calculators.MESSAGES,
        faces.MESSAGES,
        faces_links.MESSAGES,
        formats.MESSAGES,
        formats_about.MESSAGES,
        gauge.MESSAGES,
        layout.MESSAGES,
        layouts.MESSAGES,
        machine.MESSAGES,
        plan.MESSAGES,
        replay.MESSAGES,
        site.MESSAGES,
        site_tables.MESSAGES,
        units.MESSAGES,
        words.MESSAGES,
        yarn.MESSAGES,
    ]
)
