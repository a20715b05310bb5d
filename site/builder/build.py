"""From Markdown and the core's answers to a folder of plain HTML.

    PYTHONPATH=site python -m builder.build build/site

Strict: a broken link, a missing anchor or a page that the navigation forgot stops it.
"""

from __future__ import annotations

import logging
import os
import sys
from pathlib import Path

from mkdocs.commands.build import build as mkdocs_build
from mkdocs.config import load_config
from mkdocs.exceptions import MkDocsException

from builder.budgets import check_budgets
from builder.embed import ship_embeds
from builder.fingerprint import fingerprint
from builder.finish import Flaw, finish
from builder.icons import ship_icons
from builder.keep import ship_worker
from builder.languages import LANGUAGES, catalogue
from builder.machine import ship_default_piece
from builder.policy import apply_policy
from builder.runtime import ship_runtime
from builder.scripts import ship_scripts
from builder.styles import ship_styles
from builder.translated import frame_words, join_languages, ship_translated
from wedgework.say import spoken
from wedgework.version import VERSION

__all__ = ["build", "main"]

TOP = Path(__file__).resolve().parents[2]


def build(target: Path) -> None:
    """Build every page into `target`. Raises MkDocsException or Flaw when something is wrong with a page."""
    os.environ["WEDGEWORK_VERSION"] = VERSION
    config = load_config(str(TOP / "mkdocs.yml"), site_dir=str(target.resolve()), strict=True)
    config.extra["words"] = frame_words()
    config.plugins.on_startup(command="build", dirty=False)
    try:
        mkdocs_build(config)
    finally:
        config.plugins.on_shutdown()
    ship_scripts(target)
    ship_runtime(target)
    ship_icons(target)
    # They take from the English site what they do not have, so it has to be there.
    for language in LANGUAGES:
        with spoken(language, catalogue(language)):
            ship_translated(target, language)
            ship_default_piece(target / language)
            ship_embeds(target, language, f"{language}/")
    ship_default_piece(target)
    ship_embeds(target)
    join_languages(target)
    finish(target, config.site_url or "")
    ship_styles(target)
    fingerprint(target)
    flaws = apply_policy(target)
    if flaws:
        raise Flaw("the policy would stop parts of these pages:\n" + "\n".join(flaws))
    # Last of all: whatever changes a file after this shuts the offline worker out.
    ship_worker(target)
    heavy = check_budgets(target)
    if heavy:
        raise Flaw("too much to load:\n" + "\n".join(heavy))


def main(arguments: list[str]) -> int:
    target = Path(arguments[0]) if arguments else TOP / "build" / "site"
    logging.basicConfig(level=logging.WARNING, format="%(levelname)s  %(message)s")
    try:
        build(target)
    except (MkDocsException, Flaw, OSError, ValueError) as wrong:
        print(f"The pages were not built: {wrong}", file=sys.stderr)
        return 1
    print(f"The pages lie in {target}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
