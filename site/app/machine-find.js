// "Where am I?": the places of the piece that fit what is seen, best first, with what differs. The same comparison as
// `wedgework.whereabouts.find`, over the short lists that came with the piece; a test holds both together.

import { say } from "./say.js";
import { place, rangeName } from "./machine-needles.js";

const [YARN, CARRIAGE, NO_ENDS, END, MOST_NEEDLES, WRAP, NO_WRAP, COUNTER] = [8, 8, 6, 2, 8, 3, 1, 1];
const SHOWN = 5;

/**
 * `seen`: {yarn, colour, open, carriage, wrapped, counter}, each null where it was not said. `yarn` is its place in the
 * piece's list (-1 none); `colour` and `open` are [first, last] or [0, 0] for none; `wrapped` is 0 or 1.
 * Gives {fits: [{cue, part, done, weight, differs: [[what, here], ...]}], alike}.
 */
export function findPlaces(sights, seen, near, digits) {
  const fits = sights.map((sight) => {
    const found = differences(sight, seen, digits);
    return { cue: sight[0], part: sight[1], done: sight[2], weight: found.reduce((sum, one) => sum + one[2], 0), differs: found };
  });
  fits.sort((a, b) => a.weight - b.weight || Math.abs(a.cue - near) - Math.abs(b.cue - near));
  const best = fits[0]?.weight;
  const alike = fits.filter((fit) => fit.weight === best).length;
  return { fits: fits.slice(0, best === 0 ? alike : Math.max(alike, SHOWN)), alike };
}

function differences([, , , yarn, c1, c2, o1, o2, side, wrapped, counter], seen, digits) {
  const found = [];
  if (seen.yarn !== null && seen.yarn !== yarn) found.push(["yarn", yarn, YARN]);
  const colour = ends([c1, c2], seen.colour);
  const open = ends([o1, o2], seen.open);
  if (colour) found.push(["colour", [c1, c2], colour]);
  if (open) found.push(["open", [o1, o2], open]);
  if (seen.carriage !== null && seen.carriage !== side) found.push(["carriage", side, CARRIAGE]);
  if (seen.wrapped !== null && seen.wrapped !== wrapped) found.push(["wrapped", wrapped, wrapped < 0 ? NO_WRAP : WRAP]);
  if (seen.counter !== null && (seen.counter - counter) % 10 ** digits) found.push(["counter", counter, COUNTER]);
  return found;
}

function ends(here, seen) {
  if (seen === null) return 0;
  if (!here[0] || !seen[0]) return here[0] === seen[0] ? 0 : NO_ENDS;
  let weight = 0;
  for (const end of [0, 1]) {
    const far = Math.abs(place(here[end]) - place(seen[end]));
    if (far) weight += END + Math.min(far, MOST_NEEDLES);
  }
  return weight;
}

/** One difference as a sentence. */
export function differenceText([what, here], yarns, digits) {
  const words = {
    yarn: () => yarns[here]?.name ?? say("machine.no-yarn"),
    colour: () => needles(here),
    open: () => needles(here),
    carriage: () => say(`machine.side-${here > 0 ? "R" : "L"}`),
    wrapped: () => say(`machine.wrapped-${["none", "no", "yes"][here + 1]}`),
    counter: () => String(here % 10 ** digits).padStart(digits, "0"),
  };
  return say(`machine.differs-${what}`, { here: words[what]() });
}

const needles = (ends) => (ends[0] ? rangeName(ends) : say("machine.no-needle"));
