"""The law of "Where am I?": after every pass of every layout, what is truly seen leads back to that place."""

from __future__ import annotations

from collections.abc import Iterator
from fractions import Fraction

import pytest

from pieces import diamond, hemmed, lopsided, piece
from wedgework.bed import place
from wedgework.formats.design import Design, NamedLayout
from wedgework.formats.plan import Cut, Hold, Knit, Plan, Rest, Set, Thread, Work
from wedgework.layout.library import LAYOUTS
from wedgework.plan import plan_piece, replan
from wedgework.replay import state_at
from wedgework.whereabouts import Seen, Sight, differences, find, sights
from wedgework.words import cues


def layout(name: str) -> Design:
    return piece(NamedLayout(name), 106, 194, pitch=Fraction(9), gauge=(14, 19))


def looked_at(plan: Plan, loops: dict[int, str] | None = None) -> Iterator[tuple[int, Seen]]:
    """The bed by hand, needle by needle: the steps that are done after each pass, and what is seen then. `loops` are the yarns on
    the needles where the plan is one of the rest of a piece."""
    first, last = plan.start.working
    needles = [n for n in range(first, last + 1) if n]
    if loops is None:
        closed = plan.edges.cast_on == "closed"
        loops = dict.fromkeys(needles, (plan.edges.base_yarn_bottom or plan.blocks[0].yarn) if closed else "")
    held: set[int] = set(plan.state.held) if plan.state else set()
    lever = "hold" if plan.state else "knit"
    yarn = plan.state.feeder.yarn if plan.state and plan.state.feeder else ""
    for done, step in enumerate(plan.steps, 1):
        if isinstance(step, Set):
            lever = step.hold_lever or lever
        elif isinstance(step, Thread):
            yarn = step.yarn
        elif isinstance(step, Cut | Rest):
            yarn = ""
        elif isinstance(step, Hold):
            held |= set(step.needles)
        elif isinstance(step, Work):
            held -= set(step.needles)
        elif isinstance(step, Knit):
            knits = [n for n in needles if lever == "knit" or n not in held]
            if lever == "knit":
                held.clear()
            loops.update(dict.fromkeys(knits, yarn))
            at, end = needles.index(knits[0]), needles.index(knits[-1])
            while at and loops[needles[at - 1]] == yarn:
                at -= 1
            while end + 1 < len(needles) and loops[needles[end + 1]] == yarn:
                end += 1
            seen = Seen(yarn, (needles[at], needles[end]), (knits[0], knits[-1]), step.to, counter=step.block_row)
            yield done, seen


def true_places(plan: Plan, places: tuple[Sight, ...]) -> dict[int, Sight]:
    """The place for so many steps done: the last one that the work has come to."""
    first = {cue.index: (cue.first_step, cue.last_step - cue.rows + 1) for cue in cues(plan)}
    at: dict[int, Sight] = {}
    for one in places:
        before, made = first[one.cue]
        if one.part == "before" or (one.part == "made" and (one.done or before == made)):
            at[before if one.part == "before" else made + one.done] = one
    return at


@pytest.mark.parametrize("name", [one.name for one in LAYOUTS])
def test_every_pass_leads_back_to_its_place(name: str) -> None:
    plan = plan_piece(layout(name))
    places = sights(plan)
    there = true_places(plan, places)
    passes = list(looked_at(plan))
    for done, seen in passes:
        assert differences(there[done], seen) == (), (done, there[done])
    # Whatever differs in nothing is in the answer, first of all; a few are asked the whole way.
    for done, seen in passes[5 :: max(1, len(passes) // 6)]:
        true = there[done]
        answer = find(places, seen, near=true.cue)
        alike = [fit.sight for fit in answer.fits[: answer.alike]]
        assert true in alike
        assert bool(answer.why) == (len(alike) > 1)
        assert abs(alike[0].cue - true.cue) <= 1, "of equal ones the nearest is first"


@pytest.mark.parametrize("kind", ["plain", "picot"])
def test_every_pass_of_a_piece_with_hems_leads_back_to_its_place(kind: str) -> None:
    plan = plan_piece(hemmed(diamond(24, 48), bottom=kind, top=kind))
    places = sights(plan)
    there = true_places(plan, places)
    for done, seen in looked_at(plan):
        assert differences(there[done], seen) == (), (done, there[done])
        answer = find(places, seen, near=there[done].cue)
        assert there[done] in [fit.sight for fit in answer.fits[: answer.alike]]


@pytest.mark.parametrize("name", ["nested-diamonds", "chevron-bands"])
def test_every_pass_of_a_rest_leads_back_to_its_place(name: str) -> None:
    """A piece that was carried on from what is there is interrupted like any other. What was knitted before is known by the
    drawing, a row or two off: so the place is in the list, though maybe with a colour that differs by a needle."""
    plan = plan_piece(layout(name))
    for part in (3, 2):
        loops: dict[int, str] = dict.fromkeys((n for n in range(plan.first_needle, plan.last_needle + 1) if n), "")
        passes = looked_at(plan, loops)
        done, there_now = next((done, seen) for done, seen in passes if done > len(plan.steps) // part)
        assert isinstance(there_now.colour, tuple)
        rest = replan(plan.design, state_at(plan, done))
        places = sights(rest, there_now.colour)
        there = true_places(rest, places)
        for steps, seen in looked_at(rest, loops):
            answer = find(places, seen, near=there[steps].cue)
            assert there[steps] in [fit.sight for fit in answer.fits], (part, steps)


@pytest.mark.long
@pytest.mark.parametrize("name", [one.name for one in LAYOUTS])
def test_every_pass_is_found_whole(name: str) -> None:
    plan = plan_piece(layout(name))
    places = sights(plan)
    there = true_places(plan, places)
    for done, seen in looked_at(plan):
        answer = find(places, seen)
        assert there[done] in [fit.sight for fit in answer.fits[: answer.alike]]


def test_one_needle_misread_still_leads_there() -> None:
    plan = plan_piece(lopsided())
    places = sights(plan)
    there = true_places(plan, places)
    for done, seen in list(looked_at(plan))[::7]:
        assert isinstance(seen.open, tuple)
        left, right = seen.open
        wrong = Seen(seen.yarn, seen.colour, (left + 1 or 1, right), seen.carriage, counter=seen.counter)
        found = [fit.sight for fit in find(places, wrong, near=there[done].cue).fits]
        assert any(abs(one.row - there[done].row) <= 2 for one in found)


@pytest.mark.parametrize("design", [layout("diamond-in-corners"), lopsided()], ids=["diamond", "harbour"])
def test_places_are_told_in_the_order_of_the_work(design: Design) -> None:
    plan = plan_piece(design)
    places = sights(plan)
    assert [one.row for one in places] == sorted(one.row for one in places)
    assert {one.row for one in places} == set(range(max(step.row for step in plan.steps if isinstance(step, Knit)) + 1))
    assert {one.cue for one in places} == {cue.index for cue in cues(plan)}
    for one in places:
        for ends in (one.colour, one.open):
            assert ends is None or place(ends[0]) <= place(ends[1])
