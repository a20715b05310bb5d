// Small notes in localStorage, which is done when the call returns. Every use of it may throw.
//
// Several copies of these pages may lie on one host, so every key begins with the path of its copy. Earlier versions did
// not do so: the first copy that looks claims what they kept, for good, and goes on reading it beside its own. It is never
// thrown away, because a page of an earlier version may still be open and keep its place there.

/** The path of this copy: what is kept is named by it. */
export const PATH = new URL("../", import.meta.url).pathname;

const PREFIX = `wedgework ${PATH} `;
const FORMER = "wedgework.";
const CLAIM = "wedgework.claimed-by";
// What earlier versions kept; other keys of theirs are no notes.
const KINDS = /^(open$|shelf$|aids$|(about|last|notes|piece|place)\.)/;
const written = new Set(); // by this page, and not taken away again

/** Whether what earlier versions kept belongs to this copy. Where no other has claimed it, it does from now on. */
export function claimsFormer() {
  try {
    if (localStorage.getItem(CLAIM) === null && localKeysOf(FORMER).some((key) => KINDS.test(key))) localStorage.setItem(CLAIM, PATH);
    return [null, PATH].includes(localStorage.getItem(CLAIM));
  } catch {
    return true; // no other can claim it either
  }
}

const localKeysOf = (prefix) => Object.keys(localStorage).filter((key) => key.startsWith(prefix)).map((key) => key.slice(prefix.length));

/** The keys of all notes; of pieces only those in `withPieces`. */
export function localKeys() {
  try {
    const former = claimsFormer() ? localKeysOf(FORMER).filter((key) => KINDS.test(key)) : [];
    return [...new Set([...localKeysOf(PREFIX), ...former])].filter((key) => !key.startsWith("piece."));
  } catch {
    return [];
  }
}

/** The newest that is there under `key`, or undefined. */
export function readLocal(key) {
  try {
    const mine = parsed(localStorage.getItem(PREFIX + key)) ?? undefined;
    const former = claimsFormer() ? parsed(localStorage.getItem(FORMER + key)) ?? undefined : undefined;
    return newest(mine, former);
  } catch {
    return undefined;
  }
}

/** True when it is kept. */
export function writeLocal(key, value) {
  try {
    if (localStorage.onlyHere) return false; // see the page's head
    localStorage.setItem(PREFIX + key, JSON.stringify(value));
    written.add(key);
    return true;
  } catch {
    return false;
  }
}

export function dropLocal(key) {
  try {
    written.delete(key);
    localStorage.removeItem(PREFIX + key);
    if (claimsFormer()) localStorage.removeItem(FORMER + key);
  } catch {
    // Where nothing can be written nothing is there.
  }
}

/** Whether something that this page wrote is gone, though no window took it away: a person or the browser cleared it. */
export function wasCleared() {
  try {
    return [...written].some((key) => localStorage.getItem(PREFIX + key) === null);
  } catch {
    return false;
  }
}

addEventListener("storage", ({ key, newValue }) => {
  if (key?.startsWith(PREFIX) && newValue === null) written.delete(key.slice(PREFIX.length)); // deleted in another window
});

/** Calls `told(note)` when another window writes the note under `key`; gives back how to stop it. */
export function whenWritten(key, told) {
  const heard = (event) => {
    if (event.key !== PREFIX + key && !(event.key === FORMER + key && claimsFormer())) return;
    const note = parsed(event.newValue);
    if (note) told(note);
  };
  addEventListener("storage", heard);
  return () => removeEventListener("storage", heard);
}

/** The one with the greater number. */
export function newest(a, b) {
  if (!a || !b) return a ?? b;
  return b.n > a.n ? b : a;
}

function parsed(text) {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
}
