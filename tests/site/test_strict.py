"""The build is strict: what a reader would stumble over stops it. Small pages of their own, the project's configuration."""

from __future__ import annotations

import os
import subprocess
import sys
from pathlib import Path

import pytest

TOP = Path(__file__).resolve().parents[2]


def build(folder: Path, pages: dict[str, str]) -> subprocess.CompletedProcess[str]:
    """Build these pages as the project's are built."""
    (folder / "pages").mkdir()
    for name, text in pages.items():
        (folder / "pages" / name).write_text(text, encoding="utf-8")
    (folder / "mkdocs.yml").write_text(
        f"INHERIT: {TOP / 'mkdocs.yml'}\ndocs_dir: {folder / 'pages'}\nsite_dir: {folder / 'out'}\n"
        f"theme:\n  custom_dir: {TOP / 'site' / 'theme'}\nnav:\n  - Home: index.md\n",
        encoding="utf-8",
    )
    return subprocess.run(
        [sys.executable, "-m", "mkdocs", "build", "-f", folder / "mkdocs.yml"],
        env={**os.environ, "PYTHONPATH": str(TOP / "site")},
        capture_output=True,
        text=True,
        check=False,
    )


def test_pages_without_a_mistake_are_built(tmp_path: Path) -> None:
    done = build(tmp_path, {"index.md": "# Home\n\n[here](#home)\n"})
    assert done.returncode == 0, done.stderr


@pytest.mark.parametrize(
    ("pages", "words"),
    [
        pytest.param({"index.md": "[x](nothing.md)\n"}, "nothing.md", id="a link to no page"),
        pytest.param({"index.md": "[x](#nothing)\n"}, "nothing", id="a link to no heading"),
        pytest.param({"index.md": "[x](/absolute/)\n"}, "absolute", id="an absolute link"),
        pytest.param({"index.md": "# Home\n", "lost.md": "# Lost\n"}, "lost.md", id="a page that the navigation forgot"),
        pytest.param({"index.md": "::: nothing\n"}, "no part is called 'nothing'", id="a part that is not there"),
    ],
)
def test_a_mistake_stops_the_build(pages: dict[str, str], words: str, tmp_path: Path) -> None:
    done = build(tmp_path, pages)
    assert done.returncode != 0
    assert words in done.stdout + done.stderr
