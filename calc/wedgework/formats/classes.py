"""A class: a sheet for an evening, on which links to calculators and designs stand with a teacher's own words."""

from __future__ import annotations

from dataclasses import dataclass, field

__all__ = ["Class", "ClassEntry"]


@dataclass(frozen=True, slots=True)
class ClassEntry:
    """One thing to open."""

    link: str
    """What follows the ``#`` of a page's address. Only the form is checked here; `wedgework.faces.link` opens it."""
    title: str = ""
    text: str = ""


@dataclass(frozen=True, slots=True)
class Class:
    title: str = ""
    text: str = ""
    """Plain text; an empty line begins a paragraph."""
    entries: tuple[ClassEntry, ...] = ()
    made_by: str = field(default="", compare=False)
    """The version that wrote the file; not part of what the class says."""
