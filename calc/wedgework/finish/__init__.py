"""What a design wants round its picture, in rows, stitches and tension numbers: hems at ends and sides, an edging, seams.

    hem = end_hem(design, sizes, "bottom")          # None where none is wanted
    hem.outside, hem.facing, hem.fold, hem.rows     # rows; the outside alone adds to the height
    side = side_hem(design, sizes, rows_high)       # along the finished edge, when the piece is off the machine
    strip = strip_of(design, sizes, rows_high)      # an edging knitted on afterwards
    joins(4)                                        # panels of one picture, in the order in which they are sewn

The planner makes steps of it, the model bed compares the steps with it, the words tell it; the mathematics is that of
`wedgework.hems` and `wedgework.pickups`.
"""

from __future__ import annotations

from wedgework.finish.edging import Run, Strip, edging_mm, strip_of
from wedgework.finish.end_hems import END_HEMS, Dial, End, EndHem, dial_of, end_hem, hem_rows
from wedgework.finish.joining import joins, outer_sides, seam_turns
from wedgework.finish.side_hems import SideHem, finished_width_mm, side_hem

__all__ = [
    "END_HEMS",
    "Dial",
    "End",
    "EndHem",
    "Run",
    "SideHem",
    "Strip",
    "dial_of",
    "edging_mm",
    "end_hem",
    "finished_width_mm",
    "hem_rows",
    "joins",
    "outer_sides",
    "seam_turns",
    "side_hem",
    "strip_of",
]
