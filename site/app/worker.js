// The engine: Python in a worker of its own, with one door. Strings in, strings out (see protocol.js).

import { answering, failed, falling, read, ready } from "./protocol.js";
import runtime from "./runtime.js";

const top = new URL("../", import.meta.url);

// A tablet that calls itself a desktop is told apart by its fingers, which a worker is not shown. Without this the
// runtime would start there in a way that such a tablet cannot follow.
if (navigator.platform === "MacIntel" && navigator.maxTouchPoints === undefined) {
  Object.defineProperty(navigator, "maxTouchPoints", { value: 5 });
}

async function start() {
  const place = new URL(runtime.pyodide, top).href;
  const core = fetch(new URL(runtime.core, top), { integrity: runtime.integrity }).then((response) => response.arrayBuffer());
  core.catch(() => {}); // it is waited for below
  const { loadPyodide } = await import(`${place}pyodide.mjs`);
  const python = await loadPyodide({
    indexURL: place,
    // No further packages: the list is there and empty, so that nothing is looked up.
    lockFileContents: JSON.stringify({ info: runtime.info, packages: {} }),
    packageBaseUrl: place,
  });
  python.unpackArchive(await core, "wheel");
  return python.pyimport("wedgework.faces.wire").answer;
}

const starting = start();

self.onmessage = async (event) => {
  const asked = read(event.data);
  if (asked === null) return;
  try {
    const answer = await starting;
    self.postMessage(answering(asked.id, answer(asked.question)));
  } catch (fault) {
    self.postMessage(falling(asked.id, String(fault)));
  }
};

starting.then(
  () => self.postMessage(ready()),
  (fault) => {
    console.info(`The engine did not start: ${fault}`);
    self.postMessage(failed("not-loaded"));
  },
);
