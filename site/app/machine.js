// The page at the machine: one step at a time, from plain data, whether the engine runs or not. The place is stored before
// the next step can be taken.

import { element, say } from "./say.js";
import { getPiece, openPiece, openedPiece, place, placeMovedElsewhere, putPiece, setPlace } from "./store.js";
import { awakeButton } from "./machine-awake.js";
import { dialogs, undoButton } from "./machine-go.js";
import { printWith } from "./machine-paper.js";
import { screen } from "./machine-show.js";
import { listen } from "./machine-taps.js";

const VERSION = 1;
// An offer to undo a jump goes away after so many steps; it stays in the window "Go to".
const UNDO_STEPS = 3;

const root = document.querySelector("[data-machine]");
if (root) start(root);

async function start(root) {
  const example = root.dataset.machine;
  const view = screen(root);
  const now = { piece: null, index: 0, ticks: [], undo: null, since: 0, n: 0 };
  let known = new Set();
  let stopListening = () => undefined;
  let moving = Promise.resolve();

  try {
    await open(await first());
  } catch {
    notice("load", say("machine.not-loaded"));
    root.dataset.ready = "";
    return;
  }
  listen(root, (action) => inTurn(() => step(action === "forward" ? 1 : -1)));
  root.addEventListener("change", (event) => {
    if ("item" in event.target.dataset) inTurn(() => keep({ ticks: view.ticked() }));
  });
  dialogs(root, () => now, { example, jump: (index) => inTurn(() => jump(index)), open: (digest) => inTurn(() => change(digest)) });
  awakeButton(root.querySelector(".m-awake"), root.querySelector(".m-awake-said"));
  root.querySelector(".m-print").addEventListener("click", () => print());
  printWith(root, () => now.piece);
  addEventListener("visibilitychange", () => document.visibilityState === "visible" && inTurn(lookAgain));
  for (const button of root.querySelectorAll("[data-opens]")) button.disabled = false;
  root.dataset.ready = "";

  /** One thing after the other: a step is stored before the next begins. */
  function inTurn(what) {
    moving = moving.then(what, what);
    return moving;
  }

  async function first() {
    const digest = await openedPiece();
    if (digest !== null && digest !== example) {
      const found = await getPiece(digest);
      if (found) return found;
      notice("opened", say("machine.not-opened"));
    }
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

  async function open(piece) {
    if (piece.version > VERSION) {
      notice("newer", say("machine.newer", { version: piece.made_by }));
      return open(await loadExample());
    }
    now.piece = piece;
    view.take(piece);
    take(await place(piece.digest));
    stopListening();
    stopListening = placeMovedElsewhere(piece.digest, elsewhere);
    view.show(now.index, now.ticks);
  }

  function take(found) {
    const last = now.piece.cues.length - 1;
    now.index = Math.min(last, Math.max(0, found?.index ?? 0));
    now.ticks = found?.ticks ?? [];
    now.undo = Number.isInteger(found?.undo) && found.undo <= last ? found.undo : null;
    now.since = UNDO_STEPS;
    now.n = found?.n ?? 0;
  }

  async function change(digest) {
    const piece = digest === example ? await loadExample() : await getPiece(digest);
    if (!piece) {
      notice("opened", say("machine.not-opened"));
      return;
    }
    notice("opened");
    notice("undo");
    await openPiece(digest);
    await open(piece);
  }

  function step(by) {
    const index = now.index + by;
    if (!now.piece.cues[index]) return undefined;
    now.since += 1;
    if (now.since >= UNDO_STEPS) notice("undo");
    return keep({ index, ticks: [] });
  }

  async function jump(index) {
    if (index === now.index) return;
    const undo = now.index;
    const back = index === now.undo;
    now.since = 0;
    await keep({ index, ticks: [], undo: back ? null : undo });
    if (back) notice("undo");
    else notice("undo", undoButton(now.piece, undo));
  }

  /** Store the place, then show it. */
  async function keep(changes) {
    const { piece } = now;
    const before = now.index;
    Object.assign(now, changes);
    const cue = piece.cues[now.index];
    if (!known.has(piece.digest)) {
      // The first step makes the piece this device's own: another first piece of a later version does not take its place.
      known.add(piece.digest);
      await openPiece(piece.digest);
      await putPiece(piece);
    }
    const { kept, n } = await setPlace(piece.digest, now.index, { ticks: now.ticks, undo: now.undo, row: cue.row_before });
    now.n = n;
    if (now.index !== before) view.show(now.index, now.ticks);
    notice("elsewhere");
    if (kept === "both") notice("kept");
    else notice("kept", say(kept === "one" ? "machine.kept-part" : "machine.kept-not", { step: now.index + 1 }));
  }

  function elsewhere(note) {
    if (note.n <= now.n || note.index === now.index) return;
    const go = element("button", { type: "button" }, say("machine.moved-go"));
    go.addEventListener("click", () => inTurn(async () => {
      take(await place(now.piece.digest));
      notice("elsewhere");
      view.show(now.index, now.ticks);
    }));
    notice("elsewhere", element("span", {}, `${say("machine.moved-elsewhere", { step: note.index + 1 })} `, go));
  }

  /** A page that was hidden may have been passed by another window. */
  async function lookAgain() {
    const found = await place(now.piece.digest);
    if (found) elsewhere(found);
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
