"""The bed as the knitter sees it."""

from __future__ import annotations

import re
import xml.etree.ElementTree as Tree
from dataclasses import replace

import pytest

from pieces import diamond
from wedgework.bed import limits
from wedgework.draw import bed_svg
from wedgework.plan import plan_piece
from wedgework.words import BedView, cues

SVG = "{http://www.w3.org/2000/svg}"

# a row from the right: R9 goes to hold, L9 comes back
BED = BedView(-20, 20, ((-8, 8),), ((-20, -10), (10, 20)), ((-9, -9),), ((9, 9),), "R", None, "a")


def shafts(svg: str) -> list[tuple[float, float, float, bool]]:
    """x, back, front and whether dashed of every needle that is drawn."""
    found = []
    for path in Tree.fromstring(svg).iter(f"{SVG}path"):
        if path.get("fill") == "none" and "V" in path.get("d", ""):
            for x, back, front in re.findall(r"M([\d.]+) ([\d.]+)V([\d.]+)", path.get("d", "")):
                found.append((float(x), float(back), float(front), path.get("stroke-dasharray") is not None))
    return sorted(found)


def words(svg: str) -> dict[str, float]:
    return {t.text or "": float(t.get("x", "0")) for t in Tree.fromstring(svg).iter(f"{SVG}text")}


def test_the_four_states_differ_in_shape() -> None:
    drawn = shafts(bed_svg(BED))
    lengths = {(front - back, dashed) for _, back, front, dashed in drawn}
    assert len(lengths) == 3, "short, long, long and dashed"
    assert sum(dashed for *_, dashed in drawn) == 1
    said = words(bed_svg(BED))
    assert said["to UWP"] < said["to HP"]
    assert {"L9", "R9"} <= set(said)


def test_held_needles_come_toward_the_knitter() -> None:
    """Down in the drawing, as she stands before the bed; the first one drawn is L20, held."""
    drawn = shafts(bed_svg(BED))
    knitting = min(front for _, _, front, _ in drawn)
    assert drawn[0][2] > knitting
    assert drawn[-1][2] > knitting


@pytest.mark.parametrize(("side", "other"), [("L", "R"), ("R", "L")])
def test_the_carriage_stands_clear_of_the_piece_on_its_side(side: str, other: str) -> None:
    svg = bed_svg(replace(BED, carriage=side))  # type: ignore[arg-type]
    said = words(svg)
    xs = [x for x, *_ in shafts(svg)]
    assert f"CO{other}" not in said
    assert said[f"CO{side}"] < min(xs) if side == "L" else said[f"CO{side}"] > max(xs)
    assert f"The carriage stands on the {'left' if side == 'L' else 'right'}." in svg


def test_the_description_says_the_same_in_words() -> None:
    desc = Tree.fromstring(bed_svg(BED, yarn="Chalk", colour="#f2efe6"))[1].text
    assert desc == (
        "The carriage stands on the right. Returning now to upper working position: L9. Going to holding position now: R9. "
        "Knitting: L8-R8. Held: L20-L10, R10-R20. Yarn in the feeder: Chalk."
    )


@pytest.mark.parametrize("needles", [2, 13, 48, 110, 180, 250])
def test_every_usual_bed_fits_one_drawing(needles: int) -> None:
    first, last = limits(needles)
    bed = BedView(first, last, ((first, last),), (), (), (), "L", None, "")
    svg = bed_svg(bed)
    xs = [x for x, *_ in shafts(svg)]
    assert len(xs) == min(needles, 12)
    assert min(xs) > 0
    assert max(xs) < 180
    assert len(svg) < 6000


def test_a_long_run_is_shortened_and_says_so() -> None:
    assert "…" in words(bed_svg(BED))
    short = BedView(-3, 3, ((-3, 3),), (), (), (), "L", None, "")
    assert "…" not in words(bed_svg(short))


def test_every_cue_of_a_piece_can_be_drawn() -> None:
    for cue in cues(plan_piece(diamond(24, 48))):
        tree = Tree.fromstring(bed_svg(cue.bed, knits=cue.rows > 0))
        assert tree.get("width") == "180mm"
