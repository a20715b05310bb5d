// Where a corner goes: to what lies near it, else to needles and turns. What a slope does comes from the core, as numbers.

import { box, fine, onEdge, rings } from "./board-shape.js";

/**
 * What the line between two corners will do when it is knitted: "slit" where it is too steep to join by itself, "stair" where it
 * is so flat that its steps show, "" where it is well. Along the panel's own edges nothing can open.
 */
export function fault([ax, ay], [bx, by], rules, sheet) {
  const [across, up] = [Math.abs(bx - ax), Math.abs(by - ay)];
  const outside = (a, b, end) => (a <= 0 && b <= 0) || (a >= end && b >= end);
  if (outside(ax, bx, sheet.needles) || outside(ay, by, sheet.rows)) return "";
  if (up > rules.joined_rows && up > rules.joined_rows * across) return "slit";
  const wide = 2 * rules.wide_needles;
  return up > 0 && across > wide && across * rules.turn_rows > rules.wide_needles * up ? "stair" : "";
}

/**
 * The place for a corner that is held at (x, y): {x, y, why}. `near` are pixels of a needle and a row, and how many pixels count
 * as near; `beside` the corners that it is joined to; `left` a shape, and a corner of it, that are being moved themselves.
 */
export function snapped(doc, rules, x, y, { wide, high, reach, beside = [], left = null, free = false }) {
  const away = (at) => Math.hypot((at[0] - x) * wide, (at[1] - y) * high);
  const lattice = [Math.round(x), rules.turn_rows * Math.round(y / rules.turn_rows)];
  if (free) return { x: fine(x), y: fine(y), why: "free" };
  // However large a finger is, two needles away is another place.
  const close = Math.min(reach, 0.75 * wide);
  for (const [why, places] of [
    ["corner", corners(doc, left)],
    ["slope", slopes(beside, y, rules)],
    ["centre", centres(doc, left)],
    ["edge", edges(doc, left, x, y, wide, high, close, rules)],
  ]) {
    let best = null;
    let nearest = why === "corner" ? Math.min(reach, 1.2 * wide) : close;
    for (const at of places) {
      const far = away(at);
      if (far < nearest) [best, nearest] = [at, far];
    }
    if (best) return { x: fine(best[0]), y: fine(best[1]), why };
  }
  return { x: lattice[0], y: lattice[1], why: "lattice" };
}

function* corners(doc, left) {
  const { needles, rows } = doc.sheet;
  yield* [[0, 0], [needles, 0], [needles, rows], [0, rows]];
  for (const [i, shape] of doc.shapes.entries()) {
    for (const [r, ring] of rings(shape).entries()) {
      for (const [k, point] of ring.entries()) if (!(left && i === left.shape && (left.corner === undefined || (left.ring === r && left.corner === k)))) yield point;
    }
  }
}

/** Where the steepest line that joins leaves the corners beside, at a whole needle. */
function* slopes(beside, y, { joined_rows: joined }) {
  for (const [bx, by] of beside) {
    const needles = Math.round(Math.abs(y - by) / joined);
    if (needles === 0) continue;
    const up = by + Math.sign(y - by) * needles * joined;
    yield [bx - needles, up];
    yield [bx + needles, up];
  }
}

function* centres(doc, left) {
  yield [doc.sheet.needles / 2, doc.sheet.rows / 2];
  for (const [i, shape] of doc.shapes.entries()) {
    if (left?.shape === i) continue;
    const { left: a, right, low, high } = box(shape);
    yield [(a + right) / 2, (low + high) / 2];
  }
}

/** On an edge where it meets a turn, or a needle where it lies level. */
function* edges(doc, left, x, y, wide, high, reach, { turn_rows: turn }) {
  for (const [i, shape] of doc.shapes.entries()) {
    if (left?.shape === i) continue;
    for (const ring of rings(shape)) {
      for (const [k, a] of ring.entries()) {
        const b = ring[(k + 1) % ring.length];
        const at = onEdge(a, b, x, y, wide, high);
        if (Math.hypot((at.x - x) * wide, (at.y - y) * high) >= reach) continue;
        const row = turn * Math.round(at.y / turn);
        if (a[1] !== b[1] && row >= Math.min(a[1], b[1]) && row <= Math.max(a[1], b[1])) yield [a[0] + ((b[0] - a[0]) * (row - a[1])) / (b[1] - a[1]), row];
        const needle = Math.round(at.x);
        if (a[1] === b[1] && needle >= Math.min(a[0], b[0]) && needle <= Math.max(a[0], b[0])) yield [needle, a[1]];
      }
    }
  }
}
