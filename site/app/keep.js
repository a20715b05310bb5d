// The page of saving: what this device keeps, all of it into one file, and back from a file without writing over anything unasked.

import { ask, start } from "./engine.js";
import { everythingKept } from "./keep-collect.js";
import { compared } from "./keep-merge.js";
import { PAGES, pageOf } from "./places.js";
import { withPlaces } from "./problems.js";
import { chooseJson, saveJson } from "./save-file.js";
import { button, element, moment, say, sayN } from "./say.js";
import { keepNote, readNote } from "./store.js";
import { handTyped } from "./typed.js";

const LONGEST_FILE = 64_000_000;

export async function showKeep(box) {
  start();
  const status = element("p", { role: "status", class: "ww-keep-said" });
  const [facts, dangers] = [element("div", {}), element("div", {})];
  const found = element("div", { class: "ww-keep-found" });
  const file = chooseJson();
  const save = button("app.keep-save", () => working(save, saveAll));
  const open = button("app.keep-open", () => file.click(), "ww-button--quiet");
  file.addEventListener("change", async () => {
    const [chosen] = file.files;
    found.replaceChildren();
    if (chosen) await working(open, () => openFile(chosen));
    file.value = "";
  });
  box.replaceChildren(facts, element("div", { class: "ww-actions" }, save, open, file), status, found, dangers);
  await fill();

  async function fill() {
    const { kept, lost } = await everythingKept();
    const counts = { pieces: kept.pieces.length, yarns: kept.yarns.length, fields: kept.fields.length, designs: kept.designs.length, classes: kept.classes.length };
    if (!lost.length && Object.values(counts).every((n) => n === 0)) {
      facts.replaceChildren(element("p", {}, say("app.keep-nothing")));
      dangers.replaceChildren(...(await risks()));
      return;
    }
    const saved = await readNote("saved");
    const when = saved ? say("app.keep-last", { date: moment(saved.at) }) : say("app.keep-never");
    const counted = Object.fromEntries(Object.entries(counts).map(([what, n]) => [what, sayN(`app.keep-counts-${what}`, n)]));
    const lines = [say("app.keep-counts", counted), when, ...(lost.length ? [say("app.keep-lost", { titles: lost.join(", ") })] : [])];
    facts.replaceChildren(...lines.map((words) => element("p", {}, words)));
    dangers.replaceChildren(...(await risks()));
  }

  /** One thing at a time; an engine that cannot be asked is said. */
  async function working(pressed, does) {
    pressed.disabled = true;
    status.textContent = say("app.keep-working");
    try {
      status.textContent = (await does()) ?? "";
    } catch (fault) {
      console.info(`Saving failed: ${fault?.stack ?? fault}`);
      status.textContent = say("app.keep-no-engine");
    }
    pressed.disabled = false;
  }

  async function saveAll() {
    const { kept, rows, lost } = await everythingKept();
    const told = await ask("keep", { ask: "project-write", kept: JSON.stringify(kept) });
    if (!told) return "";
    if (told.problems.length) return withPlaces(told.problems);
    const now = new Date();
    const name = `wedgework-${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}.json`;
    saveJson(told.text, name);
    await keepNote("saved", { rows });
    await fill();
    const missing = [...told.left_out, ...lost];
    return [say("app.keep-saved", { name }), ...(missing.length ? [say("app.keep-left-out", { titles: missing.join(", ") })] : [])].join(" ");
  }

  async function openFile(chosen) {
    if (chosen.size > LONGEST_FILE) return say("app.keep-long");
    const text = await chosen.text();
    const looked = await ask("keep", { ask: "project-look", text });
    if (!looked) return "";
    if (looked.problems.length) return withPlaces(looked.problems);
    show(await compared(looked, text), looked);
    return "";
  }

  function show(things, looked) {
    const boxes = new Map();
    const line = (thing) => {
      const words = [element("strong", {}, thing.title), ` ${say(`app.keep-kind-${thing.kind}`)}: `, say(`app.keep-${thing.state}`)];
      const detail = thing.state === "otherwise" && thing.there ? element("small", {}, say("app.keep-both", { here: thing.here, there: thing.there })) : "";
      if (thing.state === "same") return element("li", {}, element("span", {}, ...words));
      const box = element("input", { type: "checkbox" });
      box.checked = thing.state === "new"; // never over something else unless she says so
      boxes.set(thing, box);
      return element("li", {}, element("label", {}, box, element("span", {}, ...words, detail)));
    };
    const list = element("ul", { class: "ww-keep-things" }, ...things.map(line));
    const take = button("app.keep-take", () => working(take, () => takeAll(boxes)));
    found.replaceChildren(element("h2", {}, say("app.keep-in-file", { title: looked.title || say("app.keep-no-title") })), list);
    if (boxes.size) found.append(element("p", {}, say("app.keep-take-help")), take);
    else found.append(element("p", {}, say(things.length ? "app.keep-all-same" : "app.keep-empty")));
    found.append(...others(looked));
    found.scrollIntoView({ block: "nearest" });
  }

  async function takeAll(boxes) {
    let [taken, refused] = [0, []];
    // A plan of the rest comes after the plan that it goes on from: in the order of the file.
    for (const [thing, box] of boxes) {
      if (!box.checked) continue;
      const { kept, problems = [] } = await thing.take();
      if (kept === "none") refused.push(`${thing.title}: ${problems.length ? withPlaces(problems) : say("app.keep-not-kept")}`);
      else taken += 1;
    }
    found.replaceChildren();
    await fill();
    return [sayN("app.keep-taken", taken), ...refused].join(" ");
  }

  /** Designs, swatches and machines are no list of this device: each goes where it is used. */
  function others(looked) {
    const lines = [
      ...looked.designs.map(({ title, text }) => [title, "design", () => toBoard(text)]),
      ...looked.swatches.map(({ name, inputs }) => [name, "swatch", () => hand("gauge", inputs, name)]),
      ...looked.machines.map(({ name, inputs }) => [name, "machine", () => hand("panel-plan", inputs, name)]),
    ];
    if (!lines.length) return [];
    const made = lines.map(([title, kind, does]) => element("li", {}, element("strong", {}, title), " ", button(`app.keep-use-${kind}`, () => working(found, does), "ww-button--quiet")));
    return [element("h3", {}, say("app.keep-also")), element("ul", { class: "ww-keep-things" }, ...made)];
  }

  async function toBoard(design) {
    const told = await ask("keep", { ask: "board-link", design });
    if (!told || told.problems.length) return told ? withPlaces(told.problems) : "";
    location.assign(new URL(`board/#${told.fragment}`, PAGES));
    return "";
  }

  async function hand(slug, inputs, title) {
    const there = pageOf(slug);
    const last = (await readNote(`last.${slug}`))?.inputs ?? {};
    if (!handTyped(there.pathname, { [slug]: { ...last, ...inputs } }, title)) return say("app.keep-not-kept");
    location.assign(there);
    return "";
  }
}

/** Whether this browser may throw away what is kept, and what to do about it. */
async function risks() {
  const storage = navigator.storage;
  if (await storage?.persisted?.().catch(() => false)) return [element("p", {}, say("app.keep-safe"))];
  const made = [element("p", { class: "ww-keep-risk" }, say("app.keep-risk"))];
  // Only where a page can be told apart from an app on the home screen are things removed after a week without a visit.
  if (navigator.standalone === false) made.push(element("p", { class: "ww-keep-risk" }, say("app.keep-risk-week")));
  if (storage?.persist) {
    const answer = element("p", { role: "status" });
    const wanted = button("app.copy-ask", async () => (answer.textContent = say((await storage.persist()) ? "app.copy-kept" : "app.copy-refused")), "ww-button--quiet");
    made.push(element("div", { class: "ww-actions" }, wanted), answer);
  }
  return made;
}

const two = (n) => String(n).padStart(2, "0");
