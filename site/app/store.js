// What this device keeps: pieces, and the place in each. Nothing of it leaves the device.
//
// A note (a place, which piece is open, what a piece is about) is small and is written twice: into localStorage, which is
// done when the call returns, and into IndexedDB with strict durability, which is on the disk when the promise ends. Each
// has a number that only grows; reading takes the newest. Where both refuse, notes live in memory and the caller is told.

import { inBase, onLost, orGiveUp } from "./store-base.js";
import { PATH, dropLocal, localKeys, newest, readLocal, wasCleared, whenWritten, writeLocal } from "./store-local.js";

const REMOVED_MS = 30 * 24 * 60 * 60 * 1000;
const MOST_ALIKE = 99;
const MOST_HELD = 4; // pieces
const OWN = /^(board$|shelf$|class\.)/; // notes that are a person's own work
const memory = new Map(); // what this page kept, and the pieces that it read last

/**
 * Keep a piece. Resolves to {kept: "both" | "one" | "none", full}; also after "none" it can be had while the page stays
 * open. `full` says that there is no room, which a person can mend.
 */
export async function putPiece(piece) {
  hold(piece);
  let full = false;
  const refused = (fault) => {
    full = fault?.name === "QuotaExceededError";
    return false;
  };
  let kept = await inBase("pieces", "readwrite", (store) => store.put(piece)).then(() => true, refused);
  if (!kept) kept = writeLocal(`piece.${piece.digest}`, piece);
  const about = { title: piece.title, steps: piece.cues.length, rows: piece.rows, made_by: piece.made_by, from: piece.carried?.from ?? null };
  const noted = await keepNote(`about.${piece.digest}`, about);
  if (kept) keepForGood();
  return { kept: kept ? noted.kept : "none", full };
}

/** In memory too, so that it can be put back if what is stored is cleared under this page. */
function hold(piece) {
  const key = `piece.${piece.digest}`;
  memory.delete(key);
  memory.set(key, piece);
  const held = [...memory.keys()].filter((one) => one.startsWith("piece."));
  for (const old of held.slice(0, -MOST_HELD)) memory.delete(old);
}

/**
 * The piece under a digest of its own: two pieces of the same steps with different titles are two pieces, each with its
 * place. `example` is the piece {digest, title} that the page at the machine shows where nothing is open.
 */
export async function apart(piece, example) {
  for (let n = 1; n <= MOST_ALIKE; n += 1) {
    const digest = n === 1 ? piece.digest : `${piece.digest}-${n}`;
    const there = await readNote(`about.${digest}`);
    const title = digest === example.digest ? example.title : (there?.title ?? piece.title);
    if (title === piece.title && (there?.title ?? title) === title) return { ...piece, digest };
  }
  return piece;
}

/** The digest of a piece's plan, which alike pieces and the plans of a rest have at the head of their own. */
export const planDigest = (digest) => digest.split(/[.-]/)[0];

/** The pieces that are there, as `listPieces` has them: neither removed nor lost. */
export const piecesHere = async () => (await listPieces()).filter(({ removed, lost }) => removed === null && !lost);

/** The piece, or null. */
export async function getPiece(digest) {
  const key = `piece.${digest}`;
  const found = (await inBase("pieces", "readonly", (store) => store.get(digest)).catch(() => undefined)) ?? readLocal(key) ?? memory.get(key) ?? null;
  if (found) hold(found);
  return found;
}

/**
 * What is kept, the last used first: [{digest, title, steps, rows, index, row, at, removed, lost}]; index is null where nothing
 * is begun, `removed` the time it was removed, or null, `lost` whether the device has thrown the piece itself away. What was
 * removed long ago is deleted now.
 */
export async function listPieces() {
  const notes = await allNotes();
  const held = await inBase("pieces", "readonly", (store) => store.getAllKeys()).catch(() => null);
  const isLost = (digest) => held !== null && !held.includes(digest) && !memory.has(`piece.${digest}`) && readLocal(`piece.${digest}`) === undefined;
  const found = [];
  for (const [key, about] of notes) {
    if (!key.startsWith("about.")) continue;
    const digest = key.slice("about.".length);
    if (!isLast(notes, digest, about)) continue;
    const there = notes.get(`place.${digest}`);
    const { title, steps, rows, removed = null } = about;
    if (removed !== null && Date.now() - removed > REMOVED_MS) {
      await deletePiece(digest);
      continue;
    }
    found.push({ digest, title, steps, rows, removed, lost: isLost(digest), index: there?.index ?? null, row: there?.row ?? 0, at: there?.at ?? about.at });
  }
  return found.sort((a, b) => b.at - a.at);
}

/** A piece that was carried on has several plans, and is listed once: by the one that it has now (machine-chain.js). */
function isLast(notes, digest, about) {
  const next = notes.get(`carried.${digest}`)?.to;
  if (next && notes.has(`about.${next}`)) return false;
  const before = about.from && notes.has(`about.${about.from}`) ? notes.get(`carried.${about.from}`) : undefined;
  return before === undefined || before.to === digest;
}

/** Take a piece off the list, or put it back: its place and its notes stay until it is deleted. */
export async function removePiece(digest, gone) {
  const about = await readNote(`about.${digest}`);
  return keepNote(`about.${digest}`, { ...about, removed: gone ? Date.now() : null });
}

