// The sheet as SVG: shapes in needles and rows, over them what the model bed found, and handles of a finger's size in pixels.

import { yarnOf } from "./board-doc.js";
import { box, rings } from "./board-shape.js";
import { fault } from "./board-snap.js";
import { svg } from "./say.js";

const FEW = 5; // px of a needle from which on each has its line
const DISC = 13;

const line = (ring) => `M${ring.map(([x, y]) => `${x} ${y}`).join("L")}Z`;
export const outline = (shape) => rings(shape).map(line).join("");

const straight = (from, to) => `M${from.join(" ")}L${to.join(" ")}`;

/** An open border: a line that goes to and fro. */
function zigzag([x, low], [tx, top]) {
  const steps = Math.max(2, Math.min(80, Math.round(Math.abs(low - top) / 7)));
  const places = Array.from({ length: steps + 1 }, (_, i) => `${x + ((tx - x) * i) / steps + (i % 2 ? 4 : -4)} ${low + ((top - low) * i) / steps}`);
  return `M${places.join("L")}`;
}

const spec = (tag, attributes) => ({ tag, attributes });

/** Makes a group hold these elements. What is there already only gets other places: to make it anew would cost much more. */
function fit(group, specs) {
  specs.forEach(({ tag, attributes }, i) => {
    const there = group.children[i];
    if (there?.tagName !== tag || there.getAttribute("class") !== attributes.class) {
      const made = svg(tag, attributes);
      if (there) there.replaceWith(made);
      else group.append(made);
      return;
    }
    for (const [name, value] of Object.entries(attributes)) if (there.getAttribute(name) !== String(value)) there.setAttribute(name, value);
  });
  while (group.children.length > specs.length) group.lastChild.remove();
}

export class Paint {
  constructor(view, rules) {
    this.view = view;
    this.rules = rules;
    this.drawn = []; // for each shape {shape, path, colour}
    this.ground = svg("rect", { class: "lb-ground", x: 0, y: 0 });
    this.shapes = svg("g");
    this.gaps = svg("path", { class: "lb-gaps" }); // where nothing is knitted
    this.lines = svg("path", { class: "lb-lines" });
    this.tens = svg("path", { class: "lb-tens" });
    this.blocks = svg("path", { class: "lb-blocks" });
    this.clip = svg("rect", { x: 0, y: 0 });
    this.frame = svg("path", { class: "lb-frame" });
    this.sheet = svg("g", {}, this.ground, svg("g", { "clip-path": "url(#lb-sheet)" }, this.shapes, this.gaps), this.lines, this.tens, this.blocks, this.frame);
    this.ruler = svg("g", { class: "lb-ruler", "aria-hidden": "true" });
    this.rest = svg("g");
    this.numbers = [];
    this.found = svg("g", { class: "lb-found" }, this.rest);
    this.over = svg("g", { class: "lb-over" });
    this.root = svg("svg", { class: "lb-svg", "aria-hidden": "true", focusable: "false" }, svg("defs", {}, svg("clipPath", { id: "lb-sheet" }, this.clip)), this.sheet, this.ruler, this.found, this.over);
  }

  /** The sheet, its place and its lines. */
  place({ doc, grid }) {
    const { view } = this;
    const { needles, rows } = doc.sheet;
    const seen = `${view.matrix} ${view.wide} ${view.high} ${needles} ${rows} ${grid}`;
    if (seen === this.seen) return;
    this.seen = seen;
    this.root.setAttribute("viewBox", `0 0 ${view.wide} ${view.high}`);
    this.sheet.setAttribute("transform", view.matrix);
    for (const rect of [this.ground, this.clip]) {
      rect.setAttribute("width", needles);
      rect.setAttribute("height", rows);
    }
    this.frame.setAttribute("d", `M0 0H${needles}V${rows}H0Z`);
    this.rule(doc, grid);
  }

