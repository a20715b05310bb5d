"""What each named layout draws, read off the letters of its cells: one letter for each needle and turn."""

from __future__ import annotations

import itertools
import re
from fractions import Fraction

import pytest

from pieces import letters, piece
from wedgework.formats.design import NamedLayout
from wedgework.layout import drawn_layout, resolve
from wedgework.layout.library.declared import Values
from wedgework.layout.picture import paint

Chosen = int | str


def drawn(layout: str, needles: int = 36, rows: int = 64, **chosen: Chosen) -> list[str]:
    """Letters, the lowest turn first."""
    parameters = {name: value if name in YARN_NAMES else Fraction(value) for name, value in chosen.items()}
    design = piece(NamedLayout(layout, parameters), needles, rows)  # type: ignore[arg-type]
    return letters(drawn_layout(design, resolve(design)), needles, rows)[::-1]


YARN_NAMES = {"ground", "blocks", "yarns", "sky", "light", "sun"}


def borders(turn: str) -> list[int]:
    """Where the letter changes, as the number of needles to the left."""
    return [i for i in range(1, len(turn)) if turn[i - 1] != turn[i]]


def runs(turn: str) -> list[str]:
    return [run.group() for run in re.finditer(r"(.)\1*", turn)]


def width_at(needle: int, turn: str) -> int:
    """Needles of the run that holds this one."""
    return next(len(run.group()) for run in re.finditer(r"(.)\1*", turn) if run.start() <= needle < run.end())


def mirrored(turns: list[str]) -> list[str]:
    return [turn[::-1] for turn in turns]


def test_a_single_diamond_is_as_wide_and_as_high_as_it_is_asked_for() -> None:
    turns = drawn("single-diamond", 40, 80, diamond_width="0.5", diamond_height="0.6")
    assert max(turn.count("b") for turn in turns) == 20
    # 24 turns high; its first and its last turn are too narrow for a needle.
    assert sum("b" in turn for turn in turns) == 22
    assert turns == turns[::-1] == mirrored(turns)


def test_a_lattice_of_diamonds() -> None:
    assert drawn("diamond-lattice", 12, 24) == [
        "aabbaaaaccaa",
        "abbbbaacccca",
        "bbbbbbcccccc",
        "bbbbbbcccccc",
        "abbbbaacccca",
        "aabbaaaaccaa",
        "aaccaaaabbaa",
        "accccaabbbba",
        "ccccccbbbbbb",
        "ccccccbbbbbb",
        "accccaabbbba",
        "aaccaaaabbaa",
    ]


def test_half_diamonds_stand_on_the_left_and_on_the_right_by_turns() -> None:
    # The right one is cut at the lower edge; a turn of ground lies between two of one side.
    assert (
        drawn("half-diamonds", 12, 48, up=2, depth="0.5", blocks="b")
        == [
            "aaaaaaabbbbb",
            "baaaaaaabbbb",
            "bbaaaaaaabbb",
            "bbbaaaaaaabb",
            "bbbbaaaaaaab",
            "bbbbbaaaaaaa",
            "bbbbbaaaaaaa",
            "bbbbaaaaaaab",
            "bbbaaaaaaabb",
            "bbaaaaaaabbb",
            "baaaaaaabbbb",
            "aaaaaaabbbbb",
        ]
        * 2
    )


def test_half_diamonds_of_one_yarn_do_not_grow_together() -> None:
    turns = drawn("half-diamonds", 36, 66, up=3, depth="0.4", blocks="b")
    assert sum(before[0] == "b" and turn[0] == "a" for before, turn in itertools.pairwise(turns)) == 3


def test_kites_are_widest_at_three_fifths_of_their_height() -> None:
    turns = drawn("kites", 60, 100, across=1, up=1)
    counts = [turn.count("b") for turn in turns]
    assert counts.index(max(counts)) in (29, 30)
    assert counts[:29] == sorted(counts[:29])
    assert turns == mirrored(turns)


