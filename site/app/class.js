// The page of a class: the classes that this device keeps, one of them being written, or one that came by a link or a file.
// The core makes the sheet; what is in a class is shown as text, and every way from it leads to a page of this copy.

import { classEditor, field } from "./class-edit.js";
import { keptThings } from "./class-kept.js";
import { EMPTY, MOST_ENTRIES, keepClass, lastWorkedOn, listClasses, noteOf, sameClass, workOn } from "./class-store.js";
import { ask, start } from "./engine.js";
import { pageOf } from "./places.js";
import { withPlaces } from "./problems.js";
import { chooseJson, fileName, saveJson } from "./save-file.js";
import { button, element, say } from "./say.js";
import { LONGEST_LINK, OURS, addressOf, forgetLink, waysToShare } from "./share-link.js";
import { noteKeptElsewhere } from "./store.js";

const PAUSE = 300; // ms after a key
const LONGEST_FILE = 1_000_000;

export async function showClass(box) {
  start();
  const { titles, example } = JSON.parse(box.querySelector("script").textContent);
  const shown = box.querySelector(".ww-class-example");
  const status = element("div", { class: "ww-notes", role: "status" });
  const tools = element("div", { class: "ww-class-tools" });
  const sheet = element("div", { class: "ww-class-sheet" });
  const paper = element("div", { class: "ww-class-paper" });
  const file = chooseJson();
  box.prepend(status, tools, file, sheet, paper);
  const pictures = new Map(); // of each link, once for each time it stands on the sheet
  let open = null; // {id, doc}: the class that is being written; without an id one that is only read
  let asked = 0;
  let timer = 0;
  let deaf = () => undefined;

  const told = (...inside) => status.replaceChildren(...(inside.length ? [element("p", {}, ...inside)] : []));
  const quiet = "ww-button--quiet";

  /** The answer, or null once it was said why there is none. */
  async function asking(who, question) {
    try {
      const found = await ask(who, question);
      if (found?.problems.length) told(withPlaces(found.problems));
      return found?.problems.length ? null : found;
    } catch {
      told(say("app.class-no-engine"));
      return null;
    }
  }

  // --- the sheet -------------------------------------------------------------------------------------------------------

  async function draw(doc) {
    asked += 1;
    const mine = asked;
    paper.replaceChildren();
    const found = await asking("class-sheet", { ask: "class-sheet", class: JSON.stringify(doc) });
    if (!found || mine !== asked) return;
    sheet.innerHTML = found.html; // made by the core, in which every text of a person is escaped
    const seen = {};
    for (const entry of sheet.querySelectorAll("[data-link]")) {
      const { link } = entry.dataset;
      seen[link] = (seen[link] ?? 0) + 1;
      const key = `${link} ${seen[link]}`;
      if (!pictures.has(key)) pictures.set(key, ask("class-picture", { ask: "class-picture", link, prefix: `picture-${pictures.size}` }).catch(() => null));
      const picture = await pictures.get(key);
      if (!picture) pictures.delete(key);
      if (mine !== asked) return;
      entry.querySelector(".ww-entry-picture").innerHTML = picture?.html ?? "";
    }
    sheet.dataset.drawn = "";
  }

  /** Black on white, the code of the whole class below it where it fits. */
  async function onPaper(doc) {
    const found = await asking("class-link", { ask: "class-link", class: JSON.stringify(doc) });
    if (found) {
      const { codeOf, isHereOnly } = await import("./share-code.js");
      const code = await codeOf(addressOf(found.fragment), doc.title || say("app.class-untitled"), told);
      const drawn = element("div", { class: "ww-class-code" });
      if (code) drawn.innerHTML = code.svg; // made by the core
      paper.replaceChildren(...(code ? [drawn, element("p", {}, say("app.class-code"))] : []));
      if (code && isHereOnly()) told(say("app.code-here-only"));
    }
    print();
  }

  const shares = (current) =>
    waysToShare({
      made: async () => (await asking("class-link", { ask: "class-link", class: JSON.stringify(current()) }))?.fragment,
      told,
      title: () => current().title || say("app.class-untitled"),
      help: say("app.class-link-help"),
      classes: false,
    }).map(([key, does]) => button(`app.${key}`, does, quiet));

  async function save(doc) {
    const found = await asking("class-write", { ask: "class-write", class: JSON.stringify(doc) });
    if (!found) return;
    const name = `${fileName(doc.title, "class")}.json`;
    saveJson(found.text, name);
    told(say("app.class-saved", { name }));
  }

  function paint(doc, made) {
    shown.hidden = true;
    delete sheet.dataset.drawn;
    tools.replaceChildren(...made);
    draw(doc);
  }

  // --- writing one -----------------------------------------------------------------------------------------------------

  async function keep() {
    clearTimeout(timer);
    timer = 0;
    if (!open?.id) return;
    const { kept } = await keepClass(open.doc, open.id);
    if (kept === "none") told(say("app.keep-not-kept"));
  }

  function changed(doc) {
    open.doc = doc;
    clearTimeout(timer);
    timer = setTimeout(() => {
      keep();
      draw(open.doc);
    }, PAUSE);
  }

  async function edit(id, doc) {
    open = { id, doc };
    workOn(id);
    const editor = classEditor(changed, await adders(() => editor));
    editor.show(doc);
    deaf();
    deaf = noteKeptElsewhere(noteOf(id), (note) => {
      // Another window put something in: what is not stored here yet is stored first by what is typed next.
      if (open?.id !== id || timer || note.removed) return;
      open.doc = note.doc;
      editor.show(note.doc);
      draw(note.doc);
    });
    const current = () => open.doc;
    const bar = element("div", { class: "ww-actions" }, button("app.class-print", () => onPaper(current())), ...shares(current), button("app.class-save", () => save(current()), quiet));
    const away = element("div", { class: "ww-actions" }, button("app.class-all", begin, quiet), button("app.class-remove", () => remove(id), quiet));
    paint(doc, [bar, element("details", { class: "ww-class-writing", open: true }, element("summary", {}, say("app.class-writing")), editor.root), away]);
  }

  async function adders(editor) {
    const put = (entries) => {
      if (!editor().add(entries)) return told(say("app.class-full", { most: MOST_ENTRIES }));
      return told(say("app.class-added", { titles: entries.map((one) => one.title).join(", ") }));
    };
    const pasted = field("app.class-paste", element("input", { type: "text", autocomplete: "off", spellcheck: "false" }), null, "app.class-paste-help");
    const addPasted = async () => {
      const found = await asking("class-entries", { ask: "class-entries", text: pasted.control.value });
      if (!found) return;
      pasted.control.value = "";
      put(found.entries);
    };
    pasted.control.addEventListener("keydown", (event) => event.key === "Enter" && addPasted());
    const made = [element("div", { class: "ww-class-adder" }, pasted.root, button("app.class-add-pasted", addPasted, quiet))];
    const things = await keptThings(titles);
    if (things.length > 0) {
      const which = field("app.class-kept", element("select", {}, ...things.map(({ words }, at) => element("option", { value: at }, words))));
      const addKept = async () => {
        const link = await things[which.control.value].made().catch(() => null);
        if (!link?.fragment) return told(link?.problems?.length ? withPlaces(link.problems) : say("app.class-no-engine"));
        const found = await asking("class-entries", { ask: "class-entries", text: link.fragment });
        return found && put(found.entries);
      };
      made.push(element("div", { class: "ww-class-adder" }, which.root, button("app.class-add-kept", addKept, quiet)));
    }
    return made;
  }

  async function remove(id) {
    const { doc } = open;
    open = null;
    await keepClass(doc, id, Date.now());
    await begin();
    const back = button("app.class-back", async () => {
      await keepClass(doc, id);
      told();
      edit(id, doc);
    }, quiet);
    told(say("app.class-removed", { title: doc.title || say("app.class-untitled") }), " ", back);
  }

  async function anew(doc) {
    const { id, kept } = await keepClass(doc);
    if (kept === "none") told(say("app.keep-not-kept"));
    await edit(id, doc);
  }

  // --- reading one -----------------------------------------------------------------------------------------------------

  function read(doc, words) {
    if (open?.id) keep();
    open = { id: null, doc };
    const keepIt = async () => {
      const same = (await listClasses()).find((one) => sameClass(one.doc, doc));
      forgetLink();
      told(say(same ? "app.class-kept-already" : "app.class-kept-now"));
      if (same) edit(same.id, same.doc);
      else anew(doc);
    };
    const current = () => doc;
    const bar = element("div", { class: "ww-actions" }, button("app.class-keep", keepIt), button("app.class-print", () => onPaper(doc), quiet), ...shares(current), button("app.class-all", begin, quiet));
    told(words);
    paint(doc, [bar]);
  }

  async function openLink() {
    const found = OURS.exec(location.hash);
    if (!found) return false;
    const fragment = found[1];
    if (fragment.startsWith("w")) {
      const entry = await asking("class-open", { ask: "open", fragment: fragment.slice(0, LONGEST_LINK + 1) });
      if (!entry) return false;
      told(say("app.link-elsewhere"), " ", element("a", { href: `${pageOf(entry.calculator).href}#${fragment}` }, entry.title));
      return false;
    }
    const told_ = await asking("class-open", { ask: "class-open", fragment: fragment.slice(0, LONGEST_LINK + 1) });
    if (!told_) return false;
    read(told_.class, say("app.class-opened") + (told_.newer ? ` ${say("app.link-newer", { version: told_.made_by })}` : ""));
    return true;
  }

  file.addEventListener("change", async () => {
    const [chosen] = file.files;
    file.value = "";
    if (!chosen) return;
    if (chosen.size > 4 * LONGEST_FILE) return void told(say("app.keep-long"));
    const found = await asking("class-open", { ask: "class-read", text: await chosen.text() });
    if (found) read(found.class, say("app.class-opened"));
  });

  // --- the beginning ---------------------------------------------------------------------------------------------------

  async function begin() {
    if (timer) await keep();
    deaf();
    [open, asked] = [null, asked + 1];
    if (OURS.test(location.hash)) forgetLink();
    told();
    sheet.replaceChildren();
    paper.replaceChildren();
    shown.hidden = false;
    const kept = await listClasses();
    const line = ({ id, doc }) => {
      const made = element("button", { type: "button", class: `ww-button ${quiet}` }, doc.title || say("app.class-untitled"));
      made.addEventListener("click", () => edit(id, doc));
      return element("li", {}, made);
    };
    tools.replaceChildren(
      element(
        "div",
        { class: "ww-actions" },
        button("app.class-new", () => anew({ ...EMPTY, title: say("app.class-new-title") })),
        button("app.class-from-example", () => anew(example), quiet),
        button("app.class-open", () => file.click(), quiet),
      ),
      ...(kept.length > 0 ? [element("h2", {}, say("app.class-mine")), element("ul", { class: "ww-class-list" }, ...kept.map(line))] : []),
    );
  }

  addEventListener("hashchange", openLink);
  addEventListener("pagehide", () => timer && keep());
  document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && timer && keep());
  if (OURS.test(location.hash)) {
    shown.hidden = true;
    told(say("app.booting"));
    if (!(await openLink())) {
      const words = [...status.childNodes];
      await begin();
      status.replaceChildren(...words);
    }
  } else {
    const last = await lastWorkedOn();
    const mine = last && (await listClasses()).find(({ id }) => id === last);
    if (mine) await edit(mine.id, mine.doc);
    else await begin();
  }
  box.dataset.ready = "";
}
