// Pytest inside the pinned Pyodide, in a browser's worker: the same as run.mjs does in Node. The page names the suites, `list.json`
// what lies beside it.

import { loadPyodide } from "./pyodide/pyodide.mjs";

const bytes = async (address) => (await fetch(address)).arrayBuffer();
const told = [];
const suites = self.name.split(" ");

try {
  const { wheels, core } = await (await fetch("list.json")).json();
  const python = await loadPyodide({ indexURL: new URL("pyodide/", import.meta.url).href, env: { PYTHONDONTWRITEBYTECODE: "1" }, stdout: (line) => told.push(line) });
  for (const wheel of wheels) python.unpackArchive(await bytes(`wheels/${wheel}`), "wheel");
  python.unpackArchive(await bytes(core), "wheel");
  python.FS.mkdirTree("/top");
  python.unpackArchive(await bytes("tests.zip"), "zip", { extractDir: "/top" });
  python.globals.set("suites", python.toPy(suites.map((suite) => `/top/tests/${suite}`)));
  const status = python.runPython(`
import os, sys
import pytest, wedgework
assert not wedgework.__file__.startswith("/top/"), wedgework.__file__
sys.path.insert(0, os.getcwd())  # here the wheels were unpacked
os.chdir("/top")
print("Python", sys.version.split()[0], sys.platform)
int(pytest.main(["-q", "-p", "no:cacheprovider", "-o", "pythonpath=tests", *suites]))
`);
  self.postMessage({ status, told: [...told.slice(0, 5), ...told.slice(-400)].join("\n") });
} catch (fault) {
  self.postMessage({ status: 70, told: `${told.slice(-50).join("\n")}\n${fault}` });
}
