"""The layout board's own part of the core: what one draws on, how the drawing was judged, what would make it easier to knit.

    surface(design)                      # the same design with every shape drawn out, and the sheet that it lies on
    found = judge(design)                # planned, knitted on the model bed, told place by place as seen from the front
    for change in changes(found): ...    # drawings that may be easier; `weighed` says whether one is
    from_cells(design, colours, cells)   # a picture of coloured cells as a drawing

Places are in needles and rows from the lower left corner of the finished front.
"""

from __future__ import annotations

from wedgework.board.changes import Change, changes
from wedgework.board.effort import Weighed, effort_of, weighed
from wedgework.board.judgement import Judgement, judge, judged_value
from wedgework.board.pictures import from_cells, from_letters
from wedgework.board.surface import Surface, rules_value, surface

__all__ = [
    "Change",
    "Judgement",
    "Surface",
    "Weighed",
    "changes",
    "effort_of",
    "from_cells",
    "from_letters",
    "judge",
    "judged_value",
    "rules_value",
    "surface",
    "weighed",
]
