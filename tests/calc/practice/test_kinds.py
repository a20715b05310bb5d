"""What a plan asks of the hands, against pieces whose edges are known."""

from __future__ import annotations

from pieces import diamond, drawn, lopsided, piece
from wedgework.formats.design import Design
from wedgework.plan import plan_piece
from wedgework.practice import KINDS, kinds_of
from wedgework.practice.kinds import Spot
from wedgework.replay import replay_plan


def kinds(design: Design) -> dict[str, tuple[Spot, ...]]:
    plan = plan_piece(design)
    return kinds_of(plan, replay_plan(plan))


def test_the_worked_case_has_one_needle_a_step_on_every_side() -> None:
    found = kinds(diamond())
    edges = {kind for kind in found if kind.startswith("edge")}
    assert edges == {f"edge-{side}-{way}-steep" for side in ("left", "right") for way in ("widening", "narrowing")}
    assert {"hold-one", "return-one", "start-inside", "join-point-below"} <= found.keys()
    assert not {"hold-several", "return-several", "wrap", "join-slit"} & found.keys()


def test_the_point_of_the_diamond_lies_in_the_middle() -> None:
    (below,) = kinds(diamond())["join-point-below"]
    assert below.place in (23, 24)
    assert below.level <= 2


def test_an_upright_border_has_to_be_linked() -> None:
    found = kinds(piece(drawn("a", ("b", [("0.5", 0), (1, 0), (1, 1), ("0.5", 1)])), 20, 40))
    assert "join-slit" in found
    assert not any(kind.startswith("edge") for kind in found)


def test_a_level_border_is_no_slope() -> None:
    found = kinds(piece(drawn("a", ("b", [(0, "0.5"), (1, "0.5"), (1, 1), (0, 1)])), 20, 40))
    assert list(found["edge-level"]) == [Spot(9, 20)]
    assert {kind for kind in found if kind.startswith(("edge", "join"))} == {"edge-level"}


def test_several_needles_a_step_are_a_shallow_edge() -> None:
    """Sixty needles over ten turns: six at a time; the wedge narrows at its left, and what lies on it widens to the right."""
    found = kinds(piece(drawn("a", ("b", [(0, 0), (1, 0), (0, "0.5")])), 60, 40))
    assert {kind for kind in found if "shallow" in kind} == {"edge-left-narrowing-shallow", "edge-right-widening-shallow"}
    assert {"hold-several", "return-several"} <= found.keys()


def test_an_odd_step_at_the_end_does_not_make_an_edge_mixed() -> None:
    """The wedge above begins and ends on a needle more or less; the next one goes on one at a time, with one step of two."""
    found = kinds(piece(drawn("a", ("b", [(0, 0), (1, 0), (0, 1)])), 21, 40))
    assert {kind for kind in found if kind.startswith("edge")} == {"edge-left-narrowing-steep", "edge-right-widening-steep"}


def test_steps_of_one_and_two_are_a_mixed_edge() -> None:
    """Thirty needles over twenty turns: steps of one and two."""
    found = kinds(piece(drawn("a", ("b", [(0, 0), (1, 0), (0, 1)])), 30, 40))
    assert {kind for kind in found if kind.startswith("edge")} == {"edge-left-narrowing-mixed", "edge-right-widening-mixed"}


def test_mirrored_pieces_change_sides() -> None:
    here = kinds(piece(drawn("a", ("b", [(0, 0), (1, 0), (0, 1)])), 30, 40))
    there = kinds(piece(drawn("a", ("b", [(0, 0), (1, 0), (1, 1)])), 30, 40, start_side="L"))
    other = {"left": "right", "right": "left"}
    assert {"-".join(other.get(word, word) for word in kind.split("-")) for kind in here} == set(there)


def test_kinds_come_in_their_order() -> None:
    found = list(kinds(lopsided()))
    assert found == [kind for kind in KINDS if kind in found]
    assert len(found) > 8