def test_an_hourglass_has_a_waist() -> None:
    turns = drawn("hourglass", 24, 48, across=1, up=1)
    assert turns == turns[::-1] == mirrored(turns)
    counts = [turn.count("b") for turn in turns]
    assert counts[0] == 24
    assert 2 <= min(counts) <= 4
    assert counts[:12] == sorted(counts[:12], reverse=True)


def test_flying_triangles_stand_on_each_other() -> None:
    turns = drawn("flying-triangles", 24, 48, up=3, blocks="b")
    assert turns[:8] == turns[8:16] == turns[16:]
    assert turns[0].count("b") >= 22
    assert 2 <= turns[7].count("b") <= 4


def test_half_square_triangles_lean_their_upright_sides_by_one_needle_a_turn() -> None:
    # Six turns to the right, six to the left; ground and block are both at least one needle wide everywhere.
    assert drawn("half-square-triangles", 20, 24, across=2, up=2) == [
        "caabbbbbbbbaaccccccc",
        "ccaaabbbbbbbaaaccccc",
        "cccaaaabbbbbbaaaaccc",
        "ccccaaaaaabbbbaaaaaa",
        "aacccaaaaaaabbbaaaaa",
        "aaaaccaaaaaaaabbaaaa",
        "bbbbaaccccccccaabbbb",
        "bbaaacccccccaaabbbbb",
        "aaaaccccccaaaabbbbbb",
        "aaaccccaaaaaabbbbaaa",
        "aacccaaaaaaabbbaaaaa",
        "accaaaaaaaabbaaaaaaa",
    ]


def test_rows_of_half_square_triangles_lean_to_and_fro() -> None:
    turns = drawn("half-square-triangles", 36, 64, across=3, up=4, blocks="b")
    to = [turn.index("ba", 8) + 1 for turn in turns[:8]]
    fro = [turn.index("ab", 8) + 1 for turn in turns[8:16]]
    assert to == list(range(to[0], to[0] + 8))
    assert fro == to[::-1]


def test_a_pinwheel_is_the_same_upside_down() -> None:
    turns = drawn("pinwheel", 36, 64, blocks="b")
    assert turns == mirrored(turns[::-1])
    assert turns != mirrored(turns)
    # The blade below: both of its borders move by one needle every turn.
    assert [turn.count("b") for turn in turns[:8]] == list(range(32, 16, -2))


def test_hexagons_of_three_yarns_have_no_neighbour_of_their_own_yarn() -> None:
    turns = drawn("hexagons", 36, 64)
    # Up the middle column hexagons lie on each other, half a hexagon of it at either end.
    assert [run[0] for run in runs("".join(turn[18] for turn in turns))] == ["a", "c", "b", "a"]
    # Along the lower edge: hexagons that begin level, by turns with half ones that are widest there.
    assert [run[0] for run in runs(turns[0])] == ["a", "b", "a", "b", "a"]
    # The sides of the middle one lean by one needle a turn, inward from its widest place on the lower edge.
    assert [width_at(18, turn) for turn in turns[:5]] == [16, 14, 12, 10, 8]


def test_zigzag_bands_move_one_needle_a_turn_and_bend_together() -> None:
    turns = drawn("zigzag-bands", 48, 96, bands=4, bends=3)
    moves = [[b - a for a, b in zip(borders(x), borders(y), strict=True)] for x, y in itertools.pairwise(turns)]
    assert all(len(set(move)) == 1 for move in moves), "all borders move together"
    # Four straight pieces of twelve turns; at a bend the borders stand for two turns.
    assert [move[0] for move in moves] == [1] * 11 + [0] + [-1] * 11 + [0] + [1] * 11 + [0] + [-1] * 11


