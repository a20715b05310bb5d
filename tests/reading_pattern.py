"""A reader of the written pattern: from its sentences alone back to what the hands do.

It shares no code with the writer, only the language of the trade, on either side of the sea. What stands for the carriage, the
counter and the positions of the needles it takes from the pattern's own list of words and signs, and the yarns from its list of
yarns. It refuses a pattern that says one thing and means another.
"""

from __future__ import annotations

import re
from collections.abc import Callable

from reading_bed import NEEDLES, Bed, Deed, Signs, between, listed, number, of_size, one_of, sections

__all__ = ["Deed", "of_size", "read_pattern"]

Do = Callable[[Bed], object]
SIDES = {"left": "L", "right": "R"}
TIMES = re.compile(r"(twice|(\d+) times)")
# What tells a person how, where to stop or what to look at, and moves nothing.
IDLE = re.compile(
    r"Every needle fully forward|Good place to stop|Before the free pass|Every needle in .+, yarn out of the feeder|"
    r"Move the carriage until|Weights under|One light weight|Next: |Take the weights off|Hang the weights again|Skip no loop|"
    r"Hooks and latches|.+ needles? (?:is|are) empty now|.+, at the right end, keeps? |For the facing set|"
    r"The next row is the fold|Set the tension, T, back|For the row that closes|Mark the last row|"
    r"(?:Bind|Cast) off \d+ stitch(?:es)? loosely, at the"
)


def signs_of(told: list[str], yarns: list[str]) -> Signs:
    """From the list of words and signs; a person's own name of a position stands in it too, and goes before the sign."""
    page = "\n".join(told)

    def the(pattern: str) -> str:
        (found,) = re.findall(rf"^{pattern}", page, re.MULTILINE)
        return str(found)

    def position(words: str) -> str:
        sign = the(rf"([A-Z]+): {words}")
        own = re.findall(rf"^{sign} is called (.+) on this machine\.$", page, re.MULTILINE)
        return own[0] if own else sign

    left = the(r"([A-Z]+), [A-Z]+: the carriage stands on the left, on the right\.")
    right = the(rf"{left}, ([A-Z]+): the carriage")
    upper = position("upper working position")
    assert f"Return a needle only to {upper}: " in page
    holding = position("holding position")
    assert f"Hold a needle: push it to {holding}." in told
    names = [re.fullmatch(r"(.+): \d+ stitch(?:es)?(?:, tension T [\d.]+)?\.", line) for line in yarns]
    assert all(names), yarns
    return Signs(
        {left: "L", right: "R"},
        the("([A-Z]+): the row counter"),
        position("working position"),
        upper,
        holding,
        [name[1] for name in names if name],
    )


class Phrase:
    """Recursive descent over "(hold 1 needle at the carriage, knit 2 rows, hold 2 opposite, knit 1 row) 3 times"."""

    def __init__(self, words: str, phrases: list[tuple[re.Pattern[str], Callable[..., Do]]]) -> None:
        self.words, self.phrases, self.at = words, phrases, 0

    def several(self) -> list[Do]:
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

    def one(self) -> list[Do]:
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
        for pattern, do in self.phrases:
            match = pattern.match(self.words, self.at)
            if match is not None:
                self.at = match.end()
                return [do(*match.groups())]
        raise ValueError(f"not understood: {self.words[self.at :]!r}")


def phrases(signs: Signs) -> list[tuple[re.Pattern[str], Callable[..., Do]]]:
    """What is counted from the carriage, and what is named within a row's sentence."""
    holding, upper, yarn = re.escape(signs.holding), re.escape(signs.upper), one_of(signs.yarns)

    def moved(do: str, count: str, where: str, opposite: str | None) -> Do:
        counts = (int(count), int(opposite or 0)) if where.startswith("at") else (0, int(count))
        return lambda bed: bed.move("hold" if do.lower() == "hold" else "return", *counts)

    found: list[tuple[str, Callable[..., Do]]] = [
        (r"knit (\d+) rows?(?! of waste)", lambda rows: lambda bed: bed.knit(int(rows))),
        (
            r"pass the yarn by hand under and round the next held needle (at|opposite) the carriage",
            lambda where: lambda bed: bed.wrap_next(where == "at"),
        ),
        (
            r"(hold|return) (\d+)(?: needles?)? (at the carriage|opposite)(?: the carriage)?(?: and (\d+) opposite(?: it)?)?",
            moved,
        ),
        (r"set the tension, T, to (\d+(?:\.\d+)?)", lambda to: lambda bed: bed.dial(to)),
        (rf"push ({NEEDLES}) to {holding}", lambda which: lambda bed: bed.named("hold", listed(which))),
        (rf"return ({NEEDLES}) to {upper}", lambda which: lambda bed: bed.named("return", listed(which))),
        (r"pass the yarn by hand under and round ([LR]\d+)", lambda needle: lambda bed: bed.wrap(number(needle))),
        (
            rf"join a new ball of ({yarn}) here, [^,]+, [^,]+, with 15 to 20 cm of both ends",
            lambda ball: lambda bed: bed.join(ball),
        ),
    ]
    return [(re.compile(pattern, re.IGNORECASE), do) for pattern, do in found]


