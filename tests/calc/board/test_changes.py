"""Changes that may make a drawing easier: small, legal, at the place of the trouble."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from pieces import drawn, lopsided, piece
from wedgework.board import changes, effort_of, judge, surface, weighed
from wedgework.board.changes import MOST_CHANGES
from wedgework.board.rings import edges_near, moved_line, points_of, with_bend
from wedgework.formats.design import Design, DrawnLayout, NamedLayout, OrderWish
from wedgework.problems import Refused


def of(design: Design) -> dict[str, list[Design]]:
    found: dict[str, list[Design]] = {}
    for change in changes(judge(surface(design).design)):
        found.setdefault(change.kind, []).append(change.design)
    return found


UPRIGHT = piece(drawn("a", ("b", [(0, 0), ("0.5", 0), ("0.5", 1), (0, 1)])), 60, 120)
CRUMB = piece(
    drawn(
        "a", ("b", [("0.2", "0.2"), ("0.7", "0.3"), ("0.4", "0.8")]), ("c", [("0.5", "0.5"), ("0.54", "0.5"), ("0.52", "0.53")])
    ),
    60,
    120,
)


def test_an_upright_border_leans_or_is_bent() -> None:
    found = of(UPRIGHT)
    leans = [design.layout.shapes[0].points for design in found["lean"]]  # type: ignore[union-attr]
    tops = sorted(60 * max(x for x, y in points if y == 1) for points in leans)
    feet = sorted(60 * max(x for x, y in points if y == 0) for points in leans)
    assert tops == [15, 45]
    assert feet == [15, 45], "thirty needles over 120 rows: one for every four rows"
    bent = {len(design.layout.shapes[0].points) for design in found["bend"]}  # type: ignore[union-attr]
    assert bent == {5, 7}


def test_each_that_is_better_has_fewer_slits_or_less_work() -> None:
    before = judge(surface(UPRIGHT).design)
    effort = effort_of(before.plan, before.replay)
    better = []
    for change in changes(before):
        after = judge(change.design)
        told = weighed(effort, effort_of(after.plan, after.replay))
        if told.better:
            better.append(change.kind)
            assert any("slit" in words for words in told.words)
            assert after.replay.summary.slits == ()
    assert "lean" in better
    assert "bend" in better


def test_crumbs_are_given_away_or_put_under() -> None:
    found = of(CRUMB)
    assert found["merge"][0].options.merge_below > 1
    assert {"merge", "move", "over"} <= found.keys() or {"merge", "over"} <= found.keys()


def test_corners_beside_the_lattice_are_put_on_it() -> None:
    (snapped,) = of(lopsided())["snap"]
    assert isinstance(snapped.layout, DrawnLayout)
    for shape in snapped.layout.shapes:
        assert all((61 * x).denominator == 1 and (59 * y).denominator == 1 for x, y in shape.points)


def test_an_own_wish_and_the_side_of_the_carriage_are_tried() -> None:
    found = judge(surface(UPRIGHT).design)
    first, second = [block.id for block in found.plan.blocks if block.id.startswith("b") and block.id[1:].isdigit()][:2]
    wished = replace(UPRIGHT, options=replace(UPRIGHT.options, order=(OrderWish(second, before=first),)))
    kinds = {change.kind: change.design for change in changes(judge(surface(wished).design))}
    assert kinds["order"].options.order == ()
    assert kinds["start"].options.start_side == "L"


def test_at_most_so_many_and_each_once() -> None:
    for design in (lopsided(), CRUMB):
        found = changes(judge(surface(design).design))
        assert len(found) <= MOST_CHANGES
        assert len({id(change.design) for change in found}) == len(found)
        for change in found:
            assert change.words.endswith(".")


def test_a_named_layout_has_no_changes_until_it_is_drawn_out() -> None:
    assert changes(judge(piece(NamedLayout("kites"), 40, 80))) == []


def test_a_line_moves_with_everything_that_lies_on_it() -> None:
    """Two shapes share a border, a third ends in the middle of it."""
    layout = drawn(
        "a",
        ("b", [(0, 0), ("0.5", 0), ("0.5", 1), (0, 1)]),
        ("c", [("0.5", 0), (1, 0), (1, 1), ("0.5", 1)]),
        ("b", [("0.5", "0.5"), ("0.8", "0.4"), ("0.8", "0.6")]),
    )
    rings = points_of(layout, 40, 80)
    (edge,) = edges_near(rings, Fraction(20), Fraction(0), Fraction(80), 40)
    assert edge == ((20, 0), (20, 80))
    moved = moved_line(rings, edge, ((Fraction(16), Fraction(0)), (Fraction(24), Fraction(80))), 40)
    assert (16, 0) in moved[0][0]
    assert (16, 0) in moved[1][0]
    assert (20, 40) in moved[2][0]
    bent = with_bend(rings, edge, 1, Fraction(5))
    assert (25, 40) in bent[0][0]
    assert (25, 40) in bent[1][0]


def test_a_change_that_would_cross_itself_is_left_out() -> None:
    thin = piece(drawn("a", ("b", [("0.4", "0.1"), ("0.45", "0.1"), ("0.45", "0.9"), ("0.4", "0.9")])), 60, 120)
    for change in changes(judge(surface(thin).design)):
        try:
            judge(change.design)
        except Refused as refused:
            raise AssertionError(change.words) from refused
