"""Yarn count: one count in all the others, metres and yards, and the weight categories that a gauge belongs to."""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

from wedgework.declare import Calculator, Figure, Figures, Group, Inputs, Plain, Result, Shown, Table, choice, decimal, whole
from wedgework.problems import Problem, Refused
from wedgework.say import say, say_n
from wedgework.units import short_decimal, significant
from wedgework.yarn import SYSTEMS, Category, categories_for, count_in, plied, tex_of

__all__ = ["CALCULATOR"]

# From a sewing silk to a roving as thick as a thumb. Our own choice.
LEAST_TEX, MOST_TEX = Fraction(1, 2), Fraction(20_000)
# Thicker than this, a count below 1 was more likely written as plies over count: 2/15. Common practice, no source.
THICK_TEX = Fraction(4_000)
# The name of each in the result, in the order of the tables.
MASS = {"tex": "tex", "dtex": "dtex", "denier": "denier"}
LENGTH = {key: key for key in ("nm", "metres_per_gram", "metres_per_50g", "metres_per_100g", "yards_per_pound")}
OLDER = {"cotton_ne": "cotton", "worsted": "worsted", "run": "run", "lea": "lea"}


def _say(key: str, **values: object) -> str:
    return say(f"calculators.yarn-count.{key}", **values)


def compute(inputs: Inputs) -> Result:
    """All counts are those of the whole yarn, its plies together."""
    count, system, plies = inputs.number("value"), inputs.text("system"), inputs.whole("plies")
    tex = plied(tex_of(count, system), plies)
    if not LEAST_TEX <= tex <= MOST_TEX:
        raise Refused([_out_of_range(tex, system, plies)])
    gauge = inputs.number("stitches_per_10cm") if inputs.has("stitches_per_10cm") else None
    found = categories_for(gauge) if gauge else ()
    values: dict[str, Plain] = {name: count_in(tex, key) for name, key in (MASS | LENGTH | OLDER).items()}
    values |= {
        "plies": plies,
        "ply_tex": tex / plies,
        "categories": [category.number for category in found],
        "category_names": [say(f"yarn.category-{category.key}") for category in found],
    }
    view: list[Shown] = [_figures("mass", MASS, tex), _figures("length", LENGTH, tex), _figures("older", OLDER, tex)]
    if gauge:
        view.insert(1, _categories(gauge, found))
    return Result(values, tuple(view), tuple(_warnings(count, system, tex)))


def _out_of_range(tex: Fraction, system: str, plies: int) -> Problem:
    """What may be typed in that system, for so many plies; direct counts grow with the yarn, the others shrink."""
    limits = sorted(count_in(limit / plies, system) for limit in (LEAST_TEX, MOST_TEX))
    sentence = _say("no-yarn", tex=significant(tex, 3), least=short_decimal(LEAST_TEX, 1), most=MOST_TEX)
    least, most = (significant(limit) for limit in limits)
    return Problem("value", "yarn.out-of-range", sentence, _say("no-yarn.way-out", least=least, most=most))


def _warnings(count: Fraction, system: str, tex: Fraction) -> list[Problem]:
    if SYSTEMS[system].direct or count >= 1 or tex < THICK_TEX:
        return []
    sentence = _say("very-thick", count=significant(count, 3), metres=significant(count_in(tex, "metres_per_100g"), 2))
    return [Problem("value", "yarn.very-thick", sentence, _say("very-thick.way-out"))]


def _figures(title: str, names: dict[str, str], tex: Fraction) -> Figures:
    rows = tuple(
        Figure(_say(f"system.{key}"), significant(count_in(tex, key)), _say(f"means-{key}"), name) for name, key in names.items()
    )
    return Figures(_say(f"table-{title}"), rows)


def _categories(gauge: Fraction, found: tuple[Category, ...]) -> Table:
    """The categories that fit; a line that says so where none does."""
    heads = tuple(_say(f"category-{key}") for key in ("name", "stitches", "needles"))
    title = _say("categories", gauge=short_decimal(gauge, 2))
    if not found:
        return Table(title, heads, ((say("yarn.finer"), say("yarn.finer-stitches"), ""),))
    return Table(title, heads, tuple((_name(category), _stitches(category), _needles(category)) for category in found))


def _name(category: Category) -> str:
    return say("yarn.category", number=category.number, name=say(f"yarn.category-{category.key}"))


def _stitches(category: Category) -> str:
    if category.least_stitches is None:
        return say("yarn.at-most", most=say_n("common.stitches", category.most_stitches or 0))
    return say("yarn.between", least=category.least_stitches, most=category.most_stitches)


def _needles(category: Category) -> str:
    least = short_decimal(category.least_needle_mm or 0, 2)
    if category.most_needle_mm is None:
        return say("yarn.at-least-mm", least=least)
    return say("yarn.between-mm", least=least, most=short_decimal(category.most_needle_mm, 2))


CALCULATOR = Calculator(
    "yarn-count",
    (
        Group(
            "count",
            (
                replace(
                    decimal("value", "15", Fraction(1, 1000), 200_000),
                    allowed_words=lambda: _say("value.allowed", least=short_decimal(LEAST_TEX, 1), most=MOST_TEX),
                ),
                choice("system", "nm", tuple(SYSTEMS)),
                whole("plies", "1", 1, 24),
            ),
        ),
        Group("gauge", (decimal("stitches_per_10cm", "28", 1, 80, "stitches-per-10cm", optional=True),)),
    ),
    compute,
)
