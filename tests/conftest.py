"""Fixtures that several suites use."""

from __future__ import annotations

import os
from importlib.util import find_spec
from pathlib import Path

import pytest

from goldens import Goldens

# The suites of the core run where there is no browser and nothing to build pages with, as inside the browser itself.
if find_spec("playwright") and find_spec("mkdocs"):
    from chromium import browser, built, served  # noqa: F401 - fixtures


@pytest.fixture(scope="session")
def golden() -> Goldens:
    """``golden(name, text)`` compares with tests/golden/<name>; see goldens.py."""
    return Goldens(Path(__file__).parent / "golden", bool(os.environ.get("WEDGEWORK_ACCEPT")))
