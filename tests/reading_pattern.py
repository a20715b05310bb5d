"""A reader of the written pattern: from its sentences alone back to what the hands do.

It shares no code with the writer, only the language of the trade. What it finds is a list of deeds: every pass with the needles
that knit, every end of yarn, every loop that is moved; and it refuses a pattern that says one thing and means another.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field

Deed = tuple[object, ...]
SIDES = {"left": "L", "right": "R"}
END = re.compile(r"(COL|COR)\. RC (\d+)\.")
TIMES = re.compile(r"(twice|(\d+) times)")
NEEDLES = r"[LR]\d+(?:-[LR]\d+)?(?:, [LR]\d+(?:-[LR]\d+)?)*"


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


@dataclass
class Bed:
    """What the reader has in front of her."""

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

    def knit(self) -> None:
        to = "L" if self.side == "R" else "R"
        self.counter += 1
        self.deeds.append(("knit", to, tuple(self.knitting), self.yarn, self.block, self.counter))
        if not self.hold:
            self.held.clear()
        self.side = to

    def outermost(self, count: int, side: str) -> list[int]:
        """The last knitting needles on a side."""
        return (self.knitting[:count] if side == "L" else self.knitting[len(self.knitting) - count :]) if count else []

    def next_held(self, count: int, side: str) -> list[int]:
        """The held needles next to those that knit."""
        first, last = self.knitting[0], self.knitting[-1]
        beyond = [n for n in self.needles if n < first][::-1] if side == "L" else [n for n in self.needles if n > last]
        return beyond[:count]

    def at(self, where: str) -> str:
        """The side that is at the carriage, or opposite it."""
        here = where.startswith("at")
        return self.side if here else ("L" if self.side == "R" else "R")


# --- phrases: what is counted from the carriage -------------------------------------------------------------------

MOVE = re.compile(
    r"(hold|return) (\d+)(?: needles?)? (at the carriage|opposite)(?: the carriage)?(?: and (\d+) opposite(?: it)?)?",
    re.IGNORECASE,
)
KNIT = re.compile(r"knit (\d+) rows?(?! of waste)", re.IGNORECASE)
TENSION = re.compile(r"set the tension, T, to (\d+(?:\.\d+)?)", re.IGNORECASE)
BY_HAND = re.compile(r"pass the yarn by hand under and round the next held needle (at|opposite) the carriage", re.IGNORECASE)
NAMED = (
    (re.compile(rf"push ({NEEDLES}) to HP", re.IGNORECASE), "hold"),
    (re.compile(rf"return ({NEEDLES}) to UWP", re.IGNORECASE), "return"),
    (re.compile(r"pass the yarn by hand under and round ([LR]\d+)", re.IGNORECASE), "wrap"),
)


class Phrase:
    """Recursive descent over "(hold 1 needle at the carriage, knit 2 rows, hold 2 opposite, knit 1 row) 3 times"."""

    def __init__(self, words: str) -> None:
        self.words, self.at = words, 0

    def several(self) -> list[Callable[[Bed], None]]:
        found = self.one()
        while self.words.startswith(", ", self.at):
            mark = self.at
            self.at += 2
            times = self.times()
            if times is not None:
                found = found * times
                continue
            try:
                found += self.one()
            except ValueError:
                self.at = mark
                break
        return found

    def times(self) -> int | None:
        match = TIMES.match(self.words, self.at)
        if match is None:
            return None
        self.at = match.end()
        return int(match.group(2) or 2)

    def one(self) -> list[Callable[[Bed], None]]:
        if self.words.startswith("(", self.at):
            self.at += 1
            inside = self.several()
            if not self.words.startswith(") ", self.at):
                raise ValueError(self.words[self.at :])
            self.at += 2
            times = self.times()
            if times is None:
                raise ValueError(self.words[self.at :])
            return inside * times
        for pattern, do in ((KNIT, knitted), (BY_HAND, by_hand), (MOVE, moved), (TENSION, dialled)):
            match = pattern.match(self.words, self.at)
            if match is not None:
                self.at = match.end()
                return [do(match)]
        for pattern, kind in NAMED:
            match = pattern.match(self.words, self.at)
            if match is not None:
                self.at = match.end()
                return [named(kind, listed(match.group(1)))]
        raise ValueError(f"not understood: {self.words[self.at :]!r}")


def knitted(match: re.Match[str]) -> Callable[[Bed], None]:
    def do(bed: Bed) -> None:
        for _ in range(int(match.group(1))):
            bed.knit()

    return do


def dialled(match: re.Match[str]) -> Callable[[Bed], None]:
    return lambda bed: dial(bed, match.group(1))


def by_hand(match: re.Match[str]) -> Callable[[Bed], None]:
    return lambda bed: bed.deeds.append(("wrap", *bed.next_held(1, bed.at(match.group(1)))))


def moved(match: re.Match[str]) -> Callable[[Bed], None]:
    def do(bed: Bed) -> None:
        counts = [(int(match.group(2)), match.group(3)), (int(match.group(4) or 0), "opposite")]
        if match.group(1).lower() == "hold":
            bed.held.update([n for count, where in counts for n in bed.outermost(count, bed.at(where))])
        else:
            bed.held.difference_update([n for count, where in counts for n in bed.next_held(count, bed.at(where))])

    return do


def named(kind: str, needles: list[int]) -> Callable[[Bed], None]:
    if kind == "wrap":
        return lambda bed: bed.deeds.append(("wrap", needles[0]))
    return lambda bed: bed.held.update(needles) if kind == "hold" else bed.held.difference_update(needles)


# --- whole sentences ----------------------------------------------------------------------------------------------


def lever(bed: Bed, to: str) -> None:
    bed.hold = to == "hold"


def thread(bed: Bed, how: str, yarn: str, needle: str | None = None) -> None:
    bed.yarn = yarn
    bed.deeds.append(("thread", how, yarn, number(needle) if needle else None))


def away(bed: Bed, how: str, yarn: str) -> None:
    assert yarn == bed.yarn
    bed.yarn = ""
    bed.deeds.append((how, yarn))


def dial(bed: Bed, tension: str) -> None:
    """To set it to where it stands is no deed."""
    if tension != bed.tension:
        bed.deeds.append(("tension", tension))
    bed.tension = tension


def free(bed: Bed, side: str) -> None:
    bed.side = SIDES[side]
    bed.deeds.append(("free", bed.side))


def picot(bed: Bed, first: str, to: str, rest: str) -> None:
    """Every second stitch to its left neighbour, up to the last one told."""
    last = number(re.findall(r"([LR]\d+) to [LR]\d+", rest)[-1]) if rest else number(first)
    every = [n for n in bed.needles if number(first) <= n <= last]
    assert bed.needles[bed.needles.index(number(first)) - 1] == number(to)
    for n in every[::2]:
        bed.deeds.append(("transfer", n, bed.needles[bed.needles.index(n) - 1]))


def waste(bed: Bed, rows: str, side: str | None = None) -> None:
    assert side in (None, f"CO{bed.side}")
    bed.deeds.append(("waste", int(rows)))


SENTENCES: list[tuple[str, Callable[..., object]]] = [
    (r"Set (?:the hold lever|both hold levers) to (hold|knit)\.", lever),
    (r"Counter to (0+)\.", lambda bed, _: setattr(bed, "counter", 0)),
    (rf"Push ({NEEDLES}) to HP\.", lambda bed, needles: bed.held.update(listed(needles))),
    (rf"Return ({NEEDLES}) to UWP\.", lambda bed, needles: bed.held.difference_update(listed(needles))),
    (r"Cut (.+), leaving a tail of 20 cm\.", lambda bed, yarn: away(bed, "cut", yarn)),
    (r"Take (.+) out of the feeder and let it rest on the mast, uncut\.", lambda bed, yarn: away(bed, "rest", yarn)),
    (r"Thread (.+), the yarn of the cast-on\.", lambda bed, yarn: thread(bed, "new", yarn)),
    (r"Thread (.+) and hold its tail down at the edge until .+\.", lambda bed, yarn: thread(bed, "new", yarn)),
    (
        r"Thread (.+): under the sinker plate, over the held needles and once round ([LR]\d+), which waits in HP; .+\.",
        lambda bed, yarn, needle: thread(bed, "new", yarn, needle),
    ),
    (r"Take up (.+) where it hangs on the mast and thread it; leave no slack\.", lambda bed, yarn: thread(bed, "again", yarn)),
    (r"Free pass to the (left|right): .+", free),
    (r"Free pass: the carriage stands (left|right) of the block already, .+", free),
    (r"Set the tension, T, to ([\d.]+)\.", dial),
    (r"Knit (\d+) rows? of waste yarn over every needle\.", waste),
    (r"Knit (\d+) rows of waste yarn .+ ravel cord, end (CO[LR]) and .+\.", waste),
    (r"Move the stitch of every second needle .+: ([LR]\d+) to ([LR]\d+)(.*)\.", picot),
    (rf"Fold the hem up: .+ on ({NEEDLES}), one on each needle .+", lambda bed, on: bed.deeds.append(("hang", *listed(on)))),
    (rf"Fold the hem: hang .+ on ({NEEDLES}), one on each needle .+", lambda bed, on: bed.deeds.append(("hang", *listed(on)))),
    (rf"(?:Bind|Cast) off ({NEEDLES}) loosely\.", lambda bed, on: bed.deeds.append(("bind off", *listed(on)))),
]
# What tells a person how, where to stop or what to look at, and moves nothing.
IDLE = re.compile(
    r"Every needle fully forward|Good place to stop|Before the free pass|Every needle in HP, yarn out of the feeder|"
    r"Move the carriage until|Weights under|One light weight|Next: |Take the weights off|Hang the weights again|Skip no loop|"
    r"Hooks and latches|.+ needles? (?:is|are) empty now|.+, at the right end, keeps? |For the facing set|"
    r"The next row is the fold|Set the tension, T, back|For the row that closes|Mark the last row"
)


def known(sentence: str) -> bool:
    """Whether it is a sentence of its own before rows."""
    return bool(IDLE.match(sentence)) or any(re.fullmatch(pattern, sentence) for pattern, _ in SENTENCES)


def follow(bed: Bed, sentence: str) -> None:
    """One sentence of a block."""
    only = re.fullmatch(rf"Check: Only ({NEEDLES}) will knit; every other needle is in HP\.", sentence)
    every = re.fullmatch(rf"Check: Every needle will knit, ({NEEDLES})\.", sentence)
    if only or every:
        assert listed((only or every).group(1)) == bed.knitting, sentence  # type: ignore[union-attr]
        return
    if sentence.startswith("Check: "):
        return
    for pattern, do in SENTENCES:
        match = re.fullmatch(pattern, sentence)
        if match is not None:
            do(bed, *match.groups())
            return
    end = END.search(sentence)
    first = re.match(r"(.+?\.) (?=[A-Z(])", sentence)
    if end is not None and first is not None and first.end() < end.start() and known(first.group(1)):
        follow(bed, first.group(1))
        return follow(bed, sentence[first.end() :])
    if IDLE.match(sentence):
        return
    if end is None:
        raise ValueError(f"not understood: {sentence!r}")
    words = sentence[: end.start()].strip()
    begun = re.fullmatch(r"Knit (\d+) rows?(?: to the (\w+)|, to the (\w+) and back|, the first to the (\w+))\.", words)
    if begun is not None:
        side = next(word for word in begun.groups()[1:] if word)
        assert SIDES[side] != bed.side, sentence
        for _ in range(int(begun.group(1))):
            bed.knit()
    else:
        phrase = Phrase(words.rstrip("."))
        deeds = phrase.several()
        rest = phrase.words[phrase.at :]
        assert rest == "" or re.fullmatch(r" \(.+\)", rest), rest
        for do in deeds:
            do(bed)
    assert (end.group(1), int(end.group(2))) == (f"CO{bed.side}", bed.counter), sentence


def sections(text: str) -> Iterator[tuple[str, list[str]]]:
    """Titles and sentences; the first title is that of the pattern."""
    title, found = "", list[str]()
    for line in text.splitlines():
        if line.startswith("  "):
            found.append(re.sub(r"^ +\d+\. ", "", line) if re.match(r" +\d+\. ", line) else line.strip())
        elif line:
            if title:
                yield title, found
            title, found = line, []
    yield title, found


def read_pattern(text: str) -> list[Deed]:
    """All deeds of a pattern that begins with a cast-on."""
    bed: Bed | None = None
    for title, sentences in sections(text):
        if title == "Start":
            told = " ".join(sentences)
            (needles,) = re.findall(r"Bring ([LR]\d+) to ([LR]\d+) to WP", told)
            (side,) = re.findall(r"end CO([LR])\.", told)
            bed = Bed(between(*map(number, needles)), side)
        elif title == "Off the machine" and bed is not None:
            for sentence in sentences:
                follow(bed, sentence)
            return bed.deeds
        elif bed is not None:
            where = END.search(sentences[0])
            assert where is not None
            assert where.group(1) == f"CO{bed.side}", sentences[0]
            bed.block += 1
            for sentence in sentences[1:]:
                follow(bed, sentence)
    raise ValueError("a pattern without an end")


def of_size(text: str, name: str, names: list[str]) -> str:
    """A pattern in several sizes as one who knits size `name` reads it: her lists, and of "18 (20, 22)" her count."""
    mine = names.index(name)
    figure = r"(?:[LR]\d+(?:-[LR]\d+)?|\d+ \d+/\d+|\d+/\d+|\d+(?:\.\d+)?)"
    counts = re.compile(rf"({figure}) \(({figure}(?:, {figure}){{{len(names) - 2}}})\)")

    def count(found: re.Match[str]) -> str:
        return [found[1], *found[2].split(", ")][mine]

    kept, title, lines = True, "", list[str]()
    for line in text.splitlines():
        if line.startswith("["):
            kept = name in line.strip("[]").split(", ")
        elif line and not line.startswith("  "):
            kept, title = True, line  # it stands where something of hers follows
        elif line and kept:
            lines += ["", title] if title else []
            title = ""
            lines.append(counts.sub(count, line))
    return "\n".join(lines)
