"""The Markdown extension: a line such as ``::: calculator gauge`` becomes what the core answers.

    ::: NAME argument

stands alone on its line; the names are those of `builder.parts.PARTS`. A Preprocessor before the fences, so that
other Markdown rules never see the HTML. It is a Markdown extension and no mkdocs hook because the theme's
successor runs the former and ignores the latter.
"""

from __future__ import annotations

import re
from xml.etree.ElementTree import Element, SubElement

from markdown import Markdown
from markdown.extensions import Extension
from markdown.preprocessors import Preprocessor
from markdown.treeprocessors import Treeprocessor

from builder.parts import PARTS

__all__ = ["CoreParts", "WideTables", "makeExtension"]

LINE = re.compile(r"^::: *([a-z-]+)(?: +(\S+))? *$")
# After the rule that tidies line ends (30) and before the one that reads fenced code (25).
PRIORITY = 27


class CoreParts(Preprocessor):
    """Replaces each line that names a part; a name that is not there is the author's mistake and stops the build."""

    md: Markdown

    def run(self, lines: list[str]) -> list[str]:
        done: list[str] = []
        for line in lines:
            match = LINE.match(line)
            if match is None:
                done.append(line)
                continue
            name, argument = match.group(1), match.group(2)
            if name not in PARTS:
                raise ValueError(f"no part is called {name!r}; there are: {', '.join(sorted(PARTS))}")
            html = PARTS[name](argument or "")
            done += ["", self.md.htmlStash.store(f'<div class="core core-{name}">\n{html}\n</div>'), ""]
        return done


class WideTables(Treeprocessor):
    """A table of the page's own goes into a box that scrolls sideways; those of the core come with theirs."""

    def run(self, root: Element) -> None:
        for parent in list(root.iter()):
            for at, child in enumerate(parent):
                if child.tag == "table" and not child.get("class"):
                    box = Element("div", {"class": "md-typeset__scrollwrap"})
                    inner = SubElement(box, "div", {"class": "md-typeset__table"})
                    box.tail, child.tail = child.tail, None
                    parent[at] = box
                    inner.append(child)


class CorePartsExtension(Extension):
    def extendMarkdown(self, md: Markdown) -> None:
        md.preprocessors.register(CoreParts(md), "core_parts", PRIORITY)
        md.treeprocessors.register(WideTables(md), "wide_tables", 0)


def makeExtension(**_settings: object) -> CorePartsExtension:
    """The way in for python-markdown, which looks for this name."""
    return CorePartsExtension()
