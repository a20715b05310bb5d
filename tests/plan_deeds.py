"""The deeds of a plan, step by step: what a reader of its written pattern has to come to (see `reading_bed`)."""

from __future__ import annotations

from reading_bed import Deed
from wedgework.bed import across
from wedgework.formats.plan import (
    BindOff,
    Cut,
    Free,
    Hang,
    Hold,
    Join,
    Knit,
    Plan,
    Rest,
    Set,
    Thread,
    Transfer,
    Waste,
    Work,
    Wrap,
)
from wedgework.units import short_point


def deeds_of(plan: Plan, word: str = "yarn") -> list[Deed]:
    """A needle that goes forward and comes back before a row has done nothing."""
    # Yarns of one name are told apart by their number among all; `word` is that word in the language of the pattern.
    all_names = [each.name for each in plan.design.yarns]
    names = {
        each.id: each.name if all_names.count(each.name) == 1 else f"{each.name}, {word} {i}"
        for i, each in enumerate(plan.design.yarns, 1)
    }
    needles = across(*plan.start.working)
    held: set[int] = set()
    hold, yarn, blocks = False, "", dict[str, int]()
    resting: set[str] = set()
    found: list[Deed] = []
    for step in plan.steps:
        match step:
            case Set(hold_lever=lever, tension=tension):
                hold = lever == "hold" if lever else hold
                if tension is not None:
                    found.append(("tension", short_point(tension, 2)))
            case Hold(needles=moving):
                held.update(moving)
            case Work(needles=moving):
                held.difference_update(moving)
            case Thread(yarn=new, around=around):
                yarn = names[new]
                found.append(("thread", "again" if yarn in resting else "new", yarn, around))
                resting.discard(yarn)
            case Cut() | Rest():
                found.append(("cut" if isinstance(step, Cut) else "rest", yarn))
                resting.update({yarn} if isinstance(step, Rest) else ())
                yarn = ""
            case Join():
                found.append(("join", yarn))
            case Free(to=to):
                found.append(("free", to))
            case Knit(to=to, block=block, block_row=row):
                number = blocks.setdefault(block, len(blocks) + 1)
                found.append(("knit", to, tuple(n for n in needles if not (hold and n in held)), yarn, number, row))
                held = held if hold else set()
            case Wrap(needle=needle):
                found.append(("wrap", needle))
            case Transfer(from_needle=one, to_needle=other):
                found.append(("transfer", one, other))
            case Hang(needles=on):
                found.append(("hang", *on))
            case Waste(rows=rows):
                found.append(("waste", rows))
            case BindOff(needles=off):
                found.append(("bind off", *off))
    return found
