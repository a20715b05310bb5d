// Undo and redo without end, kept over a reload: each step as what differs, in both directions. The drawing itself is a small
// note that is stored at once; the steps lie in parcels beside it.

import { inBase } from "./store-base.js";
import { keepNote, readNote } from "./store.js";

const NOTE = "board";
const PARCEL = 50; // steps
const PAUSE = 250; // ms after an edit

export class History {
  constructor() {
    this.steps = [];
    this.at = 0; // steps that are done
    this.dirty = new Set();
    this.timer = 0;
    this.doc = null;
  }

  get canUndo() {
    return this.at > 0;
  }

  get canRedo() {
    return this.at < this.steps.length;
  }

  /** A step from one drawing to the next. Steps that were undone are gone now. */
  push(before, after, what) {
    this.steps.length = this.at;
    this.steps.push({ ...difference(before, after), what });
    this.at += 1;
    this.touch(this.at - 1, after);
  }

  undo(doc) {
    if (!this.canUndo) return doc;
    this.at -= 1;
    return this.touch(this.at, back(doc, this.steps[this.at]));
  }

  redo(doc) {
    if (!this.canRedo) return doc;
    this.at += 1;
    return this.touch(this.at - 1, forth(doc, this.steps[this.at - 1]));
  }

  touch(step, doc) {
    this.doc = doc;
    this.dirty.add(Math.floor(step / PARCEL));
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.keep(), PAUSE);
    return doc;
  }

  /** Stores what is not stored yet; resolves to how it was kept, see `keepNote`. */
  async keep() {
    clearTimeout(this.timer);
    if (this.doc === null) return null;
    const parcels = [...this.dirty];
    this.dirty.clear();
    const noted = keepNote(NOTE, { doc: this.doc, done: this.at, steps: this.steps.length });
    for (const number of parcels) {
      const steps = this.steps.slice(number * PARCEL, (number + 1) * PARCEL);
      await inBase("notes", "readwrite", (store) => store.put({ key: `${NOTE}.past.${number}`, n: 1, steps })).catch(() => undefined);
    }
    return noted;
  }

  /** The drawing that was kept, or null; with it the steps, as far as they are whole. */
  async read() {
    const note = await readNote(NOTE);
    const whole = Array.isArray(note?.doc?.shapes) && Array.isArray(note.doc.rest?.yarns) && note.doc.rest.layout && note.doc.sheet?.needles > 0;
    if (!whole) return null;
    const steps = [];
    for (let number = 0; number * PARCEL < note.steps; number += 1) {
      const parcel = await inBase("notes", "readonly", (store) => store.get(`${NOTE}.past.${number}`)).catch(() => undefined);
      if (!Array.isArray(parcel?.steps)) break;
      steps.push(...parcel.steps);
    }
    // A page that was closed in the middle of storing has a drawing newer than its steps: then it starts without a past.
    if (steps.length >= note.steps) {
      this.steps = steps.slice(0, note.steps);
      this.at = Math.min(note.done, this.steps.length);
    }
    this.doc = note.doc;
    return note.doc;
  }
}

/** What differs: the shapes from a place on, and whatever else is another object now. */
export function difference(before, after) {
  const [a, b] = [before.shapes, after.shapes];
  let first = 0;
  while (first < a.length && first < b.length && a[first] === b[first]) first += 1;
  let end = 0;
  while (end < a.length - first && end < b.length - first && a[a.length - 1 - end] === b[b.length - 1 - end]) end += 1;
  const step = { first, from: a.slice(first, a.length - end), to: b.slice(first, b.length - end) };
  for (const key of ["rest", "sheet"]) if (before[key] !== after[key]) step[key] = parts(before[key], after[key]);
  return step;
}

/** Of two objects the keys that differ, with both values. */
function parts(before, after) {
  const keys = new Set([...Object.keys(before), ...Object.keys(after)]);
  return [...keys].filter((key) => before[key] !== after[key]).map((key) => [key, before[key], after[key]]);
}

const back = (doc, step) => applied(doc, step, step.to.length, step.from, 1);
const forth = (doc, step) => applied(doc, step, step.from.length, step.to, 2);

function applied(doc, step, away, shapes, which) {
  const made = { ...doc, shapes: doc.shapes.toSpliced(step.first, away, ...shapes) };
  for (const name of ["rest", "sheet"]) {
    if (!step[name]) continue;
    made[name] = { ...doc[name] };
    for (const part of step[name]) {
      if (part[which] === undefined) delete made[name][part[0]];
      else made[name][part[0]] = part[which];
    }
  }
  return made;
}
