// The way from the planner to the layout board: what is in the fields goes along, and is drawn out there.

import { PAGES } from "./places.js";
import { say } from "./say.js";
import { handTyped } from "./typed.js";

export function toBoard(live) {
  if (live.problems.length > 0) return live.told.scrollIntoView({ block: "center" }); // says what is wrong
  const there = new URL("board/", PAGES);
  if (handTyped(there.pathname, { [live.slug]: live.inputs }, "")) location.assign(there);
  else live.noteBelow(say("app.not-kept", { why: say("app.not-kept-private") }));
  return undefined;
}
