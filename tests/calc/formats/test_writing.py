"""Two ways to write: equal bytes for equal values, and lines for a person."""

from __future__ import annotations

from fractions import Fraction

import pytest

from wedgework.formats.writing import canonical, pretty


def test_canonical_text_has_sorted_keys_and_no_spaces() -> None:
    assert (
        canonical({"b": [Fraction(1, 2), True, None], "a": {"é": "x\n", "Z": 0.1}})
        == '{"a":{"Z":0.1,"é":"x\\n"},"b":[0.5,true,null]}'
    )


def test_the_order_of_keys_makes_no_difference() -> None:
    assert canonical({"a": 1, "b": 2}) == canonical({"b": 2, "a": 1})


def test_small_and_large_floats_are_written_plainly() -> None:
    assert canonical([1e-07, 1e16, 3.0]) == "[0.0000001,10000000000000000,3]"


@pytest.mark.parametrize("value", [float("nan"), float("inf"), Fraction(1, 3)])
def test_what_has_no_decimal_is_a_mistake_of_ours(value: float | Fraction) -> None:
    with pytest.raises(ValueError, match=r"cannot stand|no finite decimal"):
        canonical([value])


def test_what_json_lacks_is_a_mistake_of_ours() -> None:
    with pytest.raises(TypeError, match="set"):
        pretty({"a": {1}})


def test_a_step_is_a_line_however_long() -> None:
    steps = [{"do": "hold", "needles": list(range(1, 101))}, {"do": "cut"}]
    lines = pretty({"steps": steps}).splitlines()
    assert len(lines) == 6
    assert lines[2].startswith('  {"do": "hold", "needles": [1, 2, 3, ')
    assert lines[3] == '  {"do": "cut"}'


def test_short_objects_stay_on_a_line_and_keep_their_order() -> None:
    assert pretty({"width": {"mm": 900}, "height": {"rows": 8}}) == '{"width": {"mm": 900}, "height": {"rows": 8}}\n'
