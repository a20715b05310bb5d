// What every page loads: the offline copy, on pages with a form the live engine, and what a few pages have of their own.

import { keepOffline, settled } from "./offline.js";
import { liveForms } from "./forms.js";

const hasForms = liveForms();
keepOffline(hasForms);
const copy = document.querySelector("[data-copy]");
const keep = document.querySelector("[data-keep]");
if (keep) import("./keep.js").then(({ showKeep }) => showKeep(keep));
if (copy) import("./copy.js").then(({ showCopy }) => showCopy(copy));
settled.then(() => import("./marks.js")).then(({ compareMarks }) => compareMarks());
document.documentElement.dataset.scripts = "run"; // see the page's head
