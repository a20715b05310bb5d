"""The fixtures of this suite stand beside the other shared parts, so that tests can import its small helpers too."""

from __future__ import annotations

import pytest

from visiting import host, visitor  # noqa: F401 - fixtures


def pytest_runtest_makereport(item: pytest.Item, call: pytest.CallInfo[None]) -> None:
    """A test of a fault counts as one, or as many as it says with ``record_property("faults", n)``."""
    if call.when == "call" and item.get_closest_marker("fault") and not any(name == "faults" for name, _ in item.user_properties):
        item.user_properties.append(("faults", 1))


def pytest_terminal_summary(terminalreporter: pytest.TerminalReporter) -> None:
    """How many faults were met, and how many of them did not end in a working page and a true sentence."""
    met = {
        how: sum(int(n) for report in terminalreporter.getreports(how) for name, n in report.user_properties if name == "faults")
        for how in ("passed", "failed")
    }
    if any(met.values()):
        terminalreporter.write_line(
            f"faults: {met['passed']} ended in a working page and a true sentence, {met['failed']} did not"
        )
