"""The windows of the page at the machine: every mishap has its steps, in the words of the screen."""

from __future__ import annotations

import re

import pytest

from wedgework.faces.machine_windows import MISHAPS, windows
from wedgework.say.english import MESSAGES


@pytest.mark.parametrize("key", MISHAPS)
def test_a_mishap_has_numbered_steps(key: str) -> None:
    steps = [name for name in MESSAGES if re.fullmatch(rf"machine\.mishap-{key}-\d", name)]
    assert steps == [f"machine.mishap-{key}-{n}" for n in range(1, len(steps) + 1)]
    assert len(steps) >= 3
    assert f"machine.mishap-{key}" in MESSAGES


def test_no_mishap_is_forgotten() -> None:
    told = {found[1] for name in MESSAGES if (found := re.fullmatch(r"machine\.mishap-([a-z]+)", name))}
    assert told == set(MISHAPS)


def test_a_step_is_called_a_step() -> None:
    for name, words in MESSAGES.items():
        if name.startswith("machine."):
            text = words if isinstance(words, str) else " ".join(words)
            assert not re.search(r"\b(cards?|turns?|cues?)\b", text, re.IGNORECASE), name


def test_each_window_has_a_name_and_a_way_out() -> None:
    made = windows()
    ids = re.findall(r' id="([^"]+)"', made)
    assert len(ids) == len(set(ids))
    for dialog in re.findall(r"<dialog.*?</dialog>", made, re.DOTALL):
        name = re.search(r'aria-labelledby="([^"]+)"', dialog)
        assert name
        assert f'id="{name[1]}"' in dialog
        assert "data-close" in dialog
