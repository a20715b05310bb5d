"""What the side hem calculator shows: stitches of each side, the rhythm along the edge, corners, sections, the order of work."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction

from wedgework.declare import Bullets, Figure, Figures, Picture, Plain, Prose, Shown, Table
from wedgework.draw.side_hem import side_hem_svg
from wedgework.hems import mitre, mitre_back
from wedgework.pickups import PickUp, Section
from wedgework.say import say, say_n
from wedgework.units import both_text, decimal_text

__all__ = ["Along", "SideHem", "side_hem_view"]

# A table of stretches longer than this is no rhythm any more; the positions stand in the data.
MOST_STRETCHES = 30


def _say(key: str, **values: object) -> str:
    return say(f"calculators.side-hem.{key}", **values)


def _n(key: str, n: int, **values: object) -> str:
    return say_n(f"calculators.side-hem.{key}", n, **values)


@dataclass(frozen=True, slots=True)
class Along:
    """A hem along one edge; opposite edges have the same."""

    key: str
    """``side`` along rows, ``end`` along the first or last row."""
    hung: PickUp
    wider: int
    """Stitches more at each end from the start: over the neighbouring hem, or beside it."""
    grows: int
    """Stitches that each end gains up to the fold."""
    sections: tuple[Section, ...]

    @property
    def stitches(self) -> int:
        return self.hung.stitches + 2 * self.wider

    @property
    def at_fold(self) -> int:
        return self.stitches + 2 * self.grows


@dataclass(frozen=True, slots=True)
class SideHem:
    four: bool
    picot: bool
    corners: str
    outside: int
    facing: int
    corner: int
    """Stitches as wide as the hem is deep."""
    alongs: tuple[Along, ...]
    depth_mm: Fraction
    height_mm: Fraction
    """Of the piece without hems, along the side."""
    width_mm: Fraction | None
    """Of the piece between its side hems; None where only a side is asked for."""

    @property
    def sides(self) -> tuple[tuple[str, Along], ...]:
        """Each edge by its name, seen from the front, in the order in which it is worked."""
        if not self.four:
            return (("side", self.alongs[0]),)
        side, end = self.alongs
        return (("bottom", end), ("top", end), ("right", side), ("left", side))


def side_hem_view(hem: SideHem, values: Mapping[str, Plain]) -> tuple[Shown, ...]:
    side = hem.alongs[0]
    view: list[Shown] = [_main(hem), Picture(_say("picture"), _drawn(hem), _say(f"picture-{hem.corners}"))]
    if hem.four:
        view.append(_sides(hem))
    view += _rhythm(side.hung)
    if any(len(one.sections) > 1 for one in hem.alongs):
        view.append(_sections(hem))
    if hem.corners == "mitred":
        view.append(_mitre(hem))
    view.append(Bullets(_say("steps"), tuple(_steps(hem)), ordered=True))
    if hem.width_mm is not None:
        view.append(_finished(hem, hem.width_mm))
    view.append(Prose(_say("why"), (_say(f"why-{hem.corners}"),)))
    return tuple(view)


def _drawn(hem: SideHem) -> str:
    counts = [(one.stitches, one.at_fold) for one in hem.alongs]
    return side_hem_svg(
        hem.width_mm,
        hem.height_mm,
        hem.depth_mm,
        hem.corners,
        counts,
        hem.alongs[0].hung.positions,
        _say(f"corners.{hem.corners}"),
    )


def _main(hem: SideHem) -> Figures:
    hung = hem.alongs[0].hung
    rhythm = hung.rhythm()
    words = _say("rhythm", stitches=rhythm.numerator, rows=rhythm.denominator)
    alone = hung.rows * rhythm
    exactly = _say("rhythm-exact") if alone == hung.stitches else _say("rhythm-alone", stitches=decimal_text(alone, 1))
    fold = "fold-picot" if hem.picot else "fold-plain"
    return Figures(
        _say("figures"),
        (
            Figure(
                _say("picked-up"), f"{hung.stitches}", _say("picked-up-note", rows=say_n("common.rows", hung.rows)), "picked_up"
            ),
            Figure(_say("rhythm-label"), words, exactly),
            Figure(_say("outside"), say_n("common.rows", hem.outside), both_text(hem.depth_mm), "outside_rows"),
            Figure(_say("fold"), say_n("common.rows", 0 if hem.picot else 1), _say(fold), "fold_rows"),
            Figure(_say("facing-rows"), say_n("common.rows", hem.facing), _say("facing-note"), "facing_rows"),
            Figure(
                _say("corner"),
                say_n("common.stitches", hem.corner),
                _say("corner-note", rows=say_n("common.rows", hem.outside)),
                "corner_stitches",
            ),
        ),
    )


def _sides(hem: SideHem) -> Table:
    rows = []
    for name, one in hem.sides:
        added = _n("corner-added", 2 * one.wider) if one.wider else _say("corner-none")
        fold = f"{one.at_fold}"
        parts = _n("sections-count", len(one.sections))
        rows.append((_say(f"side-{name}"), f"{one.hung.stitches}", added, f"{one.stitches}", fold, parts))
    heads = tuple(_say(f"sides-{key}") for key in ("side", "hung", "corners", "start", "fold", "sections"))
    return Table(_say("sides"), heads, tuple(rows))


def _rhythm(hung: PickUp) -> Iterable[Shown]:
    """What to hang and what to leave out, row after row."""
    if hung.stitches > hung.rows:
        yield Prose(_say("edge"), (_n("doubled", len(hung.doubled)),))
        return
    stretches = hung.stretches()
    if not hung.left_out:
        yield Prose(_say("edge"), (_say("every-row"),))
        return
    rows, at = [], 0
    for one in stretches[:MOST_STRETCHES]:
        last = at + (one.hung + one.left_out) * one.times
        words = _n("hang", one.hung) if one.hung else _say("hang-none")
        left = _n("leave", one.left_out) if one.left_out else _say("leave-none")
        rows.append((_say("from-to", first=at + 1, last=last), words, left, say_n("common.times", one.times)))
        at = last
    heads = tuple(_say(f"edge-{key}") for key in ("rows", "hang", "leave", "times"))
    yield Table(_say("edge"), heads, tuple(rows))


def _sections(hem: SideHem) -> Table:
    rows = []
    for name, one in hem.sides:
        if len(one.sections) > 1:
            for i, section in enumerate(one.sections, 1):
                stitches = _say("from-to", first=section.first, last=section.last)
                rows.append((_say("section", side=_say(f"side-{name}"), n=i), stitches, f"{section.needles}"))
    return Table(_say("sections"), tuple(_say(f"sections-{key}") for key in ("section", "stitches", "needles")), tuple(rows))


def _mitre(hem: SideHem) -> Table:
    def places(found: Iterable[tuple[int, int]]) -> str:
        return ", ".join(f"{row}" if n == 1 else _say("mitre-many", row=row, n=n) for row, n in found)

    rows = (
        (_say("mitre-outside"), _say("mitre-more"), places(mitre(hem.outside, hem.corner))),
        (_say("mitre-facing"), _say("mitre-fewer"), places(mitre_back(hem.facing, hem.corner))),
    )
    return Table(_say("mitre"), tuple(_say(f"mitre-{key}") for key in ("part", "change", "rows")), rows)


def _steps(hem: SideHem) -> Iterable[str]:
    yield _say("step-press")
    if hem.four:
        yield _say(f"step-ends-{hem.corners}")
    yield _say("step-hang")
    if hem.corners == "lapped":
        yield _say("step-lap", stitches=say_n("common.stitches", hem.corner))
    outside, facing = (say_n("common.rows", rows) for rows in (hem.outside, hem.facing))
    grown = "-mitred" if hem.corners == "mitred" else ""
    fold = _say("step-fold-picot" if hem.picot else "step-fold-plain")
    yield _say(f"step-knit{grown}", outside=outside, facing=facing, fold=fold, stitches=hem.corner)
    yield _say("step-close")
    yield _say(f"step-corner-{hem.corners}")


def _finished(hem: SideHem, width: Fraction) -> Figures:
    return Figures(
        _say("finished"),
        (
            Figure(_say("finished-width"), both_text(width + 2 * hem.depth_mm), _say("finished-width-note"), "finished_width_mm"),
            Figure(_say("finished-height"), both_text(hem.height_mm + 2 * hem.depth_mm), "", "finished_height_mm"),
        ),
    )
