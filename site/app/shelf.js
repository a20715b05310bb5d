// The shelf of yarns that this device keeps: what was typed into the calculator of the shelf, one set of texts for each yarn.
// Other pages fill their fields from it (shelf-pick.js); it goes along as a project file, which the core writes and reads.

import { ask, engineState } from "./engine.js";
import { withPlaces } from "./problems.js";
import { chooseJson, saveJson } from "./save-file.js";
import { element, say } from "./say.js";
import { keepNote, readNote } from "./store.js";

const NOTE = "shelf";
const LONGEST_FILE = 64_000_000;

/** The yarns, in the order of their names: [{name, colour, ball_g, ball_m, on_hand_g, ..., rate}], texts as typed, and the
 * metres per gram that the core found. */
export async function shelfYarns() {
  const yarns = (await readNote(NOTE))?.yarns ?? [];
  return yarns.filter((yarn) => typeof yarn?.name === "string");
}

/** Puts yarns there; one of the same name is replaced. Resolves to how it was kept: "both", "one" or "none". */
export async function putYarns(added) {
  const kept = new Map((await shelfYarns()).map((yarn) => [yarn.name, yarn]));
  for (const yarn of added) kept.set(yarn.name, yarn);
  return keepAll([...kept.values()]);
}

export async function removeYarn(name) {
  return keepAll((await shelfYarns()).filter((yarn) => yarn.name !== name));
}

async function keepAll(yarns) {
  yarns.sort((a, b) => a.name.localeCompare(b.name));
  return (await keepNote(NOTE, { yarns })).kept;
}

/** What lies there in a line: put-up and what is on hand. */
export function yarnLine(yarn) {
  const made = yarn.known === "count" ? say("app.shelf-count", { count: yarn.count, ball: yarn.ball_g }) : say("app.shelf-ball", { ball: yarn.ball_g, metres: yarn.ball_m });
  const hand = yarn.on_hand_g ? say("app.shelf-hand", { hand: yarn.on_hand_g }) : say("app.shelf-no-hand");
  return [yarn.kind, made, hand].filter(Boolean).join(", ");
}

/** The list on the page of the shelf, and its buttons. */
export function shelfPage(live) {
  const button = (key, act, ...quiet) => {
    const made = element("button", { type: "button", class: ["ww-button", ...quiet].join(" "), title: say(`app.${key}-help`, { name: "" }) }, say(`app.${key}`));
    made.addEventListener("click", act);
    return made;
  };
  const list = element("ul", { class: "ww-shelf" });
  const file = chooseJson();
  const put = element("button", { type: "button", class: "ww-button" }, say("app.shelf-put"));
  const save = button("shelf-save", () => saveFile(live), "ww-button--quiet");
  const open = button("shelf-open", () => file.click(), "ww-button--quiet");
  const section = element("section", { class: "ww-part ww-shelf-part" }, element("h2", {}, say("app.shelf")), list, element("div", { class: "ww-actions" }, save, open, file));
  live.output.after(section);
  live.output.after(element("div", { class: "ww-actions" }, put));

  const show = async () => {
    const yarns = await shelfYarns();
    list.replaceChildren(...yarns.map((yarn) => line(live, yarn, show)));
    if (yarns.length === 0) list.append(element("li", {}, say("app.shelf-empty")));
    save.hidden = yarns.length === 0;
  };
  put.addEventListener("click", async () => {
    if (!live.good) return live.changed(0); // says what is wrong, beside the fields
    told(live, await putYarns([{ ...live.inputs, rate: rateOf(live) }]), say("app.shelf-put-done", { name: live.inputs.name }));
    return show();
  });
  // Choosing a file is no typing in the form.
  for (const kind of ["input", "change"]) file.addEventListener(kind, (event) => event.stopPropagation());
  file.addEventListener("change", async () => {
    const [chosen] = file.files;
    if (chosen) await openFile(live, chosen);
    file.value = "";
    await show();
  });
  return show();
}

/** As the core said it, of the answer on the page. */
function rateOf(live) {
  const result = live.result ?? JSON.parse(live.box.dataset.answer).answer.result;
  return String(result.metres_per_gram);
}

function told(live, kept, words, ...more) {
  live.note(kept === "none" ? `${words} ${say("app.shelf-not-kept")}` : words, ...more);
}

function line(live, yarn, show) {
  const patch = element("span", { class: "ww-shelf-colour", "aria-hidden": "true" });
  patch.style.background = yarn.colour;
  const act = (key, done) => {
    const made = element("button", { type: "button", class: "ww-button ww-button--quiet", "aria-label": say(`app.${key}-help`, { name: yarn.name }) }, say(`app.${key}`));
    made.addEventListener("click", done);
    return made;
  };
  const edit = act("shelf-edit", () => live.fill(yarn));
  const remove = act("shelf-remove", async () => {
    const kept = await removeYarn(yarn.name);
    const undo = element("button", { type: "button", class: "ww-button ww-button--quiet" }, say("app.shelf-undo"));
    undo.addEventListener("click", async () => {
      told(live, await putYarns([yarn]), say("app.shelf-put-done", { name: yarn.name }));
      await show();
    });
    told(live, kept, say("app.shelf-removed", { name: yarn.name }), " ", undo);
    await show();
  });
  return element("li", {}, patch, element("div", {}, element("strong", {}, yarn.name), element("span", {}, yarnLine(yarn))), edit, remove);
}

async function saveFile(live) {
  let found;
  try {
    found = await ask("shelf", { ask: "shelf-file", yarns: JSON.stringify((await shelfYarns()).map(({ rate, ...typed }) => typed)) });
  } catch {
    live.render();
    return;
  }
  if (!found) return;
  if (found.problems.length > 0) {
    live.note(withPlaces(found.problems));
    return;
  }
  saveJson(found.text, "yarn-shelf.json");
}

/** Only the yarns of a project are read; whatever else stands in it stays where it is. */
async function openFile(live, chosen) {
  if (engineState().state !== "ready") return live.render();
  let text = await chosen.slice(0, LONGEST_FILE).text();
  try {
    const { format, version, made_by, yarns = [] } = JSON.parse(text);
    text = JSON.stringify({ format, version, made_by, yarns });
  } catch {
    // The core says what is wrong with it.
  }
  let found;
  try {
    found = await ask("shelf", { ask: "shelf-read", text: text.slice(0, 19_000) });
  } catch {
    return live.render();
  }
  if (!found) return undefined;
  if (found.problems.length > 0) return live.note(withPlaces(found.problems));
  const n = found.yarns.length;
  return told(live, await putYarns(found.yarns), n === 1 ? say("app.shelf-opened-one") : say("app.shelf-opened-some", { n }));
}
