"""The written pattern: its parts, its sizes side by side, the person's own text, what cannot be."""

from __future__ import annotations

from functools import partial

import pytest

import working
from wedgework.calculators.pattern_sizes import typed_sizes
from wedgework.calculators.written_pattern import CALCULATOR
from wedgework.declare import Bullets, Figures, Picture, Prose, Table, Written

SMALL = {"layout": "single-diamond", "width": "50", "height": "70", "size_name": "S"}
SIZES = "M 60 x 80 cm; L 72 x 90 cm"
result = partial(working.result, CALCULATOR, **SMALL)
values = partial(working.values, CALCULATOR, **SMALL)
wrong = partial(working.wrong, CALCULATOR, **SMALL)


def written(**typed: str) -> Written:
    return next(part for part in result(**typed).view if isinstance(part, Written))


def test_the_parts_of_a_pattern() -> None:
    view = result(author="A knitter", date="May", permission="Knit what you like from it.").view
    assert [type(part) for part in view[:8]] == [Figures, Picture, Table, Table, Bullets, Bullets, Prose, Written]
    about = view[0]
    assert isinstance(about, Figures)
    assert [row.value for row in about.rows[:3]] == ["A knitter", "May", "Knit what you like from it."]
    text = written().text
    for title in ("The piece", "Yarns", "Words and signs", "Cautions", "Start", "Base rows", "Off the machine", "Finishing"):
        assert f"\n{title}\n" in text


def test_a_figure_that_nobody_gave_is_not_shown() -> None:
    about = result().view[0]
    assert isinstance(about, Figures)
    assert [row.name for row in about.rows] == ["finished_width_mm", "blocks"]


def test_sizes_side_by_side() -> None:
    found = values(sizes=SIZES)
    assert [size["name"] for size in found["sizes"]] == ["S", "M", "L"]
    assert [size["needles"] for size in found["sizes"]] == [70, 84, 101]
    assert found["sizes"][0]["metres"].keys() == {"yarn-1", "yarn-2"}
    metres = [size["metres"]["yarn-1"] for size in found["sizes"]]
    assert metres == sorted(metres)
    text = written(sizes=SIZES).text
    assert "Cast on 70 (84, 101) stitches with Chalk" in text
    assert "\n[S]\n" in text


def test_more_repeats_instead_of_larger_ones() -> None:
    typed = {"layout": "diamond-lattice", "width": "40", "height": "50", "across": "2", "up": "2"}
    one = working.values(CALCULATOR, **{**SMALL, **typed}, sizes="L 60 x 75, across 3, up 3")
    small, large = one["sizes"]
    assert large["blocks"] > small["blocks"]
    german = "L 60 x 75, nebeneinander 3, übereinander 3"
    assert typed_sizes(german) == typed_sizes("L 60 x 75, across 3, up 3")
    assert [key for key, _ in typed_sizes(german)[0].parameters] == ["across", "up"]


def test_own_text_stands_at_its_places_and_is_only_text() -> None:
    own = {"text_first": "Knit a swatch; <b>wash</b> it.", "text_blocks": "Block it flat.", "text_last": "Thank you."}
    found = written(**own)
    text = found.text
    assert text.index("Knit a swatch") < text.index("\nStart\n") < text.index("Block it flat.") < text.index("\nFinishing\n")
    assert text.rstrip().endswith("Thank you.")
    assert "<b>" not in found.html
    assert "&lt;b&gt;wash&lt;/b&gt;" in found.html


def test_words_of_both_sides() -> None:
    assert "Cast off" in written(words="uk").text
    american = written(words="us").text
    assert "Bind off" in american
    assert "stocking stitch" not in american


def test_variations_and_errata_close_it() -> None:
    view = result(variations="In one colour.", errata="Row 40 was wrong.").view
    assert [part.paragraphs for part in view[-2:] if isinstance(part, Prose)] == [("In one colour.",), ("Row 40 was wrong.",)]


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ({"sizes": "M"}, [("sizes", "written-pattern.no-size")]),
        ({"sizes": "M 60 x"}, [("sizes", "written-pattern.no-size")]),
        ({"sizes": "S 60 x 80"}, [("sizes", "written-pattern.name-twice")]),
        ({"sizes": "M 120 x 80 cm"}, [("sizes", "layout.too-wide")]),
        ({"sizes": "M 60 x 80, towers 3"}, [("sizes", "layout.unknown-parameter")]),
        ({"sizes": ";".join(f"N{k} 50 x 6{k}" for k in range(6))}, [("sizes", "written-pattern.too-many")]),
        ({"width": "300"}, [("width", "layout.too-wide")]),
    ],
)
def test_what_cannot_be(typed: dict[str, str], expected: list[tuple[str, str]]) -> None:
    assert working.wrong(CALCULATOR, **{**SMALL, **typed}) == expected


def test_inches_and_centimetres_in_sizes() -> None:
    one, other = (values(sizes=line)["sizes"][1] for line in ("M 24 x 32 in", "M 60.96 x 81.28 cm"))
    assert (one["needles"], one["rows"]) == (other["needles"], other["rows"])
