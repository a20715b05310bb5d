"""The picture in the README: the design of the home page, planned, knitted on the model bed and drawn.

    PYTHONPATH=site python -m builder.picture        (make picture)

It is the one drawing that is kept in git, because a README is read where nothing can be built; a test makes it
again and compares every byte.
"""

from __future__ import annotations

from builder.parts import PIECES
from wedgework.draw import front_svg
from wedgework.formats import read_design
from wedgework.plan import plan_piece
from wedgework.replay import replay_plan

__all__ = ["NAME", "TARGET", "picture"]

NAME = "leaning-kite"
TARGET = PIECES / f"{NAME}.svg"


def picture() -> str:
    """The finished front of the small piece, as SVG."""
    plan = plan_piece(read_design((PIECES / f"{NAME}.json").read_text(encoding="utf-8")))
    drawn = front_svg(plan, replay_plan(plan))
    # The drawing is made for a page that has a colour of its own; shown alone it brings its paper.
    return drawn.replace("</desc>", '</desc><rect width="100%" height="100%" fill="#fffdf7"/>', 1) + "\n"


if __name__ == "__main__":
    TARGET.write_text(picture(), encoding="utf-8")
    print(f"Drawn: {TARGET}")
