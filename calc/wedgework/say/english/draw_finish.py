"""Words in the drawings about starts, ends, hems, seams, washing and mishaps."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "draw.cast-on-closed": "closed edge",
    "draw.cast-on-waste": "on waste yarn",
    "draw.cast-on-open": "open loops",
    "draw.cast-on-cord": "ravel cord",
    "draw.cast-on-yarn": "waste",
    "draw.diagram-cast-on-title": "Two ways to begin, and what the second one leaves",
    "draw.diagram-cast-on-desc": (
        "Three strips of knitting. The first has a closed lower edge. The second hangs on waste yarn, with one row of ravel cord between. "
        "In the third the cord is out and the waste yarn gone: its lowest loops are open, to be hung, grafted or sewn."
    ),
    "draw.several-1": "before the pass toward the edge",
    "draw.several-2": "after it",
    "draw.several-1-does": "two of the three to hold; the pass goes right",
    "draw.several-2-does": "the last one to hold; the yarn goes round it",
    "draw.diagram-several-to-hold-title": "Three needles to hold in one step",
    "draw.diagram-several-to-hold-desc": (
        "Six needles at two moments. First two needles at the right end go to holding position and the carriage passes to the right. "
        "Then, with the carriage there, the third goes to hold, and the yarn of the next row goes round it on its way left."
    ),
    "draw.hem-hung-both": "both layers on one needle",
    "draw.hem-hung-you": "you",
    "draw.diagram-hem-hung-title": "A hem that is hung, from the side",
    "draw.diagram-hem-hung-desc": (
        "The strip hangs from the needle, turns at the fold and comes up again on your side of the bed. "
        "Its first loops are put on the needle beside the last stitch, so that the next row knits both together."
    ),
    "draw.corner-lapped": "lapped",
    "draw.corner-mitred": "mitred",
    "draw.corner-butted": "butted",
    "draw.diagram-corners-title": "Three corners",
    "draw.diagram-corners-desc": (
        "A corner of a piece with hems on two sides. Lapped: the side hem runs over the end of the other one. Mitred: both end "
        "on a slant and meet. Butted: the upper hem runs on to the corner, and the side hem ends against it."
    ),
    "draw.edge-stitch": "the edge stitch",
    "draw.edge-needles": "needles",
    "draw.edge-rows": "8 rows of the side edge: hang 3, leave out 1",
    "draw.diagram-edge-hung-title": "A side edge hung on needles",
    "draw.diagram-edge-hung-desc": (
        "Eight rows of the side edge lie side by side. Needles hold six of them, a whole edge stitch in; every fourth row is left out."
    ),
    "draw.seam-edge": "front sides up, edges side by side",
    "draw.seam-under": "under two rungs on one side, then on the other",
    "draw.seam-takes": "it takes up to a stitch from each edge",
    "draw.diagram-seam-title": "A seam from the front",
    "draw.diagram-seam-desc": (
        "Two edges lie side by side with their fronts up. The thread goes under two rungs beside the edge stitch on one side, then under two "
        "on the other, and is drawn together."
    ),
    "draw.pins-corners": "1 to 4: corners",
    "draw.pins-middles": "5 to 8: middles",
    "draw.pins-between": "9 and on: between",
    "draw.diagram-pinning-title": "The order of the pins",
    "draw.diagram-pinning-desc": (
        "A rectangle with twelve numbered pins. First the four corners, opposite ones after each other, then the middles of the sides, "
        "then the places between."
    ),
    "draw.dropped-rungs": "rungs: one for each row",
    "draw.dropped-loop": "the dropped stitch",
    "draw.dropped-latch": "a latch tool, below the ladder",
    "draw.diagram-dropped-title": "A dropped stitch and its ladder",
    "draw.diagram-dropped-desc": (
        "Between two pieces of whole knitting a ladder of bars leads down to a loop. A latch tool holds the loop, and "
        "takes rung after rung through it."
    ),
}
