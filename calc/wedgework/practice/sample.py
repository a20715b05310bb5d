"""Trying small pieces until one contains everything that the whole does."""

from __future__ import annotations

import itertools
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import NamedTuple

from wedgework.exact import nearest
from wedgework.formats.design import Design, DrawnLayout, Extent, Hems, Panel
from wedgework.layout import drawn_layout, is_shaped, resolve
from wedgework.layout.grid import Grid
from wedgework.layout.sizes import Sizes
from wedgework.plan import plan_piece
from wedgework.plan.regions import chains_of
from wedgework.practice.cuts import Window, cut, drawn, scaled, stacked
from wedgework.practice.kinds import KINDS, Spot, kinds_of
from wedgework.practice.made import made
from wedgework.problems import Problem, Refused
from wedgework.replay import replay_plan
from wedgework.say import say

__all__ = ["Practice", "practice", "practice_piece"]

NEEDLES = (20, 24, 30)
"""Widths that are tried: enough for a slope, little enough for an evening. Common practice for a sample, no source."""
_FEWEST_TURNS, _MOST_TURNS = 8, 30
_MOST_WINDOWS = 24
_MOST_PARTS = 3
_MOST_BLOCKS, _MOST_BLOCKS_MADE = 14, 22
"""A sample of more blocks is no sample; a few more where figures are added to it."""
_MOST_FIGURES = 4
_LITTLE = 1500
"""Effort of a sample with which the search is content."""
_END = 60
"""Stitches that can be knitted while an end is threaded, cut and worked in. Our own choice."""
_MOST_TRIED, _MOST_MADE, _MOST_TRIMMED = 36, 16, 8
"""Pieces that are planned; more of them where something is missing, and to make the best one smaller. A tablet plans a few in a
second."""


class _Look(NamedTuple):
    """How windows are cut: their height, and how many places are looked at for each kind."""

    turns: int
    spots: int


_SMALL, _LARGE = _Look(12, 2), _Look(20, 4)


@dataclass(frozen=True, slots=True)
class Practice:
    """A practice piece, what it shows of the whole, and what it does not."""

    design: Design
    shows: tuple[str, ...]
    """Kinds (see `KINDS`) that the plan of the whole contains and that of the practice piece too."""
    lacks: tuple[str, ...]
    """Kinds that only the whole contains."""

    @property
    def reasons(self) -> tuple[str, ...]:
        """For each kind that it lacks a sentence that says so, and why."""
        return tuple(say(f"practice.lacks-{_reason(kind)}", kind=say(f"practice.{kind}")) for kind in self.lacks)


@dataclass(frozen=True, slots=True)
class _Tried:
    grid: Grid
    design: Design
    kinds: frozenset[str]
    effort: int
    """Stitches, with each end as so many."""


def practice_piece(design: Design) -> Design:
    """The practice piece of `design`, as a design of its own; raises like `practice`."""
    return practice(design).design


def practice(design: Design) -> Practice:
    """The smallest piece that was found, with the most kinds. Raises Refused where the design cannot be planned, or is shaped."""
    if is_shaped(design):
        raise Refused([Problem("layout", "practice.shaped", say("practice.shaped"), say("practice.shaped.way-out"))])
    plan = plan_piece(design)
    judged = replay_plan(plan)
    if judged.problems:
        raise Refused(judged.problems)
    sizes = resolve(design)
    spots = kinds_of(plan, judged)
    best = _best(_Trial(design, drawn_layout(design, sizes), sizes, frozenset(spots)), spots)
    shows = tuple(kind for kind in KINDS if kind in best.kinds)
    lacks = tuple(kind for kind in KINDS if kind in spots and kind not in best.kinds)
    found = Practice(best.design, shows, lacks)
    if not lacks:
        return found
    return replace(found, design=replace(best.design, notes="\n".join((best.design.notes, *found.reasons))))


