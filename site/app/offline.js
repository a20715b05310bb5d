// The copy for offline use: asks the browser to keep every file (sw.js does it), says how far it is, and offers a new
// version when one is there. Nothing changes under a person's hands: the new one is used only when it is asked for.
//
// <html data-offline> goes none, storing, ready; or paused (not all was stored) or impossible. What is paused goes on by itself:
// when the network is back, and now and then while the page stays open.

import { engineState, whenChanged } from "./engine.js";
import { TOP } from "./places.js";
import { element, say } from "./say.js";
import { keepTyped } from "./typed.js";

const OWN = new URL("sw.js", TOP).href; // the worker of a copy above this one, on the same host, is not ours
const LATEST = 60_000; // ms; by then the storing begins, whatever the engine does
const NEXT_TRY = [10_000, 30_000, 120_000, 600_000]; // ms; a host that is busy is not asked all the time
const UNSEEN = 5_000; // ms; one engine shows the worker that it installs only a while after it has begun

const line = element("p", { class: "ww-offline" });
let asked = false;
let held; // the store is held open: one engine forgets otherwise what is in it (see sw.js)
let holding = "";
let settle;
const followed = new WeakSet(); // workers
let tries = 0;
let due = false; // another try is
let full = false; // there was no room, so another try helps only when a person has made some

/** Begins when the page stands, and on a page with an engine when that is ready: what a person waits for comes first. */
export function keepOffline(withEngine) {
  (document.querySelector(".foot__inner") ?? document.body).append(line);
  offerInstall();
  if (!("serviceWorker" in navigator)) {
    show("impossible", say(window.isSecureContext ? "app.offline-no-worker" : "app.offline-not-here"));
    return;
  }
  const begin = once(register);
  const page = () => {
    if (!withEngine || ["ready", "failed"].includes(engineState().state)) begin();
    else whenChanged((state) => ["ready", "failed"].includes(state) && begin());
  };
  if (navigator.serviceWorker.controller?.scriptURL === OWN) begin();
  else if (document.readyState === "complete") page();
  else addEventListener("load", page, { once: true });
  setTimeout(begin, LATEST);
}

async function register() {
  const worker = navigator.serviceWorker;
  worker.addEventListener("message", (event) => heard(event.data));
  const had = worker.controller?.scriptURL === OWN;
  worker.addEventListener("controllerchange", () => {
    if (asked) loadAgain();
    else if (had) offer(loadAgain);
  });
  await enroll(worker);
}

async function enroll(worker) {
  let registration;
  let why = "no-worker";
  try {
    registration = await worker.register(new URL("sw.js", TOP), { scope: TOP.pathname, updateViaCache: "none" });
  } catch (fault) {
    if (fault.name === "TypeError") why = "not-loaded"; // that is how a script is refused that does not come, or not whole
  }
  if (registration === undefined) {
    if (why === "no-worker") show("impossible", say("app.offline-no-worker"));
    else pause(failedWords(), () => enroll(worker));
    return;
  }
  registration.addEventListener("updatefound", () => follow(registration));
  follow(registration);
  if (registration.active) await look(registration.active);
  else setTimeout(() => notSeen(registration), UNSEEN);
}

/** An install that failed before it could be followed: nothing is left of it. */
function notSeen({ installing, waiting, active }) {
  if (!installing && !waiting && !active) pause(failedWords(), () => enroll(navigator.serviceWorker));
}

const failedWords = () => (document.documentElement.dataset.offline === "paused" ? line.textContent : say("app.offline-failed", { why: say("app.offline-not-loaded") }));

/** Not all is stored, for a reason that may pass: `goOn` tries again, unless a try is due already. */
function pause(words, goOn) {
  show("paused", words);
  if (due || full) return;
  due = true;
  const next = once(() => {
    clearTimeout(timer);
    removeEventListener("online", next);
    due = false;
    goOn();
  });
  const timer = setTimeout(next, NEXT_TRY[Math.min(tries, NEXT_TRY.length - 1)]);
  tries += 1;
  addEventListener("online", next);
}

