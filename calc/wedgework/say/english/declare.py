"""What is said about any field of any calculator."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "declare.yes": "Yes",
    "declare.no": "No",
    "declare.range": "{least} to {most} {unit}",
    "declare.range-per-length": "{words}, or typed like 3.5\u00a0per\u00a0in",
    "declare.range-several": "{words}; up to {most} measurements, separated by semicolons",
    "declare.range-colour": "a colour such as #3f5566",
    "declare.range-yes-no": "yes or no",
    "declare.range-text": "at most {most} characters",
    "declare.unit-stitches": "stitches",
    "declare.unit-rows": "rows",
    "declare.unit-needles": "needles",
    "declare.unit-stitches-per-10cm": "stitches per 10 cm",
    "declare.unit-rows-per-10cm": "rows per 10 cm",
    "declare.unit-percent": "%",
    "declare.unit-degrees": "degrees",
    "declare.unit-seconds": "seconds",
    "declare.unit-minutes": "minutes",
    "declare.unit-hours": "hours",
    "declare.missing": "Nothing is typed here.",
    "declare.not-a-choice": '"{found}" is not one of the choices.',
    "declare.not-a-colour": '"{found}" is not a colour.',
    "declare.too-long": '"{found}" is too long.',
    "declare.not-whole": '"{found}" is not a whole number.',
    "declare.out-of-range": "{found} is out of range.",
    "declare.way-out": "Allowed: {allowed}.",
    "declare.odd-characters": "There are characters in it that cannot be printed.",
    "declare.unknown-field": '{slug} has no field "{found}".',
    "declare.unknown-field.way-out": "Its fields: {names}.",
}
