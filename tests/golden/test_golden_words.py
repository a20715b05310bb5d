"""What a knitter reads, kept as text that was read and accepted."""

from __future__ import annotations

from goldens import Goldens
from pieces import diamond, drawn, hemmed, lopsided, piece
from wedgework.formats.design import Design
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.words import Cue, cues, instructions

KITE = [("0.1", "0.5"), ("0.5", "0.05"), ("0.9", "0.5"), ("0.5", "0.95")]


def pattern(design: Design) -> str:
    plan = plan_piece(design)
    return instructions(plan, replay_plan(plan)).as_text()


def shown(cue: Cue) -> str:
    """A cue as it is read, one line for each part."""
    lines = [f"[{cue.index}] {cue.kind}: {cue.block_name}".rstrip(": ") + (f" ({cue.run})" if cue.run else "")]
    lines += [cue.where, *cue.before, cue.knit, f"Check: {cue.check}" if cue.check else "", cue.next]
    lines.append(f"rows {cue.row_before} to {cue.row_after}, steps {cue.first_step} to {cue.last_step}")
    return "\n".join(line for line in lines if line) + "\n"


def test_the_pattern_of_the_worked_case(golden: Goldens) -> None:
    golden("words/diamond-48x96.txt", pattern(diamond()))


def test_the_pattern_of_a_kite_whose_edges_are_steeper_than_its_steps(golden: Goldens) -> None:
    golden("words/kite-60x120.txt", pattern(piece(drawn("a", ("b", KITE)), 60, 120)))


def test_the_pattern_of_a_piece_on_an_odd_number_of_needles(golden: Goldens) -> None:
    golden("words/harbour-61x118.txt", pattern(lopsided()))


def test_the_cues_of_a_small_diamond(golden: Goldens) -> None:
    golden("words/cues-diamond-12x24.txt", "\n".join(map(shown, cues(plan_piece(diamond(12, 24))))))


def test_the_cues_of_hems(golden: Goldens) -> None:
    """Plain with tension numbers, picot without: every cue outside the blocks of the picture."""
    plain = hemmed(diamond(12, 24), bottom="plain", top="plain")
    picot = hemmed(piece(diamond().layout, 13, 26), None, bottom="picot", top="picot")
    found = [
        cue
        for design in (plain, picot)
        for cue in cues(plan_piece(design))
        if not cue.block.startswith("b") or "base" in cue.block
    ]
    golden("words/cues-hems.txt", "\n".join(map(shown, found)))


def test_the_pattern_of_a_piece_with_hems_all_round(golden: Goldens) -> None:
    golden("words/hems-all-round-24x48.txt", pattern(hemmed(diamond(24, 48), bottom="picot", top="plain", sides="plain", rows=8)))
