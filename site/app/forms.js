// Every form of a calculator answers as one types. The page shows the true answer for the defaults before any of this
// runs, and keeps showing the last good answer, marked, while something in the fields is wrong.

import { ask, engineState, start, stop, whenChanged } from "./engine.js";
import { toMachine } from "./handover.js";
import { openLinks, share } from "./links.js";
import { button, element, say } from "./say.js";
import { toBoard } from "./to-board.js";
import { takeTyped } from "./typed.js";

// Where an answer takes longer than this it is asked for after a pause in the typing, elsewhere at every key.
const QUICK = 80; // ms
const PAUSE = 180; // ms after the last key; so long, too, half a number is not called wrong
const LATEST = 2_000; // ms
const OFFERS = { "layout.too-wide": { words: "app.offer-panels", fill: { split: "design" } } }; // ways out that are one tap
const SLOW = 300; // ms until it is said that the answer is being worked out

/** Brings every form on the page to life; false where there is none. */
export function liveForms() {
  const forms = [...document.querySelectorAll("form[data-calculator]")].map((form) => new LiveForm(form));
  if (forms.length === 0) return false;
  const typed = takeTyped();
  for (const live of forms) if (typed[live.slug]) live.fill(typed[live.slug]);
  openLinks(forms);
  import("./order.js").then(({ ownOrder }) => forms.forEach(ownOrder));
  import("./yarn-parts.js").then(({ yarnParts }) => forms.forEach(yarnParts));
  import("./onward.js").then(({ onward }) => forms.forEach(onward));
  painted().then(start); // the page with its true answer is seen first
  return true;
}

/** Once the page has been painted. One in the background is not: there it is a little later. */
function painted() {
  return new Promise((done) => {
    requestAnimationFrame(() => setTimeout(done, 0));
    setTimeout(done, LATEST);
  });
}

/** Once all of the page has been read. */
function parsed() {
  if (document.readyState === "complete") return Promise.resolve();
  return new Promise((done) => {
    for (const kind of ["DOMContentLoaded", "load"]) addEventListener(kind, done, { once: true });
    setTimeout(done, LATEST);
  });
}

export class LiveForm {
  constructor(form) {
    this.form = form;
    this.slug = form.dataset.calculator;
    this.later = new Map([...form.querySelectorAll("noscript")].map((place) => [place, held(place)]));
    this.controls = this.all(":is(input, select, textarea)[name]"); // the page's own, which stay
    this.hanging = this.all("[data-only]");
    this.named = new Map(this.controls.map((control) => [control.name, control]));
    this.box = form.querySelector(".ww-answer");
    this.output = form.querySelector("output");
    this.told = element("div", { class: "ww-told", role: "status" });
    this.notes = element("div", { class: "ww-notes", role: "status" });
    this.notesBelow = element("div", { class: "ww-notes", role: "status" });
    this.problems = [];
    this.asked = 0; // counts the changes, so that only the newest answer is shown
    this.good = true; // whether the answer shown is that of the fields
    this.everAnswered = false;
    this.pending = false; // whether the answer to what is in the fields is still to come
    this.working = false;
    this.fell = false;
    this.stopped = false;
    this.pictureFirst = form.dataset.picture === "first";
    this.spent = this.pictureFirst ? QUICK + 1 : 0; // ms, on the last answer
    this.result = null; // of the last good answer, and what the answer on the page holds before
    // The answer may be long; that it is new is said by the page's own words.
    this.output.setAttribute("aria-live", "off");
    this.box.prepend(this.notes, this.told);
    this.box.querySelector(".ww-tools")?.append(this.notesBelow);
    for (const [name, does] of [["machine", toMachine], ["board", toBoard]]) {
      this.box.querySelector(`[data-does=${name}]`)?.addEventListener("click", () => does(this));
    }
    share(this);
    form.dataset.live = "answered"; // or "asked": see render
    form.addEventListener("input", (event) => this.changed(event.target.matches("select, [type=color]") ? 0 : PAUSE));
    form.addEventListener("submit", (event) => event.preventDefault());
    form.addEventListener("reset", () => setTimeout(() => this.changed(0), 0));
    whenChanged(() => this.render());
    this.showFields();
    this.whole = parsed().then(painted).then(() => this.putLater());
    if (this.changedByHand) this.changed(0); // the browser remembered
  }

  /** What is in the form now and what is to come, as it stands on the page. */
  all(selector) {
    const there = [...this.form.querySelectorAll(`${selector}, noscript`)];
    return there.flatMap((one) => (this.later.has(one) ? [...this.later.get(one).querySelectorAll(selector)] : [one]));
  }

  /** Browsers look through every field of a page that they have just read, for names and passwords, and three times: what is not
      seen at first comes after that. */
  putLater() {
    for (const [place, content] of this.later) place.replaceWith(content);
    this.later.clear();
    this.showFields();
  }

