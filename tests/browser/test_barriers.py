"""The states that only a script can bring have no barrier either, and nothing in them scrolls sideways."""

from __future__ import annotations

import pytest

from barriers import SIZES, barriers
from visiting import settled


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
        page.evaluate("() => import(scriptAt('offline.js')).then((offline) => offline.offer(() => {}))")
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
