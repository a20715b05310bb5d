"""Laws of the calculators: sums add up, units do not matter, bigger in is not smaller out, half of the double is the same."""

from __future__ import annotations

from collections.abc import Mapping
from fractions import Fraction

from hypothesis import assume, given, settings
from hypothesis import strategies as st

from wedgework.angles import PI, nearest_pi, sine
from wedgework.calculators import blocking, circle, even_shaping, panels, size, tension, time, yarn_count
from wedgework.circles import disc, dome, wedge_steps
from wedgework.declare import Calculator, Plain, work_out
from wedgework.lines import line_through
from wedgework.shaping import most_changes, spaced, stages
from wedgework.yarn import SYSTEMS, categories_for, count_in, tex_of

F = Fraction
counts = st.fractions(min_value=F(1, 10), max_value=1000, max_denominator=100)
gauges = st.integers(40, 400).map(lambda n: F(n, 10))
mms = st.integers(300, 4000)
many = settings(deadline=None)
few = settings(max_examples=40, deadline=None)


def ask(calculator: Calculator, typed: Mapping[str, str]) -> dict[str, Plain] | None:
    """The values, or None where it is refused, which always comes with a way out."""
    answer = work_out(calculator, typed)
    assert all(problem.sentence and problem.way_out for problem in answer.problems)
    return dict(answer.result.values) if answer.result else None


def numbers(values: dict[str, Plain] | None) -> dict[str, Fraction]:
    assert values is not None
    return {key: F(value) for key, value in values.items() if isinstance(value, (int, Fraction))}


@given(counts, st.sampled_from(list(SYSTEMS)), st.sampled_from(list(SYSTEMS)))
@many
def test_a_count_goes_through_any_other_and_back(count: Fraction, one: str, other: str) -> None:
    assert count_in(tex_of(count_in(tex_of(count, one), other), other), one) == count


@given(st.fractions(min_value=1, max_value=80, max_denominator=50), st.fractions(min_value=0, max_value=10, max_denominator=10))
@many
def test_a_finer_gauge_is_never_a_thicker_category(gauge: Fraction, more: Fraction) -> None:
    coarse, fine = categories_for(gauge), categories_for(gauge + more)
    assert len(coarse) <= 2
    if coarse and fine:
        assert min(c.number for c in fine) <= min(c.number for c in coarse)


@given(counts, st.integers(1, 6))
@few
def test_plies_are_that_many_threads(count: Fraction, plies: int) -> None:
    typed = {"value": f"{count.numerator}/{count.denominator}", "system": "tex"}
    one, more = ask(yarn_count.CALCULATOR, typed), ask(yarn_count.CALCULATOR, {**typed, "plies": str(plies)})
    if one and more:
        assert numbers(more)["tex"] == plies * numbers(one)["tex"]
        assert numbers(one)["nm"] == plies * numbers(more)["nm"]


@given(st.integers(1, 400), st.integers(1, 120), st.booleans(), st.sampled_from([1, 2]), st.one_of(st.none(), st.integers(0, 60)))
@many
def test_sections_add_up_and_are_even(over: int, changes: int, closing: bool, step: int, first: int | None) -> None:
    assume(changes <= most_changes(over, closing=closing, step=step, first=first))
    found = spaced(changes, over, closing=closing, step=step, first=first)
    assert found.over == over
    assert sum(group.size * group.times for group in found.groups) + found.left_over == over
    assert len(found.positions) == changes
    free = found.sections[first is not None :]
    assert not free or max(free) - min(free) <= step
    assert all(gap % step == 0 for gap in found.gaps[first is not None :])


@given(st.integers(1, 300), st.integers(1, 80), st.integers(2, 5))
@many
def test_twice_the_changes_over_twice_the_rows_have_the_same_gaps(over: int, changes: int, times: int) -> None:
    assume(changes <= over)
    one, more = spaced(changes, over), spaced(changes * times, over * times)
    assert [(g.size, g.times * times) for g in one.groups] == [(g.size, g.times) for g in more.groups]


