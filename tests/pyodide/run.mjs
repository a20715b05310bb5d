// Pytest inside the pinned Pyodide, in Node: our wheel as it was built, the tests as they lie in the folder.
//
//   node run.mjs PYODIDE WHEELS WHEEL TOP suite ...       exit status: pytest's own
//   node run.mjs PYODIDE WHEELS WHEEL TOP --micropip      installs our wheel with micropip; what it asks for lies in WHEELS

import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";

const [pyodide, wheels, wheel, top, ...suites] = process.argv.slice(2);
const { loadPyodide } = await import(pathToFileURL(join(pyodide, "pyodide.mjs")));
const python = await loadPyodide({ indexURL: pyodide, env: { PYTHONDONTWRITEBYTECODE: "1" } });
const unpack = (file) => python.unpackArchive(new Uint8Array(readFileSync(file)), "wheel");

for (const name of readdirSync(wheels).filter((one) => one.endsWith(".whl"))) unpack(join(wheels, name));
python.FS.mkdirTree("/top/tests");

// Without this Node prints the whole runtime, which is one line of a megabyte.
process.on("uncaughtException", (fault) => {
  console.error(fault.message);
  process.exit(70);
});

if (suites[0] === "--micropip") {
  const name = wheel.split(/[\\/]/).pop();
  python.FS.writeFile(`/top/${name}`, readFileSync(wheel));
  python.globals.set("address", `emfs:/top/${name}`);
  await python.runPythonAsync(`
import micropip
await micropip.install(address)
from importlib.metadata import version
from wedgework.faces.wire import default_answer
print(micropip.list()["wedgework"].version == version("wedgework"), len(default_answer("gauge")) > 1000)
`);
} else {
  unpack(wheel);
  python.FS.writeFile("/top/pyproject.toml", readFileSync(join(top, "pyproject.toml")));
  python.mountNodeFS("/top/tests", join(top, "tests"));
  python.globals.set("suites", python.toPy(suites.map((suite) => `/top/tests/${suite}`)));
  process.exitCode = python.runPython(`
import os, sys
import pytest, wedgework
assert not wedgework.__file__.startswith("/top/"), wedgework.__file__
sys.path.insert(0, os.getcwd())  # here the wheels were unpacked
os.chdir("/top")
print("Python", sys.version.split()[0], sys.platform)
int(pytest.main(["-q", "-p", "no:cacheprovider", "-o", "pythonpath=tests", *suites]))
`);
}
