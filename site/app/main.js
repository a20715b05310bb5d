// What every page loads: the frame, the offline copy, on pages with a form the live engine, and what a few pages have of their own.
// Each in a task of its own, so that a weak tablet answers to a finger between them.

import { liveFrame } from "./frame.js";
import { keepOffline } from "./offline.js";
import { liveForms } from "./forms.js";

const inTurn = [
  liveFrame,
  () => keepOffline(liveForms()),
  () => {
    const copy = document.querySelector("[data-copy]");
    const keep = document.querySelector("[data-keep]");
    if (keep) import("./keep.js").then(({ showKeep }) => showKeep(keep));
    if (copy) import("./copy.js").then(({ showCopy }) => showCopy(copy));
  },
].values();

// A timer is held back in a page in the background, a message is not.
const { port1, port2 } = new MessageChannel();
port1.onmessage = () => {
  const { value: act, done } = inTurn.next();
  if (done) return port1.close();
  port2.postMessage(null);
  return act();
};
port2.postMessage(null);
document.documentElement.dataset.scripts = "run"; // see the page's head
