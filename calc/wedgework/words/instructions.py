"""The written pattern: everything from cast-on to blocking, in sections of numbered sentences.

text = instructions(plan, judged).as_text()
page = instructions(plan, judged).as_html()
"""

from __future__ import annotations

from collections.abc import Container, Sequence
from dataclasses import dataclass
from html import escape
from itertools import pairwise
from typing import Literal

from wedgework.formats.plan import Plan
from wedgework.replay.result import Replay
from wedgework.say import say, say_n
from wedgework.words.changes import change_list
from wedgework.words.checks import check_change
from wedgework.words.finishing import finish_list
from wedgework.words.opening_pages import cautions, key, notes, piece, yarns
from wedgework.words.passages import Passage, passages
from wedgework.words.phrases import Speaker, needle_list
from wedgework.words.sentences import row_sentences
from wedgework.words.starts import end_list, start_list
from wedgework.words.titles import short_title, title

__all__ = ["Instructions", "Section", "block_sections", "instructions"]


@dataclass(frozen=True, slots=True)
class Section:
    """`kind`: facts are read, steps are done in order."""

    key: str
    """Stable within one piece: ``piece``, ``yarns``, ``key``, ``cautions``, ``notes``, a block id, ``end``, ``finish``."""
    title: str
    sentences: tuple[str, ...]
    kind: Literal["facts", "steps"]


@dataclass(frozen=True, slots=True)
class Instructions:
    title: str
    sections: tuple[Section, ...]

    def as_text(self) -> str:
        """Plain text; steps are numbered within their section."""
        lines = [self.title]
        for section in self.sections:
            lines += ["", section.title]
            for number, words in enumerate(section.sentences, 1):
                lines.append(f"  {number:>2}. {words}" if section.kind == "steps" else f"  {words}")
        return "\n".join(lines) + "\n"

    def as_html(self, level: int = 3) -> str:
        """Sections with headings of `level`, lists inside; every text escaped, no style, no script.

        Steps are folded under their heading: a blanket has hundreds of them, and a page is read block by block.
        """
        parts = []
        for section in self.sections:
            tag = "ol" if section.kind == "steps" else "ul"
            items = "".join(f"<li>{escape(words)}</li>" for words in section.sentences)
            heading = f"<h{level}>{escape(section.title)}</h{level}>"
            inside = f"{heading}<{tag}>{items}</{tag}>"
            if section.kind == "steps":
                inside = f"<details><summary>{heading}</summary><{tag}>{items}</{tag}></details>"
            parts.append(
                f'<section class="instructions-{escape(section.kind)}" data-section="{escape(section.key)}">{inside}</section>'
            )
        return f'<div class="instructions">{"".join(parts)}</div>'


def instructions(plan: Plan, judged: Replay) -> Instructions:
    """The written pattern of a plan and its replay; figures are the replay's."""
    speaker = Speaker.of(plan)
    parts = passages(plan)
    sections = [
        Section("piece", say("words.section-piece"), piece(plan, judged), "facts"),
        Section("yarns", say("words.section-yarns"), yarns(plan, judged), "facts"),
        Section("key", say("words.section-key"), key(plan), "facts"),
        Section("cautions", say("words.section-cautions"), cautions(), "facts"),
        Section("notes", say("words.section-notes"), notes(judged), "facts"),
        Section("start", say("words.section-start"), start_list(plan, speaker), "steps"),
    ]
    sections += _blocks(plan, judged, parts, speaker)
    sections.append(Section("end", say("words.section-end"), end_list(plan, parts[-1].opening, speaker), "steps"))
    sections.append(Section("finish", say("words.section-finish"), finish_list(plan, judged), "steps"))
    return Instructions(plan.design.title, tuple(sections))


def block_sections(plan: Plan, judged: Replay, blocks: Container[str]) -> list[Section]:
    """Of the written pattern the sections of some blocks."""
    return _blocks(plan, judged, passages(plan), Speaker.of(plan), blocks)


def _blocks(
    plan: Plan, judged: Replay, parts: Sequence[Passage], speaker: Speaker, blocks: Container[str] | None = None
) -> list[Section]:
    found: list[Section] = []
    for passage, following in pairwise(parts):
        if passage.block is not None and (blocks is None or passage.block.id in blocks):
            after = short_title(plan, following) if following.block is not None else say("words.next-off")
            words = (*_block(passage, judged, speaker), say("words.next", what=after))
            found.append(Section(passage.block.id, title(plan, passage), words, "steps"))
    return found


def _block(passage: Passage, judged: Replay, speaker: Speaker) -> tuple[str, ...]:
    """Where you are, the check list, a check, the rows."""
    block = passage.block
    if block is None:
        raise ValueError("steps after the last row are no block")
    needles = {n for handful in passage.handfuls for n in handful.ready.working}
    said = [
        say(
            "words.block-begin",
            yarn=speaker.yarn(block.yarn),
            needles=needle_list(needles),
            rows=say_n("common.rows", judged.block_rows.get(block.id, passage.done.block_row)),
            where=speaker.where(passage.opening.bed),
        )
    ]
    said += change_list(passage, speaker)
    said.append(say("words.block-check", check=check_change(passage, speaker)))
    said += row_sentences(passage, speaker)
    return tuple(said)
