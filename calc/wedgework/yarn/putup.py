"""Balls and cones: how many, and whether what there is will do. Never rounded down.

>>> balls(Fraction(351), Fraction(50))
8
>>> verdict(Fraction(230), Fraction(262), Fraction(240)).word
'perhaps'
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

from wedgework.exact import down, up
from wedgework.say import say

__all__ = ["Verdict", "balls", "verdict"]

Word = Literal["enough", "perhaps", "short"]


def balls(need_g: Fraction, ball_g: Fraction) -> int:
    """Whole balls that hold at least `need_g`; none for nothing."""
    return max(up(need_g / ball_g), 0)


@dataclass(frozen=True, slots=True)
class Verdict:
    """`over_g`: what is left over, or missing where it is negative, at the least and at the greatest need."""

    word: Word
    over_least_g: Fraction
    over_most_g: Fraction

    @property
    def sentence(self) -> str:
        """In the words of the trade; a shortage is rounded up, what is left over down."""
        low, high = self.over_least_g, self.over_most_g
        if self.word == "enough":
            return say("yarn.enough", over=down(low))
        if self.word == "short":
            return (
                say("yarn.short", least=up(-high), most=up(-low)) if up(-high) != up(-low) else say("yarn.short-by", by=up(-low))
            )
        return say("yarn.perhaps", short=up(-low), over=down(high))


def verdict(least_g: Fraction, most_g: Fraction, on_hand_g: Fraction) -> Verdict:
    """Whether `on_hand_g` will do for a need between `least_g` and `most_g`."""
    low, high = on_hand_g - most_g, on_hand_g - least_g
    word: Word = "enough" if low >= 0 else "short" if high < 0 else "perhaps"
    return Verdict(word, low, high)
