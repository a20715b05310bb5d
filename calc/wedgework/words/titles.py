"""What the parts of a plan are called."""

from __future__ import annotations

from wedgework.formats.plan import Plan, is_edge
from wedgework.say import ENGLISH, language, say
from wedgework.words.passages import Passage
from wedgework.words.phrases import Speaker

__all__ = ["block_count", "short_title", "title"]


def block_count(plan: Plan) -> int:
    """Blocks of the picture, without base rows and hems."""
    return sum(not is_edge(block.id) for block in plan.blocks)


def title(plan: Plan, passage: Passage) -> str:
    """Block 3 of 5: Chalk; the block's own name where it has one; empty after the last row."""
    block = passage.block
    if block is None:
        return ""
    return (
        say("words.block", number=passage.number, count=block_count(plan), name=_name(plan, passage))
        if passage.number
        else block.name
    )


def short_title(plan: Plan, passage: Passage) -> str:
    """The same inside a sentence: block 3, Chalk."""
    block = passage.block
    if block is None:
        return ""
    if passage.number:
        return say("words.block-short", number=passage.number, name=_name(plan, passage))
    # In German, for one, a noun keeps its capital.
    return block.name[:1].lower() + block.name[1:] if language() == ENGLISH else block.name


def _name(plan: Plan, passage: Passage) -> str:
    """The yarn's name, unless somebody named the block herself."""
    block = passage.block
    if block is None:
        return ""
    speaker = Speaker.of(plan)
    usual = say("plan.block-name", number=passage.number, yarn=speaker.yarn_name(block.yarn))
    return speaker.yarn(block.yarn) if block.name in ("", usual) else block.name
