// What is kept for a report of one plan, as the core's report has it, and back: in a file for the designer and in a project file.
//
// The note `report.DIGEST`: {mishaps: [{kind, index}], counts: [{planned, counted, index}], typed: {field: text}}. The time is in
// the pace, which is kept with the place (machine-pace.js).

import { readNote } from "./store.js";

const MOST = 1000; // of anything that is told
const MINUTE = 60_000;
const LONGEST_TEXT = 5000;
const MOST_GRAMS = 100_000;
const GRAMS = /^\d{1,6}([.,]\d{1,3})?$/;

/** What was noted under "Trouble" for the piece, and what was typed for its report. */
export const noted = async (digest) => ({ mishaps: [], counts: [], typed: {}, ...(await readNote(`report.${digest}`)) });

/** The times of a report. */
export function timesOf(pace) {
  return {
    begun: day(pace.begun),
    ended: day(pace.ended),
    minutes: minutes(pace.all ?? 0),
    interruptions: pace.breaks?.[0] ?? 0,
    interruption_minutes: minutes(pace.breaks?.[1] ?? 0),
  };
}

/** {place, block} of a step of the page at the machine. */
export const placeOf = (piece, index) => ({ steps_done: Math.max(0, piece.cues[index]?.first_step ?? 0), block: piece.cues[index]?.block ?? "" });

/** The report of one plan, without the notes at its steps. Grams that cannot be are left out, and told in `wrong`. */
export function reportOf(piece, { digest, steps_done, pace, note }) {
  const blocks = new Set(piece.blocks.map((block) => block.id));
  const spent = Object.entries(pace.spent ?? {}).filter(([block]) => blocks.has(block));
  const texts = piece.yarns.map((yarn, n) => [yarn.id, (note.typed[`grams-${n}`] ?? "").trim()]).filter(([, text]) => text);
  const yarns = texts.map(([yarn, text]) => ({ yarn, grams: GRAMS.test(text) ? Number(text.replace(",", ".")) : NaN })).filter(({ grams }) => grams <= MOST_GRAMS);
  const report = {
    title: piece.title,
    digest,
    steps: piece.plan?.steps.length ?? piece.cues.at(-1).last_step + 1,
    steps_done,
    knitter: (note.typed["report-name"] ?? "").trim().slice(0, 100),
    ...timesOf(pace),
    blocks: spent.map(([block, [ms, rows]]) => ({ block, minutes: minutes(ms), rows })),
    mishaps: note.mishaps.slice(-MOST).map(({ kind, index }) => ({ kind, ...placeOf(piece, index) })),
    counts: note.counts.slice(-MOST).map(({ planned, counted, index }) => ({ planned, counted, ...placeOf(piece, index) })),
    yarns,
    text: (note.typed["report-text"] ?? "").trim().slice(0, LONGEST_TEXT),
  };
  return { report, wrong: yarns.length < texts.length };
}

/** Whether there is anything in a report that would be lost without it. */
export const saysSomething = ({ minutes: all, interruptions, mishaps, counts, yarns, knitter, text }) =>
  Boolean(all || interruptions || mishaps.length || counts.length || yarns.length || knitter || text);

/** {pace, note} from a report of the core; `indexAt` gives the step of the page where so many steps of the plan are done. */
export function fromReport(report, piece, indexAt) {
  const pace = {
    ...(report.begun ? { begun: noon(report.begun) } : {}),
    ...(report.ended ? { ended: noon(report.ended) } : {}),
    all: milliseconds(report.minutes),
    breaks: [report.interruptions, milliseconds(report.interruption_minutes)],
    spent: Object.fromEntries(report.blocks.map(({ block, minutes: spent, rows }) => [block, [milliseconds(spent), rows]])),
  };
  const typed = {};
  if (report.knitter) typed["report-name"] = report.knitter;
  if (report.text) typed["report-text"] = report.text;
  for (const { yarn, grams } of report.yarns) {
    const n = piece.yarns.findIndex((one) => one.id === yarn);
    if (n >= 0) typed[`grams-${n}`] = String(grams);
  }
  const mishaps = report.mishaps.map(({ kind, steps_done }) => ({ kind, index: indexAt(steps_done) }));
  const counts = report.counts.map(({ planned, counted, steps_done }) => ({ planned, counted, index: indexAt(steps_done) }));
  return { pace, note: { mishaps, counts, typed } };
}

const minutes = (ms) => Math.round(ms / (MINUTE / 100)) / 100;
const milliseconds = (all) => Math.round(all * MINUTE);

function day(ms) {
  if (!ms) return "";
  const date = new Date(ms);
  return [date.getFullYear(), date.getMonth() + 1, date.getDate()].map((n) => String(n).padStart(2, "0")).join("-");
}

/** A day without its hour, wherever the device was: the middle of it here. */
const noon = (words) => Date.parse(`${words}T12:00:00`) || 0;
