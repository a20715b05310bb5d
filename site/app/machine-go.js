// The windows over the page: each is opened by a button that names it; here is what "Go to" shows.

import { element, say, svg } from "./say.js";
import { piecesIn } from "./machine-pieces.js";

/** The step to stand at when so many rows of the piece are done. */
export function stepAtRow(piece, row) {
  return piece.cues.findIndex((cue) => cue.row_before <= row && (cue.row_after > row || cue.row_before === piece.rows));
}

export function dialogs(root, current, act) {
  const go = root.querySelector(".m-go");
  const more = root.querySelector(".m-more");
  const fillPieces = piecesIn(more, current, act);

  root.addEventListener("click", async (event) => {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.opens) {
      // A window that is opened from a window takes its place.
      button.closest("dialog")?.close();
      if (button.dataset.opens === "go") fillGo();
      else if (button.dataset.opens === "more") await fillPieces();
      root.querySelector(`dialog.m-${button.dataset.opens}`).showModal();
    } else if ("close" in button.dataset) button.closest("dialog").close();
    else if (button.dataset.step) leave(() => act.jump({ index: Number(button.dataset.step), done: Number(button.dataset.done ?? 0) }));
  });

  const leave = (then) => {
    go.close();
    then();
  };

  go.querySelector("form").addEventListener("submit", (event) => {
    event.preventDefault();
    const { piece } = current();
    const typed = go.querySelector("input").value.trim();
    const before = piece.carried?.rows ?? 0;
    const row = /^\d{1,6}$/.test(typed) ? Number(typed) - before : -1;
    const step = row < 0 || row > piece.rows ? -1 : stepAtRow(piece, row);
    const said = go.querySelector(".m-row-said");
    said.textContent = step < 0 ? say("machine.go-no-row", { first: before, all: before + piece.rows }) : "";
    if (step >= 0) leave(() => act.jump({ index: step }));
  });

  function fillGo() {
    const { piece, index, undo } = current();
    const cue = piece.cues[index];
    const undoAt = go.querySelector(".m-go-undo");
    undoAt.hidden = undo === null;
    if (undo !== null) undoAt.replaceChildren(undoButton(piece, undo));
    go.querySelector("input").value = "";
    go.querySelector(".m-row-said").textContent = "";
    const colours = new Map(piece.yarns.map((yarn) => [yarn.id, yarn.colour]));
    const firsts = piece.cues.filter((one, at) => at === 0 || one.block !== piece.cues[at - 1].block);
    go.querySelector(".m-go-blocks").replaceChildren(
      ...firsts.map((first, at) => {
        const next = firsts[at + 1];
        const state = cue.block === first.block ? say("machine.go-here") : next && index >= next.index ? say("machine.go-done") : "";
        const patch = svg("svg", { class: "m-patch", viewBox: "0 0 32 32", width: 24, height: 24, "aria-hidden": "true" }, svg("rect", { x: 1, y: 1, width: 30, height: 30, rx: 5, fill: colours.get(first.yarn) ?? "none" }));
        const button = element("button", { type: "button", "data-step": first.index, "aria-current": cue.block === first.block ? "step" : null }, patch, element("span", {}, first.block_name || say("machine.end")), element("small", {}, state));
        return element("li", {}, button);
      }),
    );
  }
}

/** What undoes a jump: where one was, and the button that leads back. */
export function undoButton(piece, { index, done }) {
  const cue = piece.cues[index];
  const words = say("machine.jumped", { step: index + 1, block: cue.block_name || say("machine.end") });
  const button = element("button", { type: "button", "data-step": index, "data-done": done, "data-undo": true }, say("machine.undo"));
  return element("span", {}, `${words} `, button);
}
