// From the board straight to the machine: the piece is asked of the core, kept on this device, and opened there.

import { ask } from "./engine.js";
import { takeToMachine } from "./handover.js";
import { inWords } from "./problems.js";

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
    board.status.textContent = inWords(told.problems);
    return;
  }
  const failed = await takeToMachine(told.piece, { digest: "", title: "" });
  if (failed) board.status.textContent = failed;
}
