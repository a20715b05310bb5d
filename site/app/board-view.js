// From needles and rows to pixels and back: the sheet at the fabric's true proportions, nearer or farther, either side.

const NEAREST = 60; // px of a needle
const FARTHEST = 0.5; // of the whole sheet in the window
const MARGIN = 26; // px round the whole sheet

export class View {
  constructor() {
    this.wide = this.high = 100; // px of the window
    this.sheet = null;
    this.scale = 0; // px for a millimetre; 0 until the window is known
    this.x = this.y = 0; // px of the sheet's upper left corner as it is seen
    this.back = false;
    this.whole = true;
  }

  /** The window, or the sheet, has another size; what was seen whole stays whole. */
  resize(wide, high, sheet) {
    const same = this.sheet && sheet.needles === this.sheet.needles && sheet.rows === this.sheet.rows && sheet.stitch === this.sheet.stitch && sheet.row === this.sheet.row;
    if (!same) this.whole = true;
    this.sheet = sheet;
    this.wide = wide;
    this.high = high;
    if (this.whole || !this.scale) this.fit();
  }

  get fitting() {
    const { needles, rows, stitch, row } = this.sheet;
    return Math.min((this.wide - 2 * MARGIN) / (needles * stitch), (this.high - 2 * MARGIN) / (rows * row)) * 1000;
  }

  fit() {
    this.scale = this.fitting;
    this.whole = true;
    this.x = (this.wide - this.needle * this.sheet.needles) / 2;
    this.y = (this.high - this.row * this.sheet.rows) / 2;
  }

  /** Pixels of a needle and of a row. */
  get needle() {
    return (this.scale * this.sheet.stitch) / 1000;
  }

  get row() {
    return (this.scale * this.sheet.row) / 1000;
  }

  toPx(x, y) {
    const { needles, rows } = this.sheet;
    return [this.x + (this.back ? needles - x : x) * this.needle, this.y + (rows - y) * this.row];
  }

  toSheet(px, py) {
    const { needles, rows } = this.sheet;
    const x = (px - this.x) / this.needle;
    return [this.back ? needles - x : x, rows - (py - this.y) / this.row];
  }

  /** For a group that is drawn in needles and rows. */
  get matrix() {
    const { needles, rows } = this.sheet;
    const [a, e] = this.back ? [-this.needle, this.x + needles * this.needle] : [this.needle, this.x];
    return `matrix(${a} 0 0 ${-this.row} ${e} ${this.y + rows * this.row})`;
  }

  /** Nearer or farther, the place under (px, py) staying where it is. */
  zoom(by, px = this.wide / 2, py = this.high / 2) {
    const most = (NEAREST * 1000) / this.sheet.stitch;
    const scale = Math.max(this.fitting * FARTHEST, Math.min(most, this.scale * by));
    const grown = scale / this.scale;
    this.x = px - (px - this.x) * grown;
    this.y = py - (py - this.y) * grown;
    this.scale = scale;
    this.whole = false;
    this.hold();
  }

  pan(dx, dy) {
    this.x += dx;
    this.y += dy;
    this.whole = false;
    this.hold();
  }

  /** Some of the sheet is always in the window. */
  hold() {
    const [wide, high] = [this.needle * this.sheet.needles, this.row * this.sheet.rows];
    const room = (at, size, window) => Math.max(Math.min(60, window / 4) - size, Math.min(window - Math.min(60, window / 4), at));
    this.x = room(this.x, wide, this.wide);
    this.y = room(this.y, high, this.high);
  }

  /** So that a place is seen. */
  show(x, y) {
    const [px, py] = this.toPx(x, y);
    const edge = 40;
    const off = (at, window) => (at < edge ? edge - at : at > window - edge ? window - edge - at : 0);
    const [dx, dy] = [off(px, this.wide), off(py, this.high)];
    if (dx || dy) this.pan(dx, dy);
  }
}
