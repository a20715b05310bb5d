"""The planner page on paper: two sheets, A4 and Letter."""

from __future__ import annotations

import io

import pytest
from playwright.sync_api import Browser
from pypdf import PdfReader


@pytest.mark.parametrize("paper", ["A4", "Letter"])
def test_the_planner_prints_on_three_sheets_at_the_most(browser: Browser, served: str, paper: str) -> None:
    page = browser.new_page()
    page.goto(served + "plan/")
    sheets = PdfReader(io.BytesIO(page.pdf(format=paper, prefer_css_page_size=False))).pages
    page.close()
    assert len(sheets) in (2, 3)
    first, second = (sheet.extract_text() for sheet in sheets[:2])
    assert "Search" not in first, "the frame of the screen stays on the screen"
    assert len(second) > 200, "the second sheet is not an empty leaf"
