"""Numbers in files: decimal text to an exact number and back, without a float in between.

>>> exact_number("7.10")
Fraction(71, 10)
>>> exact_number("60.0")
60
>>> decimal_text(Fraction(71, 10))
'7.1'
"""

from __future__ import annotations

from fractions import Fraction

__all__ = ["carried", "decimal_text", "exact_number", "nearest_decimal"]

# Bounds on what a number may cost: a file is untrusted, and 1e999999999 is a short text. Twenty digits before the
# point and forty after it are far more than a float carries, so whatever another program wrote can be read.
MOST_CHARACTERS = 100
MOST_BEFORE_POINT = 20
MOST_AFTER_POINT = 40
_MOST_EXPONENT = MOST_BEFORE_POINT + MOST_AFTER_POINT


def exact_number(text: str) -> int | Fraction | None:
    """The number that a JSON number (or the repr of a finite float) writes; an int where it is whole.

    None for one beyond the bounds above. `text` has to have the form of a JSON number.
    """
    if len(text) > MOST_CHARACTERS:
        return None
    mantissa, _, exponent = text.lower().partition("e")
    whole, _, decimals = mantissa.partition(".")
    power = int(exponent or "0") - len(decimals)
    if abs(power) > _MOST_EXPONENT + MOST_CHARACTERS:
        return None
    number = int(whole + decimals) * Fraction(10) ** power
    if abs(number) >= 10**MOST_BEFORE_POINT or 10**MOST_AFTER_POINT % number.denominator:
        return None
    return int(number) if number.denominator == 1 else number


def decimal_text(number: int | Fraction) -> str:
    """The shortest plain decimal that is exactly `number`. Raises ValueError for one like 1/3, which has none."""
    numerator, denominator = number.numerator, number.denominator
    if denominator == 1:
        return str(numerator)
    twos = fives = 0
    rest = denominator
    while rest % 2 == 0:
        rest, twos = rest // 2, twos + 1
    while rest % 5 == 0:
        rest, fives = rest // 5, fives + 1
    if rest != 1:
        raise ValueError(f"{number} is no finite decimal: round it with nearest_decimal before it goes into a file")
    places = max(twos, fives)
    digits = str(abs(numerator) * (10**places // denominator)).rjust(places + 1, "0")
    return f"{'-' if numerator < 0 else ''}{digits[:-places]}.{digits[-places:]}"


def nearest_decimal(number: int | Fraction, places: int = 6) -> Fraction:
    """`number` rounded to so many decimal places (half to even), so that it can stand in a file."""
    return Fraction(round(Fraction(number) * 10**places), 10**places)


def carried(number: int | Fraction) -> int | float | Fraction:
    """`number` as the type that any JSON writer takes: an int, or a float whose shortest repr is exactly this decimal.

    The few that no float can carry stay fractions; `wedgework.formats.writing` writes those too.
    """
    if number.denominator == 1:
        return int(number)
    nearest = float(number)
    return nearest if exact_number(repr(nearest)) == number else number
