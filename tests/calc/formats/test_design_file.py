"""Designs: read whole or refused whole, each problem at its path."""

from __future__ import annotations

import copy
import json
from dataclasses import MISSING, fields
from fractions import Fraction
from typing import Any

import pytest

from wedgework.formats import canonical, design_value, read_design, read_design_value, write_design
from wedgework.formats.design import (
    Bed,
    Costs,
    Design,
    DrawnLayout,
    Extent,
    Gauge,
    Machine,
    NamedLayout,
    Options,
    Shape,
    Swatch,
    SwatchState,
    Yarn,
)
from wedgework.formats.schemas import SCHEMAS
from wedgework.problems import Problem, Refused
from wedgework.version import VERSION

KITE = [[0.1, 0.5], [0.5, 0.05], [0.9, 0.5], [0.5, 0.95]]
KITES: dict[str, Any] = {
    "format": "wedgework-design",
    "version": 1,
    "title": "Two kites",
    "bed": {"pitch_mm": 9, "needles": 110},
    "gauge": {"stitches_per_10cm": 14, "rows_per_10cm": 19},
    "panel": {"width": {"needles": 60}, "height": {"rows": 120}},
    "yarns": [{"id": "a", "name": "Chalk", "colour": "#f2efe6"}, {"id": "b", "name": "Slate", "colour": "#3f5566"}],
    "layout": {"background": "a", "shapes": [{"yarn": "b", "points": KITE}]},
}


def drawn(points: list[Any]) -> dict[str, Any]:
    return {"background": "a", "shapes": [{"yarn": "b", "points": points}]}


def kites(**changes: Any) -> str:
    return json.dumps({**KITES, **changes})


def refused(text: str) -> list[Problem]:
    with pytest.raises(Refused) as caught:
        read_design(text)
    return list(caught.value.problems)


def test_the_small_one_has_every_default() -> None:
    design = read_design(kites())
    assert design.title == "Two kites"
    assert design.bed == Bed(Fraction(9), 110, Machine())
    assert design.gauge == Gauge(Fraction(14), Fraction(19))
    assert design.panel.width == Extent(count=60)
    assert design.yarns[1] == Yarn("b", "Slate", "#3f5566")
    assert design.options == Options()
    assert isinstance(design.layout, DrawnLayout)
    assert design.layout.shapes[0].points[1] == (Fraction(1, 2), Fraction(1, 20))


def test_points_are_exact_fractions() -> None:
    layout = read_design(
        kites(layout={"background": "a", "shapes": [{"yarn": "b", "points": [[0.1, 0.7], [1e-1, 0], [2, 1.5]]}]})
    ).layout
    assert isinstance(layout, DrawnLayout)
    tenth = Fraction(1, 10)
    assert layout.shapes == (Shape("b", ((tenth, 7 * tenth), (tenth, Fraction(0)), (Fraction(2), Fraction(3, 2)))),)


def test_a_named_layout_and_a_swatch() -> None:
    swatch = {"stitches": 40, "rows": 60, "washed": {"widths_mm": [286.5, 286], "heights_mm": [315]}}
    design = read_design(
        kites(
            gauge={"swatch": swatch},
            panel={"width": {"mm": 600.5}, "height": {"mm": 900}},
            layout={"name": "chevron-bands", "parameters": {"bands": 4, "rise": 0.2, "yarns": "a b"}},
        )
    )
    assert design.gauge.swatch == Swatch(
        Fraction(40), Fraction(60), SwatchState((Fraction(573, 2), Fraction(286)), (Fraction(315),))
    )
    assert design.gauge.rows_per_10cm is None
    assert design.panel.width == Extent(mm=Fraction(1201, 2))
    assert design.layout == NamedLayout("chevron-bands", {"bands": Fraction(4), "rise": Fraction(1, 5), "yarns": "a b"})


def test_hems_are_words_or_objects() -> None:
    hems = read_design(kites(hems={"bottom": "none", "top": {"kind": "picot", "depth": {"rows": 8}}})).hems
    assert hems.bottom.kind == hems.sides.kind == "none"
    assert (hems.top.kind, hems.top.depth) == ("picot", Extent(count=8))


