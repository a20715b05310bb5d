"""Yarn counts: from any of them to tex and back, exactly.

Direct counts say how heavy a length is, indirect ones how long a weight is. Their units are definitions:
tex = g/km, dtex = g/10 km, denier = g/9 km, Nm = km/kg (ISO 1144; ISO 2947); the hanks to a pound of the English systems
are 840 yd (cotton), 560 yd (worsted), 1600 yd (woollen run) and 300 yd (linen lea), as ASTM D2260 lists them.
1 yd = 0.9144 m and 1 lb = 453.59237 g exactly. A trade variant counts cotton with 583.1 instead of 590.5; that is another
moisture basis, and not used here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from wedgework.units import LENGTH_UNITS, MASS_UNITS

__all__ = ["SYSTEMS", "System", "count_in", "plied", "tex_of"]

POUND_G = MASS_UNITS["lb"]
YARD_M = LENGTH_UNITS["yd"] / 1000


@dataclass(frozen=True, slots=True)
class System:
    """`direct`: tex = count x `factor`; else tex = `factor` / count."""

    key: str
    direct: bool
    factor: Fraction


def _hanks(yards: int) -> Fraction:
    """tex x count, for counts that are hanks of so many yards to the pound."""
    return 1000 * POUND_G / (yards * YARD_M)


SYSTEMS: Mapping[str, System] = {
    system.key: system
    for system in (
        System("tex", True, Fraction(1)),
        System("dtex", True, Fraction(1, 10)),
        System("denier", True, Fraction(1, 9)),
        System("nm", False, Fraction(1000)),
        System("cotton", False, _hanks(840)),
        System("worsted", False, _hanks(560)),
        System("run", False, _hanks(1600)),
        System("lea", False, _hanks(300)),
        System("metres_per_gram", False, Fraction(1000)),
        System("yards_per_pound", False, _hanks(1)),
        System("metres_per_50g", False, Fraction(50 * 1000)),
        System("metres_per_100g", False, Fraction(100 * 1000)),
    )
}


def tex_of(count: Fraction, system: str) -> Fraction:
    """Tex of a yarn of this count (above zero) in one of `SYSTEMS`."""
    one = SYSTEMS[system]
    return count * one.factor if one.direct else one.factor / count


def count_in(tex: Fraction, system: str) -> Fraction:
    """The count in one of `SYSTEMS` of a yarn of so many tex; the inverse of `tex_of`."""
    one = SYSTEMS[system]
    return tex / one.factor if one.direct else one.factor / tex


def plied(tex: Fraction, plies: int) -> Fraction:
    """Tex of so many threads of `tex` together. What twisting takes up, some per cent, is not in it."""
    return tex * plies
