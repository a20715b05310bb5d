// Beside the sheet: yarns, the judgement, what would be easier, the list of shapes with its corners, and the piece itself.

import { lessYarn, withRest, withYarn, yarnOf } from "./board-doc.js";
import { rings } from "./board-shape.js";
import { button } from "./board-tools.js";
import { element, say, short } from "./say.js";

const MOST_CORNERS = 40; // listed at once

export function panels(board) {
  return element("div", { class: "lb-side" }, yarns(board), judgement(board), offers(board), shapes(board), piece(board), help(board));
}

function part(title, ...inside) {
  return element("section", { class: "lb-part" }, element("h2", {}, say(`app.board-${title}`)), ...inside);
}

function folded(title, ...inside) {
  return element("details", { class: "lb-part" }, element("summary", {}, say(`app.board-${title}`)), ...inside);
}

/** Replaces what is inside only where it would read otherwise; the focus stays where it is. */
function fill(box, made) {
  const next = element("div", {}, ...made);
  if (next.innerHTML !== box.innerHTML) box.replaceChildren(...made);
}

function patch(colour) {
  const made = element("span", { class: "lb-patch", "aria-hidden": "true" });
  made.style.background = colour;
  return made;
}

// --- yarns ------------------------------------------------------------------------------------------------------------

function yarns(board) {
  const list = element("ul", { class: "lb-yarns" });
  const edit = element("details", { class: "lb-yarn-edit" }, element("summary", {}, say("app.board-yarn-edit")));
  const name = element("input", { type: "text", maxlength: 100, autocomplete: "off" });
  const colour = element("input", { type: "color" });
  const ground = button("yarn-ground", () => board.giveGround(board.yarn));
  const less = button("yarn-less", () => board.commit(lessYarn(board.doc, board.yarn), "yarn-less"));
  name.addEventListener("change", () => name.value.trim() && board.commit(withYarn(board.doc, board.yarn, { name: name.value.trim() }), "yarn-named"));
  colour.addEventListener("change", () => board.commit(withYarn(board.doc, board.yarn, { colour: colour.value }), "yarn-coloured"));
  edit.append(element("label", {}, say("app.board-yarn-name"), name), element("label", {}, say("app.board-yarn-colour"), colour), ground, less, button("yarn-add", () => board.addYarn()));
  board.onChange(() => {
    const { yarns: all, layout } = board.doc.rest;
    const key = JSON.stringify([all.map((yarn) => [yarn.id, yarn.name, yarn.colour]), layout.background, board.yarn, board.chosen.shape]);
    if (key === list.dataset.key) return;
    list.dataset.key = key;
    const focused = list.contains(document.activeElement) ? document.activeElement.dataset.yarn : null;
    list.replaceChildren(...all.map((yarn, i) => {
      const words = say(yarn.id === layout.background ? "app.board-yarn-of-ground" : "app.board-yarn", { number: i + 1, name: yarn.name || yarn.id });
      const made = element("button", { type: "button", "data-yarn": yarn.id, "aria-pressed": String(yarn.id === board.yarn) }, patch(yarn.colour), element("span", {}, words));
      made.addEventListener("click", () => board.giveYarn(yarn.id));
      return element("li", {}, made);
    }));
    if (focused) list.querySelector(`[data-yarn="${focused}"]`)?.focus();
    const now = yarnOf(board.doc, board.yarn);
    if (document.activeElement !== name) name.value = now.name;
    colour.value = now.colour.toLowerCase();
    less.disabled = lessYarn(board.doc, board.yarn) === board.doc;
    ground.disabled = layout.background === board.yarn;
  });
  return part("yarns", element("p", { class: "lb-note" }, say("app.board-yarns-note")), list, edit);
}

// --- the judgement ----------------------------------------------------------------------------------------------------

function judgement(board) {
  const state = element("p", { class: "lb-state", role: "status" });
  const problems = element("ul", { class: "lb-problems" });
  const figures = element("dl", { class: "lb-figures" });
  const needs = element("ul", { class: "lb-needs" });
  const warnings = element("ul", { class: "lb-warnings" });
  const box = element("div", { class: "lb-judged" }, figures, needs, warnings);
  board.onChange(() => {
    const { judge } = board;
    const words = judge.state === "failed" || judge.engine.state === "failed" ? "judge-failed" : judge.state === "done" ? (judge.problems.length > 0 ? "judge-problems" : "judge-done") : judge.engine.state === "ready" ? "judge-working" : "judge-booting";
    if (state.textContent !== say(`app.board-${words}`)) state.textContent = say(`app.board-${words}`);
    box.classList.toggle("lb-old", judge.stale);
    fill(problems, judge.problems.map(({ where, sentence, way_out: out }) => element("li", {}, problemButton(board, where), `${sentence} ${out}`.trim())));
    const { found } = judge;
    if (!found) return;
    fill(figures, found.figures.flatMap(({ key, label, value }) => [element("dt", {}, label), element("dd", { "data-figure": key }, value)]));
    fill(needs, found.yarns.map((one) => element("li", {}, patch(yarnOf(board.doc, one.id).colour), element("span", {}, `${one.name || one.id}: ${one.said}`))));
    fill(warnings, found.warnings.map((one) => element("li", {}, `${one.sentence} ${one.way_out}`.trim())));
  });
  const key = element("p", { class: "lb-key" }, ...["number", "end", "end-inside", "slit", "stair", "level"].map((what) => element("span", { "data-key": what }, say(`app.board-key-${what}`))));
  return part("judgement", state, problems, box, key);
}