@pytest.mark.parametrize(
    ("changes", "where", "code"),
    [
        ({"bed": {"pitch_mm": 0.5, "needles": 110}}, "bed.pitch_mm", "out-of-range"),
        ({"bed": {"pitch_mm": 9}}, "bed.needles", "missing-key"),
        ({"bed": {"pitch_mm": 9, "needles": 110, "colour": "red"}}, "bed.colour", "unknown-key"),
        ({"bed": {"pitch_mm": 9, "needles": 110, "machine": {"hold_levers": 3}}}, "bed.machine.hold_levers", "out-of-range"),
        ({"gauge": {"stitches_per_10cm": "14", "rows_per_10cm": 19}}, "gauge.stitches_per_10cm", "wrong-type"),
        ({"gauge": {"swatch": {"stitches": 40, "rows": 60}}}, "gauge.swatch", "key-count"),
        ({"gauge": {}}, "gauge", "choose-one"),
        ({"panel": {"width": {"rows": 60}, "height": {"rows": 120}}}, "panel.width", "choose-one"),
        ({"panel": {"width": {"needles": 60.5}, "height": {"rows": 120}}}, "panel.width.needles", "not-whole"),
        ({"yarns": []}, "yarns", "list-length"),
        ({"yarns": [{"id": "a b", "name": "", "colour": "#f2efe6"}]}, "yarns[0].id", "text-form"),
        ({"yarns": [{"id": "a", "name": "", "colour": "chalk"}]}, "yarns[0].colour", "text-form"),
        ({"yarns": [{"id": "a", "name": "", "colour": "#f2efe6\n"}]}, "yarns[0].colour", "text-length"),
        ({"layout": drawn([[0, 0], [1, 3], [1, 0]])}, "layout.shapes[0].points[1][1]", "out-of-range"),
        ({"layout": drawn([[0, 0], [1], [1, 0]])}, "layout.shapes[0].points[1]", "list-length"),
        ({"layout": {"name": "x", "background": "a"}}, "layout", "choose-one"),
        ({"hems": {"bottom": "plain"}}, "hems.bottom", "not-offered"),
        ({"hems": {"bottom": {"kind": "plain"}}}, "hems.bottom.depth", "missing-key"),
        ({"hems": {"bottom": {"kind": "none", "depth": {"mm": 40}}}}, "hems.bottom.depth", "unknown-key"),
        ({"options": {"start_side": "left"}}, "options.start_side", "not-offered"),
        ({"options": {"costs": {"ends": 1}}}, "options.costs.ends", "unknown-key"),
        ({"title": "x" * 201}, "title", "text-length"),
        ({"title": "bell \u0007"}, "title", "text-form"),
        ({"version": "1"}, "version", "wrong-type"),
        ({"version": 2}, "version", "unknown-version"),
        ({"format": "wedgework-plan"}, "format", "other-format"),
        ({"format": "something"}, "format", "other-format"),
    ],
)  # fmt: skip
def test_a_wrong_value_is_named_by_its_path(changes: dict[str, Any], where: str, code: str) -> None:
    (problem,) = refused(kites(**changes))
    assert (problem.where, problem.code) == (where, f"formats.{code}")
    assert problem.sentence
    assert problem.way_out


def with_value(path: str, value: Any) -> str:
    """The small design with one value put in."""
    changed = copy.deepcopy(KITES)
    holder: Any = changed
    *keys, last = path.split(".")
    for key in keys:
        holder = holder[int(key)] if key.isdigit() else holder[key]
    holder[int(last) if last.isdigit() else last] = value
    return json.dumps(changed)


@pytest.mark.parametrize(
    ("path", "least", "most", "step"),
    [
        ("bed.pitch_mm", 1, 30, 0.001),
        ("bed.needles", 4, 1000, 1),
        ("gauge.stitches_per_10cm", 1, 200, 0.001),
        ("gauge.rows_per_10cm", 1, 200, 0.001),
        ("panel.width.needles", 2, 1000, 1),
        ("panel.height.rows", 2, 20_000, 1),
        ("layout.shapes.0.points.0.0", -1, 2, 0.001),
        ("layout.shapes.0.points.3.1", -1, 2, 0.001),
    ],
)
def test_the_ends_of_a_range_are_allowed_and_nothing_beyond(path: str, least: int, most: int, step: float) -> None:
    for value in (least, most):
        assert read_design(with_value(path, value))
    for value in (least - step, most + step):
        assert refused(with_value(path, value))[0].code == "formats.out-of-range"


@pytest.mark.parametrize(
    ("path", "filling", "most"),
    [
        ("title", "x", 200),
        ("notes", "x", 5000),
        ("yarns.0.id", "x", 32),
        ("yarns", KITES["yarns"][:1], 64),
        ("layout.shapes", KITES["layout"]["shapes"], 400),
        ("layout.shapes.0.points", KITE[:1], 2000),
    ],
)
def test_texts_and_lists_have_a_longest_length(path: str, filling: Any, most: int) -> None:
    assert read_design(with_value(path, filling * most))
    assert refused(with_value(path, filling * (most + 1)))[0].code in ("formats.text-length", "formats.list-length")


