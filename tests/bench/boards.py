"""What the layout board asks of the core, timed on the Python that runs this: CPython, or Pyodide through in_worker.py."""

from __future__ import annotations

import json

from large import forget, piece, plain_loop, seconds

from wedgework.faces.wire import answer

__all__ = ["forty", "times"]


def forty() -> str:
    """Diamonds on a standard bed: somewhat more than forty blocks."""
    return piece(160, 320, 4.5, {"name": "diamond-lattice", "parameters": {"across": 4, "up": 4}})


def times() -> dict[str, float]:
    """A plain loop; one judgement as the page asks it, from string to string; one change weighed. Seconds, and blocks."""
    opened = json.loads(answer(json.dumps({"ask": "board-open", "design": forty()})))
    design = json.dumps(opened["sheet"]["design"])
    question = json.dumps({"ask": "board-judge", "design": design})
    told = json.loads(answer(question))
    weighing = json.dumps({"ask": "board-try", "design": design, "before": json.dumps(told["judged"]["effort"])})

    def anew(asked: str) -> None:
        """As after a change: what the planner keeps of this drawing does not help."""
        forget()
        answer(asked)

    return {
        "loop": seconds(plain_loop, 3),
        "judge": seconds(lambda: anew(question), 3),
        "try": seconds(lambda: anew(weighing), 3),
        "blocks": len(told["judged"]["blocks"]),
    }
