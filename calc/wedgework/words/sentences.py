"""A block's grouped rows as sentences: "Hold 1 needle at the carriage, knit 2 rows, 23 times (L24-L2). COL. RC 047."."""

from __future__ import annotations

from collections.abc import Sequence

from wedgework.bed import name, opposite
from wedgework.formats.plan import Hold, Step, Work
from wedgework.say import say, say_n
from wedgework.words.grouping import Leaf, Repeat, expand
from wedgework.words.loops import apart
from wedgework.words.passages import Passage
from wedgework.words.phrases import Speaker, needle_list, runs, sentence
from wedgework.words.walk import Bed, by_end, step_over

__all__ = ["row_sentences"]


def row_sentences(passage: Passage, speaker: Speaker) -> tuple[str, ...]:
    """One sentence for each item of the block's groups, with the needles it moves and where it ends."""
    said: list[str] = []
    bed = passage.handfuls[0].bed
    for item in passage.grouped:
        steps = expand(bed, (item,))
        first: tuple[str, ...] = ()
        if isinstance(item, Leaf):
            first, item = apart(item, bed, speaker)
        if isinstance(item, Leaf) and not item.moves:
            words = speaker.knit(item.rows, opposite(bed.carriage))
        else:
            words = sentence(_phrase(item, speaker, bed))
        named = _needles(bed, steps)
        for step in steps:
            bed = step_over(bed, step)
        key = "words.rows-named" if named else "words.rows"
        said.append(" ".join((*first, say(key, words=words.rstrip("."), needles=named, where=speaker.where(bed)))))
    return tuple(said)


def _phrase(item: Leaf | Repeat, speaker: Speaker, bed: Bed, *, short: bool = False, inside: bool = False) -> str:
    """`short` where a phrase before it in the sentence named the needles, `inside` another repeat."""
    if isinstance(item, Leaf):
        parts = speaker.moves(item.moves, bed, short=short)
        if item.rows:
            parts.append(say_n("words.knit-rows", item.rows))
        return ", ".join(parts)
    phrases = []
    for inner in item.body:
        phrases.append(_phrase(inner, speaker, bed, short=short, inside=True))
        short = True
    several = len(item.body) > 1 or isinstance(item.body[0], Repeat) or inside
    times = say("words.times-2") if item.times == 2 else say_n("words.times", item.times)
    return say("words.run-several" if several else "words.run", phrase=", ".join(phrases), times=times)


def _needles(bed: Bed, steps: Sequence[Step]) -> str:
    """The needles that are held and returned at either edge, from the first that moves to the last; empty for none."""
    moved: dict[tuple[str, str], set[int]] = {}
    for step in steps:
        if isinstance(step, Hold | Work):
            do = "hold" if isinstance(step, Hold) else "work"
            for side, needles in by_end(bed, step):
                moved.setdefault((do, side or ""), set()).update(needles)
        bed = step_over(bed, step)
    both_ways = len({do for do, _ in moved}) > 1
    both_edges = len({edge for _, edge in moved}) > 1
    said = []
    for (do, edge), found in sorted(moved.items()):
        words = _from_to(found, outward=do == "work", left=edge == "L") if edge else needle_list(found)
        if both_edges and edge:
            words = say(f"words.edge-{edge}", needles=words)
        said.append(say(f"words.moved-{do}", needles=words) if both_ways else words)
    return ", ".join(said)


def _from_to(needles: set[int], *, outward: bool, left: bool) -> str:
    """L24 to L2, in the order in which an edge moves; a list where they are not neighbours."""
    in_order = sorted(needles, reverse=outward == left)
    whole = runs(needles)
    if len(whole) > 1 or len(needles) == 1:
        return needle_list(needles)
    return say("words.to", first=name(in_order[0]), last=name(in_order[-1]))
