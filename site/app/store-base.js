// The database of this copy: pieces by digest, notes by key. Every call rejects where storage refuses or does not answer.
//
// One engine keeps a page that was left in its memory, and with it whatever that page had begun to write: nobody else can
// then read or write there until that page is gone. So nothing is begun on leaving, and what is under way is given up; a
// note is in localStorage by then. A base that is silent all the same is left alone for a while, so that no step waits for it.

import { PATH, claimsFormer, newest } from "./store-local.js";

const BASE = `wedgework ${PATH}`;
const FORMER = "wedgework"; // of versions that did not tell the copies on one host apart
const TAKEN = "taken-over"; // the note that says that what lay there was copied
const SLOW_MS = { notes: 2_000, pieces: 10_000 };
const DEAF_MS = 30_000;
const STORES = { pieces: "digest", notes: "key" };
const underWay = new Set();
let opening;
let base = null;
let leaving = false;
let deafUntil = 0;
let whenLost = () => undefined;

/** Calls `call` when the browser closes the database by itself, as it does when a person clears what is stored. */
export const onLost = (call) => (whenLost = call);

addEventListener("pagehide", () => {
  leaving = true;
  for (const transaction of underWay) {
    try {
      transaction.abort();
    } catch {
      // It is being finished.
    }
  }
  base?.close();
  [base, opening] = [null, undefined];
});
addEventListener("pageshow", () => (leaving = false));

/**
 * The result of the request that `work(store)` makes, when it is on the disk. The notes are given up sooner than a piece:
 * they are kept in localStorage too.
 */
export async function inBase(name, mode, work) {
  if (leaving || (name === "notes" && performance.now() < deafUntil)) throw new Error("storage is not asked now");
  let late;
  const tooLate = new Promise((_, reject) => {
    late = setTimeout(() => {
      deafUntil = performance.now() + DEAF_MS;
      reject(new Error("storage does not answer"));
    }, SLOW_MS[name]);
  });
  try {
    return await Promise.race([tooLate, database().then((open) => finished(open.transaction(name, mode, { durability: "strict" }), work))]);
  } finally {
    clearTimeout(late);
  }
}

/** `work(...stores)` may ask for more when its request succeeds; a write is finished at once when it does not. */
function finished(transaction, work) {
  underWay.add(transaction);
  return new Promise((resolve, reject) => {
    const asked = work(...[...transaction.objectStoreNames].map((name) => transaction.objectStore(name)));
    if (transaction.mode === "readwrite" && asked && !asked.onsuccess) transaction.commit?.();
    transaction.oncomplete = () => resolve(asked?.result);
    transaction.onabort = transaction.onerror = () => reject(transaction.error ?? new Error("storage was left"));
  }).finally(() => underWay.delete(transaction));
}

function database() {
  opening ??= openMine().catch((fault) => {
    opening = undefined; // the next call tries again
    throw fault;
  });
  return opening;
}

async function openMine() {
  const mine = await opened(BASE, (made) => {
    for (const [name, keyPath] of Object.entries(STORES)) made.createObjectStore(name, { keyPath });
  });
  mine.onversionchange = () => {
    mine.close();
    [base, opening] = [null, undefined];
  };
  mine.onclose = () => {
    [base, opening] = [null, undefined];
    whenLost();
  };
  base = mine;
  if (claimsFormer()) await takeOver(mine).catch((fault) => console.info(`What an earlier version kept was not copied: ${fault}`));
  return mine;
}

function opened(name, upgrade) {
  return new Promise((resolve, reject) => {
    const asked = indexedDB.open(name, 1); // throws where storage is switched off
    asked.onupgradeneeded = () => upgrade(asked.result, asked.transaction);
    asked.onsuccess = () => resolve(asked.result);
    asked.onerror = () => reject(asked.error);
    asked.onblocked = () => reject(new Error("blocked"));
  });
}

/** Copies, once, what an earlier version kept on this host. It stays there too. */
async function takeOver(mine) {
  if (await finished(mine.transaction("notes"), (notes) => notes.get(TAKEN))) return;
  const former = await opened(FORMER, (_, transaction) => transaction.abort()).catch(() => null); // one that is not there is not made
  const kept = { pieces: [], notes: [] };
  if (former) {
    for (const name of Object.keys(STORES)) kept[name] = await finished(former.transaction(name), (store) => store.getAll());
    former.close();
  }
  // By their names in the order of the alphabet, as the transaction lists them.
  await finished(mine.transaction(["notes", "pieces"], "readwrite", { durability: "strict" }), (notes, pieces) => {
    for (const piece of kept.pieces) pieces.put(piece);
    const there = notes.getAll();
    there.onsuccess = orGiveUp(notes.transaction, () => {
      const known = new Map(there.result.map((note) => [note.key, note]));
      for (const note of kept.notes) notes.put(newest(known.get(note.key), note));
      notes.put({ key: TAKEN, n: 1, at: Date.now() });
    });
    return there;
  });
}

/** What goes wrong while a transaction goes on ends it: its promise rejects. */
export function orGiveUp(transaction, work) {
  return () => {
    try {
      work();
    } catch {
      transaction.abort();
    }
  };
}
