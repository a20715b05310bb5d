"""Front and purl side: what is knitted is what is drawn, and the one is the mirror image of the other."""

from __future__ import annotations

import re
import xml.etree.ElementTree as Tree
from collections.abc import Callable
from dataclasses import replace
from fractions import Fraction

import pytest

from pieces import diamond, hemmed, lopsided, piece
from wedgework.draw import DIAGRAMS, front_svg, levels_svg, purl_svg
from wedgework.formats.design import Design, NamedLayout
from wedgework.formats.plan import Hole, Plan, Slit, Thread
from wedgework.layout import resolve
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan
from wedgework.replay.result import Replay

SVG = "{http://www.w3.org/2000/svg}"
Knitted = tuple[Plan, Replay]


def knitted(design: Design) -> Knitted:
    plan = plan_piece(design)
    return plan, replay_plan(plan)


PIECES = {
    "diamond": knitted(diamond()),
    "lopsided": knitted(lopsided()),
    "nested": knitted(piece(NamedLayout("nested-diamonds"), 60, 96)),
}


def blocks(svg: str) -> dict[int, list[list[tuple[Fraction, Fraction]]]]:
    """The corners of each block's outlines by its number."""
    found = {}
    for path in Tree.fromstring(svg).iter(f"{SVG}path"):
        if path.get("data-block"):
            found[int(path.get("data-block", ""))] = [corners(part) for part in path.get("d", "").split("Z") if part]
    return found


def corners(part: str) -> list[tuple[Fraction, Fraction]]:
    points: list[tuple[Fraction, Fraction]] = []
    for letter, numbers in re.findall(r"([MHV])([-\d. ]+)", part):
        values = [Fraction(n) for n in numbers.split()]
        x, y = points[-1] if points else (Fraction(0), Fraction(0))
        points.append((values[0], values[1]) if letter == "M" else (values[0], y) if letter == "H" else (x, values[0]))
    return points


def area(points: list[tuple[Fraction, Fraction]]) -> Fraction:
    turned = points[1:] + points[:1]
    return sum(((x1 * y2 - x2 * y1) for (x1, y1), (x2, y2) in zip(points, turned, strict=True)), Fraction(0)) / 2


@pytest.mark.parametrize(("plan", "judged"), PIECES.values(), ids=PIECES.keys())
@pytest.mark.parametrize("draw", [front_svg, purl_svg])
def test_areas_are_those_of_the_stitches_at_true_proportions(plan: Plan, judged: Replay, draw: object) -> None:
    drawn = blocks(draw(plan, judged))  # type: ignore[operator]
    sizes = resolve(plan.design)
    ids = [block.id for block in plan.blocks if block.id.startswith("b") and block.id[1:].isdigit()]
    assert list(drawn) == list(range(1, len(ids) + 1)), "every block once, in knitting order"
    stitches = {id_: sum(r.rows for column in judged.piece.columns for r in column if r.block == id_) for id_ in ids}
    areas = {id_: abs(sum(map(area, drawn[number]), Fraction(0))) for number, id_ in enumerate(ids, 1)}
    scale = sum(areas.values()) / (sum(stitches.values()) * sizes.stitch_mm * sizes.row_mm)
    for id_ in ids:
        whole = stitches[id_] * sizes.stitch_mm * sizes.row_mm * scale
        assert abs(areas[id_] - whole) < whole / 50 + 1
    points = [p for parts in drawn.values() for part in parts for p in part]
    width = max(x for x, _ in points) - min(x for x, _ in points)
    height = max(y for _, y in points) - min(y for _, y in points)
    assert abs(height / width - judged.rows_max * sizes.row_mm / sizes.width_mm) < Fraction(1, 200)


@pytest.mark.parametrize(("plan", "judged"), PIECES.values(), ids=PIECES.keys())
def test_the_front_is_the_mirror_image_of_the_purl_side(plan: Plan, judged: Replay) -> None:
    front, purl = blocks(front_svg(plan, judged)), blocks(purl_svg(plan, judged))

    def shares(drawn: dict[int, list[list[tuple[Fraction, Fraction]]]], *, turned: bool) -> dict[int, set[tuple[float, float]]]:
        points = [p for parts in drawn.values() for part in parts for p in part]
        left, right = min(x for x, _ in points), max(x for x, _ in points)
        top, foot = min(y for _, y in points), max(y for _, y in points)
        wide, high = right - left, foot - top
        return {
            number: {
                (round(float((right - x if turned else x - left) / wide), 2), round(float((y - top) / high), 2))
                for part in parts
                for x, y in part
            }
            for number, parts in drawn.items()
        }

    assert shares(front, turned=True).keys() == shares(purl, turned=False).keys()
    for number, there in shares(purl, turned=False).items():
        here = shares(front, turned=True)[number]
        assert all(any(abs(x - a) <= 0.02 and abs(y - b) <= 0.02 for a, b in there) for x, y in here)


