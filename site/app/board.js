// The layout board: a design drawn with a finger, at the fabric's true proportions. Drawing needs no engine: what a line will do
// when it is knitted is known from a few numbers of the core, and the judgement of the model bed follows when it is there.

import { add, docOf, moved, moreYarn, put, withGround, without, yarnOf } from "./board-doc.js";
import { filesOf } from "./board-files.js";
import { hands, withCorner, withoutCorner } from "./board-hands.js";
import { History } from "./board-history.js";
import { Judge } from "./board-judge.js";
import { keys, keysEverywhere } from "./board-keys.js";
import { Paint } from "./board-paint.js";
import { panels } from "./board-panels.js";
import { cut, rings, same, shifted, tangled, tidy, turned } from "./board-shape.js";
import { toolbar } from "./board-tools.js";
import { View } from "./board-view.js";
import { start } from "./engine.js";
import { element, say, short } from "./say.js";

const NOTHING = { shape: -1, ring: 0, corner: -1 };

class Board {
  constructor(root, first) {
    this.root = root;
    this.rules = first.rules;
    this.layouts = first.layouts;
    this.beds = first.beds;
    this.first = docOf(first.sheet);
    this.doc = this.first;
    this.view = new View();
    this.paint = new Paint(this.view, this.rules);
    this.history = new History();
    this.mode = "choose";
    this.chosen = NOTHING;
    this.draft = [];
    this.knife = null;
    this.cursor = null;
    this.preview = null; // {at, shape}: what is being dragged, not yet a step
    this.yarn = "";
    this.pickYarn();
    this.grid = true;
    this.marks = true;
    this.listeners = [];
    this.telling = []; // those that have still to hear of the last change
    this.painting = 0;
    this.judge = new Judge(this, first.judged);
    this.files = filesOf(this);
  }

  build() {
    this.surface = element("div", { class: "lb-surface", tabindex: "0", role: "application", "aria-label": say("app.board-surface"), "aria-describedby": "lb-keys-short" });
    this.surface.append(this.paint.root);
    this.status = element("p", { class: "lb-status", role: "status" });
    const tools = toolbar(this);
    const window_ = element("div", { class: "lb-window" }, this.surface, tools.zoom);
    const side = panels(this);
    this.root.replaceChildren(tools.top, element("div", { class: "lb-main" }, element("div", { class: "lb-left" }, tools.tools, window_, tools.actions), side));
    hands(this, this.surface);
    keys(this, this.surface);
    keysEverywhere(this, this.root);
    new ResizeObserver(() => this.resize()).observe(this.surface);
    this.resize();
    this.tell();
  }

  // --- telling -------------------------------------------------------------------------------------------------------

  /** Calls `act` whenever the drawing, or what is chosen, is another. */
  onChange(act) {
    this.listeners.push(act);
  }

  /** The sheet first; what stands round it follows bit by bit, so that no finger waits for a list. */
  tell() {
    this.redraw();
    const idle = this.telling.length === 0;
    this.telling = [...this.listeners];
    if (idle) this.tellNext();
  }

  tellNext() {
    setTimeout(() => {
      this.telling.shift()?.();
      if (this.telling.length > 0) this.tellNext();
      else this.root.dataset.told = ""; // what stands beside the sheet is seen when all of it is there
    }, 0);
  }

  say(key, values = {}) {
    this.status.textContent = say(`app.board-${key}`, values);
  }

  get shapes() {
    return this.preview ? this.doc.shapes.with(this.preview.at, this.preview.shape) : this.doc.shapes;
  }

  redraw() {
    this.painting ||= requestAnimationFrame(() => {
      this.painting = 0;
      if (!this.view.scale) return;
      this.paint.place(this);
      this.paint.fill(this.doc, this.shapes);
      this.paint.judged(this.judge.found, this.judge.stale || this.preview !== null, this.marks);
      this.paint.doing(this);
    });
  }

  redrawOver() {
    this.redraw();
  }

  resize() {
    const { clientWidth, clientHeight } = this.surface;
    if (clientWidth < 10 || clientHeight < 10) return;
    this.view.resize(clientWidth, clientHeight, this.doc.sheet);
    this.redraw();
  }

  sheetMoved() {
    this.redraw();
  }

