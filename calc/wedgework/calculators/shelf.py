"""Shelf: one yarn as it lies there, its count and put-up in all that other pages ask for. The page keeps what it says."""

from __future__ import annotations

from fractions import Fraction

from wedgework.calculators.striping import Colours, read_repeat
from wedgework.declare import (
    Calculator,
    Figure,
    Figures,
    Group,
    Inputs,
    Only,
    Plain,
    Result,
    choice,
    colour,
    decimal,
    length,
    lines,
    mass,
    text,
)
from wedgework.exact import down
from wedgework.formats import nearest_decimal
from wedgework.formats.design import Stripe, Yarn
from wedgework.problems import Problem, Refused
from wedgework.say import say
from wedgework.units import short_decimal, significant, yards_too
from wedgework.yarn import SYSTEMS, tex_of

__all__ = ["CALCULATOR", "shelf_yarn"]

BALL, COUNT = "ball", "count"
LONGEST_NAME = 60
"""Of a yarn or of a colour, as the project file takes it."""
# What can be knitted on a machine at all. Our own choice, as for the yarn count.
LEAST_TEX, MOST_TEX = Fraction(1, 2), Fraction(20_000)


def _say(key: str, **values: object) -> str:
    return say(f"calculators.shelf.{key}", **values)


def compute(inputs: Inputs) -> Result:
    """The yarn in the words of the project file, and what it comes to."""
    yarn, colours = shelf_yarn(inputs)
    tex, rate = yarn.tex or Fraction(0), yarn.metres_per_gram or Fraction(0)
    metres = None if yarn.on_hand_g is None else yarn.on_hand_g * rate
    values: dict[str, Plain] = {
        "name": yarn.name,
        "colour": yarn.colour,
        "kind": yarn.kind,
        "tex": tex,
        "metres_per_gram": rate,
        "ball_g": yarn.ball_g,
        "ball_m": (yarn.ball_g or 0) * rate,
        "on_hand_g": yarn.on_hand_g,
        "on_hand_m": metres,
        "stripe": [{"colour": one.colour, "metres": one.metres, "name": one.name} for one in yarn.stripe],
    }
    rows = [
        Figure(_say("tex"), _say("tex-value", tex=significant(tex)), _say("tex-note", nm=significant(rate)), "tex"),
        Figure(_say("rate"), _say("rate-value", rate=significant(rate)), "", "metres_per_gram"),
        Figure(
            _say("ball"), yards_too((yarn.ball_g or 0) * rate * 1000),
            _say("ball-note", grams=short_decimal(yarn.ball_g or 0, 1)), "ball_m",
        ),
    ]  # fmt: skip
    if yarn.on_hand_g is not None and metres is not None:
        whole = down(yarn.on_hand_g / (yarn.ball_g or 1))
        rows.append(Figure(_say("on-hand"), yards_too(metres * 1000), _say("on-hand-note", whole=whole), "on_hand_m"))
    if colours is not None:
        repeat = Fraction(colours.repeat.length, 1_000_000)
        rows.append(Figure(_say("repeat"), yards_too(repeat * 1000, 1), ", ".join(colours.names)))
    return Result(values, (Figures(yarn.name, tuple(rows)),))


def shelf_yarn(inputs: Inputs) -> tuple[Yarn, Colours | None]:
    """The yarn that was typed; its id is left to where it is kept. Raises Refused."""
    ball = inputs.g("ball_g")
    if inputs.text("known") == BALL:
        rate = inputs.mm("ball_m") / 1000 / ball
        tex = 1000 / rate
    else:
        tex = tex_of(inputs.number("count"), inputs.text("system"))
        rate = 1000 / tex
    if not LEAST_TEX <= tex <= MOST_TEX:
        where = "ball_m" if inputs.text("known") == BALL else "count"
        raise Refused([Problem(where, "shelf.no-yarn", _say("no-yarn", tex=significant(tex, 3)), _say("no-yarn.way-out"))])
    colours = read_repeat("stripe", inputs.text("stripe")) if inputs.has("stripe") else None
    stripe: tuple[Stripe, ...] = ()
    if colours is not None:
        lengths = (Fraction(each, 1_000_000) for each in colours.repeat.lengths())
        stripe = tuple(map(Stripe, colours.repeat.colours, lengths, (name[:LONGEST_NAME] for name in colours.names)))
    return (
        Yarn(
            id="yarn",
            name=inputs.text("name"),
            colour=inputs.text("colour"),
            tex=nearest_decimal(tex),
            metres_per_gram=nearest_decimal(rate),
            on_hand_g=nearest_decimal(inputs.g("on_hand_g")) if inputs.has("on_hand_g") else None,
            stripe=stripe,
            ball_g=nearest_decimal(ball),
            kind=inputs.text("kind") if inputs.has("kind") else "",
        ),
        colours,
    )


CALCULATOR = Calculator(
    "shelf",
    (
        Group(
            "yarn",
            (text("name", "Rust", longest=LONGEST_NAME), colour("colour", "#b4533f"),
             text("kind", "wool", longest=40, optional=True)),
        ),
        Group(
            "count",
            (
                choice("known", BALL, (BALL, COUNT)),
                mass("ball_g", "50 g", 1, 10_000, "g"),
                length("ball_m", "60 m", 1, 100_000, "m", only=Only("known", (BALL,))),
                decimal("count", "1.2", Fraction(1, 1000), 200_000, only=Only("known", (COUNT,))),
                choice("system", "nm", tuple(SYSTEMS), words=lambda key: say(f"calculators.yarn-count.system.{key}"),
                       only=Only("known", (COUNT,))),
            ),
        ),
        Group(
            "on-hand",
            (mass("on_hand_g", "175 g", 0, 100_000, "g", optional=True), lines("stripe", "", longest=2000, optional=True)),
        ),
    ),
    compute,
)  # fmt: skip
