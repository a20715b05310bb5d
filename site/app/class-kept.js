// What this device keeps that can stand in a class: the fields of the calculators, the drawing, the pieces at the machine.

import { designOf } from "./board-doc.js";
import { ask } from "./engine.js";
import { say } from "./say.js";
import { getPiece, notesUnder, piecesHere, planDigest, readNote } from "./store.js";

/** [{words, made}], `made()` resolving to the core's answer with a `fragment`. `titles` are those of the calculators. */
export async function keptThings(titles) {
  const found = [];
  const drawing = (await readNote("board"))?.doc;
  if (drawing?.rest) {
    const words = say("app.class-kept-drawing", { title: drawing.rest.title || say("app.keep-no-title") });
    found.push({ words, made: () => ask("class-kept", { ask: "board-link", design: JSON.stringify(designOf(drawing)) }) });
  }
  for (const { digest, title } of await piecesHere()) found.push({ words: say("app.class-kept-piece", { title }), made: () => linkOfPiece(digest) });
  for (const [calculator, { inputs }] of await notesUnder("last.")) {
    if (!Object.hasOwn(titles, calculator)) continue;
    const words = say("app.class-kept-fields", { title: titles[calculator] });
    found.push({ words, made: () => ask("class-kept", { ask: "link", calculator, inputs }) });
  }
  return found;
}

/** As it would be typed into the planner, which makes its plan again. */
async function linkOfPiece(digest) {
  const piece = await getPiece(digest);
  if (!piece?.design) return null;
  const told = await ask("class-kept", { ask: "board-inputs", design: JSON.stringify(piece.design) });
  if (!told || told.problems.length) return told;
  return ask("class-kept", { ask: "link", calculator: "panel-plan", inputs: told.inputs, digest: planDigest(digest) });
}