class _Trial:
    """Plans small pieces of one design, each only once."""

    def __init__(self, design: Design, layout: DrawnLayout, sizes: Sizes, wanted: frozenset[str]) -> None:
        self.layout = layout
        self.sizes = sizes
        self.wanted = wanted
        self.most = _MOST_TRIED
        self.blocks = _MOST_BLOCKS
        self._design = design
        self._done: dict[Grid, _Tried | None] = {}

    def grid(self, scale: Fraction) -> Grid:
        """The whole picture, or the panel of it that is knitted, so much smaller."""
        across = max(2, nearest(self.sizes.across * scale))
        turns = max(1, nearest(self.sizes.rows * scale / 2))
        least = nearest(self._design.options.merge_below * scale * scale)
        grid = scaled(self.layout, across, 2 * turns, least)
        part = self._design.panel.part
        if part is None:
            return grid
        return cut(grid, Window(nearest((part.first - 1) * scale), 0, max(2, nearest(self.sizes.needles * scale)), turns))

    def judge(self, grid: Grid) -> _Tried | None:
        """What the piece contains of what is wanted; None where it is no good piece of its own."""
        planned = sum(one is not None for one in self._done.values())
        if grid not in self._done and planned >= self.most:
            return None
        if grid not in self._done:
            self._done[grid] = self._judge(grid)
        return self._done[grid]

    def _judge(self, grid: Grid) -> _Tried | None:
        if len(chains_of(grid)) > self.blocks:
            return None
        design = self._piece(grid)
        try:
            plan = plan_piece(design)
        except Refused:
            return None
        judged = replay_plan(plan)
        if judged.problems or judged.summary.floats or judged.summary.holes or judged.summary.dropped:
            return None
        kinds = kinds_of(plan, judged)
        if "join-slit" in kinds and "join-slit" not in self.wanted:
            return None  # what the whole does not ask for need not be linked here
        stitches = 2 * grid.needles * len(grid.turns)
        return _Tried(grid, design, self.wanted & kinds.keys(), stitches + _END * judged.summary.ends)

    def whole(self) -> _Tried:
        """The piece itself, which contains everything: for pictures of which no part can be knitted well."""
        design = replace(self._design, title=_title(self._design), notes=say("practice.no-sample"))
        return _Tried(self.grid(Fraction(1)), design, self.wanted, 0)

    def _piece(self, grid: Grid) -> Design:
        whole = self._design
        return replace(
            whole,
            title=_title(whole),
            notes=say("practice.notes"),
            panel=Panel(Extent(count=grid.needles), Extent(count=2 * len(grid.turns))),
            layout=drawn(grid),
            hems=Hems(),
            edging=None,
            options=replace(whole.options, order=(), merge_below=0),
        )


def _title(whole: Design) -> str:
    return say("practice.title", title=whole.title)[:200]


def _best(trial: _Trial, spots: Mapping[str, Sequence[Spot]]) -> _Tried:
    """The whole made smaller, then windows where a kind comes up, then windows on one another; at the end what can go goes."""
    tried = _judged(trial, _smaller(trial))
    for look in (_SMALL, _LARGE):
        if _full(tried, trial, _LITTLE if look == _SMALL else None):
            break
        columns = _ranked(tried)[0].grid.needles if tried else NEEDLES[1]
        has = _ranked(tried)[0].kinds if tried else frozenset()
        wanted = {kind: spots[kind] for kind in spots if look == _SMALL or kind not in has}
        tried += _judged(trial, _windows(trial, wanted, look, columns))
        if not _full(tried, trial, _LITTLE) and tried:
            tried += _stacks(trial, [one for one in tried if one.kinds != trial.wanted] or tried)
    if not tried:
        return trial.whole()
    return _trimmed(trial, _with_figures(trial, _ranked(tried)[0]))


def _with_figures(trial: _Trial, found: _Tried) -> _Tried:
    """On top, or below, a figure for each kind that no part of the piece had room for.

    What is laid on a piece may change how its blocks are begun, and with that the steps of an edge: so a kind may get lost, and
    gets a figure too.
    """
    # Also where nothing is missing: what is trimmed afterwards is judged with what is left of it, and may have as many blocks.
    trial.most, trial.blocks = trial.most + _MOST_MADE, _MOST_BLOCKS_MADE
    yarns = list(dict.fromkeys(cells.yarn for turn in found.grid.turns for cells in turn))
    best = found
    for pair, below in itertools.product(itertools.permutations(yarns[:3], 2), (False, True)):
        figures: dict[str, Grid] = {}
        now: _Tried | None = found
        while now is not None and now.kinds != trial.wanted and len(figures) < _MOST_FIGURES:
            more = [
                (kind, made(kind, found.grid.needles, pair)) for kind in sorted(trial.wanted - now.kinds) if kind not in figures
            ]
            new = {kind: figure for kind, figure in more if figure is not None}
            if not new:
                break
            figures |= new
            now = trial.judge(stacked((*figures.values(), found.grid) if below else (found.grid, *figures.values())))
            if now is not None and len(now.kinds) > len(best.kinds):
                best = now
        if best.kinds == trial.wanted:
            break
    return best


