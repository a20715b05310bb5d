"""Words of either side of the sea."""

from __future__ import annotations

from wedgework.words.dialects import in_dialect


def test_british_casts_off_and_american_binds_off() -> None:
    said = "Bind off 40 stitches loosely. Plain stocking stitch; binding off ends it."
    assert in_dialect(said, "uk") == "Cast off 40 stitches loosely. Plain stocking stitch; casting off ends it."
    assert in_dialect(said, "us") == "Bind off 40 stitches loosely. Plain stockinette stitch; binding off ends it."


def test_only_whole_words() -> None:
    assert in_dialect("colourless metres of colour", "us") == "colourless meters of color"
