"""Sentences of the practice room."""

from __future__ import annotations

_SIDES = {"left": "left", "right": "right"}
_WAYS = {"widening": "widening", "narrowing": "narrowing"}
_SLOPES = {
    "steep": "one needle at a time",
    "mixed": "by one and by several needles in turn",
    "shallow": "several needles at a time",
}

MESSAGES: dict[str, str | tuple[str, str]] = {
    "practice.title": "Practice: {title}",
    "practice.notes": "A sample of the piece: same yarns, same gauge, the same kinds of edges, starts and joins.",
    "practice.no-sample": "No small part of this piece makes a good sample of its own: this is the whole piece.",
    **{
        f"practice.edge-{side}-{way}-{slope}": f"Edge at the {_SIDES[side]} of a block, {_WAYS[way]}, {_SLOPES[slope]}"
        for side in _SIDES
        for way in _WAYS
        for slope in _SLOPES
    },
    "practice.edge-level": "Level edge: a block on another over many needles at one height",
    "practice.start-selvedge": "Start at a selvedge",
    "practice.start-inside": "Start inside the bed, the tail round a held needle",
    "practice.start-rested": "A yarn from the mast taken up where it hangs",
    "practice.hold-one": "Turn that holds one needle",
    "practice.hold-several": "Turn that holds several needles",
    "practice.return-one": "Turn that returns one needle",
    "practice.return-several": "Turn that returns several needles",
    "practice.wrap": "Wrap by hand",
    "practice.free-pass": "Free pass",
    "practice.join-point-below": "Block that begins in a point",
    "practice.join-point-above": "Block that ends in a point",
    "practice.join-slit": "Upright border that has to be linked",
    "practice.shaped": "A practice piece is made from a flat picture; this piece is shaped by gaps or a profile.",
    "practice.shaped.way-out": "Knit the shaped piece itself at half its width in waste yarn: its steps are the same.",
    "practice.lacks-size": "Not in the practice piece: {kind}. It needs more needles or rows than a sample has.",
    "practice.lacks-order": "Not in the practice piece: {kind}. It follows from the order of the blocks in the whole piece.",
}
