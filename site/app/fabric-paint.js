// Paints a fabric from the numbers that the core gave once (calc/wedgework/faces/fabric.py says what they mean): far away as
// a bitmap of one pixel a stitch, near by as stitches, a V on the front and a bump on the back.

const FIXED = 2 ** 31;
const SECOND = 2 ** 30;
const PINNED = 2 ** 29;
const MOST_EASED = 2; // rows by which needles may differ and still end at one straight edge
const NEAR = 5; // px that a stitch is wide before it is drawn as one
const PAPER = [0, 0, 0, 0];

export class Fabric {
  constructor(data) {
    this.data = data;
    [this.width, this.height] = data.box;
    this.ratio = data.cell[1] / data.cell[0]; // a row's height for a stitch's width of one
    const bytes = Uint8Array.from(atob(data.places), (letter) => letter.charCodeAt(0));
    const view = new DataView(bytes.buffer);
    this.places = new Uint32Array(bytes.length / 4);
    for (let i = 0; i < this.places.length; i += 1) this.places[i] = view.getUint32(4 * i, true);
    this.inks = [PAPER, ...data.inks.map(([colour]) => [1, 3, 5].map((at) => parseInt(colour.slice(at, at + 2), 16)).concat(255))];
    const packed = new Uint32Array(new Uint8Array(this.inks.flat()).buffer);
    this.packed = packed;
    this.cells = new Uint8Array(this.places.length);
    this.eased = this.gaps();
    this.bitmap = document.createElement("canvas");
    [this.bitmap.width, this.bitmap.height] = data.box;
    this.pixels = new ImageData(this.width, this.height);
    this.words = new Uint32Array(this.pixels.data.buffer);
    this.offsets = data.stripes ? [...data.stripes.offsets] : [];
    this.stamps = new Map();
    this.colour();
  }

  /** Needles that end a row or two early, with how many: their last stitch is painted on, as knitted fabric evens it out. */
  gaps() {
    const found = [];
    for (let x = 0; x < this.width; x += 1) {
      let gap = 0;
      while (gap <= MOST_EASED && this.places[gap * this.width + x] === FIXED) gap += 1;
      if (gap > MOST_EASED) return []; // the top is no straight edge
      if (gap) found.push([x, gap]);
    }
    return found;
  }

  get repeat() {
    return this.data.stripes?.ends.at(-1) ?? 0;
  }

  /** Which ink each stitch has, for the offsets that stand in `offsets`; and the bitmap. */
  colour() {
    const { places, cells, words, packed, repeat } = this;
    const { ends, inks } = this.data.stripes ?? { ends: [1], inks: [0] };
    const [first, second] = [this.offsets[0] ?? 0, this.offsets[1] ?? 0].map((offset) => (repeat ? offset % repeat : 0));
    let stripe = 0;
    for (let i = 0; i < places.length; i += 1) {
      const place = places[i];
      let ink;
      if (place >= FIXED) {
        ink = place - FIXED;
      } else {
        let at = place & (PINNED - 1);
        if (!(place & PINNED)) at += place & SECOND ? second : first;
        if (at >= repeat) at -= repeat;
        // A neighbour mostly lies in the same colour.
        if (at >= ends[stripe] || (stripe > 0 && at < ends[stripe - 1])) {
          stripe = 0;
          while (at >= ends[stripe]) stripe += 1;
        }
        ink = inks[stripe];
      }
      cells[i] = ink;
      words[i] = packed[ink];
    }
    this.above = new Map();
    for (const [x, gap] of this.eased) {
      for (let y = 0; y < gap; y += 1) {
        words[y * this.width + x] = words[gap * this.width + x];
        this.above.set(y * this.width + x, cells[gap * this.width + x]);
      }
    }
    this.bitmap.getContext("2d").putImageData(this.pixels, 0, 0);
  }

  /** Paints what is seen through a window of `wide` x `high` px whose corner lies at `left`, `top` of the whole picture. */
  paint(canvas, { left, top, wide, high, stitch, back, dense }) {
    const context = canvas.getContext("2d");
    const row = stitch * this.ratio;
    canvas.width = Math.round(wide * dense);
    canvas.height = Math.round(high * dense);
    context.setTransform(dense, 0, 0, dense, 0, 0);
    if (stitch >= NEAR) this.stitches(context, { left, top, wide, high, stitch, row, back, dense });
    else this.far(context, { left, top, stitch, row, back, smooth: stitch * dense < 1.5 });
  }

  far(context, { left, top, stitch, row, back, smooth }) {
    context.imageSmoothingEnabled = smooth;
    context.imageSmoothingQuality = "high";
    context.save();
    context.translate(-left, -top);
    if (back) {
      context.translate(this.width * stitch, 0);
      context.scale(-1, 1);
    }
    context.drawImage(this.bitmap, 0, 0, this.width * stitch, this.height * row);
    context.restore();
  }

