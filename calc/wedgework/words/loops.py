"""Loops that hands move and hang: eyelets of a picot fold, the layers of a hem. Several steps, or one step of many needles, told
in a few sentences."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from wedgework.bed import name, place
from wedgework.formats.plan import Hang, Join, Remind, Step, Transfer, Waste, is_facing, is_hem
from wedgework.say import say, say_n
from wedgework.words.grouping import Leaf, Literally
from wedgework.words.phrases import Speaker, needle_list, sentence
from wedgework.words.walk import Bed

__all__ = ["announced", "apart", "is_apart", "loop_sentences"]

MOST_MOVES = 4
"""More moves than these are told by the first, the second and the last."""


def loop_sentences(steps: Sequence[Step], at: int, bed: Bed, speaker: Speaker) -> tuple[str, ...] | None:
    """Step `at` of `steps`, made on `bed`, where loops are moved or hung; empty inside a run of moves, which its first step tells
    whole; None for any other step."""
    step = steps[at]
    if isinstance(step, Hang):
        return _hang(step, bed, speaker)
    if not isinstance(step, Transfer):
        return None
    if at and isinstance(steps[at - 1], Transfer):
        return ()
    run: list[Transfer] = []
    for one in steps[at:]:
        if not isinstance(one, Transfer):
            break
        run.append(one)
    return _moved(run, bed, speaker)


def _moved(run: Sequence[Transfer], bed: Bed, speaker: Speaker) -> tuple[str, ...]:
    """Every second stitch to the left, as a picot fold has it; anything else move by move."""
    every_second = all(place(b.from_needle) - place(a.from_needle) == 2 for a, b in pairwise(run))
    to_the_left = all(place(one.to_needle) == place(one.from_needle) - 1 for one in run)
    if len(run) < 2 or not (every_second and to_the_left):
        return (*(sentence(speaker.step(one, bed)) for one in run), say("words.hooks"))
    moves = [say("words.picot-move", first=name(one.from_needle), last=name(one.to_needle)) for one in run]
    if len(moves) > MOST_MOVES:
        told = say("words.picot-and-so-on", first=moves[0], second=moves[1], last=moves[-1])
    else:
        told = ", ".join(moves)
    kept = [n for n in bed.needles if place(n) > place(run[-1].from_needle)]
    return (
        say("words.picot", moves=told),
        say_n("words.picot-empty", len(run), position=speaker.position("working")),
        *((say_n("words.picot-kept", len(kept), needles=needle_list(kept)),) if kept else ()),
        say("words.hooks"),
    )


def _hang(step: Hang, bed: Bed, speaker: Speaker) -> tuple[str, ...]:
    """The whole row of a hem; single loops, as in linking a border, are one phrase."""
    if not is_hem(bed.block) or len(step.needles) < len(bed.needles):
        return (sentence(speaker.step(step, bed)),)
    which = "top" if is_facing(bed.block) else "bottom"
    return (
        say("words.hang-weights-off"),
        say(f"words.hang-{which}", yarn=speaker.yarn(bed.yarn), needles=needle_list(step.needles)),
        say("words.hang-skip-none"),
        say("words.hooks"),
        say("words.hang-weights-on"),
    )


def is_apart(step: Step) -> bool:
    """Whether a step is a sentence of its own and no part of "hold 1 needle, knit 2 rows"."""
    return isinstance(step, Hang | Transfer | Remind | Waste)


def apart(leaf: Leaf, bed: Bed, speaker: Speaker) -> tuple[tuple[str, ...], Leaf]:
    """The sentences of its own that a leaf begins with, and the leaf without them."""
    said: list[str] = []
    moves = leaf.moves
    if moves and isinstance(moves[0], Literally) and isinstance(moves[0].step, Join):
        # A new ball comes before everything else there; after a wrap by hand it stays where it is in the order.
        said.append(sentence(speaker.step(moves[0].step, bed)))
        moves = moves[1:]
    steps = [move.step for move in moves if isinstance(move, Literally)]
    for at, step in enumerate(steps):
        loops = loop_sentences(steps, at, bed, speaker)
        if loops is not None:
            said += loops
        elif is_apart(step):
            said.append(sentence(speaker.step(step, bed)))
    rest = tuple(move for move in moves if not (isinstance(move, Literally) and is_apart(move.step)))
    return tuple(said), Leaf(rest, leaf.rows)


_ANNOUNCED = (("join", Join), ("hang", Hang), ("transfer", Transfer))


def announced(leaf: Leaf, bed: Bed, speaker: Speaker) -> list[str]:
    """The moves of a leaf as short phrases, for the sentence that says what comes next."""
    steps = [move.step for move in leaf.moves if isinstance(move, Literally)]
    said = [say(f"words.next-{key}") for key, kind in _ANNOUNCED if _any(steps, kind)]
    return said + speaker.moves(apart(leaf, bed, speaker)[1].moves, bed)


def _any(steps: Sequence[Step], kind: type) -> bool:
    return any(isinstance(step, kind) for step in steps)
