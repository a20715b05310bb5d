// The page about embedding: what is chosen becomes a snippet, and the frame itself is shown below. It is measured by asking it
// for its height, as any page may (see embed.js).

import { TOP } from "./places.js";

const NEAR = 40; // px: heights are said in steps, with room for the engine's own line
const SANDBOX = "allow-scripts allow-same-origin allow-popups allow-popups-to-escape-sandbox";
const VALUES = /#(w[0-9]{1,4}\.[A-Za-z0-9_-]{1,4096})\s*$/;
const HOST = /^https?:\/\/[^\s"'<>]+$/i;

export function pickEmbed(box) {
  const form = box.querySelector("form");
  const said = form.querySelector("[role=status]");
  const { slug, place, width, height, address, link, snippet } = form.elements;
  let frame = null;
  let measured = true; // until a height is typed
  address.value = TOP.href;

  const values = () => VALUES.exec(link.value)?.[0].trim() ?? "";
  const below = () => `${place.value}embed/${slug.value}/${values()}`;

  const write = () => {
    const top = HOST.test(address.value.trim()) ? address.value.trim().replace(/\/*$/, "/") : TOP.href;
    const title = slug.selectedOptions[0].textContent;
    const size = `width="${width.value || "100%"}" height="${Number.parseInt(height.value, 10) || 900}"`;
    snippet.value = `<iframe src="${top}${below()}" title="${title}" ${size} loading="lazy" sandbox="${SANDBOX}" referrerpolicy="no-referrer"></iframe>`;
    said.textContent = "";
  };

  /**
   * A frame of its own for each choice: going from one address to another would leave its trace in the way back. It has no
   * sandbox, which is no wall for a page of one's own.
   */
  const show = () => {
    frame?.remove();
    frame = document.createElement("iframe");
    frame.title = slug.selectedOptions[0].textContent;
    frame.width = width.value || "100%";
    frame.height = 900;
    frame.src = new URL(below(), TOP).href;
    frame.addEventListener("load", ({ target }) => target.contentWindow?.postMessage(1, TOP.origin));
    box.append(frame);
    write();
  };

  addEventListener("message", ({ source, data }) => {
    if (source !== frame?.contentWindow || !Number.isInteger(data) || data < 1 || data > 100_000) return;
    const near = Math.ceil((data + NEAR / 2) / NEAR) * NEAR;
    frame.height = near;
    if (measured) height.value = near;
    write();
  });

  form.addEventListener("input", ({ target }) => {
    if (target === height) measured = height.value.trim() === "";
    if ([slug, place, width, link].includes(target)) show();
    else write();
  });
  form.addEventListener("submit", (event) => event.preventDefault());
  form.querySelector("[data-copy-snippet]").addEventListener("click", async () => {
    try {
      await navigator.clipboard.writeText(snippet.value);
      said.textContent = said.dataset.said;
    } catch {
      snippet.select();
      said.textContent = said.dataset.byHand;
    }
  });

  box.querySelector("[data-without]").remove();
  form.hidden = false;
  box.querySelector(".ww-embed-seen").hidden = false;
  show();
}
