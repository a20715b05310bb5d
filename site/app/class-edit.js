// The fields of a class: title, words, entries. Whatever is typed becomes a new class, and `changed(doc)` is told.

import { MOST_ENTRIES } from "./class-store.js";
import { element, say } from "./say.js";

const LONGEST = { title: 120, text: 8000, entry: 2000 };

/** {root, show(doc)}: the form, and how it is filled. */
export function classEditor(changed, adders) {
  let doc = null;
  const title = field("app.class-title-field", element("input", { type: "text", maxlength: LONGEST.title, autocomplete: "off" }), (value) => change({ ...doc, title: value }));
  const text = field("app.class-text-field", element("textarea", { rows: 5, maxlength: LONGEST.text }), (value) => change({ ...doc, text: value }), "app.class-text-help");
  const list = element("ol", { class: "ww-class-entries" });
  const root = element(
    "div",
    { class: "ww-class-editor" },
    title.root,
    text.root,
    element("h3", {}, say("app.class-entries")),
    list,
    element("div", { class: "ww-class-add", role: "group", "aria-label": say("app.class-add") }, ...adders),
  );

  function change(next) {
    doc = next;
    changed(doc);
  }

  function entries(next, focus) {
    change({ ...doc, entries: next });
    fill();
    focus?.();
  }

  function fill() {
    list.replaceChildren(...(doc.entries.length > 0 ? doc.entries.map(row) : [element("li", { class: "ww-class-none" }, say("app.class-none"))]));
  }

  function row(entry, at) {
    const patch = (part) => change({ ...doc, entries: doc.entries.with(at, { ...doc.entries[at], ...part }) });
    const name = field("app.class-entry-title", element("input", { type: "text", maxlength: LONGEST.title, autocomplete: "off" }), (value) => patch({ title: value }));
    const words = field("app.class-entry-text", element("textarea", { rows: 2, maxlength: LONGEST.entry }), (value) => patch({ text: value }));
    name.control.value = entry.title ?? "";
    words.control.value = entry.text ?? "";
    const moved = (to) => entries(doc.entries.toSpliced(at, 1).toSpliced(to, 0, doc.entries[at]), () => list.children[to].querySelector(to < at ? "[data-up]:enabled, [data-down]" : "[data-down]:enabled, [data-up]").focus());
    const button = (key, act, more = {}) => {
      const made = element("button", { type: "button", class: "ww-button ww-button--quiet ww-button--small", "aria-label": say(`${key}-said`, { number: at + 1 }), ...more }, say(key));
      made.addEventListener("click", act);
      return made;
    };
    return element(
      "li",
      {},
      name.root,
      words.root,
      element(
        "div",
        { class: "ww-actions" },
        button("app.class-up", () => moved(at - 1), { disabled: at === 0, "data-up": true }),
        button("app.class-down", () => moved(at + 1), { disabled: at === doc.entries.length - 1, "data-down": true }),
        button("app.class-drop", () => entries(doc.entries.toSpliced(at, 1))),
      ),
    );
  }

  return {
    root,
    show(next) {
      doc = next;
      title.control.value = doc.title ?? "";
      text.control.value = doc.text ?? "";
      fill();
    },
    /** Adds entries at the end; false where there is no room for them. */
    add(more) {
      if (doc.entries.length + more.length > MOST_ENTRIES) return false;
      entries([...doc.entries, ...more]);
      return true;
    },
  };
}

let fields = 0;

/** A labelled control; `typed(value)` hears what is typed. */
export function field(key, control, typed, help) {
  control.id = `class-field-${(fields += 1)}`;
  control.addEventListener("input", () => typed?.(control.value));
  const told = help ? [element("p", { id: `${control.id}-help` }, say(help))] : [];
  if (help) control.setAttribute("aria-describedby", `${control.id}-help`);
  return { control, root: element("div", { class: "ww-field" }, element("label", { for: control.id }, say(key)), control, ...told) };
}
