"""The README: its picture is what the program draws, and every file it points to is there."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from builder.picture import TARGET, picture

TOP = Path(__file__).resolve().parents[2]


def test_the_picture_is_the_one_the_program_draws() -> None:
    assert TARGET.read_text(encoding="utf-8") == picture(), "draw it anew with: make picture"


def test_it_begins_with_the_job_and_shows_one_picture() -> None:
    text = (TOP / "README.md").read_text(encoding="utf-8")
    parts = text.split("\n\n")
    assert parts[0].startswith("# Wedgework")
    assert len(parts[1]) > 200, "the job in one paragraph"
    assert parts[2].startswith("!["), "then one picture"
    assert text.count("![") == 1
    assert "make serve" in text
    assert "make test" in text


@pytest.mark.parametrize("name", ["README.md", "DEVELOPERS.md"])
def test_what_it_points_to_is_there(name: str) -> None:
    text = (TOP / name).read_text(encoding="utf-8")
    targets = [target for target in re.findall(r"\]\(([^)#]+)(?:#[^)]*)?\)", text) if "://" not in target]
    assert targets
    assert [target for target in targets if not (TOP / target).exists()] == []


def test_every_recipe_that_is_named_exists() -> None:
    makefile = (TOP / "Makefile").read_text(encoding="utf-8")
    recipes = set(re.search(r"^\.PHONY: (.+)$", makefile, flags=re.MULTILINE).group(1).split())  # type: ignore[union-attr]
    suites = re.search(r"^SUITES = (.+)$", makefile, flags=re.MULTILINE).group(1).split()  # type: ignore[union-attr]
    recipes |= {f"test-{suite}" for suite in suites}
    for name in ("README.md", "DEVELOPERS.md"):
        named = set(re.findall(r"`make ([a-z-]+)`", (TOP / name).read_text(encoding="utf-8")))
        assert named <= recipes, name
    assert {f.name for f in (TOP / "tests").iterdir() if f.is_dir() and f.name not in ("bench", "__pycache__")} == set(suites)


def test_site_is_phony() -> None:
    """A folder has that name: make would think it is up to date."""
    assert " site " in re.search(r"^\.PHONY:.*$", (TOP / "Makefile").read_text(encoding="utf-8"), flags=re.MULTILINE).group(0)  # type: ignore[union-attr]
