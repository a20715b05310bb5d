"""Words of either side of the sea."""

from __future__ import annotations

from wedgework.say import say
from wedgework.words.dialects import in_dialect, spoken_in


def test_british_casts_off_and_american_binds_off() -> None:
    said = "Bind off 40 stitches loosely. Plain stocking stitch; binding off ends it."
    assert in_dialect(said, "uk") == "Cast off 40 stitches loosely. Plain stocking stitch; casting off ends it."
    assert in_dialect(said, "us") == "Bind off 40 stitches loosely. Plain stockinette stitch; binding off ends it."


def test_only_whole_words() -> None:
    assert in_dialect("colourless metres of colour", "us") == "colourless meters of color"


def test_her_own_words_stay_and_so_do_the_places_for_them() -> None:
    assert in_dialect("{colour}: a {grey} colour", "us") == "{colour}: a {grey} color"
    with spoken_in("uk"):
        assert say("words.step-bind-off", needles="bound off") == "cast off bound off loosely"
    with spoken_in("us"):
        assert say("words.step-cut", yarn="Grey colour") == "cut Grey colour, leaving a tail of 20 cm"
    assert say("words.step-bind-off", needles="L1") == "bind off L1 loosely"
