// A file for the person to keep.

import { element } from "./say.js";

/** A title as a file is named. */
export const fileName = (title, otherwise) => title.toLowerCase().replace(/[^\p{L}\p{N}]+/gu, "-").replace(/^-|-$/g, "") || otherwise;

export function saveFile(blob, name) {
  const link = element("a", { href: URL.createObjectURL(blob), download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 10_000);
}

export const saveJson = (text, name) => saveFile(new Blob([text], { type: "application/json" }), name);
