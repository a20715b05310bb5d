"""What the hem calculator shows: rows and tensions, the strip before it is folded, what is done in order."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction

from wedgework.bed import Side, name
from wedgework.declare import Bullets, Figure, Figures, Picture, Plain, Prose, Shown
from wedgework.draw.hem import hem_svg
from wedgework.hems import Hem
from wedgework.say import say, say_n
from wedgework.units import both_text, decimal_text, short_decimal, yards_too

__all__ = ["hem_view"]

# A list of needles longer than this is said by its first and last ones.
MOST_NEEDLES = 12
# The row over both layers before binding off: so many numbers looser. Common practice, no source.
LOOSE = 2


def _say(key: str, **values: object) -> str:
    return say(f"calculators.hem.{key}", **values)


def hem_view(hem: Hem, values: Mapping[str, Plain]) -> tuple[Shown, ...]:
    view: list[Shown] = [_main(hem, values), Picture(_say("picture"), _drawn(hem), _say(f"picture-{_where(hem)}"))]
    if hem.picot:
        view.append(_fold(hem))
    view.append(Bullets(_say("steps"), tuple(_top(hem) if hem.top else _bottom(hem)), ordered=True))
    view.append(_costs(hem, values))
    view.append(Prose(_say("why"), (_say(f"why-{hem.way}"), _say(f"why-side-{_where(hem)}"))))
    return tuple(view)


def _where(hem: Hem) -> str:
    return "top" if hem.top else "bottom"


def _drawn(hem: Hem) -> str:
    untouched = hem.picot.untouched if hem.picot else 0
    return hem_svg(
        hem.stitches,
        hem.outside,
        hem.facing,
        hem.stitch_mm,
        hem.row_mm,
        picot=bool(hem.picot),
        untouched=untouched,
        top=hem.top,
    )


def _main(hem: Hem, values: Mapping[str, Plain]) -> Figures:
    order = [_outside(hem), _facing(hem)]
    if not hem.picot:
        order.insert(
            1, Figure(_say("fold"), say_n("common.rows", 1), _say("at-tension", tension=_fold_tension(hem)), "fold_rows")
        )
    if not hem.top:
        order.reverse()
    side = _side(hem.side_after(hem.rows))
    after = say_n("common.rows", hem.rows)
    return Figures(
        _say(f"figures-{'picot' if hem.picot else 'plain'}-{_where(hem)}"),
        (
            *order,
            Figure(_say("depth"), both_text(hem.adds_mm), _say("depth-note"), "depth_mm"),
            Figure(_say("needles"), f"{hem.stitches}", _say("span", first=name(hem.needles[0]), last=name(hem.needles[-1]))),
            Figure(_say("carriage-after"), side, _say("carriage-note", rows=after), "carriage_after"),
        ),
    )


def _outside(hem: Hem) -> Figure:
    return Figure(
        _say("outside"), say_n("common.rows", hem.outside), _say("at-tension", tension=_dial(hem.tension)), "outside_rows"
    )


def _facing(hem: Hem) -> Figure:
    tension = _dial(hem.tension - hem.tighter)
    return Figure(_say("facing-rows"), say_n("common.rows", hem.facing), _say("at-tension", tension=tension), "facing_rows")


def _fold_tension(hem: Hem) -> str:
    return _dial(hem.tension + hem.looser)


def _dial(value: Fraction) -> str:
    return short_decimal(value, 2)


def _side(side: Side) -> str:
    return _say("on-left" if side == "L" else "on-right")


def _emptied(hem: Hem) -> str:
    names = [name(needle) for needle in hem.emptied]
    if len(names) <= MOST_NEEDLES:
        return ", ".join(names)
    return _say("emptied-span", first=", ".join(names[:3]), last=", ".join(names[-2:]))


def _fold(hem: Hem) -> Figures:
    if hem.picot is None:
        raise AssertionError("a plain fold empties no needle")
    even = hem.stitches % 2 == 0
    return Figures(
        _say("picot"),
        (
            Figure(_say("emptied"), f"{hem.picot.eyelets}", _emptied(hem), "eyelets"),
            Figure(_say("points"), f"{hem.picot.points}", _say("points-note"), "points"),
            Figure(_say("pitch"), both_text(2 * hem.stitch_mm), _say("pitch-note"), "point_pitch_mm"),
            Figure(
                _say("count"), _say("even" if even else "odd"), _say("even-note" if even else "odd-note"), "untouched_stitches"
            ),
        ),
    )


def _move(hem: Hem) -> str:
    return _say("step-empty", needles=_emptied(hem))


def _knit(hem: Hem, rows: int, tension: Fraction, done: int) -> str:
    """So many rows, and where the carriage stands after `done` rows of the hem."""
    return say_n("calculators.hem.step-knit", rows, tension=_dial(tension), side=_side(hem.side_after(done)))


def _bottom(hem: Hem) -> Iterable[str]:
    span = _say("span", first=name(hem.needles[0]), last=name(hem.needles[-1]))
    done = hem.facing
    yield _say("step-waste", needles=span, side=_side(hem.start))
    yield _knit(hem, hem.facing, hem.tension - hem.tighter, done)
    if hem.picot:
        yield _move(hem)
    else:
        done += 1
        yield _say("step-fold", tension=_fold_tension(hem), back=_dial(hem.tension), side=_side(hem.side_after(done)))
    done += hem.outside
    yield _knit(hem, hem.outside, hem.tension, done)
    yield _say(f"step-hang-{hem.way}")
    yield _say("step-join", side=_side(hem.side_after(done)))
    yield _say("step-ravel")


def _top(hem: Hem) -> Iterable[str]:
    done = hem.outside
    yield _say("step-mark")
    yield _knit(hem, hem.outside, hem.tension, done)
    if hem.picot:
        yield _move(hem)
    else:
        done += 1
        yield _say(
            "step-fold", tension=_fold_tension(hem), back=_dial(hem.tension - hem.tighter), side=_side(hem.side_after(done))
        )
    done += hem.facing
    yield _knit(hem, hem.facing, hem.tension - hem.tighter, done)
    yield _say("step-hang-top")
    yield _say("step-loose", tension=_dial(hem.tension + LOOSE), side=_side(hem.side_after(done + 1)))
    yield _say("step-off")


def _costs(hem: Hem, values: Mapping[str, Plain]) -> Figures:
    least, usual, most = (values[key] for key in ("yarn_least_m", "yarn_m", "yarn_most_m"))
    if not (isinstance(least, Fraction) and isinstance(usual, Fraction) and isinstance(most, Fraction)):
        raise TypeError("lengths of yarn")
    between = _say("yarn-note", least=decimal_text(least, 0), most=decimal_text(most, 0))
    return Figures(
        _say("adds"),
        (
            Figure(_say("adds-length"), both_text(hem.adds_mm), _say("adds-length-note"), "adds_mm"),
            Figure(_say("adds-rows"), f"{hem.rows}", _say("adds-rows-note"), "rows"),
            Figure(_say("adds-stitches"), f"{hem.rows * hem.stitches}", "", "stitches_knitted"),
            Figure(_say("adds-yarn"), _say("metres", length=yards_too(usual * 1000)), between, "yarn_m"),
        ),
    )
