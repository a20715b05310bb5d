// "Carry on from what is there": the bed as the page believes it, corrected by the person; the rest planned anew by the core;
// what will stay visible; and the way on, and back.

import { element, say } from "./say.js";
import { carriedNote } from "./machine-chain.js";
import { needleName } from "./machine-needles.js";
import { believed, canCarryOn, runsOf } from "./machine-state.js";

/**
 * `act.carry(made)` goes on with the piece that the core made and resolves to whether it was kept; `act.before()` goes back
 * to the plan before, `act.again(was)` to one that was left.
 */
export function carrying(root, current, act) {
  const here = root.querySelector(".m-carry");
  const form = here.querySelector("form");
  const said = here.querySelector("[data-said]");
  const found = here.querySelector(".m-carry-found");
  const after = here.querySelector(".m-carry-after");
  const rows = here.querySelector(".m-carry-rows");
  const way = root.querySelector(".m-carried");
  let made = null;
  let asked = 0; // only the newest question is answered

  root.addEventListener("click", (event) => {
    const opens = event.target.closest("[data-opens]")?.dataset.opens;
    if (opens === "carry") open();
    else if (opens === "trouble") waysBack();
  });

  function open() {
    const { piece, index, done } = current();
    const may = Boolean(piece.sights) && canCarryOn(piece, { index, done });
    form.hidden = here.querySelector(".m-carry-help").hidden = !may;
    said.textContent = may ? "" : say(piece.sights ? "machine.carry-edge" : "machine.find-old");
    forget();
    if (may) fill(piece, believed(piece, { index, done }));
  }

  function forget() {
    made = null;
    asked += 1;
    found.replaceChildren();
    after.hidden = true;
    for (const box of form.querySelectorAll("[aria-invalid]")) box.removeAttribute("aria-invalid");
  }

  function fill(piece, state) {
    const number = (id) => piece.yarns.findIndex((yarn) => yarn.id === id) + 1;
    form.reset();
    const put = (name, text) => (form.elements.namedItem(name).value = text);
    form.elements.namedItem("feeder_yarn").replaceChildren(
      ...piece.yarns.map((yarn) => element("option", { value: yarn.id }, yarn.name)),
      element("option", { value: "" }, say("machine.no-yarn")),
    );
    put("held_needles", runsOf(state.held));
    put("carriage_side", state.carriage === "L" ? "left" : "right");
    put("feeder_yarn", state.feeder?.yarn ?? "");
    put("feeder_needle", state.feeder ? needleName(state.feeder.needle) : "");
    put("mast", (state.mast ?? []).map((one) => `${number(one.yarn)} ${needleName(one.needle)}`).join(", "));
    const yarns = piece.yarns.map((yarn, at) => `${at + 1} ${yarn.name}`).join(", ");
    here.querySelector("#m-mast-help").textContent = `${say("machine.carry-mast-help")} ${say("machine.carry-yarns", { yarns })}`;
    rows.textContent = say("machine.carry-rows-waiting");
    tell(piece, state, {}).then((told) => told && (rows.textContent = told.rows || told.problems.map(words).join(" ")));
  }

  /** What the core says; null where a newer question was asked, or where it cannot be asked, which is then said. */
  async function tell(piece, state, inputs) {
    const mine = (asked += 1);
    try {
      const { ask, start } = await import("./engine.js");
      start();
      const told = await ask("carry", { ask: "carry-on", design: JSON.stringify(piece.design), state: JSON.stringify(state), carries: seenEnds(piece, current()), inputs });
      return told && mine === asked ? told : null;
    } catch {
      if (mine === asked) rows.textContent = said.textContent = say("machine.carry-no-engine");
      return null;
    }
  }

  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const { piece, index, done } = current();
    forget();
    said.textContent = say("machine.carry-waiting");
    const inputs = Object.fromEntries([...new FormData(form)].map(([name, value]) => [name, String(value).trim()]));
    const told = await tell(piece, believed(piece, { index, done }), inputs);
    if (!told) return;
    rows.textContent = told.rows;
    for (const problem of told.problems) form.elements.namedItem(problem.where)?.setAttribute?.("aria-invalid", "true");
    said.textContent = told.problems.map(words).join(" ");
    if (told.problems.length) {
      form.querySelector("[aria-invalid]")?.focus();
      return;
    }
    found.innerHTML = told.html; // made by the core, in which every text of a person is escaped
    const same = told.piece.digest === piece.digest.split(".")[0];
    if (same) said.textContent = say("machine.carry-same");
    else {
      said.textContent = say("machine.carry-found");
      made = told.piece;
    }
    after.hidden = same;
    said.scrollIntoView({ block: "start" });
  });
  // What was shown belongs to what was typed then.
  form.addEventListener("input", forget);

  here.querySelector(".m-carry-go").addEventListener("click", async () => {
    if (!made) return;
    const piece = made;
    made = null; // a second tap does nothing
    if (await act.carry(piece)) here.close();
    else said.textContent = say("machine.carry-not-kept");
  });

  /** In the window of troubles: back to the plan before, or to the one that was left. */
  async function waysBack() {
    const { piece } = current();
    const ways = [];
    const { carried } = piece;
    if (carried) ways.push(button(say("machine.carried-back", { step: carried.index + 1 }), act.before));
    const note = await carriedNote(piece.digest);
    if (note?.was && !note.to) ways.push(button(say("machine.carried-again"), () => act.again(note.was)));
    if (current().piece !== piece) return;
    way.hidden = !ways.length;
    way.replaceChildren(...ways);
  }

  function button(label, does) {
    const made = element("button", { type: "button" }, label);
    made.addEventListener("click", () => {
      made.closest("dialog").close();
      does();
    });
    return made;
  }
}

/** The outermost needles that carry the yarn in the feeder, as the record has them for that place. */
function seenEnds(piece, { index, done }) {
  const sight = piece.sights.find(([cue, , at]) => cue === index && at === done);
  return sight?.[4] ? `${sight[4]} ${sight[5]}` : "";
}

const words = ({ sentence, way_out }) => `${sentence} ${way_out}`.trim();
