"""How leftovers are typed: colour, name, weight, metres per gram and kind, line by line; and choices that are fixed."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.units import mass_g, number

__all__ = ["MOST_LEFTOVERS", "Leftover", "read_fixed", "read_leftovers"]

MOST_LEFTOVERS = 40
_COLOUR = re.compile(r"#[0-9a-fA-F]{6}\b")
_NUMBER = r"(?:\d+ +\d+ ?/ ?\d+|\d+ ?/ ?\d+|\d*[.,]?\d+)"
_RATE = re.compile(rf"(?:^|[\s,])({_NUMBER}) *m ?/ ?g")
_MASS = re.compile(rf"(?:^|[\s,])({_NUMBER} *(?:g|kg|oz|lb))\b")
_FIXED = re.compile(r"\D{0,12}?(\d{1,4})\s*[:=]\s*(.+)")


@dataclass(frozen=True, slots=True)
class Leftover:
    name: str
    colour: str
    grams: Fraction
    metres_per_gram: Fraction
    kind: str
    """What may stand together: wool, cotton ...; empty is a kind too."""

    @property
    def metres(self) -> Fraction:
        return self.grams * self.metres_per_gram


def _say(key: str, **values: object) -> str:
    return say(f"calculators.scraps.{key}", **values)


def read_leftovers(field: str, lines: str) -> tuple[Leftover, ...]:
    """``#b4533f Rust, 120 g, 2.4 m/g, wool`` line by line. Raises Refused with a problem for each line."""
    problems: list[Problem] = []
    found: list[Leftover] = []
    for at, line in enumerate(filter(None, lines.split("\n")), 1):
        try:
            found.append(_leftover(line))
        except (Refused, ValueError):
            problems.append(Problem(field, "scraps.line", _say("line", at=at, found=line), _say("line.way-out")))
    names = [one.name.casefold() for one in found]
    twice = sorted({one.name for one in found if names.count(one.name.casefold()) > 1})
    if twice:
        problems.append(Problem(field, "scraps.twice", _say("twice", names=", ".join(twice)), _say("twice.way-out")))
    if len(found) > MOST_LEFTOVERS:
        problems.append(Problem(field, "scraps.many", _say("many", found=len(found)), _say("many.way-out", most=MOST_LEFTOVERS)))
    if problems:
        raise Refused(problems)
    return tuple(found)


def _leftover(line: str) -> Leftover:
    """Raises ValueError or Refused for what is none."""
    colour = _COLOUR.search(line)
    if colour is None:
        raise ValueError("no colour")
    rest = line.replace(colour[0], " ", 1)
    rate = _RATE.search(rest)
    if rate is None:
        raise ValueError("no metres per gram")
    metres_per_gram = number(rate[1])
    rest = rest.replace(rate[0], ",", 1)
    mass = _MASS.search(rest)
    if mass is None:
        raise ValueError("no weight")
    grams = mass_g(mass[1], "g")
    rest = rest.replace(mass[0], ",", 1)
    words = [" ".join(part.split()) for part in rest.split(",")]
    words = [part for part in words if part]
    if not words or len(words) > 2 or not 0 < metres_per_gram <= 1000 or not 0 <= grams <= 100_000:
        raise ValueError("no name, too many parts, or a figure out of range")
    return Leftover(words[0][:60], colour[0].lower(), grams, metres_per_gram, words[1][:40] if len(words) == 2 else "")


def read_fixed(field: str, lines: str, leftovers: Sequence[Leftover], blocks: int) -> dict[int, int]:
    """``3: Rust`` line by line: block 3 has that leftover; blocks from 1 in knitting order. Raises Refused."""
    problems: list[Problem] = []
    found: dict[int, int] = {}
    names = {one.name.casefold(): i for i, one in enumerate(leftovers)}
    for line in filter(None, lines.split("\n")):
        match = _FIXED.fullmatch(line)
        leftover = names.get(match[2].strip().casefold()) if match else None
        if match is None or leftover is None or not 1 <= int(match[1]) <= blocks:
            known = ", ".join(one.name for one in leftovers)
            way_out = _say("fixed.way-out", blocks=blocks, names=known)
            problems.append(Problem(field, "scraps.fixed", _say("fixed", found=line), way_out))
            continue
        found[int(match[1]) - 1] = leftover
    if problems:
        raise Refused(problems)
    return found
