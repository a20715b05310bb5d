// The pieces that this device keeps: open another, remove one with a question, put a removed one back.

import { carriedNote } from "./machine-chain.js";
import { element, moment, say } from "./say.js";
import { deletePiece, listPieces, removePiece } from "./store.js";

/** `open(digest)` shows another piece; the example is always there. */
export function piecesIn(more, current, { example, open }) {
  const listed = more.querySelector(".m-pieces");
  const removed = more.querySelector(".m-removed");

  async function fill() {
    const found = await listPieces();
    const here = found.filter((one) => !one.removed);
    const gone = found.filter((one) => one.removed);
    const lines = here.map(pieceLine);
    if (!here.some((one) => one.digest === example) && !(await carriedNote(example))?.to) lines.push(exampleLine());
    if (lines.length < 2) lines.push(element("li", { class: "m-none" }, say("machine.pieces-none")));
    listed.replaceChildren(...lines);
    removed.replaceChildren(...gone.map(removedLine));
    removed.parentElement.hidden = !gone.length;
  }

  function pieceLine(one) {
    const when = moment(one.at);
    const where = one.index === null ? say("machine.piece-not-begun") : say("machine.piece-where", { step: one.index + 1, steps: one.steps, when });
    const isOpen = one.digest === current().piece.digest;
    const lost = one.lost && !isOpen && one.digest !== example;
    const words = [element("span", {}, one.title), element("small", {}, isOpen ? `${where}; ${say("machine.piece-open")}` : lost ? `${where}. ${say("machine.piece-lost")}` : where)];
    const line = element("li", {}, element("button", { type: "button", "data-piece": one.digest, disabled: isOpen || lost }, ...words));
    if (isOpen || one.digest === example) return line;
    line.append(button("machine.remove", { "aria-label": `${say("machine.remove")}: ${one.title}` }, () => ask(line, one)));
    return line;
  }

  const exampleLine = () =>
    element("li", {}, element("button", { type: "button", "data-piece": example, disabled: current().piece.digest === example }, element("span", {}, say("machine.example"))));

  /** The question stands where the piece stood. */
  function ask(line, one) {
    const no = button("machine.remove-no", {}, fill);
    line.replaceChildren(
      element("p", {}, say("machine.remove-sure", { title: one.title })),
      button("machine.remove-yes", {}, async () => {
        await removePiece(one.digest, true);
        await fill();
        removed.querySelector("button")?.focus();
      }),
      no,
    );
    line.className = "m-question";
    no.focus();
  }

  const removedLine = (one) =>
    element(
      "li",
      { class: "m-question" },
      element("p", {}, say("machine.removed", { title: one.title })),
      button("machine.put-back", {}, () => removePiece(one.digest, false).then(fill)),
      button("machine.for-good", {}, () => deletePiece(one.digest).then(fill)),
    );

  function button(key, attributes, does) {
    const made = element("button", { type: "button", ...attributes }, say(key));
    made.addEventListener("click", does);
    return made;
  }

  more.addEventListener("click", (event) => {
    const digest = event.target.closest("[data-piece]")?.dataset.piece;
    if (!digest) return;
    more.close();
    open(digest);
  });
  return fill;
}
