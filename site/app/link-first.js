// Before a link takes the place of something of one's own: what it holds is shown, and asked.

import { button, element, say } from "./say.js";

/** What a link holds, in one line: where it belongs, the title, the size. */
export const holds = ({ title, about }) => [title, ...about].join(", ");

/** True when the link may be opened. `mine` says what it would take the place of. */
export function mayReplace({ title, about }, mine) {
  return new Promise((resolve) => {
    const dialog = element(
      "dialog",
      { class: "ww-dialog ww-first md-typeset", "aria-label": say("app.link-holds") },
      element("h2", {}, say("app.link-holds")),
      element("p", {}, element("strong", {}, title)),
      element("ul", {}, ...about.map((line) => element("li", {}, line))),
      element("p", {}, mine),
      element("div", { class: "ww-actions" }, button("app.link-take", () => dialog.close("take")), button("app.link-leave", () => dialog.close(""), "ww-button--quiet")),
    );
    dialog.addEventListener("close", () => {
      dialog.remove();
      resolve(dialog.returnValue === "take");
    });
    document.body.append(dialog);
    dialog.showModal();
  });
}