@given(st.integers(0, 60), st.integers(1, 120), st.integers(0, 60))
@many
def test_an_edge_outward_mirrors_an_edge_inward(start: int, rows: int, change: int) -> None:
    assume(change <= rows)
    (out,), (inward,) = stages([(start, 10), (start + rows, 10 + change)]), stages([(start, 90), (start + rows, 90 - change)])
    assert [(row, -n) for row, n in out.places] == list(inward.places)
    assert out.change == change


@given(st.lists(st.tuples(st.integers(0, 40), st.integers(1, 200)), min_size=2, max_size=6), st.sampled_from(["one", "both"]))
@few
def test_stages_reach_every_point(steps: list[tuple[int, int]], edges: str) -> None:
    row, points = 0, []
    for rows, stitches in steps:
        points.append((row, 2 * stitches))
        row += rows
    found = ask(even_shaping.CALCULATOR, {"along": "points", "points": "; ".join(f"{r} {s}" for r, s in points), "edges": edges})
    if found:
        told = found["stages"]
        assert isinstance(told, list)
        for stage, (_, before), (_, after) in zip(told, points, points[1:], strict=False):
            assert stage["change"] * (2 if edges == "both" else 1) == after - before
            shown = sum(group["every"] * group["times"] for group in stage["groups"])
            assert shown + stage["left_over"] == stage["end_row"] - stage["start_row"]


@given(mms, st.integers(0, 500), gauges, st.integers(1, 30), st.integers(0, 5), st.sampled_from(["nearest", "up", "down"]))
@few
def test_a_wider_piece_never_has_fewer_stitches(
    width: int, more: int, gauge: Fraction, multiple: int, extra: int, way: str
) -> None:
    typed = {
        "stitches_per_10cm": str(float(gauge)), "stitch_multiple": str(multiple), "stitch_extra": str(extra), "rounding": way,
    }  # fmt: skip
    narrow = numbers(ask(size.CALCULATOR, {**typed, "width": f"{width} mm"}))
    wide = numbers(ask(size.CALCULATOR, {**typed, "width": f"{width + more} mm"}))
    assert narrow["stitches"] <= wide["stitches"]
    assert (narrow["stitches"] - extra) % multiple == 0
    assert narrow["width_off_mm"] == narrow["width_mm"] - width
    assert narrow["width_least_mm"] <= narrow["width_mm"] <= narrow["width_most_mm"]


@given(st.integers(20, 100), st.integers(20, 100))
@few
def test_inches_and_centimetres_are_one_size(width: int, height: int) -> None:
    inches = ask(size.CALCULATOR, {"width": f"{width} in", "height": f"{height} in"})
    cm = ask(size.CALCULATOR, {"width": f"{width * 254 / 100:.2f} cm", "height": f"{height * 254 / 100:.2f} cm"})
    assert inches == cm


@given(mms, gauges, st.integers(40, 250), st.sampled_from(["none", "half", "one"]))
@few
def test_panels_hide_and_show_all_their_stitches(width: int, gauge: Fraction, bed: int, seam: str) -> None:
    found = ask(
        panels.CALCULATOR,
        {"width": f"{width} mm", "stitches_per_10cm": str(float(gauge)), "bed_needles": str(bed), "seam_stitches": seam},
    )
    if found:
        figures, each = numbers(found), {"none": F(0), "half": F(1, 2), "one": F(1)}[seam]
        assert figures["needles_per_panel"] <= bed
        assert figures["stitches"] + 2 * figures["seams"] * each == figures["panels"] * figures["needles_per_panel"]
        assert abs(figures["width_off_mm"]) <= figures["panels"] / 2 * 100 / gauge
        shown = found["visible_stitches"]
        assert isinstance(shown, list)
        assert shown == shown[::-1], "the same from both sides"


