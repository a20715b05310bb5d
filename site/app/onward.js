// The way from one answer to the next calculator: what the core says that it carries is laid over what this device last
// had in the fields there. And what was in the fields of a page the last time, offered when it is opened again.

import { ask } from "./engine.js";
import { pageOf } from "./places.js";
import { element, say } from "./say.js";
import { keepNote, readNote } from "./store.js";
import { handTyped, takenFrom } from "./typed.js";

export function onward(live) {
  remember(live);
  if (live.slug === "time") import("./own-pace.js").then(({ ownPace }) => ownPace(live));
  const from = takenFrom();
  if (from) live.note(say("app.onward-taken", { title: from }));
  for (const button of live.box.querySelectorAll(".ww-tools [data-to]")) button.addEventListener("click", () => go(live, button.dataset.to));
}

async function go(live, to) {
  if (live.problems.length > 0) return live.told.scrollIntoView({ block: "center" }); // says what is wrong
  let told;
  try {
    told = await ask("onward", { ask: "onward", calculator: live.slug, to, inputs: live.inputs });
  } catch {
    return live.render();
  }
  if (told === null) return undefined;
  if (told.problems.length > 0) return live.changed(0); // the same problems, beside their fields
  const last = (await readNote(`last.${to}`))?.inputs ?? {};
  const there = pageOf(to);
  if (handTyped(there.pathname, { [to]: { ...last, ...told.inputs } }, told.title)) location.assign(there);
  else live.noteBelow(say("app.not-kept", { why: say("app.not-kept-private") }));
  return undefined;
}

/** What was in the fields with the last good answer is kept on this device, and offered the next time. */
async function remember(live) {
  let dirty = false;
  let offer;
  live.form.addEventListener("ww-answered", () => {
    dirty = true;
    offer?.remove();
  });
  const keep = () => {
    if (dirty && live.good) keepNote(`last.${live.slug}`, { inputs: live.inputs });
    dirty = false;
  };
  addEventListener("pagehide", keep);
  document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && keep());
  const last = (await readNote(`last.${live.slug}`))?.inputs;
  if (!last || dirty || Object.entries(last).every(([name, text]) => (live.control(name)?.value ?? text) === text)) return;
  offer = element("button", { type: "button", class: "ww-button ww-button--quiet", title: say("app.last-time-help") }, say("app.last-time"));
  offer.addEventListener("click", () => live.fill(last));
  live.box.querySelector(".ww-actions").append(offer);
}