  // --- one drawing to the next ---------------------------------------------------------------------------------------

  /** Another drawing, as a step that can be undone. */
  commit(doc, what, values = {}) {
    if (doc === this.doc) return;
    this.history.push(this.doc, doc, what);
    this.take(doc);
    this.say(`did-${what}`, values);
  }

  take(doc) {
    this.doc = doc;
    this.preview = null;
    this.pickYarn();
    const shape = doc.shapes[this.chosen.shape];
    if (!shape) this.chosen = NOTHING;
    else if (this.chosen.corner >= (rings(shape)[this.chosen.ring]?.length ?? 0)) this.chosen = { ...NOTHING, shape: this.chosen.shape };
    this.resize();
    this.judge.changed();
    this.tell();
  }

  /** What is drawn next has a yarn that there is, and if possible not the ground's. */
  pickYarn() {
    const { yarns, layout } = this.doc.rest;
    if (yarns.some((yarn) => yarn.id === this.yarn)) return;
    this.yarn = (yarns.find((yarn) => yarn.id !== layout.background) ?? yarns[0]).id;
  }

  undo() {
    if (this.draft.length > 0) return this.dropCorner();
    if (!this.history.canUndo) return this.say("nothing-to-undo");
    this.leave();
    const { what } = this.history.steps[this.history.at - 1];
    this.take(this.history.undo(this.doc));
    return this.say("undone", { what: say(`app.board-did-${what}`) });
  }

  redo() {
    if (!this.history.canRedo) return this.say("nothing-to-redo");
    this.leave();
    const { what } = this.history.steps[this.history.at];
    this.take(this.history.redo(this.doc));
    return this.say("redone", { what: say(`app.board-did-${what}`) });
  }

  /** While something is dragged: the shape as it would be; null when it is over. */
  show(at, shape) {
    this.preview = shape ? { at, shape } : null;
    if (shape) this.status.textContent = this.where();
    this.redraw();
  }

  where() {
    if (!this.cursor) return "";
    return say("app.board-where", { x: short(this.cursor.x), y: short(this.cursor.y), why: say(`app.board-why-${this.cursor.why ?? "lattice"}`) });
  }

  /** One shape as another; false where its outline would cross itself. */
  replace(at, shape, what) {
    if (rings(shape).some(tangled)) {
      this.say("tangled");
      return false;
    }
    this.commit(put(this.doc, at, shape), what);
    const { corner, ring } = this.chosen;
    if (what === "corner" && corner >= 0) this.sayCorner(at, ring, corner);
    return true;
  }

  sayCorner(at, ring, corner) {
    const point = rings(this.doc.shapes[at])[ring]?.[corner];
    if (point) this.say("corner-at", { number: corner + 1, x: short(point[0]), y: short(point[1]) });
  }

  // --- tools ---------------------------------------------------------------------------------------------------------

  setMode(mode) {
    this.leave();
    this.mode = mode;
    this.surface.dataset.mode = mode;
    if (mode !== "choose") this.chosen = mode === "cut" ? { ...this.chosen, corner: -1 } : NOTHING;
    this.say(`mode-${mode}`);
    this.tell();
  }

  /** What was begun and not ended is given up. */
  leave() {
    this.draft = [];
    this.knife = null;
    this.cursor = null;
    this.preview = null;
  }

  toggle(name) {
    if (name === "back") this.view.back = !this.view.back;
    else this[name] = !this[name];
    this.say(name === "back" ? (this.view.back ? "seen-back" : "seen-front") : `${name}-${this[name] ? "on" : "off"}`);
    this.tell();
  }

  nearer(by) {
    this.view.zoom(by);
    this.sheetMoved();
  }

  whole() {
    this.view.fit();
    this.sheetMoved();
  }

  /** A place that something is said about. */
  pointAt(x, y) {
    this.cursor = { x, y };
    this.view.show(x, y);
    this.redraw();
  }

  // --- drawing -------------------------------------------------------------------------------------------------------

  startCursor() {
    const { needles, rows } = this.doc.sheet;
    const turn = this.rules.turn_rows;
    this.cursor = { x: Math.round(needles / 2), y: turn * Math.round(rows / 2 / turn), why: "lattice" };
    return this.cursor;
  }

