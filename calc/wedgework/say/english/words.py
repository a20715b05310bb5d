"""The words at the bed: instructions, cues, check lists. A key ends in the name of what it says."""

from __future__ import annotations

MESSAGES: dict[str, str | tuple[str, str]] = {
    # --- small parts ---
    "words.ordinal-1": "{n}st",
    "words.ordinal-2": "{n}nd",
    "words.ordinal-3": "{n}rd",
    "words.ordinal-other": "{n}th",
    "words.times": ("once", "{n} times"),
    "words.times-2": "twice",
    "words.hp": "HP",
    "words.uwp": "UWP",
    "words.wp": "WP",
    "words.nwp": "NWP",
    "words.side-L": "left",
    "words.side-R": "right",
    "words.where": "{side}. RC {counter}.",
    "words.col": "COL",
    "words.cor": "COR",
    "words.to": "{first} to {last}",
    "words.yarn-alike": "{name}, yarn {number}",
    "words.picot-move": "{first} to {last}",
    "words.block": "Block {number} of {count}: {name}",
    "words.block-short": "block {number}, {name}",
    # --- needles, counted from the carriage ---
    "words.move-hold-carriage": ("hold {n} needle at the carriage", "hold {n} needles at the carriage"),
    "words.move-hold-opposite": ("hold {n} needle opposite the carriage", "hold {n} needles opposite the carriage"),
    "words.move-hold-both": (
        "hold {n} needle at the carriage and {other} opposite it",
        "hold {n} needles at the carriage and {other} opposite it",
    ),
    "words.move-work-both": (
        "return {n} needle at the carriage and {other} opposite it",
        "return {n} needles at the carriage and {other} opposite it",
    ),
    "words.move-work-carriage": ("return {n} needle at the carriage", "return {n} needles at the carriage"),
    "words.move-work-opposite": ("return {n} needle opposite the carriage", "return {n} needles opposite the carriage"),
    "words.move-hold-carriage-short": "hold {n} at the carriage",
    "words.move-hold-opposite-short": "hold {n} opposite",
    "words.move-hold-both-short": "hold {n} at the carriage and {other} opposite",
    "words.move-work-carriage-short": "return {n} at the carriage",
    "words.move-work-opposite-short": "return {n} opposite",
    "words.move-work-both-short": "return {n} at the carriage and {other} opposite",
    "words.move-wrap-carriage": "pass the yarn by hand under and round the next held needle at the carriage",
    "words.move-wrap-opposite": "pass the yarn by hand under and round the next held needle opposite the carriage",
    "words.knit-rows": ("knit {n} row", "knit {n} rows"),
    "words.run": "{phrase}, {times}",
    "words.run-several": "({phrase}) {times}",
    "words.rows": "{words}. {where}",
    "words.rows-named": "{words} ({needles}). {where}",
    "words.edge-L": "left edge {needles}",
    "words.edge-R": "right edge {needles}",
    "words.moved-hold": "held: {needles}",
    "words.moved-work": "returned: {needles}",
    # --- needles, named ---
    "words.at-carriage": "At the carriage",
    "words.opposite": "Opposite the carriage",
    "words.needles-to": "{needles} to {position}",
    "words.now": "{what}.",
    "words.now-at": "{where}: {what}.",
    # --- each step, as a phrase ---
    "words.step-lever-hold": ("set the hold lever to hold", "set both hold levers to hold"),
    "words.step-lever-knit": ("set the hold lever to knit", "set both hold levers to knit"),
    "words.step-tension": "set the tension, T, to {tension}",
    "words.step-thread-edge": "thread {yarn} and hold its tail down at the edge until the first row is knitted",
    "words.step-thread-first": "thread {yarn}, the yarn of the cast-on",
    "words.step-thread-again": "take up {yarn} where it hangs on the mast and thread it; leave no slack",
    "words.step-thread-inside": (
        "thread {yarn}: under the sinker plate, over the held needles and once round {needle}, which waits in {position}; "
        "weigh the tail lightly and hold the slack up until the carriage is near"
    ),
    "words.step-cut": "cut {yarn}, leaving a tail of 20 cm",
    "words.step-rest": "take {yarn} out of the feeder and let it rest on the mast, uncut",
    "words.step-join": "join a new ball of {yarn} here, at the edge, never in the middle of a row, with 15 to 20 cm of both ends",
    "words.step-hold": "push {needles} to {position}",
    "words.step-work": "return {needles} to {position}",
    "words.step-free": "free pass to the {side}: push the carriage across without yarn until it is clear of {needle}",
    "words.step-wrap": "pass the yarn by hand under and round {needle}",
    "words.step-transfer": "move the loop of {first} to {second}; {first} stays empty in {position}",
    "words.step-hang": (
        "hang one loop of the earlier row on {needles}, beside its own stitch",
        "hang one loop of the earlier row on each of {needles}, beside their own stitches",
    ),
    "words.step-cast-on": ("cast on one loop on {needles}", "cast on one loop on each of {needles}"),
    "words.step-waste": ("knit {n} row of waste yarn over every needle", "knit {n} rows of waste yarn over every needle"),
    "words.step-waste-cord": "knit {n} rows of waste yarn over every needle, the last of them in ravel cord, end {side} and take the cord out of the feeder",
    "words.step-bind-off": "bind off {needles} loosely",
    "words.step-weigh": "put a weight under {needles}",
    "words.step-knit": "knit 1 row to the {side}",
    "words.step-remind": "remember: {about}",
    # --- hems ---
    "words.remind-hem-tighter": "for the facing set the tension, T, 1 to 2 numbers tighter than for the piece",
    "words.remind-hem-fold": "the next row is the fold: one loose row, and then the tension is set back",
    "words.remind-hem-fold-loose": (
        "the next row is the fold: set the tension, T, 2 to 4 numbers looser for this one row, and set it back after it"
    ),
    "words.remind-hem-back": "set the tension, T, back to that of the piece",
    "words.remind-hem-loose": "for the row that closes the hem set the tension, T, about 2 numbers looser than for the piece",
    "words.remind-hem-mark": "mark the last row at both ends with a thread of another colour: its loops are hung later",
    "words.picot": "Move the stitch of every second needle to its neighbour on the left: {moves}.",
    "words.picot-and-so-on": "{first}, {second} and so on, the last one {last}",
    "words.picot-empty": (
        "{n} needle is empty now and stays in {position}.",
        "{n} needles are empty now and stay in {position}.",
    ),
    "words.picot-kept": (
        "{needles}, at the right end, keeps its own stitch.",
        "{needles}, at the right end, keep their own stitches.",
    ),
    "words.hooks": "Hooks and latches are sharp: lift the loops with the transfer tool, and keep your fingers behind it.",
    "words.hang-weights-off": "Take the weights off.",
    "words.hang-weights-on": "Hang the weights again, evenly.",
    "words.hang-bottom": (
        "Fold the hem up: bring the waste yarn up in front of the bed and hang the loops of the first row of {yarn}, those along the "
        "ravel cord, on {needles}, one on each needle beside the stitch that is there."
    ),
    "words.hang-top": (
        "Fold the hem: hang the loops of the marked row on {needles}, one on each needle beside the stitch that is there."
    ),
    "words.hang-skip-none": "Skip no loop: a shift by one needle makes the whole hem lean.",
    # --- passes ---
    "words.knit-one": "Knit 1 row to the {side}.",
    "words.knit-two": "Knit 2 rows, to the {side} and back.",
    "words.knit-many": "Knit {n} rows, the first to the {side}.",
    # --- checks ---
    "words.check-wrap-one": "The yarn goes round {needle} and over no other held needle.",
    "words.check-wrap-several": "The yarn goes over {over} and round {needle}; the strand lies loosely.",
    "words.check-joined": ("{needles} has knitted.", "{needles} have knitted."),
    "words.check-left": ("{needles} has not knitted.", "{needles} have not knitted."),
    "words.check-hand": "The yarn lies under and round {needle}.",
    "words.check-hung": (
        "{needles} carries two loops; the next row knits them together.",
        "Each needle carries two loops, {needles}; the next row knits them together.",
    ),
    "words.check-layers": (
        "{needles} carries one loop again.",
        "Each needle carries one loop again, {needles}, and both layers of the hem are closed.",
    ),
    "words.check-empty": (
        "{n} needle is empty and in {position}.",
        "{n} needles are empty and in {position}, never two side by side.",
    ),
    "words.check-list-done": "Only {needles} will knit; every other needle is in {position}.",
    "words.check-all-work": "Every needle will knit, {needles}.",
    # --- next ---
    "words.next": "Next: {what}.",
    "words.next-change": "the change to {block}",
    "words.next-join": "join a new ball",
    "words.next-hang": "hang the hem",
    "words.next-transfer": "move loops to their neighbours",
    "words.next-off": "take the piece off",
    "words.next-finish": "finishing",
    "words.finish-part": "Finishing, {n} of {all}",
    "words.finish-next": "Next: finishing, {n} of {all}.",
    "words.next-nothing": "That is all.",
    # --- runs ---
    "words.nth": "{ordinal} of {times} times",
    "words.nth-part": "{ordinal} of {times} times, step {part} of {parts}",
    # --- the check list ---
    "words.change-all-forward": "Every needle fully forward in {position}.",
    "words.change-stop": "Good place to stop: weights off, carriage parked.",
    "words.change-free-warning": (
        "Before the free pass: hold lever on hold, every needle fully forward (lay a straight edge along them), "
        "yarn out of the feeder, tail and weights clear. A needle that is not in {position} drops its stitch."
    ),
    "words.change-free-beside": (
        "Free pass: the carriage stands {side} of the block already, so slide it across the held needles, "
        "without yarn, until it is "
        "just clear of {needle}."
    ),
    "words.change-slide": (
        "Every needle in {position}, yarn out of the feeder: slide the carriage across the held needles until"
        " it is clear of {needle}."
    ),
    "words.change-clear": "Move the carriage until it is just clear of {needle}.",
    "words.change-counter": "Counter to {counter}.",
    "words.change-weights": "Weights under the needles that will knit, close to both ends: {needles}.",
    "words.change-weight-point": "One light weight or a clip under {needles}, where the point begins.",
    "words.weights-up": "Move the weights up, close to both ends of the needles that knit.",
    # --- the start and the end ---
    "words.start-carriage": "Set the carriage for plain stocking stitch: no selection, weaving parts off, hold lever on knit.",
    "words.start-needles": "Bring {needles} to {position}: {count}.",
    "words.start-cast-on-closed": "Cast on {stitches} with {yarn}, closed edge, and end {side}.",
    "words.start-cast-on-waste": (
        "Cast on {stitches} with waste yarn, knit some rows, then one row with ravel cord, and end {side}."
    ),
    "words.start-cast-on-open": "Cast on {stitches} with waste yarn, the quickest way, and end {side}.",
    "words.carry-on": "Hold lever on hold. See that the bed stands as these lines say.",
    "words.carry-on-held": "In {position}: {needles}.",
    "words.carry-on-cut": "Cut {yarn}, which rests on the mast and hangs beside {needle}; leave 15 to 20 cm.",
    "words.carry-on-feeder": "{yarn} is in the feeder and hangs beside {needle}.",
    "words.carry-on-empty": "No yarn is in the feeder.",
    "words.carry-on-carriage": "{where}, the carriage just clear of the needles that knit.",
    "words.start-weights": "Hang the comb or the weights evenly.",
    "words.end-bind-off": "Bind off {stitches} loosely, at the tension of the fabric.",
    "words.end-weights": "Take the weights off.",
    "words.finish-lay": "Lay the piece flat and let it rest overnight.",
    "words.finish-press": "Treat it as the swatch was treated. Steam or an iron flattens acrylic for good.",
    "words.finish-ravel": "Pull the ravel cord out of the bottom hem: the waste yarn falls off.",
    "words.finish-hem-ends": "Sew the open ends of the hems shut.",
    "words.finish-sides": "Side hems, one after the other, when the edges lie flat, pressed lightly or pinned.",
    "words.finish-sides-hang": (
        "With the purl side toward you hang the edge, a whole edge stitch in: {stitches} over {rows}, about {hung} for every {of} rows."
    ),
    "words.finish-sides-over-bottom": (
        "At the bottom hem hang {n} stitch more, through both layers.",
        "At the bottom hem hang {n} stitches more, through both layers.",
    ),
    "words.finish-sides-over-top": (
        "At the top hem hang {n} stitch more, through both layers.",
        "At the top hem hang {n} stitches more, through both layers.",
    ),
    "words.finish-sides-sections": (
        "The bed takes the side in {n} section, on {needles} needles.",
        "The bed takes the side in {n} sections, on {needles} needles; a stitch at each inner end is for sewing them together.",
    ),
    "words.finish-sides-fold-plain": "1 loose row for the fold",
    "words.finish-sides-fold-picot": "every second stitch moved to its neighbour for the fold",
    "words.finish-sides-knit": (
        "Hold lever on knit. Knit {outside} for the outside, {fold}, then {facing} of facing, 1 to 2 tension numbers tighter."
    ),
    "words.finish-sides-close": (
        "Close it: hang the line where you picked up on the same needles and bind off both together, loosely. Sew the ends shut."
    ),
    "words.finish-sides-yarn": "Both side hems together are {stitches}, beside those of the list of yarns.",
    "words.finish-panel": "Block panel {n} to {width} wide and {height} high; all panels have to be of one height before they are sewn.",
    "words.finish-panels": (
        "When {n} panel is off the machine, it is finished.",
        "When all {n} panels are off the machine, sew them together, the knit sides toward you.",
    ),
    "words.finish-seam-left": (
        "The left edge of this panel, seen from the front, goes to panel {other}, {length}; the seam takes {n} stitch of it.",
        "The left edge of this panel, seen from the front, goes to panel {other}, {length}; the seam takes {n} stitches of it.",
    ),
    "words.finish-seam-right": (
        "The right edge of this panel, seen from the front, goes to panel {other}, {length}; the seam takes {n} stitch of it.",
        "The right edge of this panel, seen from the front, goes to panel {other}, {length}; the seam takes {n} stitches of it.",
    ),
    "words.finish-seam-how": "Match row for row from the bottom; mark every tenth row of both edges first.",
    "words.finish-join": "Sew {left} to {right}.",
    "words.panel": "panel {n}",
    "words.panels-two": "panels {first} and {last}",
    "words.panels-span": "panels {first} to {last}",
    "words.finish-edging-all": "Edging all round, {width}: with the purl side of the piece toward you cast on {stitches} beside its edge.",
    "words.finish-edging-sides": "Edging along each side, {width}: with the purl side of the piece toward you cast on {stitches} beside its edge.",
    "words.finish-edging-ends": "Edging along bottom and top, {width}: with the purl side of the piece toward you cast on {stitches} beside its edge.",
    "words.finish-edging-join": (
        "In every row, while the carriage is away from the piece, hang the next place of the edge on the needle beside it.",
        "Every {n} rows, while the carriage is away from the piece, hang the next place of the edge on the needle beside it.",
    ),
    "words.finish-edging-along-end": (
        "Along bottom and top: {rows} of edging each, {n} join over {places}, about {hung} for every {of}.",
        "Along bottom and top: {rows} of edging each, {n} joins over {places}, about {hung} for every {of}.",
    ),
    "words.finish-edging-along-side": (
        "Along each side: {rows} of edging, {n} join over {places}, about {hung} for every {of}.",
        "Along each side: {rows} of edging, {n} joins over {places}, about {hung} for every {of}.",
    ),
    "words.finish-edging-corner": (
        "At each corner knit {rows} more and hang {n} join on the corner place and on those beside it.",
        "At each corner knit {rows} more and hang {n} joins on the corner place and on those beside it.",
    ),
    "words.finish-edging-end-round": "Take the last row off on waste yarn and graft it to the first one.",
    "words.finish-edging-end-one": "Bind off, and hide the ends in the strip.",
    "words.finish-edging-yarn": "The edging is {stitches}, beside those of the list of yarns.",
    "words.finish-ends": (
        "Work in {n} end: {inside} inside the piece, {edge} at its edges.",
        "Work in {n} ends: {inside} inside the piece, {edge} at its edges.",
    ),
    "words.finish-slits": ("Sew or link {n} slit: {where}.", "Sew or link {n} slits: {where}."),
    "words.finish-slit-in-steps": (
        "from {needle} to {last}, {n} step, {rows} in all from row {row}",
        "from {needle} to {last}, {n} steps, {rows} in all from row {row}",
    ),
    "words.finish-slit": ("right of {needle}, {n} row from row {row}", "right of {needle}, {n} rows from row {row}"),
    "words.finish-holes": ("Close {n} hole: {where}.", "Close {n} holes: {where}."),
    "words.finish-hole": "beside {needle} at row {row}",
    "words.finish-wash": "Wash it as the swatch was washed.",
    "words.finish-block": "Block it to {width} wide and {height} high, and let it dry.",
    "words.finish-measure": "Measure it, and write the size and the gauge down beside the plan.",
    # --- the written instructions ---
    "words.section-piece": "The piece",
    "words.section-yarns": "Yarns",
    "words.section-key": "Words and signs",
    "words.section-cautions": "Cautions",
    "words.section-notes": "While you knit",
    "words.section-start": "Start",
    "words.section-end": "Off the machine",
    "words.section-finish": "Finishing",
    "words.piece-size": "Finished size {width} wide, {height} high: {stitches}, {rows}.",
    "words.piece-size-base": "Finished size {width} wide, {height} high, with the base rows.",
    "words.piece-size-hems": "Finished size {width} wide, {height} high, with base rows and hems.",
    "words.piece-size-edging": "Finished size {width} wide, {height} high, with the base rows, hems if there are any, and the edging.",
    "words.piece-panel": "This is panel {n} of {panels}, counted from the left of the front: stitches {first} to {last} of the picture. "
    "With its seam stitches it is {width} wide and {height} high: {stitches}, {rows}.",
    "words.piece-picture": "The picture is {width} wide and {height} high: {stitches}, {rows}.",
    "words.piece-hem-bottom": "at the bottom",
    "words.piece-hem-top": "at the top",
    "words.piece-hem-plain": "Plain hem {end}: {depth}, {outside} outside and {facing} of facing, which adds no height.",
    "words.piece-hem-picot": "Picot hem {end}: {depth}, {outside} outside and {facing} of facing, which adds no height.",
    "words.piece-gauge": "Gauge {stitches} stitches and {rows} rows per 10 cm ({stitches_in} and {rows_in} per inch), {treated}.",
    "words.piece-gauge-typed": "as you gave it",
    "words.piece-gauge-washed": "from the washed swatch",
    "words.piece-gauge-unwashed": "from the unwashed swatch",
    "words.piece-bed": "Bed of {needles} at a pitch of {pitch} mm.",
    "words.piece-needles": (
        "Needles {first} to {last}, {count}. L and R are left and right as you face the machine; there is no needle 0."
    ),
    "words.piece-odd-L": "The odd needle lies on the left.",
    "words.piece-odd-R": "The odd needle lies on the right.",
    "words.piece-blocks": ("{n} block, {ends} to work in.", "{n} blocks, {ends} to work in."),
    "words.ends": ("{n} yarn end", "{n} yarn ends"),
    "words.piece-purl": "The purl side faces you; the knit side, the front, is its mirror image.",
    "words.piece-rows": "Every needle ends with {rows}.",
    "words.piece-rows-shaped": "The piece is shaped: its needles end with {low} to {high}, on purpose.",
    "words.piece-rows-between": "The needles end with {low} to {high}.",
    "words.yarn": "{name}: {stitches}.",
    "words.yarn-tension": "{name}: {stitches}, tension T {tension}.",
    "words.key-COL": "COL, COR: the carriage stands on the left, on the right.",
    "words.key-RC": "RC: the row counter, set to {counter} at the start of each block. It reads the rows that are done.",
    "words.key-NWP": "NWP: non-working position, right back.",
    "words.key-WP": "WP: working position.",
    "words.key-UWP": (
        "UWP: upper working position. The needle knits on the next pass even while the carriage leaves held needles alone."
    ),
    "words.key-HP": "HP: holding position, fully forward. The needle does not knit while the hold lever is on hold.",
    "words.key-own": "{position} is called {own} on this machine.",
    "words.key-hold": "Hold a needle: push it to {position}.",
    "words.key-return": "Return a needle only to {position}: pushed right back by hand, its stitch slides over the latch and falls off.",
    "words.key-opposite": (
        "At the carriage: at the end of the knitting needles where the carriage stands. Opposite: at the other end."
    ),
    "words.key-T": "T: the tension number on the carriage.",
    "words.notes-clear": (
        "Take the carriage just clear of the last knitting needle, never to the end of the bed, and never "
        "turn back in the middle."
    ),
    "words.notes-weights": (
        "Weights hang under the needles that knit, close to both ends; move them up every 8 to 10 rows. Take "
        "them off for a long pause."
    ),
    "words.notes-fold": (
        "While blocks wait, the fabric hangs in folds: neighbouring needles are up to {n} row apart. That goes when "
        "the others catch up. Give a waiting block one weight at its fold.",
        "While blocks wait, the fabric hangs in folds: neighbouring needles are up to {n} rows apart. That goes when "
        "the others catch up. Give a waiting block one weight at its fold.",
    ),
    "words.notes-wrap": "Where a needle is held at the carriage, the yarn passes over it by itself: that wrap closes the border.",
    "words.notes-even": "Within a block an even count means that the carriage stands where the block began.",
    "words.notes-counter": "The counter is a hint: it can miss short rows that do not reach it. Count with the needles.",
    "words.caution-needles": "Needle hooks and latches are sharp. Keep fingers and loose sleeves out of the carriage's way.",
    "words.caution-weights": "Weights fall: nothing and nobody beneath them, shoes on your feet.",
    "words.caution-strain": "Moving the carriage strains hands, shoulders and back. Take a few minutes' break each half hour.",
    "words.caution-infants": (
        "Loose blankets do not belong in an infant's sleeping place; long loops, eyelets and tails can catch small fingers. "
        "Follow your local safety guidance."
    ),
    "words.block-begin": "{yarn}, needles {needles}, {rows}. Carriage and counter now: {where}",
    "words.block-check": "Check: {check}",
}
