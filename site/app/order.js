// The person's own order: buttons beside each block of the list write wishes into the field, one a line. The core says what
// cannot be; the list stays as it was until it can.

import { element, say } from "./say.js";

const WISH = /^\s*(b\d+)\s+(before|after|from|vor|nach|von)\s+(?:the\s+)?(\S+?)\.?\s*$/i;
const PLACES = ["before", "after", "vor", "nach"];

/** Buttons in the list of blocks of a form that takes wishes, now and after every answer. */
export function ownOrder(live) {
  const field = live.control("own_order");
  if (!field) return;
  const dress = () => {
    const rows = [...live.output.querySelectorAll("tr[data-key]")].filter((row) => /^b\d+$/.test(row.dataset.key));
    if (rows.length === 0 || rows[0].querySelector("button")) return;
    rows.forEach((row, i) => opener(live, rows, i));
  };
  live.form.addEventListener("ww-answered", dress);
  dress();
}

/** The id of a block becomes a button that opens a row with what can be wished of it. */
function opener(live, rows, i) {
  const [row, name] = [rows[i], rows[i].cells[0].textContent];
  const button = element("button", { type: "button", class: "ww-button ww-button--quiet ww-button--small", "aria-expanded": "false", "aria-label": say("app.order-open", { id: row.dataset.key, name }) }, row.dataset.key);
  let opened = null;
  button.addEventListener("click", () => {
    opened?.remove();
    opened = opened ? null : element("tr", { class: "ww-moves" }, element("td", { colspan: row.cells.length }, ...wishes(live, rows, i, name)));
    if (opened) row.after(opened);
    button.setAttribute("aria-expanded", String(opened !== null));
  });
  row.cells[1].replaceChildren(button);
}

function wishes(live, rows, i, name) {
  const block = rows[i].dataset.key;
  const made = [];
  const add = (key, wish) => {
    const button = element("button", { type: "button", class: "ww-button ww-button--quiet ww-button--small", "aria-label": say(`app.order-${key}-said`, { name }) }, say(`app.order-${key}`));
    button.addEventListener("click", () => take(live, wish));
    made.push(button);
  };
  if (i > 0) add("earlier", say("app.order-typed-before", { block, other: rows[i - 1].dataset.key }));
  if (i < rows.length - 1) add("later", say("app.order-typed-after", { block, other: rows[i + 1].dataset.key }));
  add("other-side", say(rows[i].dataset.side === "L" ? "app.order-typed-right" : "app.order-typed-left", { block }));
  return made;
}

/** A new wish takes the place of those that it contradicts: the other order of the same two, another side of the same block. */
function take(live, wish) {
  const field = live.control("own_order");
  const [, block, way, other] = WISH.exec(wish);
  const same = (line) => {
    const old = WISH.exec(line);
    if (!old) return false;
    const [one, kind, two] = [old[1].toLowerCase(), old[2].toLowerCase(), old[3].toLowerCase()];
    if (!PLACES.includes(way)) return !PLACES.includes(kind) && one === block;
    return PLACES.includes(kind) && ((one === block && two === other) || (one === other && two === block));
  };
  const kept = field.value.split(/[\n;]/).filter((line) => line.trim() && !same(line));
  field.closest("details")?.setAttribute("open", "");
  live.fill({ own_order: [...kept.map((line) => line.trim()), wish].join("\n") });
}
