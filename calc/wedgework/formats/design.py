"""The design: what the person wants. Frozen values, every default in place.

Lengths are millimetres, numbers that came as decimals are exact fractions. Nothing here checks anything:
`wedgework.formats.read_design` is the way in.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from fractions import Fraction
from typing import Literal

from wedgework.bed import Side

Point = tuple[Fraction, Fraction]
HemKind = Literal["none", "plain", "picot"]
StepStyle = Literal["split", "carriage-side", "by-hand"]
EdgingAlong = Literal["all", "sides", "ends"]
EdgingCorner = Literal["eased", "square", "none"]


@dataclass(frozen=True, slots=True)
class Machine:
    """What a machine can do beside its bed; every value has the usual default."""

    name: str = ""
    hold_levers: int = 1
    tension_min: Fraction = Fraction(0)
    tension_max: Fraction = Fraction(10)
    counter_place: Literal["middle", "left", "right", "none"] = "middle"
    counter_digits: int = 3
    yarns_on_mast: int = 2
    position_names: Mapping[str, str] = field(default_factory=dict)
    """The person's own words for ``non-working``, ``working``, ``upper-working``, ``holding``."""


@dataclass(frozen=True, slots=True)
class Bed:
    pitch_mm: Fraction
    needles: int
    machine: Machine = Machine()


@dataclass(frozen=True, slots=True)
class SwatchState:
    """One state of a swatch: counted stitches and rows over up to five measured widths and heights each."""

    widths_mm: tuple[Fraction, ...]
    heights_mm: tuple[Fraction, ...]


@dataclass(frozen=True, slots=True)
class Swatch:
    stitches: Fraction
    rows: Fraction
    washed: SwatchState | None = None
    """As the piece will be treated; the planner uses this one where it is there."""
    unwashed: SwatchState | None = None


@dataclass(frozen=True, slots=True)
class Gauge:
    """Typed figures, or a swatch to compute them from (then the figures are None)."""

    stitches_per_10cm: Fraction | None = None
    rows_per_10cm: Fraction | None = None
    swatch: Swatch | None = None


@dataclass(frozen=True, slots=True)
class Extent:
    """A size across or up: exactly one of `mm` and `count` (needles across, rows up)."""

    mm: Fraction | None = None
    count: int | None = None


@dataclass(frozen=True, slots=True)
class Part:
    """One panel of a picture that is knitted in several and joined: what of the picture it shows, what goes into its seams."""

    number: int
    """From 1, counted from the left of the finished front."""
    panels: int
    first: int
    """First and last stitch of the picture that it shows, both counted, from 1 at the left of the front."""
    last: int
    seam_left: int = 0
    """Stitches more at that edge of the front, which the seam takes."""
    seam_right: int = 0

    @property
    def needles(self) -> int:
        return self.seam_left + self.last - self.first + 1 + self.seam_right


@dataclass(frozen=True, slots=True)
class Panel:
    width: Extent
    height: Extent
    part: Part | None = None
    """The size above is that of the whole picture; with a part only that much of it is knitted."""


@dataclass(frozen=True, slots=True)
class Stripe:
    """One colour of a striped yarn, and how many metres of it follow each other."""

    colour: str
    """``#rrggbb``"""
    metres: Fraction
    name: str = ""
    """What the person calls it."""


@dataclass(frozen=True, slots=True)
class Yarn:
    id: str
    name: str
    colour: str
    """``#rrggbb``"""
    gauge: Gauge | None = None
    tension: Fraction | None = None
    tex: Fraction | None = None
    metres_per_gram: Fraction | None = None
    on_hand_g: Fraction | None = None
    stripe: tuple[Stripe, ...] = ()
    """Repeated."""
    ball_g: Fraction | None = None
    """The weight of a ball or cone as it is sold."""
    kind: str = ""
    """What it is of, in the person's own words: what may stand together."""


