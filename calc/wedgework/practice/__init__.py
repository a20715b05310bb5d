"""The practice piece: from any design the smallest sample in which everything that the piece will ask for comes up once.

    from wedgework.practice import practice

    found = practice(design)
    found.design, found.shows, found.lacks

`kinds` names what a plan asks of the hands, and where: edges by their lean and their steps, starts, turns, joins. `cuts` cuts
windows out of a picture and lays them on one another. `sample` tries such pieces and judges each by its own plan: a piece is
taken for what its plan contains, never for what it was cut from.
"""

from __future__ import annotations

from wedgework.practice.kinds import KINDS, kinds_of
from wedgework.practice.sample import Practice, practice, practice_piece

__all__ = ["KINDS", "Practice", "kinds_of", "practice", "practice_piece"]
