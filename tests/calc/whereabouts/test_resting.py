"""Yarns that rest on the mast: held against the model bed, which keeps them by itself."""

from __future__ import annotations

import pytest

from pieces import diamond, lopsided, piece
from wedgework.formats.design import Design, NamedLayout
from wedgework.plan import plan_piece
from wedgework.replay import state_at
from wedgework.whereabouts import resting_values
from wedgework.words import cues


@pytest.mark.parametrize(
    "design", [diamond(), lopsided(), piece(NamedLayout("chevron-bands"), 60, 110)], ids=["diamond", "harbour", "bands"]
)
def test_what_rests_after_each_step_is_what_the_model_bed_has_there(design: Design) -> None:
    plan = plan_piece(design)
    yarns = [yarn.id for yarn in plan.design.yarns]
    events = resting_values(plan, yarns)
    resting: dict[str, int] = {}
    met = 0
    for cue in cues(plan):
        for at, yarn, needle in events:
            if at == cue.index:
                resting.pop(yarns[yarn], None)
                if needle:
                    resting[yarns[yarn]] = needle
        state = state_at(plan, cue.last_step + 1)
        assert {one.yarn: one.needle for one in state.mast} == resting
        met += bool(resting)
    assert met or not events
