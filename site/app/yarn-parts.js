// What forms get that has to do with yarn: the fabric stitch by stitch, the shelf, and the way from a plan to its yarn.

import { ask } from "./engine.js";
import { fabricFor } from "./fabric.js";
import { element, say } from "./say.js";
import { shelfInForm } from "./shelf-pick.js";
import { shelfPage } from "./shelf.js";

const WITH_FABRIC = new Set(["panel-plan", "yarn-needs", "stripes"]); // what takes a whole piece
const ONWARD = ["yarn-needs", "stripes", "scraps"]; // what goes on from a plan

export function yarnParts(live) {
  if (live.slug === "shelf") shelfPage(live);
  else shelfInForm(live);
  if (live.slug === "panel-plan") live.box.querySelector(".ww-actions").after(onward(live));
  if (WITH_FABRIC.has(live.slug)) fabricFor(live);
}

/** The same piece in the calculators of yarn: a link in which all that was typed lives. */
function onward(live) {
  const buttons = ONWARD.map((slug) => {
    const button = element("button", { type: "button", class: "ww-button ww-button--quiet" }, say(`app.onward-${slug}`));
    button.addEventListener("click", () => go(live, slug));
    return button;
  });
  return element("div", { class: "ww-actions ww-onward", role: "group", "aria-label": say("app.onward") }, ...buttons);
}

async function go(live, slug) {
  let told;
  try {
    told = await ask("link", { ask: "link", calculator: slug, inputs: live.inputs });
  } catch {
    live.render();
    return;
  }
  if (told?.fragment) location.assign(new URL(`../calculators/${slug}/#${told.fragment}`, import.meta.url));
  else if (told) live.note(told.problems.map(({ sentence, way_out }) => `${sentence} ${way_out}`).join(" "));
}