def picot(bed: Bed, first: str, to: str, rest: str) -> None:
    moved = re.findall(r"([LR]\d+) to [LR]\d+", rest)
    bed.picot(first, to, moved[-1] if moved else first)


def sentences(signs: Signs) -> list[tuple[re.Pattern[str], Callable[..., object]]]:
    """Whole sentences that do something."""
    sides, yarn = one_of([*signs.carriage]), f"({one_of(signs.yarns)})"
    # A name with a full stop at its end needs no second one.
    holding, upper = (re.escape(name.removesuffix(".")) + r"\.+" for name in (signs.holding, signs.upper))
    found: list[tuple[str, Callable[..., object]]] = [
        (r"Set (?:the hold lever|both hold levers) to (hold|knit)\.", lambda bed, to: setattr(bed, "hold", to == "hold")),
        (r"Counter to (0+)\.", lambda bed, _: setattr(bed, "counter", 0)),
        (rf"Push ({NEEDLES}) to {holding}", lambda bed, which: bed.named("hold", listed(which))),
        (rf"Return ({NEEDLES}) to {upper}", lambda bed, which: bed.named("return", listed(which))),
        (rf"Cut {yarn}, leaving a tail of 20 cm\.", lambda bed, which: bed.away("cut", which)),
        (rf"Take {yarn} out of the feeder and let it rest on the mast, uncut\.", lambda bed, which: bed.away("rest", which)),
        (
            rf"Join a new ball of {yarn} here, at the edge, never in the middle of a row, with 15 to 20 cm of both ends\.",
            lambda bed, which: bed.join(which),
        ),
        (rf"Thread {yarn}, the yarn of the cast-on\.", lambda bed, which: bed.thread("new", which)),
        (rf"Thread {yarn} and hold its tail down at the edge until .+\.", lambda bed, which: bed.thread("new", which)),
        (
            rf"Thread {yarn}: under the sinker plate, over the held needles and once round ([LR]\d+), "
            rf"which waits in {re.escape(signs.holding)}; .+\.",
            lambda bed, which, needle: bed.thread("new", which, needle),
        ),
        (
            rf"Take up {yarn} where it hangs on the mast and thread it; leave no slack\.",
            lambda bed, which: bed.thread("again", which),
        ),
        (r"Free pass to the (left|right): .+", lambda bed, side: bed.free(SIDES[side])),
        (r"Free pass: the carriage stands (left|right) of the block already, .+", lambda bed, side: bed.free(SIDES[side])),
        (r"Set the tension, T, to ([\d.]+)\.", lambda bed, to: bed.dial(to)),
        (r"Knit (\d+) rows? of waste yarn over every needle\.", lambda bed, rows: bed.waste(int(rows), bed.side)),
        (
            rf"Knit (\d+) rows of waste yarn .+ ravel cord, end ({sides}) and .+\.",
            lambda bed, rows, side: bed.waste(int(rows), signs.carriage[side]),
        ),
        (r"Move the stitch of every second needle .+: ([LR]\d+) to ([LR]\d+)(.*)\.", picot),
        (rf"Fold the hem up: .+ on ({NEEDLES}), one on each needle .+", lambda bed, on: bed.all_of("hang", listed(on))),
        (rf"Fold the hem: hang .+ on ({NEEDLES}), one on each needle .+", lambda bed, on: bed.all_of("hang", listed(on))),
        (rf"(?:Bind|Cast) off ({NEEDLES}) loosely\.", lambda bed, on: bed.all_of("bind off", listed(on))),
    ]
    return [(re.compile(pattern), do) for pattern, do in found]


