// One step on the screen: fills the places that the page has, as the build filled them for the first step.

import { element, say } from "./say.js";
import { drawBed, rangeName, svg } from "./machine-bed.js";
import { frontPicture } from "./machine-front.js";

// Sizes of type, 0 the largest; machine.css has one for each. The last takes the bed away as well.
const SMALLEST = 7;

export function screen(root) {
  const find = (selector) => root.querySelector(selector);
  const cueAt = find(".m-cue");
  const bedAt = find(".m-bed");
  const frontAt = find(".m-front");
  const bed = svg("svg", { class: "m-bed-drawing", role: "img" });
  bedAt.prepend(bed);
  bedAt.hidden = false;
  drawKeys(bedAt);
  let piece;
  let front;
  let shown;
  let yarns;
  let blockRows;
  const sizes = new Map();

  function take(next) {
    piece = next;
    root.dataset.machine = piece.digest;
    find(".m-title").textContent = piece.title;
    yarns = new Map(piece.yarns.map((yarn) => [yarn.id, yarn]));
    blockRows = new Map(piece.cues.map((cue) => [cue.block, cue.counter_after]));
    frontAt.querySelector("svg")?.remove();
    front = piece.picture ? frontPicture(piece) : null;
    if (front) frontAt.prepend(front.picture);
    frontAt.hidden = !front;
  }

  function show(index, ticks = []) {
    const cue = piece.cues[index];
    shown = cue;
    fillBar(cue);
    fillCue(cue, ticks);
    front?.fill(cue.row_before, cue.block, say("machine.front", { done: cue.row_before, all: piece.rows }));
    find("[data-action=back]").disabled = index === 0;
    const last = index === piece.cues.length - 1;
    find("[data-action=forward]").disabled = last;
    find("[data-action=forward]").textContent = say(last ? "machine.last" : "machine.forward");
    draw();
    fit();
  }

  function fillBar(cue) {
    const list = cue.kind === "start" || cue.kind === "block-change";
    find(".m-block").textContent = cue.block_name || say("machine.end");
    find(".m-step").textContent = say("machine.step", { step: cue.index + 1, steps: piece.cues.length });
    const rows = find(".m-block-rows");
    rows.hidden = !cue.block;
    rows.textContent = say("machine.block-rows", { done: list ? cue.counter_after : cue.counter_before, all: blockRows.get(cue.block) });
    const all = find(".m-piece-rows");
    all.dataset.row = cue.row_before;
    all.textContent = say("machine.piece-rows", { done: cue.row_before, all: piece.rows });
  }

  function fillCue(cue, ticks) {
    cueAt.dataset.cue = cue.index;
    root.dataset.kind = cue.kind;
    find(".m-where").textContent = cue.where;
    const yarn = yarns.get(cue.yarn);
    find(".m-yarn").hidden = !yarn;
    if (yarn) {
      find(".m-patch rect").setAttribute("fill", yarn.colour);
      find(".m-yarn strong").textContent = yarn.name;
      find(".m-yarn span").textContent = cue.knit ? say(`machine.yarn-${cue.yarn_at}`) : "";
    }
    find(".m-stop").hidden = !cue.good_to_stop;
    find(".m-now").hidden = !cue.now.length;
    find(".m-now").replaceChildren(...cue.now.map(nowLine));
    const list = cue.now.length ? [] : cue.before;
    find(".m-list").hidden = !list.length;
    find(".m-list").replaceChildren(...list.map((words, at) => listLine(words, at, ticks)));
    markNow();
    find(".m-knit").hidden = !cue.knit;
    find(".m-rows-now").textContent = cue.knit;
    find(".m-run").textContent = cue.run;
    find(".m-check").hidden = !cue.check;
    find(".m-check span").textContent = cue.check;
    find(".m-next").textContent = cue.next;
  }

  /** A line of the list was ticked; gives back which ones are done. */
  function ticked() {
    markNow();
    fit();
    return [...root.querySelectorAll("[data-item]:checked")].map((one) => Number(one.dataset.item));
  }

  function markNow() {
    const lines = [...root.querySelectorAll(".m-list > li")];
    const done = (line) => line.querySelector("input").checked;
    const now = lines.find((line) => !done(line));
    for (const line of lines) line.className = line === now ? "is-now" : done(line) ? "is-done" : "";
  }

  /** Smaller type where the words need more room than there is. Steps of one run need the same size: it is kept. */
  function fit() {
    const likeness = [shown.kind, shown.now.map((one) => one.what.length), shown.check.length, shown.next.length, shown.run.length].join();
    const kept = sizes.get(likeness);
    let size = kept ?? 0;
    const fits = () => {
      root.dataset.fit = size;
      return cueAt.scrollHeight <= cueAt.clientHeight + 1;
    };
    while (size < SMALLEST && !fits()) size += 1;
    root.dataset.fit = size;
    if (shown.now.length || shown.knit) sizes.set(likeness, size);
  }

  function draw() {
    const width = bedAt.clientWidth;
    const height = parseFloat(getComputedStyle(bedAt).getPropertyValue("--bed-height")) || 180;
    if (width) drawBed(bed, shown, yarns.get(shown.bed.yarn || shown.yarn)?.colour ?? "#b8b8b8", width, height);
    bed.setAttribute("aria-label", bedInWords(shown.bed));
  }

  let waiting = 0;
  const resized = new ResizeObserver(() => {
    cancelAnimationFrame(waiting);
    waiting = requestAnimationFrame(() => {
      if (!shown) return;
      sizes.clear();
      draw();
      fit();
    });
  });
  resized.observe(cueAt);
  resized.observe(bedAt);

  return { take, show, ticked };
}

function nowLine(one) {
  const line = element("p", { class: one.needles ? "m-move" : "m-also" });
  if (one.where) line.append(element("span", {}, one.where), " ");
  line.append(element(one.needles ? "strong" : "span", {}, one.what));
  return line;
}

function listLine(words, at, ticks) {
  const box = element("input", { type: "checkbox", "data-item": at });
  box.checked = ticks.includes(at);
  return element("li", {}, element("label", {}, box, element("span", {}, words)));
}

function bedInWords(bed) {
  const kinds = ["knitting", "held", "holding", "returning"].filter((kind) => bed[kind].length);
  const what = kinds.map((kind) => say(`machine.bed-${kind}`, { needles: bed[kind].map(rangeName).join(", ") })).join(" ");
  return say("machine.bed", { side: say(`machine.side-${bed.carriage}`), what });
}

/** The four kinds of needles, drawn small in front of their words. */
function drawKeys(bedAt) {
  const signs = {
    knitting: [svg("path", { class: "b-needles b-knitting", "stroke-width": 2.5, d: "M5 2V9M11 2V9" })],
    held: [svg("path", { class: "b-needles b-held", "stroke-width": 2.5, d: "M5 2V20M11 2V20" })],
    holding: [svg("path", { class: "b-arrow b-arrow-holding", d: "M1 10H15L8 20Z" }), svg("path", { class: "b-needles b-holding", "stroke-width": 4, d: "M8 2V10" })],
    returning: [svg("path", { class: "b-arrow b-arrow-returning", d: "M1 12H15L8 2Z" }), svg("path", { class: "b-from", d: "M8 12V21" })],
  };
  for (const [kind, drawn] of Object.entries(signs)) {
    bedAt.querySelector(`[data-key=${kind}]`).prepend(svg("svg", { viewBox: "0 0 16 22", width: 16, height: 22, "aria-hidden": "true" }, ...drawn));
  }
}

