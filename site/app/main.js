// What every page loads: the frame, the offline copy, on pages with a form the live engine, and what a few pages have of their own.
// Each in a task of its own, so that a weak tablet answers to a finger between them.

import { liveFrame } from "./frame.js";
import { keepOffline, settled } from "./offline.js";
import { liveForms } from "./forms.js";

// What only some pages have: an element that says so, the script that fills it, and the function in it.
const PARTS = [
  ["data-keep", "keep", "showKeep"],
  ["data-class", "class", "showClass"],
  ["data-reports", "reports", "showReports"],
  ["data-embed", "embed-pick", "pickEmbed"],
  ["data-copy", "copy", "showCopy"],
];

function fillParts() {
  for (const [name, script, fill] of PARTS) {
    const box = document.querySelector(`[${name}]`);
    if (box) import(`./${script}.js`).then((part) => part[fill](box));
  }
  settled.then(() => import("./marks.js")).then(({ compareMarks }) => compareMarks());
}

const inTurn = [liveFrame, () => keepOffline(liveForms()), fillParts].values();

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
