"""Links that were made once are opened forever, with the same inputs.

A link holds only what differed from the defaults of its day. So a default that changes changes what old links mean, and
this test fails: then the old value has to be kept for links made before, beside `read_link`. The file is only added to:
WEDGEWORK_ACCEPT=1 appends a link of today for a calculator that has none yet, or that has a field which no kept link knows,
and changes none of those that are there.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from goldens import Goldens
from wedgework.catalogue import CALCULATORS, calculator
from wedgework.declare import Calculator
from wedgework.faces.link import make_link, read_link

FILE = Path(__file__).parent / "links" / "old.json"
OLD = json.loads(FILE.read_text(encoding="utf-8"))


@pytest.mark.parametrize("old", OLD, ids=lambda old: old["fragment"][:16])
def test_an_old_link_opens_as_it_did(old: dict) -> None:
    opened = read_link(old["fragment"])
    assert opened.slug == old["calculator"]
    now = calculator(opened.slug)
    assert now is not None
    shown = {**now.defaults, **opened.inputs}
    assert {name: shown[name] for name in old["inputs"]} == old["inputs"]


@pytest.mark.parametrize("one", CALCULATORS, ids=lambda one: one.slug)
def test_every_field_stands_in_a_kept_link(one: Calculator, golden: Goldens) -> None:
    """So a changed default of any field shows, in a link that somebody may have kept."""
    kept = {name for old in OLD if old["calculator"] == one.slug for name in old["inputs"]}
    if golden.accept and kept < set(one.defaults):
        OLD.append({"fragment": make_link(one.slug, {}), "calculator": one.slug, "inputs": dict(one.defaults)})
        FILE.write_text(json.dumps(OLD, ensure_ascii=False, indent=1) + "\n", encoding="utf-8", newline="\n")
        return
    assert set(one.defaults) <= kept, "WEDGEWORK_ACCEPT=1 adds a link of today"
