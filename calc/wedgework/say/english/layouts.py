"""Sentences of the named layouts: title, how it knits, and a label for each parameter.

Layouts that share a parameter share its label, so that a form needs one field for it.
"""

from __future__ import annotations

__all__ = ["MESSAGES"]


GROUND = "Yarn of the ground"
BANDS = "Number of bands"
ACROSS = "Blocks across the panel"
UP = "Blocks up the panel"
BLOCKS = "Yarns of the blocks, taken in turn"
YARNS = "Yarns, taken in turn"
RISE = "How far a border rises, as a part of the panel's height"
FROM_BELOW = "Yarns of the bands, from below"

MESSAGES: dict[str, str | tuple[str, str]] = {
    "layout.single-diamond.title": "Single diamond",
    "layout.single-diamond.how-it-knits": (
        "The ground up to the lower point, its two arms beside the diamond, the diamond itself, two arms above it, and "
        "the rest of the ground on top. It joins by itself as long as the diamond is no more than one turn high for every "
        "needle of its width."
    ),
    "layout.single-diamond.diamond_width.label": "Width of the diamond, as a part of the panel's width",
    "layout.single-diamond.diamond_height.label": "Height of the diamond, as a part of the panel's height",
    "layout.single-diamond.ground.label": GROUND,
    "layout.single-diamond.diamond.label": "Yarn of the diamond",
    "layout.diamond-in-corners.title": "Diamond between corners",
    "layout.diamond-in-corners.how-it-knits": (
        "Two lower corners, then the diamond from its lower point, then two upper corners. Every border joins by itself."
    ),
    "layout.diamond-in-corners.diamond.label": "Yarn of the diamond",
    "layout.diamond-in-corners.corners.label": "Yarn of the corners",
    "layout.nested-diamonds.title": "Nested diamonds",
    "layout.nested-diamonds.how-it-knits": (
        "Bands of diamonds from the outside in. Below the middle every band is knitted before the one inside it, above "
        "the middle after it."
    ),
    "layout.nested-diamonds.bands.label": BANDS,
    "layout.nested-diamonds.corners.label": "Yarn of the corners",
    "layout.nested-diamonds.diamonds.label": "Yarns of the diamonds, from the outside in",
    "layout.diamond-lattice.title": "Diamond lattice",
    "layout.diamond-lattice.how-it-knits": (
        "Diamonds point to point, row by row: first the ground below a row, then its diamonds, then the ground between "
        "them and the next row, which is made of diamonds too. Neighbours of different yarns meet in a point; those of "
        "one yarn grow together there for a turn."
    ),
    "layout.diamond-lattice.across.label": ACROSS,
    "layout.diamond-lattice.up.label": UP,
    "layout.diamond-lattice.ground.label": GROUND,
    "layout.diamond-lattice.blocks.label": BLOCKS,
    "layout.half-diamonds.title": "Half diamonds",
    "layout.half-diamonds.how-it-knits": (
        "Half diamonds stand on the side edges, those of the left between those of the right, and the ground runs to and "
        "fro between them. The ground is knitted in pieces, by turns with the half diamonds, and each of these begins and "
        "ends at its selvedge."
    ),
    "layout.half-diamonds.up.label": UP,
    "layout.half-diamonds.depth.label": "How far a point reaches in, as a part of the panel's width",
    "layout.half-diamonds.ground.label": GROUND,
    "layout.half-diamonds.blocks.label": BLOCKS,
    "layout.kites.title": "Kites",
    "layout.kites.how-it-knits": (
        "Diamonds with the long point downward, row by row like a lattice. The long sides are the steep ones: a kite "
        "joins by itself as long as its widest place lies no more than one turn up for every needle to either side."
    ),
    "layout.kites.across.label": ACROSS,
    "layout.kites.up.label": UP,
    "layout.kites.ground.label": GROUND,
    "layout.kites.blocks.label": BLOCKS,
    "layout.hourglass.title": "Hourglass",
    "layout.hourglass.how-it-knits": (
        "The lower triangle of an hourglass narrows to a waist of two needles; then the ground on both sides is knitted, "
        "past the waist and narrowing upwards; then the upper triangle widens over it."
    ),
    "layout.hourglass.across.label": ACROSS,
    "layout.hourglass.up.label": UP,
    "layout.hourglass.ground.label": GROUND,
    "layout.hourglass.blocks.label": BLOCKS,
    "layout.flying-triangles.title": "Flying triangles",
    "layout.flying-triangles.how-it-knits": (
        "Each triangle begins on its whole base and narrows to a point of two needles; then the ground fills the row up "
        "on both sides. Every border is a slope that joins by itself, and the base of the next row lies level on all of "
        "them."
    ),
    "layout.flying-triangles.across.label": ACROSS,
    "layout.flying-triangles.up.label": UP,
    "layout.flying-triangles.ground.label": GROUND,
    "layout.flying-triangles.blocks.label": BLOCKS,
    "layout.half-square-triangles.title": "Half-square triangles",
    "layout.half-square-triangles.how-it-knits": (
        "Squares cut by a diagonal into two triangles. An upright border would be a slit, so the upright sides lean by "
        "one needle every two rows, to the right in one row and to the left in the next; in each row the blocks are "
        "knitted one after the other, each on the slope of the one before."
    ),
    "layout.half-square-triangles.across.label": ACROSS,
    "layout.half-square-triangles.up.label": UP,
    "layout.half-square-triangles.ground.label": GROUND,
    "layout.half-square-triangles.blocks.label": BLOCKS,
    "layout.pinwheel.title": "Pinwheel",
    "layout.pinwheel.how-it-knits": (
        "Four blades about the middle. The blade below narrows to the middle and the one above widens from it, both with "
        "borders as steep as they join, one needle every two rows; so these two are wider than the blades at the sides, "
        "which lie above and below a level line."
    ),
    "layout.pinwheel.blade_height.label": "How high a side blade is at the edge, as a part of the panel's height",
    "layout.pinwheel.ground.label": GROUND,
    "layout.pinwheel.blocks.label": BLOCKS,
    "layout.hexagons.title": "Hexagons",
    "layout.hexagons.how-it-knits": (
        "Hexagons, flat below and above, with sides that lean by one needle every two rows; every second column lies half "
        "a hexagon higher. Each hexagon widens over the two beside it while they narrow, and begins level on the one "
        "below. With three yarns no two neighbours share one."
    ),
    "layout.hexagons.across.label": ACROSS,
    "layout.hexagons.up.label": UP,
    "layout.hexagons.yarns.label": YARNS,
    "layout.chevron-bands.title": "Chevron bands",
    "layout.chevron-bands.how-it-knits": (
        "Bands that go up and down in points: the valleys are filled first, then the band runs on as long as its whole "
        "width is reached."
    ),
    "layout.chevron-bands.bands.label": BANDS,
    "layout.chevron-bands.points.label": "Points across the panel",
    "layout.chevron-bands.rise.label": RISE,
    "layout.chevron-bands.yarns.label": FROM_BELOW,
    "layout.zigzag-bands.title": "Zigzag bands",
    "layout.zigzag-bands.how-it-knits": (
        "Bands side by side that lean to the right and to the left by turns, one needle every two rows. Each leans over "
        "its neighbour, and at the next bend the neighbour leans over it: so they are knitted in pieces, from bend to "
        "bend, beginning on the side that is leant on."
    ),
    "layout.zigzag-bands.bands.label": BANDS,
    "layout.zigzag-bands.bends.label": "Bends from the lower edge to the upper",
    "layout.zigzag-bands.yarns.label": YARNS,
    "layout.sawtooth.title": "Sawtooth",
    "layout.sawtooth.how-it-knits": (
        "Bands across with toothed borders. A tooth rises slowly and falls by one needle every two rows, the steepest "
        "that joins by itself; all teeth of a border are knitted one by one, then the gaps between them, then the next "
        "band runs over its whole width."
    ),
    "layout.sawtooth.bands.label": BANDS,
    "layout.sawtooth.teeth.label": "Teeth across the panel",
    "layout.sawtooth.rise.label": RISE,
    "layout.sawtooth.yarns.label": FROM_BELOW,
    "layout.steps.title": "Steps",
    "layout.steps.how-it-knits": (
        "Bands whose borders climb like stairs from the lower left to the upper right. Treads are level; risers lean by "
        "one needle every two rows instead of standing upright, so nothing has to be linked. Each band is one block."
    ),
    "layout.steps.bands.label": BANDS,
    "layout.steps.steps.label": "Treads from side to side",
    "layout.steps.rise.label": RISE,
    "layout.steps.yarns.label": FROM_BELOW,
    "layout.trapezoid-bands.title": "Trapezoid bands",
    "layout.trapezoid-bands.how-it-knits": (
        "In each band trapezoids stand on their long side and on their short side by turns. Those on their long side are "
        "knitted first and narrow; the others begin between them and widen over them. Sides lean by one needle every two "
        "rows, and the bands meet level."
    ),
    "layout.trapezoid-bands.bands.label": BANDS,
    "layout.trapezoid-bands.across.label": ACROSS,
    "layout.trapezoid-bands.yarns.label": YARNS,
    "layout.parallelogram-braid.title": "Parallelogram braid",
    "layout.parallelogram-braid.how-it-knits": (
        "Strips come up from the left and from the right by turns, each lying over the end of the one before, as in a "
        "braid. Every strip is one leaning block, and the order is simple: left, right, left, right, from below."
    ),
    "layout.parallelogram-braid.strips.label": "Strips of one side from the lower edge to the upper",
    "layout.parallelogram-braid.yarns.label": YARNS,
    "layout.ridge-line.title": "Ridge line",
    "layout.ridge-line.how-it-knits": (
        "Mountains behind each other; the first yarn is the sky, and the nearest ridge lies lowest. A ridge is knitted "
        "over its whole width up to the saddles, then peak by peak; then the valleys are filled, and where two of them "
        "meet over a lower peak they go on as one."
    ),
    "layout.ridge-line.ridges.label": "Ridges behind each other",
    "layout.ridge-line.peaks.label": "Peaks of a ridge",
    "layout.ridge-line.rise.label": RISE,
    "layout.ridge-line.yarns.label": YARNS,
    "layout.sunrise.title": "Sunrise",
    "layout.sunrise.how-it-knits": (
        "A sun on the lower edge, then wedges on both sides from below, each on the slope of the one before, and at last "
        "the middle wedge, which opens from the sun by one needle every two rows on either side. Borders of the lower "
        "wedges are shallow near the side edges and show small stairs."
    ),
    "layout.sunrise.rays.label": "Wedges on each side",
    "layout.sunrise.sun_width.label": "Width of the sun, as a part of the panel's width",
    "layout.sunrise.sky.label": "Yarn of the sky",
    "layout.sunrise.light.label": "Yarn of the light",
    "layout.sunrise.sun.label": "Yarn of the sun",
}
