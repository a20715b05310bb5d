// The window with the fabric of a piece: every stitch, from the whole piece to single Vs, either side; and for a striped yarn
// the slider of its start. The numbers come from the core once; moving and sliding asks nobody.

import { ask, engineState, whenChanged } from "./engine.js";
import { Fabric } from "./fabric-paint.js";
import { fileName, saveFile } from "./save-file.js";
import { element, number, say } from "./say.js";

const MARK = [34, 28]; // px that the number of a block takes
const NEAREST = 30; // px of a stitch
const STEP = 1.6; // from one nearness to the next
const MOST_PIXELS = 4096; // of a saved picture, on either side
const UNIT_M = 100_000; // hundredths of a millimetre in a metre
const PART_OF_SCREEN = 0.78; // as high as the window may be; the style sheet says the same
const NO_FORM = "fabric-of-no-form"; // controls of this window are no fields of the form round it
const SLIDES = 240; // places of the slider

/** The window of one form: before the answer at once where stripes are asked for, elsewhere in the place of the button for it. */
export function withFabric(live) {
  const button = live.box.querySelector("[data-does=fabric]");
  if (live.slug === "stripes") new FabricView(live, (window) => live.output.before(window)).open();
  button?.addEventListener("click", () => new FabricView(live, (window) => takePlace(button, window)).open(), { once: true });
}

function takePlace(button, window) {
  const held = document.activeElement === button;
  button.parentElement.replaceWith(window);
  if (held) window.querySelector("[tabindex]").focus({ preventScroll: true });
}

class FabricView {
  constructor(live, put) {
    this.live = live;
    this.putWindow = put; // into the page
    this.fabric = null;
    this.back = false;
    this.numbers = true;
    this.near = 0; // steps of nearness; 0 shows the whole piece
    this.asked = "";
    this.painting = 0;
  }

  open() {
    this.live.form.addEventListener("ww-answered", () => this.load());
    whenChanged(() => this.load());
    this.load();
  }

  async load() {
    const inputs = JSON.stringify(this.live.inputs);
    if (engineState().state !== "ready" || !this.live.good || inputs === this.asked) return;
    this.asked = inputs;
    let told;
    try {
      told = await ask(`fabric ${this.live.slug}`, { ask: "fabric", calculator: this.live.slug, inputs: this.live.inputs });
    } catch {
      this.asked = "";
      return;
    }
    if (told === null || this.asked !== inputs) return;
    if (this.section) this.section.hidden = !told.fabric; // leftovers may do for no picture at all
    if (!told.fabric) return;
    this.fabric = new Fabric(told.fabric);
    if (!this.section) this.build();
    this.describe();
    this.fillStripes();
    this.paintSoon();
  }

  build() {
    const button = (key, act) => {
      const made = element("button", { type: "button", class: "ww-button ww-button--quiet", title: say(`app.fabric-${key}-help`) }, say(`app.fabric-${key}`));
      made.addEventListener("click", () => act(made));
      return made;
    };
    const toggle = (key, pressed, act) => {
      const made = button(key, () => {
        const on = made.getAttribute("aria-pressed") !== "true";
        made.setAttribute("aria-pressed", String(on));
        act(on);
        this.describe();
        this.paintSoon();
      });
      made.setAttribute("aria-pressed", String(pressed));
      return made;
    };
    this.canvas = element("canvas", { role: "img", class: "ww-fabric-canvas" });
    this.marks = element("div", { class: "ww-fabric-marks", "aria-hidden": "true" });
    this.room = element("div", { class: "ww-fabric-room" }, element("div", { class: "ww-fabric-glass" }, this.canvas, this.marks));
    this.window = element("div", { class: "ww-fabric-window", tabindex: "0", role: "group", "aria-label": say("app.fabric-window") }, this.room);
    this.stripes = element("div", { class: "ww-fabric-stripes" });
    this.legend = element("ul", { class: "ww-fabric-legend", "aria-label": say("app.fabric-legend") });
    this.section = element(
      "section",
      { class: "ww-part ww-fabric" },
      element("h2", {}, say("app.fabric")),
      this.stripes,
      this.legend,
      element(
        "div",
        { class: "ww-fabric-tools" },
        button("whole", () => this.move(-Infinity)),
        button("farther", () => this.move(-1)),
        button("nearer", () => this.move(1)),
        toggle("back", false, (on) => (this.back = on)),
        toggle("numbers", true, (on) => (this.numbers = on)),
      ),
      this.window,
      element("div", { class: "ww-fabric-tools" }, button("png", () => this.savePng()), button("svg", () => this.saveSvg())),
    );
    // What is done in here is no typing in the form: only `put` tells the form.
    for (const kind of ["input", "change"]) this.section.addEventListener(kind, (event) => event.stopPropagation());
    this.putWindow(this.section);
    this.live.box.classList.add("ww-has-fabric");
    this.live.box.toggleAttribute("data-fabric-first", this.live.slug === "stripes");
    this.window.addEventListener("scroll", () => this.paintSoon(), { passive: true });
    new ResizeObserver(() => this.paintSoon()).observe(this.window);
  }

