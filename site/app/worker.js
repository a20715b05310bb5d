// The engine: Python in a worker of its own, with one door. Strings in, strings out (see protocol.js).

import { answering, failed, falling, read, ready } from "./protocol.js";
import runtime from "./runtime.js";

const top = new URL("../", import.meta.url);

// A tablet that calls itself a desktop is told apart by its fingers, which a worker is not shown. Without this the
// runtime would start there in a way that such a tablet cannot follow.
if (navigator.platform === "MacIntel" && navigator.maxTouchPoints === undefined) {
  Object.defineProperty(navigator, "maxTouchPoints", { value: 5 });
}

// A part that does not come makes the runtime wait forever, so what it fetches is watched.
let missing;
const gone = new Promise((_, reject) => (missing = reject));
gone.catch(() => {});
self.addEventListener("unhandledrejection", (event) => {
  event.preventDefault();
  console.info(`The engine: ${event.reason}`);
  missing(event.reason);
});
const browserFetch = self.fetch;
self.fetch = async (...asked) => {
  const response = await browserFetch(...asked).catch((fault) => {
    missing(fault);
    throw fault;
  });
  if (!response.ok) missing(new Error(`${response.url}: ${response.status}`));
  return response;
};

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

const starting = Promise.race([start(), gone]);

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
