"""What stands in the way of a person on a page: found by axe-core, by width, and by the size of what is pressed."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Frame, Page

__all__ = ["SIZES", "barriers", "found_by_axe", "with_axe"]

AXE = Path(__file__).resolve().parents[1] / "site" / "node_modules" / "axe-core" / "axe.min.js"
FINDINGS = "(how) => axe.run(how).then(r => r.violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.html.slice(0, 160)}`)))"
SIZES = [(1024, 768), (768, 1024), (390, 844)]


def with_axe(page: Page | Frame) -> None:
    """Brings axe into the page, once. The page's own policy forbids a script put into it."""
    if page.evaluate("() => typeof axe === 'undefined'"):
        page.evaluate(AXE.read_text(encoding="utf-8"))


def found_by_axe(page: Page | Frame, how: dict[str, object] | None = None) -> list[str]:
    """One short line for each thing; `how` are axe's own options."""
    with_axe(page)
    found: list[str] = page.evaluate(FINDINGS, how or {})
    return found


def barriers(page: Page | Frame) -> list[str]:
    found = found_by_axe(page)
    if page.evaluate("() => document.documentElement.scrollWidth > innerWidth"):
        found.append("it scrolls sideways")
    small = page.eval_on_selector_all(
        ".ww-calculator :is(button, select, .ww-told a)",
        "all => all.filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 44).map(e => e.outerHTML)",
    )
    return found + [f"small: {one}" for one in small]
