// Files of a person: one to keep, and one that she chooses.

import { element } from "./say.js";

/** A title as a file is named. */
export const fileName = (title, otherwise) => title.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") || otherwise;

/** What opens the device's own choice of a JSON file, or of several; it is not seen, a button of the page clicks it. */
export const chooseJson = (multiple = false) => element("input", { type: "file", accept: ".json,application/json", multiple, hidden: true, "aria-hidden": "true", tabindex: "-1" });

export function saveFile(blob, name) {
  const link = element("a", { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

export const saveJson = (text, name) => saveFile(new Blob([text], { type: "application/json" }), name);
