"""The finished pages, before any script: addresses that were promised, answers that are there, links that lead somewhere."""

from __future__ import annotations

import json
import re
import tomllib
import xml.etree.ElementTree as ET
from html import escape
from pathlib import Path
from urllib.parse import unquote, urljoin, urlsplit

import pytest

from builder.finish import foreign_references
from builder.languages import catalogue
from wedgework.catalogue import CALCULATORS
from wedgework.faces.answers import json_text
from wedgework.faces.wire import default_answer
from wedgework.say import spoken

TOP = Path(__file__).resolve().parents[2]
VERSION = tomllib.loads((TOP / "pyproject.toml").read_text(encoding="utf-8"))["project"]["version"]
# Public promises: these never change.
ADDRESSES = [
    "",
    "plan/",
    "machine/",
    "board/",
    "calculators/",
    "calculators/gauge/",
    "calculators/yarn-count/",
    "calculators/even-shaping/",
    "calculators/size/",
    "calculators/panels/",
    "calculators/circle/",
    "calculators/blocking/",
    "calculators/time/",
    "calculators/tension/",
    "calculators/short-row-shape/",
    "calculators/hem/",
    "calculators/side-hem/",
    "calculators/edging/",
    "calculators/panel-plan/",
    "calculators/practice-piece/",
    "calculators/written-pattern/",
    "calculators/carry-on/",
    "calculators/yarn-needs/",
    "calculators/stripes/",
    "calculators/scraps/",
    "calculators/shelf/",
    "gallery/",
    "class/",
    "reference/",
    "reference/words/",
    "reference/short-rows/",
    "reference/holding-and-wraps/",
    "reference/casting-on-and-off/",
    "reference/hems/",
    "reference/seams/",
    "reference/washing-and-blocking/",
    "reference/mishaps/",
    "reference/layouts/",
    "reference/yarn-weights/",
    "reference/blanket-sizes/",
    "reference/cautions/",
    "reference/how-we-know/",
    "reference/speed/",
    "reference/formats/",
    "reference/licences/",
    "reference/offline/",
    "reference/copy/",
    "reference/saving/",
    "reference/reports/",
    "reference/hosting/",
    "reference/embedding/",
    "reference/changelog/",
]
WITH_CALCULATOR = {"plan/": "panel-plan"} | {
    address: address.split("/")[1] for address in ADDRESSES if address.startswith("calculators/") and address != "calculators/"
}


# The same promise in German: every calculator and tool, and a few pages of the reference.
GERMAN = [
    "de/",
    *(
        f"de/{address}"
        for address in ADDRESSES
        if address.split("/")[0] in ("plan", "machine", "board", "calculators", "gallery", "class") and address
    ),
    *(f"de/reference/{name}/" for name in ("cautions", "copy", "reports", "saving", "short-rows", "words")),
]


def test_every_page_stands_at_its_address(pages, german_pages) -> None:
    assert sorted(pages) == sorted(ADDRESSES)
    assert sorted(german_pages) == sorted(GERMAN)


def test_each_german_page_says_what_it_is_and_leads_on(every_page, german_pages, built: Path) -> None:
    for address, page in german_pages.items():
        assert len(page.all("h1")) == 1, address
        assert page.all("html")[0]["lang"] == "de", address
        assert len(page.ids) == len(set(page.ids)), address
        follow_links(every_page, built, address)
        # The same page in English is one step away, and leads back.
        for other, language in ((address, "en"), (address.removeprefix("de/"), "de")):
            (there,) = {
                a["href"] for a in every_page[other].all("a") if a.get("hreflang") == language and "md-select__link" in a["class"]
            }
            wanted = address.removeprefix("de/") if language == "en" else address
            assert urlsplit(urljoin(f"http://here/{other}", there)).path == f"/{wanted}", other


def test_a_german_answer_is_there_before_any_script(built: Path) -> None:
    with spoken("de", catalogue("de")):
        for calculator in CALCULATORS:
            html = (built / "de" / "calculators" / calculator.slug / "index.html").read_text(encoding="utf-8")
            told = json.loads(default_answer(calculator.slug))
            assert escape(json_text({"answer": told["answer"]})) in html, calculator.slug
            assert f"<output>{told['html']}</output>" in html, calculator.slug
            # In the drawer too, which takes it from the page's own head.
            assert f"<title>{escape(calculator.title)} - " in html
            assert html.count(escape(calculator.title)) >= 2


@pytest.mark.parametrize("address", ADDRESSES)
def test_each_page_says_what_it_is(pages, address: str) -> None:
    page = pages[address]
    assert len(page.all("h1")) == 1
    assert page.all("html")[0]["lang"] == "en"
    assert len(page.ids) == len(set(page.ids)), "each id stands once"
    assert f"Wedgework {VERSION}" in page.text, "the foot of each page shows the version"


