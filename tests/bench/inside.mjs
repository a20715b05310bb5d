// Runs `times()` of one of the modules beside this file inside the pinned Pyodide, in Node, and prints what it returns.
//
//   node inside.mjs PYODIDE WHEEL BENCH MODULE

import { readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [pyodide, wheel, bench, module] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(join(pyodide, "pyodide.mjs")));
const python = await loadPyodide({ indexURL: pyodide, env: { PYTHONDONTWRITEBYTECODE: "1" } });
python.unpackArchive(new Uint8Array(readFileSync(wheel)), "wheel");
python.FS.mkdirTree("/bench");
python.mountNodeFS("/bench", bench);
python.pyimport("sys").path.append("/bench");
console.log(JSON.stringify(python.pyimport(module).times().toJs()));
