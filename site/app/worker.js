// The engine: Python in a worker of its own, with one door. Strings in, strings out (see protocol.js).
//
// There are two ways to start. The quick one puts back the memory of a Python that has imported the core already. It
// rests on a private interface of the runtime, so every part is checked, and the worker is ready only when a question
// whose answer is known was answered right. The plain one loads and imports everything. The worker's name says which
// way it takes, and behind a space the language of its answers, if that is not English; a start that fails is told to
// the page, which ends this worker and begins a plain one (see engine.js).

import { answering, failed, falling, living, read, ready, taking } from "./protocol.js";
import runtime from "./runtime.js";

const top = new URL("../", import.meta.url);
const place = new URL(runtime.pyodide, top).href;
const WASM = `${place}pyodide.asm.wasm`;
const NOTHING = `${place}nothing`; // in the place of the standard library, which the memory has in it
const [way, language = ""] = self.name.split(" ");
const checks = []; // of what was stored, while the rest goes on
const browserFetch = self.fetch.bind(self);

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
  missing(event.reason);
});
self.fetch = async (...asked) => {
  const url = new URL(asked[0]?.url ?? asked[0], place).href;
  if (url === NOTHING) return new Response(new ArrayBuffer(0));
  if (url === WASM) return inflated(runtime.program, "application/wasm");
  return received(await browserFetch(...asked).catch((fault) => {
    missing(fault);
    throw fault;
  }));
};

function received(response) {
  self.postMessage(living());
  if (response.ok) return response;
  const fault = new Error(`${address(response.url)}: ${response.status}`);
  missing(fault);
  throw fault;
}

/** What both ways tell the runtime. */
const settings = {
  indexURL: place,
  // No further packages: the list is there and empty, so that nothing is looked up.
  lockFileContents: JSON.stringify({ info: runtime.info, packages: {} }),
  packageBaseUrl: place,
};

async function startPlain() {
  const core = fetch(new URL(runtime.core, top), { integrity: runtime.integrity }).then((response) => response.arrayBuffer());
  core.catch(() => {}); // it is waited for below
  const { loadPyodide } = await import(`${place}pyodide.mjs`);
  const python = await loadPyodide(settings);
  python.unpackArchive(await core, "wheel");
  return doorOf(python);
}

async function startQuick() {
  const { image } = runtime;
  // Everything begins at once; each is waited for where it is needed.
  const compiled = WebAssembly.compileStreaming(fetch(WASM));
  const parts = image.parts.map((part) => [part.runs, inflated(part).then((response) => response.arrayBuffer())]);
  const scripts = Promise.all([import(`${place}pyodide.mjs`), largeScript()]);
  for (const one of [compiled, scripts, ...parts.map(([, part]) => part)]) one.catch(missing);
  const [{ loadPyodide }, { default: createModule }] = await scripts;
  WebAssembly.instantiateStreaming = async (_, imports) => {
    const module = await compiled;
    return { module, instance: await WebAssembly.instantiate(module, imports) };
  };
  const python = await loadPyodide({
    ...settings,
    stdLibURL: NOTHING,
    _loadSnapshot: headOf(image),
    createPyodideModule: async (given) => {
      const module = await createModule(given);
      const way = module.HEAP32[callingWay(module)];
      if (module.HEAP8.length < image.bytes) module.growMemory(image.bytes);
      for (const [runs, part] of parts) putBack(module.HEAPU8, runs, await part);
      module.HEAP32[callingWay(module)] = way;
      return module;
    },
  });
  return doorOf(python);
}

function putBack(memory, runs, part) {
  let from = 0;
  for (const [at, length] of runs) {
    memory.set(new Uint8Array(part, from, length), at);
    from += length;
  }
}

/** Before anything is stored, the larger script comes compressed, which is a megabyte less; where that is forbidden, as it is. */
async function largeScript() {
  const url = `${place}pyodide.asm.mjs`;
  if ((await fromStore(url)) !== undefined) return import(url);
  try {
    const text = await (await inflated(runtime.script, "text/javascript")).blob();
    return await import(URL.createObjectURL(text));
  } catch {
    return import(url);
  }
}

/** The head alone: the runtime reads from it what JavaScript objects Python holds; the memory is put back in parts. */
function headOf({ head, start }) {
  const bytes = new Uint8Array(start);
  bytes.set(Uint8Array.from(atob(head), (letter) => letter.charCodeAt(0)));
  return bytes;
}

/** Where in memory it stands how this engine calls a function by its pointer. */
const callingWay = (module) => (module.__PyRuntime + module.HEAP32[module.__PyEM_EMSCRIPTEN_TRAMPOLINE_OFFSET >> 2]) >> 2;

/** A compressed file, inflated. The offline copy holds it so already; read past its worker it comes at the disk's speed. */
async function inflated({ address, packed, inflated: whole }, type = "application/octet-stream") {
  const url = new URL(address, top).href;
  const stored = await fromStore(url);
  if (stored?.headers.has("x-inflated")) {
    checks.push(compare(stored.clone(), url, whole));
    return stored;
  }
  // The host, or the offline copy, may have unpacked it already; what matters is that it is one or the other.
  const buffer = await (await fetch(url, { integrity: `${packed} ${whole}` })).arrayBuffer();
  const [first, second] = new Uint8Array(buffer, 0, 2);
  const gzip = first === 0x1f && second === 0x8b;
  const body = gzip ? new Blob([buffer]).stream().pipeThrough(new DecompressionStream("gzip")) : buffer;
  return new Response(body, { headers: { "Content-Type": type } });
}

async function fromStore(url) {
  try {
    return await self.caches?.match(url);
  } catch {
    return undefined;
  }
}

/** What is stored was right when it was stored. If it no longer is, it is thrown away, and the offline copy loads it again. */
async function compare(response, url, whole) {
  const digest = await crypto.subtle.digest("SHA-256", await response.arrayBuffer());
  if (`sha256-${btoa(String.fromCharCode(...new Uint8Array(digest)))}` === whole) return;
  for (const name of await caches.keys()) await (await caches.open(name)).delete(url);
  throw new Error(`${address(url)} has changed since it was stored`);
}

const address = (url) => url.slice(top.href.length);

/** What the core has for us; the words of another language cross over as bytes. */
function doorOf(python) {
  const { answer, speak } = python.pyimport("wedgework.faces.wire");
  return { answer, speak: (name, bytes) => speak(name, python.toPy(bytes)) };
}

async function start() {
  const words = language && inflated(runtime.words[language]).then((response) => response.arrayBuffer());
  if (words) words.catch(missing);
  const { answer, speak } = await Promise.race([way === "plain" ? startPlain() : startQuick(), gone]);
  await Promise.all(checks);
  const { question, answer: right } = runtime.smoke;
  if (answer(question) !== right) throw new Error("the question with a known answer was answered wrongly");
  if (words) speak(language, new Uint8Array(await words));
  return answer;
}

const starting = start();
starting.catch(() => {}); // who asks is told

self.onmessage = async (event) => {
  const asked = read(event.data);
  if (asked === null) return;
  if (!asked.begin) self.postMessage(taking(asked.id));
  try {
    const answer = await starting;
    self.postMessage(asked.begin ? ready() : answering(asked.id, answer(asked.question)));
  } catch (fault) {
    console.info(`The engine: ${fault}`);
    self.postMessage(asked.begin ? failed("not-loaded", String(fault)) : falling(asked.id, String(fault)));
  }
};
