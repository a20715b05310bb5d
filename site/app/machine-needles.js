// Needles by name, and runs of needles. L and R with no 0 between: L1 and R1 are neighbours.

/** L12, R1, L12-R1: needles as they are named on the bed. */
export const needleName = (n) => (n < 0 ? `L${-n}` : `R${n}`);
export const rangeName = ([first, last]) => (first === last ? needleName(first) : `${needleName(first)}-${needleName(last)}`);

// Places on a line without a gap.
export const place = (n) => (n > 0 ? n - 1 : n);
const atPlace = (line) => (line >= 0 ? line + 1 : line);
export const count = ([first, last]) => place(last) - place(first) + 1;

/** Several lists of runs as one: neighbours joined, from left to right. */
export function together(...lists) {
  const made = [];
  for (const [first, last] of lists.flat().sort((a, b) => a[0] - b[0])) {
    const before = made.at(-1);
    if (before && place(first) <= place(before[1]) + 1) before[1] = Math.max(before[1], last);
    else made.push([first, last]);
  }
  return made;
}

/** The runs of `from` without the needles of `these`. */
export function without(from, these) {
  let left = from.map((run) => run.map(place));
  for (const run of these) {
    const [first, last] = run.map(place);
    left = left.flatMap(([a, b]) => [[a, Math.min(b, first - 1)], [Math.max(a, last + 1), b]].filter(([x, y]) => x <= y));
  }
  return left.map((run) => run.map(atPlace));
}

/** The needle that a person typed: L12, r 3; null where it is none. */
export function needleTyped(text) {
  const found = /^\s*([lr])\s*0*([1-9]\d{0,2})\s*$/i.exec(text);
  return found ? Number(found[2]) * (found[1].toUpperCase() === "L" ? -1 : 1) : null;
}
