"""What looks wrong with a swatch."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "gauge.ratio-unusual": "There are {ratio} rows to a stitch; in stocking stitch it lies between {least} and {most}.",
    "gauge.ratio-unusual.way-out": "Count again. Were turns counted as rows, or was the swatch pulled?",
    "gauge.stitches-unusual": "{found} stitches per 10 cm is outside what hand-operated machines knit, {least} to {most}.",
    "gauge.stitches-unusual.way-out": "Look at the units: were millimetres, centimetres or inches meant?",
    "gauge.small-swatch": "The swatch is small: below {stitches} stitches or {rows} rows its edges weigh too much.",
    "gauge.small-swatch.way-out": "Count 40 stitches and 60 rows between marks, away from the edges.",
    "gauge.wide-spread": "The measurements lie {percent} % apart.",
    "gauge.wide-spread.way-out": "Let the swatch rest flat and measure again; leave out a measurement that was a slip.",
    "gauge.large-change": "Washing changes it by {percent} %: that is a lot.",
    "gauge.large-change.way-out": "Look at the units, and whether the same stitches and rows were measured.",
}
