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
    # What stands in fields before anybody has typed: names and lines of our own invention. Each is the default as declared.
    "declare.default-lap-blanket": "Lap blanket",
    "declare.default-chalk": "Chalk",
    "declare.default-slate": "Slate",
    "declare.default-rust": "Rust",
    "declare.default-r25-1-more": "R25: 1 more",
    "declare.default-7d5a7c-plum-9-m-9bb39a-sage-5-m-ecd9a0-s": (
        "#7d5a7c Plum 9 m\n#9bb39a Sage 5 m\n#ecd9a0 Straw 3 m\n#c98a6b Clay 7 m"
    ),
    "declare.default-efe8d8-chalk-180-g-1-2-m-g-wool-3f5566-s": (
        "#efe8d8 Chalk, 180 g, 1.2 m/g, wool\n"
        "#3f5566 Slate, 90 g, 1.2 m/g, wool\n"
        "#b4533f Rust, 75 g, 1.2 m/g, wool\n"
        "#7a8f5a Moss, 80 g, 1.2 m/g, wool\n"
        "#d9a441 Amber, 70 g, 1.2 m/g, cotton\n"
        "#6d4a6b Plum, 90 g, 1.2 m/g, wool\n"
        "#a9c1c9 Mist, 140 g, 1.2 m/g, wool"
    ),
    "declare.default-wool": "wool",
    "declare.default-one-size": "One size",
    "declare.default-l53-l37-98-rows-l36-l35-97-l34-l19-95-to": (
        "L53-L37: 98 rows\n"
        "L36-L35: 97\n"
        "L34-L19: 95 to 65\n"
        "L18-L16: 65\n"
        "L15-L12: 66\n"
        "L11-L4: 65\n"
        "L3-L2: 66\n"
        "L1-R1: 65\n"
        "R2-R6: 67 to 75\n"
        "R7-R11: 76\n"
        "R12-R15: 75\n"
        "R16-R18: 76\n"
        "R19: 75\n"
        "R20-R24: 76\n"
        "R25: 78\n"
        "R26-R35: 79 to 97\n"
        "R36: 97\n"
        "R37-R53: 98"
    ),
}