  /** What is in the fields, as typed. */
  get inputs() {
    return Object.fromEntries(this.controls.map((control) => [control.name, control.value]));
  }

  /** What the page had in them. */
  get defaults() {
    return Object.fromEntries(this.controls.map((control) => [control.name, defaultOf(control)]));
  }

  get changedByHand() {
    return this.controls.some((control) => control.value !== defaultOf(control));
  }

  control(name) {
    return this.named.get(name);
  }

  /** Puts texts into the fields and asks for their answer; names that are not there are passed over. */
  fill(inputs) {
    for (const control of this.controls) {
      if (Object.hasOwn(inputs, control.name)) control.value = inputs[control.name];
    }
    return this.changed(0);
  }

  /** Asks for the answer of what is in the fields; while one types, `pause` ms after the last key if the answer takes long. */
  changed(pause) {
    this.asked += 1;
    const mine = this.asked;
    this.pending = true;
    this.good = false;
    this.fell = false;
    this.stopped = false;
    this.showFields();
    this.render();
    const slow = this.spent > QUICK;
    if (slow && this.pictureFirst) this.draw(mine);
    const wait = slow ? pause : 0;
    const calm = performance.now() + pause;
    return new Promise((done) => setTimeout(done, wait)).then(() => (mine === this.asked ? this.answer(mine, calm) : null));
  }

  /** The newest question wins; what is wrong with half a number is said only when the typing has paused, at `calm`. */
  async answer(mine, calm) {
    const begun = performance.now();
    const wasReady = engineState().state === "ready";
    let clock = setTimeout(function tick(live) {
      live.seconds = Math.floor((performance.now() - begun) / 1000);
      if (mine === live.asked) live.tell();
      clock = setTimeout(tick, 1000, live);
    }, SLOW, this);
    let found = null;
    let fault = "";
    await this.whole;
    try {
      found = await ask(`form ${this.slug}`, { calculator: this.slug, inputs: this.inputs });
    } catch (unanswered) {
      fault = unanswered.fault;
    }
    clearTimeout(clock);
    const now = performance.now();
    if (found !== null && wasReady) this.spent = now - begun;
    if (found?.answer.problems.length > 0 && now < calm) await new Promise((done) => setTimeout(done, calm - now));
    if (mine !== this.asked) return;
    this.pending = false;
    this.working = false;
    this.fell = fault === "fell";
    this.stopped = fault === "stopped";
    const heights = this.heights; // as they are painted: after the next line all would have to be laid out for them
    this.undraw();
    if (found !== null) this.take(found, heights);
    this.render();
  }

  /** The picture of what is in the fields, before it is planned, where the answer has its own; nothing else moves. */
  async draw(mine) {
    const told = await ask(`sketch ${this.slug}`, { ask: "sketch", calculator: this.slug, inputs: this.inputs }).catch(() => null);
    if (!told?.html || mine !== this.asked || !this.pending) return;
    if (!this.sketch) {
      this.behind = this.output.querySelector(".drawing-front, .drawing-fabric")?.closest("figure");
      this.sketch = element("div", { class: "ww-sketch" });
      this.sketch.style.minHeight = `${this.behind?.offsetHeight ?? 0}px`;
      if (this.behind) {
        this.behind.before(this.sketch);
        this.behind.hidden = true;
      } else this.output.prepend(this.sketch);
      this.box.classList.add("ww-sketched");
    }
    this.sketch.innerHTML = told.html; // made by the core, like an answer
  }

  undraw() {
    this.sketch?.remove();
    if (this.behind) this.behind.hidden = false;
    this.sketch = this.behind = null;
    this.box.classList.remove("ww-sketched");
  }

  /** How long it has taken so far, without touching the button beside it. */
  tell() {
    const before = this.working;
    this.working = true;
    const shown = this.told.querySelector(".ww-seconds");
    if (before && shown) shown.textContent = this.soFar;
    else this.render();
  }

  get soFar() {
    return this.seconds > 0 ? say("app.seconds", { seconds: this.seconds }) : "";
  }

  get heights() {
    return [...this.output.children].filter((part) => part !== this.sketch).map((part) => part.offsetHeight);
  }

  take({ answer, html }, heights) {
    this.everAnswered = true;
    this.problems = answer.problems;
    this.good = answer.problems.length === 0;
    if (this.good) {
      this.show(html, heights);
      this.result = answer.result;
      this.form.dispatchEvent(new CustomEvent("ww-answered"));
    }
  }

  /** Made by the core, in which every text of a person is escaped. What is out of sight keeps the height of what stood there. */
  show(html, heights) {
    this.output.innerHTML = html;
    for (const [at, part] of [...this.output.children].entries()) {
      if (heights[at]) part.style.containIntrinsicBlockSize = `auto ${heights[at]}px`;
    }
  }

