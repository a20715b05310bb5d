"""The state of a bed as a person types it: rows on each needle line by line, needles, yarns and where they hang.

L20-L1: 41 rows       the same rows on each of these needles
R1-R12: 40 to 18      evenly from the first to the last
L7: 1 more            against the plan, where a plan is given: more or fewer rows

L20-L12, R3           needles
2 at L53              a yarn by its number, and the needle beside which it hangs
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from fractions import Fraction

from wedgework.bed import across, at_place, name, place, range_name
from wedgework.exact import nearest
from wedgework.problems import Problem, Refused
from wedgework.say import say

__all__ = ["MOST_ROWS", "needles_text", "read_hanging", "read_needles", "read_rows", "rows_text"]

MOST_ROWS = 9999
_NEEDLE = r"[LRlr]\s*\d{1,4}"
_RANGE = re.compile(rf"({_NEEDLE})(?:\s*(?:-|\u2013|to|bis)\s*({_NEEDLE}))?")
_ROWS = r"(\d{1,4})(?:\s*(?:-|\u2013|to|bis)\s*(\d{1,4}))?(?:\s*(?:rows?|reihen?))?"
_EXACT = re.compile(_ROWS, re.IGNORECASE)
_CHANGE = re.compile(
    r"(?:([+-])\s*(\d{1,4})|(\d{1,4})(?:\s*(?:rows?|reihen?))?\s*(more|fewer|less|mehr|weniger))(?:\s*(?:rows?|reihen?))?",
    re.IGNORECASE,
)
_HANGING = re.compile(rf"(?:(?:yarn|garn)\s*)?(\d)\s*(?:at|beside|bei|neben|:)?\s*({_NEEDLE})", re.IGNORECASE)


def _say(key: str, **values: object) -> str:
    return say(f"calculators.carry-on.{key}", **values)


def _problem(field: str, code: str, **values: object) -> Problem:
    return Problem(field, f"carry-on.{code}", _say(code, **values), _say(f"{code}.way-out", **values))


def _needle(typed: str) -> int:
    """0 for L0 and R0, which are not there."""
    number = int(re.sub(r"\D", "", typed))
    return -number if typed.lstrip()[0] in "Ll" else number


def _places(typed: str, first: int, last: int) -> range | None:
    """Places from 0 of the needles named in ``L20-L12`` (either way round); None where they are none of this piece."""
    match = _RANGE.fullmatch(typed.strip())
    ends = [_needle(end) for end in match.groups() if end] if match else []
    if not ends or 0 in ends:
        return None
    from_, to = place(ends[0]) - place(first), place(ends[-1]) - place(first)
    most = place(last) - place(first)
    if not (0 <= from_ <= most and 0 <= to <= most):
        return None
    return range(from_, to + 1) if from_ <= to else range(from_, to - 1, -1)


def read_needles(field: str, typed: str, first: int, last: int) -> tuple[int, ...]:
    """``L20-L12, R3``, from left to right. Raises Refused with a problem for each that is no needle of this piece."""
    problems: list[Problem] = []
    found: set[int] = set()
    for part in re.split(r"[,;\n]", typed):
        if not part.strip():
            continue
        places = _places(part, first, last)
        if places is None:
            problems.append(_problem(field, "no-needles", found=part.strip()[:40], first=name(first), last=name(last)))
        else:
            found |= set(places)
    if problems:
        raise Refused(problems)
    return tuple(at_place(place(first) + p) for p in sorted(found))


def read_rows(field: str, typed: str, first: int, last: int, planned: Sequence[int] | None = None) -> tuple[int, ...]:
    """Rows on each needle from `first` to `last`. With `planned`, those are what is not typed, and lines may say more or fewer.
    Raises Refused with a problem for each line that cannot be read, and for needles that are left out."""
    problems: list[Problem] = []
    rows: list[int | None] = list(planned) if planned is not None else [None] * len(across(first, last))
    given: set[int] = set()
    for line in filter(None, (each.strip() for each in re.split(r"[;\n]", typed))):
        which, _, what = line.partition(":")
        places = _places(which, first, last)
        if places is None:
            problems.append(_problem(field, "no-needles", found=which.strip()[:40], first=name(first), last=name(last)))
            continue
        twice = given & set(places)
        if twice:
            problems.append(_problem(field, "twice", needle=name(at_place(place(first) + min(twice)))))
            continue
        given |= set(places)
        values = list(_values(what.strip().rstrip("."), places, planned))
        if len(values) != len(places):
            problems.append(_problem(field, "no-rows" if planned is None else "no-change", found=line[:60]))
            continue
        for p, value in zip(places, values, strict=True):
            if not 0 <= value <= MOST_ROWS:
                problems.append(_problem(field, "below-nothing", needle=name(at_place(place(first) + p))))
                break
            rows[p] = value
    left_out = [p for p, value in enumerate(rows) if value is None and p not in given]
    if left_out and not problems:
        problems.append(_problem(field, "left-out", needles=_ranges([at_place(place(first) + p) for p in left_out])))
    if problems:
        raise Refused(problems)
    return tuple(value or 0 for value in rows)


def _values(what: str, places: Sequence[int], planned: Sequence[int] | None) -> Iterator[int]:
    """A value for each place, or fewer where the words say none."""
    change = _CHANGE.fullmatch(what) if planned is not None else None
    if change is not None and planned is not None:
        more = change[1] == "+" or (change[4] or "").lower() in ("more", "mehr")
        by = int(change[2] or change[3])
        yield from (planned[p] + (by if more else -by) for p in places)
        return
    exact = _EXACT.fullmatch(what)
    if exact is not None:
        start, end = int(exact[1]), int(exact[2] or exact[1])
        steps = max(1, len(places) - 1)
        yield from (nearest(start + Fraction((end - start) * i, steps)) for i in range(len(places)))


def read_hanging(field: str, typed: str, first: int, last: int, numbers: Sequence[str]) -> tuple[tuple[str, int], ...]:
    """``2 at L53`` line by line: the number of a yarn, and a needle. Raises Refused."""
    problems: list[Problem] = []
    found: list[tuple[str, int]] = []
    for line in filter(None, (each.strip() for each in re.split(r"[;,\n]", typed))):
        match = _HANGING.fullmatch(line.rstrip("."))
        places = _places(match[2], first, last) if match else None
        if match is None or places is None or match[1] not in numbers:
            wanted = ", ".join(numbers)
            problems.append(_problem(field, "no-hanging", found=line[:40], numbers=wanted, first=name(first), last=name(last)))
        else:
            found.append((match[1], at_place(place(first) + places[0])))
    if problems:
        raise Refused(problems)
    return tuple(found)


def rows_text(first: int, rows: Sequence[int]) -> str:
    """The lines that `read_rows` reads as these rows: a line for each run that is level or climbs evenly."""
    lines: list[str] = []
    at = 0
    while at < len(rows):
        end = at + 1
        while end + 1 < len(rows) and rows[end + 1] - rows[end] == rows[at + 1] - rows[at]:
            end += 1
        end = min(end, len(rows) - 1)
        if end == at + 1 and rows[end] != rows[at]:
            end = at  # two that differ are clearer one by one
        needles = range_name(at_place(place(first) + at), at_place(place(first) + end))
        lines.append(f"{needles}: {rows[at]}" + ("" if rows[at] == rows[end] else f" to {rows[end]}"))
        at = end + 1
    return "\n".join(lines)


def needles_text(needles: Sequence[int]) -> str:
    """The needles as `read_needles` reads them."""
    return _ranges(sorted(needles))


def _ranges(needles: Sequence[int]) -> str:
    runs: list[list[int]] = []
    for needle in needles:
        if runs and place(needle) == place(runs[-1][-1]) + 1:
            runs[-1].append(needle)
        else:
            runs.append([needle])
    return ", ".join(range_name(run[0], run[-1]) for run in runs)
