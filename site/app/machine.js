// The page at the machine: one step at a time, from plain data, whether the engine runs or not. The place is stored before
// the next step can be taken.

import { element, say, sayN } from "./say.js";
import { getPiece, keepNote, openPiece, openedPiece, place, placeMovedElsewhere, putPiece, readNote, setPlace, whenCleared } from "./store.js";
import { whenWritten } from "./store-local.js";
import { aids } from "./machine-aids.js";
import { awakeButton } from "./machine-awake.js";
import { putOff, unsavedRows } from "./machine-backup.js";
import { carrying } from "./machine-carry.js";
import { carriedKey, carryOn, lastPlan, planAgain, planBefore, plansBefore } from "./machine-chain.js";
import { dialogs, undoButton } from "./machine-go.js";
import { noteOn } from "./machine-notes.js";
import { paceAfter, paceText } from "./machine-pace.js";
import { printWith } from "./machine-paper.js";
import { reporting } from "./machine-report.js";
import { placeAfter } from "./machine-rows.js";
import { screen } from "./machine-show.js";
import { listen } from "./machine-taps.js";
import { trouble } from "./machine-trouble.js";

const VERSION = 1;
// An offer to undo a jump goes away after so many steps; it stays in the window "Go to".
const UNDO_STEPS = 3;

const root = document.querySelector("[data-machine]");
if (root) start(root).catch(failed);

/** A fault of these scripts ends in a sentence: the place is kept, and the page can be loaded again. */
function failed(fault) {
  console.info(`The page at the machine failed: ${fault?.stack ?? fault}`);
  if (root.querySelector("[data-notice=failed]")) return;
  const again = element("button", { type: "button" }, say("machine.load-again"));
  again.addEventListener("click", () => location.reload());
  root.querySelector(".m-notices").append(element("p", { class: "m-notice", "data-notice": "failed" }, say("machine.failed"), " ", again));
  root.dataset.ready = "failed";
}

