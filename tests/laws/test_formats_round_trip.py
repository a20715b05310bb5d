"""Laws of the files: what fits is read, what is written is read back the same, whatever comes is answered."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from schema_values import changed, fitting
from wedgework.formats import (
    canonical,
    design_value,
    pretty,
    read_class,
    read_design,
    read_design_value,
    read_plan,
    read_project,
    read_report,
    read_state,
    write_class,
    write_design,
    write_plan,
    write_project,
    write_report,
    write_state,
)
from wedgework.formats.decimals import carried, decimal_text, exact_number, nearest_decimal
from wedgework.formats.schemas import SCHEMAS
from wedgework.formats.text import exact_value, parse
from wedgework.problems import Refused

few = settings(max_examples=60, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
DOORS = {
    "design": (read_design, write_design),
    "plan": (read_plan, write_plan),
    "state": (read_state, write_state),
    "project": (read_project, write_project),
    "class": (read_class, write_class),
    "report": (read_report, write_report),
}
FITTING = {kind: fitting(schema) for kind, schema in SCHEMAS.items()}


@pytest.mark.parametrize("kind", DOORS)
@few
@given(data=st.data())
def test_what_was_written_is_read_back_the_same(kind: str, data: st.DataObject) -> None:
    read, write = DOORS[kind]
    thing = read(json.dumps(data.draw(FITTING[kind])))
    text = write(thing)
    assert read(text) == thing
    assert write(read(text)) == text


@few
@given(FITTING["design"])
def test_a_design_is_the_same_through_any_json_writer(value: dict[str, Any]) -> None:
    design = read_design(json.dumps(value))
    written = design_value(design)
    assert read_design_value(json.loads(json.dumps(written))) == design
    assert read_design(canonical(written)) == design


@pytest.mark.parametrize("kind", DOORS)
@few
@given(data=st.data())
def test_a_changed_file_is_read_or_refused_with_a_place_and_a_way_out(kind: str, data: st.DataObject) -> None:
    read, write = DOORS[kind]
    try:
        write(read(json.dumps(data.draw(changed(FITTING[kind])))))
    except Refused as refused:
        for problem in refused.problems:
            assert problem.code.startswith("formats.")
            assert problem.sentence
            assert problem.way_out


json_scraps = st.lists(
    st.sampled_from([*"{}[]\",:\\-.eud19 \n'é", "null", "true", "NaN", "\ufeff", "\ud800", '{"a":', '"format":"wedgework-plan"']),
    max_size=40,
).map("".join)


@settings(max_examples=300, deadline=None)
@given(st.one_of(st.text(), json_scraps, st.binary().map(lambda b: b.decode("latin-1"))))
def test_any_text_is_refused_in_order(text: str) -> None:
    for read, _ in DOORS.values():
        with pytest.raises(Refused):
            read(text)


@few
@given(FITTING["design"], st.data())
def test_a_torn_file_is_refused(value: dict[str, Any], data: st.DataObject) -> None:
    text = json.dumps(value)
    cut = data.draw(st.integers(0, len(text) - 1))
    with pytest.raises(Refused):
        read_design(text[:cut])


texts = st.text(st.characters(exclude_categories=["Cs"]))
floats = st.floats(-1e9, 1e9).filter(lambda f: f == 0 or abs(f) > 1e-9)
values = st.recursive(
    st.none() | st.booleans() | st.integers(-(10**19), 10**19) | floats | texts,
    lambda inner: st.lists(inner, max_size=4) | st.dictionaries(texts, inner, max_size=4),
    max_leaves=20,
)


@given(values)
def test_both_ways_of_writing_say_the_same(value: Any) -> None:
    assert parse(canonical(value), 10**6) == parse(pretty(value), 10**6) == exact_value(value)
    assert exact_value(json.loads(canonical(value))) == exact_value(value)


decimals = st.decimals(-(10**6), 10**6, places=12).map(Fraction)


@given(decimals)
def test_a_decimal_survives_its_text(number: Fraction) -> None:
    text = decimal_text(number)
    assert exact_number(text) == number
    assert Fraction(text) == number
    assert "e" not in text
    assert "." not in text or text[-1] != "0"


@given(decimals)
def test_a_carried_number_is_exact(number: Fraction) -> None:
    value = carried(number)
    assert value == number if not isinstance(value, float) else Fraction(repr(value)) == number


@given(st.fractions(-1000, 1000), st.integers(0, 9))
def test_the_nearest_decimal_is_at_most_half_a_place_away(number: Fraction, places: int) -> None:
    near = nearest_decimal(number, places)
    assert abs(near - number) * 2 <= Fraction(1, 10**places)
    assert exact_number(decimal_text(near)) == near
