// The page of the time offers what was measured at the machine: the pace that is kept with the place in a piece.

import { median } from "./machine-pace.js";
import { element, say } from "./say.js";
import { listPieces, place } from "./store.js";

const ENOUGH = 5; // measured steps, as at the machine

/** A button that fills in the own seconds; nothing where nothing was measured yet. */
export async function ownPace(live) {
  const found = await measured();
  if (!found) return;
  const words = say("app.pace-measured", { title: found.title });
  const button = element("button", { type: "button", class: "ww-button ww-button--quiet", title: say("app.pace-measured-help") }, words);
  button.addEventListener("click", async () => {
    await live.fill(found.seconds);
    live.note(say(found.seconds.seconds_per_block_change ? "app.pace-taken" : "app.pace-taken-rows", { title: found.title, n: found.rows }));
  });
  live.box.querySelector(".ww-actions").append(button);
}

/** {title, rows, seconds}: of the piece that was knitted last and has enough; `seconds` by field of the page. */
async function measured() {
  for (const { digest, title, removed } of await listPieces()) {
    const { rows = [], changes = [] } = (removed === null && (await place(digest))?.pace) || {};
    if (rows.length < ENOUGH) continue;
    // A measured row begins when the one before is done: setting its needles is in it.
    const seconds = { seconds_per_pass: tenths(median(rows)), seconds_per_change: "0" };
    if (changes.length) seconds.seconds_per_block_change = tenths(median(changes));
    return { title, rows: rows.length, seconds };
  }
  return null;
}

function tenths(ms) {
  return String(Math.round(ms / 100) / 10);
}
