"""Lengths as a knitter reads them."""

from __future__ import annotations

from fractions import Fraction

from wedgework.say import say
from wedgework.words.phrases import figure

__all__ = ["centimetres"]


def centimetres(mm: Fraction) -> str:
    """34.3 cm (13 1/2 in); inches to the nearest quarter."""
    quarters = int(mm * 40 / 254 + Fraction(1, 2)) if mm >= 0 else 0
    whole, rest = divmod(quarters * 4 // 4, 4)
    parts = [str(whole)] if whole or not rest else []
    if rest:
        parts.append({1: "1/4", 2: "1/2", 3: "3/4"}[rest])
    return say("words.length", cm=figure(mm / 10, 1), inches=" ".join(parts))
