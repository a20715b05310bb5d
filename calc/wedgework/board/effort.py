"""How much trouble a plan is, in minutes: what its order costs the person, and what has to be put right by hand afterwards.

    before = effort_of(plan, judged)
    weighed(before, effort_of(other_plan, other_judged)).better

The minutes for things that have to be put right are our own choice; they only have to rank two drawings of one piece.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, fields
from fractions import Fraction

from wedgework.formats.plan import Plan, is_edge
from wedgework.replay.advice import CRUMB, DEEP_FOLD
from wedgework.replay.result import Replay
from wedgework.say import say_n

__all__ = ["Effort", "Weighed", "effort_of", "weighed"]

_MINUTES = {
    "slits": Fraction(3),
    "slit_rows": Fraction(1, 10),  # sewn, stitch by stitch
    "stairs": Fraction(1),
    "holes": Fraction(1),
    "uneven": Fraction(1, 2),
    "crumbs": Fraction(2),
    "deep_rows": Fraction(1, 20),
}


@dataclass(frozen=True, slots=True)
class Effort:
    """Counts of what the model bed found, and the minutes of handling in hundredths."""

    handling: int
    slits: int
    slit_rows: int
    stairs: int
    holes: int
    uneven: int
    crumbs: int
    deep_rows: int
    ends: int
    blocks: int

    @property
    def minutes(self) -> Fraction:
        """What ranks two drawings; ends and blocks are in the handling already."""
        mending = sum((getattr(self, key) * each for key, each in _MINUTES.items()), Fraction(0))
        return Fraction(self.handling, 100) + mending

    def value(self) -> dict[str, int]:
        return {field.name: getattr(self, field.name) for field in fields(self)}

    @classmethod
    def read(cls, value: Mapping[str, object]) -> Effort | None:
        """The same back; None for what is none."""
        names = {field.name for field in fields(cls)}
        if value.keys() != names or not all(type(each) is int and 0 <= each < 10**9 for each in value.values()):
            return None
        return cls(**{key: each for key, each in value.items() if isinstance(each, int)})


def effort_of(plan: Plan, judged: Replay) -> Effort:
    summary = judged.summary
    blocks = [block for block in plan.blocks if not is_edge(block.id)]
    handling = plan.handling.minutes if plan.handling is not None else Fraction(0)
    return Effort(
        handling=int(handling * 100),
        slits=len(summary.slits),
        slit_rows=sum(slit.rows for slit in summary.slits),
        stairs=len(summary.stairs),
        holes=len(summary.holes),
        uneven=len(summary.uneven),
        crumbs=sum(0 < judged.block_stitches.get(block.id, 0) < CRUMB for block in blocks),
        deep_rows=max(0, summary.steepest_fold - DEEP_FOLD),
        ends=summary.ends,
        blocks=len(blocks),
    )


@dataclass(frozen=True, slots=True)
class Weighed:
    """One drawing against another: whether the second is less trouble, how many minutes less, and in what."""

    better: bool
    minutes: Fraction
    words: tuple[str, ...]


def weighed(before: Effort, after: Effort) -> Weighed:
    """At least half a minute less counts; a change for less is not worth a tap."""
    saved = before.minutes - after.minutes
    words = []
    for key in ("slits", "stairs", "holes", "crumbs", "ends", "blocks", "uneven"):
        fewer = getattr(before, key) - getattr(after, key)
        if fewer > 0:
            words.append(say_n(f"board.fewer-{key}", fewer))
        elif fewer < 0:
            words.append(say_n(f"board.more-{key}", -fewer))
    return Weighed(saved >= Fraction(1, 2), saved, tuple(words))
