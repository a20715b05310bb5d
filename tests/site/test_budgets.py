"""What a visitor loads stays light: the weights of the built pages, and that too much of anything is found."""

from __future__ import annotations

import gzip
import json
from pathlib import Path

from builder.budgets import FILE, GROWTH, LIMITS, REST, first_answer, too_heavy, weigh
from builder.keep import kept_files

ROOT = Path(__file__).resolve().parents[2]
ALLOWED: dict[str, int] = json.loads(FILE.read_text(encoding="utf-8"))


def test_the_built_pages_are_within_their_budgets(built: Path) -> None:
    weights = weigh(built)
    assert sum(weights.values()) == sum(size for _, _, size in kept_files(built)), "every file is weighed once"
    assert all(weights.values()), "no part is empty"
    assert too_heavy(weights, first_answer(built), ALLOWED) == []


def test_what_a_visitor_costs_is_said_as_it_is(built: Path) -> None:
    """To the next whole megabyte, in the pages for webmasters and readers."""
    weights = weigh(built)
    load = round(sum(weights.values()) / 1e6)
    files = [built / (address + "index.html" * (not address or address.endswith("/"))) for address, _, _ in kept_files(built)]
    kept = sum(len(gzip.decompress(file.read_bytes())) if file.suffix == ".gz" else file.stat().st_size for file in files)
    core = sum(weights[part] for part in ("runtime: memory", "runtime: core"))
    hosting, offline, readme = (
        (ROOT / page).read_text(encoding="utf-8")
        for page in ("site/pages/reference/hosting.md", "site/pages/reference/offline.md", "README.md")
    )
    assert f"The first visit loads about {load} megabytes" in hosting
    assert f"are about {load} terabytes" in hosting
    assert f"about {round(core / 1e6)} megabytes more" in hosting
    assert f"whose folder all pages name, about {round(weights[REST] / 1e6)} megabytes" in hosting
    assert f"some {5 * round((built / 'sw.js').stat().st_size / 5e3)} kilobytes" in hosting
    assert f"about {load} megabytes to load (some {round(kept / 1e6)} on the device)" in offline
    assert f"about {load} megabytes" in readme


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
