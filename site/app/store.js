// What this device keeps: pieces, and the place in each. Nothing of it leaves the device.
//
// A note (a place, which piece is open, what a piece is about) is small and is written twice: into localStorage, which is
// done when the call returns, and into IndexedDB with strict durability, which is on the disk when the promise ends. Each
// has a number that only grows; reading takes the newest. Where both refuse, notes live in memory and the caller is told.

const BASE = "wedgework";
const PREFIX = "wedgework.";
const SLOW_MS = 2000;
const REMOVED_MS = 30 * 24 * 60 * 60 * 1000;
const memory = new Map();
let opening;

/** Keep a piece. Resolves to {kept: "both" | "one" | "none"}; also after "none" it can be had while the page stays open. */
export async function putPiece(piece) {
  memory.set(`piece.${piece.digest}`, piece);
  let kept = await inBase("pieces", "readwrite", (store) => store.put(piece)).then(() => true, () => false);
  if (!kept) kept = writeLocal(`piece.${piece.digest}`, piece);
  const about = { title: piece.title, steps: piece.cues.length, rows: piece.rows, made_by: piece.made_by };
  const noted = await keepNote(`about.${piece.digest}`, about);
  return { kept: kept ? noted.kept : "none" };
}

/** The piece, or null. */
export async function getPiece(digest) {
  const found = await inBase("pieces", "readonly", (store) => store.get(digest)).catch(() => undefined);
  return found ?? readLocal(`piece.${digest}`) ?? memory.get(`piece.${digest}`) ?? null;
}

/**
 * What is kept, the last used first: [{digest, title, steps, rows, index, row, at, removed}]; index is null where nothing
 * is begun, `removed` the time it was removed, or null. What was removed long ago is deleted now.
 */
export async function listPieces() {
  const notes = await allNotes();
  const found = [];
  for (const [key, about] of notes) {
    if (!key.startsWith("about.")) continue;
    const digest = key.slice("about.".length);
    const there = notes.get(`place.${digest}`);
    const { title, steps, rows, removed = null } = about;
    if (removed !== null && Date.now() - removed > REMOVED_MS) {
      await deletePiece(digest);
      continue;
    }
    found.push({ digest, title, steps, rows, removed, index: there?.index ?? null, row: there?.row ?? 0, at: there?.at ?? about.at });
  }
  return found.sort((a, b) => b.at - a.at);
}

/** Take a piece off the list, or put it back: its place and its notes stay until it is deleted. */
export async function removePiece(digest, gone) {
  const about = await readNote(`about.${digest}`);
  return keepNote(`about.${digest}`, { ...about, removed: gone ? Date.now() : null });
}

/** Delete a piece, its place and its notes for good. */
export async function deletePiece(digest) {
  memory.delete(`piece.${digest}`);
  dropLocal(`piece.${digest}`);
  await inBase("pieces", "readwrite", (store) => store.delete(digest)).catch(() => undefined);
  for (const kind of ["about", "place", "notes"]) {
    const key = `${kind}.${digest}`;
    memory.delete(key);
    dropLocal(key);
    await inBase("notes", "readwrite", (store) => store.delete(key)).catch(() => undefined);
  }
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
  const heard = (event) => {
    if (event.key === `${PREFIX}place.${digest}` && event.newValue) {
      const note = parsed(event.newValue);
      if (note) told(note);
    }
  };
  addEventListener("storage", heard);
  return () => removeEventListener("storage", heard);
}

// --- notes, in both places -----------------------------------------------------------------------------------------

/** Keep a small note under `key`. Resolves when it is stored, to {kept: "both" | "one" | "none", n, at}. */
export async function keepNote(key, value) {
  const n = Math.max(memory.get(key)?.n ?? 0, readLocal(key)?.n ?? 0) + 1;
  const note = { ...value, key, n, at: Date.now() };
  memory.set(key, note);
  const quick = writeLocal(key, note);
  // Where localStorage answers, its number is the newest there is, of whatever window; elsewhere the base has to be asked.
  const firm = await inBase("notes", "readwrite", (store) => (quick ? store.put(note) : writeNewer(store, note))).then(() => true, () => false);
  return { kept: quick && firm ? "both" : quick || firm ? "one" : "none", n: note.n, at: note.at };
}

/** Another window may have written since: its number is read in the same transaction. */
function writeNewer(store, note) {
  const asked = store.get(note.key);
  asked.onsuccess = () => {
    if (asked.result && asked.result.n >= note.n) note.n = asked.result.n + 1;
    store.put(note);
  };
  return asked;
}

/** The newest note under `key`, or null. */
export async function readNote(key) {
  const firm = await inBase("notes", "readonly", (store) => store.get(key)).catch(() => undefined);
  return newest(newest(firm, readLocal(key)), memory.get(key)) ?? null;
}

async function allNotes() {
  const notes = new Map();
  const add = (note) => note?.key && notes.set(note.key, newest(notes.get(note.key), note));
  (await inBase("notes", "readonly", (store) => store.getAll()).catch(() => [])).forEach(add);
  for (const key of localKeys()) add(readLocal(key));
  for (const [key, note] of memory) if (!key.startsWith("piece.")) add(note);
  return notes;
}

function newest(a, b) {
  if (!a || !b) return a ?? b;
  return b.n > a.n ? b : a;
}

// --- localStorage; every use may throw ------------------------------------------------------------------------------

function localKeys() {
  try {
    return Object.keys(localStorage).filter((key) => key.startsWith(PREFIX) && !key.startsWith(`${PREFIX}piece.`)).map((key) => key.slice(PREFIX.length));
  } catch {
    return [];
  }
}

function readLocal(key) {
  try {
    return parsed(localStorage.getItem(PREFIX + key)) ?? undefined;
  } catch {
    return undefined;
  }
}

function writeLocal(key, value) {
  try {
    localStorage.setItem(PREFIX + key, JSON.stringify(value));
    return true;
  } catch {
    return false;
  }
}

function dropLocal(key) {
  try {
    localStorage.removeItem(PREFIX + key);
  } catch {
    // Where nothing can be written nothing is there.
  }
}

function parsed(text) {
  try {
    return text === null ? null : JSON.parse(text);
  } catch {
    return null;
  }
}

// --- IndexedDB ------------------------------------------------------------------------------------------------------

function database() {
  opening ??= new Promise((resolve, reject) => {
    const asked = indexedDB.open(BASE, 1); // throws where storage is switched off
    asked.onupgradeneeded = () => {
      asked.result.createObjectStore("pieces", { keyPath: "digest" });
      asked.result.createObjectStore("notes", { keyPath: "key" });
    };
    asked.onsuccess = () => {
      asked.result.onversionchange = () => asked.result.close();
      asked.result.onclose = () => (opening = undefined);
      resolve(asked.result);
    };
    asked.onerror = () => reject(asked.error);
    asked.onblocked = () => reject(new Error("blocked"));
  });
  return opening;
}

/** The result of one request, when its transaction is complete; rejects when storage refuses or answers too late. */
async function inBase(name, mode, work) {
  let late;
  const tooLate = new Promise((_, reject) => {
    late = setTimeout(() => reject(new Error("storage does not answer")), SLOW_MS);
  });
  try {
    return await Promise.race([tooLate, database().then((base) => finished(base.transaction(name, mode, { durability: "strict" }), name, work))]);
  } finally {
    clearTimeout(late);
  }
}

function finished(transaction, name, work) {
  return new Promise((resolve, reject) => {
    const asked = work(transaction.objectStore(name));
    transaction.oncomplete = () => resolve(asked.result);
    transaction.onabort = transaction.onerror = () => reject(transaction.error);
  });
}
