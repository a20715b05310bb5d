// Notes on steps, the time, and the gauge measured in the middle of the piece. Only the last asks the engine.

import { element, say } from "./say.js";
import { paceSentences } from "./machine-pace.js";

/** `keep(notes)` stores {index: text}; `jump({index})` goes to a step. */
export function noteOn(root, current, keep, jump) {
  const more = root.querySelector(".m-more");
  const text = more.querySelector(".m-note-text");
  const said = more.querySelector(".m-note-said");
  let step = 0; // whose note is in the window: it closes after a jump has begun
  const save = () => {
    const { notes } = current();
    const words = text.value.trim();
    if (words === (notes[step] ?? "")) return;
    const { [step]: _old, ...others } = notes;
    keep(words ? { ...others, [step]: words } : others).then(() => {
      said.textContent = say("machine.note-kept");
      list();
    });
  };

  root.addEventListener("click", (event) => {
    if (event.target.closest("[data-opens=more]")) {
      const { piece, index, done, notes, pace } = current();
      step = index;
      text.value = notes[step] ?? "";
      said.textContent = "";
      more.querySelector(".m-times").replaceChildren(...paceSentences(pace, piece.cues, index, done).map((words) => element("p", {}, words)));
      more.querySelector(".m-gauge-said").replaceChildren();
      list();
    }
  });
  more.querySelector(".m-note-save").addEventListener("click", save);
  more.addEventListener("close", save); // closing without the button must not lose what was written

  function list() {
    const { notes, earlier } = current();
    const lines = Object.entries(notes).map(([index, note]) => {
      const go = element("button", { type: "button" }, say("machine.note-step", { step: Number(index) + 1, note }));
      go.addEventListener("click", () => {
        more.close();
        jump({ index: Number(index) });
      });
      return element("li", {}, go);
    });
    for (const plan of earlier) {
      for (const [index, note] of Object.entries(plan.notes)) lines.push(element("li", {}, say("machine.carried-notes", { step: Number(index) + 1, note })));
    }
    more.querySelector(".m-notes").replaceChildren(...(lines.length ? lines : [element("li", {}, say("machine.notes-none"))]));
  }

  const form = more.querySelector(".m-gauge");
  form.addEventListener("submit", async (event) => {
    event.preventDefault();
    const { piece, index, done } = current();
    const typed = Object.fromEntries([...new FormData(form)].map(([name, value]) => [name.replace("gauge-", ""), String(value).trim()]));
    if (!piece.gauge || Object.values(typed).includes("")) {
      tell([say(piece.gauge ? "machine.gauge-wrong" : "machine.find-old")]);
      return;
    }
    tell([say("machine.gauge-waiting")]);
    const cue = piece.cues[index];
    const inputs = {
      ...typed,
      planned_stitches: piece.gauge[0],
      planned_rows: piece.gauge[1],
      needles: String(piece.picture.box[0]),
      height_rows: String(piece.picture.box[1]),
      rows_left: String(piece.rows - cue.row_before - done),
    };
    try {
      const { ask, start } = await import("./engine.js");
      start();
      const told = await ask("measured", { ask: "measured", inputs });
      if (told) tell(told.problems.length ? told.problems.map((one) => `${one.sentence} ${one.way_out}`) : told.said);
    } catch {
      tell([say("machine.gauge-no-engine")]);
    }
  });

  function tell(lines) {
    more.querySelector(".m-gauge-said").replaceChildren(...lines.map((words) => element("p", {}, words)));
  }
}
