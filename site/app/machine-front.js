// A small picture of the finished front, filled as far as it is knitted. The numbers come with the piece (`picture`).

import { svg } from "./say.js";

/** Makes the picture once; gives back the svg element and a function that fills it up to a row of the piece. */
export function frontPicture(piece) {
  const { box, cell, parts } = piece.picture;
  const [wide, tall] = [box[0] * cell[0], box[1] * cell[1]];
  const x = (column) => column * cell[0];
  const y = (row) => tall - row * cell[1];
  const colours = new Map(piece.yarns.map((yarn) => [yarn.id, yarn.colour]));
  const blocks = parts.map((part) => ({
    part,
    first: Math.min(...part.columns.map((column) => column[3])),
    last: Math.max(...part.columns.map((column) => column[4])),
    path: svg("path", { fill: colours.get(part.yarn) ?? "#b8b8b8", "shape-rendering": "crispEdges" }),
    upTo: -1,
    tops: [],
  }));
  const edge = svg("path", { class: "f-edge", fill: "none" });
  const here = svg("path", { class: "f-here", fill: "none" });
  const number = svg("text", { class: "f-number", "font-size": Math.round(Math.max(wide, tall) / 9), dy: "0.35em" });
  const outline = (part) => part.outline.map((loop) => `M${loop.map(([c, r]) => `${x(c)} ${y(r)}`).join("L")}Z`).join("");
  const hatch = svg("pattern", { id: "m-waits", width: 9, height: 9, patternUnits: "userSpaceOnUse", patternTransform: `scale(${Math.round(tall / 180)})` }, svg("path", { class: "f-waits", d: "M0 9L9 0M-2 2L2 -2M7 11L11 7" }));
  const picture = svg(
    "svg",
    { class: "f-picture", viewBox: `0 0 ${wide} ${tall}`, role: "img", "aria-label": "" },
    svg("defs", {}, hatch),
    ...parts.map((part) => svg("path", { fill: colours.get(part.yarn) ?? "#b8b8b8", "fill-opacity": 0.4, d: outline(part) })),
    svg("rect", { width: wide, height: tall, fill: "url(#m-waits)" }),
    ...blocks.map((block) => block.path),
    svg("path", { class: "f-blocks", fill: "none", d: parts.map(outline).join("") }),
    here,
    edge,
    number,
  );

  /** A block that is whole, or not begun, is drawn once and left alone. */
  const fillBlock = (block, row) => {
    const upTo = Math.max(block.first - 1, Math.min(block.last, row));
    if (upTo === block.upTo) return;
    block.upTo = upTo;
    block.tops = [];
    let d = "";
    for (const [column, low, rows, first, last] of block.part.columns) {
      if (upTo < first) continue;
      const done = upTo >= last ? rows : Math.min(rows, upTo - first + 1);
      d += `M${x(column)} ${y(low)}h${cell[0]}V${y(low + done)}h${-cell[0]}Z`;
      block.tops.push([column, low + done]);
    }
    block.path.setAttribute("d", d);
  };

  let marked = null;
  const fill = (row, now, words) => {
    const tops = new Array(box[0]).fill(0);
    for (const block of blocks) {
      fillBlock(block, row);
      for (const [column, top] of block.tops) if (top > tops[column]) tops[column] = top;
    }
    edge.setAttribute("d", row ? tops.map((top, column) => `${column ? "L" : "M"}${x(column)} ${y(top)}H${x(column + 1)}`).join("") : "");
    const part = parts.find((one) => one.block === now);
    if (part !== marked) {
      marked = part;
      here.setAttribute("d", part && part.number ? outline(part) : "");
      number.textContent = part && part.number ? String(part.number) : "";
      if (part) {
        number.setAttribute("x", x(part.at[0]));
        number.setAttribute("y", y(part.at[1]));
      }
    }
    picture.setAttribute("aria-label", words);
  };
  return { picture, fill };
}