  stitches(context, { left, top, wide, high, stitch, row, back, dense }) {
    const [from, to] = [Math.max(0, Math.floor(left / stitch)), Math.min(this.width, Math.ceil((left + wide) / stitch))];
    const [upper, lower] = [Math.max(0, Math.floor(top / row) - 1), Math.min(this.height, Math.ceil((top + high) / row) + 1)];
    const inkAt = (x, y) => {
      const at = y * this.width + (back ? this.width - 1 - x : x);
      return this.cells[at] || this.above.get(at);
    };
    for (let y = upper; y < lower; y += 1) {
      for (let x = from; x < to; ) {
        const ink = inkAt(x, y);
        let end = x + 1;
        while (end < to && inkAt(end, y) === ink) end += 1;
        if (ink) {
          context.fillStyle = shade(this.inks[ink], 0.72);
          context.fillRect(x * stitch - left, y * row - top, (end - x) * stitch + 0.5, row + 0.5);
        }
        x = end;
      }
    }
    for (let y = lower - 1; y >= upper; y -= 1) {
      for (let x = from; x < to; x += 1) {
        const ink = inkAt(x, y);
        if (ink) context.drawImage(this.stamp(ink, stitch, row, back, dense), x * stitch - left, (y - 0.5) * row - top, stitch, 2 * row);
      }
    }
  }

  /** One stitch in its colour, in a box of two rows whose middle is its own row. */
  stamp(ink, stitch, row, back, dense) {
    const key = `${ink} ${stitch} ${back} ${dense}`;
    if (!this.stamps.has(key)) {
      if (this.stamps.size > 400) this.stamps.clear();
      const canvas = document.createElement("canvas");
      canvas.width = Math.max(1, Math.round(stitch * dense));
      canvas.height = Math.max(1, Math.round(2 * row * dense));
      const context = canvas.getContext("2d");
      context.scale(canvas.width, canvas.height / 2);
      context.translate(0, 0.5);
      (back ? bump : vee)(context, this.inks[ink]);
      this.stamps.set(key, canvas);
    }
    return this.stamps.get(key);
  }

  /** The whole piece as a canvas with a whole number of px a stitch, at most `most` px on either side. */
  whole(most, back) {
    const fit = Math.min(most / this.width, most / (this.height * this.ratio));
    const stitch = fit >= 1 ? Math.min(Math.floor(fit), 16) : fit;
    const canvas = document.createElement("canvas");
    const size = { wide: this.width * stitch, high: this.height * stitch * this.ratio };
    this.paint(canvas, { left: 0, top: 0, ...size, stitch, back, dense: 1 });
    return canvas;
  }
}

const shade = (ink, part) => `rgb(${ink.slice(0, 3).map((value) => Math.round(value * part)).join(" ")})`;

/** Two legs, in a box of one stitch by one row with half a row above and below it; light falls from the left. */
function vee(context, ink) {
  for (const side of [1, -1]) {
    context.save();
    context.translate(0.5, 0);
    context.scale(side, 1);
    context.beginPath();
    context.moveTo(-0.01, 1.36);
    context.bezierCurveTo(-0.2, 1.2, -0.47, 0.66, -0.47, 0.2);
    context.bezierCurveTo(-0.47, -0.12, -0.3, -0.16, -0.2, 0.12);
    context.bezierCurveTo(-0.12, 0.4, -0.01, 0.86, -0.01, 1.36);
    const light = context.createLinearGradient(-0.47, 0, 0, 0);
    light.addColorStop(0, shade(ink, side === 1 ? 0.9 : 0.82));
    light.addColorStop(0.45, shade(ink, 1));
    light.addColorStop(1, shade(ink, side === 1 ? 0.86 : 0.94));
    context.fillStyle = light;
    context.fill();
    context.lineWidth = 0.035;
    context.strokeStyle = shade(ink, 0.66);
    context.stroke();
    context.restore();
  }
}

/** One bump over its row, and half of its neighbours in the gap below it. */
function bump(context, ink) {
  for (const [x, y, part] of [[0, 0.78, 0.88], [1, 0.78, 0.88], [0.5, 0.3, 1]]) {
    context.beginPath();
    context.ellipse(x, y, 0.47, 0.27, 0, 0, 2 * Math.PI);
    const light = context.createLinearGradient(0, y - 0.27, 0, y + 0.27);
    light.addColorStop(0, shade(ink, part));
    light.addColorStop(1, shade(ink, part * 0.84));
    context.fillStyle = light;
    context.fill();
    context.lineWidth = 0.035;
    context.strokeStyle = shade(ink, 0.66);
    context.stroke();
  }
}