async function start(root) {
  const example = root.dataset.machine;
  const now = { piece: null, index: 0, done: 0, single: false, ticks: [], undo: null, pace: {}, notes: {}, earlier: [], at: 0, since: 0, n: 0 };
  const known = new Set();
  let stopListening = [];
  let moving = Promise.resolve();

  addEventListener("error", (event) => event.error && failed(event.error));
  addEventListener("unhandledrejection", (event) => failed(event.reason));
  const view = screen(root);
  try {
    await open(await first());
  } catch (fault) {
    if (now.piece) throw fault;
    notice("load", say("machine.not-loaded"));
    root.dataset.ready = "";
    return;
  }
  const help = aids(root, () => view.seen());
  listen(root, (action) => inTurn(() => step(action === "forward" ? 1 : -1)));
  root.addEventListener("change", (event) => {
    if ("item" in event.target.dataset) inTurn(() => keep({ ticks: view.ticked() }));
  });
  root.querySelector(".m-single").addEventListener("click", () => inTurn(() => keep({ single: !now.single })));
  const jumpTo = (to) => inTurn(() => jump(to));
  dialogs(root, () => now, { example, jump: jumpTo, open: (digest) => inTurn(() => change(digest)) });
  trouble(root, () => now, jumpTo);
  carrying(root, () => now, {
    carry: (made) => inTurn(() => carry(made)),
    before: () => inTurn(async () => change(await planBefore(now.piece))),
    again: (was) => inTurn(async () => change(await planAgain(now.piece.digest, was))),
  });
  noteOn(root, () => now, (notes) => inTurn(() => keepNotes(notes)), jumpTo);
  reporting(root, () => now);
  awakeButton(root.querySelector(".m-awake"), root.querySelector(".m-awake-said"));
  root.querySelector(".m-print").addEventListener("click", () => print());
  printWith(root, () => now);
  whenCleared(() => notice("cleared", say("machine.cleared")));
  addEventListener("visibilitychange", () => document.visibilityState === "visible" && inTurn(lookAgain));
  for (const button of root.querySelectorAll("[data-opens]")) button.disabled = false;
  root.dataset.ready = "";

  /** One thing after the other: a step is stored before the next begins. */
  function inTurn(what) {
    moving = moving.then(what).catch(failed);
    return moving;
  }

  async function first() {
    const digest = await openedPiece();
    const found = digest === null ? null : await getPiece(digest);
    if (digest === null || digest === example) {
      // An earlier version kept a piece of the same steps and another title in the example's place.
      const shown = await loadExample();
      return found && found.title !== shown.title ? found : shown;
    }
    if (found) return found;
    notice("opened", say("machine.not-opened"));
    return loadExample();
  }

  async function loadExample() {
    try {
      const answer = await fetch(new URL("default.json", location.href));
      if (!answer.ok) throw new Error(String(answer.status));
      return await answer.json();
    } catch (error) {
      const kept = await getPiece(example);
      if (kept) return kept;
      throw error;
    }
  }

  async function open(found) {
    const piece = await lastPlan(found);
    if (piece.version > VERSION) {
      notice("newer", say("machine.newer", { version: piece.made_by }));
      return open(await loadExample());
    }
    now.piece = piece;
    view.take(piece);
    take(await place(piece.digest));
    now.notes = (await readNote(`notes.${piece.digest}`))?.notes ?? {};
    now.earlier = await plansBefore(piece);
    for (const stop of stopListening) stop();
    stopListening = [placeMovedElsewhere(piece.digest, elsewhere), whenWritten(carriedKey(piece.digest), carriedElsewhere)];
    if (piece.carried) stopListening.push(whenWritten(carriedKey(piece.carried.from), carriedElsewhere));
    show();
  }

  function show() {
    view.show({ ...now, note: now.notes[now.index] ?? "" });
    const pace = root.querySelector(".m-pace");
    const words = paceText(now.pace, now.piece.cues, now.index, now.done);
    pace.hidden = !words;
    pace.textContent = words;
  }

  function take(found) {
    const last = now.piece.cues.length - 1;
    now.index = Math.min(last, Math.max(0, found?.index ?? 0));
    now.done = Math.min(found?.done ?? 0, Math.max(0, now.piece.cues[now.index].rows - 1));
    now.single = found?.single ?? false;
    now.ticks = found?.ticks ?? [];
    // Earlier versions kept the number of the step alone.
    const undo = Number.isInteger(found?.undo) ? { index: found.undo, done: 0 } : found?.undo;
    now.undo = undo && undo.index <= last ? undo : null;
    now.pace = found?.pace ?? {};
    now.at = found?.at ?? Date.now();
    now.since = UNDO_STEPS;
    now.n = found?.n ?? 0;
  }

  async function change(digest) {
    const piece = digest === example ? await loadExample() : await getPiece(digest);
    if (!piece) {
      notice("opened", say("machine.not-opened"));
      return;
    }
    for (const key of ["opened", "undo", "carried", "elsewhere"]) notice(key);
    await openPiece(digest);
    await open(piece);
  }

  /** Go on with the plan of the rest; false where this device cannot keep it. */
  async function carry(made) {
    const from = { ...now };
    const piece = await carryOn(from, made);
    if (!piece) return false;
    for (const key of ["opened", "undo", "elsewhere"]) notice(key);
    await open(piece);
    const back = element("button", { type: "button" }, say("machine.undo"));
    back.addEventListener("click", () => inTurn(async () => change(await planBefore(now.piece))));
    notice("undo", element("span", {}, `${say("machine.carried", { step: from.index + 1 })} `, back));
    now.since = 0;
    return true;
  }

  async function step(by) {
    const to = placeAfter(now.piece.cues, now, by);
    if (!to) return;
    now.since += 1;
    if (now.since >= UNDO_STEPS) notice("undo");
    const pace = by > 0 ? paceAfter(now.pace, now.piece.cues[now.index], to.index === now.index ? to.done : null, now.done, now.at, Date.now()) : now.pace;
    await keep({ ...to, ticks: [], pace });
    help.stepped();
    if (by > 0 && now.piece.cues[now.index].good_to_stop) await remind();
    else notice("backup"); // it comes again where it is good to stop
  }

  /** After long work, at a good place to stop. */
  async function remind() {
    const { piece } = now;
    const row = piece.cues[now.index].row_before + now.done;
    const rows = await unsavedRows(piece, row);
    if (!rows) return;
    const later = element("button", { type: "button" }, say("machine.backup-later"));
    later.addEventListener("click", () => {
      notice("backup");
      putOff(piece, row);
    });
    const go = element("a", { href: "../reference/saving/" }, say("machine.backup-go"));
    notice("backup", element("span", {}, `${sayN("machine.backup", rows)} `, go, " ", later));
  }

  async function jump({ index, done = 0 }) {
    if (index === now.index && done === now.done) return;
    const { undo } = now;
    const from = { index: now.index, done: now.done };
    const back = undo && index === undo.index && done === undo.done;
    now.since = 0;
    await keep({ index, done, ticks: [], undo: back ? null : from });
    if (back) notice("undo");
    else notice("undo", undoButton(now.piece, from));
  }

  /** Store the place, then show it. */
  async function keep(changes) {
    const { piece } = now;
    const moved = "index" in changes || "single" in changes;
    Object.assign(now, changes);
    const cue = piece.cues[now.index];
    if (!known.has(piece.digest)) {
      // The first step makes the piece this device's own: another first piece of a later version does not take its place.
      known.add(piece.digest);
      await openPiece(piece.digest);
      await putPiece(piece);
    }
    const { ticks, undo, done, single, pace } = now;
    const { kept, n, at } = await setPlace(piece.digest, now.index, { done, single, ticks, undo, pace, row: cue.row_before + done });
    Object.assign(now, { n, at });
    if (moved) show();
    notice("elsewhere");
    if (kept === "both") notice("kept");
    else notice("kept", say(kept === "one" ? "machine.kept-part" : "machine.kept-not", { step: now.index + 1 }));
  }

  async function keepNotes(notes) {
    now.notes = notes;
    const { kept } = await keepNote(`notes.${now.piece.digest}`, { notes });
    if (kept === "none") notice("kept", say("machine.kept-not", { step: now.index + 1 }));
    show();
  }

  function elsewhere(note) {
    if (note.n <= now.n || (note.index === now.index && (note.done ?? 0) === now.done)) return;
    const go = element("button", { type: "button" }, say("machine.moved-go"));
    go.addEventListener("click", () => inTurn(async () => {
      take(await place(now.piece.digest));
      notice("elsewhere");
      show();
    }));
    notice("elsewhere", element("span", {}, `${say("machine.moved-elsewhere", { step: note.index + 1 })} `, go));
  }

  /** Another window went on with a plan of the rest, or back to the plan before. */
  function carriedElsewhere(note) {
    const { piece } = now;
    const left = note.key === carriedKey(piece.digest) ? note.to !== null : note.to !== piece.digest;
    if (!left) return;
    const go = element("button", { type: "button" }, say("machine.moved-go"));
    go.addEventListener("click", () => inTurn(async () => change((await openedPiece()) ?? piece.digest)));
    notice("carried", element("span", {}, `${say("machine.carried-elsewhere")} `, go));
  }

  /** A page that was hidden may have been passed by another window. */
  async function lookAgain() {
    const found = await place(now.piece.digest);
    if (found) elsewhere(found);
    const carried = await readNote(carriedKey(now.piece.digest));
    if (carried) carriedElsewhere(carried);
  }

  function notice(key, words) {
    const notices = root.querySelector(".m-notices");
    const old = notices.querySelector(`[data-notice=${key}]`);
    if (!words) old?.remove();
    else if (old && typeof words === "string" && old.textContent === words) return;
    else {
      const made = element("p", { class: "m-notice", "data-notice": key }, words);
      if (old) old.replaceWith(made);
      else notices.append(made);
    }
  }
}
