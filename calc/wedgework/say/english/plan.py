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
    "plan.no-such-block": "There is no block {block}: the blocks of this piece are b1 to {last}.",
    "plan.no-such-block.way-out": "Take one of these ids; they are counted from below, then from the left on the bed.",
    "plan.two-starts": "Block {block} is asked to begin at the left and at the right.",
    "plan.two-starts.way-out": "Keep one of the two wishes.",
    "plan.lies-below": "Block {earlier} can't come before {later}: {later} lies right below it.",
    "plan.lies-deeper": "Block {earlier} can't come before {later}: {later} lies below it, with {between} between them.",
    "plan.against-wishes": "Block {earlier} can't come before {later}: with the other wishes the order has to be {between}.",
    "plan.before-itself": "Block {earlier} can't come before itself.",
    "plan.impossible-order.way-out": "Take this wish out, or name another block.",
}
