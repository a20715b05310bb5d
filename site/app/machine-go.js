// The two windows over the page: going to another place of the piece, and everything that is not knitting.

import { element, say } from "./say.js";
import { svg } from "./machine-bed.js";
import { listPieces } from "./store.js";

/** The step to stand at when so many rows of the piece are done. */
export function stepAtRow(piece, row) {
  return piece.cues.findIndex((cue) => cue.row_before <= row && (cue.row_after > row || cue.row_before === piece.rows));
}

export function dialogs(root, current, act) {
  const go = root.querySelector(".m-go");
  const more = root.querySelector(".m-more");

  root.addEventListener("click", async (event) => {
    const button = event.target.closest("button");
    if (!button) return;
    if (button.dataset.opens === "go") {
      fillGo();
      go.showModal();
    } else if (button.dataset.opens === "more") {
      await fillPieces();
      more.showModal();
    } else if ("close" in button.dataset) button.closest("dialog").close();
    else if (button.dataset.step) leave(go, () => act.jump(Number(button.dataset.step)));
    else if (button.dataset.piece) leave(more, () => act.open(button.dataset.piece));
  });

  const leave = (dialog, then) => {
    dialog.close();
    then();
  };

  go.querySelector("form").addEventListener("submit", (event) => {
    event.preventDefault();
    const { piece } = current();
    const typed = go.querySelector("input").value.trim();
    const row = /^\d{1,6}$/.test(typed) ? Number(typed) : -1;
    const step = row < 0 || row > piece.rows ? -1 : stepAtRow(piece, row);
    const said = go.querySelector(".m-row-said");
    said.textContent = step < 0 ? say("machine.go-no-row", { all: piece.rows }) : "";
    if (step >= 0) leave(go, () => act.jump(step));
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

  async function fillPieces() {
    const { piece } = current();
    const found = await listPieces();
    const lines = found.map((one) => {
      const when = new Date(one.at).toLocaleString([], { dateStyle: "medium", timeStyle: "short" });
      const where = one.index === null ? say("machine.piece-not-begun") : say("machine.piece-where", { step: one.index + 1, steps: one.steps, when });
      const open = one.digest === piece.digest;
      const words = [element("span", {}, one.title), element("small", {}, open ? `${where}; ${say("machine.piece-open")}` : where)];
      return element("li", {}, element("button", { type: "button", "data-piece": one.digest, disabled: open }, ...words));
    });
    if (!found.some((one) => one.digest === act.example)) {
      lines.push(element("li", {}, element("button", { type: "button", "data-piece": act.example, disabled: piece.digest === act.example }, element("span", {}, say("machine.example")))));
    }
    if (lines.length < 2) lines.push(element("li", { class: "m-none" }, say("machine.pieces-none")));
    more.querySelector(".m-pieces").replaceChildren(...lines);
  }
}

/** What undoes a jump: where one was, and the button that leads back. */
export function undoButton(piece, undo) {
  const cue = piece.cues[undo];
  const words = say("machine.jumped", { step: undo + 1, block: cue.block_name || say("machine.end") });
  return element("span", {}, `${words} `, element("button", { type: "button", "data-step": undo, "data-undo": true }, say("machine.undo")));
}
