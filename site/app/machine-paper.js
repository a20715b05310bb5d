// All steps on paper, with boxes to tick: made when the page is printed, gone afterwards.

import { element, say } from "./say.js";

export function paperList(piece) {
  const paper = element(
    "section",
    { class: "m-paper" },
    element("h2", {}, say("machine.paper-title", { title: piece.title })),
    element("p", {}, say("machine.paper-note")),
  );
  let block = null;
  let run = null;
  for (const cue of piece.cues) {
    if (cue.block !== block) {
      block = cue.block;
      paper.append(element("h3", {}, cue.block_name || say("machine.end")));
      run = null;
    }
    // The 1st of so many times begins a run, but for the other parts of its first round.
    if (cue.nth && (!run || (cue.nth === 1 && run.nth !== 1))) {
      run = { nth: 1, boxes: element("ul", { class: "m-paper-run" }) };
      paper.append(run.boxes);
    }
    if (cue.nth) {
      run.nth = cue.nth;
      run.boxes.append(element("li", {}, element("b", {}, cue.where), ` ${[...cue.before, short(cue)].join(" ")}`));
    } else {
      run = null;
      const lines = cue.before.map((words) => element("li", {}, words));
      if (cue.knit) lines.push(element("li", {}, element("b", {}, cue.where), ` ${cue.knit} `, cue.check));
      paper.append(element("ul", { class: "m-paper-list" }, ...lines));
    }
  }
  return paper;
}

// In a run the way is the same every time or turns every time; rows and side say enough.
const short = (cue) => cue.knit;

export function printWith(root, current) {
  let paper = null;
  addEventListener("beforeprint", () => {
    paper?.remove();
    paper = paperList(current());
    root.append(paper);
  });
  addEventListener("afterprint", () => {
    paper?.remove();
    paper = null;
  });
}
