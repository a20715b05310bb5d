"""What carrying on shows: the bed as it is, what stays visible, and the rest of the piece like any plan."""

from __future__ import annotations

from wedgework.bed import across, name
from wedgework.calculators.panel_view import panel_values, panel_view
from wedgework.declare import Bullets, Figure, Figures, Picture, Plain, Prose, Shown, Table
from wedgework.draw import state_svg
from wedgework.formats.plan import Plan
from wedgework.formats.state import State
from wedgework.layout.sizes import resolve
from wedgework.replay import Replay
from wedgework.say import say, say_n

__all__ = ["carry_on_values", "carry_on_view", "rest_view", "visible"]

# What is said of crumbs and ends concerns the choice of a picture; the piece is on the machine.
_NOT_NOW = frozenset({"piece.crumbs", "piece.slivers", "piece.many-ends", "piece.fold"})


def _say(key: str, **values: object) -> str:
    return say(f"calculators.carry-on.{key}", **values)


def carry_on_values(state: State, plan: Plan, judged: Replay) -> dict[str, Plain]:
    """Figures of the replay of the rest, under the names that they have in a whole piece."""
    return {
        **panel_values(plan, judged),
        "rows_now_min": min(state.rows),
        "rows_now_max": max(state.rows),
        "visible": visible(judged),
    }


def visible(judged: Replay) -> tuple[str, ...]:
    """What will be seen in the finished piece, a sentence each."""
    return tuple(
        f"{problem.sentence} {problem.way_out}".rstrip()
        for problem in (*judged.problems, *judged.warnings)
        if problem.code not in _NOT_NOW
    )


def carry_on_view(planned: State | None, state: State, plan: Plan, judged: Replay) -> tuple[Shown, ...]:
    """First what the person can compare with the machine, then what comes of it, then the rest as a plan."""
    # The first part of a plan says how large the piece is: here that is known.
    return (*rest_view(planned, state, plan, judged), *panel_view(plan, judged)[1:])


def rest_view(planned: State | None, state: State, plan: Plan, judged: Replay) -> tuple[Shown, ...]:
    """The figures of the rest, the bed, what differs from what was planned, what stays visible."""
    stays = visible(judged)
    shown: list[Shown] = [
        _figures(state, plan, judged),
        Picture(_say("picture"), state_svg(plan.design, state, prefix="bed-now"), _say("picture-caption")),
    ]
    if planned is not None and planned != state:
        shown.append(_differences(planned, state))
    shown.append(Bullets(_say("stays"), stays) if stays else Prose(_say("stays"), (_say("stays-nothing"),)))
    return tuple(shown)


def _figures(state: State, plan: Plan, judged: Replay) -> Figures:
    found = judged.summary
    least, most = min(state.rows), max(state.rows)
    now = say_n("common.rows", least) if least == most else _say("span", least=least, most=most)
    return Figures(
        plan.design.title,
        (
            Figure(_say("figure-now"), now, _say("figure-now-note", rows=resolve(plan.design).rows), "rows_now_min"),
            Figure(
                _say("figure-left"), say_n("common.rows", sum(judged.block_rows.values())), _say("figure-left-note"), "passes"
            ),
            Figure(
                _say("figure-end"), _say("span", least=found.rows_min, most=found.rows_max), _say("figure-end-note"), "rows_min"
            ),
            Figure(_say("figure-ends"), f"{found.ends}", _say("figure-ends-note"), "ends"),
        ),
    )


def _differences(planned: State, state: State) -> Table:
    """Where the bed is not as the plan has it: needles in runs, rows planned and real."""
    needles = across(state.first_needle, state.first_needle + len(state.rows))[: len(state.rows)]
    runs: list[tuple[int, int, int, int]] = []
    for i, (was, is_) in enumerate(zip(planned.rows, state.rows, strict=True)):
        if was == is_:
            continue
        if runs and runs[-1][1] == i - 1 and runs[-1][2:] == (was, is_):
            runs[-1] = (runs[-1][0], i, was, is_)
        else:
            runs.append((i, i, was, is_))
    rows = [(_needles(needles[a], needles[b]), f"{was}", f"{is_}") for a, b, was, is_ in runs]
    for field in ("held", "carriage", "feeder", "mast"):
        if getattr(planned, field) != getattr(state, field):
            rows.append((_say(f"differs-{field}"), _as_words(field, planned), _as_words(field, state)))
    heads = tuple(_say(f"differs-{key}") for key in ("what", "planned", "real"))
    return Table(_say("differs"), heads, tuple(rows))


def _needles(first: int, last: int) -> str:
    if first == last:
        return _say("rows-on", needles=name(first))
    return _say("rows-on", needles=_say("span", least=name(first), most=name(last)))


def _as_words(field: str, state: State) -> str:
    if field == "carriage":
        return say(f"draw.carriage-{state.carriage}")
    if field == "held":
        return say_n("common.needles", len(state.held))
    hanging = state.mast if field == "mast" else (state.feeder,) if state.feeder else ()
    said = [_say("hangs", yarn=one.yarn.removeprefix("yarn-"), needle=name(one.needle)) for one in hanging]
    return ", ".join(said) or _say("no-yarn-there")