  /** The whole piece in the window. */
  get fit() {
    const highest = PART_OF_SCREEN * innerHeight;
    return Math.min(this.window.clientWidth / this.fabric.width, highest / (this.fabric.height * this.fabric.ratio));
  }

  get stitch() {
    return this.near === 0 ? this.fit : Math.min(NEAREST, this.fit * STEP ** this.near);
  }

  /** Nearer or farther, the middle of the window staying where it is. */
  move(steps) {
    const before = this.stitch;
    const middle = [this.window.scrollLeft + this.window.clientWidth / 2, this.window.scrollTop + this.window.clientHeight / 2];
    const furthest = Math.ceil(Math.log(NEAREST / this.fit) / Math.log(STEP));
    this.near = Math.max(0, Math.min(furthest, this.near + steps));
    const grown = this.stitch / before;
    this.size();
    this.window.scrollTo(middle[0] * grown - this.window.clientWidth / 2, middle[1] * grown - this.window.clientHeight / 2);
    this.paintSoon();
  }

  size() {
    this.room.style.width = `${Math.floor(this.fabric.width * this.stitch)}px`;
    this.room.style.height = `${Math.ceil(this.fabric.height * this.stitch * this.fabric.ratio)}px`;
  }

  paintSoon() {
    if (!this.section || this.painting) return;
    this.painting = requestAnimationFrame(() => {
      this.painting = 0;
      this.paint();
    });
  }

  paint() {
    this.size();
    const { clientWidth, clientHeight, scrollLeft, scrollTop } = this.window;
    const high = Math.min(clientHeight, this.room.clientHeight);
    const wide = Math.min(clientWidth, this.room.clientWidth);
    const seen = { left: scrollLeft, top: scrollTop, wide, high, stitch: this.stitch, back: this.back };
    this.canvas.style.width = `${wide}px`;
    this.canvas.style.height = `${high}px`;
    this.fabric.paint(this.canvas, { ...seen, dense: Math.min(devicePixelRatio, 2) });
    this.number(seen);
  }

  number({ left, top, wide, high, stitch, back }) {
    const { marks } = this.fabric.data;
    const [shown, there] = [[], []];
    for (const [words, x, y] of this.numbers ? marks : []) {
      const [px, py] = [(back ? this.fabric.width - x : x) * stitch - left, y * stitch * this.fabric.ratio - top];
      if (px < 0 || py < 0 || px > wide || py > high) continue;
      if (there.some(([qx, qy]) => Math.abs(px - qx) < MARK[0] && Math.abs(py - qy) < MARK[1])) continue; // seen from nearer
      there.push([px, py]);
      const made = element("span", {}, words);
      made.style.left = `${px}px`;
      made.style.top = `${py}px`;
      shown.push(made);
    }
    this.marks.replaceChildren(...shown);
  }

  describe() {
    const [stitches, rows] = this.fabric.data.box;
    const key = this.back ? "app.fabric-seen-back" : "app.fabric-seen-front";
    this.canvas.setAttribute("aria-label", say(key, { title: this.fabric.data.title, stitches, rows }));
    const seen = new Set(this.fabric.cells);
    const entries = this.fabric.data.inks.flatMap(([colour, name], i) => {
      if (!seen.has(i + 1)) return [];
      const patch = element("span", { "aria-hidden": "true" });
      patch.style.background = colour;
      return [element("li", {}, patch, name)];
    });
    this.legend.replaceChildren(...entries);
  }

  // --- a striped yarn ---------------------------------------------------------------------------------------------

  fillStripes() {
    const { stripes, blocks } = this.fabric.data;
    if (!stripes) return;
    const fields = ["offset", "second_offset"].slice(0, stripes.offsets.length);
    if (this.sliders?.length !== fields.length) {
      this.sliders = fields.map((name, ball) => this.slider(name, ball));
      this.begin = this.beginner();
      this.stripes.replaceChildren(...this.sliders.map((slider) => slider.line), this.begin.line);
    }
    this.sliders.forEach((slider, ball) => slider.set(stripes.offsets[ball]));
    this.begin.fill(blocks);
  }

