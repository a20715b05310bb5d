"""What the yarn needs show: each yarn with its balls and its verdict, then each block, then all that stands beside them."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from wedgework.declare import Figure, Figures, Plain, Shown, Table
from wedgework.exact import square_root
from wedgework.say import say, say_n
from wedgework.units import decimal_text, short_decimal, yards_too
from wedgework.yarn.loops import Loop, mass_off_percent
from wedgework.yarn.needs import BesideKind, Needs
from wedgework.yarn.putup import Verdict, balls, verdict

__all__ = ["YarnShown", "needs_values", "needs_view"]

KINDS: tuple[BesideKind, ...] = ("base", "edges", "ends")
MORE = ("hems", "side-hems", "edging", "seams", "swatch")


@dataclass(frozen=True, slots=True)
class YarnShown:
    """One yarn of the plan with what was measured of it; `more` is what is knitted or sewn beside the plan, in mm."""

    id: str
    name: str
    loop: Loop
    metres_per_gram: Fraction
    ball_g: Fraction
    on_hand_g: Fraction | None
    more: Mapping[str, Fraction]

    def grams(self, mm: Fraction) -> Fraction:
        return mm / 1000 / self.metres_per_gram

    def total_mm(self, needs: Needs) -> Fraction:
        return needs.total_mm(self.id) + sum(self.more.values(), Fraction(0))

    def range_g(self, needs: Needs, margin: Fraction) -> tuple[Fraction, Fraction, Fraction]:
        """Grams with the margin: at the least, as computed, at the most."""
        grams = self.grams(self.total_mm(needs)) * (1 + margin / 100)
        off = grams * mass_off_percent(self.loop) / 100
        return max(grams - off, Fraction(0)), grams, grams + off

    def verdict(self, needs: Needs, margin: Fraction) -> Verdict | None:
        if self.on_hand_g is None:
            return None
        least, _, most = self.range_g(needs, margin)
        return verdict(least, most, self.on_hand_g)

    @property
    def tightness(self) -> Fraction:
        """Root of tex over loop in mm; shown, never judged."""
        return square_root(1000 / self.metres_per_gram) / self.loop.mm


def _say(key: str, **values: object) -> str:
    return say(f"calculators.yarn-needs.{key}", **values)


def needs_values(needs: Needs, yarns: Sequence[YarnShown], margin: Fraction, waste_mm: Fraction) -> dict[str, Plain]:
    """`yarns` by id, `blocks` in knitting order, lengths in m, masses in g; `waste_m` is of any yarn."""
    by_id = {yarn.id: yarn for yarn in yarns}
    return {
        "yarns": {yarn.id: _yarn_values(needs, yarn, margin) for yarn in yarns},
        "blocks": [
            {
                "block": block.block,
                "yarn": block.yarn,
                "stitches": block.stitches,
                "metres": block.mm / 1000,
                "grams": by_id[block.yarn].grams(block.mm),
            }
            for block in needs.blocks
        ],
        "waste_m": waste_mm / 1000,
    }


def _yarn_values(needs: Needs, yarn: YarnShown, margin: Fraction) -> dict[str, Plain]:
    least, grams, most = yarn.range_g(needs, margin)
    told = yarn.verdict(needs, margin)
    values: dict[str, Plain] = {
        "name": yarn.name,
        "metres": yarn.total_mm(needs) / 1000,
        "metres_in_blocks": needs.blocks_mm(yarn.id) / 1000,
        "metres_beside": {kind: needs.beside(yarn.id, kind) / 1000 for kind in KINDS}
        | {kind: mm / 1000 for kind, mm in yarn.more.items()},
        "grams": yarn.grams(yarn.total_mm(needs)),
        "grams_with_margin": grams,
        "grams_least": least,
        "grams_most": most,
        "balls": balls(grams, yarn.ball_g),
        "balls_most": balls(most, yarn.ball_g),
        "loop_mm": yarn.loop.mm,
        "off_percent": mass_off_percent(yarn.loop),
        "from": yarn.loop.source,
        "tightness": yarn.tightness,
    }
    if told is not None and yarn.on_hand_g is not None:
        values |= {
            "verdict": told.word,
            "over_g": yarn.on_hand_g - grams,
            "balls_to_buy": balls(grams - yarn.on_hand_g, yarn.ball_g),
        }
    return values


def needs_view(needs: Needs, yarns: Sequence[YarnShown], margin: Fraction, waste_mm: Fraction) -> tuple[Shown, ...]:
    return (
        Figures(_say("figures"), tuple(_figure(needs, yarn, margin) for yarn in yarns)),
        _apart(needs, yarns, waste_mm),
        _blocks(needs, yarns),
        _loops(yarns),
    )


def _figure(needs: Needs, yarn: YarnShown, margin: Fraction) -> Figure:
    least, grams, most = yarn.range_g(needs, margin)
    ball = short_decimal(yarn.ball_g, 1)
    value = _say("value", grams=_g(grams), balls=say_n("yarn.balls", balls(grams, yarn.ball_g), grams=ball))
    notes = [_say("between", least=_g(least), most=_g(most), length=yards_too(yarn.total_mm(needs)))]
    if balls(most, yarn.ball_g) > balls(grams, yarn.ball_g):
        notes.append(_say("perhaps-more", balls=say_n("yarn.balls", balls(most, yarn.ball_g), grams=ball)))
    told = yarn.verdict(needs, margin)
    if told is not None and yarn.on_hand_g is not None:
        notes.append(_say("on-hand", grams=short_decimal(yarn.on_hand_g, 1), verdict=told.sentence))
    return Figure(yarn.name, value, " ".join(notes))


def _apart(needs: Needs, yarns: Sequence[YarnShown], waste_mm: Fraction) -> Table:
    """Metres of each yarn: in blocks, and each thing beside them."""
    rows: list[tuple[str, ...]] = [(_say("apart-blocks"), *(_m(needs.blocks_mm(yarn.id)) for yarn in yarns))]
    for kind in KINDS:
        amounts = [needs.beside(yarn.id, kind) for yarn in yarns]
        if any(amounts):
            rows.append((_say(f"apart-{kind}"), *(_m(mm) for mm in amounts)))
    for more in MORE:
        amounts = [yarn.more.get(more, Fraction(0)) for yarn in yarns]
        if any(amounts):
            rows.append((_say(f"apart-{more}"), *(_m(mm) for mm in amounts)))
    rows.append((_say("apart-all"), *(_m(yarn.total_mm(needs)) for yarn in yarns)))
    if waste_mm:
        rows.append((_say("apart-waste", metres=_m(waste_mm)), *("" for _ in yarns)))
    return Table(_say("apart"), (_say("apart-what"), *(yarn.name for yarn in yarns)), tuple(rows))


def _blocks(needs: Needs, yarns: Sequence[YarnShown]) -> Table:
    by_id = {yarn.id: yarn for yarn in yarns}
    rows = tuple(
        (
            f"{number}",
            by_id[block.yarn].name,
            f"{block.stitches}",
            _m(block.mm),
            _g(by_id[block.yarn].grams(block.mm), 1),
        )
        for number, block in enumerate(needs.blocks, 1)
    )
    return Table(_say("blocks"), tuple(_say(f"blocks-{key}") for key in ("name", "yarn", "stitches", "metres", "grams")), rows)


def _loops(yarns: Sequence[YarnShown]) -> Table:
    rows = tuple(
        (
            yarn.name,
            _say(f"from-{yarn.loop.source}"),
            _say("mm", mm=decimal_text(yarn.loop.mm, 1)),
            _say("give-or-take", percent=decimal_text(mass_off_percent(yarn.loop), 1)),
            decimal_text(yarn.tightness, 2),
        )
        for yarn in yarns
    )
    return Table(_say("loops"), tuple(_say(f"loops-{key}") for key in ("name", "from", "loop", "off", "tightness")), rows)


def _g(grams: Fraction, digits: int = 0) -> str:
    return decimal_text(grams, digits)


def _m(mm: Fraction) -> str:
    return decimal_text(mm / 1000, 1 if mm < 100_000 else 0)
