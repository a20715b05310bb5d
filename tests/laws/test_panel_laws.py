"""Laws of pictures in panels: every stitch lies in one panel, none is wider than the bed, and each can be knitted."""

from __future__ import annotations

from fractions import Fraction
from itertools import pairwise

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from wedgework.calculators.panel_cutting import SEAMS, Cutting, cut_picture
from wedgework.calculators.panel_plan import CALCULATOR, planned
from wedgework.declare import work_out
from wedgework.declare.calculator import read_all
from wedgework.formats.design import DrawnLayout, Shape
from wedgework.layout.library import LAYOUTS
from wedgework.problems import Refused

F = Fraction
few = settings(max_examples=40, deadline=None)
tenths = st.integers(0, 10).map(lambda n: F(n, 10))


@st.composite
def pictures(draw: st.DrawFn) -> DrawnLayout:
    """A few triangles on a ground."""
    corner = st.tuples(tenths, tenths)
    shapes = draw(st.lists(st.tuples(corner, corner, corner), max_size=3))
    return DrawnLayout("a", tuple(Shape("b", points) for points in shapes))


def cut(drawn: DrawnLayout, stitches: int, turns: int, bed: int, seam: str, equal: bool) -> Cutting | None:
    """None where no panels near to equal widths fit the bed."""
    try:
        return cut_picture(drawn, stitches, 2 * turns, bed, SEAMS[seam], None, equal)
    except Refused:
        return None


@given(pictures(), st.integers(4, 120), st.integers(2, 20), st.integers(6, 40), st.sampled_from(sorted(SEAMS)), st.booleans())
@few
def test_every_stitch_lies_in_one_panel(drawn: DrawnLayout, stitches: int, turns: int, bed: int, seam: str, equal: bool) -> None:
    found = cut(drawn, stitches, turns, bed, seam, equal)
    assume(found is not None)
    assert found is not None
    parts = [found.part(n) for n in range(1, len(found.widths) + 1)]
    assert [column for part in parts for column in range(part.first, part.last + 1)] == list(range(1, stitches + 1))
    assert [part.needles for part in parts] == list(found.needles)
    assert max(found.needles) <= bed
    assert (parts[0].seam_left, parts[-1].seam_right) == (0, 0)
    for left, right in pairwise(parts):
        taken = 2 * SEAMS[seam]
        assert taken <= left.seam_right + right.seam_left <= taken + 1
    if equal:
        assert max(found.widths) - min(found.widths) <= 1


@given(pictures(), st.integers(4, 80), st.integers(2, 6))
@few
def test_a_mirrored_picture_is_cut_in_the_mirror(drawn: DrawnLayout, half: int, panels: int) -> None:
    """An even number of stitches in equal panels; what each cut goes through is the same."""
    stitches = 2 * half * panels
    mirrored = DrawnLayout("a", tuple(Shape(s.yarn, tuple((1 - x, y) for x, y in s.points)) for s in drawn.shapes))
    one, other = (cut_picture(each, stitches, 12, 1000, F(1), panels, True) for each in (drawn, mirrored))
    assert one.widths == other.widths[::-1]
    assert [stitches - cut.after for cut in one.cuts] == [cut.after for cut in reversed(other.cuts)]


@given(
    st.sampled_from([layout.name for layout in LAYOUTS]),
    st.integers(30, 60),
    st.sampled_from(["equal", "design"]),
    st.integers(1, 2),
)
@settings(max_examples=12, deadline=None)
def test_each_panel_can_be_knitted(layout: str, needles: int, split: str, number: int) -> None:
    """The model bed has nothing against its plan: its picture is that part of the whole."""
    typed = {"bed": "own", "bed_needles": "40", "size_in": "counts", "needles": str(needles), "rows": "40", "layout": layout}
    typed |= {"split": split, "panels": "2", "panel_number": str(number)}
    answer = work_out(CALCULATOR, typed)
    assert {problem.code for problem in answer.problems} <= {"panels.design-no-cut"}
    if answer.result is None:
        return
    plan, judged = planned(read_all(CALCULATOR, typed))
    assert judged.problems == ()
    assert judged.summary.dropped == 0
    assert plan.design.panel.part is not None
