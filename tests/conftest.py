"""Fixtures that several suites use."""

from __future__ import annotations

import os
from pathlib import Path

import pytest

from goldens import Goldens


@pytest.fixture(scope="session")
def golden() -> Goldens:
    """``golden(name, text)`` compares with tests/golden/<name>; see goldens.py."""
    return Goldens(Path(__file__).parent / "golden", bool(os.environ.get("WEDGEWORK_ACCEPT")))
