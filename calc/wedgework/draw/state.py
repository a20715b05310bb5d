"""The bed as it really stands in the middle of a piece, as the knitter sees it: L on the left, held needles drawn toward her,
the carriage on its side, and under the needles the piece as far as it is knitted, at its true proportions.

The colours are those of the design: so many rows of each needle as the person counted. What is still to come is drawn faint.
"""

from __future__ import annotations

from collections.abc import Sequence
from fractions import Fraction

from wedgework.bed import across, name, place, range_name
from wedgework.draw.hatch import Hatches
from wedgework.draw.marks import ruler, words_width
from wedgework.draw.outline import Interval, loops, stack_on
from wedgework.draw.svg import Element, document, group, label, line, number, path, rect
from wedgework.formats.design import Design
from wedgework.formats.state import Hanging, State
from wedgework.layout import grid_of, resolve
from wedgework.say import say, say_n

__all__ = ["state_svg"]

WIDTH, MARGIN = 180, 27
"""Room for the carriage at either side."""
HIGHEST = 150
"""A tall piece is drawn smaller, so that it and the bed are seen at once."""
BAR, SHORT, LONG = 12, 17, 25
"""Front of the bed, how far a knitting needle comes, and a held one."""
TOP = 29
"""Where the whole picture would end."""
TEXT = Fraction(7, 2)


def state_svg(design: Design, state: State, *, prefix: str = "state") -> str:
    """SVG text. The state is one of this design: as many needles, from the same first one on."""
    sizes = resolve(design)
    needles = across(sizes.first_needle, sizes.last_needle)
    row_by_stitch = sizes.row_mm / sizes.stitch_mm
    tallest = max(*state.rows, sizes.rows)
    stitch = min(Fraction(WIDTH - 2 * MARGIN, len(needles)), HIGHEST / (tallest * row_by_stitch), Fraction(6))
    row = stitch * row_by_stitch
    left = (WIDTH - stitch * len(needles)) / 2
    right = WIDTH - left
    floor = TOP + tallest * row
    hatches = Hatches(design.yarns, prefix)
    children: list[Element] = [hatches.definitions()]
    whole = _fabric(design, (sizes.rows,) * len(needles), hatches, left, floor, stitch, row)
    children.append(group(whole, opacity="0.28", class_="to-come"))
    children += _fabric(design, state.rows, hatches, left, floor, stitch, row)
    children.append(_outline(state.rows, left, floor, stitch, row))
    children += _bed(state, needles, left, stitch)
    children += _carriage(state, left, right)
    if state.feeder is not None:
        children.append(_strand(state, state.feeder, design, left, right, floor, stitch, row))
    children.append(ruler(needles, left, stitch, floor))
    children += _levels(state.rows, left, floor, row)
    title = say("draw.state-title", title=design.title)
    return document(WIDTH, floor + 9, title, _description(design, state), children, prefix=prefix, kind="state")


def _fabric(
    design: Design, rows: Sequence[int], hatches: Hatches, left: Fraction, floor: Fraction, stitch: Fraction, row: Fraction
) -> list[Element]:
    """The picture up to the rows of each needle, a path for each yarn; rows above the picture keep the highest colour.

    Over a gap of a shaped piece the fabric has closed: each needle is drawn with its own rows.
    """
    grid = grid_of(design, resolve(design)).mirrored()
    columns: dict[str, dict[int, tuple[Interval, ...]]] = {}
    reached = [0] * grid.needles
    highest: list[str | None] = [None] * grid.needles

    def add(column: int, yarn: str, high: int) -> None:
        low = reached[column]
        if high <= low:
            return
        stack_on(columns.setdefault(yarn, {}), column, low, high)
        reached[column], highest[column] = high, yarn

    for cells in grid.turns:
        for run in cells:
            for column in range(run.first, run.last + 1):
                add(column, run.yarn, min(reached[column] + 2, rows[column]))
    for column, yarn in enumerate(highest):
        if yarn is not None:
            add(column, yarn, rows[column])
    drawn = []
    for yarn in (each.id for each in design.yarns if each.id in columns):
        whole = dict(sorted(columns[yarn].items()))
        d = "".join(
            "M" + "L".join(f"{number(left + x * stitch)} {number(floor - y * row)}" for x, y in loop) + "Z"
            for loop in loops(whole)
        )
        drawn.append(
            path(d, fill=hatches.fill(yarn), stroke=hatches.edge(yarn), stroke_width=Fraction(1, 5), fill_rule="evenodd")
        )
    return drawn


def _outline(rows: Sequence[int], left: Fraction, floor: Fraction, stitch: Fraction, row: Fraction) -> Element:
    """The upper edge as it is."""
    d = [f"M{number(left)} {number(floor - rows[0] * row)}"]
    for i, height in enumerate(rows):
        if i and height != rows[i - 1]:
            d.append(f"V{number(floor - height * row)}")
        if i == len(rows) - 1 or rows[i + 1] != height:
            d.append(f"H{number(left + (i + 1) * stitch)}")
    return path("".join(d), fill="none", stroke="currentColor", stroke_width=Fraction(3, 5), class_="level")


