// The page of the designer: reports of test knitters beside the plan. They are read by the core, and nothing of them is kept.

import { ask, start } from "./engine.js";
import { withPlaces } from "./problems.js";
import { chooseJson } from "./save-file.js";
import { button, element, say } from "./say.js";
import { getPiece, piecesHere, readNote } from "./store.js";

const LONGEST_REPORT = 4_000_000; // bytes; the reader has the same limit in characters
const MOST = 20; // the core compares no more at once; the last that were opened stay
const LONGEST_PLAN = 32_000_000;
const PLANNER = "planner";
const FILE = "file";

export async function showReports(box) {
  start();
  const texts = []; // of the reports that were opened
  let planFile = null;
  const status = element("p", { role: "status", class: "ww-keep-said" });
  const found = element("div", { class: "ww-reports-found core" });
  const [reports, plan] = [chooseJson(true), chooseJson()];
  const select = element("select", { id: "reports-with" });
  const openReports = button("app.reports-open", () => reports.click());
  const openPlan = button("app.reports-open-plan", () => plan.click(), "ww-button--quiet");
  await fillPlans();
  box.replaceChildren(
    element("div", { class: "ww-field" }, element("label", { for: "reports-with" }, say("app.reports-with")), select),
    element("div", { class: "ww-actions" }, openReports, openPlan, reports, plan),
    element("p", {}, say("app.reports-none")),
    status,
    found,
  );

  reports.addEventListener("change", async () => {
    const files = [...reports.files];
    const long = files.find((file) => file.size > LONGEST_REPORT);
    if (long) status.textContent = say("app.reports-long", { name: long.name });
    else {
      for (const file of files) {
        const text = await file.text();
        if (!texts.includes(text)) texts.push(text);
      }
      texts.splice(0, Math.max(0, texts.length - MOST));
      await compare();
    }
    reports.value = "";
  });
  plan.addEventListener("change", async () => {
    const [file] = plan.files;
    if (file && file.size > LONGEST_PLAN) status.textContent = say("app.reports-long", { name: file.name });
    else if (file) {
      planFile = await file.text();
      select.querySelector(`[value=${FILE}]`)?.remove();
      select.append(element("option", { value: FILE }, file.name));
      select.value = FILE;
      await compare();
    }
    plan.value = "";
  });
  select.addEventListener("change", compare);

  async function fillPlans() {
    const options = [];
    if (await readNote("last.panel-plan")) options.push(element("option", { value: PLANNER }, say("app.reports-planner")));
    for (const { digest, title } of await piecesHere()) options.push(element("option", { value: `piece ${digest}` }, say("app.reports-machine", { title })));
    select.replaceChildren(...options);
  }

  /** What the reports are held against, as the core wants it; null where there is nothing yet. */
  async function chosen() {
    if (select.value === FILE) return { file: planFile };
    if (select.value === PLANNER) return { inputs: (await readNote("last.panel-plan"))?.inputs ?? {} };
    const piece = select.value ? await getPiece(await firstOf(select.value.slice("piece ".length))) : null;
    return piece?.plan ? { file: JSON.stringify(piece.plan) } : piece ? { file: JSON.stringify(piece.design) } : null;
  }

  async function compare() {
    const against = await chosen();
    if (against === null) {
      status.textContent = say("app.reports-no-plan");
      return;
    }
    if (texts.length === 0) return;
    status.textContent = say("app.reports-working");
    const time = (await readNote("last.time"))?.inputs;
    try {
      const told = await ask("reports", { ask: "reports", plan: JSON.stringify({ ...against, ...(time && { time }) }), reports: JSON.stringify(texts) });
      if (told === null) return;
      found.innerHTML = told.html; // made by the core, in which every text of a person is escaped
      status.textContent = told.problems.length ? withPlaces(told.problems) : say("app.reports-of", { name: told.title, n: texts.length });
    } catch {
      status.textContent = say("app.reports-no-engine");
    }
  }
}

/** A piece that was carried on is compared by its first plan. */
async function firstOf(digest) {
  const from = (await getPiece(digest))?.carried?.from;
  return from ? firstOf(from) : digest;
}