  /** Repaints while it moves; puts the number into its field when it is let go. */
  slider(name, ball) {
    const id = `fabric-${name}`;
    const told = element("span", { class: "ww-fabric-told" });
    const input = element("input", { type: "range", id, form: NO_FORM, min: "0", max: String(SLIDES), step: "1" });
    const show = () => {
      const metres = number(this.fabric.offsets[ball] / UNIT_M, 2);
      told.textContent = say("app.fabric-metres", { metres });
      input.setAttribute("aria-valuetext", told.textContent);
    };
    input.addEventListener("input", () => {
      this.fabric.offsets[ball] = Math.round((this.fabric.repeat * Number(input.value)) / SLIDES);
      this.fabric.colour();
      show();
      this.paintSoon();
    });
    input.addEventListener("change", () => this.put(name, `${this.fabric.offsets[ball] / UNIT_M} m`));
    const key = ball === 0 ? "app.fabric-offset" : "app.fabric-second-offset";
    return {
      line: element("div", { class: "ww-fabric-slide" }, element("label", { for: id }, say(key)), input, told),
      set: (offset) => {
        input.value = String(Math.round(((offset % this.fabric.repeat) / this.fabric.repeat) * SLIDES));
        show();
      },
    };
  }

  /** Which block shall begin with which colour, and what that costs. */
  beginner() {
    const block = element("select", { form: NO_FORM, "aria-label": say("app.fabric-begin-block") });
    const colour = element("select", { form: NO_FORM, "aria-label": say("app.fabric-begin-colour") });
    const button = element("button", { type: "button", class: "ww-button ww-button--quiet" }, say("app.fabric-begin-do"));
    const names = () => this.fabric.data.stripes.inks.map((ink) => this.fabric.data.inks[ink - 1][1]);
    const costs = () => {
      const chosen = this.fabric.data.blocks.find(({ number }) => String(number) === block.value);
      const was = colour.value;
      colour.replaceChildren(
        ...names().map((name, i) => element("option", { value: String(i + 1) }, say("app.fabric-begin-cost", { colour: name, metres: chosen?.costs[i] ?? "?" }))),
      );
      if (was) colour.value = was;
    };
    block.addEventListener("change", costs);
    button.addEventListener("click", () => {
      const lines = this.live.control("begins").value.split(/[\n;]/).map((line) => line.trim()).filter(Boolean);
      const others = lines.filter((line) => Number.parseInt(line, 10) !== Number(block.value));
      this.put("begins", [...others, `${block.value}: ${colour.value}`].join("\n"));
    });
    return {
      line: element("div", { class: "ww-fabric-begin" }, element("span", {}, say("app.fabric-begin")), block, colour, button),
      fill: (blocks) => {
        const was = block.value;
        block.replaceChildren(...blocks.map(({ number }) => element("option", { value: String(number) }, say("app.fabric-block", { number }))));
        if (blocks.some(({ number }) => String(number) === was)) block.value = was;
        costs();
      },
    };
  }

  put(name, text) {
    const control = this.live.control(name);
    control.value = text;
    control.dispatchEvent(new Event("input", { bubbles: true }));
  }

  // --- to keep ----------------------------------------------------------------------------------------------------

  savePng() {
    this.fabric.whole(MOST_PIXELS, this.back).toBlob((blob) => blob && saveFile(blob, `${fileName(this.fabric.data.title, "fabric")}.png`), "image/png");
  }

  /** Drawn here from the same cells: runs of one colour, at true size in millimetres. */
  saveSvg() {
    const { width, height, cells, data } = this.fabric;
    const runs = data.inks.map(() => []);
    for (let y = 0; y < height; y += 1) {
      const at = (x) => cells[y * width + (this.back ? width - 1 - x : x)];
      for (let x = 0; x < width; ) {
        let end = x + 1;
        while (end < width && at(end) === at(x)) end += 1;
        if (at(x)) runs[at(x) - 1].push(`M${x} ${y}h${end - x}v1h${x - end}z`);
        x = end;
      }
    }
    const [wide, high] = [(width * data.cell[0]) / 100, (height * data.cell[1]) / 100];
    const paths = runs.map((each, i) => (each.length ? `<path fill="${data.inks[i][0]}" d="${each.join("")}"/>` : "")).join("");
    for (const [x, gap] of this.fabric.eased) {
      const ink = cells[gap * width + x];
      if (ink) runs[ink - 1].push(`M${this.back ? width - 1 - x : x} 0V${gap}h1V0z`);
    }
    const title = new Option(data.title).innerHTML;
    const text = `<svg xmlns="http://www.w3.org/2000/svg" width="${wide}mm" height="${high}mm" viewBox="0 0 ${width} ${height}" preserveAspectRatio="none" shape-rendering="crispEdges"><title>${title}</title>${paths}</svg>\n`;
    saveFile(new Blob([text], { type: "image/svg+xml" }), `${fileName(data.title, "fabric")}.svg`);
  }
}