@given(st.integers(1, 120), st.integers(1, 200), st.booleans())
@many
def test_a_wedge_holds_all_its_stitches(stitches: int, turns: int, curved: bool) -> None:
    thing = dome(F(400)) if curved else disc(F(400))
    assert sum(wedge_steps(thing, stitches, turns)) == stitches


@given(st.integers(50, 2000), st.integers(0, 500), st.sampled_from(["disc", "cone", "dome"]))
@few
def test_a_larger_round_thing_never_has_fewer_rows(diameter: int, more: int, shape: str) -> None:
    small, large = (
        numbers(ask(circle.CALCULATOR, {"shape": shape, "diameter": f"{mm} mm", "wedges": "1"}))
        for mm in (diameter, diameter + more)
    )
    assert small["outer_rows"] <= large["outer_rows"]
    assert small["stitches"] <= large["stitches"]
    assert abs(small["outer_mm"] - small["outer_wanted_mm"]) <= F(100, 19)


@given(st.fractions(min_value=-3, max_value=3, max_denominator=1000))
@many
def test_pythagoras_of_sines(turn: Fraction) -> None:
    assert abs(sine(turn) ** 2 + sine(turn + F(1, 4)) ** 2 - 1) < F(1, 10**23)
    assert sine(-turn) == -sine(turn)
    assert sine(turn + 1) == sine(turn)


@given(st.fractions(min_value=0, max_value=10**6, max_denominator=10**4))
@many
def test_whole_numbers_of_pi_are_near(factor: Fraction) -> None:
    assert abs(nearest_pi(factor) - factor * PI) <= F(1, 2)


@given(st.lists(st.integers(300, 900), min_size=1, max_size=6), st.integers(2, 4))
@few
def test_blocking_knows_no_scale(widths: list[int], times: int) -> None:
    def typed(scale: int) -> dict[str, str]:
        return {
            "width": f"{600 * scale} mm", "height": f"{1000 * scale} mm",
            "widths": "; ".join(f"{w * scale} mm" for w in widths), "heights": "; ".join([f"{1000 * scale} mm"] * len(widths)),
        }  # fmt: skip

    one, more = ask(blocking.CALCULATOR, typed(1)), ask(blocking.CALCULATOR, typed(times))
    if one and more:
        assert [one[key] for key in ("block_again", "beyond", "next_stitches")] == [
            more[key] for key in ("block_again", "beyond", "next_stitches")
        ]
        assert numbers(one)["stitches_per_10cm"] == times * numbers(more)["stitches_per_10cm"]


@given(st.integers(0, 5000), st.integers(0, 5000), st.integers(0, 60))
@few
def test_more_to_do_never_takes_less_time(passes: int, more: int, seconds: int) -> None:
    one, two = (
        numbers(ask(time.CALCULATOR, {"passes": str(n), "seconds_per_pass": str(seconds)})) for n in (passes, passes + more)
    )
    assert one["hours"] <= two["hours"]
    assert one["hours_least"] <= one["hours"] <= one["hours_most"]
    assert two["work_hours"] - one["work_hours"] == F(more * seconds, 3600)


@given(st.lists(st.tuples(st.integers(0, 12), st.integers(200, 400)), min_size=2, max_size=8), st.integers(-5, 5))
@many
def test_a_line_moves_with_its_points(points: list[tuple[int, int]], shift: int) -> None:
    assume(len({x for x, _ in points}) > 1)
    one = line_through([(F(x), F(y)) for x, y in points])
    moved = line_through([(F(x + shift), F(y)) for x, y in points])
    assert (one.slope, one.rest) == (moved.slope, moved.rest)
    assert moved.at(F(3 + shift)) == one.at(F(3))


@given(st.text(max_size=40))
@few
def test_any_text_of_swatches_or_points_is_read_or_refused(text: str) -> None:
    ask(tension.CALCULATOR, {"tensions": text, "stitches": text, "rows": text})
    ask(even_shaping.CALCULATOR, {"along": "points", "points": text})
