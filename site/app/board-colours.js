// A picture's pixels as cells of a few colours. Runs in a worker of its own, so that drawing goes on; as plain functions too.
//
//   {width, height, pixels, across, up, colours}  ->  {colours: ["#rrggbb", ...], cells: "aab\n..."}
//
// The picture is laid over the sheet, `across` cells wide and `up` high. A cell has the colour that most of its pixels are
// nearest to. The colours are the most frequent ones where there are few, else the middles of groups that lie near each other.

const LETTERS = "abcdefghijklmnopqrstuvwxyz";
const MOST_SAMPLES = 20_000;
const ROUNDS = 12;

export function cellsOf({ width, height, pixels, across, up, colours }) {
  const few = frequent(pixels, colours);
  const palette = few ?? grouped(pixels, colours);
  const nearest = new Map();
  const lines = [];
  const used = new Map(); // place in the palette -> letter, in the order of the cells
  for (let t = 0; t < up; t += 1) {
    const row = [];
    const [top, bottom] = span(t, up, height);
    for (let x = 0; x < across; x += 1) {
      const [left, right] = span(x, across, width);
      const votes = new Array(palette.length).fill(0);
      for (let py = top; py < bottom; py += 1) {
        for (let px = left; px < right; px += 1) {
          const at = 4 * (py * width + px);
          const key = (pixels[at] << 16) | (pixels[at + 1] << 8) | pixels[at + 2];
          let found = nearest.get(key);
          if (found === undefined) {
            found = near(palette, pixels[at], pixels[at + 1], pixels[at + 2]);
            nearest.set(key, found);
          }
          votes[found] += 1;
        }
      }
      row.push(votes.indexOf(Math.max(...votes)));
    }
    lines.push(row);
  }
  // Lightest first, so that the first yarn is the light one whatever the order of the pixels.
  const kept = [...new Set(lines.flat())].sort((a, b) => light(palette[b]) - light(palette[a]));
  kept.forEach((colour, i) => used.set(colour, LETTERS[i]));
  return { colours: kept.map((i) => hex(palette[i])), cells: lines.map((row) => row.map((i) => used.get(i)).join("")).join("\n") };
}

/** The pixels of a cell, at least one. */
function span(at, count, size) {
  const from = Math.min(size - 1, Math.floor((at * size) / count));
  return [from, Math.max(from + 1, Math.floor(((at + 1) * size) / count))];
}

/** The colours themselves, where nearly all pixels have one of so few; null for a photograph. */
function frequent(pixels, most) {
  const counts = new Map();
  const step = 4 * Math.max(1, Math.floor(pixels.length / 4 / MOST_SAMPLES));
  let all = 0;
  for (let at = 0; at < pixels.length; at += step) {
    const key = (pixels[at] << 16) | (pixels[at + 1] << 8) | pixels[at + 2];
    counts.set(key, (counts.get(key) ?? 0) + 1);
    all += 1;
  }
  const best = [...counts].sort((a, b) => b[1] - a[1]).slice(0, most);
  const held = best.reduce((sum, [, count]) => sum + count, 0);
  if (held < 0.9 * all) return null;
  return best.filter(([, count]) => count > all / 2000).map(([key]) => [key >> 16, (key >> 8) & 255, key & 255]);
}

/** Middles of groups: begun with pixels far from each other, then moved to the mean of what is nearest, a few times. */
function grouped(pixels, count) {
  const step = 4 * Math.max(1, Math.floor(pixels.length / 4 / MOST_SAMPLES));
  const samples = [];
  for (let at = 0; at < pixels.length; at += step) samples.push([pixels[at], pixels[at + 1], pixels[at + 2]]);
  const middles = [mean(samples)];
  while (middles.length < count) {
    let [far, best] = [-1, samples[0]];
    for (const one of samples) {
      const away = Math.min(...middles.map((middle) => distance(middle, ...one)));
      if (away > far) [far, best] = [away, one];
    }
    middles.push(best);
  }
  for (let round = 0; round < ROUNDS; round += 1) {
    const groups = middles.map(() => []);
    for (const one of samples) groups[near(middles, ...one)].push(one);
    groups.forEach((group, i) => group.length > 0 && (middles[i] = mean(group)));
  }
  return middles.map((middle) => middle.map(Math.round));
}

const mean = (group) => [0, 1, 2].map((i) => group.reduce((sum, one) => sum + one[i], 0) / group.length);

/** How different two colours look, roughly: green counts most. */
const distance = ([r, g, b], r2, g2, b2) => 3 * (r - r2) ** 2 + 6 * (g - g2) ** 2 + (b - b2) ** 2;
const light = ([r, g, b]) => 3 * r + 6 * g + b;
const hex = (colour) => `#${colour.map((part) => part.toString(16).padStart(2, "0")).join("")}`;

function near(palette, r, g, b) {
  let [best, least] = [0, Infinity];
  for (let i = 0; i < palette.length; i += 1) {
    const away = distance(palette[i], r, g, b);
    if (away < least) [best, least] = [i, away];
  }
  return best;
}

if (typeof document === "undefined") {
  self.onmessage = ({ data }) => self.postMessage(cellsOf(data));
}
