"""Titles, descriptions and labels inside drawings."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "draw.qr-title": "A code that opens: {title}",
    "draw.qr-desc": "A QR code of {modules} by {modules} black and white modules that holds the address of this page, {characters}"
    " characters.",
    "draw.front-caption": "Front, the knit side",
    "draw.front-title": "{title}: the finished front",
    "draw.sketch-desc": "The picture before it is planned, at true proportions.",
    "draw.front-desc": "The knit side of the finished piece, at true proportions.",
    "draw.purl-caption": "Purl side, as it hangs on the machine",
    "draw.purl-title": "{title}: the purl side on the machine",
    "draw.purl-desc": "The purl side, as it hangs on the machine and faces the knitter: the mirror image of the front.",
    "draw.piece-desc": "{stitches} wide, {rows} high.",
    "draw.order-desc": "Blocks in knitting order: {order}.",
    "draw.block-in-order": "{number} {yarn}",
    "draw.hem-bottom-plain": "Bottom hem, plain, {depth}: below the dashed line.",
    "draw.hem-bottom-picot": "Bottom hem, picot, {depth}: below the dashed line.",
    "draw.hem-top-plain": "Top hem, plain, {depth}: above the dashed line.",
    "draw.hem-top-picot": "Top hem, picot, {depth}: above the dashed line.",
    "draw.numbers-note": "Numbers 1 to {last}: the order in which the blocks are knitted.",
    "draw.slits": ("{n} slit, marked by a zigzag.", "{n} slits, marked by zigzags."),
    "draw.holes": ("{n} hole, marked by a ring.", "{n} holes, marked by rings."),
    "draw.levels-caption": "Rows on each needle at the end",
    "draw.levels-title": "{title}: rows on each needle",
    "draw.levels-desc": "A stepped line over the needles from left to right on the machine; the wanted rows are dashed.",
    "draw.levels-even": "Every needle has {rows}.",
    "draw.levels-shaped": "Shaped: {least} to {most} rows. {exact} of {needles} needles have exactly the rows wanted; none is more than {off} off.",
    "draw.levels-between": "Fewest: {least} rows ({on_least}). Most: {most} rows ({on_most}). Wanted: {wanted}.",
    "draw.bed-title": "The needle bed, as you face it",
    "draw.uwp": "UWP",
    "draw.hp": "HP",
    "draw.bed-to": "to {position}",
    "draw.bed-knitting": "{needles} knit",
    "draw.bed-held": "{needles} held",
    "draw.carriage-L": "COL",
    "draw.carriage-R": "COR",
    "draw.bed-desc": "The carriage stands on the {side}.",
    "draw.bed-desc-returning": "Returning now to upper working position: {needles}.",
    "draw.bed-desc-holding": "Going to holding position now: {needles}.",
    "draw.bed-desc-knitting": "Knitting: {needles}.",
    "draw.bed-desc-held": "Held: {needles}.",
    "draw.bed-desc-yarn": "Yarn in the feeder: {yarn}.",
    "draw.state-title": "{title}: the bed as it is now, as you face it",
    "draw.state-desc-feeder": "{yarn} is in the feeder and hangs beside {needle}.",
    "draw.state-desc-rows": "The needles have {least} to {most} rows of the picture.",
    # --- diagrams ---
    "draw.back-of-bed": "back of the bed",
    "draw.position-nwp": "NWP",
    "draw.position-nwp-word": "non-working",
    "draw.position-nwp-does": "right back, no stitch",
    "draw.position-wp": "WP",
    "draw.position-wp-word": "working",
    "draw.position-wp-does": "knits every row",
    "draw.position-uwp": "UWP",
    "draw.position-uwp-word": "upper working",
    "draw.position-uwp-does": "knits on the next pass",
    "draw.position-hp": "HP",
    "draw.position-hp-word": "holding",
    "draw.position-hp-does": "waits",
    "draw.diagram-needle-positions-title": "The four needle positions",
    "draw.diagram-needle-positions-desc": (
        "Four needles seen from above, from back to front: non-working, right back in the bed; working; "
        "upper working, further out; holding, fully forward, its stitch waiting near the bed."
    ),
    "draw.after-rows": ("after {n} row", "after {n} rows"),
    "draw.needles-knit": ("{n} needle knits", "{n} needles knit"),
    "draw.diagram-short-rows-title": "A triangle grows by short rows",
    "draw.diagram-short-rows-desc": (
        "Eight needles at three moments. One more needle is returned every two rows, so the knitting below becomes "
        "a triangle: after 2 rows one needle has knitted, after 8 rows four, after 16 rows all eight."
    ),
    "draw.wrap-knit": "these knit",
    "draw.wrap-held": "held now",
    "draw.wrap-yarn": "the yarn goes round it",
    "draw.diagram-wrap-title": "The wrap at a held needle",
    "draw.diagram-wrap-desc": (
        "Two needles knit, the third was held where the carriage stands. On its way back the yarn comes from the held "
        "needle's last stitch and passes over it to the next needle: a wrap, and no hole."
    ),
    "draw.face-front": "Front: knit side",
    "draw.face-purl": "Back: purl side",
    "draw.face-mirror": "mirror",
    "draw.diagram-front-and-purl-title": "Front and purl side are mirror images",
    "draw.diagram-front-and-purl-desc": (
        "A piece with a slanted block, seen from both sides. On the front the needles on the right of the bed lie on the left; "
        "on the purl side, which faces you at the machine, L is on the left."
    ),
    "draw.bed-middle": "middle",
    "draw.bed-left": "left of the bed",
    "draw.bed-right": "right of the bed",
    "draw.bed-no-zero": "L1 and R1 are neighbours; there is no needle 0",
    "draw.diagram-bed-numbers-title": "How needles are numbered",
    "draw.diagram-bed-numbers-desc": (
        "From the middle outward: L1, L2, L3 to the left, R1, R2, R3 to the right. There is no zero."
    ),
}