/** A problem of a shape leads to the shape. */
function problemButton(board, where) {
  const found = /^(?:design\.)?layout\.shapes\[(\d+)\]/.exec(where);
  if (!found || !board.doc.shapes[Number(found[1])]) return "";
  const made = element("button", { type: "button" }, say("app.board-problem-shape", { number: Number(found[1]) + 1 }));
  made.addEventListener("click", () => board.choose(Number(found[1])));
  return made;
}

function offers(board) {
  const list = element("ul", { class: "lb-offers" });
  const none = element("p", { class: "lb-note" });
  const section = part("offers", none, list);
  board.onChange(() => {
    const { judge } = board;
    const words = judge.stale || judge.state !== "done" ? "offers-wait" : judge.weighing > 0 ? "offers-weighing" : judge.offers.length > 0 ? "offers-some" : "offers-none";
    if (none.textContent !== say(`app.board-${words}`)) none.textContent = say(`app.board-${words}`);
    const key = judge.offers.map((offer) => offer.words + offer.gain).join("|");
    if (key === list.dataset.key) return;
    list.dataset.key = key;
    list.replaceChildren(...judge.offers.map((offer) => {
      const take = element("button", { type: "button", class: "lb-strong" }, say("app.board-offer-take"));
      take.addEventListener("click", () => judge.accept(offer));
      const look = element("button", { type: "button" }, say("app.board-offer-show"));
      look.addEventListener("click", () => board.pointAt(offer.at[0] / 2, offer.at[1]));
      return element("li", { "data-offer": offer.kind }, element("p", {}, offer.words, " ", element("small", {}, offer.gain)), element("div", { class: "lb-bar" }, take, look));
    }));
  });
  return section;
}

// --- shapes -----------------------------------------------------------------------------------------------------------

function shapes(board) {
  const list = element("ol", { class: "lb-shapes", reversed: true });
  const corners = element("div", { class: "lb-corners" });
  board.onChange(() => {
    const { doc, chosen } = board;
    const names = doc.shapes.map((shape, i) => board.name(i));
    const key = JSON.stringify([names, chosen.shape]);
    if (key !== list.dataset.key) {
      list.dataset.key = key;
      const focused = list.contains(document.activeElement) ? document.activeElement.dataset.shape : null;
      list.replaceChildren(...doc.shapes.map((shape, i) => {
        const made = element("button", { type: "button", "data-shape": i, "aria-pressed": String(chosen.shape === i) }, patch(yarnOf(doc, shape.yarn).colour), element("span", {}, names[i]));
        made.addEventListener("click", () => board.choose(chosen.shape === i && board.chosen.shape === i ? -1 : i));
        return element("li", {}, made);
      }).reverse());
      if (focused !== null) list.querySelector(`[data-shape="${focused}"]`)?.focus();
    }
    listCorners(board, corners);
  });
  const none = element("p", { class: "lb-note" }, say("app.board-shapes-note"));
  return part("shapes", none, list, corners);
}

/** Corners of the chosen shape as numbers, for whoever would rather type. */
function listCorners(board, corners) {
  const shape = board.doc.shapes[board.chosen.shape];
  const key = shape ? JSON.stringify([board.chosen.shape, rings(shape)]) : "";
  if (key === corners.dataset.key) return;
  corners.dataset.key = key;
  if (!shape) {
    corners.replaceChildren();
    return;
  }
  const focused = corners.contains(document.activeElement) ? document.activeElement.name : null;
  const lines = [];
  for (const [r, ring] of rings(shape).entries()) {
    for (const [k, point] of ring.entries()) {
      if (lines.length >= MOST_CORNERS) break;
      const inputs = [0, 1].map((axis) => {
        const input = element("input", { type: "number", step: "any", name: `${r}-${k}-${axis}`, value: point[axis], "aria-label": say(axis === 0 ? "app.board-corner-x" : "app.board-corner-y", { number: k + 1 }) });
        input.addEventListener("change", () => {
          const value = Number(input.value);
          const to = axis === 0 ? [value, point[1]] : [point[0], value];
          if (!input.value || !Number.isFinite(value) || !board.setCorner(board.chosen.shape, r, k, to)) input.value = String(point[axis]);
        });
        return input;
      });
      lines.push(element("li", {}, element("span", {}, say("app.board-corner", { number: k + 1 })), ...inputs));
    }
  }
  const was = corners.querySelector("details")?.open ?? false;
  const box = element("details", {}, element("summary", {}, say("app.board-corners")), element("p", { class: "lb-note" }, say("app.board-corners-note")), element("ul", {}, ...lines));
  box.open = was;
  corners.replaceChildren(box);
  if (focused) corners.querySelector(`[name="${focused}"]`)?.focus();
}

