// The bed as the page believes it to be at a place of a piece: read off the record, so that the person only says what differs.

import { place, rangeName, together } from "./machine-needles.js";

export const EARLIER = "earlier"; // the part of the picture that was there before a plan of the rest

/** Whether the rest can be planned anew from there: in the picture, or where it is just finished. */
export function canCarryOn(piece, { index, done }) {
  const cue = piece.cues[index];
  const parts = piece.picture?.parts.filter((part) => part.number > 0) ?? [];
  if (!parts.length || !cue.block) return false;
  if (parts.some((part) => part.block === cue.block)) return index > 0 || Boolean(piece.state);
  const last = Math.max(...parts.flatMap((part) => part.columns.map((column) => column[4])));
  return cue.kind === "block-change" && !done && cue.row_before >= last;
}

/** The state, as the format has it, at {index, done}: before the moves of that step, or after so many of its rows. */
export function believed(piece, { index, done }) {
  if (!index && !done) return piece.state;
  const cue = piece.cues[done ? index : index - 1];
  const { bed } = cue;
  const open = together(bed.knitting, bed.returning);
  const carriage = done ? cue.passes[done].carriage : cue.carriage_after;
  const feeder = piece.yarns.findIndex((yarn) => yarn.id === bed.yarn);
  const resting = new Map();
  for (const [at, yarn, needle] of piece.rests ?? []) {
    if (at > cue.index) break;
    if (needle) resting.set(yarn, needle);
    else resting.delete(yarn);
  }
  return {
    format: "wedgework-state",
    version: 1,
    first_needle: piece.cues[0].bed.first,
    rows: rowsOn(piece, piece.cues[index].row_before + done),
    held: together(bed.held, bed.holding).flatMap(needles),
    carriage,
    ...(feeder >= 0 && open.length ? { feeder: { yarn: bed.yarn, needle: carriage === "R" ? open.at(-1)[1] : open[0][0] } } : {}),
    mast: [...resting].map(([yarn, needle]) => ({ yarn: piece.yarns[yarn].id, needle })),
  };
}

/** Rows of the picture on each needle from the first on, when so many rows of the piece are done. */
function rowsOn(piece, row) {
  const all = piece.picture.box[0];
  const rows = new Array(all).fill(0);
  for (const part of piece.picture.parts) {
    if (!part.number && part.block !== EARLIER) continue;
    // Columns are counted from the left of the front, which is the right of the bed.
    for (const [column, , count, first, last] of part.columns) rows[all - 1 - column] += row >= last ? count : Math.max(0, Math.min(count, row - first + 1));
  }
  return rows;
}

function needles([first, last]) {
  const found = [];
  for (let n = first; n <= last; n += 1) if (n) found.push(n);
  return found;
}

/** Needles as runs, L20-L12, R3: as a person would write them. */
export function runsOf(list) {
  const runs = [];
  for (const n of list.toSorted((a, b) => a - b)) {
    const run = runs.at(-1);
    if (run && place(n) === place(run[1]) + 1) run[1] = n;
    else runs.push([n, n]);
  }
  return runs.map(rangeName).join(", ");
}