@pytest.mark.parametrize(("address", "slug"), WITH_CALCULATOR.items())
def test_a_calculator_answers_before_any_script(pages, address: str, slug: str) -> None:
    page = pages[address]
    (form,) = [form for form in page.all("form") if "data-calculator" in form]
    assert form["data-calculator"] == slug
    assert page.all("output"), "the answer lies in <output>"
    fields = [tag for name in ("input", "select", "textarea") for tag in page.all(name) if "name" in tag]
    assert len(fields) >= 4


def test_the_answer_for_the_first_values_of_gauge_is_true(pages) -> None:
    """Counted by hand from the form itself: stitches over the mean width, in 10 cm."""
    fields = {tag["name"]: tag.get("value", "") for tag in pages["calculators/gauge/"].all("input") if "name" in tag}
    widths = [float(re.sub(r"[^\d.]", "", one)) for one in fields["width"].split(";")]
    assert all("cm" in one for one in fields["width"].split(";")), "this check reads centimetres"
    per_10cm = float(fields["stitches"]) / (sum(widths) / len(widths)) * 10
    assert f"{per_10cm:.1f}" in pages["calculators/gauge/"].text


def test_no_handler_and_no_style_stands_in_what_the_core_wrote(built: Path) -> None:
    """A strict content policy will forbid both."""
    for address in ADDRESSES:
        html = (built / address / "index.html").read_text(encoding="utf-8")
        article = html[html.index("<article") : html.index("</article>")]
        assert re.findall(r"<[^>]*\s(on[a-z]+|style)=", article) == [], address


@pytest.mark.parametrize("address", ADDRESSES)
def test_links_lead_somewhere(every_page, built: Path, address: str) -> None:
    follow_links(every_page, built, address)


def follow_links(pages, built: Path, address: str) -> None:
    for tag in ("a", "link", "script", "img"):
        for attributes in pages[address].all(tag):
            target = attributes.get("href", attributes.get("src", ""))
            if not target or attributes.get("rel") == "canonical":
                continue
            there = urlsplit(urljoin(f"http://here/{address}", target))
            assert there.netloc == "here", target
            path = unquote(there.path).lstrip("/")
            file = built / path / "index.html" if path.endswith("/") or not path else built / path
            assert file.is_file(), f"{address}: {target}"
            if there.fragment.startswith("w1."):  # a whole piece; test_gallery.py opens them
                continue
            if there.fragment and file.name == "index.html":
                assert unquote(there.fragment) in pages[path].ids, f"{address}: {target}"


def test_no_page_refers_to_another_host(built: Path) -> None:
    assert list(foreign_references(built, "http://127.0.0.1:8000/")) == []


@pytest.mark.parametrize(
    ("name", "text", "found"),
    [
        ("a.html", '<img src="https://elsewhere.invalid/a.png">', 1),
        ("a.html", "<a href='//elsewhere.invalid/'>x</a>", 1),
        ("a.html", '<p style="background:url(https://elsewhere.invalid/b)">', 1),
        ("a.html", '<svg xmlns="http://www.w3.org/2000/svg"><use xlink:href="#a"/></svg>', 0),
        ("a.html", '<a href="https://own.invalid/deep/b/">x</a>', 0),
        ("a.html", "<p>https://elsewhere.invalid/ as words</p>", 0),
        ("a.css", '@import "https://elsewhere.invalid/c.css";', 1),
        ("a.css", "a{background:url(data:image/svg+xml;base64,AA)}", 0),
    ],
)
def test_the_look_for_other_hosts_can_find_them(name: str, text: str, found: int, tmp_path: Path) -> None:
    (tmp_path / name).write_text(text, encoding="utf-8")
    assert len(list(foreign_references(tmp_path, "https://own.invalid/deep/"))) == found


def test_drawings_say_what_they_show(built: Path) -> None:
    """SVG of ours has a title, a description and a size in millimetres (an SVG with a viewBox alone prints on many sheets)."""
    seen = 0
    for address in ADDRESSES:
        html = (built / address / "index.html").read_text(encoding="utf-8")
        article = html[html.index("<article") : html.index("</article>")]
        for svg in re.findall(r"<svg\b.*?</svg>", article, flags=re.DOTALL):
            root = ET.fromstring(svg)
            if root.get("role") != "img":
                continue
            seen += 1
            names = [child.tag.rpartition("}")[2] for child in root]
            assert "title" in names, address
            assert "desc" in names, address
            assert root.get("width", "").endswith("mm"), address
            assert root.get("height", "").endswith("mm"), address
    assert seen >= 6


def test_what_nobody_loads_was_swept_out(built: Path) -> None:
    assert list(built.rglob("*.map")) == []
    assert not (built / "assets" / "javascripts" / "lunr").exists()
    assert (built / "404.html").is_file()
    assert (built / "sitemap.xml").is_file()
