// The windows for when the work was interrupted or went wrong: where am I, and taking rows back.

import { element, say } from "./say.js";
import { mostRows, takeBack } from "./machine-back.js";
import { differenceText, findPlaces } from "./machine-find.js";
import { needleTyped, place } from "./machine-needles.js";

export function trouble(root, current, jump) {
  const find = root.querySelector(".m-find");
  const back = root.querySelector(".m-back");
  const found = find.querySelector(".m-fits");
  const findSaid = find.querySelector("[data-said]");
  const backSaid = back.querySelector("[data-said]");
  const backGo = back.querySelector(".m-back-go");
  let backTo = null;

  root.addEventListener("click", (event) => {
    const opens = event.target.closest("[data-opens]")?.dataset.opens;
    if (opens === "find") openFind();
    else if (opens === "back") openBack();
  });

  function openFind() {
    const { piece } = current();
    const old = !piece.sights;
    find.querySelector("form").hidden = old;
    findSaid.textContent = old ? say("machine.find-old") : "";
    found.replaceChildren();
    const options = piece.yarns.map((yarn, at) => element("option", { value: at }, yarn.name));
    find.querySelector("select").replaceChildren(
      element("option", { value: "" }, say("machine.find-cannot-tell")),
      ...options,
      element("option", { value: -1 }, say("machine.no-yarn")),
    );
    find.querySelector("form").reset();
  }

  find.querySelector("form").addEventListener("submit", (event) => {
    event.preventDefault();
    const { piece, index } = current();
    const digits = piece.design.bed.machine?.counter_digits ?? 3;
    found.replaceChildren();
    const { seen, wrong } = read(find.querySelector("form"));
    if (wrong) {
      findSaid.textContent = say(wrong);
      return;
    }
    const { fits, alike } = findPlaces(piece.sights, seen, index, digits);
    findSaid.textContent = fits[0].weight ? say("machine.find-none") : alike > 1 ? say("machine.alike", { n: alike }) : say("machine.find-one");
    found.append(...fits.map((fit) => line(piece, fit, digits)));
    found.querySelector("button").focus();
  });

  function line(piece, fit, digits) {
    const cue = piece.cues[fit.cue];
    const button = element(
      "button",
      { type: "button" },
      element("span", {}, say("machine.fit", { step: fit.cue + 1, block: cue.block_name || say("machine.end") })),
      element("small", {}, where(cue, fit)),
      ...fit.differs.map((one) => element("small", { class: "m-differs" }, differenceText(one, piece.yarns, digits))),
    );
    button.addEventListener("click", () => {
      find.close();
      jump({ index: fit.cue, done: fit.done });
    });
    return element("li", {}, button);
  }

  function openBack() {
    const now = current();
    const old = !now.piece.sights;
    const most = old ? 0 : mostRows(now.piece.cues, now);
    back.querySelector("form").hidden = most === 0;
    back.querySelector("input").value = most ? "1" : "";
    backSaid.textContent = old ? say("machine.find-old") : most ? "" : say("machine.back-nothing");
    show(null);
  }

  function show(plan) {
    back.querySelector(".m-back-steps").replaceChildren(...(plan?.steps ?? []).map((words) => element("li", {}, words)));
    backGo.parentElement.hidden = !plan;
    backTo = plan?.to ?? null;
  }

  back.querySelector("form").addEventListener("submit", (event) => {
    event.preventDefault();
    const now = current();
    const most = mostRows(now.piece.cues, now);
    const typed = back.querySelector("input").value.trim();
    const n = /^\d{1,4}$/.test(typed) ? Number(typed) : 0;
    const right = n >= 1 && n <= most;
    backSaid.textContent = right ? "" : say("machine.back-wrong", { most });
    show(right ? takeBack(now.piece.cues, now, n) : null);
  });

  backGo.addEventListener("click", () => {
    back.close();
    if (backTo) jump(backTo);
  });
}

/** Which of the places of a step it is, in words. */
function where(cue, { part, done }) {
  const at = (key) => say(`machine.fit-${key}`, { where: done ? cue.passes[done].where : cue.where, done, rows: cue.rows });
  if (part === 1) return at("resting");
  if (part === 0) return at("before");
  if (done) return at("row");
  return at(!cue.rows ? "list" : cue.now.length ? "made" : "ready");
}

/** What the form says: {seen} or {wrong: key of a sentence}. */
function read(form) {
  const given = new FormData(form);
  const text = (name) => String(given.get(name) ?? "").trim();
  const seen = { yarn: null, colour: null, open: null, carriage: null, wrapped: null, counter: null };
  if (text("yarn") !== "") seen.yarn = Number(text("yarn"));
  for (const which of ["colour", "open"]) {
    const typed = [text(`${which}-from`), text(`${which}-to`)];
    if (given.has(`${which}-none`)) seen[which] = [0, 0];
    else if (typed[0] || typed[1]) {
      const ends = typed.map(needleTyped);
      if (ends.includes(null)) return { wrong: "machine.find-needle-wrong" };
      seen[which] = ends.toSorted((a, b) => place(a) - place(b));
    }
  }
  if (text("carriage")) seen.carriage = text("carriage") === "R" ? 1 : -1;
  if (text("wrapped")) seen.wrapped = Number(text("wrapped"));
  if (text("find-counter")) {
    if (!/^\d{1,6}$/.test(text("find-counter"))) return { wrong: "machine.find-counter-wrong" };
    seen.counter = Number(text("find-counter"));
  }
  return Object.values(seen).every((one) => one === null) ? { wrong: "machine.find-nothing" } : { seen };
}

