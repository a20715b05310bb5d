// A report for the designer: what went how, with its places, as one file that the person sends herself. The core writes it, so
// that it is a file that the designer's page can read. Also what is noted under "Trouble" for it.

import { stepsDone } from "./keep-collect.js";
import { withPlaces } from "./problems.js";
import { noted, placeOf, reportOf, timesOf } from "./report-doc.js";
import { fileName, saveJson } from "./save-file.js";
import { element, say } from "./say.js";
import { getPiece, keepNote, place, planDigest, readNote } from "./store.js";

const MOST = 1000; // of anything that is told
const WHOLE = /^\d{1,4}$/;

export function reporting(root, current) {
  troubleNotes(root, current);
  const box = root.querySelector(".m-report");
  const form = box.querySelector("form");
  const said = box.querySelector("[data-said]");
  let open = null; // {first, plans, note} of the piece that the window was opened for

  root.addEventListener("click", async (event) => {
    if (!event.target.closest("[data-opens=report]")) return;
    // What is typed before the fields are filled would be written over.
    for (const one of form.elements) one.disabled = true;
    open = await gathered(current());
    fill();
    for (const one of form.elements) one.disabled = false;
  });

  function fill() {
    const { first, note } = open;
    const yarns = first.yarns.map((yarn, n) => {
      const name = `grams-${n}`;
      return element("p", { class: "m-field" }, element("label", { for: `m-${name}` }, say("machine.report-yarn", { name: yarn.name })), element("input", { id: `m-${name}`, name, inputmode: "decimal", autocomplete: "off" }));
    });
    form.querySelector(".m-report-yarns").replaceChildren(...yarns);
    for (const [name, text] of Object.entries(note.typed)) if (form.elements[name]) form.elements[name].value = text;
    const { report } = made(open);
    const counts = { notes: report.notes.length, mishaps: report.mishaps.length, counts: report.counts.length };
    const lines = [say("machine.report-holds", { minutes: Math.round(report.minutes), interruptions: report.interruptions, ...counts })];
    if (!report.blocks.length && report.steps_done) lines.push(say("machine.report-old"));
    box.querySelector(".m-report-holds").replaceChildren(...lines.map((words) => element("p", {}, words)));
    said.textContent = "";
  }

  const typed = () => Object.fromEntries([...new FormData(form)].map(([name, text]) => [name, String(text)]));

  /** Kept with every letter: the window may be closed, or the tablet put away. */
  form.addEventListener("input", () => {
    if (!open) return;
    open.note.typed = typed();
    keepNote(`report.${open.first.digest}`, open.note);
  });

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const { report, wrong } = made(open, typed());
    if (wrong) {
      said.textContent = say("machine.report-grams-wrong");
      return;
    }
    try {
      const { ask, start } = await import("./engine.js");
      start();
      const told = await ask("report", { ask: "report-write", report: JSON.stringify(report) });
      if (!told) return;
      if (told.problems.length) {
        said.textContent = withPlaces(told.problems);
        return;
      }
      const name = `${fileName(report.title, "piece")}-report${report.knitter ? `-${fileName(report.knitter, "")}` : ""}.json`;
      saveJson(told.text, name);
      said.textContent = say("machine.report-saved", { name });
    } catch (fault) {
      console.info(`The report was not written: ${fault?.stack ?? fault}`);
      said.textContent = say("machine.report-no-engine");
    }
  });
}

/** The first plan of the piece, which is the designer's, and what is known of it and of the plans that it was carried on with. */
async function gathered({ piece, notes, earlier, pace, index, done }) {
  const now = { piece, notes, pace, at: { index, done } };
  const plans = [now];
  for (const { from } of earlier) {
    const old = await getPiece(from);
    if (!old) break;
    const there = await place(from);
    plans.unshift({ piece: old, notes: (await readNote(`notes.${from}`))?.notes ?? {}, pace: there?.pace ?? {}, at: there });
  }
  const first = plans[0].piece;
  return { first, plans, note: await noted(first.digest) };
}

/** {report, wrong}: as the core wants it, and whether grams are no number. Of the plans for the rest only the time is told. */
function made({ first, plans, note }, typed = note.typed) {
  const [began, ...rest] = plans;
  const done = stepsDone(first, began.at);
  const { report, wrong } = reportOf(first, { digest: planDigest(first.digest), steps_done: done, pace: began.pace, note: { ...note, typed } });
  const notes = [
    ...Object.entries(began.notes).map(([index, text]) => ({ ...placeOf(first, index), text: text.slice(0, MOST) })),
    ...rest.flatMap((plan) => Object.values(plan.notes).map((text) => ({ steps_done: done, text: text.slice(0, MOST) }))),
  ];
  // The time goes on from plan to plan, so the last one has all of it.
  return { report: { ...report, ...timesOf(plans.at(-1).pace), carried_on: rest.length, notes: notes.slice(0, MOST) }, wrong };
}

/** Under each mishap a button that notes its place; and two counts of needles that do not agree. */
function troubleNotes(root, current) {
  const trouble = root.querySelector(".m-trouble");

  /** Steps of a plan of the rest are not those of the designer's plan: there the place is where the first plan was left. */
  async function note(key, what) {
    const { piece, index, earlier } = current();
    const first = earlier.at(-1)?.from ?? piece.digest;
    const before = earlier.at(-1)?.index ?? index;
    const old = await noted(first);
    await keepNote(`report.${first}`, { ...old, [key]: [...old[key], { ...what, index: before }].slice(-MOST) });
    return say("machine.report-noted", { step: index + 1 });
  }

  for (const details of trouble.querySelectorAll("[data-mishap]")) {
    const button = element("button", { type: "button", class: "m-mishap-note" }, say("machine.report-note"));
    const told = element("span", { role: "status" });
    button.addEventListener("click", async () => (told.textContent = await note("mishaps", { kind: details.dataset.mishap })));
    details.addEventListener("toggle", () => (told.textContent = ""));
    details.append(element("p", {}, button, " ", told));
  }

  const form = trouble.querySelector(".m-count-off");
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const told = form.querySelector("[role=status]");
    const [planned, counted] = ["count-planned", "count-counted"].map((name) => form.elements[name].value.trim());
    if (![planned, counted].every((text) => WHOLE.test(text) && Number(text) <= 1000)) told.textContent = say("machine.count-wrong");
    else {
      told.textContent = await note("counts", { planned: Number(planned), counted: Number(counted) });
      form.reset();
    }
  });
}
