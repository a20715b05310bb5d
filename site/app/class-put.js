// From any page into a class that this device keeps: the one there is, one of several, or a new one.

import { EMPTY, MOST_ENTRIES, keepClass, listClasses, workOn } from "./class-store.js";
import { ask } from "./engine.js";
import { PAGES } from "./places.js";
import { inWords } from "./problems.js";
import { element, say } from "./say.js";

export async function putIntoClass(fragment, told) {
  let found;
  try {
    found = await ask("class-entries", { ask: "class-entries", text: fragment });
  } catch {
    return told(say("app.code-no-engine"));
  }
  if (!found) return undefined;
  if (found.problems.length) return told(inWords(found.problems));
  const kept = await listClasses();
  const chosen = kept.length > 0 ? await choose(kept) : { doc: { ...EMPTY, title: say("app.class-new-title") } };
  if (!chosen) return undefined;
  if (chosen.doc.entries.length >= MOST_ENTRIES) return told(say("app.class-full", { most: MOST_ENTRIES }));
  const doc = { ...chosen.doc, entries: [...chosen.doc.entries, ...found.entries] };
  const { id, kept: how } = await keepClass(doc, chosen.id);
  if (how === "none") return told(say("app.keep-not-kept"));
  await workOn(id);
  const there = new URL("class/", PAGES);
  return told(say("app.class-put-done", { title: doc.title || say("app.class-untitled") }), " ", element("a", { href: there.href }, say("app.class-go")));
}

/** Which class; nothing when the person turns away. */
function choose(kept) {
  return new Promise((resolve) => {
    const button = (words, chosen, quiet = "") => {
      const made = element("button", { type: "button", class: `ww-button ${quiet}` }, words);
      made.addEventListener("click", () => {
        resolve(chosen);
        dialog.close();
      });
      return made;
    };
    const dialog = element(
      "dialog",
      { class: "ww-dialog md-typeset", "aria-label": say("app.class-which") },
      element("h2", {}, say("app.class-which")),
      element(
        "div",
        { class: "ww-choices" },
        ...kept.map((one) => button(one.doc.title || say("app.class-untitled"), one)),
        button(say("app.class-another"), { doc: { ...EMPTY, title: say("app.class-new-title") } }, "ww-button--quiet"),
        button(say("app.close"), null, "ww-button--quiet"),
      ),
    );
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(null);
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}