// --- the piece --------------------------------------------------------------------------------------------------------

function piece(board) {
  const fields = {};
  const field = (name, attributes) => {
    const input = element("input", { name, autocomplete: "off", ...attributes });
    fields[name] = input;
    return element("label", {}, say(`app.board-piece-${name}`), input);
  };
  const number = (least, most, step) => ({ type: "number", min: least, max: most, step, required: true });
  const bed = element("select", { name: "bed" });
  const form = element(
    "form",
    { class: "lb-piece" },
    field("title", { type: "text", maxlength: 200, required: true }),
    element("label", {}, say("app.board-piece-bed"), bed),
    field("needles", number(2, 1000, 1)),
    field("rows", number(2, 20_000, 1)),
    field("stitches", number(1, 200, "any")),
    field("rows_gauge", number(1, 200, "any")),
    element("button", { type: "submit", class: "lb-strong" }, say("app.board-piece-do")),
  );
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const { doc } = board;
    const [pitch, needles] = bed.value.split(" ").map(Number);
    const at = Object.fromEntries(Object.entries(fields).map(([name, input]) => [name, name === "title" ? input.value.trim() : Number(input.value)]));
    const { part, ...panel } = doc.rest.panel;
    const made = { ...doc.rest, title: at.title, bed: { ...doc.rest.bed, pitch_mm: pitch, needles } };
    if (at.needles !== doc.sheet.needles) made.panel = { ...panel, width: { needles: at.needles } };
    if (at.rows !== doc.sheet.rows) made.panel = { ...(made.panel ?? panel), height: { rows: at.rows } };
    const [stitches, rows] = gauge(doc);
    if (at.stitches !== stitches || at.rows_gauge !== rows) {
      made.gauge = { stitches_per_10cm: at.stitches, rows_per_10cm: at.rows_gauge };
      made.panel = { ...(made.panel ?? doc.rest.panel), width: { needles: at.needles }, height: { rows: at.rows } };
    }
    // The core lays the sheet out anew; a name or a bed leaves it as it is.
    if (made.panel || made.gauge) board.files.relaid(withRest(doc, made), "piece");
    else board.commit(withRest(doc, made), "piece");
  });
  const gauge = (doc) => [Number((100_000 / doc.sheet.stitch).toFixed(3)), Number((100_000 / doc.sheet.row).toFixed(3))];
  board.onChange(() => {
    const { rest, sheet } = board.doc;
    const key = JSON.stringify([rest.title, rest.bed.pitch_mm, rest.bed.needles, sheet]);
    if (key === form.dataset.key) return;
    form.dataset.key = key;
    const beds = board.beds.map(([pitch, needles]) => [Number(pitch), needles]);
    if (!beds.some(([pitch, needles]) => pitch === rest.bed.pitch_mm && needles === rest.bed.needles)) beds.push([rest.bed.pitch_mm, rest.bed.needles]);
    bed.replaceChildren(...beds.map(([pitch, needles]) => element("option", { value: `${pitch} ${needles}`, selected: pitch === rest.bed.pitch_mm && needles === rest.bed.needles }, say("app.board-piece-bed-is", { pitch: short(pitch), needles }))));
    fields.title.value = rest.title;
    fields.needles.value = String(sheet.needles);
    fields.rows.value = String(sheet.rows);
    [fields.stitches.value, fields.rows_gauge.value] = gauge(board.doc).map(String);
  });
  return folded("piece", element("p", { class: "lb-note" }, say("app.board-piece-note")), form);
}

function help(board) {
  const list = (key) => element("ul", {}, ...say(`app.board-${key}`).split("\n").map((line) => element("li", {}, line)));
  const box = folded("keys", element("p", { class: "lb-note", id: "lb-keys-short" }, say("app.board-keys-short")), list("keys-all"));
  board.openHelp = () => {
    box.open = true;
    box.querySelector("summary").focus();
  };
  return box;
}
