"""Does the plan tell the truth about itself, and are its parts in order?"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import astuple

from wedgework.bed import name
from wedgework.formats.plan import Plan, Slit, Summary
from wedgework.layout.sizes import Sizes
from wedgework.problems import Problem
from wedgework.replay.borders import steps_joined
from wedgework.say import say

__all__ = ["frame_problems", "summary_problems"]

_FIGURES = (
    "rows_min",
    "rows_max",
    "steepest_fold",
    "ends",
    "ends_inside",
    "free_passes",
    "inside_starts",
    "floats",
    "dropped",
)


def summary_problems(said: Summary, found: Summary) -> list[Problem]:
    """Every figure of the summary that the model bed counted otherwise."""
    pairs: list[tuple[str, object, object]] = [(key, getattr(said, key), getattr(found, key)) for key in _FIGURES]
    pairs += [
        (f"{key}[{yarn}]", claimed.get(yarn, 0), counted.get(yarn, 0))
        for key, claimed, counted in (
            ("stitches", said.stitches, found.stitches),
            # A plan written by hand may leave these out; then it claims nothing.
            ("edge_stitches", said.edge_stitches, found.edge_stitches if said.edge_stitches else {}),
        )
        for yarn in sorted({*claimed, *counted})
    ]
    wrong = [
        Problem(f"summary.{key}", "summary.false", say("replay.false", said=a, found=b), say("replay.false.way-out"))
        for key, a, b in pairs
        if a != b
    ]
    lists = (
        ("slits", [_slit(s) for s in _joined(said.slits)], [_slit(s) for s in found.slits]),
        # Plans of an earlier version know no stairs; then they claim nothing.
        ("stairs", list(map(astuple, said.stairs)), list(map(astuple, found.stairs)) if said.stairs else []),
        ("holes", [(h.needle, h.row) for h in said.holes], [(h.needle, h.row) for h in found.holes]),
        ("uneven", [(u.needle, u.rows) for u in said.uneven], [(u.needle, u.rows) for u in found.uneven]),
    )
    for key, claims, counts in lists:
        if sorted(claims) != sorted(counts):
            wrong.append(
                Problem(
                    f"summary.{key}",
                    "summary.false",
                    say("replay.false-list", said=len(claims), found=len(counts)),
                    say("replay.false.way-out"),
                )
            )
    return wrong


def _joined(claims: Sequence[Slit]) -> Sequence[Slit]:
    """A plan of an earlier version lists every step of a border on its own."""
    return claims if any(slit.steps > 1 for slit in claims) else steps_joined(claims)


def _slit(slit: Slit) -> tuple[int, ...]:
    return slit.needle, slit.from_row, slit.rows, slit.steps, slit.to_needle or slit.needle


def _span(needles: Sequence[int]) -> str:
    """Needles as a person counts them: L6 to R6."""
    return say("words.to", first=name(needles[0]), last=name(needles[-1]))


def frame_problems(plan: Plan, sizes: Sizes) -> list[Problem]:
    """Needles that are not those of the design; blocks that overlap, repeat or leave steps out."""
    found: list[Problem] = []
    wanted = (sizes.first_needle, sizes.last_needle)
    for where, needles in (("bed", (plan.first_needle, plan.last_needle)), ("start.working", plan.start.working)):
        if tuple(needles) != wanted:
            found.append(
                Problem(
                    where,
                    "steps.other-needles",
                    say("replay.other-needles", found=_span(needles), wanted=_span(wanted)),
                    say("replay.other-needles.way-out"),
                )
            )
    after = 0
    seen: set[str] = set()
    for i, block in enumerate(plan.blocks):
        if block.id in seen or block.first_step != after or block.last_step < block.first_step:
            found.append(
                Problem(
                    f"blocks[{i}]",
                    "steps.block-order",
                    say("replay.block-order", block=block.id),
                    say("replay.block-order.way-out"),
                )
            )
        seen.add(block.id)
        after = block.last_step + 1
    if after != len(plan.steps):
        found.append(
            Problem(
                "blocks",
                "steps.block-order",
                say("replay.block-rest", last=after, steps=len(plan.steps)),
                say("replay.block-order.way-out"),
            )
        )
    return found