def _bed(state: State, needles: Sequence[int], left: Fraction, stitch: Fraction) -> list[Element]:
    """Each needle with its head; held ones forward, with their names where there is room."""
    held = frozenset(state.held)
    wide = min(Fraction(1), stitch / 2)
    shafts, heads = [], []
    for i, needle in enumerate(needles):
        x, end = left + (i + Fraction(1, 2)) * stitch, LONG if needle in held else SHORT
        shafts.append(f"M{number(x)} {BAR}V{end}")
        near, far = number(end + wide), number(end - wide)
        heads.append(f"M{number(x - wide)} {end}L{number(x)} {near}L{number(x + wide)} {end}L{number(x)} {far}Z")
    right = left + len(needles) * stitch
    drawn: list[Element] = [
        rect(left - 2, BAR - 3, right - left + 4, 3, fill="currentColor", fill_opacity="0.3"),
        path("".join(shafts), stroke="currentColor", stroke_width=wide, fill="none"),
        path("".join(heads), fill="currentColor"),
    ]
    taken = Fraction(0)
    for word, first, last in _runs(state, needles):
        middle = left + (place(first) + place(last) + 1 - 2 * place(needles[0])) * stitch / 2
        for words in (say(f"draw.bed-{word}", needles=range_name(first, last)), range_name(first, last)):
            half = words_width(words, TEXT) / 2
            if middle - half >= taken and 2 * half <= (place(last) - place(first) + 1) * stitch + 6:
                drawn.append(label(middle, BAR - 5, words, TEXT, text_anchor="middle"))
                taken = middle + half + 1
                break
    return drawn


def _runs(state: State, needles: Sequence[int]) -> list[tuple[str, int, int]]:
    held = frozenset(state.held)
    runs: list[tuple[str, int, int]] = []
    for needle in needles:
        word = "held" if needle in held else "knitting"
        if runs and runs[-1][0] == word:
            runs[-1] = (word, runs[-1][1], needle)
        else:
            runs.append((word, needle, needle))
    return runs


def _carriage(state: State, left: Fraction, right: Fraction) -> list[Element]:
    out = -1 if state.carriage == "L" else 1
    middle = (left if out < 0 else right) + out * 14
    thin = Fraction(4, 5)
    return [
        rect(middle - 8, BAR - 4, 16, 15, rx=2, fill="none", stroke="currentColor", stroke_width=thin),
        path(f"M{number(middle - 5)} {BAR - 4}v-4h10v4", fill="none", stroke="currentColor", stroke_width=thin),
        label(middle, BAR + 6, say(f"draw.carriage-{state.carriage}"), TEXT, text_anchor="middle", font_weight="700"),
    ]


def _strand(
    state: State,
    feeder: Hanging,
    design: Design,
    left: Fraction,
    right: Fraction,
    floor: Fraction,
    stitch: Fraction,
    row: Fraction,
) -> Element:
    """The yarn from where it hangs to the carriage, on a light ground so that every colour is seen."""
    i = place(feeder.needle) - place(resolve(design).first_needle)
    x, y = left + (i + Fraction(1, 2)) * stitch, floor - state.rows[i] * row
    end = left - 6 if state.carriage == "L" else right + 6
    d = f"M{number(x)} {number(y)}L{number(x)} {TOP - 2}L{number(end)} {BAR + 9}"
    colour = next((yarn.colour for yarn in design.yarns if yarn.id == feeder.yarn), "#8a8a8a")
    return group(
        [
            path(d, fill="none", stroke="currentColor", stroke_width=Fraction(3, 2), stroke_linejoin="round"),
            path(d, fill="none", stroke=colour, stroke_width=Fraction(9, 10), stroke_linejoin="round"),
        ],
        class_="strand",
    )


def _levels(rows: Sequence[int], left: Fraction, floor: Fraction, row: Fraction) -> list[Element]:
    """The fewest and the most rows, at the left."""
    drawn: list[Element] = []
    least, most = min(rows), max(rows)
    heights = [least] if least == most or (most - least) * row < TEXT else [least, most]
    for height in heights:
        y = floor - height * row
        drawn.append(line(left - 2, y, left, y, stroke_width=Fraction(1, 4)))
        drawn.append(label(left - 3, y + Fraction(6, 5), say_n("common.rows", height), TEXT, text_anchor="end"))
    return drawn


def _description(design: Design, state: State) -> str:
    """The same in words."""
    names = {yarn.id: yarn.name for yarn in design.yarns}
    said = [say("draw.bed-desc", side=say(f"common.{'left' if state.carriage == 'L' else 'right'}"))]
    needles = across(resolve(design).first_needle, resolve(design).last_needle)
    for word in ("knitting", "held"):
        runs = ", ".join(range_name(first, last) for found, first, last in _runs(state, needles) if found == word)
        if runs:
            said.append(say(f"draw.bed-desc-{word}", needles=runs))
    if state.feeder is not None:
        yarn = names.get(state.feeder.yarn, state.feeder.yarn)
        said.append(say("draw.state-desc-feeder", yarn=yarn, needle=name(state.feeder.needle)))
    least, most = min(state.rows), max(state.rows)
    said.append(say("draw.state-desc-rows", least=least, most=most))
    return " ".join(said)
