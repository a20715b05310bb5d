"""Properties of the door and of the forms."""

from __future__ import annotations

import json
from fractions import Fraction

from hypothesis import given, settings
from hypothesis import strategies as st

from wedgework.catalogue import CALCULATORS, calculator
from wedgework.declare import work_out
from wedgework.faces.markup import element
from wedgework.faces.wire import answer

GAUGE = calculator("gauge")
PANEL = calculator("panel-plan")
assert GAUGE is not None
assert PANEL is not None

texts = st.text(max_size=20)
json_values = st.recursive(
    st.none() | st.booleans() | st.integers() | texts,
    lambda inner: st.lists(inner, max_size=3) | st.dictionaries(texts, inner, max_size=3),
    max_leaves=8,
)


@given(texts | json_values.map(json.dumps))
@settings(deadline=None)
def test_any_string_is_answered(question: str) -> None:
    told = json.loads(answer(question))
    assert told["answer"]["problems"]


@given(st.dictionaries(st.sampled_from([field.name for field in GAUGE.fields]), st.text(max_size=12), max_size=6))
@settings(max_examples=60, deadline=None)
def test_anything_typed_is_answered_in_utf_8(inputs: dict[str, str]) -> None:
    text = answer(json.dumps({"calculator": "gauge", "inputs": inputs}))
    text.encode("utf-8")
    told = json.loads(text)["answer"]
    assert bool(told["result"]) is not bool(told["problems"])


@given(st.text(max_size=40))
def test_no_text_opens_an_element(text: str) -> None:
    inside = element("p", text, title=text)[3:-4]
    assert "<" not in inside
    assert inside.count('"') == 2


@given(st.integers(1, 400), st.integers(10, 3000), st.integers(1, 400), st.integers(10, 3000))
@settings(max_examples=60, deadline=None)
def test_the_figures_are_the_counts_over_the_lengths(stitches: int, width_mm: int, rows: int, height_mm: int) -> None:
    typed = {"stitches": str(stitches), "width": f"{width_mm} mm", "rows": str(rows), "height": f"{height_mm} mm"}
    result = work_out(GAUGE, typed).result
    assert result is not None
    assert result.values["stitches_per_10cm"] == Fraction(100 * stitches, width_mm)
    assert result.values["ratio"] == Fraction(rows * width_mm, height_mm * stitches)


@given(
    st.integers(2, 60),
    st.integers(2, 90),
    st.sampled_from(["diamond-in-corners", "nested-diamonds", "chevron-bands"]),
    st.sampled_from(["left", "right"]),
    st.integers(0, 3),
)
@settings(max_examples=12, deadline=None)
def test_every_form_that_can_be_read_gives_a_piece_or_says_why_not(
    needles: int, rows: int, layout: str, side: str, base: int
) -> None:
    typed = {"size_in": "counts", "needles": str(needles), "rows": str(rows), "layout": layout, "start_side": side}
    found = work_out(PANEL, typed | {"base_rows_bottom": str(base)})
    assert found.problems == ()
    assert found.result is not None
    stitches, edges = found.result.values["stitches"], found.result.values["edge_stitches"]
    assert isinstance(stitches, dict)
    assert isinstance(edges, dict)
    assert abs(sum(stitches.values()) - needles * rows) <= needles
    assert sum(edges.values()) == needles * (base + 2)


def test_the_laws_know_every_calculator() -> None:
    assert {GAUGE.slug, PANEL.slug} <= {one.slug for one in CALCULATORS}
