"""A plan in words: grouped steps, cues for the machine, the written pattern. Readers of a plan; they know no planner.

    from wedgework.words import cues, instructions

    for cue in cues(plan):                      # one thing to do at a time
        print(cue.where, *cue.before, cue.knit)
    print(instructions(plan, judged).as_text()) # the whole pattern

A plan is first cut into passages (one for each block: the check list before it, then handfuls of moves and rows);
the handfuls are counted from the carriage and folded into repeats (`grouping`), which go back to the steps exactly.
"""

from __future__ import annotations

from wedgework.words.cues import BedView, Cue, Row, cue_value, cues
from wedgework.words.grouping import Leaf, Literally, Move, Repeat, expand, group, read, unfold
from wedgework.words.instructions import Instructions, Section, instructions
from wedgework.words.moves import Now
from wedgework.words.passages import Handful, Passage, passages

__all__ = [
    "BedView",
    "Cue",
    "Handful",
    "Instructions",
    "Leaf",
    "Literally",
    "Move",
    "Now",
    "Passage",
    "Repeat",
    "Row",
    "Section",
    "cue_value",
    "cues",
    "expand",
    "group",
    "instructions",
    "passages",
    "read",
    "unfold",
]
