"""A yarn that a design names and does not have."""

from __future__ import annotations

from collections.abc import Sequence

from wedgework.problems import Problem
from wedgework.say import say

__all__ = ["unknown_yarn"]


def unknown_yarn(where: str, yarn: str, known: Sequence[str]) -> Problem:
    """The problem at `where`, with the ids that there are."""
    return Problem(
        where,
        "layout.unknown-yarn",
        say("layout.unknown-yarn", yarn=yarn),
        say("layout.unknown-yarn.way-out", yarns=", ".join(known)),
    )
