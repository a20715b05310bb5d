"""The plan: what the machine does. A recording that any reader can replay, needle by needle.

Needles are whole numbers without zero (see `wedgework.bed`), sides "L" and "R" as the knitter faces
the machine. Rows are single passes.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from wedgework.bed import Side
from wedgework.formats.design import Design
from wedgework.formats.state import State

Lever = Literal["hold", "knit"]


@dataclass(frozen=True, slots=True)
class Set:
    """Carriage setting: lever, tension, or both."""

    hold_lever: Lever | None = None
    tension: Fraction | None = None


@dataclass(frozen=True, slots=True)
class Thread:
    """`yarn` into the feeder; `around` is the held needle that anchors the tail of an inside start."""

    yarn: str
    around: int | None = None


@dataclass(frozen=True, slots=True)
class Cut:
    """Cut the threaded yarn."""


@dataclass(frozen=True, slots=True)
class Rest:
    """Take the threaded yarn out of the feeder, uncut; it hangs where it last knitted."""


@dataclass(frozen=True, slots=True)
class Join:
    """A new ball of the threaded yarn, at an edge."""


@dataclass(frozen=True, slots=True)
class Hold:
    """To holding position."""

    needles: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Work:
    """From holding to upper working position: they knit on the next pass and on every later one until held."""

    needles: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Knit:
    """One pass with yarn; every needle not held knits one stitch."""

    to: Side
    row: int
    """Passes with yarn in the whole piece, from 1."""
    block: str
    block_row: int
    """Passes with yarn in this block, from 1: what the counter reads after it was set to 000 at its start."""


@dataclass(frozen=True, slots=True)
class Free:
    """One pass without yarn; a needle with a stitch that is not held drops it."""

    to: Side


@dataclass(frozen=True, slots=True)
class Wrap:
    """The yarn goes by hand under and round held needle `needle`, the one next to the turn."""

    needle: int


@dataclass(frozen=True, slots=True)
class Transfer:
    """The loop of needle `from_needle` is put on its neighbour `to_needle`, which then carries two;
    the empty needle stays in work and makes a new loop on the next pass."""

    from_needle: int
    to_needle: int


@dataclass(frozen=True, slots=True)
class Hang:
    """A loop of an earlier row is hung on each of these needles beside its own; they knit together."""

    needles: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class CastOn:
    """Each of these needles, empty before, gets one loop."""

    needles: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Waste:
    """So many rows of waste yarn over every needle; they count neither as rows nor as stitches. The carriage stands afterwards
    where it stood before."""

    rows: int


@dataclass(frozen=True, slots=True)
class BindOff:
    """The loops of these needles are closed; the needles are empty afterwards."""

    needles: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Weigh:
    """A weight under these needles; changes nothing on the bed."""

    needles: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class Remind:
    """Changes nothing on the bed; `about` is a key of the words room or the person's own text."""

    about: str


Step = (
    Set | Thread | Cut | Rest | Join | Hold | Work | Knit | Free | Wrap
    | Transfer | Hang | CastOn | Waste | BindOff | Weigh | Remind
)  # fmt: skip


@dataclass(frozen=True, slots=True)
class Block:
    """Steps `first_step` to `last_step` (both counted, from 0) knit this block."""

    id: str
    yarn: str
    name: str
    first_step: int
    last_step: int


def is_edge(block_id: str) -> bool:
    """Whether a block lies outside the picture: base rows and hems, by the names that the plan format gives them."""
    return block_id.startswith(("base", "hem"))


def is_hem(block_id: str) -> bool:
    """Whether a block is a hem, or the part of one."""
    return block_id.startswith("hem")


def is_facing(block_id: str) -> bool:
    """Whether a block is the part of a hem that lies behind, with its fold and the row that closes it: they add no height."""
    return is_hem(block_id) and "facing" in block_id


@dataclass(frozen=True, slots=True)
class Start:
    """The state before the first step: after cast-on, every needle working, the lever on knit."""

    carriage: Side
    working: tuple[int, int]


@dataclass(frozen=True, slots=True)
class Edges:
    cast_on: Literal["closed", "waste"] = "closed"
    base_rows_bottom: int = 2
    base_yarn_bottom: str = ""
    base_rows_top: int = 2
    base_yarn_top: str = ""


@dataclass(frozen=True, slots=True)
class Slit:
    """A border that stands open: between `needle` and the next one to the right, from `from_row` (counted up from 1 at the
    lower edge of the picture), for `rows` rows in all. A steep border stands in several `steps`, the highest of them
    beside `to_needle`."""

    needle: int
    from_row: int
    rows: int
    steps: int = 1
    to_needle: int | None = None


@dataclass(frozen=True, slots=True)
class Stair:
    """A slope with `steps` steps that are too wide, the widest of them of `widest` needles. They lie from `needle` to
    `to_needle`, between `from_row` and `to_row` rows above the lower edge of the picture."""

    needle: int
    to_needle: int
    from_row: int
    to_row: int
    steps: int
    widest: int


@dataclass(frozen=True, slots=True)
class Hole:
    """A narrowing turn that nothing wraps: beside `needle`, at `row` of the picture."""

    needle: int
    row: int


@dataclass(frozen=True, slots=True)
class Uneven:
    """A needle whose rows are more than one away from the panel's height."""

    needle: int
    rows: int
    why: str = ""


@dataclass(frozen=True, slots=True)
class Summary:
    """What the plan claims of itself; never trusted. Rows and stitches are those of the picture, base rows and
    hems are counted apart in `edge_stitches`."""

    rows_min: int
    rows_max: int
    steepest_fold: int
    ends: int
    ends_inside: int
    free_passes: int
    inside_starts: int
    slits: tuple[Slit, ...] = ()
    stairs: tuple[Stair, ...] = ()
    holes: tuple[Hole, ...] = ()
    floats: int = 0
    dropped: int = 0
    uneven: tuple[Uneven, ...] = ()
    stitches: Mapping[str, int] = field(default_factory=dict)
    edge_stitches: Mapping[str, int] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Handling:
    """What the order of the blocks costs the person, in minutes by the weights of the design, evenness counted in; and what any
    order of these blocks costs at the least."""

    minutes: Fraction
    at_least: Fraction


@dataclass(frozen=True, slots=True)
class Plan:
    design: Design
    first_needle: int
    last_needle: int
    start: Start
    edges: Edges
    blocks: tuple[Block, ...]
    """Base rows and hems too; their ids begin with ``base`` or ``hem``."""
    steps: tuple[Step, ...]
    summary: Summary
    made_by: str = field(default="", compare=False)
    """The version that wrote the file; not part of what the plan says."""
    handling: Handling | None = field(default=None, compare=False)
    """Known to the planner that has just made the plan; files do not keep it."""
    state: State | None = None
    """The real state from which it begins, where it plans the rest of a piece; None: an empty bed after cast-on."""
