"""The lists of usual sizes."""

from __future__ import annotations

from wedgework.blankets import BLANKETS, MATTRESSES
from wedgework.say import has


def test_every_size_has_a_name_a_source_and_two_sides() -> None:
    for size in (*BLANKETS.values(), *MATTRESSES.values()):
        assert has(f"blankets.{size.key}")
        assert has(f"blankets.source-{size.source}")
        assert 500 < size.width_mm < 3000
        assert 500 < size.height_mm < 3000


def test_a_bed_blanket_hangs_over_its_mattress() -> None:
    for bed in ("twin", "full", "queen", "king"):
        assert BLANKETS[bed].width_mm > MATTRESSES[f"{bed}-top"].width_mm
