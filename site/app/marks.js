// What this device keeps lies in three places, which a browser throws away one by one or all together: quick notes
// (localStorage), the base of pieces and notes (IndexedDB), the copy for offline use (Cache Storage). In each lies a mark
// that says what was in all three. A place whose mark is gone, though another mark knows of it, was lost, and that is said
// until a person has read it. When all three are gone, nothing here can know that there ever was something.
//
//   mark: {n, places, pieces, lost}    n only grows; lost is {places, pieces, at}, or null
//
// A page can be left between two writings, so a mark speaks of another place only when that has a mark of its own.

import { storeName } from "./offline.js";
import { TOP } from "./places.js";
import { element, say } from "./say.js";
import { inBase } from "./store-base.js";
import { PATH } from "./store-local.js";
import { piecesHere } from "./store.js";

const KEY = `wedgework.mark ${PATH}`;
const NOTE = "mark";
const FILE = new URL("app/mark.json", TOP).href; // no file has this name
const PLACES = ["notes", "base", "copy"];

/** Each place's mark: undefined where none lies, null where the place cannot be asked. */
const readers = {
  notes: () => (localStorage.onlyHere ? null : (JSON.parse(localStorage.getItem(KEY)) ?? undefined)),
  base: () => inBase("notes", "readonly", (store) => store.get(NOTE)),
  copy: async () => (storeName() ? await (await (await caches.open(storeName())).match(FILE))?.json() : null),
};

const writers = {
  notes: async (mark) => localStorage.setItem(KEY, JSON.stringify(mark)),
  base: (mark) => inBase("notes", "readwrite", (store) => store.put({ ...mark, key: NOTE, at: Date.now() })),
  copy: async (mark) => (await caches.open(storeName())).put(FILE, new Response(JSON.stringify(mark))),
};

/** Compares the marks, says what was lost, and marks what is there now. To be called when the storing for offline use is at rest. */
export async function compareMarks() {
  const found = {};
  for (const place of PLACES) found[place] = await tried(readers[place]);
  const known = PLACES.map((place) => found[place]).filter(Boolean).sort((a, b) => b.n - a.n)[0];
  const gone = PLACES.filter((place) => found[place] === undefined && known?.places.includes(place));
  const asked = PLACES.filter((place) => found[place] !== null);
  const pieces = (await piecesHere()).length;
  const lost = gone.length ? together(known, gone) : (known?.lost ?? null);
  const whole = document.documentElement.dataset.offline === "ready";
  const places = asked.filter((place) => place !== "copy" || whole);
  let mark = { n: (known?.n ?? 0) + 1, places, pieces, lost };
  const same = (other) => other && JSON.stringify([other.places, other.pieces, other.lost]) === JSON.stringify([places, pieces, lost]);
  if (!places.every((place) => same(found[place]))) mark = await write(mark, places.filter((place) => found[place]));
  if (lost) show(mark);
  document.documentElement.dataset.marked = "yes";
}

/** What was lost now and what was lost before and not yet read. */
function together({ lost, pieces }, gone) {
  const places = PLACES.filter((place) => gone.includes(place) || lost?.places.includes(place));
  return { places, pieces: Math.max(pieces, lost?.pieces ?? 0), at: Date.now() };
}

/** First into each place that has none yet, beside those that are `marked`; then into all. Gives the mark that was written. */
async function write(mark, marked) {
  let places = marked;
  for (const place of mark.places.filter((one) => !marked.includes(one))) {
    const first = { ...mark, places: PLACES.filter((one) => one === place || places.includes(one)) };
    if (await tried(() => writers[place](first).then(() => true))) places = first.places;
  }
  const whole = { ...mark, n: mark.n + 1, places };
  for (const place of places) await tried(() => writers[place](whole));
  return whole;
}

async function tried(call) {
  try {
    return await call();
  } catch {
    return null;
  }
}

function show(mark) {
  const { places, pieces, at } = mark.lost;
  const names = (which) => which.map((place) => say(`app.lost-part-${place}`, { pieces })).join("; ");
  const left = mark.places.filter((place) => !places.includes(place));
  const words = [say("app.lost", { lost: names(places), date: new Date(at).toISOString().slice(0, 10) })];
  if (left.length) words.push(say("app.lost-left", { left: left.map((place) => say(`app.lost-left-${place}`, { pieces: mark.pieces })).join("; ") }));
  if (places.includes("base") && pieces) words.push(say("app.lost-pieces"));
  if (places.includes("base") !== places.includes("notes")) words.push(say("app.lost-twice"));
  if (places.includes("copy")) words.push(say(mark.places.includes("copy") ? "app.lost-copy-there" : "app.lost-copy-again"));
  const read = element("button", { type: "button", class: "ww-button ww-button--quiet" }, say("app.lost-read"));
  const notice = element("div", { class: "ww-notes ww-lost m-notice", role: "status" }, element("p", {}, words.join(" ")), read);
  read.addEventListener("click", async () => {
    notice.remove();
    await write({ ...mark, n: mark.n + 1, lost: null }, mark.places);
  });
  (document.querySelector(".m-notices") ?? document.querySelector(".md-content__inner") ?? document.body).prepend(notice);
}
