// One step on the screen: fills the places that the page has, as the build filled them for the first step.

import { element, say, svg } from "./say.js";
import { drawBed } from "./machine-bed.js";
import { frontPicture } from "./machine-front.js";
import { rangeName } from "./machine-needles.js";
import { seenAt } from "./machine-rows.js";
import { typeSizes } from "./machine-type.js";

export function screen(root) {
  const parts = new Map();
  /** The page's places are looked up once. */
  const find = (selector) => {
    if (!parts.has(selector)) parts.set(selector, root.querySelector(selector));
    return parts.get(selector);
  };
  const bedAt = find(".m-bed");
  const frontAt = find(".m-front");
  const bed = svg("svg", { class: "m-bed-drawing", role: "img" });
  bedAt.prepend(bed);
  bedAt.hidden = false;
  drawKeys(bedAt);
  const type = typeSizes(root, find(".m-cue"));
  let piece;
  let front;
  let shown;
  let yarns;
  let blockRows;
  let before; // rows that were knitted by an earlier plan of the same piece
  let room = null;

  function take(next) {
    piece = next;
    root.dataset.machine = piece.digest;
    root.toggleAttribute("data-carried", Boolean(piece.state)); // begins in the middle of the piece, on a bed that is to be seen
    before = piece.carried?.rows ?? 0;
    find(".m-title").textContent = piece.title;
    yarns = new Map(piece.yarns.map((yarn) => [yarn.id, yarn]));
    blockRows = new Map(piece.cues.map((cue) => [cue.block, cue.counter_after]));
    frontAt.querySelector("svg")?.remove();
    front = piece.picture ? frontPicture(piece) : null;
    if (front) frontAt.prepend(front.picture);
    frontAt.hidden = !front;
    type.forget();
  }

  /** Show a place of the piece: {index, done, single, ticks, note}. */
  function show(at) {
    const cue = piece.cues[at.index];
    const last = at.index === piece.cues.length - 1;
    shown = { cue, ...seenAt(cue, at) };
    fillBar(cue, at.done);
    fillCue(shown, at);
    front?.fill(cue.row_before + at.done, cue.block, say("machine.front", { done: before + cue.row_before + at.done, all: before + piece.rows }));
    find("[data-action=back]").disabled = at.index === 0 && at.done === 0;
    find("[data-action=forward]").disabled = last;
    put(find("[data-action=forward]"), say(last ? "machine.last" : "machine.forward"));
    draw();
    type.fit(...likeness(at));
  }

  function fillBar(cue, done) {
    const list = cue.kind === "start" || cue.kind === "block-change";
    put(find(".m-block"), cue.block_name || say("machine.end"));
    put(find(".m-step"), say("machine.step", { step: cue.index + 1, steps: piece.cues.length }));
    find(".m-block-rows").hidden = !cue.block;
    const rows = list ? cue.counter_after : cue.counter_before + done;
    put(find(".m-block-rows"), say("machine.block-rows", { done: rows, all: blockRows.get(cue.block) }));
    const all = find(".m-piece-rows");
    all.dataset.row = before + cue.row_before + done;
    put(all, say("machine.piece-rows", { done: before + cue.row_before + done, all: before + piece.rows }));
  }

  function fillCue(seen, at) {
    const { cue } = seen;
    const cueAt = find(".m-cue");
    cueAt.dataset.cue = cue.index;
    cueAt.dataset.done = at.done;
    if (root.dataset.kind !== cue.kind) {
      root.dataset.kind = cue.kind;
      room = null;
    }
    put(find(".m-where"), seen.where);
    const yarn = yarns.get(cue.yarn);
    find(".m-yarn").hidden = !yarn;
    if (yarn) {
      find(".m-patch rect").setAttribute("fill", yarn.colour);
      put(find(".m-yarn strong"), yarn.name);
      const metres = cue.kind === "block-change" && piece.blocks.find((block) => block.id === cue.block)?.yarn_m;
      put(find(".m-yarn span"), cue.knit ? say(`machine.yarn-${cue.yarn_at}`) : metres ? say("machine.yarn-metres", { metres }) : "");
    }
    find(".m-stop").hidden = !cue.good_to_stop;
    find(".m-now").hidden = !seen.now.length;
    find(".m-now").replaceChildren(...seen.now.map(nowLine));
    const list = cue.now.length ? [] : cue.before;
    find(".m-list").hidden = !list.length;
    find(".m-list").replaceChildren(...list.map((words, line) => listLine(words, line, at.ticks)));
    markNow();
    find(".m-knit").hidden = !cue.knit;
    put(find(".m-rows-now"), seen.knit);
    put(find(".m-run"), seen.run);
    const single = find(".m-single");
    single.hidden = !cue.passes?.length;
    single.setAttribute("aria-pressed", String(at.single));
    find(".m-check").hidden = !cue.check;
    put(find(".m-check span"), cue.check);
    put(find(".m-next"), seen.next);
    find(".m-note").hidden = !at.note;
    put(find(".m-note"), at.note ? say("machine.note-shown", { note: at.note }) : "");
  }

  /** A line of the list was ticked; gives back which ones are done. */
  function ticked() {
    markNow();
    type.fit(...likeness());
    return [...root.querySelectorAll("[data-item]:checked")].map((one) => Number(one.dataset.item));
  }

  function markNow() {
    const lines = [...find(".m-list").children];
    const done = (line) => line.querySelector("input").checked;
    const now = lines.find((line) => !done(line));
    for (const line of lines) line.className = line === now ? "is-now" : done(line) ? "is-done" : "";
  }

  /** The group of steps that look alike, and what else has to be equal for the same size of type. */
  function likeness(at) {
    const { cue, now, knit, next, run } = shown;
    if (!now.length && !cue.knit) return [`list ${cue.index}`, `list ${cue.index} ${at?.ticks ?? root.querySelectorAll("[data-item]:checked").length}`];
    const group = [cue.kind, now.length, Boolean(run), Boolean(at?.note)].join();
    return [group, [group, now.map((one) => one.what.length), knit.length, cue.check.length, next.length, run.length, at?.note?.length].join()];
  }

  function draw() {
    // Measured when it changes and not at every step: to ask costs a layout of the whole page.
    room ??= { width: bedAt.clientWidth, height: parseFloat(getComputedStyle(bedAt).getPropertyValue("--bed-height")) || 180 };
    const colour = yarns.get(shown.bed.yarn || shown.cue.yarn)?.colour ?? "#b8b8b8";
    if (room.width) drawBed(bed, shown, colour, room.width, room.height);
    bed.setAttribute("aria-label", bedInWords(shown.bed));
  }

  let waiting = 0;
  const resized = new ResizeObserver(() => {
    cancelAnimationFrame(waiting);
    waiting = requestAnimationFrame(() => {
      if (!shown) return;
      const width = bedAt.clientWidth;
      if (room === null || room.width !== width) {
        room = null;
        draw();
      }
      type.resized(...likeness());
    });
  });
  resized.observe(find(".m-cue"));
  resized.observe(bedAt);

  return { take, show, ticked, seen: () => shown };
}

/** Text is set only where it changes. */
function put(element, words) {
  if (element.textContent !== words) element.textContent = words;
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

