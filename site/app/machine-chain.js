// A piece that was carried on from what is there: it has the plan that it had before, and the one for the rest. Both are kept.
//
// The note `carried.DIGEST` says where the piece of that plan goes on: {to, was}. `to` is null when the person went back to
// the plan before; `was` is then the one that she left. That note is the last thing to be written: up to it nothing has
// changed, after it the piece is the new plan's, whenever the browser is closed.

import { getPiece, keepNote, openPiece, putPiece, readNote, setPlace } from "./store.js";

const key = (digest) => `carried.${digest}`;

/** Where a plan goes on, as kept: {to, was}, or null. */
export const carriedNote = (digest) => readNote(key(digest));
export const carriedKey = key;

/** The plan that the piece of `piece` has now. */
export async function lastPlan(piece) {
  const to = (await carriedNote(piece.digest))?.to;
  const next = to ? await getPiece(to) : null;
  return next ? lastPlan(next) : piece;
}

/** The plans before, the nearest first. */
export async function plansBefore(piece) {
  const found = [];
  for (let from = piece.carried; from; ) {
    const notes = (await readNote(`notes.${from.from}`))?.notes ?? {};
    found.push({ ...from, notes });
    from = (await getPiece(from.from))?.carried;
  }
  return found;
}

/**
 * Go on with the plan of the rest that the core made: `now` is the place that is left, {piece, index, done, single, pace}.
 * Resolves to the new piece; null where this device cannot keep it, and then nothing has changed.
 */
export async function carryOn(now, made) {
  const old = now.piece;
  const number = (old.carried?.number ?? 0) + 1;
  const rows = (old.carried?.rows ?? 0) + old.cues[now.index].row_before + now.done;
  const carried = { from: old.digest, number, index: now.index, done: now.done, rows, at: Date.now() };
  // Two plans of one piece may have the same steps: the number keeps them apart.
  const piece = { ...made, digest: `${made.digest}.${number}`, carried };
  await putPiece(old);
  const { kept } = await putPiece(piece);
  if (kept === "none") return null;
  await setPlace(piece.digest, 0, { done: 0, single: now.single, ticks: [], undo: null, pace: now.pace, row: 0 });
  await keepNote(key(old.digest), { to: piece.digest, was: piece.digest });
  await openPiece(piece.digest);
  return piece;
}

/** Back to the plan before; its place is the one that was left. */
export async function planBefore(piece) {
  await keepNote(key(piece.carried.from), { to: null, was: piece.digest });
  await openPiece(piece.carried.from);
  return piece.carried.from;
}

/** Forward again to the plan that was left. */
export async function planAgain(digest, was) {
  await keepNote(key(digest), { to: was, was });
  await openPiece(was);
  return was;
}