def test_the_lopsided_piece_is_not_its_own_mirror_image() -> None:
    """The sail of the harbour stands left of the middle on the front, right of it on the machine."""
    plan, judged = PIECES["lopsided"]
    sail = next(n for n, b in enumerate((b for b in plan.blocks if not b.id.startswith("base")), 1) if b.yarn == "c")

    def middle(svg: str) -> Fraction:
        drawn = blocks(svg)
        points = [p for parts in drawn.values() for part in parts for p in part]
        mine = [p for part in drawn[sail] for p in part]
        left, right = min(x for x, _ in points), max(x for x, _ in points)
        return (sum((x for x, _ in mine), Fraction(0)) / len(mine) - left) / (right - left)

    assert middle(front_svg(plan, judged)) < Fraction(45, 100)
    assert middle(purl_svg(plan, judged)) > Fraction(55, 100)


def every_drawing(plan: Plan, judged: Replay) -> dict[str, str]:
    found = {
        "front": front_svg(plan, judged, show_grid=True),
        "purl": purl_svg(plan, judged),
        "levels": levels_svg(plan, judged),
    }
    return found | {name: draw() for name, draw in DIAGRAMS.items()}


def test_every_drawing_keeps_the_rules_of_the_page() -> None:
    """Size in mm, title, description, no style, no script, ids that do not meet on one page."""
    drawings = every_drawing(*PIECES["lopsided"])
    ids: list[str] = []
    for name, svg in drawings.items():
        tree = Tree.fromstring(svg)
        assert re.fullmatch(r"\d+(\.\d+)?mm", tree.get("width", "")), name
        assert float(tree.get("width", "")[:-2]) <= 180
        assert float(tree.get("height", "")[:-2]) <= 240
        assert tree[0].tag == f"{SVG}title"
        assert tree[1].tag == f"{SVG}desc"
        assert tree[0].text
        assert tree[1].text
        here = [element.get("id", "") for element in tree.iter() if element.get("id")]
        ids += here
        for element in tree.iter():
            assert element.tag.removeprefix(SVG) not in ("script", "style", "foreignObject", "a", "image")
            for key, value in element.attrib.items():
                assert key != "style"
                assert not key.startswith("on")
                assert "href" not in key
                if value.startswith("url("):
                    assert value[5:-1] in here
    assert len(ids) == len(set(ids))


def test_a_hostile_name_is_only_text() -> None:
    design = diamond()
    hostile = replace(
        design, title="</title><script>alert(1)</script>", yarns=(replace(design.yarns[0], name='"><b>'), *design.yarns[1:])
    )
    for svg in every_drawing(*knitted(hostile)).values():
        assert not list(Tree.fromstring(svg).iter(f"{SVG}script"))


def test_yarns_differ_without_colour() -> None:
    """Each yarn but the first has a hatch of its own, and each block its number."""
    tree = Tree.fromstring(front_svg(*PIECES["lopsided"]))
    hatches = {pattern.get("id"): pattern[1].get("d") for pattern in tree.iter(f"{SVG}pattern")}
    assert len(set(hatches.values())) == len(hatches) == 2
    numbers = [t.text for t in tree.iter(f"{SVG}text") if t.get("font-weight") == "600" and (t.text or "").isdigit()]
    assert sorted(map(int, numbers)) == list(range(1, len(numbers) + 1))  # type: ignore[arg-type]


def test_slits_and_holes_are_drawn_and_said() -> None:
    plan, judged = PIECES["diamond"]
    open_ = replace(judged.summary, slits=(Slit(-3, 41, 6),), holes=(Hole(4, 12), Hole(5, 14)))
    sides = {}
    for draw in (front_svg, purl_svg):
        tree = Tree.fromstring(draw(plan, replace(judged, summary=open_)))
        zigzag = [g for g in tree.iter(f"{SVG}g") if g.get("class") == "slit"]
        assert len(zigzag) == 1
        assert len([g for g in tree.iter(f"{SVG}g") if g.get("class") == "hole"]) == 2
        assert "1 slit, marked by a zigzag. 2 holes, marked by rings." in (tree[1].text or "")
        middle = next(float(t.get("x", "")) for t in tree.iter(f"{SVG}text") if t.text in ("L1 R1", "R1 L1"))
        sides[draw] = float(zigzag[0][0].get("x1", "")) - middle
    # between L3 and L2: left of the middle on the machine, right of it on the front, two stitches away
    assert sides[purl_svg] < 0 < sides[front_svg]
    assert abs(sides[purl_svg] + sides[front_svg]) < 1


