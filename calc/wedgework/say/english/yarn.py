"""The categories of yarn by their names."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    # As the Craft Yarn Council names them.
    "yarn.category": "{number} {name}",
    "yarn.category-lace": "Lace",
    "yarn.category-super-fine": "Super Fine",
    "yarn.category-fine": "Fine",
    "yarn.category-light": "Light",
    "yarn.category-medium": "Medium",
    "yarn.category-bulky": "Bulky",
    "yarn.category-super-bulky": "Super Bulky",
    "yarn.category-jumbo": "Jumbo",
    "yarn.finer": "none: finer than lace",
    "yarn.finer-stitches": "more than 40",
    "yarn.between": "{least} to {most}",
    "yarn.at-most": "{most} and fewer",
    "yarn.between-mm": "{least} to {most} mm",
    "yarn.at-least-mm": "{least} mm and larger",
    "yarn.balls": ("{n} ball of {grams} g", "{n} balls of {grams} g"),
    "yarn.enough": "enough, {over} g over",
    "yarn.short-by": "short by {by} g",
    "yarn.short": "short by {least} to {most} g",
    "yarn.perhaps": "it may do: between {short} g short and {over} g over",
}
