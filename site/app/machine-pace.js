// How long a row takes, and how much time is left: medians of what was measured, kept with the place.

import { moment, say } from "./say.js";

// Longer than this at one step is a pause, not knitting; shorter than this a row is not knitted but leafed through.
export const PAUSE_MS = 5 * 60_000;
export const SHORTEST_MS = 1000;
const ROWS = 20; // the last so many measured steps
const CHANGES = 8;
const PAUSES = 30;
const ENOUGH = 5;

/**
 * The pace after a step forward that left `cue` at `now`, where it was shown at `since`.
 * `pace`: {rows: [ms for one row, ...], changes: [ms, ...], pauses: [[begun, ms], ...]}, the last of each; and of the whole
 * piece {begun, ended, all: ms, breaks: [number, ms], spent: {block: [ms, rows]}}. `done` rows of the cue were knitted
 * before, `to` are now (null where all are).
 */
export function paceAfter(pace, cue, to, done, since, now) {
  const took = now - since;
  const rows = (to ?? cue.rows) - done;
  const noted = { ...pace, begun: pace.begun ?? now, ended: now };
  if (took > PAUSE_MS) {
    const [n, ms] = pace.breaks ?? [0, 0];
    return { ...noted, pauses: [...(pace.pauses ?? []), [since, took]].slice(-PAUSES), breaks: [n + 1, ms + took] };
  }
  if (took / Math.max(1, rows) < SHORTEST_MS) return pace;
  const [ms, knitted] = pace.spent?.[cue.block] ?? [0, 0];
  const whole = { ...noted, all: (pace.all ?? 0) + took, spent: { ...pace.spent, [cue.block]: [ms + took, knitted + Math.max(0, rows)] } };
  if (rows > 0) return { ...whole, rows: [...(pace.rows ?? []), Math.round(took / rows)].slice(-ROWS) };
  return { ...whole, changes: [...(pace.changes ?? []), took].slice(-CHANGES) };
}

export function median(values) {
  const sorted = values.toSorted((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 ? sorted[half] : (sorted[half - 1] + sorted[half]) / 2;
}

/** {row, left}: milliseconds for a row and for the rest of the piece; null before enough is measured. */
export function timeLeft({ rows = [], changes = [] }, cues, index, done) {
  if (rows.length < ENOUGH) return null;
  const rest = cues.slice(index);
  const lists = rest.filter((cue) => !cue.rows).length;
  const rowsLeft = cues.at(-1).row_after - cues[index].row_before - done;
  return { row: median(rows), left: rowsLeft * median(rows) + (changes.length ? lists * median(changes) : 0) };
}

/** The pace in a few words, "14 s a row, 3 h 40 min left"; empty before there is one. */
export function paceText(pace, cues, index, done) {
  const found = timeLeft(pace, cues, index, done);
  return found ? say("machine.pace", { row: seconds(found.row), left: hours(found.left) }) : "";
}

/** The same in whole sentences, with the pauses. */
export function paceSentences(pace, cues, index, done) {
  const found = timeLeft(pace, cues, index, done);
  const said = [found ? say("machine.pace-said", { n: pace.rows.length, row: seconds(found.row), left: hours(found.left) }) : say("machine.pace-none")];
  if (found && !pace.changes?.length) said.push(say("machine.pace-no-changes"));
  const pauses = pace.pauses ?? [];
  if (pauses.length) {
    const [begun, ms] = pauses.at(-1);
    const when = moment(begun);
    said.push(say("machine.pauses", { n: pauses.length, all: hours(pauses.reduce((sum, one) => sum + one[1], 0)), when, last: hours(ms) }));
  }
  return said;
}

function seconds(ms) {
  return say("machine.seconds", { n: Math.round(ms / 1000) });
}

function hours(ms) {
  const minutes = Math.max(1, Math.round(ms / 60_000));
  if (minutes < 60) return say("machine.minutes", { n: minutes });
  return say("machine.hours", { h: Math.floor(minutes / 60), n: minutes % 60 });
}