def test_sizes_stand_beside_the_arrows() -> None:
    said = [t.text for t in Tree.fromstring(front_svg(*PIECES["diamond"])).iter(f"{SVG}text")]
    assert "34.3 cm (13 1/2 in)" in said
    assert "50.5 cm (19 7/8 in)" in said


def test_the_ruler_shows_left_on_the_left_of_the_machine() -> None:
    plan, judged = PIECES["diamond"]

    def places(svg: str) -> dict[str, float]:
        return {t.text or "": float(t.get("x", "0")) for t in Tree.fromstring(svg).iter(f"{SVG}text")}

    purl, front = places(purl_svg(plan, judged)), places(front_svg(plan, judged))
    assert purl["L24"] < purl["L10"] < purl["L1 R1"] < purl["R10"] < purl["R24"]
    assert front["R24"] < front["R10"] < front["R1 L1"] < front["L10"] < front["L24"]


def test_rows_on_each_needle_are_said() -> None:
    plan, judged = PIECES["diamond"]
    assert "Every needle has 96 rows." in levels_svg(plan, judged)
    column = judged.piece.columns[0]
    taller = replace(column[-1], rows=column[-1].rows + 2)
    uneven = replace(judged.piece, columns=((*column[:-1], taller), *judged.piece.columns[1:]))
    said = levels_svg(plan, replace(judged, piece=uneven))
    assert "Fewest: 96 rows (L23). Most: 98 rows (L24). Wanted: 96." in said


def test_two_drawings_of_one_piece_are_the_same_text() -> None:
    plan, judged = PIECES["nested"]
    assert front_svg(plan, judged) == front_svg(plan, judged)
    assert front_svg(plan, judged, prefix="x") != front_svg(plan, judged)


def test_a_plan_with_faults_can_be_drawn() -> None:
    """A thread lost: rows knitted with no yarn at all."""
    plan, _ = PIECES["diamond"]
    faulty = replace(plan, steps=tuple(step for step in plan.steps if not isinstance(step, Thread)))
    judged = replay_plan(faulty)
    assert judged.problems
    for draw in (front_svg, purl_svg, levels_svg):
        assert Tree.fromstring(draw(faulty, judged)).tag == f"{SVG}svg"


def strips(svg: str) -> list[tuple[str, Fraction, Fraction]]:
    """Class, top and bottom of each strip outside the picture, in printed millimetres."""
    found = []
    for path in Tree.fromstring(svg).iter(f"{SVG}path"):
        if path.get("class") in ("hem", "base"):
            ys = [Fraction(y) for y in re.findall(r"[ML][\d.]+ ([\d.]+)", path.get("d", ""))]
            ys += [Fraction(y) for y in re.findall(r"V([\d.]+)", path.get("d", ""))]
            found.append((path.get("class", ""), min(ys), max(ys)))
    return found


@pytest.mark.parametrize("kind", ["plain", "picot"])
@pytest.mark.parametrize("draw", [front_svg, purl_svg])
def test_hems_are_strips_of_their_true_height(kind: str, draw: Callable[..., str]) -> None:
    """A bottom hem of 12 rows is six times as high as the 2 base rows above it."""
    plan, judged = knitted(hemmed(diamond(), bottom=kind, rows=12))
    svg = draw(plan, judged)
    (hem, top, bottom), (base, high, low) = strips(svg)[:2]
    assert (hem, base) == ("hem", "base")
    assert abs((bottom - top) - 6 * (low - high)) < Fraction(1, 10)
    assert abs(top - low) < Fraction(1, 100), "it hangs on the base rows"
    assert svg.count('class="hem-join"') == 1
    assert f"Bottom hem, {kind}" in svg


def test_points_of_a_picot_lie_between_the_eyelets_and_are_mirrored_with_the_side() -> None:
    """12 needles: of the bed's places 2, 4, 6, 8, 10 are emptied, counted from the left; the front is the mirror image."""
    plan, judged = knitted(hemmed(diamond(12, 24), bottom="picot"))
    for draw, columns in ((purl_svg, (1, 3, 5, 7, 9)), (front_svg, (2, 4, 6, 8, 10))):
        (path,) = [one for one in Tree.fromstring(draw(plan, judged)).iter(f"{SVG}path") if one.get("class") == "hem"]
        at = [(Fraction(x), Fraction(y)) for x, y in re.findall(r"[ML]([\d.]+) ([\d.]+)", path.get("d", ""))]
        left, right = min(x for x, _ in at), max(x for x, _ in at)
        stitch = (right - left) / 12
        outer = max(y for _, y in at)
        notches = [(x - left) / stitch for x, y in at[1:] if y != outer]
        assert [round(float(notch), 1) for notch in notches] == [column + 0.5 for column in columns]
