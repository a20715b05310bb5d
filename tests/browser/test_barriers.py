"""The states that only a script can bring have no barrier either, and nothing in them scrolls sideways."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Page

from visiting import settled

AXE = Path(__file__).resolve().parents[2] / "site" / "node_modules" / "axe-core" / "axe.min.js"
FINDINGS = "() => axe.run().then(r => r.violations.flatMap(v => v.nodes.map(n => `${v.id}: ${n.html.slice(0, 160)}`)))"
SIZES = [(1024, 768), (768, 1024), (390, 844)]


def barriers(page: Page) -> list[str]:
    page.evaluate(AXE.read_text(encoding="utf-8"))
    found: list[str] = page.evaluate(FINDINGS)
    if page.evaluate("() => document.documentElement.scrollWidth > innerWidth"):
        found.append("it scrolls sideways")
    small = page.eval_on_selector_all(
        ".ww-calculator :is(button, select, .ww-told a)",
        "all => all.filter(e => e.checkVisibility() && e.getBoundingClientRect().height < 44).map(e => e.outerHTML)",
    )
    return found + [f"small: {one}" for one in small]


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_live_wrong_noted_and_updating(scheme: str, served: str, visitor) -> None:
    with visitor(color_scheme=scheme) as one:
        page = one.open(f"{served}plan/", live=True)
        page.select_option("[name=gauge_from]", "swatch")
        settled(page)
        page.evaluate("() => { navigator.clipboard.writeText = () => Promise.reject(new Error('no')); }")
        page.click("text=Copy link")
        page.wait_for_selector(".ww-link")
        page.fill("[name=width]", "three apples")
        page.fill("[name=title]", "")
        page.wait_for_selector(".ww-old")
        page.evaluate(f"() => import('{served}app/offline.js').then((offline) => offline.offer(() => {{}}))")
        page.wait_for_selector(".ww-update")
        wrong = []
        for width, height in SIZES:
            page.set_viewport_size({"width": width, "height": height})
            wrong += [f"{width}x{height} {found}" for found in barriers(page)]
        assert wrong == [], "\n".join(wrong)


def test_forced_colours_and_reduced_motion_leave_everything_there(served: str, visitor) -> None:
    with visitor(forced_colors="active", reduced_motion="reduce") as one:
        page = one.open(f"{served}calculators/gauge/", live=True)
        page.fill("[name=stitches]", "none")
        page.wait_for_selector(".ww-old")
        for selector in (".ww-told", ".ww-problem", ".ww-button", "output"):
            assert page.is_visible(selector)
        assert barriers(page) == []
