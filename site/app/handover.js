// The way from the planner to the machine: the piece is asked of the core, kept on this device, and opened there.

import { ask } from "./engine.js";
import { PAGES } from "./places.js";
import { say } from "./say.js";

/** What is in the fields, opened at the machine. */
export async function toMachine(live) {
  live.note();
  let told;
  try {
    told = await ask("piece", { ask: "piece", inputs: live.inputs });
  } catch {
    live.render();
    return;
  }
  if (told === null) return;
  if (told.piece === null) {
    await live.changed(0); // says what is wrong, beside the fields
    return;
  }
  // What the page showed before anything was typed is the piece that the page at the machine has of its own.
  const { inputs, result } = JSON.parse(live.box.dataset.answer).answer;
  const failed = await takeToMachine(told.piece, { digest: result.steps_digest, title: inputs.title });
  if (failed) live.note(failed);
}

/** Keeps the piece, opens it and goes there; resolves to a sentence where it cannot be kept. `example`: see store.apart. */
export async function takeToMachine(made, example) {
  const failed = await keep(made, example).catch((fault) => {
    console.info(`The piece was not kept: ${fault}`);
    return "private";
  });
  if (failed) return say("app.not-kept", { why: say(`app.not-kept-${failed}`) });
  location.assign(new URL("machine/", PAGES));
  return "";
}

/** Why it cannot be kept, or nothing. */
async function keep(made, example) {
  const store = await import("./store.js");
  const piece = await store.apart(made, example);
  const { kept, full } = await store.putPiece(piece);
  if (kept === "none") return full ? "full" : "private";
  await store.openPiece(piece.digest);
  return "";
}
