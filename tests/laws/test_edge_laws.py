"""Laws of hems, picked-up edges, edgings, slopes and cuts: sums add up, a mirrored piece is mirrored, units do not matter."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction
from itertools import pairwise

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from wedgework.calculators import edging, gauge, hem, short_row_shape, side_hem
from wedgework.calculators.panel_cuts import best_cuts, inside
from wedgework.declare import Calculator, Plain, work_out
from wedgework.layout.grid import Cells, Grid
from wedgework.pickups import pick_up, sections
from wedgework.slopes import degrees, rise_for

F = Fraction
many = settings(deadline=None)
few = settings(max_examples=40, deadline=None)
very_few = settings(max_examples=12, deadline=None)
gauges = st.integers(40, 400).map(lambda n: str(F(n, 10).numerator / F(n, 10).denominator))


def ask(calculator: Calculator, typed: Mapping[str, str]) -> dict[str, Plain] | None:
    """The values, or None where it is refused, which always comes with a way out."""
    answer = work_out(calculator, typed)
    assert all(problem.sentence and problem.way_out for problem in answer.problems)
    return dict(answer.result.values) if answer.result else None


def number(values: Mapping[str, Plain], key: str) -> Fraction:
    value = values[key]
    assert isinstance(value, (int, Fraction))
    return F(value)


@given(st.integers(1, 600), st.integers(1, 900))
@many
def test_every_stitch_is_hung_once_and_evenly(rows: int, stitches: int) -> None:
    found = pick_up(rows, stitches)
    assert len(found.positions) == stitches
    assert list(found.positions) == sorted(found.positions)
    each = [0] * (rows + 1)
    for row in found.positions:
        each[row] += 1
    assert max(each[1:]) - min(each[1:]) <= 1
    if stitches <= rows:
        assert sum((one.hung + one.left_out) * one.times for one in found.stretches()) == rows


@given(st.integers(1, 300), st.integers(1, 300), st.integers(2, 5))
@many
def test_an_edge_so_many_times_as_long_repeats_itself(rows: int, stitches: int, times: int) -> None:
    assume(stitches <= rows)
    one, more = pick_up(rows, stitches), pick_up(rows * times, stitches * times)
    assert one.rhythm() == more.rhythm()
    assert more.positions[:stitches] == one.positions


@given(st.integers(1, 2000), st.integers(9, 250), st.integers(0, 4))
@many
def test_sections_add_up(stitches: int, bed: int, seam: int) -> None:
    found = sections(stitches, bed, seam)
    assert sum(one.last - one.first + 1 for one in found) == stitches
    assert all(after.first == before.last + 1 for before, after in pairwise(found))
    assert all(one.needles <= bed for one in found)


@given(st.integers(5, 300), st.integers(0, 200), gauges, st.sampled_from(["plain", "picot"]), st.sampled_from(["bottom", "top"]))
@few
def test_a_deeper_hem_never_has_fewer_rows(mm: int, more: int, rows: str, kind: str, where: str) -> None:
    assume(mm + more <= 300)
    typed = {"rows_per_10cm": rows, "kind": kind, "where": where}
    shallow, deep = (ask(hem.CALCULATOR, {**typed, "depth": f"{depth} mm"}) for depth in (mm, mm + more))
    if shallow and deep:
        assert number(shallow, "rows") <= number(deep, "rows")
        assert number(deep, "adds_mm") == number(deep, "outside_rows") * 100 / F(rows)


@given(st.integers(1, 11))
@few
def test_inches_and_centimetres_are_one_hem(inches: int) -> None:
    one, other = (ask(hem.CALCULATOR, {"depth": depth}) for depth in (f"{inches} in", f"{inches * 254 / 100:.2f} cm"))
    assert one == other


@given(st.integers(10, 900), gauges, st.sampled_from(["lapped", "mitred", "butted"]), st.integers(10, 250))
@few
def test_a_side_hem_of_any_gauge_adds_up(rows: int, stitches: str, corners: str, bed: int) -> None:
    found = ask(
        side_hem.CALCULATOR,
        {"rows": str(rows), "stitches_per_10cm": stitches, "corners": corners, "bed_needles": str(bed), "edges": "side"},
    )
    if found:
        corner = number(found, "corner_stitches")
        (side,) = found["sides"] if isinstance(found["sides"], list) else ()
        assert side["at_fold"] - side["picked_up"] == (0 if corners == "butted" else 2 * corner)
        assert side["sections"][-1]["to"] == side["at_fold"]
        assert abs(number(found, "picked_up") - number(found, "picked_up_exact")) <= max(
            F(1, 2), 1 - number(found, "picked_up_exact")
        )


@given(
    st.integers(4, 900), st.integers(4, 900), st.integers(1, 24), st.integers(1, 6), st.sampled_from(["eased", "square", "none"])
)
@few
def test_an_edging_is_whole_repeats(stitches: int, rows: int, repeat: int, join: int, corner: str) -> None:
    found = ask(
        edging.CALCULATOR,
        {"stitches": str(stitches), "rows": str(rows), "repeat": str(repeat), "join_every": str(join), "corner": corner},
    )
    assert found is not None
    edges = found["edges"]
    assert isinstance(edges, list)
    assert sum(one["rows"] for one in edges) + 4 * number(found, "corner_rows") == number(found, "rows")
    assert all(one["rows"] % repeat == 0 and one["rows"] == join * one["joins"] for one in edges)
    assert [one["rows"] for one in edges[:2]] == [one["rows"] for one in edges[2:]], "opposite edges are alike"


@given(st.integers(1, 5000), st.integers(1, 5000))
@many
def test_two_angles_make_a_right_one(rise: int, run: int) -> None:
    assert abs(degrees(F(rise), F(run)) + degrees(F(run), F(rise)) - 90) <= F(1, 500)
    assert degrees(F(2 * rise), F(2 * run)) == degrees(F(rise), F(run))


@given(st.integers(1, 89), st.integers(10, 2000))
@few
def test_a_rise_has_its_angle(angle: int, run: int) -> None:
    assert abs(degrees(rise_for(F(angle), F(run)), F(run)) - angle) <= F(1, 100)


@given(st.lists(st.lists(st.sampled_from("abc"), min_size=12, max_size=12), min_size=1, max_size=8))
@many
def test_a_mirrored_design_is_cut_in_the_mirror(turns: list[list[str]]) -> None:
    def runs(letters: list[str]) -> tuple[Cells, ...]:
        found, first = [], 0
        for i in range(1, len(letters) + 1):
            if i == len(letters) or letters[i] != letters[first]:
                found.append(Cells(first, i - 1, ord(letters[first]), letters[first]))
                first = i
        return tuple(found)

    picture = Grid(12, tuple(runs(turn) for turn in turns))
    one, other = inside(picture), inside(picture.mirrored())
    assert one.inside == other.inside[::-1]
    assert one.blocks == other.blocks[::-1]
    cuts, mirrored = best_cuts(one, 2, [8, 8]), best_cuts(other, 2, [8, 8])
    assert cuts is not None
    assert mirrored is not None
    assert (cuts[0].blocks, abs(cuts[0].after - 6)) == (mirrored[0].blocks, abs(mirrored[0].after - 6))


@given(
    st.integers(8, 60),
    st.integers(6, 40),
    st.sampled_from(["triangle", "trapezoid", "diamond"]),
    st.sampled_from(["below", "above"]),
)
@very_few
def test_every_shape_ends_level(width: int, height: int, shape: str, side: str) -> None:
    found = ask(
        short_row_shape.CALCULATOR,
        {"width": str(width), "narrow_width": "4", "height": str(height), "shape": shape, "wide_side": side},
    )
    if found:
        assert number(found, "rows_max") - number(found, "rows_min") <= 2
        turns = sum(number(found, key) for key in ("wraps", "wraps_by_hand", "turns_at_selvedge", "turns_open"))
        assert turns == number(found, "block_rows") - number(found, "parts")


@given(st.integers(1, 60), st.integers(1, 60))
@few
def test_marks_on_either_side_count_what_lies_between(left: int, right: int) -> None:
    found = ask(gauge.CALCULATOR, {"counted": "needles", "first_mark": f"L{left}", "last_mark": f"R{right}"})
    assert (found is None) == (left == right == 1)
    if found:
        assert number(found, "stitches_between_marks") == left + right - 2
