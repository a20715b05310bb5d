"""Answers, plans and help as plain text for a terminal."""

from __future__ import annotations

from collections.abc import Iterable, Sequence

from wedgework.bed import range_name, span
from wedgework.calculators.layout_fields import parameter_default, parameter_range
from wedgework.catalogue import CALCULATORS
from wedgework.declare import Answer, Bullets, Calculator, Figures, Picture, Prose, Shown, Table, Written
from wedgework.formats.plan import Plan
from wedgework.layout.library import LAYOUTS
from wedgework.layout.sizes import resolve
from wedgework.practice import Practice
from wedgework.problems import Problem
from wedgework.replay.result import Replay
from wedgework.say import say, say_n
from wedgework.units import both_text

__all__ = [
    "answer_text",
    "calculators_text",
    "columns",
    "found_text",
    "help_text",
    "layouts_text",
    "overview_text",
    "practice_text",
    "problems_text",
    "wrongs",
]


def problems_text(problems: Iterable[Problem]) -> str:
    return "".join(f"{problem}\n" for problem in problems)


def columns(rows: Sequence[Sequence[str]], indent: str = "  ") -> str:
    """Rows of cells as aligned lines."""
    if not rows:
        return ""
    widths = [max(len(row[i]) for row in rows) for i in range(len(rows[0]))]
    lines = ("  ".join(cell.ljust(width) for cell, width in zip(row, widths, strict=True)).rstrip() for row in rows)
    return "".join(f"{indent}{line}\n" for line in lines)


def answer_text(answer: Answer) -> str:
    """A calculator's answer for reading; pictures are named only."""
    if answer.result is None:
        return problems_text(answer.problems)
    parts = [_part(part) for part in answer.result.view]
    if answer.result.warnings:
        parts.insert(1, _titled(say("faces.warnings"), "".join(f"  {warning}\n" for warning in answer.result.warnings)))
    return "\n".join(parts)


def _titled(title: str, body: str) -> str:
    return f"{title}\n{body}" if title else body


def _part(part: Shown) -> str:
    match part:
        case Figures():
            return _titled(part.title, columns([(row.label, row.value, row.note) for row in part.rows]))
        case Table():
            return _titled(part.title, columns([part.heads, *part.rows]))
        case Picture():
            return _titled(part.title, f"  {part.caption}\n")
        case Bullets():
            marks = [f"{i}." if part.ordered else "-" for i in range(1, len(part.items) + 1)]
            return _titled(part.title, "".join(f"  {mark} {item}\n" for mark, item in zip(marks, part.items, strict=True)))
        case Prose():
            return _titled(part.title, "".join(f"  {words}\n" for words in part.paragraphs))
        case Written():
            return _titled(part.title, part.text)


def help_text(calculator: Calculator) -> str:
    """Every field with what may be typed: what ``wedgework calc SLUG --help`` says."""
    slug = calculator.slug
    lines = [say("faces.help-usage", slug=slug), "", calculator.what]
    for group in calculator.groups:
        lines += ["", f"{calculator.group_title(group)}:"]
        for field in group.fields:
            lines.append(f"  --{field.name}")
            lines.append(f"      {field.label(slug)}. {field.help(slug)}")
            lines.append(f"      {say('faces.help-allowed', allowed=field.range_text)}")
            if field.kind == "choice":
                lines += [f"        {one}: {field.choice_label(slug, one)}" for one in field.choices]
            if field.typed_default:
                lines.append(f"      {say('faces.help-default', default=field.typed_default)}")
            elif field.optional:
                lines.append(f"      {say('faces.help-optional')}")
            if field.only:
                lines.append(f"      {say('faces.help-only', field=field.only.field, choices=', '.join(field.only.values))}")
    lines += ["", say("faces.help-json")]
    return "\n".join(lines) + "\n"


def calculators_text() -> str:
    """What ``wedgework calc`` offers."""
    rows = columns([(calculator.slug, calculator.what) for calculator in CALCULATORS])
    return f"{say('faces.calc-usage')}\n\n{rows}"


