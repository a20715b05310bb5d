"""Heads and cells of the tables on the reference pages."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "site.size-name": "Size",
    "site.size-cm": "cm",
    "site.size-inches": "inches",
    "site.size-source": "From",
    "site.size-by": "{width}\u00a0\u00d7 {height}",
    "site.weight-name": "Category",
    "site.weight-stitches": "Stitches in 10 cm",
    "site.weight-needles": "Needles for hand knitting",
    "site.weight-between": "{least} to {most}",
    "site.weight-fewer": "{most} and fewer",
    "site.weight-between-mm": "{least} to {most} mm",
    "site.weight-larger": "{least} mm and larger",
}
