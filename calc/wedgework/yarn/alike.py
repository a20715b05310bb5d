"""How different two colours look: CIEDE2000, the measured difference of the International Commission on Illumination.

    >>> difference("#b4533f", "#3f5566")
    Decimal('36.4982')

About 1 is the least that a practised eye sees side by side; knitted blocks a room apart need much more. ISO/CIE 11664-6;
the steps and the numbers of the equations are those of Sharma, Wu and Dalal (Color Research and Application 30, 2005,
21-30), whose test data a test goes through. Decimals with 34 digits instead of floats, so that every Python finds the same.
"""

from __future__ import annotations

import decimal
from decimal import Decimal
from fractions import Fraction
from functools import cache

from wedgework.angles import PI, cosine, sine

__all__ = ["Lab", "difference", "lab_difference", "lab_of"]

Lab = tuple[Decimal, Decimal, Decimal]

_CONTEXT = decimal.Context(prec=34)
_D = Decimal

# sRGB to XYZ under D65 (IEC 61966-2-1); the white is what the matrix makes of white, so that greys are grey.
_MATRIX = (
    (_D("0.4124564"), _D("0.3575761"), _D("0.1804375")),
    (_D("0.2126729"), _D("0.7151522"), _D("0.0721750")),
    (_D("0.0193339"), _D("0.1191920"), _D("0.9503041")),
)
_DIGITS = _D("0.0001")
_25_TO_7 = _D(25**7)
_PI = _CONTEXT.divide(_D(PI.numerator), _D(PI.denominator))


@cache
def difference(one: str, other: str) -> Decimal:
    """Of two ``#rrggbb``, to four decimals."""
    return lab_difference(lab_of(one), lab_of(other))


@cache
def lab_of(colour: str) -> Lab:
    """CIELAB of ``#rrggbb`` (ISO/CIE 11664-4)."""
    with decimal.localcontext(_CONTEXT):
        channels = [_linear(_D(int(colour[at : at + 2], 16)) / 255) for at in (1, 3, 5)]
        x, y, z = (
            _lightness(sum((c * v for c, v in zip(row, channels, strict=True)), _D(0)) / sum(row, _D(0))) for row in _MATRIX
        )
        return 116 * y - 16, 500 * (x - y), 200 * (y - z)


def _linear(value: Decimal) -> Decimal:
    return value / _D("12.92") if value <= _D("0.04045") else ((value + _D("0.055")) / _D("1.055")) ** _D("2.4")


def _lightness(value: Decimal) -> Decimal:
    if value > _D(216) / 24389:
        return value ** (1 / _D(3))
    return (_D(24389) / 27 * value + 16) / 116


def lab_difference(one: Lab, other: Lab) -> Decimal:
    """CIEDE2000 with all three weights at 1, to four decimals. Numbers in brackets are those of the equations."""
    with decimal.localcontext(_CONTEXT):
        return _difference(one, other).quantize(_DIGITS)


def _difference(one: Lab, other: Lab) -> Decimal:
    (l1, a1, b1), (l2, a2, b2) = one, other
    chroma = ((a1 * a1 + b1 * b1).sqrt() + (a2 * a2 + b2 * b2).sqrt()) / 2  # (2), (3)
    g = (1 - _seventh(chroma)) / 2  # (4)
    a1, a2 = (1 + g) * a1, (1 + g) * a2  # (5)
    c1, c2 = (a1 * a1 + b1 * b1).sqrt(), (a2 * a2 + b2 * b2).sqrt()  # (6)
    h1, h2 = _turn(b1, a1), _turn(b2, a2)  # (7)
    grey = not c1 or not c2
    dl, dc, dh = l2 - l1, c2 - c1, h2 - h1  # (8), (9)
    if grey:
        dh = _D(0)
    elif dh > _HALF:
        dh -= 1
    elif dh < -_HALF:
        dh += 1  # (10)
    dh_part = 2 * (c1 * c2).sqrt() * _sine(dh / 2)  # (11)
    lightness, chroma = (l1 + l2) / 2, (c1 + c2) / 2  # (12), (13)
    hue = h1 + h2
    if not grey:
        if abs(h1 - h2) > _HALF:
            hue += 1 if hue < 1 else -1
        hue /= 2  # (14)
    t = (
        1
        - _D("0.17") * _cosine(hue - _degrees(30))
        + _D("0.24") * _cosine(2 * hue)
        + _D("0.32") * _cosine(3 * hue + _degrees(6))
        - _D("0.20") * _cosine(4 * hue - _degrees(63))
    )  # (15)
    turn = 30 * (-(((hue * 360 - 275) / 25) ** 2)).exp()  # (16)
    rc = 2 * _seventh(chroma)  # (17)
    off = (lightness - 50) ** 2
    sl = 1 + _D("0.015") * off / (20 + off).sqrt()  # (18)
    sc = 1 + _D("0.045") * chroma  # (19)
    sh = 1 + _D("0.015") * chroma * t  # (20)
    rt = -_sine(_degrees(2 * turn)) * rc  # (21)
    by_l, by_c, by_h = dl / sl, dc / sc, dh_part / sh
    squared = by_l**2 + by_c**2 + by_h**2 + rt * by_c * by_h  # (22)
    return max(squared, _D(0)).sqrt()


_HALF = _D("0.5")


def _seventh(chroma: Decimal) -> Decimal:
    power = chroma**7
    return (power / (power + _25_TO_7)).sqrt()


def _degrees(value: Decimal | int) -> Decimal:
    """As a part of a full turn."""
    return _D(value) / 360


def _turn(b: Decimal, a: Decimal) -> Decimal:
    """The hue as a part of a full turn, 0 for grey; opposite hues differ by exactly a half."""
    if not a and not b:
        return _D(0)
    if not a:
        return _D("0.25") if b > 0 else _D("0.75")
    # To the digits of a sine, so that opposite hues come from the same number.
    angle = (_arc_tangent(abs(b / a)) / (2 * _PI)).quantize(_D("1e-24"))
    if a > 0:
        return angle if b >= 0 else 1 - angle
    return _HALF - angle if b >= 0 else _HALF + angle


def _arc_tangent(x: Decimal) -> Decimal:
    """In radians: the angle is halved four times, then the series x - x^3/3 + ..."""
    halvings = 4
    for _ in range(halvings):
        x = x / (1 + (1 + x * x).sqrt())
    square, term, total, n = x * x, x, x, 1
    while abs(term) > _D("1e-32"):
        term = -term * square
        n += 2
        total += term / n
    return total * _D(2**halvings)


def _sine(turn: Decimal) -> Decimal:
    return _decimal(sine(Fraction(turn)))


def _cosine(turn: Decimal) -> Decimal:
    return _decimal(cosine(Fraction(turn)))


def _decimal(value: Fraction) -> Decimal:
    return _D(value.numerator) / _D(value.denominator)
