"""Words in the drawings of the calculators."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "draw.disc-title": "The circle that it makes",
    "draw.disc": ("{n} wedge; dashed the true circle, thick the seam", "{n} wedges; dashed the true circle, thick the seam"),
    "draw.wedge-title": "One wedge, turn by turn",
    "draw.wedge": "{stitches}, {rows} at the outer edge",
    "draw.wedge-inner": "inner edge",
    "draw.wedge-outer": "outer edge",
    "draw.line-title": "Stitches against tension",
    "draw.line-desc": "Tension {tension} gives {stitches} stitches per 10 cm.",
    "draw.line-stitches": "stitches per 10 cm",
    "draw.line-tension": "tension",
    "draw.panels-title": "The panels from the front",
    "draw.panels": ("{n} panel, seen from the front", "{n} panels, seen from the front"),
    "draw.panels-seam": "seam {order}",
    "draw.shaping-title": "Where the changes fall",
    "draw.shaping-rows": "{rows}, {changes} at an edge",
    "draw.shaping-stitches": "{stitches}, {changes}",
    "draw.shaping-changes": ("{n} change", "{n} changes"),
}
