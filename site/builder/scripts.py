"""Our own scripts, copied as they are, and beside them the sentences that they say."""

from __future__ import annotations

import json
import shutil
from pathlib import Path

from wedgework.say.english import MESSAGES

__all__ = ["APP", "ship_scripts"]

APP = Path(__file__).resolve().parents[1] / "app"
# The offline worker lies at the site's first page, since it serves only what lies below its own place.
ELSEWHERE = {"sw.js"}
ROOMS = ("app.", "machine.")


def ship_scripts(folder: Path) -> None:
    """site/app/ to app/, and app/sentences.js from the say room."""
    target = folder / "app"
    shutil.copytree(APP, target, dirs_exist_ok=True, ignore=shutil.ignore_patterns(*ELSEWHERE))
    said = {key: words for key, words in sorted(MESSAGES.items()) if key.startswith(ROOMS)}
    text = json.dumps(said, ensure_ascii=False, indent=1)
    about = "// Made by the build from the sentences of the core."
    (target / "sentences.js").write_text(f"{about}\nexport default {text};\n", encoding="utf-8")
