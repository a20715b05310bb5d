"""The words of the calculator of hems."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    "calculators.hem.title": "Hem",
    "calculators.hem.what": "A plain or picot hem by its depth: rows, fold, tensions, needles to empty, and where the carriage ends.",
    "calculators.hem.group-hem": "The hem",
    "calculators.hem.group-piece": "The piece it belongs to",
    "calculators.hem.group-tension": "Tension",
    "calculators.hem.kind.label": "Fold",
    "calculators.hem.kind.help": "A picot fold is a row of eyelets that folds into small points.",
    "calculators.hem.kind.plain": "Plain",
    "calculators.hem.kind.picot": "Picot",
    "calculators.hem.where.label": "At the",
    "calculators.hem.where.help": "The bottom is where the piece is cast on, the top where it is bound off.",
    "calculators.hem.where.bottom": "Bottom",
    "calculators.hem.where.top": "Top",
    "calculators.hem.depth.label": "Depth",
    "calculators.hem.depth.help": "Of the finished hem, from the fold to the piece.",
    "calculators.hem.facing.label": "Facing",
    "calculators.hem.facing.help": "The half that lies inside. Sources differ; the reason stands with the answer.",
    "calculators.hem.facing.equal": "As many rows as the outside",
    "calculators.hem.facing.shorter": "One row fewer, to be grafted",
    "calculators.hem.facing.longer": "One row more, to be sewn down",
    "calculators.hem.stitches.label": "Stitches",
    "calculators.hem.stitches.help": "Needles of the piece; an odd number is best for picots.",
    "calculators.hem.stitches_per_10cm.label": "Stitches per 10 cm",
    "calculators.hem.stitches_per_10cm.help": "Of a swatch treated as the piece will be, washed or not.",
    "calculators.hem.rows_per_10cm.label": "Rows per 10 cm",
    "calculators.hem.rows_per_10cm.help": "Single passes, not turns.",
    "calculators.hem.carriage.label": "Carriage before the hem",
    "calculators.hem.carriage.help": "Where it stands before the first row of the hem's own yarn, as you face the machine.",
    "calculators.hem.carriage.left": "On the left",
    "calculators.hem.carriage.right": "On the right",
    "calculators.hem.tension.label": "Main tension",
    "calculators.hem.tension.help": "The number on the dial for the piece.",
    "calculators.hem.facing_tighter.label": "Facing tighter by",
    "calculators.hem.facing_tighter.help": "Usual: 1 to 2 numbers, so that the facing lies flat behind the outside.",
    "calculators.hem.fold_looser.label": "Fold row looser by",
    "calculators.hem.fold_looser.help": "Usual: 2 to 4 numbers above the main tension, for one row only.",
    # --- the answer ---
    "calculators.hem.figures-plain-bottom": "Plain hem at the bottom, from the cast-on up",
    "calculators.hem.figures-plain-top": "Plain hem at the top, from the piece up",
    "calculators.hem.figures-picot-bottom": "Picot hem at the bottom, from the cast-on up",
    "calculators.hem.figures-picot-top": "Picot hem at the top, from the piece up",
    "calculators.hem.outside": "Outside",
    "calculators.hem.facing-rows": "Facing",
    "calculators.hem.fold": "Fold",
    "calculators.hem.at-tension": "at tension {tension}",
    "calculators.hem.depth": "Depth",
    "calculators.hem.depth-note": "the outside at the gauge of the piece",
    "calculators.hem.needles": "Needles",
    "calculators.hem.span": "{first} to {last}",
    "calculators.hem.carriage-after": "The carriage ends",
    "calculators.hem.carriage-note": "after {rows} with the hem's own yarn",
    "calculators.hem.on-left": "on the left",
    "calculators.hem.on-right": "on the right",
    "calculators.hem.picture": "The strip before it is folded, and the hem from the side",
    "calculators.hem.picture-bottom": "To scale, a part of the width, as it hangs on the machine: the facing is knitted first and hangs lowest.",
    "calculators.hem.picture-top": "To scale, a part of the width, with the piece below: the outside is knitted first, the facing after the fold.",
    "calculators.hem.picot": "The picot fold",
    "calculators.hem.emptied": "Needles to empty",
    "calculators.hem.emptied-span": "{first} and every second one to {last}",
    "calculators.hem.points": "Points",
    "calculators.hem.points-note": "whole ones; half a point lies at each end",
    "calculators.hem.pitch": "From point to point",
    "calculators.hem.pitch-note": "two stitches",
    "calculators.hem.count": "Number of stitches",
    "calculators.hem.odd": "odd",
    "calculators.hem.even": "even",
    "calculators.hem.odd-note": "both ends keep one stitch of their own",
    "calculators.hem.even-note": "the last two stitches on the right stay as they are",
    "calculators.hem.steps": "What to do",
    "calculators.hem.step-waste": (
        "Cast on with waste yarn over {needles}, hold lever on knit. Knit about 8 rows and one row of ravel cord, ending with the "
        "carriage {side}. Then the hem's own yarn."
    ),
    "calculators.hem.step-knit": (
        "Tension {tension}: knit {n} row. The carriage stands {side}.",
        "Tension {tension}: knit {n} rows. The carriage stands {side}.",
    ),
    "calculators.hem.step-empty": (
        "Empty every second needle: move the stitch of {needles} to the neighbour on its left. Leave the empty needles in working "
        "position (WP)."
    ),
    "calculators.hem.step-fold": "Tension {tension}: knit 1 row for the fold. The carriage stands {side}. Turn the tension back, to {back}.",
    "calculators.hem.step-hang-equal": (
        "Take the weights off. Bring the waste yarn up in front of the bed and hang the loops of the first row in the hem's own yarn, "
        "each on its own needle, beside the stitch that is there."
    ),
    "calculators.hem.step-hang-shorter": (
        "To graft later: knit on and leave the waste yarn in; after the piece is off, graft the loops of the first row to the row behind "
        "the top of the outside. Or hang them now, one row early, each on its own needle."
    ),
    "calculators.hem.step-hang-longer": (
        "To sew later: knit on and leave the waste yarn in; after the piece is off, sew the loops of the first row down, one by one. "
        "Or hang them now, one row late, each on its own needle."
    ),
    "calculators.hem.step-join": (
        "The next row is the first of the piece and knits both layers together, with the carriage starting {side}. Knit it 1 or 2 numbers "
        "looser if it goes hard, and turn the tension back."
    ),
    "calculators.hem.step-ravel": "Pull out the ravel cord; the waste yarn falls off.",
    "calculators.hem.step-mark": "Hold lever on knit. Mark the last row of the piece at both ends with a thread: its loops are hung later.",
    "calculators.hem.step-hang-top": "Take the weights off. Hang the loops of the marked row, each on its own needle.",
    "calculators.hem.step-loose": "Turn the tension up, to {tension}: knit 1 loose row over both layers. The carriage stands {side}.",
    "calculators.hem.step-off": "Bind off loosely.",
    "calculators.hem.adds": "What it adds",
    "calculators.hem.adds-length": "To the length of the piece",
    "calculators.hem.adds-length-note": "the outside only; the facing lies behind it",
    "calculators.hem.adds-rows": "Rows to knit",
    "calculators.hem.adds-rows-note": "without waste yarn",
    "calculators.hem.adds-stitches": "Stitches to knit",
    "calculators.hem.adds-yarn": "Yarn",
    "calculators.hem.metres": "about {length}",
    "calculators.hem.yarn-note": "{least} to {most} m by the geometry of loops; weigh your swatch to know better, with the yarn needs page",
    "calculators.hem.why": "Why so",
    "calculators.hem.why-equal": (
        "Facing and outside have the same rows: usual on a machine, where the loops are hung and knitted in. The tighter facing is "
        "a little shorter and pulls the fold inside."
    ),
    "calculators.hem.why-shorter": "The facing has a row fewer: grafting makes a row of its own.",
    "calculators.hem.why-longer": "The facing has a row more: it has to reach behind the stitches that it is sewn to.",
    "calculators.hem.why-side-bottom": "The side on which the carriage ends is the side from which the piece begins.",
    "calculators.hem.why-side-top": "The side on which the carriage ends is the side from which you bind off: the yarn hangs there.",
    # --- what is wrong ---
    "calculators.hem.too-tight": "{tighter} numbers tighter than {tension} is below the end of the dial.",
    "calculators.hem.too-tight.way-out": "Take less, or change to a thinner yarn for the facing.",
    "calculators.hem.too-loose": "The fold row would need tension {tension}; dials end at {most} or before.",
    "calculators.hem.too-loose.way-out": "Turn the dial as far as it goes for that row.",
    "calculators.hem.shallow": "A hem has at least {rows} rows outside; this one is deeper than you asked for.",
    "calculators.hem.shallow.way-out": "Take a deeper hem, or an edging instead.",
}
