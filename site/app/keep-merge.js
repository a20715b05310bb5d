// What is in a project file against what this device keeps: each thing is new, the same, or otherwise than here. Nothing is
// written until the person says so, and what is otherwise stays as it is unless she asks for the file's.

import { keepClass, listClasses, sameClass } from "./class-store.js";
import { ask } from "./engine.js";
import { placeAt, stepsDone } from "./keep-collect.js";
import { carriedKey, carriedNote } from "./machine-chain.js";
import { fromReport } from "./report-doc.js";
import { say } from "./say.js";
import { putYarns, shelfYarns } from "./shelf.js";
import { getPiece, keepNote, place, putPiece, readNote, setPlace } from "./store.js";

const MOST_ALIKE = 99;

/** [{kind, title, state: "new" | "same" | "otherwise", here, there, take()}], `take` resolving to how it was kept. */
export async function compared(looked, text) {
  return [...(await pieces(looked, text)), ...(await yarns(looked)), ...(await fields(looked)), ...(await classes(looked))];
}

async function pieces(looked, text) {
  const digests = []; // of the pieces of the file, as this device names them
  const found = [];
  for (const [number, told] of looked.pieces.entries()) {
    const before = told.from === null ? null : digests[told.from];
    const digest = await nameHere(told, before, digests);
    digests.push(digest);
    const mine = (await readNote(`about.${digest}`)) ? await getPiece(digest) : null;
    const there = mine && (await place(digest));
    const from = before === null ? null : await carriedNote(before);
    const goesOn = before === null || !(await readNote(`about.${before}`)) || from?.to === digest;
    const same = mine && goesOn && stepsDone(mine, there) === told.steps_done;
    found.push({
      kind: "piece",
      title: told.title,
      state: same ? "same" : mine || !goesOn ? "otherwise" : "new",
      here: mine ? say("app.keep-place", { done: stepsDone(mine, there), all: told.steps }) : say("app.keep-place-other"),
      there: say("app.keep-place", { done: told.steps_done, all: told.steps }),
      take: () => takePiece(told, number, text, digest, before),
    });
  }
  return found;
}

/** A piece of the same steps and another title is another one; a plan of the rest is named by the plan before it. */
async function nameHere({ digest, title }, before, taken) {
  const root = before === null ? digest : `${digest}.${Number(/\.(\d+)/.exec(before)?.[1] ?? 0) + 1}`;
  for (let n = 1; n <= MOST_ALIKE; n += 1) {
    const name = n === 1 ? root : `${root}-${n}`;
    const about = await readNote(`about.${name}`);
    if (taken.includes(name)) continue;
    if (!about || (about.title === title && (about.from ?? null) === before)) return name;
  }
  return root;
}

async function takePiece(told, number, text, digest, before) {
  const answer = await ask("keep", { ask: "project-piece", text, number: String(number) });
  if (!answer?.piece) return { kept: "none", problems: answer?.problems ?? [] };
  const piece = { ...answer.piece, digest };
  if (before !== null) {
    const old = await getPiece(before);
    const left = (await place(before)) ?? { index: 0, done: 0 };
    const rows = (old?.carried?.rows ?? 0) + (old?.cues[left.index]?.row_before ?? 0) + (left.done ?? 0);
    piece.carried = { from: before, number: (old?.carried?.number ?? 0) + 1, index: left.index, done: left.done ?? 0, rows, at: Date.now() };
  }
  const { kept } = await putPiece(piece);
  if (kept === "none") return { kept };
  const { index, done } = placeAt(piece, told.steps_done);
  const of = told.report && fromReport(told.report, piece, (steps) => placeAt(piece, steps).index);
  const pace = { ...of?.pace, rows: told.row_ms, changes: told.change_ms, pauses: told.pauses.map(([at, ms]) => [Date.parse(at) || 0, ms]) };
  const row = piece.cues[index].row_before + done;
  await setPlace(digest, index, { done, single: false, ticks: [], undo: null, pace, row });
  const notes = Object.fromEntries(told.step_notes.map(([steps, words]) => [placeAt(piece, steps).index, words]));
  if (told.step_notes.length) await keepNote(`notes.${digest}`, { notes });
  if (of) await keepNote(`report.${digest}`, of.note);
  if (before !== null) await keepNote(carriedKey(before), { to: digest, was: digest });
  return { kept };
}

async function yarns(looked) {
  const here = new Map((await shelfYarns()).map((yarn) => [yarn.name, yarn]));
  return looked.yarns.map((yarn) => {
    const mine = here.get(yarn.name);
    return {
      kind: "yarn",
      title: yarn.name,
      state: !mine ? "new" : alike(mine, yarn) ? "same" : "otherwise",
      here: mine ? yarnWords(mine) : "",
      there: yarnWords(yarn),
      take: async () => ({ kept: await putYarns([yarn]) }),
    };
  });
}

const yarnWords = (yarn) => [yarn.colour, yarn.kind, yarn.ball_g, yarn.on_hand_g].filter(Boolean).join(", ");

/** Whether both mean the same yarn, whatever way it was typed: what counts is what the core said of it. */
function alike(mine, yarn) {
  const means = ({ colour, kind = "", rate, on_hand_g = "", stripe = "" }) => [colour, kind, String(Number(rate)), grams(on_hand_g), stripe.trim()].join("|");
  return means(mine) === means(yarn);
}

const grams = (text) => (text ? String(parseFloat(text)) : "");

async function fields(looked) {
  const found = [];
  for (const { calculator, title, inputs } of looked.fields) {
    const mine = (await readNote(`last.${calculator}`))?.inputs;
    const same = mine && JSON.stringify(Object.entries(mine).sort()) === JSON.stringify(Object.entries(inputs).sort());
    found.push({
      kind: "fields",
      title,
      state: !mine ? "new" : same ? "same" : "otherwise",
      here: "",
      there: "",
      take: () => keepNote(`last.${calculator}`, { inputs }),
    });
  }
  return found;
}

/** By their titles; a class that is otherwise here is written over only when it is ticked. */
async function classes(looked) {
  const mine = await listClasses();
  const taken = new Set();
  return looked.classes.map(({ title, text }) => {
    const doc = JSON.parse(text);
    const same = mine.find((one) => sameClass(one.doc, doc));
    const here = same ?? mine.find((one) => one.doc.title === title && !taken.has(one.id));
    if (here) taken.add(here.id);
    const words = (one) => say("app.keep-class-entries", { n: one.entries.length });
    return {
      kind: "class",
      title: title || say("app.class-untitled"),
      state: same ? "same" : here ? "otherwise" : "new",
      here: here ? words(here.doc) : "",
      there: words(doc),
      take: async () => keepClass(doc, here?.id ?? `${Date.now().toString(36)}-${looked.classes.findIndex((one) => one.text === text)}`),
    };
  });
}
