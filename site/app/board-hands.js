// Fingers, pens and mice on the sheet. One finger does what the chosen tool does; two move and scale the sheet.

import { inside, onEdge, rings, same, shifted, tangled, withRings } from "./board-shape.js";
import { snapped } from "./board-snap.js";

const HANDLE = 22; // px round a corner: its handle is 44 px wide
const STILL = 5; // px that a tap may move
const FINGER = 20; // px within which a finger is near something
const POINTER = 12;

export function hands(board, surface) {
  const down = new Map(); // pointer -> its place
  let doing = null; // {kind, ...} of the first pointer
  let pinch = null;

  // Where the window lies is looked up once for each gesture: to ask again and again would lay out the page again and again.
  let frame = null;
  const look = () => (frame = null);
  addEventListener("scroll", look, { passive: true, capture: true });
  addEventListener("resize", look, { passive: true });
  const at = (event) => {
    frame ??= surface.getBoundingClientRect();
    return [event.clientX - frame.left, event.clientY - frame.top];
  };
  const reach = (event) => (event.pointerType === "mouse" ? POINTER : FINGER);

  surface.addEventListener("pointerdown", (event) => {
    if (event.button > 1) return;
    if (down.size === 0) look();
    down.set(event.pointerId, at(event));
    surface.focus({ preventScroll: true, focusVisible: false });
    try {
      surface.setPointerCapture(event.pointerId);
    } catch {
      // a pointer that is gone already
    }
    if (down.size === 2) startPinch();
    else if (down.size === 1) start(event);
  });

  surface.addEventListener("pointermove", (event) => {
    if (!down.has(event.pointerId)) {
      if (event.pointerType !== "touch" && board.mode !== "choose") hover(event);
      return;
    }
    down.set(event.pointerId, at(event));
    if (pinch) movePinch();
    else if (doing) move(event);
  });

  const end = (event) => {
    if (!down.delete(event.pointerId)) return;
    if (pinch) {
      if (down.size < 2) pinch = null;
      if (down.size === 0) board.sheetMoved();
    } else if (doing) finish(event);
    if (down.size === 0) doing = null;
  };
  surface.addEventListener("pointerup", end);
  surface.addEventListener("pointercancel", (event) => {
    doing?.undo?.();
    doing = null;
    down.delete(event.pointerId);
    if (down.size < 2) pinch = null;
  });
  surface.addEventListener("wheel", (event) => {
    if (!event.ctrlKey && !event.metaKey && document.activeElement !== surface) return; // the page scrolls on
    event.preventDefault();
    const step = event.deltaMode === 0 ? event.deltaY : 16 * event.deltaY;
    board.view.zoom(Math.exp(-step / 400), ...at(event));
    board.sheetMoved();
  }, { passive: false });
  surface.addEventListener("contextmenu", (event) => event.preventDefault());

  function startPinch() {
    doing?.undo?.();
    doing = null;
    const [[ax, ay], [bx, by]] = [...down.values()];
    pinch = { far: Math.hypot(bx - ax, by - ay), x: (ax + bx) / 2, y: (ay + by) / 2 };
  }

  function movePinch() {
    const [[ax, ay], [bx, by]] = [...down.values()];
    const now = { far: Math.hypot(bx - ax, by - ay), x: (ax + bx) / 2, y: (ay + by) / 2 };
    board.view.pan(now.x - pinch.x, now.y - pinch.y);
    if (pinch.far > 10) board.view.zoom(now.far / pinch.far, now.x, now.y);
    pinch = now;
    board.sheetMoved();
  }

  function near(event, more = {}) {
    const { needle, row } = board.view;
    return { wide: needle, high: row, reach: reach(event), free: event.altKey, ...more };
  }

  function point(event, more) {
    return snapped(board.doc, board.rules, ...board.view.toSheet(...at(event)), near(event, more));
  }

  function hover(event) {
    board.cursor = board.mode === "sheet" ? null : point(event, { beside: board.draft.slice(-1) });
    board.redrawOver();
  }

  function start(event) {
    const [px, py] = at(event);
    const moving = { px, py, x: px, y: py };
    if (event.button === 1 || board.mode === "sheet") doing = { kind: "pan", ...moving };
    else if (board.mode === "draw") {
      doing = { kind: "corner", ...moving };
      board.cursor = point(event, { beside: board.draft.slice(-1) });
      board.redrawOver();
    } else if (board.mode === "cut") {
      const here = point(event);
      // After a first tap the cut has begun already.
      const begun = board.knife?.waits ? board.knife.from : null;
      doing = { kind: "cut", begun, from: begun ?? [here.x, here.y], to: [here.x, here.y], ...moving, undo: () => board.setKnife(null) };
      board.setKnife({ from: doing.from, to: doing.to });
    } else doing = { ...choose(px, py), ...moving };
  }

  /** What lies under the finger: a handle of the chosen shape, the middle of its edge, a shape, or nothing. */
  function choose(px, py) {
    const { doc, view, chosen } = board;
    const shape = doc.shapes[chosen.shape];
    const away = ([x, y]) => {
      const [hx, hy] = view.toPx(x, y);
      return Math.hypot(hx - px, hy - py);
    };
    if (shape) {
      let best = null;
      for (const [r, ring] of rings(shape).entries()) {
        for (const [k, corner] of ring.entries()) {
          const far = away(corner);
          if (far < (best?.far ?? HANDLE)) best = { far, ring: r, corner: k };
        }
      }
      if (best) return { kind: "handle", ring: best.ring, corner: best.corner, shape: chosen.shape };
      for (const [r, ring] of rings(shape).entries()) {
        for (const [k, corner] of ring.entries()) {
          const next = ring[(k + 1) % ring.length];
          const middle = [(corner[0] + next[0]) / 2, (corner[1] + next[1]) / 2];
          const [[ax, ay], [bx, by]] = [view.toPx(...corner), view.toPx(...next)];
          if (Math.hypot(bx - ax, by - ay) > 64 && away(middle) < HANDLE) return { kind: "between", ring: r, corner: k, shape: chosen.shape, middle };
        }
      }
    }
    const [x, y] = view.toSheet(px, py);
    const under = doc.shapes.flatMap((one, i) => (inside(one, x, y) ? [i] : [])).reverse();
    const thin = under.includes(chosen.shape) ? chosen.shape : under.length > 0 ? under[0] : doc.shapes.findLastIndex((one) => one.points.some((a, i) => {
      const near = onEdge(a, one.points[(i + 1) % one.points.length], x, y, view.needle, view.row);
      return Math.hypot((near.x - x) * view.needle, (near.y - y) * view.row) < 8;
    }));
    if (thin >= 0) return { kind: "shape", shape: thin, was: chosen.shape, under };
    return { kind: "pan", tap: true };
  }

  function move(event) {
    const [px, py] = at(event);
    if (!doing.moved && Math.hypot(px - doing.px, py - doing.py) < STILL) return;
    if (!doing.moved) begin();
    doing.moved = true;
    if (doing.kind === "pan") {
      board.view.pan(px - doing.x, py - doing.y);
      board.sheetMoved();
    } else if (doing.kind === "corner") {
      board.cursor = point(event, { beside: board.draft.slice(-1) });
      board.redrawOver();
    } else if (doing.kind === "cut") {
      const to = point(event, { beside: [doing.from] });
      doing.to = [to.x, to.y];
      board.setKnife({ from: doing.from, to: doing.to });
    } else if (doing.kind === "handle") dragCorner(event);
    else if (doing.kind === "shape") dragShape(event);
    doing.x = px;
    doing.y = py;
  }

  function begin() {
    if (doing.kind === "between") {
      const ring = doing.ring;
      const made = rings(board.doc.shapes[doing.shape]).map((one, r) => (r === ring ? one.toSpliced(doing.corner + 1, 0, doing.middle) : one));
      Object.assign(doing, { kind: "handle", corner: doing.corner + 1, start: withRings(board.doc.shapes[doing.shape], made) });
    } else if (doing.shape !== undefined) doing.start = board.doc.shapes[doing.shape];
    if (doing.kind === "shape") board.choose(doing.shape);
    if (doing.kind === "handle") board.choose(doing.shape, doing.ring, doing.corner);
    if (doing.start) doing.undo = () => board.show(doing.shape, null);
  }

  function dragCorner(event) {
    const ring = rings(doing.start)[doing.ring];
    const beside = [ring[(doing.corner + ring.length - 1) % ring.length], ring[(doing.corner + 1) % ring.length]];
    const to = point(event, { beside, left: { shape: doing.shape, ring: doing.ring, corner: doing.corner } });
    const made = rings(doing.start).map((one, r) => (r === doing.ring ? one.with(doing.corner, [to.x, to.y]) : one));
    doing.made = withRings(doing.start, made);
    board.cursor = to;
    board.show(doing.shape, doing.made);
  }

  /** The corner that is nearest to the finger leads; the others follow it. */
  function dragShape(event) {
    if (!doing.lead) {
      const [x, y] = board.view.toSheet(doing.px, doing.py);
      const far = ([cx, cy]) => Math.hypot((cx - x) * board.view.needle, (cy - y) * board.view.row);
      doing.lead = doing.start.points.reduce((best, one) => (far(one) < far(best) ? one : best));
      doing.from = [x, y];
    }
    const [x, y] = board.view.toSheet(...at(event));
    const [lx, ly] = doing.lead;
    const to = snapped(board.doc, board.rules, lx + x - doing.from[0], ly + y - doing.from[1], near(event, { left: { shape: doing.shape } }));
    doing.made = shifted(doing.start, to.x - lx, to.y - ly);
    board.cursor = to;
    board.show(doing.shape, doing.made);
  }

  /** A tap on what is chosen already goes on to what lies under it. */
  function nextUnder() {
    const { under, shape } = doing;
    return under[(under.indexOf(shape) + 1) % under.length] ?? shape;
  }

  function finish(event) {
    const { kind, moved, made, shape } = doing;
    if (kind === "corner") board.corner(point(event, { beside: board.draft.slice(-1) }));
    else if (kind === "cut") {
      if (!same(doing.from, doing.to)) board.cutBetween(doing.from, doing.to);
      else board.beginCut(doing.from);
    } else if (!moved) {
      if (kind === "shape") board.choose(doing.was === shape ? nextUnder() : shape);
      else if (kind === "handle") board.choose(shape, doing.ring, doing.corner);
      else if (kind === "pan" && doing.tap) board.choose(-1);
    } else if (made) {
      board.cursor = null;
      board.show(shape, null);
      if (made.points.every((p, i) => doing.start.points[i] && same(p, doing.start.points[i])) && made.points.length === doing.start.points.length) board.redrawOver();
      else if (rings(made).some(tangled)) board.say("tangled");
      else board.replace(shape, made, kind === "handle" ? "corner" : "shape");
    } else board.sheetMoved();
  }
}

/** The same shape with a corner of it elsewhere. */
export function withCorner(shape, ring, corner, to) {
  return withRings(shape, rings(shape).map((one, r) => (r === ring ? one.with(corner, to) : one)));
}

export const withoutCorner = (shape, ring, corner) => withRings(shape, rings(shape).map((one, r) => (r === ring ? one.toSpliced(corner, 1) : one)));
