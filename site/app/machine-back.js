// Taking rows back: from where the work stands to the place so many rows before, within one block.

import { say, sayN } from "./say.js";
import { place, rangeName, together, without } from "./machine-needles.js";

const LISTED = 8;

/** How many rows of the block can be taken back: those that were knitted on end, with no other block between. */
export function mostRows(cues, at) {
  const { index, done } = standing(cues, at);
  let most = done;
  for (let n = index - 1; cues[n]?.block === cues[index].block; n -= 1) most += cues[n].rows;
  return most;
}

/** A check list that is not done yet stands at the end of what was knitted before it. */
function standing(cues, { index, done }) {
  if (!cues[index].rows && cues[index - 1]?.rows) return { index: index - 1, done: cues[index - 1].rows };
  return { index, done };
}

/** {to: {index, done}, steps: [sentence, ...]} for `n` rows back from `at`; `n` from 1 to `mostRows`. */
export function takeBack(cues, at, n) {
  const from = standing(cues, at);
  const passes = [];
  let { index, done } = from;
  while (passes.length < n) {
    while (!done) {
      index -= 1;
      done = cues[index].rows;
    }
    done -= 1;
    passes.push({ cue: cues[index], nth: done });
  }
  const to = { index, done };
  const cue = cues[index];
  const [now, then] = [bedAt(cues, from), bedAt(cues, to)];
  const steps = [];
  if (at.index !== from.index) steps.push(say("machine.back-cut"));
  const moves = cues[at.index].now.filter((one) => one.needles);
  if (!at.done && at.index === from.index && moves.length) {
    const { holding, returning } = cues[at.index].bed;
    const back = [...holding.map((run) => `${rangeName(run)} ${say("machine.to-uwp")}`), ...returning.map((run) => `${rangeName(run)} ${say("machine.to-hp")}`)];
    steps.push(say("machine.back-unmove", { moves: back.join(", ") }));
  }
  steps.push(say("machine.back-begin"));
  for (const pass of passes.slice(0, LISTED)) {
    const ended = sideAt(pass.cue, pass.nth) === "R" ? "L" : "R";
    steps.push(say(`machine.back-row-${ended}`, { needles: ends(together(pass.cue.bed.knitting, pass.cue.bed.returning)) }));
  }
  if (passes.length > LISTED) steps.push(say("machine.back-more", { n: passes.length - LISTED }));
  const side = sideAt(cue, to.done);
  const all = !then.held.length;
  if (n % 2) {
    steps.push(sayN("machine.back-free", n, { side: say(`machine.side-${side}`) }));
    steps.push(say(all ? "machine.back-all-work" : "machine.back-after-free", { needles: list(then.open) }));
  } else {
    const hold = without(now.open, then.open);
    const open = without(then.open, now.open);
    if (hold.length) steps.push(say("machine.back-hold", { needles: list(hold) }));
    if (open.length) steps.push(say("machine.back-return", { needles: list(open) }));
  }
  steps.push(say("machine.back-clear", { side: say(`machine.side-${side}`) }));
  const where = to.done ? cue.passes[to.done].where : cue.where;
  steps.push(say("machine.back-counter", { counter: /\d+/.exec(where)[0] }));
  if (!all) steps.push(say("machine.back-see", { needles: list(then.open) }));
  return { to, steps };
}

/** Which needles are open and which are held at a place: before the moves of its step, or after some of its rows. */
export function bedAt(cues, { index, done }) {
  const { knitting, held, returning, holding } = cues[index].bed;
  if (done) return { open: together(knitting, returning), held: together(held, holding) };
  return { open: together(knitting, holding), held: together(held, returning) };
}

const sideAt = (cue, done) => (done ? (cue.passes[done]?.carriage ?? cue.carriage_after) : cue.to === "L" ? "R" : "L");
const list = (runs) => runs.map(rangeName).join(", ");
const ends = (runs) => rangeName([runs[0][0], runs.at(-1)[1]].toSorted((a, b) => place(a) - place(b)));
