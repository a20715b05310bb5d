// From the board straight to the machine: the piece is asked of the core, kept on this device, and opened there.

import { ask } from "./engine.js";
import { PAGES } from "./places.js";
import { say } from "./say.js";
import { apart, openPiece, putPiece } from "./store.js";

export async function toMachine(board, inputs) {
  let told;
  try {
    told = await ask("piece", { ask: "piece", inputs });
  } catch {
    board.say("no-engine");
    return;
  }
  if (told === null) return;
  if (told.piece === null) {
    board.status.textContent = told.problems.map(({ sentence, way_out: out }) => `${sentence} ${out}`.trim()).join(" ");
    return;
  }
  const piece = await apart(told.piece, { digest: "", title: "" });
  const { kept, full } = await putPiece(piece);
  if (kept === "none") {
    board.status.textContent = say("app.not-kept", { why: say(full ? "app.not-kept-full" : "app.not-kept-private") });
    return;
  }
  await openPiece(piece.digest);
  location.assign(new URL("machine/", PAGES));
}
