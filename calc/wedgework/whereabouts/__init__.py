"""Where am I? After an interruption the knitter says what she sees on the bed, and the places of the plan that fit are found.

    from wedgework.whereabouts import Seen, find, sights

    places = sights(plan)                                   # what would be seen at each place of the plan
    found = find(places, Seen(colour=(2, 53), open=(3, 53), carriage="L"), near=41)
    found.fits[0].sight.cue, found.fits[0].sight.done, found.fits[0].differs

A place is a cue (`wedgework.words`) before its moves, after them, or after some of its rows. The outermost needles that
carry the colour, held against the outermost needles that are not in HP, tell whether the moves were made and the rows not
yet. What a counter reads is a hint: it misses short rows that do not reach it.
"""

from __future__ import annotations

from wedgework.whereabouts.find import Answer, Difference, Fit, Seen, differences, find
from wedgework.whereabouts.resting import resting_values
from wedgework.whereabouts.sights import Part, Sight, sight_values, sights

__all__ = [
    "Answer",
    "Difference",
    "Fit",
    "Part",
    "Seen",
    "Sight",
    "differences",
    "find",
    "resting_values",
    "sight_values",
    "sights",
]
