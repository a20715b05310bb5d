"""What the core takes for each calculator's answer, as a ratio to a plain loop of the same worker: a slow tablet is slow at both.

make bench
"""

from __future__ import annotations

from in_worker import in_worker
from told import line

from wedgework.catalogue import CALCULATORS


def main() -> None:
    found = in_worker("asked")
    if found is None:
        return
    for calculator in CALCULATORS:
        ratio = found[calculator.slug] / found["loop"]
        line("answers", f"{calculator.title}: its answer : a plain loop of the same worker", f"{ratio:.2f}")


if __name__ == "__main__":
    main()
