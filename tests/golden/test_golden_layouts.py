"""Every named layout at its defaults as letters of yarns, one for each needle and turn, as the finished front shows it."""

from __future__ import annotations

import pytest

from goldens import Goldens
from pieces import letters, piece
from wedgework.formats.design import NamedLayout
from wedgework.layout import drawn_layout, resolve
from wedgework.layout.library import LAYOUTS, LayoutDeclaration

NEEDLES, ROWS = 36, 64


@pytest.mark.parametrize("one", LAYOUTS, ids=lambda one: one.name)
def test_the_letters(one: LayoutDeclaration, golden: Goldens) -> None:
    design = piece(NamedLayout(one.name), NEEDLES, ROWS)
    lines = letters(drawn_layout(design, resolve(design)), NEEDLES, ROWS)
    golden(f"layouts/{one.name}.txt", "\n".join(lines).replace("a", ".") + "\n")
