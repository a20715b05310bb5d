"""Titles of the panel plan's groups inside the calculators that take a whole piece: the same words under their names."""

from __future__ import annotations

from wedgework.say.english import calculators

_GROUP = "calculators.panel-plan.group-"

MESSAGES: dict[str, str | tuple[str, str]] = {
    f"calculators.{slug}.group-{key.removeprefix(_GROUP)}": words
    for slug in ("yarn-needs", "stripes", "scraps", "practice-piece", "carry-on", "written-pattern")
    for key, words in calculators.MESSAGES.items()
    if key.startswith(_GROUP)
}
