// The page's side of the engine: one worker, one question in it at a time, the newest question of each asker next.
//
//   start()                          begins to load; <html data-engine> goes static, booting, ready or failed
//   await ask("form", question)      the core's answer; null when the same asker asked again meanwhile
//   whenChanged(tell)                tell(state, why) at every change of state
//
// A worker that dies, or that takes too long over a question, is ended and another is started. Questions asked while the
// engine starts wait for it.

import { asking, read } from "./protocol.js";

const LONGEST_START = 180_000; // ms; a slow line has to bring some ten megabytes
const LONGEST_QUESTION = 60_000;
const MOST_STARTS = 3; // in a row, without an answer between them

/** A question that got no answer: `fault` says why ("engine" there is none, "fell" the worker was lost over it). */
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
    if (inWork?.asker === asker) inWork.stale = true;
    waiting.set(asker, { question, resolve, reject });
    next();
  });
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
  try {
    worker = new Worker(new URL("./worker.js", import.meta.url), { type: "module" });
  } catch {
    change("failed", "old-browser");
    return;
  }
  worker.onmessage = (event) => heard(read(event.data));
  worker.onerror = (event) => {
    event.preventDefault();
    lost(state === "booting" ? "not-loaded" : "broken");
  };
  limit(LONGEST_START, "too-long");
}

function heard(message) {
  if (message === null) return;
  if (message.state === "ready" && state === "booting") {
    clearTimeout(timer);
    change("ready");
    next();
  } else if (message.state === "failed") {
    lost(message.why);
  } else if (inWork !== null && message.id === inWork.id) {
    if (message.fault !== undefined) {
      console.info(`The engine fell: ${message.fault}`);
      lost("broken");
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
  limit(LONGEST_QUESTION, "broken");
  worker.postMessage(asking(lastId, question));
}

function limit(time, reason) {
  clearTimeout(timer);
  timer = setTimeout(() => lost(reason), time);
}

/** The worker is of no more use. What it was asked is lost; what waits is asked of the next one. */
function lost(reason) {
  clearTimeout(timer);
  worker?.terminate();
  worker = null;
  const had = inWork;
  inWork = null;
  const again = state === "ready" && starts < MOST_STARTS;
  if (had) {
    if (had.stale) had.resolve(null);
    else had.reject(new Unanswered(again ? "fell" : "engine"));
  }
  if (again) launch();
  else change("failed", reason);
}
