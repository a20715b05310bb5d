"""Links that were made once are opened forever, with the same inputs.

A link holds only what differed from the defaults of its day. So a default that changes changes what old links mean, and
this test fails: then the old value has to be kept for links made before, beside `read_link`. The file is only added to.
"""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from wedgework.catalogue import calculator
from wedgework.faces.link import read_link

OLD = json.loads((Path(__file__).parent / "links" / "old.json").read_text(encoding="utf-8"))


@pytest.mark.parametrize("old", OLD, ids=lambda old: old["fragment"][:16])
def test_an_old_link_opens_as_it_did(old: dict) -> None:
    opened = read_link(old["fragment"])
    assert opened.slug == old["calculator"]
    now = calculator(opened.slug)
    assert now is not None
    shown = {**now.defaults, **opened.inputs}
    assert {name: shown[name] for name in old["inputs"]} == old["inputs"]
