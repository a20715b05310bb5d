// All steps on paper, with boxes to tick: made when the page is printed, gone afterwards.

import { element, say } from "./say.js";

/** The whole piece as a list; a run stands in four columns, what is the same in all its steps once above them. */
export function paperList(piece, written = {}) {
  const paper = element(
    "section",
    { class: "m-paper" },
    element("h2", {}, say("machine.paper-title", { title: piece.title })),
    element("p", {}, say("machine.paper-note")),
  );
  let block = null;
  for (const cues of runs(piece.cues)) {
    if (cues[0].block !== block) {
      block = cues[0].block;
      paper.append(element("h3", {}, cues[0].block_name || say("machine.end")));
    }
    paper.append(...(cues[0].nth ? runList(cues) : [stepList(cues[0])]));
    for (const { index } of cues) if (written[index]) paper.append(element("p", { class: "m-paper-note" }, say("machine.note-step", { step: index + 1, note: written[index] })));
  }
  return paper;
}

/** Steps one by one, and those of a run together: the 1st of so many begins one, but for the other parts of its round. */
function runs(cues) {
  const found = [];
  let last = null;
  for (const cue of cues) {
    const same = last && last.block === cue.block && cue.nth && last.nth && !(cue.nth === 1 && last.nth !== 1);
    if (same) found.at(-1).push(cue);
    else found.push([cue]);
    last = cue;
  }
  return found;
}

/** A check list has a box for each line, a step with rows one box. */
function stepList(cue) {
  const lines = cue.knit
    ? [element("li", {}, element("b", {}, cue.where), ` ${[...cue.before, cue.knit, cue.check].join(" ")}`)]
    : cue.before.map((words) => element("li", {}, words));
  return element("ul", { class: "m-paper-list" }, ...lines);
}

function runList(cues) {
  const same = (what) => (cues.every((cue) => what(cue) === what(cues[0])) ? what(cues[0]) : "");
  const ends = (cue) => cue.now.filter((one) => one.where).map((one) => one.where).join("; ");
  const [end, knit] = [same(ends), same((cue) => cue.knit)];
  const notes = [...new Set(cues.flatMap((cue) => cue.now.filter((one) => !one.needles).map((one) => one.what)))];
  const mark = (words) => "*".repeat(notes.indexOf(words) + 1);
  const boxes = cues.map((cue) => {
    const what = cue.now.map((one) => (one.needles ? `${end || !one.where ? "" : `${one.where}: `}${one.what}.` : mark(one.what)));
    return element("li", {}, element("b", {}, cue.where), ` ${what.join(" ")}${knit ? "" : ` ${cue.knit}`}`);
  });
  const head = [end && `${end}.`, knit].filter(Boolean).join(" ");
  return [
    ...(head ? [element("p", { class: "m-paper-head" }, head)] : []),
    element("ul", { class: "m-paper-run" }, ...boxes),
    ...notes.map((words) => element("p", { class: "m-paper-note" }, `${mark(words)} ${words}`)),
  ];
}

export function printWith(root, current) {
  let paper = null;
  const away = () => {
    paper?.remove();
    paper = null;
  };
  addEventListener("beforeprint", () => {
    away();
    const { piece, notes } = current();
    paper = paperList(piece, notes);
    root.append(paper);
  });
  addEventListener("afterprint", away);
}
