// A link as a code for the wall: black on white in every light, alone on the sheet when it is printed.

import { ask } from "./engine.js";
import { inWords } from "./problems.js";
import { button, element, say } from "./say.js";

const HERE_ONLY = /^(localhost|127\.\d+\.\d+\.\d+|\[::1\])$/;

/** The code of an address as the core draws it, or null once it was said why there is none. */
export async function codeOf(address, title, told) {
  let found;
  try {
    found = await ask("code", { ask: "code", address, title });
  } catch {
    told(say("app.code-no-engine"));
    return null;
  }
  if (found?.problems.length) told(inWords(found.problems));
  return found?.svg ? found : null;
}

/** Whether the address of these pages leads to this device alone. */
export const isHereOnly = () => HERE_ONLY.test(location.hostname);

export async function showCode(address, { title, told, help }) {
  const found = await codeOf(address, title, told);
  if (!found) return;
  told();
  const sheet = element("figure", {});
  sheet.innerHTML = found.svg; // made by the core
  const dialog = element(
    "dialog",
    { class: "ww-dialog ww-code md-typeset", "aria-label": say("app.code-title", { title }) },
    sheet,
    element(
      "div",
      { class: "ww-code-words" },
      element("h2", {}, title),
      element("p", {}, say("app.code-help", { characters: found.characters })),
      ...(isHereOnly() ? [element("p", { class: "ww-code-here" }, say("app.code-here-only"))] : []),
      element("p", { class: "ww-code-who" }, help),
      element("div", { class: "ww-actions" }, button("app.code-print", () => print()), button("app.close", () => dialog.close(), "ww-button--quiet")),
    ),
  );
  dialog.addEventListener("close", () => dialog.remove());
  document.body.append(dialog);
  dialog.showModal();
  dialog.scrollTop = 0; // the code first, whatever has the focus
}
