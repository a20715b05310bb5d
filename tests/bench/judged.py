"""The judgement beside the layout board, compared with a plain loop of the same interpreter: here, and in Pyodide.

make bench
"""

from __future__ import annotations

from boards import times
from in_worker import WHERE, in_worker
from told import line

BOARD = "the layout board"


def told(where: str, found: dict[str, float], expected: str = "") -> None:
    blocks, loop = int(found["blocks"]), found["loop"]
    line(BOARD, f"{where}: a drawing of {blocks} blocks judged : a plain loop", f"{found['judge'] / loop:.1f}", expected)
    line(BOARD, f"{where}: one offered change weighed : the same loop", f"{found['try'] / loop:.1f}")


def main() -> None:
    told("CPython", times())
    if found := in_worker("boards"):
        told(WHERE, found, "at most 4")


if __name__ == "__main__":
    main()
