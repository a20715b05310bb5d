"""The judgement beside the layout board, compared with a plain loop of the same interpreter: here, and in Pyodide.

make bench
"""

from __future__ import annotations

import json
import subprocess
import tempfile
from pathlib import Path

from boards import times
from told import line

from builder.environment import node_problem
from builder.runtime import NODE_PYODIDE, build_core

HERE = Path(__file__).resolve().parent
BOARD = "the layout board"


def told(where: str, found: dict[str, float], expected: str = "") -> None:
    blocks, loop = int(found["blocks"]), found["loop"]
    line(BOARD, f"{where}: a drawing of {blocks} blocks judged : a plain loop", f"{found['judge'] / loop:.1f}", expected)
    line(BOARD, f"{where}: one offered change weighed : the same loop", f"{found['try'] / loop:.1f}")


def main() -> None:
    told("CPython", times())
    if node_problem() or not NODE_PYODIDE.is_dir():
        print("the layout board: no Pyodide here")
        return
    with tempfile.TemporaryDirectory() as made:
        command = ["node", HERE / "inside.mjs", NODE_PYODIDE, build_core(Path(made)), HERE, "boards"]
        done = subprocess.run(command, capture_output=True, text=True, check=True, stdin=subprocess.DEVNULL)
    told("Pyodide, which runs in the page's worker", json.loads(done.stdout.splitlines()[-1]), "at most 4")


if __name__ == "__main__":
    main()
