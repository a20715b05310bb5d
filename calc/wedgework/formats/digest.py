"""A short name for the steps of a plan, so that two people (or two versions) can tell whether they have the same ones."""

from __future__ import annotations

import hashlib
from collections.abc import Iterable

from wedgework.formats.plan import Step
from wedgework.formats.values_plan import step_value
from wedgework.formats.writing import canonical

__all__ = ["DIGITS", "steps_digest"]

# 48 bits: among a million plans two with one name are as likely as one in five hundred. It guards against
# mistakes, not against forgery.
DIGITS = 12


def steps_digest(steps: Iterable[Step]) -> str:
    """The first hexadecimal digits of the SHA-256 of the steps in canonical JSON."""
    text = canonical([step_value(step) for step in steps])
    return hashlib.sha256(text.encode()).hexdigest()[:DIGITS]
