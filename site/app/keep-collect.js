// Everything that this device keeps, as the core wants it for a project file.

import { designOf } from "./board-doc.js";
import { listClasses } from "./class-store.js";
import { plansBefore } from "./machine-chain.js";
import { noted, reportOf, saysSomething } from "./report-doc.js";
import { shelfYarns } from "./shelf.js";
import { getPiece, listPieces, notesUnder, place, planDigest, readNote } from "./store.js";

const LONGEST_NOTE = 1000;

/** {kept, rows, lost}: `kept` is the question's, `rows` the rows of each piece that are done, `lost` titles that cannot be read. */
export async function everythingKept() {
  const [pieces, rows, lost] = [[], {}, []];
  for (const head of await listPieces()) {
    if (head.removed !== null) continue;
    const piece = await getPiece(head.digest);
    if (!piece) {
      lost.push(head.title);
      continue;
    }
    let before = null;
    for (const { from } of (await plansBefore(piece)).toReversed()) before = await addPlan(pieces, await getPiece(from), before);
    await addPlan(pieces, piece, before);
    rows[piece.digest] = (piece.carried?.rows ?? 0) + head.row;
  }
  const fields = [...(await notesUnder("last."))].map(([calculator, { inputs }]) => ({ calculator, inputs }));
  const drawing = (await readNote("board"))?.doc;
  const classes = (await listClasses()).map(({ doc }) => doc);
  return { kept: { pieces, yarns: await shelfYarns(), fields, designs: drawing ? [designOf(drawing)] : [], classes }, rows, lost };
}

/** Its place in the list; `before` is that of the plan that the piece had earlier. */
async function addPlan(pieces, piece, before) {
  if (!piece) return before;
  const there = await place(piece.digest);
  const notes = (await readNote(`notes.${piece.digest}`))?.notes ?? {};
  const pace = there?.pace ?? {};
  const done = stepsDone(piece, there);
  const { report } = reportOf(piece, { digest: planDigest(piece.digest), steps_done: done, pace, note: await noted(piece.digest) });
  pieces.push({
    // An earlier version stored no plan: then the core makes it again, if it makes the same one.
    ...(piece.plan ? { plan: piece.plan } : { design: piece.design, digest: planDigest(piece.digest) }),
    steps_done: done,
    row_seconds: (pace.rows ?? []).map(seconds),
    change_seconds: (pace.changes ?? []).map(seconds),
    pauses: (pace.pauses ?? []).map(([begun, ms]) => ({ at: new Date(begun).toISOString(), seconds: seconds(ms) })),
    step_notes: Object.entries(notes).map(([index, text]) => ({ steps_done: Math.max(0, piece.cues[index]?.first_step ?? 0), text: text.slice(0, LONGEST_NOTE) })),
    ...(before === null ? {} : { carried_from: before }),
    ...(saysSomething(report) ? { report: { format: "wedgework-report", version: 1, ...report } } : {}),
  });
  return pieces.length - 1;
}

const seconds = (ms) => Math.round(ms) / 1000;

/** Steps of the plan that are done at a place of its piece. */
export function stepsDone(piece, there) {
  const cue = piece.cues[there?.index ?? 0];
  if (!cue || !there?.index) return there?.done && cue ? cue.last_step + 1 - cue.rows + there.done : 0;
  return there.done ? cue.last_step + 1 - cue.rows + there.done : cue.first_step;
}

/** {index, done} where so many steps of the plan are done. */
export function placeAt(piece, steps) {
  if (!steps) return { index: 0, done: 0 };
  const index = Math.max(0, piece.cues.findLastIndex((cue) => cue.first_step <= steps));
  const cue = piece.cues[index];
  const done = Math.max(0, Math.min(cue.rows - 1, steps - (cue.last_step + 1 - cue.rows)));
  return { index, done: cue.rows > 1 ? done : 0 };
}
