"""Every page carries one strict policy that allows exactly what stands in it."""

from __future__ import annotations

import base64
import hashlib
import re
from pathlib import Path

from builder.fingerprint import named
from builder.icons import ICONS, MARK, icon_png, rectangles
from builder.policy import apply_policy, inline_scripts, policy, unwanted

META = re.compile(r'<meta http-equiv="Content-Security-Policy" content="([^"]+)">')


def test_every_page_has_the_policy_before_anything_it_must_hold_for(built: Path) -> None:
    policies = set()
    for file in built.rglob("*.html"):
        html = file.read_text(encoding="utf-8")
        found = META.search(html)
        assert found, file
        policies.add(found[1])
        for tag in ("<script", "<link", "<style", "<img"):
            assert html.find(tag, 0, found.start()) == -1, file
    (ours,) = policies
    assert "unsafe" not in ours
    assert "*" not in ours.replace("'sha256-", "")
    assert not re.search(r"https?:", ours)


def test_the_hashes_are_those_of_the_inline_scripts(built: Path) -> None:
    scripts = {script for file in built.rglob("*.html") for script in inline_scripts(file.read_text(encoding="utf-8"))}
    expected = {base64.b64encode(hashlib.sha256(script.encode()).digest()).decode() for script in scripts}
    allowed = re.findall(r"'sha256-([^']+)'", META.search((built / "index.html").read_text(encoding="utf-8"))[1])
    assert set(allowed) == expected
    assert len(allowed) < 12, "the theme's own, not one for each page"


def test_the_states_are_in_the_page_before_any_script(built: Path) -> None:
    for file in built.rglob("*.html"):
        assert '<html data-engine="static" data-offline="none" ' in file.read_text(encoding="utf-8"), file


def test_no_page_has_what_the_policy_would_stop(built: Path) -> None:
    assert {str(file): found for file in built.rglob("*.html") if (found := unwanted(file.read_text(encoding="utf-8")))} == {}


def test_what_is_unwanted_is_found(tmp_path: Path) -> None:
    for html in (
        '<p style="color: red">',
        "<button onclick='go()'>",
        "<svg ONLOAD=go()>",
        "<style>p{}</style>",
        "<a href=' JavaScript:go()'>",
        "<iframe src=x></iframe>",
        "<base href=x>",
        "<object data=x></object>",
    ):
        assert unwanted(html), html
    page = tmp_path / "x.html"
    page.write_text('<html lang="en"><meta charset="utf-8"><p style="x">', encoding="utf-8")
    assert apply_policy(tmp_path) == ['x.html: <p style="x">']
    page.write_text("<html><p>", encoding="utf-8")
    assert apply_policy(tmp_path) == ["x.html: no place for the policy"]


def test_only_scripts_that_run_are_hashed() -> None:
    data, elsewhere = "<script type=application/json>{}</script>", "<script src=x></script>"
    html = f"<script>a &lt; b</script>{data}{elsewhere}<script type=module>c</script>"
    assert inline_scripts(html) == ["a &lt; b", "c"]
    assert policy([]).startswith("default-src 'self'; script-src 'self'; style-src 'self'; ")


def test_nothing_is_fetched_from_elsewhere_by_our_scripts(built: Path) -> None:
    for file in [*named(built, "app").glob("*.js"), built / "sw.js"]:
        text = file.read_text(encoding="utf-8")
        assert not re.search(r"https?://(?!www\.w3\.org/\d{4}/svg)", text), file
        assert not re.search(r"\beval\(|new Function|document\.write|insertAdjacentHTML|outerHTML", text), file


def test_the_icons_are_painted_from_the_mark() -> None:
    svg = MARK.read_text(encoding="utf-8")
    found = list(rectangles(svg))
    assert len(found) == svg.count("z")
    assert all(0 <= left < right <= 24 and 0 <= top < bottom <= 24 for _, left, top, right, bottom in found)
    for _, pixels, share in ICONS[:1]:
        png = icon_png(svg, pixels, share)
        assert png.startswith(b"\x89PNG\r\n\x1a\n")
        assert png == icon_png(svg, pixels, share)
