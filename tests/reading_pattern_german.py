"""A reader of the German pattern: from its sentences alone back to what the hands do.

It shares no code with the writer and no grammar with the reader of English. What stands for the carriage, the counter and the
positions of the needles it takes from the pattern's own list of words and signs, and the yarns from its list of yarns. In German
the verb comes last, so that a phrase is read whole before it is known what it does.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import partial

from reading_bed import NEEDLES, Bed, Deed, Signs, between, listed, number, one_of, sections

__all__ = ["read_german"]

Act = Callable[..., object]
Table = list[tuple[re.Pattern[str], Act]]
SIDES = {"links": "L", "rechts": "R"}
# What tells how, where to pause, what to see: it moves nothing.
RESTFUL = re.compile(
    r"Alle Nadeln ganz vorn in |Gute Stelle für eine Pause|Vor dem Leergang: |Alle Nadeln in .+, Garn aus dem Fadenführer: |"
    r"Den Schlitten bis knapp außerhalb von |Gewichte unter die Nadeln|Ein leichtes Gewicht oder eine Klammer|Als Nächstes: |"
    r"Die Gewichte (?:abnehmen|wieder anhängen)|Keine Schlinge auslassen|Haken und Zungen sind scharf|"
    r"\d+ Nadeln? (?:ist|sind) jetzt leer|.+, am rechten Ende, behält|.+, am rechten Ende, behalten|"
    r"Für die Innenseite die Maschenweite|Die nächste Reihe ist der Umbruch|Die Maschenweite auf die des Stücks|"
    r"Für die Reihe, die den Saum schließt|Die letzte Reihe an beiden Enden|\d+ Maschen? locker abketten, "
)


def learn(told: list[str], yarns: list[str]) -> Signs:
    """From the list of words and signs. What she calls a position herself goes before the sign for it."""
    signs: dict[str, str] = {}
    own: dict[str, str] = {}
    carriage: dict[str, str] = {}
    for line in told:
        if match := re.match(r"(\w+), (\w+): Schlitten links, Schlitten rechts\.$", line):
            carriage = {match[1]: "L", match[2]: "R"}
        elif match := re.match(
            r"(\w+): (?:der )?(Reihenzähler|Ruhestellung|Arbeitsstellung|obere Arbeitsstellung|Haltestellung)\b", line
        ):
            signs[match[2]] = match[1]
        elif match := re.match(r"(\w+) heißt an dieser Maschine (.+)\.$", line):
            own[match[1]] = match[2]
    called = {what: own.get(sign, sign) for what, sign in signs.items()}
    holding, upper = called["Haltestellung"], called["obere Arbeitsstellung"]
    # The two verbs of every row are tied to the positions there.
    assert any(line.startswith(f"Stilllegen: eine Nadel in {holding} bringen.") for line in told)
    assert any(line.startswith(f"Zurückholen: eine Nadel in {upper} bringen") for line in told)
    names = [re.fullmatch(r"(.+): \d+ Maschen?(?:, Maschenweite [\d,]+)?\.", line) for line in yarns]
    assert all(names), yarns
    return Signs(carriage, signs["Reihenzähler"], called["Arbeitsstellung"], upper, holding, [name[1] for name in names if name])


def point(figure: str) -> str:
    return figure.replace(",", ".")


class Reader:
    """The grammar of one pattern, and the bed at which it is followed."""

    def __init__(self, signs: Signs, bed: Bed) -> None:
        self.signs, self.bed = signs, bed
        self.yarn = one_of(signs.yarns)
        side = one_of([*signs.carriage])
        self.at_end = re.compile(rf"({side})\. {signs.counter} (\d+)\.$")
        self.in_row = self.row_table()
        self.alone = self.sentence_table(side)

    def row_table(self) -> Table:
        """Phrases within a row's sentence."""
        bed, holding, upper = self.bed, re.escape(self.signs.holding), re.escape(self.signs.upper)
        do = {"stilllegen": "hold", "zurückholen": "return"}
        by_hand = "den Faden von Hand unter {} hindurch und um sie herum führen"
        return [
            (re.compile(pattern, re.IGNORECASE), act)
            for pattern, act in (
                (
                    r"(\d+)(?: Nadeln?)? am Schlitten(?: und (\d+) gegenüber)? (stilllegen|zurückholen)",
                    lambda here, there, verb: bed.move(do[verb], int(here), int(there or 0)),
                ),
                (
                    r"(\d+)(?: Nadeln?)? gegenüber(?: dem Schlitten)? (stilllegen|zurückholen)",
                    lambda there, verb: bed.move(do[verb], 0, int(there)),
                ),
                (r"(\d+) Reihen? stricken", lambda rows: bed.knit(int(rows))),
                (r"Maschenweite auf (\d+(?:,\d+)?) stellen", lambda to: bed.dial(point(to))),
                (by_hand.format(r"der nächsten stillgelegten Nadel am Schlitten") + "()", lambda _: bed.wrap_next(True)),
                (
                    by_hand.format(r"der nächsten stillgelegten Nadel gegenüber dem Schlitten") + "()",
                    lambda _: bed.wrap_next(False),
                ),
                (by_hand.format(r"Nadel ([LR]\d+)"), lambda needle: bed.wrap(number(needle))),
                (rf"({NEEDLES}) in {holding} bringen", lambda which: bed.named("hold", listed(which))),
                (rf"({NEEDLES}) zurück in {upper} bringen", lambda which: bed.named("return", listed(which))),
                (
                    rf"hier am Rand ein neues Knäuel ansetzen, Garn ({self.yarn}), nie mitten in der Reihe; "
                    r"von beiden Enden 15 bis 20 cm lassen",
                    bed.join,
                ),
            )
        ]

    def sentence_table(self, side: str) -> Table:
        """Sentences of their own that do something."""
        bed, yarn, sides = self.bed, f"Garn ({self.yarn})", self.signs.carriage

        def picot(first: str, to: str, rest: str) -> None:
            moved = re.findall(r"([LR]\d+) auf [LR]\d+", rest)
            bed.picot(first, to, moved[-1] if moved else first)

        return [
            (re.compile(pattern), act)
            for pattern, act in (
                (
                    r"(?:Haltehebel|Beide Haltehebel) auf (Halten|Stricken) stellen\.",
                    lambda to: setattr(bed, "hold", to == "Halten"),
                ),
                (r"Reihenzähler auf (0+)\.", lambda _: setattr(bed, "counter", 0)),
                (rf"{yarn} abschneiden, 20 cm Fadenende lassen\.", lambda which: bed.away("cut", which)),
                (rf"{yarn} aus dem Fadenführer nehmen und .+ am Mast warten lassen\.", lambda which: bed.away("rest", which)),
                (
                    rf"Hier am Rand ein neues Knäuel ansetzen, {yarn}, nie mitten in der Reihe; "
                    r"von beiden Enden 15 bis 20 cm lassen\.",
                    bed.join,
                ),
                (rf"{yarn} einfädeln, das Garn des Anschlags\.", lambda which: bed.thread("new", which)),
                (rf"{yarn} einfädeln und das Fadenende am Rand festhalten, bis .+\.", lambda which: bed.thread("new", which)),
                (
                    rf"{yarn} einfädeln: unter dem Abstreifer hindurch, über die stillgelegten Nadeln "
                    rf"und einmal um Nadel ([LR]\d+), "
                    rf"die in {re.escape(self.signs.holding)} wartet; .+\.",
                    lambda which, needle: bed.thread("new", which, needle),
                ),
                (rf"{yarn} dort aufnehmen, wo es am Mast hängt, und einfädeln; .+\.", lambda which: bed.thread("again", which)),
                (r"Leergang nach (links|rechts): .+", lambda to: bed.free(SIDES[to])),
                (r"Leergang: Der Schlitten steht schon (links|rechts) vom Block, .+", lambda to: bed.free(SIDES[to])),
                (r"(\d+) Reihen? Hilfsgarn über alle Nadeln stricken\.", lambda rows: bed.waste(int(rows), bed.side)),
                (
                    rf"(\d+) Reihen Hilfsgarn über alle Nadeln stricken, .+ Trennfaden; am Ende ({side}), .+\.",
                    lambda rows, to: bed.waste(int(rows), sides[to]),
                ),
                (r"Die Masche jeder zweiten Nadel auf die linke Nachbarnadel hängen: ([LR]\d+) auf ([LR]\d+)(.*)\.", picot),
                (rf"Den Saum (?:hochf|f)alten: .+ auf ({NEEDLES}) hängen, auf jede Nadel eine, .+", self.all_on("hang")),
                (rf"({NEEDLES}) locker abketten\.", self.all_on("bind off")),
            )
        ]

    def lever(self, to: str) -> None:
        self.bed.hold = to == "Halten"

    def all_on(self, what: str) -> Act:
        return lambda needles: self.bed.all_of(what, listed(needles))

    def stands(self, sentence: str) -> bool:
        found = self.at_end.search(sentence)
        return found is not None and self.bed.stands(self.signs.carriage[found[1]], found[2])

    def block(self, told: list[str]) -> None:
        head = re.match(rf"({self.yarn}), auf ({NEEDLES}), (\d+) Reihen?\. Schlitten und Reihenzähler jetzt: ", told[0])
        assert head is not None, told[0]
        assert self.stands(told[0]), told[0]
        since = self.bed.begun()
        for sentence in told[1:]:
            self.follow(sentence)
        assert self.bed.as_told(since, head[1], listed(head[2]), int(head[3])), told[0]

    def acts(self, sentence: str) -> bool:
        """A sentence without rows: do it, if it does anything."""
        for pattern, act in self.alone:
            match = pattern.fullmatch(sentence)
            if match is not None:
                act(*match.groups())
                return True
        return bool(RESTFUL.match(sentence))

    def follow(self, sentence: str) -> None:
        if sentence.startswith("Prüfen: "):
            self.check(sentence)
            return
        end = self.at_end.search(sentence)
        if end is None:
            if not self.acts(sentence):
                self.follow_phrases(sentence.removesuffix("."))
            return
        words = sentence[: end.start()].strip()
        for stop in re.finditer(r"\. (?=[A-ZÄÖÜ(0-9])", words):
            if self.acts(words[: stop.start() + 1]):
                return self.follow(sentence[stop.end() :])
        whole = re.fullmatch(
            r"(\d+) Reihen? (?:nach (links|rechts) stricken|stricken, nach (links|rechts) und zurück|"
            r"stricken, die erste nach (links|rechts))\.",
            words,
        )
        if whole:
            assert SIDES[whole[2] or whole[3] or whole[4]] == self.bed.other, sentence
            self.bed.knit(int(whole[1]))
        else:
            self.follow_phrases(words.removesuffix("."))
        assert self.stands(sentence), sentence

    def check(self, sentence: str) -> None:
        """What she is told to see must be what she sees."""
        words, done = sentence.removeprefix("Prüfen: "), self.bed.deeds
        if told := re.match(rf"In Arbeit (?:nur|alle Nadeln,) ({NEEDLES})[;.]", words):
            assert listed(told[1]) == self.bed.knitting, sentence
        elif told := re.fullmatch(rf"Jede Nadel trägt zwei Schlingen, ({NEEDLES}); .+", words):
            assert ("hang", *listed(told[1])) in done[-2:], sentence
        elif told := re.fullmatch(r"(\d+) Nadeln? (?:ist|sind) leer und in .+", words):
            assert self.bed.moved() == int(told[1]), sentence
        else:
            raise ValueError(f"not understood: {sentence!r}")

    def follow_phrases(self, words: str) -> None:
        """As in "(2 Nadeln am Schlitten stilllegen, 2 Reihen stricken, 1 gegenüber stilllegen) 3 Mal (R5 bis L4)"."""
        acts, rest = self.phrases(words)
        if rest.startswith(", das Ganze "):
            times = re.match(r", das Ganze (\d+) Mal", rest)
            assert times is not None, rest
            acts, rest = acts * int(times[1]), rest[times.end() :]
        if rest and not re.fullmatch(r" \(.+\)", rest):
            raise ValueError(f"not understood: {rest!r} of {words!r}")
        for act in acts:
            act()

    def phrases(self, words: str) -> tuple[list[Callable[[], object]], str]:
        """Phrases between commas as far as they go, and what is left of the words."""
        found, words = self.phrase(words)
        while words.startswith(", ") and not words.startswith(", das Ganze "):
            more, words = self.phrase(words[2:])
            found += more
        return found, words

    def phrase(self, words: str) -> tuple[list[Callable[[], object]], str]:
        if words.startswith("("):
            inside, rest = self.phrases(words[1:])
            times = re.match(r"\) (\d+) Mal", rest)
            if times is None:
                raise ValueError(f"no number of times: {rest!r}")
            return inside * int(times[1]), rest[times.end() :]
        for pattern, act in self.in_row:
            match = pattern.match(words)
            if match is not None:
                return [partial(act, *match.groups())], words[match.end() :]
        raise ValueError(f"not understood: {words!r}")


def read_german(text: str) -> list[Deed]:
    """All deeds of a German pattern that begins with a cast-on."""
    yarns: list[str] = []
    signs: Signs | None = None
    reader: Reader | None = None
    for title, told in sections(text):
        if reader is None and title == "Garne":
            yarns = told
        elif reader is None and title == "Wörter und Zeichen":
            signs = learn(told, yarns)
        elif reader is None and title == "Anfang":
            assert signs is not None
            page = "\n".join(told)
            (ends,) = re.findall(rf"^([LR]\d+) bis ([LR]\d+) in {re.escape(signs.working)} bringen: ", page, re.MULTILINE)
            (side,) = re.findall(rf"; am Ende ({one_of([*signs.carriage])})\.$", page, re.MULTILINE)
            reader = Reader(signs, Bed(between(*map(number, ends)), signs.carriage[side]))
        elif reader is not None and title == "Von der Maschine":
            for sentence in told:
                reader.follow(sentence)
            return reader.bed.deeds
        elif reader is not None:
            reader.block(told)
    raise ValueError("eine Anleitung ohne Ende")
