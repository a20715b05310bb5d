"""Small parts of sentences: needles by name, sides, counts, and one phrase for each kind of step."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass

from wedgework.bed import Side, name, place, range_name
from wedgework.formats.design import Design
from wedgework.formats.plan import (
    BindOff,
    CastOn,
    Cut,
    Free,
    Hang,
    Hold,
    Join,
    Knit,
    Plan,
    Remind,
    Rest,
    Set,
    Step,
    Thread,
    Transfer,
    Waste,
    Weigh,
    Work,
    Wrap,
)
from wedgework.say import has, say, say_n
from wedgework.units import short_decimal
from wedgework.words.grouping import Literally, Move
from wedgework.words.walk import Bed

__all__ = ["Speaker", "cast_on_yarn", "needle_list", "ordinal", "position_sign", "runs", "sentence"]


def sentence(phrase: str) -> str:
    """A phrase with a capital and a full stop."""
    first = next((i for i, letter in enumerate(phrase) if letter not in "("), 0)
    whole = phrase[:first] + phrase[first : first + 1].upper() + phrase[first + 1 :]
    return whole if whole.endswith((".", "!", "?")) else whole + "."


def ordinal(n: int) -> str:
    """1st, 2nd, 3rd, 4th, 11th, 21st."""
    last = n % 10
    key = str(last) if last in (1, 2, 3) and n % 100 not in (11, 12, 13) else "other"
    return say(f"words.ordinal-{key}", n=n)


def runs(needles: Iterable[int]) -> tuple[tuple[int, int], ...]:
    """Needles as runs of neighbours: first and last of each, left to right."""
    found: list[tuple[int, int]] = []
    for needle in sorted(set(needles)):
        if found and place(needle) == place(found[-1][1]) + 1:
            found[-1] = (found[-1][0], needle)
        else:
            found.append((needle, needle))
    return tuple(found)


def needle_list(needles: Iterable[int]) -> str:
    """L15, L14 for a few needles, L24-L3 for more than three neighbours; from left to right."""
    parts: list[str] = []
    for first, last in runs(needles):
        count = place(last) - place(first) + 1
        parts += [name(n) for n in range(first, last + 1) if n] if count < 4 else [range_name(first, last)]
    return ", ".join(parts)


def position_sign(which: str) -> str:
    """HP, UWP, WP or NWP for ``holding``, ``upper-working``, ``working``, ``non-working``."""
    keys = {"holding": "words.hp", "upper-working": "words.uwp", "working": "words.wp", "non-working": "words.nwp"}
    return say(keys[which])


def cast_on_yarn(plan: Plan) -> str:
    """The yarn id of the first rows, which is also that of a closed cast-on."""
    return plan.edges.base_yarn_bottom or next((block.yarn for block in plan.blocks), "")


@dataclass(frozen=True, slots=True)
class Speaker:
    """Speaks of one design: its yarns by name, its needle positions by the person's own words."""

    design: Design
    cast_on_yarn: str = ""
    """Yarn id of a closed cast-on; its end goes on into the feeder."""

    @classmethod
    def of(cls, plan: Plan) -> Speaker:
        """The speaker of a plan."""
        return cls(plan.design, cast_on_yarn(plan) if plan.edges.cast_on == "closed" else "")

    def yarn(self, yarn_id: str) -> str:
        """The yarn's name; where another has the same name, with its number among the yarns."""
        name = self.yarn_name(yarn_id)
        if sum(yarn.name == name for yarn in self.design.yarns) < 2:
            return name
        number = next(i for i, yarn in enumerate(self.design.yarns, 1) if yarn.id == yarn_id)
        return say("words.yarn-alike", name=name, number=number)

    def yarn_name(self, yarn_id: str) -> str:
        """The name as the person wrote it."""
        return next((yarn.name for yarn in self.design.yarns if yarn.id == yarn_id), yarn_id)

    def position(self, which: str) -> str:
        """The person's own word for ``holding``, ``upper-working``, ``working`` or ``non-working``, else HP, UWP, WP, NWP."""
        return self.design.bed.machine.position_names.get(which) or position_sign(which)

    def tension(self, yarn_id: str) -> list[str]:
        """The yarn's own tension as a sentence; none where it has none."""
        found = next((yarn.tension for yarn in self.design.yarns if yarn.id == yarn_id), None)
        return [] if found is None else [sentence(say("words.step-tension", tension=short_decimal(found, 2)))]

    def counter(self, rows: int) -> str:
        """What the counter reads after so many rows of a block."""
        digits = self.design.bed.machine.counter_digits
        return str(rows % 10**digits).zfill(digits)

    def where(self, bed: Bed, block_row: int | None = None) -> str:
        """COR. RC 024."""
        rows = bed.block_row if block_row is None else block_row
        return say("words.where", side=self.standing(bed.carriage), counter=self.counter(rows))

    def standing(self, side: Side) -> str:
        """COL or COR."""
        return say("words.col" if side == "L" else "words.cor")

    def side(self, side: Side) -> str:
        """left or right."""
        return say(f"words.side-{side}")

    def knit(self, rows: int, to: Side) -> str:
        """Knit 1 row to the left."""
        key = {1: "words.knit-one", 2: "words.knit-two"}.get(rows, "words.knit-many")
        return say(key, n=rows, side=self.side(to))

    def move(self, move: Move | Literally, bed: Bed | None = None, *, short: bool = False) -> str:
        """A move counted from the carriage, as a phrase; `short` where a move before it named the needles."""
        if isinstance(move, Literally):
            return self.step(move.step, bed)
        where = "both" if move.carriage and move.opposite else "carriage" if move.carriage else "opposite"
        key = f"words.move-{move.do}-{where}"
        if move.do == "wrap":
            return say(key)
        if short:
            return say(f"{key}-short", n=move.carriage or move.opposite, other=move.opposite)
        return say_n(key, move.carriage or move.opposite, other=move.opposite)

    def moves(self, moves: Sequence[Move | Literally], bed: Bed | None = None, *, short: bool = False) -> list[str]:
        """Several moves of one sentence: only the first counted one names the needles."""
        said = []
        for move in moves:
            said.append(self.move(move, bed, short=short))
            short = short or isinstance(move, Move)
        return said

    def step(self, step: Step, bed: Bed | None = None, clear_of: int | None = None) -> str:
        """Any step as a phrase. `bed` is the bed before it; `clear_of` the needle a free pass has to leave behind."""
        match step:
            case Set():
                return ", ".join(self._settings(step))
            case Thread(yarn=yarn, around=around):
                if around is not None:
                    held = self.position("holding")
                    return say("words.step-thread-inside", yarn=self.yarn(yarn), needle=name(around), position=held)
                again = bed is not None and yarn in bed.resting
                first = bed is not None and not bed.row and not again and yarn == self.cast_on_yarn
                which = "again" if again else "first" if first else "edge"
                return say(f"words.step-thread-{which}", yarn=self.yarn(yarn))
            case Cut():
                return say("words.step-cut", yarn=self.yarn(bed.yarn if bed else ""))
            case Rest():
                return say("words.step-rest", yarn=self.yarn(bed.yarn if bed else ""))
            case Join():
                return say("words.step-join", yarn=self.yarn(bed.yarn if bed else ""))
            case Hold(needles=needles):
                return say("words.step-hold", needles=needle_list(needles), position=self.position("holding"))
            case Work(needles=needles):
                return say("words.step-work", needles=needle_list(needles), position=self.position("upper-working"))
            case Knit(to=to):
                return say("words.step-knit", side=self.side(to))
            case Free(to=to):
                beyond = clear_of if clear_of is not None else self._end(bed, to)
                return say("words.step-free", side=self.side(to), needle=name(beyond))
            case Wrap(needle=needle):
                return say("words.step-wrap", needle=name(needle))
            case Transfer(from_needle=first, to_needle=second):
                return say("words.step-transfer", first=name(first), second=name(second), position=self.position("working"))
            case Hang(needles=needles):
                return say_n("words.step-hang", len(needles), needles=needle_list(needles))
            case CastOn(needles=needles):
                return say_n("words.step-cast-on", len(needles), needles=needle_list(needles))
            case Waste(rows=rows):
                if rows > 1 and bed is not None:
                    return say("words.step-waste-cord", n=rows, side=self.standing(bed.carriage))
                return say_n("words.step-waste", rows)
            case BindOff(needles=needles):
                return say("words.step-bind-off", needles=needle_list(needles))
            case Weigh(needles=needles):
                return say("words.step-weigh", needles=needle_list(needles))
            case Remind(about=about):
                key = f"words.remind-{about}"
                return say(key) if has(key) else say("words.step-remind", about=about)

    def _end(self, bed: Bed | None, side: Side) -> int:
        if bed is None:
            raise ValueError("a free pass cannot be spoken of without its bed")
        return bed.needles[0] if side == "L" else bed.needles[-1]

    def _settings(self, step: Set) -> list[str]:
        said = []
        if step.hold_lever is not None:
            said.append(say_n(f"words.step-lever-{step.hold_lever}", self.design.bed.machine.hold_levers))
        if step.tension is not None:
            said.append(say("words.step-tension", tension=short_decimal(step.tension, 2)))
        return said
