// The way from the planner to the machine: the piece is asked of the core, kept on this device, and opened there.

import { ask } from "./engine.js";
import { element, say } from "./say.js";

/** The button under a plan. */
export function machineButton(live) {
  const button = element("button", { type: "button", class: "ww-button" }, say("app.at-the-machine"));
  button.title = say("app.at-the-machine-help");
  button.addEventListener("click", () => open(live));
  return button;
}

async function open(live) {
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
  try {
    const store = await import("./store.js");
    const { kept } = await store.putPiece(told.piece);
    if (kept === "none") throw new Error("storage refuses");
    await store.openPiece(told.piece.digest);
  } catch (fault) {
    console.info(`The piece was not kept: ${fault}`);
    live.note(say("app.not-kept", { why: say("app.not-kept-private") }));
    return;
  }
  location.assign(new URL("../machine/", import.meta.url));
}
