// The classes that this device keeps, each a note of its own; which of them was worked on last.

import { dropNote, keepNote, notesUnder, readNote } from "./store.js";

const KEY = "class.";
const LAST = "class-open";
const REMOVED_MS = 30 * 24 * 60 * 60 * 1000;

export const EMPTY = { format: "wedgework-class", version: 1, title: "", text: "", entries: [] };
export const MOST_ENTRIES = 24; // the core reads no more
export const noteOf = (id) => KEY + id;

/** What is kept and was not removed, the last changed first: [{id, doc, at}]. What was removed long ago is deleted now. */
export async function listClasses() {
  const found = [];
  for (const [id, note] of await notesUnder(KEY)) {
    if (!Array.isArray(note.doc?.entries)) continue;
    if (!note.removed) found.push({ id, doc: note.doc, at: note.at });
    else if (Date.now() - note.removed > REMOVED_MS) await dropNote(KEY + id);
  }
  return found.sort((a, b) => b.at - a.at);
}

/** Keeps it under `id`, or as a new one; resolves to {id, kept} with `kept` as `keepNote` has it. */
export async function keepClass(doc, id = Date.now().toString(36), removed = null) {
  const { kept } = await keepNote(KEY + id, { doc, ...(removed ? { removed } : {}) });
  return { id, kept };
}

export const workOn = (id) => keepNote(LAST, { id });
export const lastWorkedOn = async () => (await readNote(LAST))?.id ?? null;

/** Whether two classes say the same, whoever wrote them down. */
export const sameClass = (a, b) => JSON.stringify(said(a)) === JSON.stringify(said(b));
const said = ({ title = "", text = "", entries = [] }) => [title, text, entries.map((one) => [one.title ?? "", one.text ?? "", one.link])];
