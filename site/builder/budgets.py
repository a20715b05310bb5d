"""What a visitor loads is weighed, part by part; a part that has grown by more than five per cent stops the build.

site/budgets.json holds what each part may weigh, in bytes as they are loaded for the offline copy. When a part has grown for a
good reason, ``WEDGEWORK_ACCEPT=1 make site`` writes today's weights there; the difference is read like any other change.
"""

from __future__ import annotations

import hashlib
import json
import os
from collections.abc import Mapping
from pathlib import Path

from builder.fingerprint import named
from builder.keep import kept_files, twin

__all__ = ["FILE", "GROWTH", "LIMITS", "check_budgets", "first_answer", "too_heavy", "weigh"]

FILE = Path(__file__).resolve().parents[1] / "budgets.json"
GROWTH = 1.05
# Bytes that no acceptance moves. A tablet on a weak line has to bring them once.
LIMITS = {"everything": 16_000_000, "runtime": 12_500_000, "pages": 3_500_000, "first answer": 10_500_000}
# Where each part lies, the first that fits; what is left belongs to the pages.
PARTS = {
    "runtime: program": "pyodide.asm.wasm.gz",
    "runtime: scripts": ".mjs",
    "runtime: standard library": "python_stdlib.zip",
    "runtime: memory": "runtime/start/",
    "runtime: core": "runtime/core-",
    "pages: search": "search/",
    "pages: other languages": "runtime/words-",
    "pages: scripts": "app-",
    "pages: frame": "assets-",
}
REST = "pages: pages"


def weigh(folder: Path) -> dict[str, int]:
    """Bytes to load for each part of the offline copy."""
    weights = dict.fromkeys([*PARTS, REST], 0)
    for address, _, size in kept_files(folder):
        weights[next((name for name, where in PARTS.items() if where in address), REST)] += size
    return weights


def first_answer(folder: Path, page: str = "calculators/gauge/index.html") -> int:
    """Bytes that a first visit to one calculator loads, from a server that compresses nothing, until it answers live."""
    (script,) = folder.glob("runtime/*/pyodide.asm.mjs")
    files = [folder / page, script.with_name("pyodide.mjs"), folder / twin(hashlib.sha256(script.read_bytes()).hexdigest())]
    files += [*folder.glob("runtime/*/*.wasm.gz"), *folder.glob("runtime/start/*")]
    files += [*named(folder, "assets").rglob("*.css"), *named(folder, "app").glob("*.js")]
    return sum(file.stat().st_size for file in files)


def too_heavy(weights: Mapping[str, int], first: int, allowed: Mapping[str, int]) -> list[str]:
    """One sentence for each part that is too heavy."""
    told = [
        f"{name} weighs {weight:,} bytes, {allowed.get(name, 0):,} were accepted; accept more with: WEDGEWORK_ACCEPT=1 make site"
        for name, weight in weights.items()
        if weight > allowed.get(name, 0) * GROWTH
    ]
    whole = {kind: sum(weight for name, weight in weights.items() if name.startswith(kind)) for kind in ("runtime", "pages")}
    whole |= {"everything": sum(weights.values()), "first answer": first}
    over = {name: limit for name, limit in LIMITS.items() if whole[name] > limit}
    return told + [f"{name} weighs {whole[name]:,} bytes; {limit:,} is the limit" for name, limit in over.items()]


def check_budgets(folder: Path) -> list[str]:
    """What is too heavy in the built folder; with WEDGEWORK_ACCEPT the weights are written down first."""
    weights = weigh(folder)
    if os.environ.get("WEDGEWORK_ACCEPT"):
        FILE.write_text(json.dumps(weights, indent=2) + "\n", encoding="utf-8")
    return too_heavy(weights, first_answer(folder), json.loads(FILE.read_text(encoding="utf-8")))
