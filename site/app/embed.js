// One calculator alone, in the page of somebody else (see builder/embed.py). Nothing is kept on the device and nothing of what is
// kept there is read; no offline copy is begun. The engine is loaded when a person first touches the form, or when the address
// holds values: a visitor who only reads that page loads nothing of it.
//
// Its height is told to the page round it when that page asks, as plain numbers both ways:
//
//   page to frame    1       tell the height, now and whenever it changes     0     no more
//   frame to page    874     the height in CSS pixels, a whole number
//
// Whatever else is sent is not looked at.

import { ask, start } from "./engine.js";
import { withFabric } from "./fabric.js";
import { LiveForm } from "./forms.js";
import { openLinks } from "./links.js";
import { ownOrder } from "./order.js";

const form = document.querySelector("form[data-calculator]");
const live = new LiveForm(form);
const full = document.querySelector("a[data-full]");
const place = full.href;

for (const kind of ["focusin", "pointerdown", "input"]) document.addEventListener(kind, start, { once: true });
addEventListener("hashchange", start);
if (location.hash.length > 1 || live.pending) start();
openLinks([live]);
ownOrder(live);
withFabric(live);

// The way to the full page takes along what is in the fields.
form.addEventListener("ww-answered", async () => {
  const told = await ask("full", { ask: "link", calculator: live.slug, inputs: live.inputs, digest: "" }).catch(() => null);
  if (told?.fragment) full.href = `${place}#${told.fragment}`;
});

let heard = null; // where the page round this one wants the height
let last = 0;

addEventListener("message", ({ source, origin, data }) => {
  if (source !== parent || parent === self || (data !== 0 && data !== 1)) return;
  heard = data === 1 ? origin : null;
  last = 0;
  tell();
});

function tell() {
  // Of the content, not of the window: a frame that is too high must be able to shrink.
  const height = Math.ceil(document.body.getBoundingClientRect().height);
  if (heard === null || height === last) return;
  last = height;
  parent.postMessage(height, heard === "null" ? "*" : heard);
}

new ResizeObserver(tell).observe(document.body);
document.documentElement.dataset.scripts = "run";
