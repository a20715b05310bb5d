"""Hems at the ends as steps: waste yarn, facing, fold, outside, hanging, binding off. What comes when is common practice.

Where the yarn has a tension of its own the dial is set, and set back; where it has none, steps remind of it.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.finish import EndHem, dial_of
from wedgework.formats.design import Design
from wedgework.formats.plan import Hang, Remind, Set, Step, Transfer, Waste
from wedgework.plan.feed import Change
from wedgework.plan.record import Recorder
from wedgework.say import say

__all__ = ["bottom_hem", "top_hem"]

WASTE_ROWS = 8
"""The last of them in ravel cord; an even number, so that the carriage is back where it began. Common practice, no source."""
KNITS_ON = Change("nothing", False, False)


def bottom_hem(recorder: Recorder, hem: EndHem, change: Change, yarn: str, design: Design) -> Change:
    """Waste yarn, facing, fold, outside; then the first row is hung. Returns the change before the rows that join it."""
    dial = dial_of(_tension(yarn, design), design.bed.machine)
    tighter = _turned(dial.facing if dial else None, "hem-tighter")
    back = _turned(dial.outside if dial else None, "hem-back")
    fold: Sequence[Step | int] = () if hem.picot else (*_fold(dial.fold if dial else None), 1)
    recorder.strip(
        change,
        "hem-bottom-facing",
        _name("hem-bottom-facing", hem),
        yarn,
        (*tighter, hem.facing, *fold),
        first=(Waste(WASTE_ROWS),),
    )
    recorder.strip(
        KNITS_ON,
        "hem-bottom",
        say("plan.hem-bottom"),
        yarn,
        (*_eyelets(recorder, hem), *back, hem.outside, Hang(recorder.names)),
    )
    return KNITS_ON


def top_hem(recorder: Recorder, hem: EndHem, yarn: str, design: Design) -> None:
    """The other way round; one loose row over both layers, and the piece is ready to be bound off."""
    dial = dial_of(_tension(yarn, design), design.bed.machine)
    recorder.strip(KNITS_ON, "hem-top", say("plan.hem-top"), yarn, (Remind("hem-mark"), hem.outside))
    fold: Sequence[Step | int] = () if hem.picot else (*_fold(dial.fold if dial else None), 1)
    recorder.strip(
        KNITS_ON,
        "hem-top-facing",
        _name("hem-top-facing", hem),
        yarn,
        (
            *_eyelets(recorder, hem),
            *fold,
            *_turned(dial.facing if dial else None, "hem-tighter"),
            hem.facing,
        ),
    )
    recorder.strip(
        KNITS_ON,
        "hem-top-facing-close",
        say("plan.hem-top-facing-close"),
        yarn,
        (Hang(recorder.names), *_turned(dial.closing if dial else None, "hem-loose"), hem.closing),
    )


def _name(key: str, hem: EndHem) -> str:
    return say(f"plan.{key}-picot" if hem.picot else f"plan.{key}")


def _tension(yarn: str, design: Design) -> Fraction | None:
    return next((each.tension for each in design.yarns if each.id == yarn), None)


def _turned(tension: Fraction | None, reminder: str) -> tuple[Step, ...]:
    return (Remind(reminder),) if tension is None else (Set(tension=tension),)


def _fold(tension: Fraction | None) -> tuple[Step, ...]:
    return (Remind("hem-fold-loose"),) if tension is None else (Remind("hem-fold"), Set(tension=tension))


def _eyelets(recorder: Recorder, hem: EndHem) -> tuple[Step, ...]:
    """Every second stitch to its neighbour on the left."""
    names = recorder.names
    return tuple(Transfer(names[place - 1], names[place - 2]) for place in hem.picot.emptied) if hem.picot else ()
