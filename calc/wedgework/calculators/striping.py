"""How a striped yarn is typed: its colours and lengths line by line, and the blocks that shall begin with a colour."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.exact import nearest
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.units import length_mm
from wedgework.yarn.fabric import UNIT
from wedgework.yarn.stripes import Repeat

__all__ = ["MOST_COLOURS", "Colours", "read_begins", "read_repeat"]

MOST_COLOURS = 30
LONGEST_MM = Fraction(5_000_000)
# What comes off shorter than a stitch cannot be seen. Common practice, no source.
SHORTEST_MM = Fraction(10)

_COLOUR = re.compile(r"#[0-9a-fA-F]{6}\b")
_NUMBER = r"(?:\d+ +\d+ ?/ ?\d+|\d+ ?/ ?\d+|\d*[.,]?\d+)"
_LENGTH = re.compile(rf"(?:^|[\s,])({_NUMBER} *(?:[a-zA-Z]+|[\"'])?)\s*$")
_BEGIN = re.compile(r"\D{0,12}?(\d{1,4})\s*[:=]\s*(.+)")


@dataclass(frozen=True, slots=True)
class Colours:
    """A repeat with the names of its colours."""

    names: tuple[str, ...]
    repeat: Repeat

    def numbered(self, typed: str) -> int | None:
        """The place in the repeat of a colour by its name, or by its number from 1."""
        wanted = typed.strip().casefold()
        for number, name in enumerate(self.names):
            if name.casefold() == wanted:
                return number
        if wanted.isdecimal() and 1 <= int(wanted) <= len(self.names):
            return int(wanted) - 1
        return None


def _say(key: str, **values: object) -> str:
    return say(f"calculators.stripes.{key}", **values)


def read_repeat(field: str, lines: str) -> Colours:
    """``#b4533f Rust 2.5 m`` line by line; a bare number is in metres. Raises Refused with a problem for each line."""
    problems: list[Problem] = []
    names: list[str] = []
    colours: list[str] = []
    ends: list[int] = []
    for at, line in enumerate(lines.split("\n"), 1):
        colour, length = _COLOUR.search(line), _LENGTH.search(line)
        if colour is None or length is None or length.start() < 0:
            problems.append(Problem(field, "stripes.line", _say("line", at=at, found=line), _say("line.way-out")))
            continue
        try:
            mm = length_mm(length[1], "m")
        except Refused as refused:
            problems += [Problem(field, p.code, p.sentence, f"{p.way_out} {_say('line.way-out')}") for p in refused.problems]
            continue
        if not SHORTEST_MM <= mm <= LONGEST_MM:
            problems.append(Problem(field, "stripes.length", _say("length", at=at, found=length[1]), _say("length.way-out")))
            continue
        rest = line[: length.start()].replace(colour[0], " ")
        names.append(" ".join(rest.replace(",", " ").split()) or _say("colour-number", number=len(names) + 1))
        colours.append(colour[0].lower())
        # In hundredths of a millimetre, as the page counts too.
        ends.append((ends[-1] if ends else 0) + UNIT * nearest(mm * 1000 / UNIT))
    if not problems and len(names) > MOST_COLOURS:
        problems.append(Problem(field, "stripes.many", _say("many", found=len(names)), _say("many.way-out", most=MOST_COLOURS)))
    if not problems and ends[-1] > LONGEST_MM * 1000:
        problems.append(Problem(field, "stripes.long", _say("long"), _say("long.way-out")))
    if problems:
        raise Refused(problems)
    return Colours(tuple(names), Repeat(tuple(colours), tuple(ends)))


def read_begins(field: str, lines: str, colours: Colours, blocks: Sequence[str], striped: Mapping[str, int]) -> dict[int, int]:
    """``3: Rust`` line by line: block 3 shall begin with that colour. `striped` gives the stretch of the path of each
    block in the striped yarn. Raises Refused."""
    problems: list[Problem] = []
    found: dict[int, int] = {}
    for line in filter(None, lines.split("\n")):
        match = _BEGIN.fullmatch(line)
        colour = colours.numbered(match[2]) if match else None
        if match is None or colour is None:
            names = ", ".join(colours.names)
            problems.append(Problem(field, "stripes.begin", _say("begin", found=line), _say("begin.way-out", names=names)))
            continue
        number = int(match[1])
        block = blocks[number - 1] if 1 <= number <= len(blocks) else ""
        if block not in striped:
            there = ", ".join(str(i) for i, one in enumerate(blocks, 1) if one in striped)
            problems.append(Problem(field, "stripes.block", _say("block", found=number), _say("block.way-out", blocks=there)))
            continue
        found[striped[block]] = colour
    if problems:
        raise Refused(problems)
    return found
