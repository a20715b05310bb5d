"""Numbers and lengths as people type them, exactly, and back to text. The only place that converts.

Inside, every length is a Fraction of millimetres and every mass a Fraction of grams:

    >>> length_mm("5 1/4 in", "cm")
    Fraction(2667, 20)
    >>> length_mm("12,4", "cm")        # a bare number is in the field's own unit
    Fraction(124, 1)
    >>> decimal_text(Fraction(2667, 20), 1)
    '133.4'

Text is rounded from the exact value, once: half a last digit goes away from zero, as taught in schools.
What cannot be read raises `Refused` with one problem that names no field; the caller knows the field.

1 in = 25.4 mm and 1 lb = 453.59237 g exactly (international yard and pound agreement, 1959); 12 in = 1 ft,
3 ft = 1 yd, 16 oz = 1 lb (avoirdupois).
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from fractions import Fraction

from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = [
    "LENGTH_UNITS",
    "MASS_UNITS",
    "MM_PER_INCH",
    "MOST_MEASUREMENTS",
    "both_text",
    "decimal_text",
    "from_mm",
    "in_language",
    "inches_text",
    "length_mm",
    "lengths_mm",
    "mass_g",
    "mixed_text",
    "number",
    "per_10cm",
    "per_inch_too",
    "plain",
    "point_text",
    "short_decimal",
    "short_point",
    "signed_text",
    "significant",
    "yards_too",
]

MM_PER_INCH = Fraction(254, 10)
GRAMS_PER_POUND = Fraction(45359237, 100000)

# One symbol for each unit; its value in mm or g.
LENGTH_UNITS: Mapping[str, Fraction] = {
    "mm": Fraction(1),
    "cm": Fraction(10),
    "m": Fraction(1000),
    "in": MM_PER_INCH,
    "ft": 12 * MM_PER_INCH,
    "yd": 36 * MM_PER_INCH,
}
MASS_UNITS: Mapping[str, Fraction] = {
    "g": Fraction(1),
    "kg": Fraction(1000),
    "oz": GRAMS_PER_POUND / 16,
    "lb": GRAMS_PER_POUND,
}

MOST_MEASUREMENTS = 5

# What people type for those symbols. Two single quotes are typed where a double one is meant.
_SPELLED = {
    "millimetre": "mm", "millimetres": "mm", "millimeter": "mm", "millimeters": "mm",
    "centimetre": "cm", "centimetres": "cm", "centimeter": "cm", "centimeters": "cm",
    "metre": "m", "metres": "m", "meter": "m", "meters": "m",
    "inch": "in", "inches": "in", "ins": "in", '"': "in", "\u2033": "in", "\u201d": "in", "''": "in", "\u2019\u2019": "in",
    "foot": "ft", "feet": "ft", "'": "ft", "\u2032": "ft", "\u2019": "ft",
    "yard": "yd", "yards": "yd", "yds": "yd",
    "gram": "g", "grams": "g", "gramme": "g", "grammes": "g", "kilogram": "kg", "kilograms": "kg",
    "ounce": "oz", "ounces": "oz", "pound": "lb", "pounds": "lb", "lbs": "lb",
    # What German speakers type, whatever the language of the page.
    "millimetern": "mm", "zentimeter": "cm", "zentimetern": "cm", "metern": "m", "zoll": "in", "fu\u00df": "ft", "gramm": "g",
    "kilogramm": "kg", "unze": "oz", "unzen": "oz", "pfund": "lb",
}  # fmt: skip

# The fractions that have a sign of their own.
_SIGNS = {
    "\u00bd": "1/2", "\u2153": "1/3", "\u2154": "2/3", "\u00bc": "1/4", "\u00be": "3/4", "\u2155": "1/5", "\u2156": "2/5",
    "\u2157": "3/5", "\u2158": "4/5", "\u2159": "1/6", "\u215a": "5/6", "\u215b": "1/8", "\u215c": "3/8", "\u215d": "5/8",
    "\u215e": "7/8",
}  # fmt: skip

_LONGEST = 100
# The point of a decimal number; what stands behind it is in the group.
_POINT = re.compile(r"(?<=\d)\.(\d+)", re.ASCII)
_DECIMAL = re.compile(r"([+-]?)(\d+)(?:[.,](\d+))?|([+-]?)[.,](\d+)", re.ASCII)
_MIXED = re.compile(r"([+-]?)(?:(\d+)[ -]+)?(\d+) ?/ ?(\d+)", re.ASCII)
_THOUSANDS = re.compile(r"[+-]?[1-9]\d{0,2}(?:,\d{3})+", re.ASCII)
# What stands between a count and the length that it was counted over.
_OVER = re.compile(r" *(?:/|\b(?:per|to|over|in|pro|je|auf)\b) *(?:an? +)?", re.ASCII | re.IGNORECASE)
_COUNTED = re.compile(r" *(?:stitch(?:es)?|sts?\.?|rows?|maschen?|reihen?)$", re.ASCII | re.IGNORECASE)
_AMOUNT = re.compile(r"([+-]?[0-9][0-9 .,/-]*?|[+-]?[.,][0-9]+) *([^\d\s.,/+;-]+\.?)", re.ASCII)


def number(text: str) -> Fraction:
    """The number that `text` says, exactly: 12.4, 12,4, 1/4, 7 1/2 or 7½. Raises Refused for anything else.

    A comma before exactly three digits could be a decimal mark or a thousands mark: that is asked, not guessed.
    """
    found = _number(_tidied(text))
    if found is None:
        raise _refusal(text, "units.not-a-number")
    if isinstance(found, str):
        raise _refusal(text, found)
    return found


def per_10cm(text: str) -> Fraction:
    """Stitches or rows to 10 cm: a number alone, or over the length it was counted on: 3.5 per in, 28/10 cm, 14 over 4 in.

    Raises Refused.
    """
    tidied = _tidied(text)
    found = _number(tidied)
    if found is None:
        for mark in _OVER.finditer(tidied):
            count = _number(_COUNTED.sub("", tidied[: mark.start()]))
            over = tidied[mark.end() :]
            amounts = _amounts(over if over[:1].isdigit() else f"1 {over}", LENGTH_UNITS)
            size = _number(amounts[0][0]) if amounts and len(amounts) == 1 else None
            if amounts and isinstance(count, Fraction) and isinstance(size, Fraction) and size > 0:
                return count * 100 / (size * LENGTH_UNITS[amounts[0][1]])
        raise _refusal(text, "units.not-a-gauge")
    if isinstance(found, str):
        raise _refusal(text, found)
    return found


def length_mm(text: str, own: str) -> Fraction:
    """The length in mm; a bare number is in the unit `own`. Feet and inches may follow each other. Raises Refused."""
    return _quantity(text, own, LENGTH_UNITS, "units.not-a-length")


def mass_g(text: str, own: str) -> Fraction:
    """The mass in g; a bare number is in the unit `own`. Raises Refused."""
    return _quantity(text, own, MASS_UNITS, "units.not-a-mass")


def lengths_mm(text: str, own: str, most: int = MOST_MEASUREMENTS) -> tuple[Fraction, ...]:
    """Lengths separated by semicolons, at most `most`. A unit that stands only after the last one is meant for all.

    Raises Refused with a problem for each part that cannot be read.
    """
    parts = [part for part in (p.strip() for p in text.split(";")) if part]
    if not parts:
        raise _refusal(text, "units.not-a-length", own=own, units=", ".join(LENGTH_UNITS))
    if len(parts) > most:
        sentence = say("units.too-many", found=len(parts), most=most)
        raise Refused([Problem("", "units.too-many", sentence, say("units.too-many.way-out"))])
    last = _amounts(_tidied(parts[-1]), LENGTH_UNITS)
    if last and len(last) == 1 and all(_number(_tidied(p)) is not None for p in parts[:-1]):
        own = last[0][1]
    problems: list[Problem] = []
    lengths: list[Fraction] = []
    for part in parts:
        try:
            lengths.append(length_mm(part, own))
        except Refused as refused:
            problems += refused.problems
    if problems:
        raise Refused(problems)
    return tuple(lengths)


def from_mm(length_mm: Fraction, unit: str) -> Fraction:
    """The same length in `unit`, exactly."""
    return length_mm / LENGTH_UNITS[unit]


def in_language(typed: str) -> str:
    """A number as a file or a form's default has it, with the decimal mark of the language.

    Three digits after a comma could be thousands (see `number`): such a text keeps its point.
    """
    return _POINT.sub(lambda found: found[0] if len(found[1]) == 3 else f"{say('units.decimal-mark')}{found[1]}", typed)


def decimal_text(value: Fraction | int, digits: int) -> str:
    """`value` for a person, with exactly `digits` digits after the decimal mark of the language; see `point_text`."""
    return _marked(point_text(value, digits))


def point_text(value: Fraction | int, digits: int) -> str:
    """`value` for a file or a field, in every language with exactly `digits` digits after the point.

    Half a last digit goes away from zero.
    """
    scaled = (abs(Fraction(value)) * 10**digits * 2 + 1) // 2
    whole, rest = divmod(int(scaled), 10**digits)
    sign = "-" if value < 0 and scaled else ""
    return f"{sign}{whole}.{rest:0{digits}}" if digits else f"{sign}{whole}"


def short_decimal(value: Fraction | int, digits: int) -> str:
    """The same for a person without zeros at the end: 9, 4.5, 12.25."""
    return _marked(short_point(value, digits))


def short_point(value: Fraction | int, digits: int) -> str:
    """The same for a file or a field: a point in every language."""
    text = point_text(value, digits)
    return text.rstrip("0").rstrip(".") if "." in text else text


def signed_text(value: Fraction | int, digits: int) -> str:
    """A difference for a person with its sign, a true minus: +12.5, \u22123, and 0 without one."""
    text = point_text(abs(Fraction(value)), digits)
    if text.strip("0."):
        text = f"\u2212{text}" if value < 0 else f"+{text}"
    return _marked(text)


def _marked(text: str) -> str:
    return text.replace(".", say("units.decimal-mark"))


def significant(value: Fraction | int, figures: int = 4) -> str:
    """So many significant figures: 0.01653, 29.53, 1654. Whole numbers stand in full, decimals without zeros at the end."""
    size = abs(Fraction(value))
    if not size:
        return "0"
    digits = figures - 1
    while size >= 10:
        size, digits = size / 10, digits - 1
    while size < 1:
        size, digits = size * 10, digits + 1
    return short_decimal(value, max(digits, 0))


def plain(value: Fraction | int, digits: int = 6) -> int | float:
    """A number for a file: rounded exactly to `digits` decimals, whole where it is whole. The same bytes on every Python."""
    text = short_point(value, digits)
    return float(text) if "." in text else int(text)


def mixed_text(value: Fraction) -> str:
    """A fraction as it stands on a tape: 7, 1/2, 7 1/2."""
    sign = "-" if value < 0 else ""
    whole, rest = divmod(abs(value), 1)
    if not rest:
        return f"{sign}{whole}"
    return f"{sign}{whole} {rest}" if whole else f"{sign}{rest}"


def inches_text(length_mm: Fraction, parts: int = 8) -> str:
    """Inches to the nearest eighth (or other part), as on a tape: ``11 1/4 in``. What is less than half a part is told in halves
    of it, so that two millimetres are not nothing."""
    if length_mm and abs(length_mm) * 2 * parts < MM_PER_INCH:
        parts *= 2
    count = (abs(length_mm) / MM_PER_INCH * parts * 2 + 1) // 2
    return f"{mixed_text(Fraction(int(count), parts) * (-1 if length_mm < 0 else 1))} in"


def both_text(length_mm: Fraction, digits: int = 1) -> str:
    """Centimetres, and inches to the nearest eighth beside them: ``28.5 cm (11 1/4 in)``."""
    return say("units.both", metric=f"{decimal_text(length_mm / 10, digits)} cm", inches=inches_text(length_mm))


def per_inch_too(per_10cm: Fraction, digits: int = 2) -> str:
    """Stitches or rows to 10 cm, and to the inch beside them: ``29.22 (7.42 per inch)``."""
    inch = decimal_text(per_10cm * MM_PER_INCH / 100, 2)
    return say("units.per-inch-too", metric=decimal_text(per_10cm, digits), inch=inch)


def yards_too(mm: Fraction, digits: int = 0) -> str:
    """Metres of yarn, and whole yards beside them: ``375 m (410 yd)``, with spaces at which no line ends."""
    metric, yards = decimal_text(mm / 1000, digits), decimal_text(mm / LENGTH_UNITS["yd"], 0)
    return say("units.both", metric=f"{metric}\u00a0m", inches=f"{yards}\u00a0yd")


def _tidied(text: str) -> str:
    """One space between parts, signs of their own as fractions, a true minus as a hyphen, no unusual spaces."""
    if len(text) > _LONGEST:
        return ""
    for sign, fraction in _SIGNS.items():
        text = text.replace(sign, f" {fraction}")
    text = text.replace("\u2212", "-").replace("\u2044", "/")
    return " ".join(text.split())


def _number(tidied: str) -> Fraction | str | None:
    """The number; or the code of what is wrong; or None."""
    if _THOUSANDS.fullmatch(tidied):
        return "units.comma"
    if match := _DECIMAL.fullmatch(tidied):
        sign, whole, rest = (match[1], match[2], match[3]) if match[2] else (match[4], "0", match[5])
        digits = rest or ""
        value = Fraction(int(whole + digits), 10 ** len(digits))
        return -value if sign == "-" else value
    if match := _MIXED.fullmatch(tidied):
        sign, whole, above, below = match.groups()
        if int(below) == 0:
            return "units.zero-below"
        value = int(whole or 0) + Fraction(int(above), int(below))
        return -value if sign == "-" else value
    return None


def _amounts(tidied: str, units: Mapping[str, Fraction]) -> list[tuple[str, str]] | None:
    """``5 ft 3 1/2 in`` as [("5", "ft"), ("3 1/2", "in")]; None where it is nothing of the kind."""
    amounts: list[tuple[str, str]] = []
    at = 0
    while at < len(tidied):
        match = _AMOUNT.match(tidied, at)
        if match is None:
            return None
        typed = match[2].rstrip(".").lower()
        unit = _SPELLED.get(typed, typed)
        if unit not in units:
            return None
        amounts.append((match[1].strip(), unit))
        at = match.end()
        while at < len(tidied) and tidied[at] == " ":
            at += 1
    return amounts or None


def _quantity(text: str, own: str, units: Mapping[str, Fraction], code: str) -> Fraction:
    tidied = _tidied(text)
    bare = _number(tidied)
    if isinstance(bare, Fraction):
        return bare * units[own]
    amounts = None if bare else _amounts(tidied, units)
    if amounts is None:
        raise _refusal(text, bare or code, own=own, units=", ".join(units))
    total = Fraction(0)
    smaller_than: Fraction | None = None
    for typed, unit in amounts:
        value = _number(typed)
        if not isinstance(value, Fraction):
            raise _refusal(text, value or code, own=own, units=", ".join(units))
        # 5 ft 3 in, but neither 3 in 5 ft nor 5 ft -3 in nor 3 in 3 in.
        if smaller_than is not None and (units[unit] >= smaller_than or value < 0):
            raise _refusal(text, code, own=own, units=", ".join(units))
        smaller_than = units[unit]
        total += value * units[unit]
    return total


def _refusal(text: str, code: str, **values: str) -> Refused:
    shown = text.strip()
    if len(shown) > 40:
        shown = shown[:39] + "\u2026"
    return Refused([Problem("", code, say(code, found=shown), say(f"{code}.way-out", **values))])
