"""Drawings as SVG text: the finished front, the purl side on the machine, rows on each needle, the bed, diagrams.

    from wedgework.draw import front_svg

    front_svg(plan, judged)     # '<svg xmlns=...'

Every drawing has a size in millimetres, a title and a description, and says nothing by colour alone. There is no
style and no script in them, and the same values give the same text on every machine.
"""

from __future__ import annotations

from wedgework.draw.bed import BedLike, bed_svg
from wedgework.draw.diagrams import DIAGRAMS
from wedgework.draw.front import front_svg
from wedgework.draw.levels import levels_svg
from wedgework.draw.purl import purl_svg
from wedgework.draw.state import state_svg

__all__ = ["DIAGRAMS", "BedLike", "bed_svg", "front_svg", "levels_svg", "purl_svg", "state_svg"]