  rule(doc, grid) {
    const { view } = this;
    const { needles, rows } = doc.sheet;
    const key = `${needles} ${rows} ${grid} ${view.needle >= FEW} ${view.back}`;
    if (key !== this.ruled) {
      this.ruled = key;
      const across = (step) => Array.from({ length: Math.floor(needles / step) }, (_, i) => `M${(i + 1) * step} 0V${rows}`).join("");
      const up = (step) => Array.from({ length: Math.floor(rows / step) }, (_, i) => `M0 ${(i + 1) * step}H${needles}`).join("");
      this.tens.setAttribute("d", grid ? across(10) + up(10) : "");
      this.lines.setAttribute("d", grid && view.needle >= FEW ? across(1) + up(this.rules.turn_rows) : "");
    }
    const labels = []; // x, y, anchor, words
    const step = view.needle * 10 >= 26 ? 10 : view.needle * 20 >= 26 ? 20 : 50;
    for (let x = step; x < needles; x += step) {
      const [px, py] = view.toPx(x, 0);
      if (px > 0 && px < view.wide) labels.push([px, Math.min(py + 15, view.high - 4), "middle", String(x)]);
    }
    const tall = view.row * 10 >= 18 ? 10 : view.row * 20 >= 18 ? 20 : 50;
    for (let y = tall; y < rows; y += tall) {
      const [, py] = view.toPx(0, y);
      const px = Math.max(view.x, 24);
      if (py > 0 && py < view.high) labels.push([px - 5, py + 4, "end", String(y)]);
    }
    // What is there already is moved: making texts anew costs more than anything else here.
    while (this.ruler.children.length > labels.length) this.ruler.lastChild.remove();
    labels.forEach(([x, y, anchor, words], i) => {
      const there = this.ruler.children[i] ?? this.ruler.appendChild(svg("text"));
      there.setAttribute("transform", `translate(${x} ${y})`);
      if (there.getAttribute("text-anchor") !== anchor) there.setAttribute("text-anchor", anchor);
      if (there.textContent !== words) there.textContent = words;
    });
  }

  /** Every shape that is another than before. */
  fill(doc, shapes) {
    this.ground.setAttribute("fill", yarnOf(doc, doc.rest.layout.background).colour);
    const { gaps } = doc.rest.layout;
    if (gaps !== this.gapped) this.gaps.setAttribute("d", (gaps ?? []).map(line).join(""));
    this.gapped = gaps;
    while (this.drawn.length > shapes.length) this.drawn.pop().path.remove();
    shapes.forEach((shape, i) => {
      const colour = yarnOf(doc, shape.yarn).colour;
      let one = this.drawn[i];
      if (!one) {
        one = { path: svg("path", { class: "lb-shape", "fill-rule": "evenodd" }) };
        this.drawn.push(one);
        this.shapes.append(one.path);
      }
      if (one.shape !== shape) one.path.setAttribute("d", outline(shape));
      if (one.colour !== colour) one.path.setAttribute("fill", colour);
      Object.assign(one, { shape, colour });
    });
  }

  /** What the model bed found; `stale` where it was of an earlier drawing. */
  judged(found, stale, shown) {
    const { view } = this;
    this.found.classList.toggle("lb-stale", stale);
    this.blocks.classList.toggle("lb-stale", stale);
    if (this.marked?.found === found && this.marked.shown === shown && this.marked.seen === this.seen) return;
    this.marked = { found, shown, seen: this.seen };
    if (this.marks?.found !== found || this.marks.shown !== shown) this.mark(found, shown);
    for (const [node, place, room] of this.marks.places) {
      const small = room && Math.min(room[0] * view.needle, room[1] * view.row) < 2 * DISC;
      node.setAttribute("transform", `translate(${view.toPx(place[0] / 2, place[1]).join(" ")})${small ? "scale(0.72)" : ""}`);
    }
    for (const [under, over, from, to, path] of this.marks.lines) {
      const [a, b] = [view.toPx(from[0] / 2, from[1]), view.toPx(to[0] / 2, to[1])];
      under.setAttribute("d", `M${a.join(" ")}L${b.join(" ")}`);
      over.setAttribute("d", path(a, b));
    }
  }

  /** The marks of a judgement, made once; then they are only moved. */
  mark(found, shown) {
    const [places, lines, made] = [[], [], []];
    const put = (place, node, room) => {
      places.push([node, place, room]);
      made.push(node);
    };
    const join = ({ from, to }, name, path) => {
      const [under, over] = [svg("path", { class: `lb-${name}-under` }), svg("path", { class: `lb-${name}` })];
      lines.push([under, over, from, to, path]);
      made.push(under, over);
    };
    if (found && shown) {
      for (const end of found.ends) put(end.at, end.inside ? svg("path", { class: "lb-end lb-end-inside", d: "M-6 0L0 -6L6 0L0 6Z" }) : svg("circle", { class: "lb-end", r: 3.5 }));
      for (const slit of found.slits) join(slit, "slit", zigzag);
      for (const stair of found.stairs) join(stair, "stair", straight);
      for (const hole of found.holes) put(hole, svg("circle", { class: "lb-hole", r: 6 }));
      for (const level of found.uneven) put(level, svg("path", { class: "lb-level", d: "M-5 -9H5L0 -2Z" }));
      found.blocks.forEach((block, i) => put(block.at, this.number(i, block.number), block.free));
    }
    this.blocks.setAttribute("d", found && shown ? found.blocks.flatMap((block) => block.outline.map(line)).join("") : "");
    // Numbers that are there already stay: most drawings have as many blocks as the one before.
    const numbers = made.filter((node) => this.numbers.includes(node));
    this.rest.replaceChildren(...made.filter((node) => !this.numbers.includes(node)));
    this.numbers.forEach((node, i) => node.classList.toggle("lb-gone", i >= numbers.length));
    this.marks = { found, shown, places, lines };
  }

