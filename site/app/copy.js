// The page about this copy: what is stored on this device, how the engine started, and a test that any person can start.

import { askText, start } from "./engine.js";
import { told } from "./offline.js";
import { TOP } from "./places.js";
import runtime from "./runtime.js";
import { day, element, number, say } from "./say.js";
import { lastStart } from "./starts.js";

const MEGABYTE = 1_000_000;

/** Fills `box`, and again when something has changed. */
export async function showCopy(box) {
  const result = element("div", { role: "status", class: "ww-copy-result" });
  const test = element("button", { type: "button", class: "ww-button" }, say("app.copy-test"));
  const facts = element("div", {});
  const fill = async () => facts.replaceChildren(...(await factsNow()));
  test.addEventListener("click", async () => {
    test.disabled = true;
    result.replaceChildren();
    await testAll((words, good) => result.append(element("p", { class: good ? "ww-good" : "ww-bad" }, words)), progressIn(result));
    await fill();
    test.disabled = false;
  });
  await fill();
  box.replaceChildren(facts, test, result);
  new MutationObserver(fill).observe(document.documentElement, { attributeFilter: ["data-offline"] });
}

async function factsNow() {
  const registration = await ours();
  const listed = await storedFiles(registration);
  const rows = [[say("app.copy-version"), `${runtime.version}${listed ? ` (${listed.version})` : ""}`]];
  if (registration?.waiting || listed?.newer) rows.push([say("app.copy-newer"), say("app.copy-newer-waits")]);
  if (listed === null) rows.push([say("app.copy-stored"), say("app.copy-nothing")]);
  else {
    const there = listed.files.filter((file) => file[3]);
    const megabytes = number(there.reduce((sum, file) => sum + file[2], 0) / MEGABYTE, 1);
    rows.push([say("app.copy-stored"), say("app.copy-files", { there: there.length, all: listed.files.length, megabytes })]);
    if (listed.since !== null) rows.push([say("app.copy-since"), say("app.copy-when", when(listed.since))]);
  }
  rows.push([say("app.copy-room"), await room()]);
  rows.push([say("app.copy-start"), startWords()]);
  const facts = rows.map(([name, words]) => element("tr", {}, element("th", { scope: "row" }, name), element("td", {}, words)));
  const made = [element("table", {}, element("tbody", {}, ...facts))];
  if (listed !== null) made.push(await asking(), fileList(listed.files));
  return made;
}

/** The offline workers of this copy, and not those of one above it. */
async function ours() {
  const registration = await navigator.serviceWorker?.getRegistration(TOP.href).catch(() => undefined);
  return registration?.scope === TOP.href ? registration : undefined;
}

/** What the offline worker says it stores; null where none serves. */
const storedFiles = async (registration) => (registration?.active ? told(registration.active, "list") : null);

function when(since) {
  const days = Math.max(0, Math.floor((Date.now() - since) / 86_400_000));
  return { date: day(since), days };
}

function startWords() {
  const last = lastStart();
  if (last === null) return say("app.copy-no-start");
  return last.way === "quick" ? say("app.copy-quick") : say(`app.copy-${last.way}`, { fault: last.fault });
}

async function room() {
  const { usage, quota } = (await navigator.storage?.estimate?.().catch(() => undefined)) ?? {};
  if (!quota) return say("app.copy-room-unknown");
  const kept = (await navigator.storage.persisted?.()) ? say("app.copy-kept") : say("app.copy-not-kept");
  return `${say("app.copy-room-of", { used: number(usage / MEGABYTE), all: number(quota / MEGABYTE) })} ${kept}`;
}

/** A button to ask the browser to keep all of it, where it does not yet. */
async function asking() {
  if (!navigator.storage?.persist || (await navigator.storage.persisted())) return "";
  const button = element("button", { type: "button", class: "ww-button ww-button--quiet" }, say("app.copy-ask"));
  const answer = element("p", { role: "status" });
  button.addEventListener("click", async () => {
    answer.textContent = (await navigator.storage.persist()) ? say("app.copy-kept") : say("app.copy-refused");
  });
  return element("div", {}, button, answer);
}

function fileList(files) {
  const lines = files.map(([address, hash, bytes, there]) =>
    element("li", {}, address || "/", " ", element("small", {}, say("app.copy-file", { bytes, hash: hash.slice(0, 12) })), there ? "" : ` ${say("app.copy-missing")}`),
  );
  return element("details", {}, element("summary", {}, say("app.copy-list", { all: files.length })), element("ul", {}, ...lines));
}

function progressIn(box) {
  const line = element("p", {});
  box.append(line);
  return (done, all) => (line.textContent = done < all ? say("app.copy-testing", { done, all }) : "");
}

/** Each file's hash, one question to the core, one cue of a piece; `tell(words, good)` for each of the three. */
async function testAll(tell, progress) {
  const listed = await storedFiles(await ours());
  if (listed === null) tell(say("app.copy-nothing"), false);
  else {
    const wrong = await wrongFiles(listed, progress);
    if (wrong.length === 0) tell(say("app.copy-all-right", { all: listed.files.length }), true);
    else tell(say("app.copy-wrong", { files: wrong.join(", ") }), false);
  }
  start();
  const right = await askText("test", runtime.smoke.question).then((answer) => answer === runtime.smoke.answer, () => false);
  tell(say(right ? "app.copy-answers" : "app.copy-no-answer"), right);
  const cue = await askText("test", JSON.stringify({ ask: "piece", inputs: {} })).then((answer) => JSON.parse(answer).piece?.cues?.[0], () => undefined);
  tell(say(cue ? "app.copy-cue" : "app.copy-no-cue"), Boolean(cue));
}

/** The files that are not there or have changed; what has changed is thrown away, so that it is loaded again. */
async function wrongFiles({ store, files }, progress) {
  const cache = await caches.open(store);
  const wrong = [];
  for (const [done, [address, hash, , , inside]] of files.entries()) {
    progress(done, files.length);
    const url = new URL(address, TOP).href;
    const kept = await cache.match(url);
    // What came compressed is kept inflated, and has another hash so.
    if (kept && (await hashOf(kept)) === (kept.headers.has("x-inflated") ? inside : hash)) continue;
    wrong.push(address || "/");
    await cache.delete(url);
  }
  progress(files.length, files.length);
  return wrong;
}

async function hashOf(kept) {
  const digest = new Uint8Array(await crypto.subtle.digest("SHA-256", await kept.arrayBuffer()));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
