// Polygons: plain geometry, nothing of knitting. A shape is {yarn, points, holes}; a point is [x, y], y upward.

const FINE = 1e6; // places beside needles and rows are kept to a millionth, as files keep them

export const fine = (value) => Math.round(value * FINE) / FINE || 0;
export const rings = (shape) => [shape.points, ...(shape.holes ?? [])];
export const withRings = (shape, made) => ({ ...shape, points: made[0], holes: made.slice(1) });
export const mapped = (shape, move) => withRings(shape, rings(shape).map((ring) => ring.map(([x, y]) => move(x, y).map(fine))));
export const shifted = (shape, dx, dy) => mapped(shape, (x, y) => [x + dx, y + dy]);
export const same = (a, b) => a[0] === b[0] && a[1] === b[1];

export function box(shape) {
  const xs = shape.points.map(([x]) => x);
  const ys = shape.points.map(([, y]) => y);
  return { left: Math.min(...xs), right: Math.max(...xs), low: Math.min(...ys), high: Math.max(...ys) };
}

/** Mirrored in place: left and right, up and down, or both, which is half a turn. */
export function turned(shape, across, up) {
  const { left, right, low, high } = box(shape);
  return mapped(shape, (x, y) => [across ? left + right - x : x, up ? low + high - y : y]);
}

export function area(ring) {
  let sum = 0;
  ring.forEach(([x, y], i) => {
    const [nx, ny] = ring[(i + 1) % ring.length];
    sum += x * ny - y * nx;
  });
  return sum / 2;
}

/** Whether a place lies in the shape; openings do not count. */
export function inside(shape, x, y) {
  let within = false;
  for (const ring of rings(shape)) {
    for (let i = 0, k = ring.length - 1; i < ring.length; k = i, i += 1) {
      const [[ax, ay], [bx, by]] = [ring[i], ring[k]];
      if (ay > y !== by > y && x < ax + ((bx - ax) * (y - ay)) / (by - ay)) within = !within;
    }
  }
  return within;
}

const side = (a, b, p) => Math.sign((b[0] - a[0]) * (p[1] - a[1]) - (b[1] - a[1]) * (p[0] - a[0]));

/** Whether two edges of the ring cross, or lie on each other; and whether it encloses nothing. */
export function tangled(ring) {
  if (ring.length < 3 || Math.abs(area(ring)) < 1 / FINE) return true;
  const edges = ring.map((a, i) => [a, ring[(i + 1) % ring.length]]).filter(([a, b]) => !same(a, b));
  for (let i = 0; i < edges.length; i += 1) {
    for (let k = i + 1; k < edges.length; k += 1) if (meet(...edges[i], ...edges[k])) return true;
  }
  return false;
}

function meet(a, b, c, d) {
  const axis = a[0] === b[0] ? 1 : 0;
  if (Math.max(Math.min(a[0], b[0]), Math.min(c[0], d[0])) > Math.min(Math.max(a[0], b[0]), Math.max(c[0], d[0]))) return false;
  const [sc, sd] = [side(a, b, c), side(a, b, d)];
  if (sc === 0 && sd === 0) {
    return Math.max(Math.min(a[axis], b[axis]), Math.min(c[axis], d[axis])) < Math.min(Math.max(a[axis], b[axis]), Math.max(c[axis], d[axis]));
  }
  return sc * sd < 0 && side(c, d, a) * side(c, d, b) < 0;
}

/** The nearest place of an edge to a point, with its share of the way. */
export function onEdge([ax, ay], [bx, by], x, y, wide = 1, high = 1) {
  const [dx, dy] = [(bx - ax) * wide, (by - ay) * high];
  const long = dx * dx + dy * dy;
  const part = long === 0 ? 0 : Math.max(0, Math.min(1, ((x - ax) * wide * dx + (y - ay) * high * dy) / long));
  return { x: ax + (bx - ax) * part, y: ay + (by - ay) * part, part };
}

/** The shape cut along the line through two places: its pieces, or null where the line misses it or meets an opening. */
export function cut(shape, from, to) {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const off = ([x, y]) => dx * (y - from[1]) - dy * (x - from[0]);
  const left = (point) => off(point) >= 0;
  if ((shape.holes ?? []).some((hole) => hole.some(left) && !hole.every(left))) return null;
  const ring = [];
  const marks = []; // places where the outline changes sides
  shape.points.forEach((point, i) => {
    const next = shape.points[(i + 1) % shape.points.length];
    ring.push(point);
    if (left(point) === left(next)) return;
    const [a, b] = [off(point), off(next)];
    const mark = a === 0 ? point : b === 0 ? next : [fine(point[0] + ((next[0] - point[0]) * a) / (a - b)), fine(point[1] + ((next[1] - point[1]) * a) / (a - b))];
    const node = [...mark];
    marks.push(node);
    ring.push(node);
  });
  if (marks.length < 2) return null;
  marks.sort((a, b) => dx * (a[0] - b[0]) + dy * (a[1] - b[1]));
  let pieces = [ring];
  for (let i = 0; i + 1 < marks.length; i += 2) {
    pieces = pieces.flatMap((piece) => {
      const [one, other] = [piece.indexOf(marks[i]), piece.indexOf(marks[i + 1])].sort((a, b) => a - b);
      if (one < 0) return [piece];
      // Each half has its own copy of the two places, so that later cuts find theirs.
      return [piece.slice(one, other + 1), [...piece.slice(other), ...piece.slice(0, one + 1)]];
    });
  }
  const whole = pieces.map(tidy).filter((piece) => piece.length >= 3 && Math.abs(area(piece)) > 1 / FINE);
  if (whole.length < 2) return null;
  return whole.map((points) => ({ ...shape, points, holes: (shape.holes ?? []).filter((hole) => inside({ points }, ...hole[0])) }));
}

/** Without places that repeat the one before. */
export function tidy(ring) {
  return ring.filter((point, i) => !same(point, ring[(i + ring.length - 1) % ring.length])).map(([x, y]) => [x, y]);
}