/** Delete a piece, its place and its notes for good; and with it the plans that it had before, or that were given up. */
export async function deletePiece(digest) {
  memory.delete(`piece.${digest}`);
  dropLocal(`piece.${digest}`);
  await inBase("pieces", "readwrite", (store) => store.delete(digest)).catch(() => undefined);
  const [about, carried] = [await readNote(`about.${digest}`), await readNote(`carried.${digest}`)];
  for (const kind of ["about", "place", "notes", "carried", "report"]) await dropNote(`${kind}.${digest}`);
  if (about?.from && (await readNote(`carried.${about.from}`))?.to === digest) await deletePiece(about.from);
  if (carried?.was && !carried.to) await deletePiece(carried.was);
}

/** From now on the page at the machine shows this piece. In localStorage when the call returns. */
export function openPiece(digest) {
  return keepNote("open", { digest });
}

/** The digest of the piece to show, or null. */
export async function openedPiece() {
  return (await readNote("open"))?.digest ?? null;
}

/** The place in a piece: {index, at, n, ...what was kept with it}, or null. */
export function place(digest) {
  return readNote(`place.${digest}`);
}

/** Keep the place. Resolves when it is stored, to {kept: "both" | "one" | "none", n, at}. */
export function setPlace(digest, index, more = {}) {
  return keepNote(`place.${digest}`, { ...more, index });
}

/** Calls `told(note)` when another window moves the place of `digest`; gives back how to stop it. */
export function placeMovedElsewhere(digest, told) {
  return noteKeptElsewhere(`place.${digest}`, told);
}

/** Calls `told(note)` when another window keeps the note under `key`; gives back how to stop it. */
export function noteKeptElsewhere(key, told) {
  return whenWritten(key, told);
}

// --- notes, in both places -----------------------------------------------------------------------------------------

/** Keep a small note under `key`. Resolves when it is stored, to {kept: "both" | "one" | "none", n, at}. */
export async function keepNote(key, value) {
  if (wasCleared()) await putBack();
  const n = Math.max(memory.get(key)?.n ?? 0, readLocal(key)?.n ?? 0) + 1;
  const note = { ...value, key, n, at: Date.now() };
  memory.set(key, note);
  const quick = writeLocal(key, note);
  // Where localStorage answers, its number is the newest there is, of whatever window; elsewhere the base has to be asked.
  const firm = await inBase("notes", "readwrite", (store) => (quick ? store.put(note) : writeNewer(store, note))).then(() => true, () => false);
  if (OWN.test(key) && (quick || firm)) keepForGood();
  return { kept: quick && firm ? "both" : quick || firm ? "one" : "none", n: note.n, at: note.at };
}

/** Another window may have written since: its number is read in the same transaction. */
function writeNewer(store, note) {
  const asked = store.get(note.key);
  asked.onsuccess = orGiveUp(store.transaction, () => {
    if (asked.result && asked.result.n >= note.n) note.n = asked.result.n + 1;
    store.put(note);
    store.transaction.commit?.();
  });
  return asked;
}

/** Delete a note for good. */
export async function dropNote(key) {
  memory.delete(key);
  dropLocal(key);
  await inBase("notes", "readwrite", (store) => store.delete(key)).catch(() => undefined);
}

/** The newest note under `key`, or null. */
export async function readNote(key) {
  const firm = await inBase("notes", "readonly", (store) => store.get(key)).catch(() => undefined);
  return newest(newest(firm, readLocal(key)), memory.get(key)) ?? null;
}

/** The newest notes under keys that begin so: what follows in the key, and the note. */
export async function notesUnder(begin) {
  const found = new Map();
  for (const [key, note] of await allNotes()) if (key.startsWith(begin)) found.set(key.slice(begin.length), note);
  return found;
}

async function allNotes() {
  const notes = new Map();
  const add = (note) => note?.key && notes.set(note.key, newest(notes.get(note.key), note));
  (await inBase("notes", "readonly", (store) => store.getAll()).catch(() => [])).forEach(add);
  for (const key of localKeys()) add(readLocal(key));
  for (const [key, note] of memory) if (!key.startsWith("piece.")) add(note);
  return notes;
}

// --- what the browser does with it ----------------------------------------------------------------------------------

/** Calls `tell()` when what was stored here was cleared while this page is open, after it was put back. */
export function whenCleared(tell) {
  addEventListener("wedgework-cleared", tell);
}

onLost(() => putBack());

let puttingBack;

/** A person, or the browser, cleared what was stored: what this page knows is stored again. */
function putBack() {
  puttingBack ??= (async () => {
    for (const [key, value] of memory) {
      if (key.startsWith("piece.")) await inBase("pieces", "readwrite", (store) => store.put(value)).catch(() => writeLocal(key, value));
      else {
        writeLocal(key, value);
        await inBase("notes", "readwrite", (store) => store.put(value)).catch(() => undefined);
      }
    }
    dispatchEvent(new CustomEvent("wedgework-cleared"));
  })().finally(() => (puttingBack = undefined));
  return puttingBack;
}

const ASKED = `wedgework.asked-to-keep ${PATH}`;

/** Once something of a person's own is saved, the browser is asked, once, not to throw it away. */
function keepForGood() {
  try {
    if (localStorage.getItem(ASKED) !== null) return;
    localStorage.setItem(ASKED, "yes");
    navigator.storage?.persist?.().catch(() => {});
  } catch {
    // nothing is kept here
  }
}