def layouts_text() -> str:
    """The layouts that ship, with their parameters."""
    texts = []
    for layout in LAYOUTS:
        rows = [(p.name, layout.label(p), parameter_range(p), parameter_default(p)) for p in layout.parameters]
        heads = tuple(say(f"faces.parameter-{key}") for key in ("name", "what", "range", "default"))
        texts.append(f"{layout.name}: {layout.title}\n  {layout.how_it_knits}\n{columns([heads, *rows], '    ')}")
    return "\n".join(texts)


def overview_text(plan: Plan, judged: Replay) -> str:
    """Title, size, needles, blocks in order, warnings."""
    sizes = resolve(plan.design)
    width, height = both_text(sizes.width_mm), both_text(sizes.height_mm)
    size = say("faces.size", width=width, height=height, rows=say_n("common.rows", sizes.rows))
    needles = say(
        "faces.needles",
        needles=say_n("common.needles", span(plan.first_needle, plan.last_needle)),
        names=range_name(plan.first_needle, plan.last_needle),
    )
    text = f"{plan.design.title}\n{size}\n{needles}\n\n{say('faces.blocks-in-order')}\n"
    names = {yarn.id: yarn.name for yarn in plan.design.yarns}
    rows = [
        (
            block.name,
            names.get(block.yarn, block.yarn),
            say_n("common.rows", judged.block_rows.get(block.id, 0)),
            say_n("common.stitches", judged.block_stitches.get(block.id, 0)),
        )
        for block in plan.blocks
    ]
    text += columns(rows)
    if judged.warnings:
        text += "\n" + _titled(say("faces.warnings"), "".join(f"  {warning}\n" for warning in judged.warnings))
    return text


def practice_text(found: Practice) -> str:
    """What comes up in a practice piece, and what does not."""
    text = _titled(say("faces.practice-shows"), "".join(f"  - {say(f'practice.{kind}')}\n" for kind in found.shows))
    return text + "".join(f"  {reason}\n" for reason in found.reasons)


def wrongs(judged: Replay) -> tuple[Problem, ...]:
    """Why a plan is not good: what is not legal, level or true, and borders that do not join."""
    return (*judged.problems, *(warning for warning in judged.warnings if warning.code == "piece.slit"))


def found_text(plan: Plan, judged: Replay) -> str:
    """What the model bed found: the verdict, the figures, the warnings."""
    found = judged.summary
    names = {yarn.id: yarn.name for yarn in plan.design.yarns}
    rows = [
        (say("faces.found-rows"), say("faces.found-between", least=found.rows_min, most=found.rows_max)),
        (say("faces.found-fold"), say_n("common.rows", found.steepest_fold)),
        (say("faces.found-ends"), f"{found.ends}"),
        (say("faces.found-ends-inside"), f"{found.ends_inside}"),
        (say("faces.found-inside-starts"), f"{found.inside_starts}"),
        (say("faces.found-free-passes"), f"{found.free_passes}"),
        (say("faces.found-slits"), f"{len(found.slits)}"),
        (say("faces.found-holes"), f"{len(found.holes)}"),
        (say("faces.found-floats"), f"{found.floats}"),
        (say("faces.found-dropped"), f"{found.dropped}"),
        *((say("faces.found-stitches", yarn=names.get(yarn, yarn)), f"{count}") for yarn, count in found.stitches.items()),
    ]
    parts = [f"{plan.design.title}\n"]
    wrong = wrongs(judged)
    if wrong:
        parts.append(_titled(say("faces.found-wrong"), "".join(f"  {problem}\n" for problem in wrong)))
    else:
        parts.append(f"{say('faces.found-good')}\n")
    parts.append(_titled(say("faces.found"), columns(rows)))
    warnings = [warning for warning in judged.warnings if warning not in wrong]
    if warnings:
        parts.append(_titled(say("faces.warnings"), "".join(f"  {warning}\n" for warning in warnings)))
    return "\n".join(parts)
