// What forms get that has to do with yarn: the fabric stitch by stitch, and the shelf.

import { withFabric } from "./fabric.js";
import { shelfInForm } from "./shelf-pick.js";
import { shelfPage } from "./shelf.js";

export function yarnParts(live) {
  if (live.slug === "shelf") shelfPage(live);
  else shelfInForm(live);
  withFabric(live);
}