def test_the_sentence_says_what_was_found_and_what_is_allowed() -> None:
    (problem,) = refused(kites(layout=drawn([[0.1, 2.5], *KITE[1:]])))
    assert str(problem).startswith("layout.shapes[0].points[0][1]: Found 2.5; allowed is a number from -1 to 2.")


def test_a_misspelt_key_is_recognised() -> None:
    first, second = refused(kites(bed={"pitch_mm": 9, "needls": 110}))
    assert first.where == "bed.needls"
    assert "needles" in first.way_out
    assert second.where == "bed.needles"


def test_every_problem_is_reported_at_once() -> None:
    value = copy.deepcopy(KITES)
    del value["panel"]
    value["bed"]["needles"] = 2
    value["yarns"][1]["colour"] = 7
    value["layout"]["shapes"][0]["points"][3] = "here"
    assert [p.where for p in refused(json.dumps(value))] == [
        "bed.needles",
        "yarns[1].colour",
        "layout.shapes[0].points[3]",
        "panel",
    ]


@pytest.mark.parametrize("text", ["[]", "7", '"design"', "null", "true"])
def test_what_is_no_object_is_one_problem(text: str) -> None:
    (problem,) = refused(text)
    assert (problem.where, problem.code) == ("", "formats.wrong-type")


@pytest.mark.parametrize("number", ["NaN", "Infinity", "-Infinity", "1e400", "9" * 41])
def test_no_number_is_too_odd_to_be_refused(number: str) -> None:
    (problem,) = refused(kites().replace("110", number))
    assert (problem.where, problem.code) == ("bed.needles", "formats.number-too-long")


def test_a_design_inside_something_else_is_named_from_there() -> None:
    with pytest.raises(Refused) as caught:
        read_design_value({**KITES, "title": ""}, at="inputs.design")
    assert caught.value.problems[0].where == "inputs.design.title"


def test_a_design_as_other_json_readers_give_it() -> None:
    assert read_design_value(json.loads(kites())) == read_design(kites())


def test_writing_puts_every_default_in() -> None:
    value = json.loads(write_design(read_design(kites())))
    assert value["made_by"] == VERSION
    assert value["panel"]["side_of_origin"] == "front-lower-left"
    assert value["bed"]["machine"]["counter_digits"] == 3
    assert value["hems"]["top"] == {"kind": "none"}
    assert value["options"]["costs"]["end_at_selvedge"] == 0.5
    assert "profile" not in value["layout"]


def test_two_writings_of_one_design_have_the_same_canonical_text() -> None:
    spaced = json.dumps(dict(reversed(KITES.items())), indent=3).replace("0.5", "0.50").replace("110", "1.1e2")
    assert canonical(design_value(read_design(spaced))) == canonical(design_value(read_design(kites())))


def test_who_wrote_a_file_is_no_part_of_the_design() -> None:
    assert read_design(kites(made_by="0.0.1")) == read_design(kites())
    assert read_design(kites(made_by="0.0.1")).made_by == "0.0.1"


@pytest.mark.parametrize(
    ("schema", "made", "always"),
    [
        (SCHEMAS["design"], Design, {"format", "version"}),
        (SCHEMAS["design"]["properties"]["bed"], Bed, set()),
        (SCHEMAS["design"]["properties"]["bed"]["properties"]["machine"], Machine, set()),
        (SCHEMAS["design"]["properties"]["yarns"]["items"], Yarn, set()),
        (SCHEMAS["design"]["properties"]["options"], Options, set()),
        (SCHEMAS["design"]["properties"]["options"]["properties"]["costs"], Costs, set()),
    ],
)
def test_a_key_may_be_absent_where_the_class_has_a_default(schema: dict[str, Any], made: Any, always: set[str]) -> None:
    assert schema["properties"].keys() == {f.name for f in fields(made)} | always
    needed = {f.name for f in fields(made) if f.default is MISSING and f.default_factory is MISSING}
    assert set(schema["required"]) == needed | always


def _descriptions(schema: Any) -> list[bool]:
    inner = schema.values() if isinstance(schema, dict) else schema if isinstance(schema, list) else ()
    own = (
        ["description" in schema]
        if isinstance(schema, dict) and ("type" in schema or "oneOf" in schema) and "properties" not in inner
        else []
    )
    return own + [each for part in inner for each in _descriptions(part)]


@pytest.mark.parametrize("kind", SCHEMAS)
def test_every_value_is_described(kind: str) -> None:
    found = _descriptions(SCHEMAS[kind])
    assert len(found) > 10
    assert all(found)
