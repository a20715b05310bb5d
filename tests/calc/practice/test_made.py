"""Figures that are made for one kind: each shows it, on a bed of its own."""

from __future__ import annotations

import pytest

from pieces import piece
from wedgework.plan import plan_piece
from wedgework.practice.cuts import drawn
from wedgework.practice.kinds import KINDS, kinds_of
from wedgework.practice.made import made
from wedgework.replay import replay_plan

# How a shallow edge narrows depends on where the carriage stands; such a figure helps some pieces and is tried with them.
UNSURE = {"edge-left-narrowing-shallow", "edge-right-narrowing-shallow"}
MADE = [kind for kind in KINDS if made(kind, 24, ("a", "b")) is not None]


def test_edges_levels_and_points_are_made() -> None:
    assert {kind for kind in KINDS if kind.startswith("edge-")} <= set(MADE)
    assert {"join-point-below", "join-point-above"} <= set(MADE)
    assert made("free-pass", 24, ("a", "b")) is None


@pytest.mark.parametrize("needles", [24, 28])
@pytest.mark.parametrize("kind", [kind for kind in MADE if kind not in UNSURE])
def test_a_figure_shows_its_kind(kind: str, needles: int) -> None:
    grid = made(kind, needles, ("a", "b"))
    assert grid is not None
    plan = plan_piece(piece(drawn(grid), needles, 2 * len(grid.turns)))
    judged = replay_plan(plan)
    assert judged.problems == ()
    assert kind in kinds_of(plan, judged)
