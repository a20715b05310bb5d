"""What the window with the fabric of a piece says."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "app.fabric": "Stitch by stitch",
    "app.fabric-window": "The fabric; scroll to move it",
    "app.fabric-whole": "Whole piece",
    "app.fabric-whole-help": "All of it in the window.",
    "app.fabric-farther": "Farther",
    "app.fabric-farther-help": "More of the piece, smaller stitches.",
    "app.fabric-nearer": "Nearer",
    "app.fabric-nearer-help": "Larger stitches, until each is a V.",
    "app.fabric-back": "Back",
    "app.fabric-back-help": "The purl side, the mirror image of the front.",
    "app.fabric-legend": "Colours",
    "app.fabric-numbers": "Block numbers",
    "app.fabric-numbers-help": "In knitting order.",
    "app.fabric-png": "Save as picture (PNG)",
    "app.fabric-png-help": "Of all stitches, this side.",
    "app.fabric-svg": "Save as drawing (SVG)",
    "app.fabric-svg-help": "Of all stitches, this side, at its true size.",
    "app.fabric-seen-front": "{title}, the finished front: {stitches} stitches across, {rows} rows up.",
    "app.fabric-seen-back": "{title}, the back: {stitches} stitches across, {rows} rows up.",
    "app.fabric-offset": "Start at",
    "app.fabric-second-offset": "Second ball starts at",
    "app.fabric-metres": "{metres} m",
    "app.fabric-begin": "Cut and begin",
    "app.fabric-begin-block": "Block",
    "app.fabric-begin-colour": "Colour it begins with",
    "app.fabric-block": "Block {number}",
    "app.fabric-begin-cost": "{colour}: {metres} m to wind off",
    "app.fabric-begin-do": "Do so",
}
