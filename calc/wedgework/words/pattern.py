"""The written pattern as a document: sections for one size, or for several with their counts side by side."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from html import escape
from typing import Literal

from wedgework.formats.plan import Plan
from wedgework.replay.result import Replay
from wedgework.words.instructions import Instructions, Section, instructions
from wedgework.words.several_sizes import one_text

__all__ = ["Part", "Pattern", "pattern"]


@dataclass(frozen=True, slots=True)
class Part:
    """A section; `lists` are sentences with the names of the sizes they are for, none where they are for all."""

    key: str
    title: str
    kind: Literal["facts", "steps", "own"]
    lists: tuple[tuple[tuple[str, ...], tuple[str, ...]], ...]


@dataclass(frozen=True, slots=True)
class Pattern:
    title: str
    sizes: tuple[str, ...]
    parts: tuple[Part, ...]

    def as_text(self) -> str:
        """Plain text; a line in square brackets says for which sizes the sentences below it are."""
        lines = [self.title]
        for part in self.parts:
            lines += ["", part.title]
            for names, sentences in part.lists:
                if names:
                    lines.append(f"[{', '.join(names)}]")
                for number, words in enumerate(sentences, 1):
                    lines.append(f"  {number:>2}. {words}" if part.kind == "steps" else f"  {words}")
        return "\n".join(lines) + "\n"

    def as_html(self, level: int = 3) -> str:
        """Sections open, for reading on paper; every text escaped."""
        return f'<div class="pattern">{"".join(_section(part, level) for part in self.parts)}</div>'


def _section(part: Part, level: int) -> str:
    tag = {"steps": "ol", "facts": "ul"}.get(part.kind)
    inside = ""
    for names, sentences in part.lists:
        if names:
            inside += f"<p><strong>{escape(', '.join(names))}</strong></p>"
        if tag is None:
            inside += "".join(f"<p>{escape(words)}</p>" for words in sentences)
        else:
            inside += f"<{tag}>{''.join(f'<li>{escape(words)}</li>' for words in sentences)}</{tag}>"
    heading = f"<h{level}>{escape(part.title)}</h{level}>"
    return f'<section class="pattern-{part.kind}" data-section="{escape(part.key)}">{heading}{inside}</section>'


def pattern(sizes: Sequence[tuple[str, Plan, Replay]], own: Mapping[str, tuple[str, Sequence[str]]]) -> Pattern:
    """The pattern of plans of one piece at several sizes, named.

    `own`: title and paragraphs of the person's own text, by the key of the section that they stand before, ``last`` for the end.
    """
    names = tuple(name for name, _, _ in sizes)
    versions = [instructions(plan, judged) for _, plan, judged in sizes]
    parts: list[Part] = []
    for part in _together(versions, names):
        if part.key in own:
            parts.append(_own(part.key, *own[part.key]))
        parts.append(part)
    if "last" in own:
        parts.append(_own("last", *own["last"]))
    return Pattern(sizes[0][1].design.title, names, tuple(parts))


def _own(key: str, title: str, paragraphs: Sequence[str]) -> Part:
    return Part(f"own-{key}", title, "own", (((), tuple(paragraphs)),))


def _together(versions: Sequence[Instructions], names: tuple[str, ...]) -> list[Part]:
    """Sections that all sizes have in one order are one; where their order differs, the whole stands size by size."""
    keys = [[section.key for section in version.sections] for version in versions]
    if all(each == keys[0] for each in keys):
        return [_part(sections, names) for sections in zip(*(version.sections for version in versions), strict=True)]
    shared = [key for key in keys[0] if all(key in each for each in keys) and _facts(versions[0], key)]
    parts = [_part([_of(version, key) for version in versions], names) for key in shared]
    for name, version in zip(names, versions, strict=True):
        parts += [
            Part(section.key, section.title, section.kind, (((name,), section.sentences),))
            for section in version.sections
            if section.key not in shared
        ]
    return parts


def _facts(version: Instructions, key: str) -> bool:
    return _of(version, key).kind == "facts"


def _of(version: Instructions, key: str) -> Section:
    return next(section for section in version.sections if section.key == key)


def _part(sections: Sequence[Section], names: tuple[str, ...]) -> Part:
    first = sections[0]
    title = one_text([section.title for section in sections])
    merged = [one_text(each) for each in zip(*(section.sentences for section in sections), strict=False)]
    alike = len({len(section.sentences) for section in sections}) == 1
    if title is not None and alike and all(sentence is not None for sentence in merged):
        return Part(first.key, title, first.kind, (((), tuple(sentence or "" for sentence in merged)),))
    own: dict[tuple[str, ...], list[str]] = {}
    for name, section in zip(names, sections, strict=True):
        own.setdefault(section.sentences, []).append(name)
    lists = tuple((tuple(which), sentences) for sentences, which in own.items())
    return Part(first.key, first.title, first.kind, lists)
