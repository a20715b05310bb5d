// Ways in and out: design files, links, layouts that ship, letters, pictures, paper; and on to the planner and the machine.

import { designOf, docOf } from "./board-doc.js";
import { pictureForm } from "./board-picture.js";
import { button } from "./board-tools.js";
import { ask } from "./engine.js";
import { holds, mayReplace } from "./link-first.js";
import { PAGES } from "./places.js";
import { inWords } from "./problems.js";
import { chooseJson, fileName, saveJson } from "./save-file.js";
import { element, say } from "./say.js";
import { LONGEST_LINK, OURS, forgetLink, waysToShare } from "./share-link.js";
import { handTyped, takeTyped } from "./typed.js";

const RARE = { class: "lb-rare" };
const LONGEST_FILE = 1_000_000; // characters; the core reads no longer design

export function filesOf(board) {
  const file = chooseJson();
  file.addEventListener("change", async () => {
    const [chosen] = file.files;
    file.value = "";
    if (!chosen) return;
    if (chosen.size > 4 * LONGEST_FILE) board.say("file-long");
    else await from({ ask: "board-open", design: await chosen.text() }, "opened");
  });
  const note = element("div", { class: "lb-linked", role: "status" });

  /** Asks for a sheet and takes it as the drawing; false where there is none, which is said. */
  async function from(question, what) {
    board.say("asking");
    let told;
    try {
      told = await ask("board-sheet", question);
    } catch {
      board.say("no-engine");
      return false;
    }
    if (told === null) return false;
    if (!told.sheet) {
      board.status.textContent = inWords(told.problems);
      return false;
    }
    board.leave();
    board.commit(docOf(told.sheet), what);
    if (told.sheet.moved) board.say("corners-moved");
    return true;
  }

  const text = (doc = board.doc) => JSON.stringify(designOf(doc));

  async function typed() {
    let told;
    try {
      told = await ask("board-inputs", { ask: "board-inputs", design: text() });
    } catch {
      board.say("no-engine");
      return null;
    }
    if (told === null) return null;
    if (told.problems.length === 0) return told.inputs;
    board.status.textContent = inWords(told.problems);
    return null;
  }

  async function onward(slug, path) {
    const inputs = await typed();
    if (!inputs) return;
    await board.history.keep();
    const there = new URL(path, PAGES);
    if (handTyped(there.pathname, { [slug]: inputs }, say("app.board-title"))) location.assign(there);
    else board.say("not-handed");
  }

  async function machine() {
    const inputs = await typed();
    if (!inputs) return;
    await board.history.keep();
    const { toMachine } = await import("./board-machine.js");
    await toMachine(board, inputs);
  }

  async function made() {
    let told;
    try {
      told = await ask("board-link", { ask: "board-link", design: text() });
    } catch {
      board.say("no-engine");
      return "";
    }
    if (told?.problems.length) board.status.textContent = inWords(told.problems);
    return told?.fragment;
  }

  const ways = waysToShare({
    made,
    told: (...inside) => note.replaceChildren(...(inside.length ? [element("p", {}, ...inside)] : [])),
    title: () => board.doc.rest.title || say("app.board-title"),
    help: say("app.board-link-help"),
  });

  /** The file is written here: it is the drawing as it is, whether the engine runs or not. */
  function save() {
    saveJson(`${JSON.stringify(designOf(board.doc), null, 1)}\n`, `${fileName(board.doc.rest.title, "design")}.json`);
    board.say("saved");
  }

  async function openLink() {
    const found = OURS.exec(location.hash);
    if (!found) return;
    forgetLink();
    let told;
    try {
      told = await ask("board-link-open", { ask: "open", fragment: found[1].slice(0, LONGEST_LINK + 1) });
    } catch {
      return board.say("no-engine");
    }
    if (told === null) return;
    const question = { board: { ask: "board-open", design: told.inputs.design }, "panel-plan": { ask: "board-typed", inputs: told.inputs } }[told.calculator];
    if (!question) {
      board.status.textContent = told.problems.length > 0 ? inWords(told.problems) : say("app.board-link-other");
      return;
    }
    if (board.history.doc !== null && !(await mayReplace(told, say("app.link-mine-drawing")))) {
      board.status.textContent = say("app.link-left");
      return;
    }
    if (await from(question, "linked")) note.replaceChildren(element("p", {}, holds(told)));
  }

  /** What another page handed over, or a link; the drawing that was there can be had back with undo. */
  async function opened() {
    addEventListener("hashchange", openLink);
    const handed = takeTyped()["panel-plan"];
    if (handed) from({ ask: "board-typed", inputs: handed }, "opened");
    else openLink();
  }

  const dialog = starts(board, from, text);
  const buttons = [
    button("start", () => dialog.showModal(), { "aria-haspopup": "dialog" }),
    button("open", () => file.click(), RARE),
    button("save", save),
    // The sheet needs the height: code and class are on the planner's page, one tap on, and a copied link is taken by a class.
    ...ways.filter(([key]) => key === "copy-link" || key === "send-link").map(([key, does]) => {
      const made = element("button", { type: "button", title: say(`app.${key}-help`), ...RARE }, say(`app.${key}`));
      made.addEventListener("click", does);
      return made;
    }),
    button("print", () => print(), RARE),
    button("plan", () => onward("panel-plan", "plan/"), { class: "lb-strong" }),
    button("machine", machine, RARE),
    button("yarn-needs", () => onward("yarn-needs", "calculators/yarn-needs/"), RARE),
    file,
    note,
    dialog,
  ];
  return { buttons, save, opened, relaid: (doc, what) => from({ ask: "board-open", design: text(doc) }, what) };
}

/** Where a drawing can begin: a layout that ships, an empty sheet, letters, a picture. */
function starts(board, from, text) {
  const dialog = element("dialog", { class: "lb-dialog", "aria-label": say("app.board-start") });
  const layout = element("select", { name: "layout" }, ...board.layouts.map(([name, title]) => element("option", { value: name }, title)));
  const letters = element("textarea", { rows: 6, spellcheck: "false", autocomplete: "off", maxlength: 400_000 });
  const wrong = element("p", { class: "lb-wrong", role: "status" });
  const begin = async (question, what) => {
    wrong.textContent = "";
    if (await from(question, what)) dialog.close();
    else wrong.textContent = board.status.textContent;
  };
  const part = (key, ...inside) => element("section", {}, element("h3", {}, say(`app.board-start-${key}`)), element("p", { class: "lb-note" }, say(`app.board-start-${key}-note`)), ...inside);
  dialog.append(
    element("h2", {}, say("app.board-start")),
    element("p", { class: "lb-note" }, say("app.board-start-note")),
    wrong,
    part(
      "layout",
      element("label", {}, say("app.board-start-layout-which"), layout),
      button("start-layout-do", () => begin({ ask: "board-layout", design: text(), name: layout.value }, "layout"), { class: "lb-strong" }),
    ),
    part("empty", button("start-empty-do", () => {
      board.commit({ ...board.doc, shapes: [] }, "emptied");
      dialog.close();
    }, { class: "lb-strong" })),
    part(
      "letters",
      element("label", {}, say("app.board-start-letters-which"), letters),
      button("start-letters-do", () => begin({ ask: "board-letters", design: text(), letters: letters.value }, "letters"), { class: "lb-strong" }),
    ),
    part("picture", pictureForm(board, (question) => begin({ ...question, design: text() }, "picture"))),
  );
  dialog.append(button("start-no", () => dialog.close()));
  return dialog;
}
