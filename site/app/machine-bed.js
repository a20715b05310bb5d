// The bed as the knitter faces it: L on the left, needles that are held drawn toward her, the knitting hanging below, the
// carriage where it stands. Everything comes from the cue's `bed`; here are only coordinates.

import { count, needleName, place, rangeName } from "./machine-needles.js";
import { svg } from "./say.js";

// Heights from the top, as parts of the drawing's height.
const ROW = { numbers: 0.075, back: 0.11, front: 0.33, works: 0.38, upper: 0.45, held: 0.62, foot: 0.83, labels: 0.96 };

/** Draw `cue` into the svg element `into`, which is `width` by `height` on the screen. */
export function drawBed(into, cue, colour, width, height) {
  const bed = cue.bed;
  const needles = count([bed.first, bed.last]);
  const carriage = Math.min(76, width * 0.11);
  const room = carriage + 10;
  const pitch = Math.min(24, (width - 2 * room) / needles);
  const left = (width - pitch * needles) / 2;
  const y = Object.fromEntries(Object.entries(ROW).map(([name, part]) => [name, Math.round(part * height)]));
  const x = (needle) => left + (place(needle) - place(bed.first) + 0.5) * pitch;
  const span = ([first, last]) => [x(first) - pitch / 2, x(last) + pitch / 2];
  const at = { bed, cue, x, y, span, pitch, left, right: left + pitch * needles, width, height, carriage };

  // What stands still from step to step is drawn once: to lay out text costs more than all the rest.
  const still = `${width} ${height} ${bed.first} ${bed.last}`;
  if (into.dataset.still !== still) {
    into.dataset.still = still;
    into.setAttribute("viewBox", `0 0 ${width} ${height}`);
    into.setAttribute("width", width);
    into.setAttribute("height", height);
    const plate = svg("rect", { class: "b-bed", x: at.left - room + 2, y: y.back, width: at.right - at.left + 2 * room - 4, height: y.front - y.back, rx: 4 });
    into.replaceChildren(svg("g"), svg("g", {}, plate, ...numbers(at)), svg("g"));
  }
  const [below, , above] = into.children;
  below.replaceChildren(...fabric(at, colour));
  above.replaceChildren(...passes(at), ...needleLines(at), ...carriageAt(at), ...moves(at));
}

function fabric({ bed, y, span, pitch }, colour) {
  const made = [];
  const hang = (runs, top, kind, fill) => {
    for (const run of runs) {
      const [from, to] = span(run);
      made.push(svg("path", { class: `b-fabric b-fabric-${kind}`, d: `M${from} ${top}H${to}V${y.foot}H${from}Z`, ...(fill ? { fill } : {}) }));
    }
  };
  hang(bed.held, y.held, "waits");
  hang(bed.holding, y.held, "waits");
  hang(bed.knitting, y.works, "knits", colour);
  hang(bed.returning, y.upper, "knits", colour);
  // Wales on what knits, so that it is not told by its colour alone.
  const wales = [...bed.knitting.map((run) => [run, y.works]), ...bed.returning.map((run) => [run, y.upper])];
  const every = Math.max(1, Math.ceil(5 / pitch));
  let d = "";
  for (const [run, top] of wales) {
    const [from, to] = span(run);
    for (let at = from + every * pitch; at < to - 0.1; at += every * pitch) d += `M${round(at)} ${top + 3}V${y.foot}`;
  }
  if (d) made.push(svg("path", { class: "b-wales", d }));
  return made;
}

function numbers({ bed, x, y, pitch }) {
  const made = [];
  const step = [5, 10, 20, 50].find((every) => pitch * every >= 46) ?? 100;
  for (let n = Math.ceil(bed.first / step) * step; n <= bed.last; n += step) {
    if (n === 0) continue;
    made.push(svg("text", { class: "b-number", x: round(x(n)), y: y.numbers }, needleName(n)));
  }
  if (bed.first < 0 && bed.last > 0) {
    const middle = round((x(-1) + x(1)) / 2);
    made.push(svg("path", { class: "b-middle", d: `M${middle} ${y.back}V${y.front}` }));
    made.push(svg("text", { class: "b-number", x: middle, y: y.numbers }, "L | R"));
  }
  return made;
}

