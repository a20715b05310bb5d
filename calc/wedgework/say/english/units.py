"""Sentences about numbers and lengths as typed."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "units.decimal-mark": ".",
    "units.both": "{metric} ({inches})",
    "units.not-a-number": '"{found}" is not a number.',
    "units.not-a-number.way-out": "Type it like 12, 12.4, 12,4 or 7 1/2.",
    "units.per-inch-too": "{metric} ({inch} per inch)",
    "units.not-a-gauge": '"{found}" is not a number of stitches or rows to a length.',
    "units.not-a-gauge.way-out": "Type it like 14, 3 1/2 per in or 28 over 4 in; a number alone is to 10 cm.",
    "units.not-a-length": '"{found}" is not a length.',
    "units.not-a-length.way-out": "Type it like 12.4 cm, 124 mm or 5 1/4 in; a number alone is in {own}. Units: {units}.",
    "units.not-a-mass": '"{found}" is not a weight.',
    "units.not-a-mass.way-out": "Type it like 100 g or 3 1/2 oz; a number alone is in {own}. Units: {units}.",
    "units.comma": '"{found}" can be read in two ways: the comma may stand before decimals or between thousands.',
    "units.comma.way-out": "Type it with a point before decimals, and without a mark between thousands.",
    "units.zero-below": '"{found}" has a zero below the line.',
    "units.zero-below.way-out": "Type it like 12, 12.4, 12,4 or 7 1/2.",
    "units.too-many": "{found} measurements were given; at most {most} are taken.",
    "units.too-many.way-out": "Leave some out, or give their mean.",
}
