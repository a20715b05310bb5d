// The whole board from the keyboard, while the sheet has the focus.

import { rings, withRings } from "./board-shape.js";
import { withCorner } from "./board-hands.js";

const ARROWS = { ArrowLeft: [-1, 0], ArrowRight: [1, 0], ArrowUp: [0, 1], ArrowDown: [0, -1] };
const FAR = 10; // needles, with Shift; so many rows too

/** Keys that act wherever the focus is on the board, but not in a field. */
export function keysEverywhere(board, root) {
  root.addEventListener("keydown", (event) => {
    if (!(event.ctrlKey || event.metaKey) || event.target.closest("input, select, textarea, dialog")) return;
    const key = event.key.toLowerCase();
    if (key === "z" && !event.shiftKey) board.undo();
    else if (key === "y" || (key === "z" && event.shiftKey)) board.redo();
    else if (key === "s") board.files.save();
    else return;
    event.preventDefault();
  });
}

export function keys(board, surface) {
  const letters = {
    v: () => board.setMode("choose"),
    n: () => board.setMode("draw"),
    x: () => board.setMode("cut"),
    b: () => board.setMode("sheet"),
    g: () => board.toggle("grid"),
    p: () => board.toggle("back"),
    j: () => board.toggle("marks"),
    "+": () => board.nearer(1.4),
    "=": () => board.nearer(1.4),
    "-": () => board.nearer(1 / 1.4),
    0: () => board.whole(),
    c: () => board.act("copy"),
    m: () => board.act("mirror"),
    u: () => board.act("upside"),
    h: () => board.act("half"),
    r: () => board.act("repeat"),
    o: () => board.act("over"),
    i: () => board.act("under"),
    "?": () => board.openHelp(),
  };

  surface.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey) return;
    const key = event.key.length === 1 ? event.key.toLowerCase() : event.key;
    const act = ARROWS[key] ? () => arrow(ARROWS[key], event) : (named(key) ?? (event.altKey ? undefined : (yarn(key) ?? letters[key])));
    if (!act) return;
    event.preventDefault();
    act();
  });
  // The frame of the pages goes to other pages at some letters: not while someone draws.
  board.root.addEventListener("keydown", (event) => event.key.length === 1 && event.stopPropagation());

  /** The first nine yarns by their numbers. */
  function yarn(key) {
    const found = /^[1-9]$/.test(key) ? board.doc.rest.yarns[Number(key) - 1] : undefined;
    return found && (() => board.giveYarn(found.id));
  }

  function named(key) {
    const drawing = board.mode === "draw" || board.mode === "cut";
    return {
      PageDown: () => next(1),
      PageUp: () => next(-1),
      ".": () => nextCorner(1),
      ",": () => nextCorner(-1),
      Insert: () => between(),
      a: () => between(),
      Delete: () => board.removeChosen(),
      Backspace: () => (drawing ? board.dropCorner() : board.removeChosen()),
      Escape: () => escape(),
      Enter: () => enter(),
      " ": () => enter(),
    }[key];
  }

  function arrow([dx, dy], event) {
    const across = board.view.back ? -dx : dx;
    const turn = board.rules.turn_rows;
    const [x, y] = event.altKey ? [across / 2, dy] : event.shiftKey ? [across * FAR, dy * FAR] : [across, dy * turn];
    if (board.mode === "sheet") {
      board.view.pan(-dx * 40, dy * 40);
      return board.sheetMoved();
    }
    if (board.mode !== "choose") return board.moveCursor(x, y);
    const { shape, ring, corner } = board.chosen;
    const old = board.doc.shapes[shape];
    if (!old) return next(1);
    if (corner < 0) return board.shiftChosen(x, y);
    const [cx, cy] = rings(old)[ring][corner];
    return board.replace(shape, withCorner(old, ring, corner, [cx + x, cy + y]), "corner");
  }

  function next(by) {
    if (board.mode !== "choose") board.setMode("choose");
    const count = board.doc.shapes.length;
    if (count === 0) return;
    const from = board.chosen.shape;
    board.choose(from < 0 ? (by > 0 ? 0 : count - 1) : (from + by + count) % count);
  }

  function nextCorner(by) {
    const { shape, ring, corner } = board.chosen;
    const old = board.doc.shapes[shape];
    if (!old || board.mode !== "choose") return;
    const all = rings(old).flatMap((one, r) => one.map((_, k) => [r, k]));
    const at = corner < 0 ? (by > 0 ? -1 : 0) : all.findIndex(([r, k]) => r === ring && k === corner);
    board.choose(shape, ...all[(at + by + all.length) % all.length]);
  }

  function between() {
    const { shape, ring, corner } = board.chosen;
    const old = board.doc.shapes[shape];
    if (!old || corner < 0) return;
    const own = rings(old)[ring];
    const [[ax, ay], [bx, by]] = [own[corner], own[(corner + 1) % own.length]];
    const made = own.toSpliced(corner + 1, 0, [Math.round((ax + bx) / 2), board.rules.turn_rows * Math.round((ay + by) / 2 / board.rules.turn_rows)]);
    if (board.replace(shape, withRings(old, rings(old).map((one, r) => (r === ring ? made : one))), "corner")) board.choose(shape, ring, corner + 1);
  }

  function enter() {
    if (board.mode === "draw") board.corner(board.cursor ?? board.startCursor());
    else if (board.mode === "cut") board.knifeHere();
    else if (board.mode === "choose" && board.chosen.shape >= 0) nextCorner(1);
  }

  function escape() {
    if (board.draft.length > 0 || board.knife) board.setMode(board.mode);
    else if (board.mode !== "choose") board.setMode("choose");
    else if (board.chosen.corner >= 0) board.choose(board.chosen.shape);
    else board.choose(-1);
  }
}
