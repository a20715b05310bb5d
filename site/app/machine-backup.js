// After long work: a reminder, at a good place to stop, that the piece is kept on this device alone.

import { keepNote, readNote } from "./store.js";

export const MANY_ROWS = 300;

/** The rows that no file has yet, where they are many and the person has not put it off; else 0. */
export async function unsavedRows(piece, row) {
  const done = (piece.carried?.rows ?? 0) + row;
  const saved = (await readNote("saved"))?.rows ?? {};
  const later = (await readNote("saved-later"))?.rows ?? {};
  const known = (rows) => rows[piece.digest] ?? rows[piece.carried?.from] ?? 0;
  return done - Math.max(known(saved), known(later)) >= MANY_ROWS ? done - known(saved) : 0;
}

export async function putOff(piece, row) {
  const rows = (await readNote("saved-later"))?.rows ?? {};
  return keepNote("saved-later", { rows: { ...rows, [piece.digest]: (piece.carried?.rows ?? 0) + row } });
}
