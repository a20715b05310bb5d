"""Sentences of the plan room."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "plan.base-bottom": "Base rows",
    "plan.base-top": "Closing rows",
    "plan.block-name": "Block {number}, {yarn}",
    "plan.uneven-why": (
        "It ends {n} row away from the height of the panel: the picture is too fine here to even it out.",
        "It ends {n} rows away from the height of the panel: the picture is too fine here to even it out.",
    ),
    "plan.tension-range": "The lowest tension number, {least}, is above the highest, {most}.",
    "plan.tension-range.way-out": "Exchange them.",
    "plan.tension-outside": "Tension {tension} of {yarn} is not on this machine's dial.",
    "plan.tension-outside.way-out": "Correct it, or the tension numbers of the machine.",
    "plan.no-own-order": "An order of one's own is not planned by this version.",
    "plan.no-own-order.way-out": "Take the list out; the planner chooses an order in which everything below comes first.",
}
