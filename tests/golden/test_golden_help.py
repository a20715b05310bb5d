"""Help texts and first answers of the calculators, as a person reads them in a terminal."""

from __future__ import annotations

import pytest

from goldens import Goldens
from wedgework.catalogue import CALCULATORS
from wedgework.declare import Calculator, work_out
from wedgework.faces.answers import answer_object, json_text
from wedgework.faces.terminal import help_text, layouts_text

EVERY = pytest.mark.parametrize("one", CALCULATORS, ids=lambda one: one.slug)


@EVERY
def test_the_help_text(one: Calculator, golden: Goldens) -> None:
    golden(f"help/{one.slug}.txt", help_text(one))


@EVERY
def test_the_first_answer(one: Calculator, golden: Goldens) -> None:
    golden(f"answers/{one.slug}.json", json_text(answer_object(work_out(one, {})), indent=2) + "\n")


def test_the_layouts(golden: Goldens) -> None:
    golden("help/layouts.txt", layouts_text())
