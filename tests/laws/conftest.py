"""Laws are judged by what they find, not by how long one example took on a busy machine."""

from __future__ import annotations

import pytest
from hypothesis import settings

settings.register_profile("laws", deadline=None)
settings.load_profile("laws")


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """How many damaged and hostile files, links and questions were answered."""
    passed = terminalreporter.getreports("passed")
    met = sum(int(n) for report in passed for name, n in report.user_properties if name == "hostile")
    if met:
        terminalreporter.write_line(
            f"hostile: {met} files, links and questions were answered at once, with a value or with problems"
        )
