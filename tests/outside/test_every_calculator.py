"""That no calculator goes unchecked: each has a file of outside checks here, and every check says what it is against."""

from __future__ import annotations

import ast
from pathlib import Path

import pytest

from wedgework.catalogue import CALCULATORS

HERE = Path(__file__).parent
FEWEST, FEWEST_IN_ALL = 3, 60


def checks(slug: str) -> list[ast.FunctionDef]:
    file = HERE / f"test_{slug.replace('-', '_')}_outside.py"
    if not file.is_file():
        return []
    body = ast.parse(file.read_text(encoding="utf-8")).body
    return [part for part in body if isinstance(part, ast.FunctionDef) and part.name.startswith("test_")]


@pytest.mark.parametrize("slug", [one.slug for one in CALCULATORS])
def test_every_calculator_has_checks_that_name_their_source(slug: str) -> None:
    named = [check for check in checks(slug) if ast.get_docstring(check)]
    assert len(named) >= FEWEST


def test_there_are_enough_of_them() -> None:
    assert sum(1 for one in CALCULATORS for check in checks(one.slug) if ast.get_docstring(check)) >= FEWEST_IN_ALL
