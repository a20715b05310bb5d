// What forms get that has to do with yarn: the fabric stitch by stitch, and the shelf.

import { fabricFor } from "./fabric.js";
import { shelfInForm } from "./shelf-pick.js";
import { shelfPage } from "./shelf.js";

const WITH_FABRIC = new Set(["panel-plan", "yarn-needs", "stripes", "scraps"]); // what takes a whole piece

export function yarnParts(live) {
  if (live.slug === "shelf") shelfPage(live);
  else shelfInForm(live);
  if (WITH_FABRIC.has(live.slug)) fabricFor(live);
}
