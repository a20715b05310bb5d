// The memory of a Python that has just imported the whole core: what a tablet starts from, instead of importing again.
//
//   node snapshot.mjs PYODIDE CORE FOLDER        writes heap.bin, fresh.bin and heap.json into FOLDER
//
// Two runs give the same bytes: clock, chance and the order of hashes are held still. The image is made by the pinned
// Pyodide and can be read by no other; it is laid out for every browser, since what one engine has and another lacks (a
// pointer to a faster way of calling) is taken out of it.

import crypto from "node:crypto";
import { readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [pyodide, core, folder] = process.argv.slice(2);
// Without this Node prints the line that failed, which in the runtime is a line of a megabyte.
process.on("uncaughtException", (fault) => {
  console.error(fault.stack ?? fault);
  process.exit(70);
});
holdStill();
const { loadPyodide } = await import(pathToFileURL(join(pyodide, "pyodide.mjs")));
const { info } = JSON.parse(readFileSync(join(pyodide, "pyodide-lock.json")));
const settings = {
  indexURL: pyodide,
  env: { PYTHONHASHSEED: "0", PYTHONDONTWRITEBYTECODE: "1", TZ: "UTC", LANG: "C.UTF-8" },
  lockFileContents: JSON.stringify({ info, packages: {} }),
  packageBaseUrl: "/",
};
const script = (name) => readFileSync(new URL(`heap/${name}.py`, import.meta.url), "utf8");

// A first Python compiles everything, so that no trace of compiling lies in the memory of the second.
const compiled = join(folder, "compiled.zip");
{
  const python = await loadPyodide(settings);
  python.FS.writeFile("/stdlib.zip", readFileSync(join(pyodide, "python_stdlib.zip")));
  python.FS.writeFile("/core.zip", readFileSync(core));
  python.runPython(script("compile"));
  writeFileSync(compiled, python.FS.readFile("/compiled.zip"));
}

// Memory as it is before Python has begun, which every engine makes by itself.
const { default: createModule } = await import(pathToFileURL(join(pyodide, "pyodide.asm.mjs")));
const stopped = new Error("stopped on purpose");
await loadPyodide({
  ...settings,
  createPyodideModule: async (given) => {
    const { HEAPU8 } = await createModule({ ...given, noInitialRun: true });
    writeFileSync(join(folder, "fresh.bin"), HEAPU8);
    throw stopped;
  },
}).catch((fault) => {
  if (fault !== stopped) throw fault;
});

const python = await loadPyodide({ ...settings, stdLibURL: compiled, _makeSnapshot: true });
const module = python._module;
python.runPython(script("fill"));
const modules = python.runPython("' '.join(sorted(__import__('sys').modules))").split(" ");
python.runPython("__import__('gc').collect()");

// Engines differ in how functions are called by pointer: each start puts its own way in.
module.HEAP32[(module.__PyRuntime + module.HEAP32[module.__PyEM_EMSCRIPTEN_TRAMPOLINE_OFFSET >> 2]) >> 2] = 0;
const image = python.makeMemorySnapshot();
const [, start, length] = new Uint32Array(image.buffer, 0, 3);
writeFileSync(join(folder, "heap.bin"), image.subarray(start));
writeFileSync(
  join(folder, "heap.json"),
  JSON.stringify({
    bytes: image.length - start,
    // The head without the memory: build number, and what JavaScript objects Python holds.
    head: Buffer.from(image.subarray(0, 48 + length)).toString("base64"),
    start,
    modules,
  }),
);

/** Clock and chance, the same in every run. */
function holdStill() {
  let state = 1n;
  const fill = (array) => {
    const bytes = new Uint8Array(array.buffer, array.byteOffset, array.byteLength);
    for (let at = 0; at < bytes.length; at += 1) {
      state = (state * 6364136223846793005n + 1442695040888963407n) & 0xffffffffffffffffn; // Knuth, MMIX
      bytes[at] = Number(state >> 56n);
    }
    return array;
  };
  globalThis.crypto.getRandomValues = fill;
  crypto.randomFillSync = fill;
  crypto.randomBytes = (count) => Buffer.from(fill(new Uint8Array(count)));
  const RealDate = Date;
  const NOON = Date.UTC(2026, 0, 1, 12);
  globalThis.Date = class extends RealDate {
    constructor(...given) {
      super(...(given.length ? given : [NOON]));
    }
    static now = () => NOON;
  };
  performance.now = () => 0;
  process.argv = ["node", "snapshot"]; // Python keeps the name of its program
}
