// The page's side of the engine: one worker, one question in it at a time, the newest question of each asker next.
//
//   start()                          begins to load; <html data-engine> goes static, booting, ready or failed
//   await ask("form", question)      the core's answer; null when the same asker asked again meanwhile
//   whenChanged(tell)                tell(state, why) at every change of state
//
// A worker that dies, or that takes too long over a question, is ended and another is started. Questions asked while the
// engine starts wait for it. The first worker of a page starts the quick way, and may have been begun by the page's head;
// when that goes wrong in any way, the next one starts the plain way (see worker.js), and the reason is kept.

import { LANGUAGE } from "./places.js";
import { asking, beginning, read } from "./protocol.js";
import { noteStart } from "./starts.js";

const LONGEST_START = 180_000; // ms; a slow line has to bring some ten megabytes
// ms without a part that comes. The plain way is silent while it imports, which a slow tablet does for a while.
const LONGEST_SILENCE = { quick: 20_000, plain: 90_000 };
const LONGEST_UNHEARD = 5_000; // ms until a question is taken: the worker has nothing else to do
const LONGEST_QUESTION = 60_000; // ms from there; a large piece takes its time
const MOST_STARTS = 3; // in a row, without an answer between them
const LONGEST_STALE = 3_000; // ms; an answer that nobody waits for any more keeps the newest question waiting no longer
const LATE = 1_000; // ms; a clock that rings later than that stood still with the page

/** A question that got no answer: `fault` says why ("engine" there is none, "fell" the worker was lost over it, "stopped"). */
export class Unanswered extends Error {
  constructor(fault) {
    super(fault);
    this.fault = fault;
  }
}

const listeners = new Set();
const waiting = new Map(); // asker -> {question, resolve, reject}
let worker = null;
let state = "static";
let why = "";
let inWork = null; // {id, asker, resolve, reject}
let timer = 0;
let starts = 0;
let way = "quick";
let left = ""; // why the quick way was, if it was
let begun = 0; // when this worker was
let lastId = 0;

export const engineState = () => ({ state, why });

export function whenChanged(tell) {
  listeners.add(tell);
  return () => listeners.delete(tell);
}

export function start() {
  if (state !== "static") return;
  if (typeof Worker !== "function" || typeof WebAssembly !== "object") {
    change("failed", "old-browser");
    return;
  }
  launch();
}

/** The answer to `question`, a value to be sent as JSON. Rejects with Unanswered. */
export function ask(asker, question) {
  return askText(asker, JSON.stringify(question)).then((answer) => (answer === null ? null : JSON.parse(answer)));
}

/** The same with strings, untouched on both ways. */
export function askText(asker, question) {
  return new Promise((resolve, reject) => {
    waiting.get(asker)?.resolve(null);
    waiting.delete(asker); // so that it stands at the end of the row
    if (state === "failed") {
      reject(new Unanswered("engine"));
      return;
    }
    if (inWork?.asker === asker && !inWork.stale) {
      const old = inWork;
      old.stale = true;
      setTimeout(() => inWork === old && begin(), LONGEST_STALE);
    }
    waiting.set(asker, { question, resolve, reject });
    next();
  });
}

/** The question of this asker is given up, in work or not: the next one finds a fresh worker. It rejects with "stopped". */
export function stop(asker) {
  waiting.get(asker)?.reject(new Unanswered("stopped"));
  waiting.delete(asker);
  if (inWork?.asker === asker) begin();
}

/** Ends the worker over the question in it, and begins another: nothing else can stop it. */
function begin() {
  clearTimeout(timer);
  worker.terminate();
  const had = inWork;
  inWork = null;
  starts = 0;
  launch();
  if (had.stale) had.resolve(null);
  else had.reject(new Unanswered("stopped"));
}

function change(to, reason = "") {
  state = to;
  why = reason;
  document.documentElement.dataset.engine = to;
  if (to === "failed") {
    for (const one of waiting.values()) one.reject(new Unanswered("engine"));
    waiting.clear();
  }
  for (const tell of listeners) tell(to, reason);
}

function launch() {
  starts += 1;
  change("booting");
  begun = performance.now();
  const early = globalThis.wedgeworkEarly; // see the page's head
  delete globalThis.wedgeworkEarly;
  try {
    worker = (way === "quick" && early) || new Worker(new URL("./worker.js", import.meta.url), { type: "module", name: LANGUAGE === "en" ? way : `${way} ${LANGUAGE}` });
  } catch (fault) {
    noteStart("none", fault);
    change("failed", "old-browser");
    return;
  }
  if (worker.fell) {
    lost("not-loaded", "the worker could not be loaded");
    return;
  }
  worker.onmessage = (event) => heard(read(event.data));
  worker.onerror = (event) => {
    event.preventDefault();
    lost(state === "booting" ? "not-loaded" : "broken", event.message ?? "the worker could not be loaded");
  };
  limit(LONGEST_SILENCE[way], "too-long");
  worker.postMessage(beginning());
}

function heard(message) {
  if (message === null) return;
  if (message.state === "living" && state === "booting") {
    if (performance.now() - begun < LONGEST_START) limit(LONGEST_SILENCE[way], "too-long");
  } else if (message.state === "ready" && state === "booting") {
    clearTimeout(timer);
    noteStart(way, left);
    change("ready");
    next();
  } else if (message.state === "failed") {
    lost(message.why, message.fault);
  } else if (inWork !== null && message.id === inWork.id) {
    if (message.taken) {
      limit(LONGEST_QUESTION, "broken");
      return;
    }
    if (message.fault !== undefined) {
      console.info(`The engine fell: ${message.fault}`);
      lost("broken", message.fault);
      return;
    }
    clearTimeout(timer);
    starts = 0;
    const done = inWork;
    inWork = null;
    done.resolve(done.stale ? null : message.answer);
    next();
  }
}

function next() {
  if (state !== "ready" || inWork !== null || waiting.size === 0) return;
  const [asker, { question, resolve, reject }] = waiting.entries().next().value;
  waiting.delete(asker);
  lastId += 1;
  inWork = { id: lastId, asker, resolve, reject, stale: false };
  limit(LONGEST_UNHEARD, "broken");
  worker.postMessage(asking(lastId, question));
}

function limit(time, reason) {
  clearTimeout(timer);
  const due = performance.now() + time;
  timer = setTimeout(() => {
    // A page that was put to sleep hears its clock before it hears the worker.
    if (performance.now() > due + LATE) limit(Math.min(time, LONGEST_UNHEARD), reason);
    else lost(reason, `nothing was heard for ${time / 1000} s`);
  }, time);
}

/** The worker is of no more use. What it was asked is lost; what waits is asked of the next one. */
function lost(reason, fault = "") {
  clearTimeout(timer);
  worker?.terminate();
  worker = null;
  const had = inWork;
  inWork = null;
  if (state === "booting" && way === "quick") {
    way = "plain";
    left = fault;
    starts -= 1; // it is the same start, the other way
    launch();
    return;
  }
  const again = state === "ready" && starts < MOST_STARTS;
  if (had) {
    if (had.stale) had.resolve(null);
    else had.reject(new Unanswered(again ? "fell" : "engine"));
  }
  if (again) launch();
  else {
    if (state === "booting") noteStart("none", fault || reason);
    change("failed", reason);
  }
}
