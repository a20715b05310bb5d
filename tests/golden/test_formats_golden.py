"""Example files, kept as they are for ever: whatever a later version changes, it reads these and writes them like this.

To accept a new way of writing on purpose, write the files anew and look at the difference.
"""

from __future__ import annotations

from pathlib import Path

import pytest

from wedgework.formats import (
    read_design,
    read_plan,
    read_project,
    read_report,
    read_state,
    write_design,
    write_plan,
    write_project,
    write_report,
    write_state,
)
from wedgework.version import VERSION

FILES = Path(__file__).parent / "formats"
WRITTEN = {
    "smallest-design-written": (read_design, write_design),
    "every-key": (read_design, write_design),
    "every-step": (read_plan, write_plan),
    "everything-kept": (read_project, write_project),
}
LATER = {
    "on-the-bed": (read_state, write_state),
    "rest-of-a-piece": (read_plan, write_plan),
    "test-knitted": (read_report, write_report),
    "yarn-with-all": (read_design, write_design),
}
"""Of what the first version did not have."""


def golden(name: str) -> str:
    return (FILES / f"{name}.json").read_text(encoding="utf-8")


def as_written_by_0_1_0(text: str) -> str:
    """Files say which version wrote them; that line alone may differ."""
    return text.replace(f'"made_by": "{VERSION}"', '"made_by": "0.1.0"')


@pytest.mark.parametrize("name", WRITTEN | LATER)
def test_a_file_is_written_as_it_was_read(name: str) -> None:
    read, write = (WRITTEN | LATER)[name]
    assert as_written_by_0_1_0(write(read(golden(name)))) == golden(name)


@pytest.mark.parametrize("name", WRITTEN)
def test_a_file_of_an_earlier_version_still_opens(name: str) -> None:
    """It says the same as the file of today, whose keys with defaults it does not have."""
    read, _ = WRITTEN[name]
    assert read(golden(f"earlier/{name}")) == read(golden(name))


def test_every_default_of_the_smallest_design_is_written_out() -> None:
    design = read_design(golden("smallest-design"))
    assert as_written_by_0_1_0(write_design(design)) == golden("smallest-design-written")
    assert read_design(golden("smallest-design-written")) == design


def test_a_plan_written_by_hand_may_leave_defaults_out() -> None:
    plan = read_plan(golden("written-by-hand"))
    assert read_plan(write_plan(plan)) == plan
    assert plan.edges.base_rows_bottom == 2
    assert plan.summary.slits == ()
    assert plan.design.hems.bottom.kind == "none"


def test_one_digit_makes_a_golden_file_fail() -> None:
    changed = golden("every-key").replace("0.70000000000000001", "0.70000000000000002")
    assert changed != golden("every-key")
    assert as_written_by_0_1_0(write_design(read_design(changed))) != golden("every-key")
