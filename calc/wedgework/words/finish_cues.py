"""The list of finishing as cues of a few lines each, so that none has to be scrolled on a small screen."""

from __future__ import annotations

from collections.abc import Mapping, Sequence

from wedgework.say import say

__all__ = ["finishing_cues"]

MOST_LINES, MOST_LETTERS = 3, 260
"""So much stands on the smallest screen in the type of the machine page. Our own choice."""


def finishing_cues(last: Mapping[str, object], sentences: Sequence[str]) -> list[dict[str, object]]:
    """`last`: the cue with which the piece comes off the machine, as plain data. The bed is empty from then on."""
    lists = _lists(sentences)
    bed = last["bed"]
    if not isinstance(bed, dict):
        raise TypeError("a cue has a bed")
    empty = bed | {"knitting": [], "held": [], "returning": [], "holding": [], "beside": None, "yarn": ""}
    first = int(str(last["index"])) + 1
    found = []
    for i, lines in enumerate(lists):
        following = say("words.finish-next", n=i + 2, all=len(lists)) if i + 1 < len(lists) else say("words.next-nothing")
        found.append(
            dict(last)
            | {
                "index": first + i,
                "kind": "finish",
                "block_name": say("words.finish-part", n=i + 1, all=len(lists)),
                "where": "",
                "before": list(lines),
                "next": following,
                "bed": empty,
                "good_to_stop": False,
            }
        )
    return found


def _lists(sentences: Sequence[str]) -> list[list[str]]:
    lists: list[list[str]] = []
    for words in sentences:
        if not lists or len(lists[-1]) == MOST_LINES or sum(map(len, lists[-1])) + len(words) > MOST_LETTERS:
            lists.append([])
        lists[-1].append(words)
    return lists
