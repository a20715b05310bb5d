// Links in which the whole input lives: made by a button, opened from the page's address. The core makes and reads them;
// whatever a link holds is shown as text only.

import { ask } from "./engine.js";
import { PAGES } from "./places.js";
import { inWords } from "./problems.js";
import { element, say } from "./say.js";

const FRAGMENT = /^#(w[0-9]{1,4}\..*)$/s;
const LONGEST = 4096;

export function linkButton(live) {
  const button = element("button", { type: "button", class: "ww-button ww-button--quiet" }, say("app.copy-link"));
  button.title = say("app.copy-link-help");
  button.addEventListener("click", () => copy(live));
  return button;
}

async function copy(live) {
  live.note();
  let told;
  try {
    told = await ask("link", { ask: "link", calculator: live.slug, inputs: live.inputs, digest: live.digest });
  } catch {
    live.render();
    return;
  }
  if (told === null) return;
  if (told.problems.length > 0) {
    live.note(inWords(told.problems));
    return;
  }
  const link = `${location.origin}${location.pathname}#${told.fragment}`;
  try {
    await navigator.clipboard.writeText(link);
    live.note(say("app.link-copied"), " ", say("app.copy-link-help"));
  } catch {
    const field = element("input", { type: "text", readonly: true, class: "ww-link", "aria-label": say("app.copy-link"), value: link });
    live.note(say("app.link-by-hand"), " ", field, " ", say("app.copy-link-help"));
    field.select();
  }
}

/** Opens the link in the address, now and when another is put there. */
export function openLinks(forms) {
  const open = () => {
    const found = FRAGMENT.exec(location.hash);
    if (found) openLink(found[1], forms);
  };
  for (const live of forms) {
    // What is typed is no longer the sender's: loading the page again must not bring the sender's back.
    live.form.addEventListener("input", () => {
      if (FRAGMENT.test(location.hash)) history.replaceState(null, "", location.pathname + location.search);
    });
  }
  addEventListener("hashchange", open);
  open();
}

async function openLink(fragment, forms) {
  const first = forms[0];
  first.note(say("app.booting"));
  let told;
  try {
    told = await ask("open", { ask: "open", fragment: fragment.slice(0, LONGEST + 1) });
  } catch {
    first.note(); // the engine says itself why there is none
    return;
  }
  if (told === null) return;
  const problems = inWords(told.problems);
  if (told.calculator === "") {
    first.form.reset();
    first.note(problems, " ", say("app.link-not-opened"));
    return;
  }
  const live = forms.find((one) => one.slug === told.calculator);
  if (live === undefined) {
    const there = new URL(`calculators/${told.calculator}/#${fragment}`, PAGES);
    first.note(say("app.link-elsewhere"), " ", element("a", { href: there.href }, told.title));
    return;
  }
  if (live !== first) first.note();
  await live.fill(told.inputs);
  const newer = told.newer ? say("app.link-newer", { version: told.made_by }) : "";
  const other = told.digest && live.digest && told.digest !== live.digest ? say("app.link-other-plan", { version: told.made_by }) : "";
  live.note([say("app.link-opened"), newer, other, problems].filter(Boolean).join(" "));
}