  moveCursor(dx, dy) {
    const { needles, rows } = this.doc.sheet;
    const from = this.cursor ?? this.startCursor();
    const within = (at, most) => Math.max(0, Math.min(most, at));
    this.cursor = { x: within(from.x + dx, needles), y: within(from.y + dy, rows), why: "lattice" };
    this.view.show(this.cursor.x, this.cursor.y);
    if (this.knife?.waits) this.knife = { ...this.knife, to: [this.cursor.x, this.cursor.y] };
    this.status.textContent = this.where();
    this.redraw();
  }

  /** A corner of the shape that is drawn; on its first corner it is closed. */
  corner({ x, y }) {
    const at = [x, y];
    const first = this.draft[0];
    if (first && same(first, at) && this.draft.length >= 3) return this.close();
    if (this.draft.length > 0 && same(this.draft.at(-1), at)) return undefined;
    this.draft = [...this.draft, at];
    this.say(this.draft.length < 3 ? "drawn" : "drawn-close", { number: this.draft.length, x: short(x), y: short(y) });
    return this.tell();
  }

  dropCorner() {
    this.draft = this.draft.slice(0, -1);
    this.tell();
  }

  close() {
    const points = tidy(this.draft);
    this.draft = [];
    this.cursor = null;
    if (tangled(points)) {
      this.say("tangled");
      return this.tell();
    }
    if (this.doc.shapes.length >= this.rules.most_shapes) return this.say("too-many", { most: this.rules.most_shapes });
    this.commit(add(this.doc, { yarn: this.yarn, points, holes: [] }), "drawn", { corners: points.length });
    return undefined;
  }

  setKnife(knife) {
    this.knife = knife;
    this.redraw();
  }

  /** By keyboard: the first Enter begins the cut, the second ends it. */
  knifeHere() {
    const { x, y } = this.cursor ?? this.startCursor();
    if (!this.knife?.waits) this.beginCut([x, y]);
    else this.cutBetween(this.knife.from, [x, y]);
  }

  /** A cut whose other end is still to come. */
  beginCut(from) {
    this.setKnife({ from, to: from, waits: true });
    this.say("cut-begun", { x: short(from[0]), y: short(from[1]) });
  }

  /** The chosen shape, or else the uppermost that the line goes through. */
  cutBetween(from, to) {
    this.knife = null;
    if (same(from, to)) return this.redraw();
    const at = this.chosen.shape >= 0 ? this.chosen.shape : this.doc.shapes.findLastIndex((shape) => cut(shape, from, to) !== null && this.between(shape, from, to));
    const pieces = at >= 0 ? cut(this.doc.shapes[at], from, to) : null;
    if (pieces === null || this.doc.shapes.length + pieces.length > this.rules.most_shapes) {
      this.say("not-cut");
      return this.redraw();
    }
    return this.commit(put(this.doc, at, ...pieces), "cut", { pieces: pieces.length });
  }

  /** Whether the line itself, not only what would lengthen it, reaches into the shape. */
  between(shape, from, to) {
    const parts = Array.from({ length: 21 }, (_, i) => [from[0] + ((to[0] - from[0]) * i) / 20, from[1] + ((to[1] - from[1]) * i) / 20]);
    const { left, right, low, high } = this.paint.extent(shape);
    return parts.some(([x, y]) => x >= left && x <= right && y >= low && y <= high);
  }

  // --- the chosen shape ----------------------------------------------------------------------------------------------

  choose(shape, ring = 0, corner = -1) {
    this.chosen = { shape, ring, corner };
    if (this.mode !== "choose" && this.mode !== "cut") {
      this.leave();
      this.mode = "choose";
      this.surface.dataset.mode = "choose";
    }
    if (shape >= 0) {
      if (corner >= 0) {
        const [x, y] = rings(this.doc.shapes[shape])[ring][corner];
        this.view.show(x, y);
        this.sayCorner(shape, ring, corner);
      } else this.status.textContent = this.name(shape);
    }
    this.tell();
  }

  /** A shape in words. */
  name(at) {
    const shape = this.doc.shapes[at];
    const { left, right, low, high } = this.paint.extent(shape);
    return say("app.board-shape", { number: at + 1, yarn: yarnOf(this.doc, shape.yarn).name || shape.yarn, corners: shape.points.length, left: short(left), right: short(right), low: short(low), high: short(high) });
  }