@dataclass(frozen=True, slots=True)
class Shape:
    """A polygon in fractions of the panel, y upward, seen from the finished front."""

    yarn: str
    points: tuple[Point, ...]
    holes: tuple[tuple[Point, ...], ...] = ()


@dataclass(frozen=True, slots=True)
class NamedLayout:
    name: str
    parameters: Mapping[str, str | Fraction] = field(default_factory=dict)
    """Yarn ids and words as text, numbers as fractions."""


@dataclass(frozen=True, slots=True)
class DrawnLayout:
    background: str
    shapes: tuple[Shape, ...] = ()
    """Later ones lie on top."""
    profile: tuple[int, ...] | None = None
    """Wanted rows for each needle, left to right on the finished front; None for a rectangle."""
    gaps: tuple[tuple[Point, ...], ...] = ()
    """Polygons in which nothing is knitted: the fabric closes over them."""
    counted: tuple[int, int] | None = None
    """In files, points are counted in needles and rows of a panel of this size, instead of in fractions of it: a third of a
    panel is no decimal. Here they are fractions in either case."""


@dataclass(frozen=True, slots=True)
class Hem:
    kind: HemKind = "none"
    depth: Extent | None = None


@dataclass(frozen=True, slots=True)
class Hems:
    bottom: Hem = Hem()
    top: Hem = Hem()
    sides: Hem = Hem()


@dataclass(frozen=True, slots=True)
class Edging:
    """A narrow strip knitted on along the edges when the piece is off the machine, at the gauge of the piece."""

    along: EdgingAlong
    stitches: int
    repeat: int = 2
    """Rows of a repeat; each edge gets whole ones."""
    join_every: int = 2
    corner: EdgingCorner = "eased"
    """What the strip does at a corner, where it goes all round."""


@dataclass(frozen=True, slots=True)
class Costs:
    """Minutes of the person's time, for choosing an order."""

    end_inside: Fraction = Fraction(2)
    end_at_selvedge: Fraction = Fraction(1, 2)
    inside_start: Fraction = Fraction(1)
    yarn_change: Fraction = Fraction(1, 2)
    free_pass: Fraction = Fraction(1, 5)


@dataclass(frozen=True, slots=True)
class OrderWish:
    """What the person wants of one block: that it comes before or after another one, from which side it begins."""

    block: str
    before: str | None = None
    after: str | None = None
    start: Side | None = None


@dataclass(frozen=True, slots=True)
class Options:
    start_side: Side = "R"
    """Where the carriage stands after cast-on."""
    shift_needles: int = 0
    """The panel's shift along the bed, to the right where positive."""
    odd_needle: Side = "R"
    base_rows_bottom: int = 2
    base_rows_top: int = 2
    base_yarn_bottom: str | None = None
    """None: the yarn of the first block."""
    base_yarn_top: str | None = None
    """None: the yarn of the last block."""
    order: tuple[OrderWish, ...] = ()
    """The person's own wishes for the order of the blocks; the planner keeps the rest best."""
    costs: Costs = Costs()
    step_style: StepStyle = "split"
    """How several needles go to hold at once: all but one away from the carriage and the last at its side
    (``split``); all at the carriage side; or all away from it, the turn wrapped by hand."""
    margin_percent: Fraction = Fraction(10)
    """Yarn margin."""
    merge_below: int = 0
    """Regions of fewer stitches are given to a neighbour; 0: none."""


@dataclass(frozen=True, slots=True)
class Design:
    title: str
    bed: Bed
    gauge: Gauge
    panel: Panel
    yarns: tuple[Yarn, ...]
    layout: NamedLayout | DrawnLayout
    notes: str = ""
    author: str = ""
    revision: str = ""
    date: str = ""
    permission: str = ""
    made_by: str = field(default="", compare=False)
    """The version that wrote the file; not part of what the design says."""
    hems: Hems = Hems()
    edging: Edging | None = None
    options: Options = Options()
