// The drawing that the board holds, as a value: {shapes, rest, sheet}. `rest` is the design file without its shapes, `sheet` is
// what the core says of its size: {needles, rows, stitch, row}. No function changes what it is given.

export function docOf({ design, needles, rows, stitch, row }) {
  const { shapes, ...layout } = design.layout;
  return { shapes, rest: { ...design, layout }, sheet: { needles, rows, stitch, row } };
}

/** The design as its file holds it. */
export const designOf = (doc) => ({ ...doc.rest, layout: { ...doc.rest.layout, shapes: doc.shapes } });

export const yarnOf = (doc, id) => doc.rest.yarns.find((yarn) => yarn.id === id) ?? doc.rest.yarns[0];
export const put = (doc, at, ...shapes) => ({ ...doc, shapes: doc.shapes.toSpliced(at, 1, ...shapes) });
export const add = (doc, ...shapes) => ({ ...doc, shapes: [...doc.shapes, ...shapes] });
export const without = (doc, at) => ({ ...doc, shapes: doc.shapes.toSpliced(at, 1) });
export const withRest = (doc, changes) => ({ ...doc, rest: { ...doc.rest, ...changes } });
export const withGround = (doc, background) => withRest(doc, { layout: { ...doc.rest.layout, background } });

/** The shape one place further up, or down. */
export function moved(doc, at, by) {
  const to = Math.max(0, Math.min(doc.shapes.length - 1, at + by));
  const shapes = doc.shapes.toSpliced(at, 1);
  shapes.splice(to, 0, doc.shapes[at]);
  return { doc: { ...doc, shapes }, at: to };
}

export function withYarn(doc, id, changes) {
  return withRest(doc, { yarns: doc.rest.yarns.map((yarn) => (yarn.id === id ? { ...yarn, ...changes } : yarn)) });
}

/** A yarn more, with an id that is free. */
export function moreYarn(doc, name, colour) {
  let number = doc.rest.yarns.length + 1;
  while (doc.rest.yarns.some((yarn) => yarn.id === `yarn-${number}`)) number += 1;
  const yarn = { id: `yarn-${number}`, name: name(number), colour };
  return { doc: withRest(doc, { yarns: [...doc.rest.yarns, yarn] }), id: yarn.id };
}

/** Without a yarn that nothing is drawn in; the same drawing where something is. */
export function lessYarn(doc, id) {
  const used = doc.rest.layout.background === id || doc.shapes.some((shape) => shape.yarn === id);
  const { base_yarn_bottom: bottom, base_yarn_top: top } = doc.rest.options ?? {};
  if (used || bottom === id || top === id || doc.rest.yarns.length < 2) return doc;
  return withRest(doc, { yarns: doc.rest.yarns.filter((yarn) => yarn.id !== id) });
}

/** A change that the core offered, laid over the drawing that it was offered for. */
export function changed(doc, { shapes, options }) {
  const made = [...doc.shapes];
  for (const [at, shape] of shapes) made[at] = shape;
  return { ...doc, shapes: made, rest: { ...doc.rest, options: { ...doc.rest.options, ...options } } };
}