  shiftChosen(dx, dy) {
    this.replace(this.chosen.shape, shifted(this.doc.shapes[this.chosen.shape], dx, dy), "shape");
  }

  removeChosen() {
    const { shape, ring, corner } = this.chosen;
    const old = this.doc.shapes[shape];
    if (!old) return;
    if (corner >= 0 && rings(old)[ring].length > 3) {
      this.replace(shape, withoutCorner(old, ring, corner), "corner-gone");
      this.choose(shape);
    } else {
      this.commit(without(this.doc, shape), "gone");
    }
  }

  setCorner(at, ring, corner, to) {
    return this.replace(at, withCorner(this.doc.shapes[at], ring, corner, to), "corner");
  }

  /** What the buttons under the sheet do with the chosen shape. */
  act(what) {
    const { shape: at } = this.chosen;
    const shape = this.doc.shapes[at];
    if (!shape) return this.say("choose-first");
    if (what === "copy") {
      if (this.doc.shapes.length >= this.rules.most_shapes) return this.say("too-many", { most: this.rules.most_shapes });
      this.chosen = { ...NOTHING, shape: this.doc.shapes.length };
      return this.commit(add(this.doc, shifted(shape, 4, 4 * this.rules.turn_rows)), "copied");
    }
    if (what === "mirror") return this.replace(at, turned(shape, true, false), "mirrored");
    if (what === "upside") return this.replace(at, turned(shape, false, true), "upside");
    if (what === "half") return this.replace(at, turned(shape, true, true), "half-turned");
    if (what === "repeat") return this.openRepeat();
    if (what === "over" || what === "under") {
      const to = moved(this.doc, at, what === "over" ? 1 : -1);
      if (to.at === at) return this.say(`already-${what}`);
      this.chosen = { ...NOTHING, shape: to.at };
      return this.commit(to.doc, what);
    }
    return undefined;
  }

  /** The chosen shape again and again: so many across and up, so far from each other, every second row moved on. */
  repeat({ across, up, needles, rows, lean }) {
    const shape = this.doc.shapes[this.chosen.shape];
    if (!shape) return;
    const made = [];
    for (let j = 0; j < up; j += 1) for (let i = 0; i < across; i += 1) if (i || j) made.push(shifted(shape, i * needles + (j % 2) * lean, j * rows));
    if (made.length === 0) return;
    if (this.doc.shapes.length + made.length > this.rules.most_shapes) this.say("too-many", { most: this.rules.most_shapes });
    else this.commit(add(this.doc, ...made), "repeated", { count: made.length });
  }

  giveYarn(id) {
    this.yarn = id;
    const shape = this.doc.shapes[this.chosen.shape];
    if (shape && shape.yarn !== id) this.commit(put(this.doc, this.chosen.shape, { ...shape, yarn: id }), "yarn", { yarn: yarnOf(this.doc, id).name });
    else this.tell();
  }

  giveGround(id) {
    if (this.doc.rest.layout.background !== id) this.commit(withGround(this.doc, id), "ground", { yarn: yarnOf(this.doc, id).name });
  }

  addYarn() {
    if (this.doc.rest.yarns.length >= this.rules.most_yarns) return;
    const { doc, id } = moreYarn(this.doc, (number) => say("app.board-yarn-number", { number }), "#7a8f5a");
    this.yarn = id;
    this.commit(doc, "yarn-more");
  }
}

export async function openBoard(root) {
  const board = new Board(root, JSON.parse(root.querySelector("script").textContent));
  const kept = await board.history.read().catch(() => null);
  if (kept) board.doc = kept;
  board.pickYarn();
  board.judge.begin(kept !== null);
  board.build();
  board.setMode("choose");
  await board.files.opened();
  addEventListener("pagehide", () => board.history.keep());
  document.addEventListener("visibilitychange", () => document.visibilityState === "hidden" && board.history.keep());
  root.dataset.ready = "";
  requestAnimationFrame(() => setTimeout(start, 0));
  setTimeout(start, 2_000);
}

const root = document.querySelector("[data-board]");
if (root) openBoard(root);
