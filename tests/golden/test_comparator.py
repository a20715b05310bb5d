"""The comparator can fail: a golden that accepts everything would prove nothing."""

from __future__ import annotations

from pathlib import Path

import pytest

from goldens import Goldens, lines_of


def test_a_changed_line_fails_and_is_shown(tmp_path: Path) -> None:
    (tmp_path / "a.txt").write_text("Knit 2 rows.\nHold 1 needle.\n", encoding="utf-8")
    compare = Goldens(tmp_path)
    compare("a.txt", "Knit 2 rows.\nHold 1 needle.\n")
    with pytest.raises(AssertionError, match=r"\+Hold 2 needles\."):
        compare("a.txt", "Knit 2 rows.\nHold 2 needles.\n")


@pytest.mark.parametrize("other", ["one\r\ntwo\r\n", "one\ntwo", ""])
def test_line_endings_and_missing_ends_are_differences(tmp_path: Path, other: str) -> None:
    (tmp_path / "a.txt").write_bytes(b"one\ntwo\n")
    with pytest.raises(AssertionError):
        Goldens(tmp_path)("a.txt", other)


def test_a_missing_golden_fails(tmp_path: Path) -> None:
    with pytest.raises(AssertionError, match="no golden"):
        Goldens(tmp_path)("new.txt", "anything")


def test_accepting_writes_what_is_then_compared(tmp_path: Path) -> None:
    Goldens(tmp_path, accept=True)("deep/new.txt", "é\n")
    Goldens(tmp_path)("deep/new.txt", "é\n")


def test_markup_is_shown_line_by_line() -> None:
    assert lines_of("<a><b/><c>x</c></a>") == "<a>\n<b/>\n<c>x</c>\n</a>\n"