def test_teeth_fall_one_needle_a_turn_and_are_all_alike() -> None:
    turns = drawn("sawtooth", 48, 64, bands=2, teeth=4, rise="0.25", yarns="a b")
    toothed = [turn for turn in turns if len(runs(turn)) > 2]
    assert all(turn[:12] == turn[12:24] == turn[24:36] == turn[36:] for turn in toothed)
    falls = [max(i for i in borders(turn + "a") if turn[i - 1] == "a") for turn in toothed if "a" in turn]
    assert {a - b for a, b in itertools.pairwise(falls)} <= {0, 1}


def test_treads_are_level_and_risers_lean_by_one_needle_a_turn() -> None:
    turns = drawn("steps", 50, 80, bands=2, steps=3, rise="0.5", yarns="a b")
    climbing = [borders(turn)[0] for turn in turns if len(runs(turn)) == 2]
    moves = [b - a for a, b in itertools.pairwise(climbing)]
    assert moves.count(1) == len(moves) - 1, "one needle each turn, but for the tread between the two risers"
    assert max(moves) > 5


def test_trapezoids_change_places_from_band_to_band() -> None:
    turns = drawn("trapezoid-bands", 48, 80, bands=4, across=3, yarns="a b")
    # In every second band the yarns have changed places.
    assert turns[20:30] == turns[:10]
    for first in (0, 10, 20, 30):
        inner = [borders(turn) for turn in turns[first : first + 10]]
        for before, after in itertools.pairwise(inner):
            assert [abs(b - a) for a, b in zip(before, after, strict=True)] == [1, 1]


def test_each_strip_of_a_braid_lies_on_those_before_it() -> None:
    design = piece(NamedLayout("parallelogram-braid"), 48, 96)
    grid = paint(drawn_layout(design, resolve(design)), 48, 96)
    columns: list[list[int]] = [[] for _ in range(48)]
    for turn in grid.turns:
        for cells in turn:
            for column in range(cells.first, cells.last + 1):
                columns[column].append(cells.shape)
    assert all(column == sorted(column) for column in columns)
    assert min(map(min, columns)) > -1, "the strips cover the panel"
    assert all(len(set(column)) > 3 for column in columns)


def test_the_farthest_ridge_is_the_highest_and_the_first_yarn_is_the_sky() -> None:
    turns = drawn("ridge-line", 48, 96, yarns="a b c", ridges=2)
    assert set(turns[-1]) == {"a"}
    assert set(turns[0]) == {"c"}
    tops = [max(k for k, turn in enumerate(turns) if yarn in turn) for yarn in "abc"]
    assert tops == sorted(tops, reverse=True)


def test_a_sunrise_is_its_own_mirror_image_and_opens_by_one_needle_a_turn() -> None:
    turns = drawn("sunrise", 48, 64, sun_width="0.25")
    assert turns == mirrored(turns)
    # Half a hexagon of three turns, then the middle wedge on its level top.
    assert [turn.count("c") for turn in turns[:4]] == [12, 10, 8, 0]
    assert [width_at(24, turn) for turn in turns[3:20]] == list(range(8, 42, 2))


def test_what_is_so_many_needles_or_turns_takes_its_measure_from_the_panel() -> None:
    values = Values({}, 50, 120)
    assert values.needle == Fraction(1, 50)
    assert values.turn == Fraction(1, 60)
    # Half the height is 30 turns: 30 needles of 50.
    assert values.lean(Fraction(1, 2)) == Fraction(3, 5)
    assert values.climb(Fraction(3, 5)) == Fraction(1, 2)


@pytest.mark.parametrize(("count", "widths"), [(3, [17, 16, 17]), (4, [13, 12, 13, 12]), (5, [10] * 5)])
def test_columns_are_as_equal_as_whole_needles_allow(count: int, widths: list[int]) -> None:
    found = Values({}, 50, 120).columns(count)
    assert [(right - left) * 50 for left, right in found] == widths


def test_columns_of_few_needles_stay_as_they_are() -> None:
    assert Values({}, 50, 120).columns(7)[1] == (Fraction(1, 7), Fraction(2, 7))
    assert Values({}, 50, 120).storeys(17)[1] == (Fraction(1, 17), Fraction(2, 17))
