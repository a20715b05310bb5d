"""Hems on the model bed: what was done at each end of the piece, and whether it is the hem that the design asks for."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from fractions import Fraction

from wedgework.finish import END_HEMS, EndHem, dial_of, end_hem
from wedgework.formats.design import Design
from wedgework.formats.plan import is_facing, is_hem
from wedgework.layout.sizes import Sizes
from wedgework.problems import Problem
from wedgework.say import say

__all__ = ["HemWork", "hem_problems"]

NEAR = 1
"""A hem may be so many rows off its depth, and its facing so many off its outside: handbooks differ by one row."""


@dataclass(slots=True)
class _AtEnd:
    outside: int = 0
    """Passes of the part that is seen."""
    behind: int = 0
    """Passes of facing and fold."""
    closing: int = 0
    """Passes behind after the loops were hung."""
    short: int = 0
    """Passes that did not knit every needle."""
    loose: int = 0
    """Passes behind at a higher tension than the yarn's own."""
    yarn: str = ""
    dialled: bool = False
    emptied: set[int] = field(default_factory=set)
    hung: set[int] = field(default_factory=set)


class HemWork:
    """Grows while the steps are carried out. Ends: 0 below the picture, 1 above it."""

    def __init__(self, tensions: Mapping[str, Fraction | None], on_waste: bool) -> None:
        self.ends = (_AtEnd(), _AtEnd())
        self.open: set[int] = set()
        """Places whose first row hangs open on waste yarn."""
        self._tensions = tensions
        self._on_waste = on_waste
        self._dial: Fraction | None = None
        self.turned = False
        """The dial was last turned for the part of a hem that lies behind, and not back since."""

    def dial(self, tension: Fraction, block_id: str) -> None:
        self._dial = tension
        self.turned = is_facing(block_id)

    def begin(self, working: Iterable[int]) -> None:
        """The first row of the piece."""
        self.open = set(working) if self._on_waste else set()
        self._on_waste = False

    def row(self, above: bool, block_id: str, yarn: str, every_needle: bool) -> tuple[Fraction, Fraction] | None:
        """A pass; the dial and the yarn's own tension, where it should have been turned back before."""
        tension = self._tensions.get(yarn)
        if is_hem(block_id):
            end = self.ends[above]
            end.yarn = yarn
            end.short += not every_needle
            if not is_facing(block_id):
                end.outside += 1
            elif end.hung:
                end.closing += 1
            else:
                end.behind += 1
            if is_facing(block_id) and tension is not None and self._dial is not None:
                end.dialled = True
                end.loose += self._dial > tension
        if not self.turned or is_facing(block_id) or tension is None or self._dial is None:
            return None
        self.turned = False
        return (self._dial, tension) if self._dial != tension else None


def hem_problems(design: Design, sizes: Sizes, work: HemWork, *, carried_on: bool) -> list[Problem]:
    """Hems that are not there, too deep or too shallow, with another fold, or open behind. Where a plan carries on a piece, the
    bottom hem is not among its steps."""
    found: list[Problem] = []
    for end, done in zip(END_HEMS, work.ends, strict=True):
        wanted = end_hem(design, sizes, end)
        if wanted is not None and not (carried_on and end == "bottom"):
            found += [
                Problem(f"design.hems.{end}", f"hem.{code}", say(f"replay.hem-{code}", end=say(f"replay.hem-{end}"), **values),
                        say(f"replay.hem-{code}.way-out"))
                for code, values in _wrong(wanted, done, _room(design, done.yarn))
            ]  # fmt: skip
    return found


def _room(design: Design, yarn: str) -> bool:
    """Whether the dial goes on beyond the yarn's tension, so that a row can be looser."""
    tension = next((each.tension for each in design.yarns if each.id == yarn), None)
    dial = dial_of(tension, design.bed.machine)
    return dial is not None and dial.fold > dial.outside


def _wrong(wanted: EndHem, done: _AtEnd, room: bool) -> list[tuple[str, dict[str, object]]]:
    if not done.outside:
        return [("missing", {})]
    found: list[tuple[str, dict[str, object]]] = []
    if abs(done.outside - wanted.outside) > NEAR:
        found.append(("depth", {"found": done.outside, "wanted": wanted.outside}))
    if abs(done.behind - wanted.fold - done.outside) > NEAR:
        found.append(("facing", {"found": done.behind - wanted.fold, "wanted": done.outside}))
    if done.short:
        found.append(("short", {"rows": done.short}))
    eyelets = wanted.picot.eyelets if wanted.picot else 0
    ends = {0, wanted.stitches - 1} & done.emptied
    if len(done.emptied) != eyelets or ends:
        found.append(("eyelets", {"found": len(done.emptied), "wanted": eyelets}))
    most = wanted.fold + done.closing
    if done.dialled and (done.loose > most or (room and done.loose < wanted.fold)):
        found.append(("fold", {"found": done.loose, "wanted": most}))
    if len(done.hung) < wanted.stitches:
        found.append(("open", {"loops": wanted.stitches - len(done.hung)}))
    return found