/** Watches what the registration holds: a worker that is being installed, one that waits, one that serves. */
function follow(registration) {
  const { installing, waiting } = registration;
  if (waiting && registration.active) offerNew(waiting);
  if (!installing || followed.has(installing)) return;
  followed.add(installing);
  const first = !registration.active;
  if (first && document.documentElement.dataset.offline !== "paused") show("storing", "");
  installing.addEventListener("statechange", () => {
    if (installing.state === "installed" && !first) offerNew(installing);
    if (installing.state === "activated") look(installing);
    if (installing.state === "redundant" && first) pause(failedWords(), () => enroll(navigator.serviceWorker));
  });
}

/** One that waits begins to serve when it is asked to, and the browser tells all pages; one that serves already just answers. */
function offerNew(worker) {
  offer(async () => {
    asked = true;
    const serves = worker.state === "activated";
    await told(worker, "use");
    if (serves) loadAgain();
  });
}

/** Asks the serving worker whether everything is there; only then it is said. What was lost since is loaded again. */
async function look(worker) {
  if (worker.state !== "activated") await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
  const { done, all, store, newer } = await told(worker, "whole?");
  await hold(store);
  // The browser lets a new version serve when no page is open; what it serves is the one in use, until a person wants the new one.
  if (newer && document.querySelector(".ww-update") === null) offerNew(worker);
  if (done < all) {
    show("storing", say("app.offline-lost", { done, all }));
    await told(worker, "mend");
    const failure = document.documentElement.dataset.offline === "paused";
    const now = await told(worker, "whole?");
    if (now.done < now.all) {
      pause(failure ? line.textContent : say("app.offline-paused", now), () => look(worker));
      return;
    }
    if (now.store !== store) {
      await hold(now.store);
      offer(loadAgain); // it was mended by the new version
    }
  }
  show("ready", say("app.offline-ready"));
}

/** An earlier worker does not tell its store. */
async function hold(store) {
  if (!store) return;
  held = await caches.open(store);
  holding = store;
}

/** The name of the store of this copy, or nothing. */
export const storeName = () => held && holding;

/** Ends when the storing is at rest for the first time: all is there, or no more of it for now. */
export const settled = new Promise((done) => (settle = done));

/** The offline worker's answer to a word. */
export function told(worker, word) {
  const channel = new MessageChannel();
  const answer = new Promise((done) => (channel.port1.onmessage = (event) => done(JSON.parse(event.data))));
  worker.postMessage(word, [channel.port2]);
  return answer;
}

function heard(text) {
  const { done, all, why, scope = TOP.href, store } = JSON.parse(text);
  if (scope !== TOP.href) return;
  const { offline } = document.documentElement.dataset;
  if (offline === "ready") return; // a new version is being stored; the one in use is whole
  if (!held) hold(store);
  full = why === "no-room";
  if (why) show("paused", `${say("app.offline-failed", { why: say(`app.offline-${why}`) })} ${say("app.offline-paused", { done, all })}`);
  else show("storing", say("app.offline-storing", { done, all }));
}

/** With what was typed kept. */
function loadAgain() {
  keepTyped();
  location.reload();
}

function show(state, words) {
  document.documentElement.dataset.offline = state;
  line.textContent = words;
  if (state !== "storing") settle();
}

/** A calm word at the foot of the screen, with a button that calls `use`. */
export function offer(use) {
  document.querySelector(".ww-update")?.remove();
  const now = element("button", { type: "button", class: "ww-button" }, say("app.new-version-use"));
  const later = element("button", { type: "button", class: "ww-button ww-button--quiet" }, say("app.later"));
  const words = element("p", {}, element("strong", {}, say("app.new-version")), " ", say("app.new-version-help"));
  const banner = element("section", { class: "ww-update", "aria-label": say("app.new-version"), role: "status" }, words, now, later);
  now.addEventListener("click", use);
  later.addEventListener("click", () => banner.remove());
  document.body.append(banner);
}

/** A button where the browser lets a page ask; a sentence on the systems that keep it in a menu. */
function offerInstall() {
  addEventListener("beforeinstallprompt", (event) => {
    event.preventDefault();
    const button = element("button", { type: "button", class: "ww-button ww-button--quiet" }, say("app.install"));
    button.addEventListener("click", () => {
      event.prompt();
      button.remove();
    });
    line.after(button);
  });
  if (navigator.standalone === false) line.after(element("p", { class: "ww-install" }, say("app.install-by-hand")));
}

function once(call) {
  let called = false;
  return () => {
    if (!called) call();
    called = true;
  };
}
