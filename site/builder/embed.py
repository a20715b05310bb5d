"""One calculator alone, for an `iframe` in a page of somebody else: the form, its true answer, the live engine, our look.

    embed/SLUG/index.html       a plain page, nothing of the frame of the site

The page is a function of the calculator and of a language, and of where the site's first page lies as seen from it. These pages
are made for other people's pages, so they are left out of the copy for offline use.
"""

from __future__ import annotations

import re
from html import escape
from pathlib import Path

from builder.languages import LANGUAGES, name_of
from wedgework.catalogue import CALCULATORS, calculator
from wedgework.faces.about import page_of
from wedgework.faces.page import calculator_html
from wedgework.say import say

__all__ = ["EMBED", "ENGLISH", "embed_page", "embed_picker", "ship_embeds"]

EMBED = "embed"
ENGLISH = "en"
COLOURS = "assets/embed-colours.css"
STYLES = (COLOURS, "assets/look.css", "assets/parts.css", "assets/app.css", "assets/fabric.css", "assets/embed.css")
WIDTHS = (320, 480, 760)  # px: a phone, a column, a page; what fills its place is the first choice
# The folder of each language, and its own name for itself.
FOLDERS = {"": "English"} | {f"{language}/": name_of(language) for language in LANGUAGES}
THEME = Path(__file__).resolve().parents[1] / "theme"
LOOK = THEME / "assets" / "look.css"
STAGES = (THEME / "partials" / "stages.html").read_text(encoding="utf-8")
"""Counts the first frames of a page, in which a large one is painted from the top; see theme/main.html."""
# What look.css says of the two schemes, which the frame of the site chooses by an attribute; here the system chooses.
_SCHEME = r'\[data-md-color-scheme="{name}"\] \{{([^}}]+)\}}'
# A frame without an origin of its own may load no module and begin no worker; nothing but this line would then tell a person so.
_SAID = """addEventListener("load", () => {
      if (document.documentElement.dataset.scripts === "run") return;
      const said = document.querySelector(".embed-still");
      said.textContent = self.origin === "null" ? said.dataset.shut : said.dataset.broken;
      said.hidden = false;
    });"""


def embed_page(slug: str, language: str = ENGLISH, top: str = "../../") -> str:
    """The whole page. `top` leads from it to the folder that holds app/ and assets/. Raises LookupError for an unknown slug.

    The full page is looked for two folders above this one, where the pages of the same language lie.
    """
    found = calculator(slug)
    if found is None:
        raise LookupError(slug)
    styles = "\n".join(f'    <link rel="stylesheet" href="{top}{style}">' for style in STYLES)
    said = " ".join(f'data-{key}="{escape(say(f"site.embed-{key}"))}"' for key in ("shut", "broken"))
    link = f'<a href="../../{page_of(slug)}" target="_blank" rel="noopener" data-full>{escape(say("site.embed-full"))}</a>'
    # What the scripts say in another language is there before they run.
    words = "" if language == ENGLISH else f'    <script type="module" src="{top}app/sentences-{language}.js"></script>\n'
    return f"""<!doctype html>
<html lang="{escape(language)}" class="embed">
  <head>
    <meta charset="utf-8">
    <meta name="viewport" content="width=device-width, initial-scale=1">
    <meta name="color-scheme" content="light dark">
    <meta name="referrer" content="no-referrer">
    <meta name="robots" content="noindex">
    <title>{escape(found.title)} - Wedgework</title>
    <script>{STAGES}{_SAID}</script>
    <link rel="icon" href="{top}assets/mark.svg">
{styles}
{words}    <script type="module" src="{top}app/embed.js"></script>
  </head>
  <body>
    <main class="md-typeset">
      <h1>{escape(found.title)}</h1>
      <p class="embed-still" role="alert" hidden {said}></p>
      <div class="core core-calculator">
        <p class="to-answer"><a href="#{slug}-answer">{escape(say("site.to-answer"))}</a></p>
{calculator_html(slug, alone=True)}
      </div>
    </main>
    <footer class="embed-foot"><p>Wedgework. {link}</p></footer>
  </body>
</html>
"""


def colours(look: str) -> str:
    """The colours of `look`, a style sheet with both schemes, as the system wants them."""
    light, dark = (re.search(_SCHEME.format(name=name), look) for name in ("default", "slate"))
    if light is None or dark is None:
        raise ValueError("look.css has no longer the two schemes that the embedded pages take their colours from")
    return f":root {{{light[1]}}}\n@media (prefers-color-scheme: dark) {{\n:root {{{dark[1]}}}\n}}\n"


def ship_embeds(folder: Path, language: str = ENGLISH, place: str = "") -> None:
    """A page for every calculator below `folder`/`place`/embed; `place` is "" for English, else a folder such as "de/"."""
    (folder / COLOURS).write_text(colours(LOOK.read_text(encoding="utf-8")), encoding="utf-8")
    top = "../../" + "../" * place.count("/")
    for one in CALCULATORS:
        file = folder / f"{place}{EMBED}" / one.slug / "index.html"
        file.parent.mkdir(parents=True, exist_ok=True)
        file.write_text(embed_page(one.slug, language, top), encoding="utf-8")


def embed_picker(_nothing: str = "") -> str:
    """What the page about embedding asks; its script (app/embed-pick.js) shows it and turns it into a snippet."""

    def field(name: str, control: str) -> str:
        label = f'<label for="embed-{name}">{escape(say(f"site.embed-{name}"))}</label>'
        return f'<div class="ww-field">{label}{control}<p class="ww-help">{escape(say(f"site.embed-{name}-help"))}</p></div>'

    def choice(name: str, options: dict[str, str]) -> str:
        inside = "".join(f'<option value="{value}">{escape(words)}</option>' for value, words in options.items())
        return field(name, f'<select id="embed-{name}" name="{name}">{inside}</select>')

    widths = {"": say("site.embed-width-full")} | {f"{px}": say("site.embed-px", n=px) for px in WIDTHS}
    text = 'autocomplete="off" spellcheck="false"'
    fields = (
        choice("slug", {one.slug: one.title for one in CALCULATORS}),
        choice("place", FOLDERS),
        choice("width", widths),
        field("height", f'<input id="embed-height" name="height" inputmode="numeric" {text}>'),
        field("address", f'<input id="embed-address" name="address" inputmode="url" {text}>'),
        field("link", f'<input id="embed-link" name="link" inputmode="url" {text}>'),
        field("snippet", f'<textarea id="embed-snippet" name="snippet" rows="7" readonly {text}></textarea>'),
    )
    copy = f'<button type="button" class="ww-button" data-copy-snippet>{escape(say("site.embed-copy"))}</button>'
    return (
        f'<div class="ww-embed" data-embed><p data-without>{escape(say("site.embed-without-script"))}</p>'
        f'<form hidden novalidate aria-label="{escape(say("site.embed-form"))}">{"".join(fields)}'
        f'<div class="ww-actions">{copy}</div><p role="status" data-said="{escape(say("site.embed-copied"))}"'
        f' data-by-hand="{escape(say("site.embed-by-hand"))}"></p></form>'
        f'<p class="ww-embed-seen" hidden>{escape(say("site.embed-seen"))}</p></div>'
    )
