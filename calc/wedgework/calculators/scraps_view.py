"""What the scraps show: each block with its leftover, what is left of each, or what is missing and what would do."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from fractions import Fraction

from wedgework.calculators.leftovers import Leftover
from wedgework.calculators.stripes_view import marks_of
from wedgework.declare import Bullets, Figure, Figures, Picture, Plain, Table
from wedgework.declare import Shown as Part
from wedgework.draw.fabric import Ink, can_be_drawn, fabric_svg
from wedgework.exact import up
from wedgework.formats.plan import Plan
from wedgework.layout.sizes import resolve
from wedgework.say import say, say_n
from wedgework.units import decimal_text, short_decimal
from wedgework.yarn.fabric import Fabric, colours_of
from wedgework.yarn.path import YarnPath
from wedgework.yarn.scraps import Found, Nothing

__all__ = ["Change", "Shown", "in_leftovers", "scraps_values", "scraps_view"]


@dataclass(frozen=True, slots=True)
class Change:
    """A change that would do: more yarn (grams by name), a smaller margin, a smaller difference, more kinds, new colours; the
    last three with more yarn too, where that alone would not do."""

    what: str
    figure: Fraction | None = None
    grams: Mapping[str, Fraction] = field(default_factory=dict)
    proved: bool = True
    leftovers: tuple[int, ...] = ()
    others_m: tuple[Fraction, ...] = ()
    """Metres in each colour that is not there yet."""


@dataclass(frozen=True, slots=True)
class Shown:
    needs: tuple[int, ...]
    """Of each block in knitting order, with margin and ends, mm."""
    leftovers: tuple[Leftover, ...]
    found: Found | Nothing
    changes: tuple[Change, ...]
    others_mm: Fraction
    plan: Plan
    path: YarnPath

    @property
    def chosen(self) -> tuple[int, ...]:
        """The assignment; where there is none, the one that misses least."""
        if isinstance(self.found, Found):
            return self.found.leftovers
        return next((change.leftovers for change in self.changes if change.leftovers), ())

    def used_mm(self, leftover: int) -> int:
        return sum(need for need, one in zip(self.needs, self.chosen, strict=True) if one == leftover) if self.chosen else 0


def _say(key: str, **values: object) -> str:
    return say(f"calculators.scraps.{key}", **values)


def scraps_values(shown: Shown) -> dict[str, Plain]:
    """`assignment` names a leftover for each block in knitting order; empty where nothing does. Grams with the margin."""
    found = shown.found
    values: dict[str, Plain] = {
        "possible": isinstance(found, Found),
        "proved": found.proved,
        "ends": found.ends if isinstance(found, Found) else None,
        "strange_pairs": found.strange if isinstance(found, Found) else None,
        "bound": found.bound if isinstance(found, Found) else None,
        "assignment": [shown.leftovers[one].name for one in found.leftovers] if isinstance(found, Found) else [],
        "needs_m": [Fraction(need, 1000) for need in shown.needs],
        "left_g": {
            one.name: one.grams - Fraction(shown.used_mm(i), 1000) / one.metres_per_gram for i, one in enumerate(shown.leftovers)
        },
        "base_and_edges_m": shown.others_mm / 1000,
        "changes": [
            {
                "change": change.what,
                "figure": change.figure,
                "grams": dict(change.grams),
                "metres_of_new_colours": list(change.others_m),
                "proved": change.proved,
            }
            for change in shown.changes
        ],
    }
    return values


def scraps_view(shown: Shown) -> tuple[Part, ...]:
    parts: list[Part] = [_figures(shown)]
    if not isinstance(shown.found, Found):
        parts.append(_changes(shown))
    if shown.chosen:
        parts += [*_picture(shown), _blocks(shown), _left(shown)]
    return tuple(parts)


def _figures(shown: Shown) -> Figures:
    found = shown.found
    rows: list[Figure] = []
    if isinstance(found, Found):
        proof = _say("proved") if found.proved else _say("bound", bound=found.bound)
        rows += [
            Figure(_say("answer"), _say("answer-yes"), proof, "possible"),
            Figure(_say("ends"), f"{found.ends}", _say("ends-note"), "ends"),
            Figure(_say("strange"), f"{found.strange}", _say("strange-note"), "strange_pairs"),
        ]
    else:
        rows.append(Figure(_say("answer"), _say("answer-no"), _say("none-proved" if found.proved else "none-found"), "possible"))
    others = decimal_text(shown.others_mm / 1000, 1)
    rows.append(Figure(_say("others"), f"{others} m", _say("others-note"), "base_and_edges_m"))
    return Figures(_say("figures"), tuple(rows))


def in_leftovers(shown: Shown) -> tuple[Fabric, list[Ink]]:
    """The front with each block in its leftover, base rows in the yarn of the plan. Something has to be chosen."""
    design = shown.plan.design
    chosen = iter(shown.chosen)
    stretches = tuple(
        stretch if stretch.outside else replace(stretch, yarn=f"leftover {next(chosen)}") for stretch in shown.path.stretches
    )
    wanted = {yarn.id: Ink(yarn.colour, yarn.name) for yarn in design.yarns}
    wanted |= {f"leftover {i}": Ink(one.colour, one.name) for i, one in enumerate(shown.leftovers)}
    inks = list(dict.fromkeys(wanted.values()))  # a yarn of the plan may lie among the leftovers
    places = {key: inks.index(ink) + 1 for key, ink in wanted.items()}
    return colours_of(replace(shown.path, stretches=stretches), places), inks


def _picture(shown: Shown) -> list[Part]:
    fabric, inks = in_leftovers(shown)
    if not can_be_drawn(fabric):
        return []
    design = shown.plan.design
    sizes = resolve(design)
    svg = fabric_svg(
        fabric,
        inks,
        (sizes.stitch_mm, sizes.row_mm),
        title=_say("picture-title", title=design.title),
        desc=_say("picture-desc"),
        prefix="in-leftovers",
        marks=marks_of(shown.path, design),
    )
    return [Picture(_say("picture"), svg, _say("picture-caption"))]


def _changes(shown: Shown) -> Bullets:
    items: list[str] = []
    for change in shown.changes:
        if change.what == "more-yarn":
            items.append(_say("change-more-yarn" if change.proved else "change-more-yarn-perhaps", grams=_grams(change)))
        else:
            items.append(_eased(change))
    return Bullets(_say("changes"), tuple(items) or (_say("change-none"),))


def _eased(change: Change) -> str:
    """A rule that is eased or a colour that is new, and the yarn that it takes beside."""
    if change.what == "colours":
        metres = _say("and").join(_say("change-metres", metres=up(metres)) for metres in change.others_m)
        words = say_n("calculators.scraps.change-colours", len(change.others_m), metres=metres)
    else:
        words = _say(f"change-{change.what}", figure=short_decimal(change.figure or 0, 1))
    if change.grams:
        words += " " + _say("change-and", grams=_grams(change))
    return words


def _grams(change: Change) -> str:
    return ", ".join(_say("change-grams", grams=up(g), name=name) for name, g in change.grams.items())


def _blocks(shown: Shown) -> Table:
    rows = []
    for number, (need, one) in enumerate(zip(shown.needs, shown.chosen, strict=True), 1):
        leftover = shown.leftovers[one]
        grams = Fraction(need, 1000) / leftover.metres_per_gram
        rows.append((f"{number}", leftover.name, leftover.kind, decimal_text(Fraction(need, 1000), 1), decimal_text(grams, 1)))
    title = _say("blocks" if isinstance(shown.found, Found) else "blocks-short")
    return Table(title, tuple(_say(f"blocks-{key}") for key in ("name", "leftover", "kind", "metres", "grams")), tuple(rows))


def _left(shown: Shown) -> Table:
    rows = []
    for i, one in enumerate(shown.leftovers):
        left = one.grams - Fraction(shown.used_mm(i), 1000) / one.metres_per_gram
        words = _say("left-over", grams=decimal_text(left, 0)) if left >= 0 else _say("left-short", grams=up(-left))
        rows.append((one.name, one.kind, short_decimal(one.grams, 1), words))
    return Table(_say("left"), tuple(_say(f"left-{key}") for key in ("name", "kind", "grams", "after")), tuple(rows))
