"""Panels sewn to one piece: every seam once, neighbours only, the lightest first."""

from __future__ import annotations

import pytest

from wedgework.finish import joins, outer_sides, seam_turns
from wedgework.formats.design import Part


@pytest.mark.parametrize("panels", range(1, 13))
def test_every_seam_is_sewn_once(panels: int) -> None:
    found = joins(panels)
    assert sorted(left[1] for left, _ in found) == list(range(1, panels))
    assert all(left[1] + 1 == right[0] for left, right in found)
    assert sorted(seam_turns(panels)) == list(range(1, panels))


@pytest.mark.parametrize("panels", [2, 4, 8])
def test_equal_halves_are_sewn_last(panels: int) -> None:
    assert joins(panels)[-1] == ((1, panels // 2), (panels // 2 + 1, panels))


def test_only_the_outer_panels_have_edges_of_the_piece() -> None:
    assert outer_sides(None) == 2
    assert [outer_sides(Part(n, 3, 1, 9)) for n in (1, 2, 3)] == [1, 0, 1]
    assert outer_sides(Part(1, 1, 1, 9)) == 2
