// What every page loads: the offline copy, on pages with a form the live engine, and what a few pages have of their own.

import { keepOffline } from "./offline.js";
import { liveForms } from "./forms.js";

const hasForms = liveForms();
keepOffline(hasForms);
const copy = document.querySelector("[data-copy]");
if (copy) import("./copy.js").then(({ showCopy }) => showCopy(copy));
