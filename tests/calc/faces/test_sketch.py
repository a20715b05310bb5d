"""The picture before the plan: the same shapes, at the same proportions, and nothing planned."""

from __future__ import annotations

import re

import pytest

from wedgework.calculators import panel_plan, planning
from wedgework.declare.calculator import read_all
from wedgework.faces.asks import answer_to
from wedgework.faces.page import calculator_html
from wedgework.faces.sketch import SKETCHED, sketch_of
from wedgework.layout import drawn_layout, resolve

TYPED = {"title": "A <b>", "size_in": "counts", "needles": "40", "rows": "80"}


def test_it_plans_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    def planned(design: object) -> None:
        raise AssertionError("planned")

    monkeypatch.setattr(planning, "plan_piece", planned)
    assert "<svg" in sketch_of("panel-plan", TYPED)


def test_every_shape_is_drawn_within_the_panel_at_true_proportions() -> None:
    design = panel_plan.design_from(read_all(panel_plan.CALCULATOR, TYPED))
    sizes = resolve(design)
    layout = drawn_layout(design, sizes)
    html = sketch_of("panel-plan", TYPED)
    assert html.count('fill-rule="evenodd"') == len(layout.shapes)
    (clip,) = re.findall(r'<clipPath id="sketch-clip"><rect x="[^"]*" y="[^"]*" width="([^"]*)" height="([^"]*)"', html)
    wide, high = (float(one) for one in clip)
    # The panel's own proportions, from stitches and rows per 10 cm.
    assert wide / high == pytest.approx(float(40 * sizes.stitch_mm / (80 * sizes.row_mm)), rel=0.001)
    assert "A &lt;b&gt;" in html
    assert "<b>" not in html


def test_each_yarn_is_named_and_hatched() -> None:
    html = sketch_of("panel-plan", {})
    for name in ("Chalk", "Slate", "Rust"):
        assert f">{name}<" in html
    assert "url(#sketch-yarn-1)" in html


def test_what_cannot_be_drawn_is_told_as_problems() -> None:
    told = answer_to({"ask": "sketch", "calculator": "panel-plan", "inputs": {"needles": "many", "size_in": "counts"}})
    assert told is not None
    assert told["html"] == ""
    assert told["problems"]


@pytest.mark.parametrize("slug", SKETCHED)
def test_each_of_these_shows_the_front_and_has_a_picture_first(slug: str) -> None:
    told = answer_to({"ask": "sketch", "calculator": slug, "inputs": {}})
    assert told is not None
    assert "<svg" in str(told["html"])
    html = calculator_html(slug)
    assert 'data-picture="first"' in html
    assert "drawing-front" in html or "drawing-fabric" in html


def test_others_have_none() -> None:
    assert answer_to({"ask": "sketch", "calculator": "gauge", "inputs": {}}) is None
    assert "data-picture" not in calculator_html("gauge")