def _judged(trial: _Trial, grids: Iterator[Grid]) -> list[_Tried]:
    return [one for grid in grids if (one := trial.judge(grid)) is not None]


def _ranked(tried: Sequence[_Tried]) -> list[_Tried]:
    """Those with the most kinds first, of equals those with the least effort."""
    return sorted(tried, key=lambda one: (-len(one.kinds), one.effort))


def _full(tried: Sequence[_Tried], trial: _Trial, most: int | None = None) -> bool:
    """Whether one contains everything, with no more effort than `most`."""
    return any(one.kinds == trial.wanted and (most is None or one.effort <= most) for one in tried)


def _smaller(trial: _Trial) -> Iterator[Grid]:
    """The whole picture on few needles: its slopes stay as they are."""
    widths = [needles for needles in NEEDLES if needles < trial.sizes.needles] or [trial.sizes.needles]
    for needles in widths:
        grid = trial.grid(Fraction(needles, trial.sizes.needles))
        yield cut(grid, Window(0, 0, needles, _MOST_TURNS))


def _windows(trial: _Trial, spots: Mapping[str, Sequence[Spot]], look: _Look, columns: int) -> Iterator[Grid]:
    """Parts of the picture round the places where kinds come up, at its own size and at half of it."""
    yielded = 0
    needles = trial.sizes.needles
    scales = [scale for scale in (Fraction(1), Fraction(1, 2)) if needles * scale >= NEEDLES[0]]
    grids = {scale: trial.grid(scale) for scale in scales}
    seen: set[tuple[Fraction, int, int]] = set()
    for scale in scales:
        for kind in spots:
            for spot in spots[kind][: look.spots]:
                column = int((needles - 1 - spot.place) * scale) - columns // 2
                turn = int(spot.level * scale / 2) - look.turns // 2
                about = (scale, column // 4, turn // 4)
                if about in seen or yielded == _MOST_WINDOWS:
                    continue
                seen.add(about)
                yielded += 1
                yield cut(grids[scale], Window(column, turn, min(columns, grids[scale].needles), look.turns))


def _stacks(trial: _Trial, tried: Sequence[_Tried]) -> Iterator[_Tried]:
    """On the best piece, one after the other, the windows that add the most of what is still missing."""
    for base in _ranked(tried)[:2]:
        now = base
        for _ in range(_MOST_PARTS - 1):
            missing = trial.wanted - now.kinds
            adding = sorted(
                (one for one in tried if one.kinds & missing and one.grid.needles == now.grid.needles),
                key=lambda one: (-len(one.kinds & missing), one.effort),
            )
            better = None
            for one in adding[:2]:
                for parts in ((now.grid, one.grid), (one.grid, now.grid)):
                    found = trial.judge(stacked(parts))
                    if found is not None and len(found.kinds) > len((better or now).kinds):
                        better = found
            if better is None:
                break
            now = better
            yield now
            if now.kinds == trial.wanted:
                return


def _trimmed(trial: _Trial, found: _Tried) -> _Tried:
    """Turns are taken away below and above, columns left and right, as long as nothing is lost."""
    trial.most += _MOST_TRIMMED
    for part in (3, 6, 12):
        going = True
        while going:
            going = False
            grid = found.grid
            columns, turns = grid.needles, len(grid.turns)
            high, wide = max(1, turns // part), max(1, columns // part)
            for window in (
                Window(0, high, columns, turns - high),
                Window(0, 0, columns, turns - high),
                Window(wide, 0, columns - wide, turns),
                Window(0, 0, columns - wide, turns),
            ):
                if window.turns < _FEWEST_TURNS or window.columns < min(NEEDLES[0], columns):
                    continue
                smaller = trial.judge(cut(grid, window))
                if smaller is not None and smaller.kinds >= found.kinds and smaller.effort < found.effort:
                    found, going = smaller, True
                    break
    return found


def _reason(kind: str) -> str:
    """Edges and joins lack needles, starts and free passes follow from the order of the blocks."""
    return "order" if kind.startswith("start") or kind == "free-pass" else "size"
