// Links in which the whole input lives: made by a button, opened from the page's address. The core makes and reads them;
// whatever a link holds is shown as text only, and takes the place of nothing of one's own before that was asked.

import { ask } from "./engine.js";
import { holds, mayReplace } from "./link-first.js";
import { PAGES, pageOf } from "./places.js";
import { inWords } from "./problems.js";
import { element, say } from "./say.js";
import { LONGEST_LINK, OURS, forgetLink, waysToShare } from "./share-link.js";

/** Everything that can be done with the link of a form. */
export function share(live) {
  const ways = new Map(waysToShare({
    made: () => made(live),
    told: (...inside) => live.noteBelow(...inside),
    title: () => live.inputs.title || live.form.getAttribute("aria-label"),
    help: say("app.copy-link-help"),
  }));
  for (const button of live.box.querySelectorAll(".ww-sharing [data-does]")) {
    const does = ways.get(button.dataset.does);
    if (does) button.addEventListener("click", does);
    else button.remove(); // the device has nothing for it
  }
}

async function made(live) {
  let told;
  try {
    told = await ask("link", { ask: "link", calculator: live.slug, inputs: live.inputs, digest: live.digest });
  } catch {
    live.render();
    return "";
  }
  if (told?.problems.length) live.noteBelow(inWords(told.problems));
  return told?.fragment;
}

/** Opens the link in the address, now and when another is put there. */
export function openLinks(forms) {
  const open = () => {
    const found = OURS.exec(location.hash);
    if (found) openLink(found[1], forms);
  };
  for (const live of forms) {
    // What is typed is no longer the sender's: loading the page again must not bring the sender's back.
    live.form.addEventListener("input", () => {
      if (OURS.test(location.hash)) forgetLink();
    });
  }
  addEventListener("hashchange", open);
  open();
}

async function openLink(fragment, forms) {
  const first = forms[0];
  if (fragment.startsWith("c")) {
    first.note(say("app.link-elsewhere"), " ", element("a", { href: new URL(`class/#${fragment}`, PAGES).href }, say("app.class-title")));
    return;
  }
  first.note(say("app.booting"));
  let told;
  try {
    told = await ask("open", { ask: "open", fragment: fragment.slice(0, LONGEST_LINK + 1) });
  } catch {
    first.note(); // the engine says itself why there is none
    return;
  }
  if (told === null) return;
  const problems = inWords(told.problems);
  if (told.calculator === "") {
    const mine = typed(first);
    if (!mine) first.form.reset();
    first.note(problems, " ", say(mine ? "app.link-fields-stay" : "app.link-not-opened"));
    return;
  }
  const live = forms.find((one) => one.slug === told.calculator);
  if (live === undefined) {
    const there = `${pageOf(told.calculator).href}#${fragment}`;
    first.note(say("app.link-elsewhere"), " ", element("a", { href: there }, told.title), ` (${holds(told)})`);
    return;
  }
  if (live !== first) first.note();
  if ((await isOwn(live, told.inputs)) && !(await mayReplace(told, say("app.link-mine-fields")))) {
    forgetLink();
    live.note(say("app.link-left"));
    return;
  }
  live.sent = told.inputs;
  await live.fill(told.inputs);
  const newer = told.newer ? say("app.link-newer", { version: told.made_by }) : "";
  const other = told.digest && live.digest && told.digest !== live.digest ? say("app.link-other-plan", { version: told.made_by }) : "";
  live.note([say("app.link-opened"), `${holds(told)}.`.replace(/\.\.$/, "."), newer, other, problems].filter(Boolean).join(" "));
}

/** Whether something stands in the fields that was typed here: neither the page's own nor what another link brought. */
const typed = (live) => live.changedByHand && !same(live.inputs, live.sent);

/** Whether a link would take the place of something of one's own, in the fields or kept from the last time. */
async function isOwn(live, sent) {
  if (typed(live) && !same(live.inputs, sent)) return true;
  if (live.sent) return false; // a link is open: what was kept was asked for then
  const { readNote } = await import("./store.js");
  // One engine lets a reader wait for as long as another window holds the store open: a link does not hang on that.
  const late = new Promise((done) => setTimeout(done, 2_000, null));
  const last = (await Promise.race([readNote(`last.${live.slug}`).catch(() => null), late]))?.inputs;
  return Boolean(last) && ![sent, live.defaults].some((other) => same({ ...live.defaults, ...last }, other));
}

/** Whether both put the same texts into the fields that both know. */
const same = (one, other) => Boolean(other) && Object.entries(one).every(([name, text]) => (other[name] ?? text) === text);
