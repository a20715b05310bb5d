"""Carrying on against other libraries: slopes as they are typed, areas as they are drawn, the file by its schema."""

from __future__ import annotations

import json
import re
import xml.etree.ElementTree as ET

import pytest
from jsonschema import Draft202012Validator
from shapely.geometry import LineString, Polygon

from pieces import diamond
from wedgework.calculators.state_lines import read_rows
from wedgework.draw import state_svg
from wedgework.formats import State, write_state
from wedgework.formats.plan import Knit
from wedgework.formats.schemas import SCHEMAS
from wedgework.plan import plan_piece, replan
from wedgework.replay import replay_plan, state_at


@pytest.mark.parametrize(("start", "end", "needles"), [(40, 18, 12), (0, 97, 53), (7, 8, 20), (5, 5, 3)])
def test_a_slope_between_two_needles_is_spread_evenly(start: int, end: int, needles: int) -> None:
    """Linear interpolation by shapely, to the nearest row."""
    rows = read_rows("f", f"R1-R{needles}: {start} to {end}", 1, needles)
    slope = LineString([(0, start), (needles - 1, end)])
    for place, row in enumerate(rows):
        assert abs(row - slope.interpolate(place / (needles - 1), normalized=True).y) <= 0.5 + 1e-9
    assert (rows[0], rows[-1]) == (start, end)


def test_the_fabric_that_is_drawn_has_the_area_of_its_stitches() -> None:
    """Areas by the library shapely (GEOS); a stitch is as wide as the distance of two needles in the drawing."""
    state = State(-10, tuple(range(3, 23)), (), "L")
    drawing = ET.fromstring(state_svg(diamond(20, 40), state))
    (edge,) = [e.get("d", "") for e in drawing.iter() if e.get("class") == "level"]
    across = sorted({float(x) for x in re.findall(r"[HM]([\d.]+)", edge)})
    stitch = (across[-1] - across[0]) / 20
    area = 0.0
    below = [e for e in drawing if e.get("fill-rule") == "evenodd"]
    for path in below:
        for ring in re.findall(r"M([^Z]+)Z", path.get("d", "")):
            corners = [tuple(map(float, corner.split())) for corner in ring.split("L")]
            area += Polygon(corners).area
    assert area == pytest.approx(sum(state.rows) * stitch * stitch * 14 / 19, rel=0.01)


def test_a_state_of_any_row_is_a_valid_file_and_can_be_carried_on_from() -> None:
    """The file by the library jsonschema; the rest by the rule that a flat piece ends level within two rows (common practice, no
    source)."""
    plan = plan_piece(diamond(16, 32))
    judge = Draft202012Validator(SCHEMAS["state"])
    knitted = [i for i, step in enumerate(plan.steps) if isinstance(step, Knit)]
    for at in knitted[:-2:9]:
        state = state_at(plan, at + 1)
        judge.validate(json.loads(write_state(state)))
        judged = replay_plan(replan(plan.design, state))
        assert judged.problems == ()
        assert judged.rows_max - judged.rows_min <= 2