class Reader:
    """Follows the sentences of one pattern at her bed."""

    def __init__(self, signs: Signs, bed: Bed) -> None:
        self.signs, self.bed = signs, bed
        self.phrases, self.sentences = phrases(signs), sentences(signs)
        self.end = re.compile(rf"({one_of([*signs.carriage])})\. {signs.counter} (\d+)\.$")
        holding = re.escape(signs.holding.removesuffix(".")) + r"\.+"
        self.only = re.compile(rf"Check: Only ({NEEDLES}) will knit; every other needle is in {holding}")

    def known(self, sentence: str) -> bool:
        """Whether it is a sentence of its own before rows."""
        return bool(IDLE.match(sentence)) or any(pattern.fullmatch(sentence) for pattern, _ in self.sentences)

    def stands(self, sentence: str) -> bool:
        """Whether carriage and counter stand as the end of the sentence says."""
        end = self.end.search(sentence)
        return end is not None and self.bed.stands(self.signs.carriage[end.group(1)], end.group(2))

    def block(self, told: list[str]) -> None:
        """A block: what it is, what to do, and whether it was what it is."""
        yarn = one_of(self.signs.yarns)
        begun = re.match(rf"({yarn}), needles ({NEEDLES}), (\d+) rows?\. Carriage and counter now: ", told[0])
        assert begun is not None, told[0]
        assert self.stands(told[0]), told[0]
        since = self.bed.begun()
        for sentence in told[1:]:
            self.follow(sentence)
        assert self.bed.as_told(since, begun[1], listed(begun[2]), int(begun[3])), told[0]

    def follow(self, sentence: str) -> None:
        """One sentence of a block."""
        bed = self.bed
        if sentence.startswith("Check: "):
            self.check(sentence)
            return
        for pattern, do in self.sentences:
            match = pattern.fullmatch(sentence)
            if match is not None:
                do(bed, *match.groups())
                return
        end = self.end.search(sentence)
        for first in re.finditer(r"\. (?=[A-Z(])", sentence):
            if end is not None and first.end() < end.start() and self.known(sentence[: first.start() + 1]):
                self.follow(sentence[: first.start() + 1])
                return self.follow(sentence[first.end() :])
        if IDLE.match(sentence):
            return
        if end is None:
            raise ValueError(f"not understood: {sentence!r}")
        self.rows(sentence[: end.start()].strip(), sentence)
        assert self.stands(sentence), sentence

    def check(self, sentence: str) -> None:
        """What she is told to see must be what she sees."""
        only = self.only.fullmatch(sentence) or re.fullmatch(rf"Check: Every needle will knit, ({NEEDLES})\.", sentence)
        layers = re.fullmatch(rf"Check: Each needle carries two loops, ({NEEDLES}); the next row .+", sentence)
        empty = re.fullmatch(r"Check: (\d+) needles? (?:is|are) empty and in .+", sentence)
        if only:
            assert listed(only.group(1)) == self.bed.knitting, sentence
        elif layers:
            assert ("hang", *listed(layers.group(1))) in self.bed.deeds[-2:], sentence
        elif empty:
            assert self.bed.moved() == int(empty.group(1)), sentence
        else:
            raise ValueError(f"not understood: {sentence!r}")

    def rows(self, words: str, sentence: str) -> None:
        begun = re.fullmatch(r"Knit (\d+) rows?(?: to the (\w+)|, to the (\w+) and back|, the first to the (\w+))\.", words)
        if begun is not None:
            side = next(word for word in begun.groups()[1:] if word)
            assert SIDES[side] == self.bed.other, sentence
            self.bed.knit(int(begun.group(1)))
            return
        phrase = Phrase(words.rstrip("."), self.phrases)
        deeds = phrase.several()
        rest = phrase.words[phrase.at :]
        assert rest == "" or re.fullmatch(r" \(.+\)", rest), rest
        for do in deeds:
            do(self.bed)


def read_pattern(text: str) -> list[Deed]:
    """All deeds of a pattern that begins with a cast-on."""
    signs: Signs | None = None
    reader: Reader | None = None
    yarns: list[str] = []
    for title, told in sections(text):
        if title == "Yarns" and reader is None:
            yarns = told
        elif title == "Words and signs" and reader is None:
            signs = signs_of(told, yarns)
        elif title == "Start" and reader is None:
            assert signs is not None
            page = "\n".join(told)
            (needles,) = re.findall(rf"^Bring ([LR]\d+) to ([LR]\d+) to {re.escape(signs.working)}: ", page, re.MULTILINE)
            (side,) = re.findall(rf"end ({one_of([*signs.carriage])})\.$", page, re.MULTILINE)
            reader = Reader(signs, Bed(between(*map(number, needles)), signs.carriage[side]))
        elif title == "Off the machine" and reader is not None:
            for sentence in told:
                reader.follow(sentence)
            return reader.bed.deeds
        elif reader is not None:
            reader.block(told)
    raise ValueError("a pattern without an end")
