"""What every reader of a written pattern has in front of her, in whatever language it is written: the bed and its arithmetic,
the shape of the page, and the counts of several sizes. No grammar, and no code of the writer.

A *deed* is what the hands do: a pass with the needles that knit, an end of yarn, a loop that is moved.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

Deed = tuple[object, ...]
NEEDLES = r"[LR]\d+(?:-[LR]\d+)?(?:, [LR]\d+(?:-[LR]\d+)?)*"


@dataclass(frozen=True)
class Signs:
    """What stands for what in this pattern."""

    carriage: dict[str, str]
    counter: str
    working: str
    upper: str
    holding: str
    yarns: list[str]


def number(name: str) -> int:
    return int(name[1:]) if name[0] == "R" else -int(name[1:])


def between(first: int, last: int) -> list[int]:
    return [n for n in range(first, last + 1) if n]


def listed(words: str) -> list[int]:
    """L15, L14 or L24-L3."""
    found: list[int] = []
    for part in words.split(", "):
        first, _, last = part.partition("-")
        found += between(number(first), number(last or first))
    return found


def one_of(names: Sequence[str]) -> str:
    """A pattern for one of these names, the longest first."""
    return "|".join(map(re.escape, sorted(names, key=len, reverse=True)))


@dataclass
class Bed:
    """Needles, carriage, yarn and counter as they stand, and what was done so far."""

    needles: list[int]
    side: str
    held: set[int] = field(default_factory=set)
    hold: bool = False
    yarn: str = ""
    tension: str = ""
    counter: int = 0
    block: int = 0
    deeds: list[Deed] = field(default_factory=list)

    @property
    def knitting(self) -> list[int]:
        return [n for n in self.needles if not (self.hold and n in self.held)]

    @property
    def other(self) -> str:
        return "L" if self.side == "R" else "R"

    def knit(self, rows: int) -> None:
        for _ in range(rows):
            self.counter += 1
            self.deeds.append(("knit", self.other, tuple(self.knitting), self.yarn, self.block, self.counter))
            if not self.hold:
                self.held.clear()
            self.side = self.other

    def outermost(self, count: int, side: str) -> list[int]:
        """The last knitting needles on a side."""
        return (self.knitting[:count] if side == "L" else self.knitting[len(self.knitting) - count :]) if count else []

    def next_held(self, count: int, side: str) -> list[int]:
        """The held needles next to those that knit."""
        first, last = self.knitting[0], self.knitting[-1]
        beyond = [n for n in self.needles if n < first][::-1] if side == "L" else [n for n in self.needles if n > last]
        assert count <= len(beyond), "so many needles are not held there"
        return beyond[:count]

    def move(self, do: str, here: int, opposite: int) -> None:
        """So many needles at the carriage and so many opposite it, to holding position or back."""
        counts = ((here, self.side), (opposite, self.other))
        if do == "hold":
            self.held.update([n for count, side in counts for n in self.outermost(count, side)])
        else:
            self.held.difference_update([n for count, side in counts for n in self.next_held(count, side)])

    def named(self, do: str, needles: list[int]) -> None:
        if do == "hold":
            self.held.update(needles)
        else:
            self.held.difference_update(needles)

    def wrap_next(self, here: bool) -> None:
        self.wrap(*self.next_held(1, self.side if here else self.other))

    def wrap(self, needle: int) -> None:
        self.deeds.append(("wrap", needle))

    def thread(self, how: str, yarn: str, needle: str | None = None) -> None:
        self.yarn = yarn
        self.deeds.append(("thread", how, yarn, number(needle) if needle else None))

    def away(self, how: str, yarn: str) -> None:
        """Cut it, or let it rest."""
        assert yarn == self.yarn
        self.yarn = ""
        self.deeds.append((how, yarn))

    def join(self, yarn: str) -> None:
        assert yarn == self.yarn
        self.deeds.append(("join", yarn))

    def dial(self, tension: str) -> None:
        """To set it to where it stands is no deed."""
        if tension != self.tension:
            self.deeds.append(("tension", tension))
        self.tension = tension

    def free(self, side: str) -> None:
        self.side = side
        self.deeds.append(("free", side))

    def picot(self, first: str, to: str, last: str) -> None:
        """Every second stitch to its left neighbour, from `first` to the `last` one told."""
        every = [n for n in self.needles if number(first) <= n <= number(last)]
        assert self.needles[self.needles.index(number(first)) - 1] == number(to)
        for n in every[::2]:
            self.deeds.append(("transfer", n, self.needles[self.needles.index(n) - 1]))

    def waste(self, rows: int, side: str) -> None:
        assert side == self.side
        self.deeds.append(("waste", rows))

    def all_of(self, what: str, needles: list[int]) -> None:
        """A deed of many needles: hang, bind off."""
        self.deeds.append((what, *needles))

    def moved(self) -> int:
        """How many loops were moved since the last row."""
        since = max((at for at, deed in enumerate(self.deeds) if deed[0] == "knit"), default=0)
        return sum(deed[0] == "transfer" for deed in self.deeds[since:])

    def stands(self, side: str, counter: str) -> bool:
        """Whether it stands so; a counter with few digits begins anew when they are full."""
        return side == self.side and int(counter) == self.counter % 10 ** len(counter)

    def begun(self) -> int:
        """Remember the place where a block begins."""
        self.block += 1
        return len(self.deeds)

    def as_told(self, since: int, yarn: str, needles: list[int], rows: int) -> bool:
        """Whether a block was what its first sentence says: its yarn, the needles that knitted in it, its rows."""
        passes = [deed for deed in self.deeds[since:] if deed[0] == "knit"]
        knitted = {n for deed in passes for n in deed[2]}  # type: ignore[attr-defined]
        return {deed[3] for deed in passes} == {yarn} and sorted(knitted) == needles and len(passes) == rows


def sections(text: str) -> Iterator[tuple[str, list[str]]]:
    """Titles and sentences, after the title of the pattern, which is its first line."""
    title, found = "", list[str]()
    for line in text.split("\n")[1:]:
        if line.startswith("  "):
            found.append(re.sub(r"^ +\d+\. ", "", line) if re.match(r" +\d+\. ", line) else line.strip())
        elif line:
            if title:
                yield title, found
            title, found = line, []
    yield title, found


def of_size(text: str, name: str, names: list[str]) -> str:
    """A pattern in several sizes as one who knits size `name` reads it: her lists, and of "18 (20, 22)" her count.

    A list that stands under the names of sizes is for those alone, and its figures are as they stand.
    """
    mine = names.index(name)
    figure = r"(?:[LR]\d+(?:-[LR]\d+)?|\d+ \d+/\d+|\d+/\d+|\d+(?:[.,]\d+)?)"
    counts = re.compile(rf"({figure}) \(({figure}(?:, {figure}){{{len(names) - 2}}})\)")

    def count(found: re.Match[str]) -> str:
        return [found[1], *found[2].split(", ")][mine]

    head, *rest = text.split("\n")
    kept, alone, title, lines = True, False, "", [head]
    for line in rest:
        if line.startswith("["):
            kept, alone = name in line.strip("[]").split(", "), True
        elif line and not line.startswith("  "):
            kept, alone, title = True, False, line  # it stands where something of hers follows
        elif line and kept:
            lines += ["", title] if title else []
            title = ""
            lines.append(line if alone or len(names) < 2 else counts.sub(count, line))
    return "\n".join(lines)
