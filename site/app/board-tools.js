// The bars of the board: what a finger does, what is done with the chosen shape, what is seen.

import { element, say } from "./say.js";

const MODES = ["choose", "draw", "cut", "sheet"];
const ACTS = ["copy", "mirror", "upside", "half", "repeat", "over", "under"];

export function button(key, act, attributes = {}) {
  const made = element("button", { type: "button", title: say(`app.board-${key}-help`), ...attributes }, say(`app.board-${key}`));
  made.addEventListener("click", () => act(made));
  return made;
}

/** A button with a sign on it instead of its word. */
function sign(key, words, act) {
  const made = button(key, act, { "aria-label": say(`app.board-${key}`), class: "lb-sign" });
  made.textContent = words;
  return made;
}

export function toolbar(board) {
  const undo = button("undo", () => board.undo());
  const redo = button("redo", () => board.redo());
  const title = element("p", { class: "lb-title" });
  const top = element(
    "div",
    { class: "lb-top" },
    title,
    element("div", { class: "lb-bar lb-files", role: "group", "aria-label": say("app.board-bar-files") }, ...board.files.buttons),
  );
  // On a narrow screen the rarer ones are folded away.
  const more = button("more", () => {
    const open = top.classList.toggle("lb-unfolded");
    more.setAttribute("aria-expanded", String(open));
  }, { class: "lb-more", "aria-expanded": "false" });
  top.querySelector(".lb-files").append(more);
  const modes = MODES.map((mode) => button(`mode-${mode}`, () => board.setMode(mode), { "data-mode": mode, class: "lb-mode" }));
  const toggles = ["grid", "marks", "back"].map((name) => button(`see-${name}`, () => board.toggle(name), { "data-see": name }));
  const zoom = element(
    "div",
    { class: "lb-zoom", role: "group", "aria-label": say("app.board-bar-zoom") },
    sign("nearer", "+", () => board.nearer(1.5)),
    sign("farther", "\u2212", () => board.nearer(1 / 1.5)),
    button("whole", () => board.whole()),
  );
  const tools = element(
    "div",
    { class: "lb-bars" },
    element("div", { class: "lb-bar lb-modes", role: "group", "aria-label": say("app.board-bar-modes") }, ...modes),
    element("div", { class: "lb-bar", role: "group", "aria-label": say("app.board-bar-steps") }, undo, redo),
    element(
      "div",
      { class: "lb-bar", role: "group", "aria-label": say("app.board-bar-view") },
      ...toggles,
    ),
  );
  const acts = ACTS.map((what) => button(what, () => board.act(what), { "data-act": what }));
  const gone = button("remove", () => board.removeChosen(), { "data-act": "remove" });
  const close = button("close", () => board.close(), { class: "lb-strong" });
  const drop = button("drop", () => board.dropCorner());
  const shapeBar = element("div", { class: "lb-bar", role: "group", "aria-label": say("app.board-bar-shape") }, ...acts, gone);
  const drawBar = element("div", { class: "lb-bar", role: "group", "aria-label": say("app.board-bar-draw") }, close, drop);
  const hint = element("p", { class: "lb-hint" });
  const said = element("div", { class: "lb-said" }, board.status, hint);
  const actions = element("div", { class: "lb-actions" }, said, shapeBar, drawBar, repeatForm(board));

  const tell = () => {
    if (title.textContent !== board.doc.rest.title) title.textContent = board.doc.rest.title;
    undo.disabled = !board.history.canUndo && board.draft.length === 0;
    redo.disabled = !board.history.canRedo;
    for (const one of modes) one.setAttribute("aria-pressed", String(one.dataset.mode === board.mode));
    for (const one of toggles) {
      const on = one.dataset.see === "back" ? board.view.back : board[one.dataset.see];
      one.setAttribute("aria-pressed", String(on));
    }
    const some = board.chosen.shape >= 0;
    shapeBar.hidden = !some || board.mode !== "choose";
    drawBar.hidden = board.draft.length === 0;
    close.disabled = board.draft.length < 3;
    const words = say(`app.board-hint-${board.mode === "choose" && some ? "chosen" : board.mode}`);
    if (hint.textContent !== words) hint.textContent = words;
  };
  tell(); // what is seen first has its words, and its height
  board.onChange(tell);
  return { top, tools, actions, zoom };
}

/** How often the chosen shape is repeated, and how far. */
function repeatForm(board) {
  const field = (name, value, least, most) => {
    const input = element("input", { type: "number", inputmode: "numeric", name, value, min: least, max: most, step: 1, required: true });
    return element("label", {}, say(`app.board-repeat-${name}`), input);
  };
  const form = element(
    "form",
    { class: "lb-repeat", hidden: true, "aria-label": say("app.board-repeat") },
    field("across", 2, 1, 50),
    field("up", 2, 1, 50),
    field("needles", 10, -1000, 1000),
    field("rows", 20, -4000, 4000),
    field("lean", 0, -1000, 1000),
    element("button", { type: "submit", class: "lb-strong" }, say("app.board-repeat-do")),
  );
  form.append(button("repeat-no", () => (form.hidden = true)));
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    form.hidden = true;
    board.repeat(Object.fromEntries([...new FormData(form)].map(([name, text]) => [name, Number(text)])));
    board.surface.focus();
  });
  board.openRepeat = () => {
    const { left, right, low, high } = board.paint.extent(board.doc.shapes[board.chosen.shape]);
    form.elements.needles.value = String(Math.round(right - left));
    form.elements.rows.value = String(Math.round(high - low));
    form.hidden = false;
    form.elements.across.focus();
  };
  board.onChange(() => {
    if (board.chosen.shape < 0) form.hidden = true;
  });
  return form;
}
