"""Which yarn is in the feeder, which rests uncut on the mast, where it is cut and where a new end begins."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from wedgework.plan.strand import Strand, within_reach

__all__ = ["Change", "Passage", "feed"]


@dataclass(frozen=True, slots=True)
class Passage:
    """Something knitted in one go with one yarn: a block, or base rows."""

    yarn: str
    begins: Strand
    ends: Strand


@dataclass(frozen=True, slots=True)
class Change:
    """What happens to the yarns before a passage.

    `away`: what becomes of the yarn in the feeder; `nothing` where it knits on, or none is threaded.
    `thread`: whether a yarn is threaded; `anew` with a new end, or where it hangs.
    """

    away: Literal["nothing", "cut", "rest"]
    thread: bool
    anew: bool


def feed(passages: Sequence[Passage], strand_limit: int, yarns_on_mast: int) -> list[Change]:
    """The change before each passage. A yarn rests wherever it can be taken up again and the mast has room: two ends saved."""
    changes: list[Change] = []
    resting: set[str] = set()
    for i, passage in enumerate(passages):
        before = passages[i - 1] if i else None
        if before is None:
            changes.append(Change("nothing", True, True))
            continue
        reaches = before.yarn == passage.yarn and within_reach(before.ends, passage.begins, strand_limit)
        if reaches and before.ends.side == passage.begins.side:
            changes.append(Change("nothing", False, False))
            continue
        again = next((p for p in passages[i:] if p.yarn == before.yarn), None)
        on_mast = len(resting | {before.yarn, passage.yarn})
        rests = again is not None and within_reach(before.ends, again.begins, strand_limit) and on_mast <= yarns_on_mast
        if rests:
            resting.add(before.yarn)
        changes.append(Change("rest" if rests else "cut", True, passage.yarn not in resting))
        resting.discard(passage.yarn)
    return changes
