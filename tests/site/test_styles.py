"""The theme's styles lose what no page uses, and nothing else."""

from __future__ import annotations

import re
from importlib.metadata import distribution
from pathlib import Path

from playwright.sync_api import Browser

from builder.fingerprint import named
from builder.styles import without_unused

THEME = Path(str(distribution("mkdocs-material").locate_file("material/templates/assets/stylesheets")))
# Every element's computed styles, as the browser has them.
LOOKS = """() => [...document.querySelectorAll('body *')].map((one) => {
    const style = getComputedStyle(one);
    return [...style].map((name) => name + ': ' + style.getPropertyValue(name)).join('; ');
})"""


def test_only_rules_for_classes_that_nobody_has_are_left_out() -> None:
    css = '@charset "UTF-8";/* x */a,.gone{b:c}.has .gone,.has:not(.gone){d:e}@media print{.gone{f:g}}'
    css += "@supports (x:y){.has{h:i}}@page{j:k}"
    assert without_unused(css, {"has"}) == '@charset "UTF-8";a{b:c}.has:not(.gone){d:e}@supports (x:y){.has{h:i}}@page{j:k}'
    assert without_unused(":is(.gone,b){c:d}", set()) == ":is(.gone,b){c:d}", "what is not understood stays"


def test_the_sheets_are_half_as_large_and_whole(built: Path) -> None:
    sheets = list((named(built, "assets") / "stylesheets").glob("*.css"))
    assert len(sheets) > 1
    for sheet in sheets:
        left = sheet.read_text(encoding="utf-8")
        assert left.count("{") == left.count("}")
        whole = (THEME / sheet.name).read_text(encoding="utf-8")
        assert len(left) < len(whole)
        # At-rules with names that others refer to are all there.
        names = re.findall(r"@keyframes [\w-]+", whole)
        assert [name for name in names if name not in left] == []


def test_every_element_looks_as_with_all_of_them(browser: Browser, served: str) -> None:
    for address in ("", "reference/words/"):
        context = browser.new_context(viewport={"width": 1400, "height": 900}, service_workers="block", reduced_motion="reduce")
        page = context.new_page()
        page.goto(served + address)
        page.wait_for_timeout(1_000)
        ours = page.evaluate(LOOKS)
        page.route(
            "**/assets-*/stylesheets/*.css",
            lambda route: route.fulfill(path=THEME / route.request.url.rsplit("/", 1)[1], content_type="text/css"),
        )
        page.reload()
        page.wait_for_timeout(1_000)
        assert ours == page.evaluate(LOOKS), address
        context.close()