  number(at, words) {
    if (!this.numbers[at]) {
      this.numbers[at] = svg("g", { class: "lb-number" }, svg("circle", { r: DISC }), svg("text", { y: 4.5, "text-anchor": "middle" }));
      this.found.append(this.numbers[at]);
    }
    const text = this.numbers[at].lastChild;
    if (text.textContent !== String(words)) text.textContent = String(words);
    return this.numbers[at];
  }

  /** What is being done: the chosen shape and its handles, a line that is drawn, the place that is pointed at. */
  doing({ doc, shapes, chosen, draft, mode, cursor, knife }) {
    const { view } = this;
    const made = [];
    const shape = shapes[chosen.shape];
    if (shape && mode === "choose") {
      for (const ring of rings(shape)) {
        made.push(spec("path", { class: "lb-chosen-under", d: `${ring.map((p, i) => `${i ? "L" : "M"}${view.toPx(...p).join(" ")}`).join("")}Z` }));
        made.push(spec("path", { class: "lb-chosen", d: `${ring.map((p, i) => `${i ? "L" : "M"}${view.toPx(...p).join(" ")}`).join("")}Z` }));
      }
      for (const [r, ring] of rings(shape).entries()) {
        made.push(...ring.flatMap((point, k) => this.warned(point, ring[(k + 1) % ring.length], doc.sheet)));
        for (const [k, point] of ring.entries()) {
          const next = ring[(k + 1) % ring.length];
          const [[ax, ay], [bx, by]] = [view.toPx(...point), view.toPx(...next)];
          if (Math.hypot(bx - ax, by - ay) > 64) made.push(spec("circle", { class: "lb-between", cx: (ax + bx) / 2, cy: (ay + by) / 2, r: 5 }));
          const here = chosen.ring === r && chosen.corner === k;
          made.push(spec("circle", { class: here ? "lb-corner lb-here" : "lb-corner", cx: ax, cy: ay, r: here ? 11 : 9 }));
        }
      }
    }
    if (draft.length > 0) {
      const places = draft.map((p) => view.toPx(...p));
      const open = cursor && mode === "draw" ? [...places, view.toPx(cursor.x, cursor.y)] : places;
      made.push(spec("path", { class: "lb-chosen-under", d: `M${open.map((p) => p.join(" ")).join("L")}` }), spec("path", { class: "lb-chosen", d: `M${open.map((p) => p.join(" ")).join("L")}` }));
      const ends = cursor && mode === "draw" ? [...draft, [cursor.x, cursor.y]] : draft;
      for (let i = 0; i + 1 < ends.length; i += 1) made.push(...this.warned(ends[i], ends[i + 1], doc.sheet));
      places.forEach(([x, y], i) => made.push(spec("circle", { class: i === 0 ? "lb-corner lb-first-corner" : "lb-corner", cx: x, cy: y, r: i === 0 ? 11 : 8 })));
    }
    if (knife) {
      const [[ax, ay], [bx, by]] = [view.toPx(...knife.from), view.toPx(...knife.to)];
      made.push(spec("path", { class: "lb-knife-under", d: `M${ax} ${ay}L${bx} ${by}` }), spec("path", { class: "lb-knife", d: `M${ax} ${ay}L${bx} ${by}` }));
    }
    if (cursor) {
      const [x, y] = view.toPx(cursor.x, cursor.y);
      made.push(spec("path", { class: "lb-cursor-under", d: `M${x - 13} ${y}H${x + 13}M${x} ${y - 13}V${y + 13}` }), spec("path", { class: "lb-cursor", d: `M${x - 13} ${y}H${x + 13}M${x} ${y - 13}V${y + 13}` }));
    }
    fit(this.over, made);
  }

  warned(a, b, sheet) {
    const why = fault(a, b, this.rules, sheet);
    if (!why) return [];
    const [from, to] = [this.view.toPx(...a), this.view.toPx(...b)];
    return [spec("path", { class: `lb-${why}-under`, d: straight(from, to) }), spec("path", { class: `lb-${why}`, d: why === "slit" ? zigzag(from, to) : straight(from, to) })];
  }

  /** From where to where a shape reaches. */
  extent(shape) {
    return box(shape);
  }
}
