// What is seen at a place inside a step: a step of several rows can be opened, and is then one row at a time.

import { say } from "./say.js";
import { together } from "./machine-needles.js";

/** Where, needles to move, rows, run, next and bed of `cue` when `done` of its rows are knitted. */
export function seenAt(cue, { done, single }) {
  const row = cue.passes?.[done];
  if (!row || !(single || done)) {
    return { where: cue.where, now: cue.now, knit: cue.knit, run: cue.run, next: cue.next, rows: cue.rows, to: cue.to, bed: cue.bed };
  }
  const count = say("machine.row-of", { row: done + 1, rows: cue.rows });
  return {
    where: done ? row.where : cue.where,
    now: done ? [] : cue.now,
    knit: row.knit,
    run: cue.run ? `${count}; ${cue.run}` : count,
    next: done + 1 < cue.rows ? say("machine.next-row", { row: done + 2 }) : cue.next,
    rows: 1,
    to: row.carriage === "R" ? "L" : "R",
    bed: done ? afterMoves(cue.bed, row) : cue.bed,
  };
}

/** The same bed when the moves are made and some rows knitted. */
function afterMoves(bed, { carriage, beside }) {
  const knitting = together(bed.knitting, bed.returning);
  return { ...bed, knitting, held: together(bed.held, bed.holding), returning: [], holding: [], carriage, beside };
}

/** The place one row or step on, or back; null where there is none. */
export function placeAfter(cues, { index, done, single }, by) {
  const rows = (at) => Math.max(1, cues[at]?.passes?.length ?? 0);
  if (by > 0) {
    if ((single || done) && done + 1 < rows(index)) return { index, done: done + 1 };
    return cues[index + 1] ? { index: index + 1, done: 0 } : null;
  }
  if (done) return { index, done: done - 1 };
  return index ? { index: index - 1, done: single ? rows(index - 1) - 1 : 0 } : null;
}
