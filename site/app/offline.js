// The copy for offline use: asks the browser to keep every file (sw.js does it), says how far it is, and offers a new
// version when one is there. Nothing changes under a person's hands: the new one is used only when it is asked for.
//
// <html data-offline> goes none, storing, ready; or paused (not all was stored) or impossible.

import { engineState, whenChanged } from "./engine.js";
import { TOP } from "./places.js";
import { element, say } from "./say.js";
import { keepTyped } from "./typed.js";

const OWN = new URL("sw.js", TOP).href; // the worker of a copy above this one, on the same host, is not ours
const LATEST = 60_000; // ms; by then the storing begins, whatever the engine does

const line = element("p", { class: "ww-offline" });
let asked = false;

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
  let registration;
  try {
    registration = await worker.register(new URL("sw.js", TOP), { scope: TOP.pathname, updateViaCache: "none" });
  } catch {
    registration = undefined;
  }
  if (registration === undefined) {
    show("impossible", say("app.offline-no-worker"));
    return;
  }
  registration.addEventListener("updatefound", () => follow(registration));
  follow(registration);
  if (registration.active) await look(registration.active);
}

/** Watches what the registration holds: a worker that is being installed, one that waits, one that serves. */
function follow(registration) {
  const { installing, waiting } = registration;
  if (waiting && registration.active) offerNew(waiting);
  if (!installing) return;
  const first = !registration.active;
  if (first) show("storing", "");
  installing.addEventListener("statechange", () => {
    if (installing.state === "installed" && !first) offerNew(installing);
    if (installing.state === "activated") look(installing);
    if (installing.state === "redundant" && first && document.documentElement.dataset.offline === "storing") show("paused", line.textContent || say("app.offline-failed", { why: say("app.offline-not-loaded") }));
  });
}

function offerNew(worker) {
  offer(() => {
    asked = true;
    worker.postMessage("use");
  });
}

/** Asks the serving worker whether everything is there; only then it is said. What was lost since is loaded again. */
async function look(worker) {
  if (worker.state !== "activated") await new Promise((done) => worker.addEventListener("statechange", done, { once: true }));
  let { done, all } = await told(worker, "whole?");
  if (done < all) {
    show("storing", say("app.offline-lost", { done, all }));
    await told(worker, "mend");
    const failure = document.documentElement.dataset.offline === "paused";
    ({ done, all } = await told(worker, "whole?"));
    if (done < all) {
      if (!failure) show("paused", say("app.offline-paused", { done, all }));
      return;
    }
  }
  show("ready", say("app.offline-ready"));
}

/** The offline worker's answer to a word. */
export function told(worker, word) {
  const channel = new MessageChannel();
  const answer = new Promise((done) => (channel.port1.onmessage = (event) => done(JSON.parse(event.data))));
  worker.postMessage(word, [channel.port2]);
  return answer;
}

function heard(text) {
  const { done, all, why, scope = TOP.href } = JSON.parse(text);
  if (scope !== TOP.href) return;
  const { offline } = document.documentElement.dataset;
  if (offline === "ready") return; // a new version is being stored; the one in use is whole
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
