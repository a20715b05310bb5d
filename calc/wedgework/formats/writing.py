"""Plain values to JSON text, exact numbers included: one form for machines, one that a person can read.

    >>> canonical({"b": [Fraction(1, 2)], "a": 4.5})
    '{"a":4.5,"b":[0.5]}'

The canonical form has its keys sorted and no spaces, so that equal values have equal bytes. The readable form keeps
the order of the keys and gives each entry of a list of objects its own line: a plan reads as one step a line.
"""

from __future__ import annotations

import json
from fractions import Fraction
from typing import Any

from wedgework.formats.decimals import decimal_text, exact_number

__all__ = ["canonical", "pretty"]

_LINE = 100
"""An object that fits into so many characters stands on one line."""


def canonical(value: Any) -> str:
    """The shortest JSON text of `value`, keys in the order of their code points. Raises TypeError for what JSON lacks."""
    return _flat(value, ",", ":", True)


def pretty(value: Any) -> str:
    """`value` as text for a file, ending in a line feed; keys keep their order."""
    return _broken(value, "", False) + "\n"


def _flat(value: Any, comma: str, colon: str, in_order: bool) -> str:
    if isinstance(value, str):
        return json.dumps(value, ensure_ascii=False)
    if value is None:
        return "null"
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, (int, Fraction)):
        return decimal_text(value)
    if isinstance(value, float):
        exact = exact_number(repr(value)) if value * 0 == 0 else None
        if exact is None:
            raise ValueError(f"{value} cannot stand in a file")
        return decimal_text(exact)
    if isinstance(value, (list, tuple)):
        return f"[{comma.join([_flat(each, comma, colon, in_order) for each in value])}]"
    if isinstance(value, dict):
        items = sorted(value.items()) if in_order else value.items()
        parts = [f"{json.dumps(key, ensure_ascii=False)}{colon}{_flat(each, comma, colon, in_order)}" for key, each in items]
        return "{" + comma.join(parts) + "}"
    raise TypeError(f"JSON has no {type(value).__name__}")


def _broken(value: Any, indent: str, in_list: bool) -> str:
    """One line where it may be one, else one line for each entry, indented by a space more."""
    deeper = indent + " "
    if isinstance(value, dict) and value:
        if _may_be_a_line(value):
            line = _flat(value, ", ", ": ", False)
            # Entries of a list without objects inside, such as steps, are never broken, however many needles they name.
            if len(line) <= _LINE or (in_list and all(_is_flat(each) for each in value.values())):
                return line
        parts = [f"{deeper}{json.dumps(key, ensure_ascii=False)}: {_broken(each, deeper, False)}" for key, each in value.items()]
        return "{\n" + ",\n".join(parts) + "\n" + indent + "}"
    if isinstance(value, (list, tuple)) and value and not _is_flat(value):
        return "[\n" + ",\n".join(deeper + _broken(each, deeper, True) for each in value) + "\n" + indent + "]"
    return _flat(value, ", ", ": ", False)


def _may_be_a_line(value: Any) -> bool:
    """Objects and lists of plain values; a list of objects always gets its lines."""
    if isinstance(value, dict):
        return all(_may_be_a_line(each) for each in value.values())
    return _is_flat(value)


def _is_flat(value: Any) -> bool:
    """A single value, or lists of such: numbers, points, outlines."""
    if isinstance(value, (list, tuple)):
        return all(_is_flat(each) for each in value)
    return not isinstance(value, dict)
