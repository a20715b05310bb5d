"""What a visitor loads stays light: the weights of the built pages, and that too much of anything is found."""

from __future__ import annotations

import json
from pathlib import Path

from builder.budgets import FILE, GROWTH, LIMITS, REST, first_answer, too_heavy, weigh
from builder.keep import kept_files

ALLOWED: dict[str, int] = json.loads(FILE.read_text(encoding="utf-8"))


def test_the_built_pages_are_within_their_budgets(built: Path) -> None:
    weights = weigh(built)
    assert sum(weights.values()) == sum(size for _, _, size in kept_files(built)), "every file is weighed once"
    assert all(weights.values()), "no part is empty"
    assert too_heavy(weights, first_answer(built), ALLOWED) == []


def test_a_part_that_grows_by_more_than_five_per_cent_is_named() -> None:
    light = dict.fromkeys(ALLOWED, 1000)
    assert too_heavy(light | {REST: int(1000 * GROWTH)}, 0, light) == []
    (told,) = too_heavy(light | {REST: 1051}, 0, light)
    assert told.startswith("pages: pages weighs 1,051 bytes, 1,000 were accepted")


def test_a_new_part_is_too_heavy_until_it_is_accepted() -> None:
    assert too_heavy({"pages: films": 1}, 0, {}) != []


def test_no_acceptance_moves_the_limits() -> None:
    heavy = {"runtime: program": 12_500_001, "pages: pages": 3_500_001}
    told = " ".join(too_heavy(heavy, 10_500_001, heavy))
    assert all(f"{name} weighs" in told for name in LIMITS)
