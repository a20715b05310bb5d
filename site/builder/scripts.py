"""Our own scripts, copied as they are, and beside them the sentences that they say."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

from builder.languages import LANGUAGES, sentences

__all__ = ["APP", "ship_scripts"]

APP = Path(__file__).resolve().parents[1] / "app"
# The offline worker lies at the site's first page, since it serves only what lies below its own place; see keep.py.
ELSEWHERE = {"sw"}
ROOMS = ("app.", "machine.")


def ship_scripts(folder: Path) -> None:
    """site/app/ to app/, and app/sentences.js from the say room."""
    target = folder / "app"
    shutil.copytree(APP, target, dirs_exist_ok=True, ignore=shutil.ignore_patterns(*ELSEWHERE))
    about = "// Made by the build from the sentences of the core."
    (target / "sentences.js").write_text(f"{about}\nexport default {_said('en')};\n", encoding="utf-8")
    for language in LANGUAGES:
        uses = f'import {{ useSentences }} from "./say.js";\n\nuseSentences({_said(language)});\n'
        (target / f"sentences-{language}.js").write_text(f"{about}\n{uses}", encoding="utf-8")


def _said(language: str) -> str:
    return json.dumps(sentences(language, ROOMS), ensure_ascii=False, indent=1)