  /** The digest of the steps that the page shows, where the calculator has one and the answer is that of the fields. */
  get digest() {
    if (!this.good) return "";
    this.result ??= JSON.parse(this.box.dataset.answer).answer.result;
    return this.result.steps_digest ?? "";
  }

  /** A field that hangs on a choice is seen only with that choice. */
  showFields() {
    for (const field of this.hanging) {
      const [name, values] = field.dataset.only.split("=");
      field.hidden = !values.split(" ").includes(this.control(name)?.value);
      field.removeAttribute("data-off");
    }
    for (const group of this.form.querySelectorAll("fieldset")) {
      group.hidden = [...group.querySelectorAll(".ww-field")].every((field) => field.hidden);
    }
  }

  render() {
    const { state, why } = engineState();
    const inside = [];
    if (state === "failed") {
      inside.push(element("p", {}, say(this.everAnswered ? "app.failed-later" : "app.failed", { why: say(`app.why-${why}`) })));
    } else if (this.fell) {
      inside.push(element("p", {}, say("app.restarted")));
    } else if (!this.good && state !== "ready") {
      inside.push(element("p", {}, say("app.booting")));
    } else if (this.stopped) {
      inside.push(element("p", {}, say("app.stopped"), " ", this.button("app.work-out", () => this.changed(0))));
    } else if (this.working) {
      const seconds = element("span", { class: "ww-seconds", "aria-hidden": "true" }, this.soFar);
      inside.push(element("p", {}, say("app.working"), " ", seconds, " ", this.button("app.stop", () => stop(`form ${this.slug}`))));
    }
    if (this.problems.length > 0) {
      inside.push(element("p", {}, say("app.problems")), element("ul", {}, ...this.problems.map((one) => this.item(one))));
    }
    const old = !this.good && (this.problems.length > 0 || this.fell || this.stopped || state === "failed");
    if (old) inside.push(element("p", { class: "ww-old-said" }, say("app.old-answer")));
    this.form.dataset.live = this.pending ? "asked" : "answered";
    this.box.classList.toggle("ww-old", old);
    this.box.setAttribute("aria-busy", String(this.working));
    const made = element("div", {}, ...inside);
    if (made.innerHTML !== this.told.innerHTML) this.told.replaceChildren(...made.childNodes);
    this.mark();
  }

  button(key, act) {
    return button(key, act, "ww-button--quiet", "ww-button--small");
  }

  item({ where, code, sentence, way_out }) {
    const control = this.control(where);
    const words = `${sentence} ${way_out}`.trim();
    const offer = OFFERS[code] && this.offer(OFFERS[code]);
    if (control === undefined) return element("li", {}, where ? `${where}: ${words}` : words);
    const name = control.labels[0].firstChild.textContent.trim();
    return element("li", {}, element("a", { href: `#${control.id}` }, name), `: ${words}`, ...(offer ? [" ", offer] : []));
  }

  /** A button that takes the way out; nothing where the form has no such field. */
  offer({ words, fill }) {
    const [name] = Object.keys(fill);
    if (!this.control(name)) return undefined;
    const button = element("button", { type: "button", class: "ww-button ww-button--quiet" }, say(words));
    button.addEventListener("click", () => {
      const group = this.control(name).closest("details");
      if (group) group.open = true;
      this.fill(fill);
    });
    return button;
  }

  /** Says beside each field what is wrong with it. */
  mark() {
    for (const control of this.controls) {
      const id = `${control.id}-problem`;
      const words = this.problems
        .filter((problem) => problem.where === control.name)
        .map((problem) => `${problem.sentence} ${problem.way_out}`.trim())
        .join(" ");
      let said = document.getElementById(id);
      if ((said?.textContent ?? "") === words) continue;
      said?.remove();
      const described = (control.getAttribute("aria-describedby") ?? "").split(" ").filter((one) => one && one !== id);
      if (words) {
        said = element("p", { class: "ww-problem", id }, words);
        control.after(said);
        control.setAttribute("aria-invalid", "true");
        described.unshift(id);
      } else {
        control.removeAttribute("aria-invalid");
      }
      control.setAttribute("aria-describedby", described.join(" "));
    }
  }

  /** A sentence about something that was done, with elements behind it: over the answer. */
  note(...inside) {
    this.write(this.notes, inside);
  }

  /** The same beside the buttons under the answer. */
  noteBelow(...inside) {
    this.write(this.notesBelow, inside);
  }

  write(where, inside) {
    for (const one of [this.notes, this.notesBelow]) {
      one.replaceChildren(...(one === where && inside.length ? [element("p", {}, ...inside)] : []));
    }
  }
}

function defaultOf(control) {
  if (control.tagName !== "SELECT") return control.defaultValue;
  return ([...control.options].find((option) => option.defaultSelected) ?? control.options[0]).value;
}

/** What a part of the page that is for those without scripts holds, not yet in the page. */
function held(place) {
  const made = element("template");
  made.innerHTML = place.textContent; // as the core wrote it
  return made.content;
}
