// What every page loads: the offline copy, on pages with a form the live engine, and what a few pages have of their own.

import { keepOffline } from "./offline.js";
import { liveForms } from "./forms.js";

const hasForms = liveForms();
keepOffline(hasForms);
const copy = document.querySelector("[data-copy]");
const embed = document.querySelector("[data-embed]");
const keep = document.querySelector("[data-keep]");
if (keep) import("./keep.js").then(({ showKeep }) => showKeep(keep));
const shared = document.querySelector("[data-class]");
if (shared) import("./class.js").then(({ showClass }) => showClass(shared));
const reports = document.querySelector("[data-reports]");
if (reports) import("./reports.js").then(({ showReports }) => showReports(reports));
if (embed) import("./embed-pick.js").then(({ pickEmbed }) => pickEmbed(embed));
if (copy) import("./copy.js").then(({ showCopy }) => showCopy(copy));
document.documentElement.dataset.scripts = "run"; // see the page's head