function needleLines({ bed, x, y, pitch }) {
  const thick = round(Math.min(3, Math.max(1, pitch * 0.38)));
  const lines = (runs, tip) => {
    let d = "";
    for (const [first, last] of runs) for (let n = first; n <= last; n += 1) if (n) d += `M${round(x(n))} ${y.front}V${tip}`;
    return d;
  };
  const kinds = [
    ["knitting", bed.knitting, y.works],
    ["held", bed.held, y.held],
    ["returning", bed.returning, y.upper],
    ["holding", bed.holding, y.held],
  ];
  return kinds.filter(([, runs]) => runs.length).map(([kind, runs, tip]) => svg("path", { class: `b-needles b-${kind}`, "data-needles": kind, "stroke-width": kind === "holding" || kind === "returning" ? thick * 1.8 : thick, d: lines(runs, tip) }));
}

function carriageAt({ bed, cue, x, y, pitch, left, right, carriage, width }) {
  const gap = 4;
  const inner = bed.beside === null ? (bed.carriage === "R" ? right : left) : x(bed.beside) + (bed.carriage === "R" ? pitch / 2 : -pitch / 2);
  const wanted = bed.carriage === "R" ? inner + gap : inner - gap - carriage;
  const from = Math.max(1, Math.min(width - carriage - 1, wanted));
  const top = y.back - 5;
  const high = y.front - y.back + 10;
  const made = [svg("rect", { class: "b-carriage", x: round(from), y: top, width: carriage, height: high, rx: 7 })];
  if (cue.to) {
    const middle = from + carriage / 2;
    const half = carriage * 0.26 * (cue.to === "R" ? 1 : -1);
    const level = top + high / 2;
    made.push(svg("path", { class: "b-way", d: `M${round(middle - half)} ${level}H${round(middle + half)}m${round(-half * 0.7)} ${-high * 0.2}l${round(half * 0.7)} ${high * 0.2}l${round(-half * 0.7)} ${high * 0.2}` }));
  }
  return made;
}

/** The way of the carriage over the needles that knit: there, or there and back. */
function passes({ bed, cue, y, span }) {
  const runs = [...bed.knitting, ...bed.returning];
  if (!cue.rows || !runs.length) return [];
  const from = Math.min(...runs.map((run) => span(run)[0]));
  const to = Math.max(...runs.map((run) => span(run)[1]));
  const tall = y.front - y.back;
  const way = (level, toRight) => {
    const [start, end, head] = toRight ? [from, to, -1] : [to, from, 1];
    return svg("path", { class: "b-pass", d: `M${round(start)} ${level}H${round(end)}m${9 * head} -6l${-9 * head} 6l${9 * head} 6` });
  };
  const made = [way(Math.round(y.back + tall * (cue.rows > 1 ? 0.34 : 0.5)), cue.to === "R")];
  if (cue.rows > 1) made.push(way(Math.round(y.back + tall * 0.7), cue.to !== "R"));
  return made;
}

/** Arrows with the numbers of the needles to move now, and the numbers of the outermost needles that knit. */
function moves({ bed, span, y, width, pitch }) {
  const made = [];
  const labels = [];
  const point = (run, kind) => {
    const [from, to] = span(run);
    const middle = (from + to) / 2;
    const down = kind === "holding";
    const tip = down ? y.held + 15 : y.upper + 4;
    const tail = down ? y.held + 2 : y.held;
    const half = Math.max(7, Math.min(11, pitch));
    if (to - from > 3 * half) made.push(svg("path", { class: "b-bracket", d: `M${round(from + 1)} ${y.held - 2}V${y.held + 2}H${round(to - 1)}V${y.held - 2}` }));
    if (!down) made.push(svg("path", { class: "b-from", d: `M${round(middle)} ${y.upper + 12}V${y.held}` }));
    made.push(svg("path", { class: `b-arrow b-arrow-${kind}`, d: `M${round(middle - half)} ${down ? tail : tip + half * 1.4}H${round(middle + half)}L${round(middle)} ${tip}Z` }));
    labels.push({ middle, text: `${down ? "\u25bc" : "\u25b2"} ${rangeName(run)}`, kind: "move" });
  };
  bed.holding.forEach((run) => point(run, "holding"));
  bed.returning.forEach((run) => point(run, "returning"));
  return [...made, ...placed(labels, y, width)];
}

function placed(labels, y, width) {
  const wide = (label) => label.text.length * 12 + 14;
  labels.sort((a, b) => a.middle - b.middle);
  let free = 0;
  for (const label of labels) {
    label.middle = Math.max(label.middle, free + wide(label) / 2, wide(label) / 2);
    free = label.middle + wide(label) / 2;
  }
  let most = width;
  for (const label of labels.toReversed()) {
    label.middle = Math.min(label.middle, most - wide(label) / 2);
    most = label.middle - wide(label) / 2;
  }
  return labels.map(({ middle, text, kind }) => svg("text", { class: `b-label b-label-${kind}`, x: round(middle), y: y.labels }, text));
}

const round = (value) => Math.round(value * 10) / 10;
