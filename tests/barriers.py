"""What stands in the way of a person on a page: found by axe-core, by width, and by the size of what is pressed."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Frame, Page

__all__ = ["SIZES", "barriers"]

AXE = Path(__file__).resolve().parents[1] / "site" / "node_modules" / "axe-core" / "axe.min.js"
FINDINGS = "() => axe.run().then(r => r.violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.html.slice(0, 160)}`)))"
SIZES = [(1024, 768), (768, 1024), (390, 844)]


def barriers(page: Page | Frame) -> list[str]:
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found: list[str] = page.evaluate(FINDINGS)
    if page.evaluate("() => document.documentElement.scrollWidth > innerWidth"):
        found.append("it scrolls sideways")
    small = page.eval_on_selector_all(
        ".ww-calculator :is(button, select, .ww-told a)",
        "all => all.filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 44).map(e => e.outerHTML)",
    )
    return found + [f"small: {one}" for one in small]
