"""The code of an address: whole modules, quiet zone, size; what does not fit is refused. A decoder judges it in tests/outside."""

from __future__ import annotations

import re
import xml.etree.ElementTree as ET

import pytest

from wedgework.draw.qr import MOST_BYTES, QUIET, WIDE_MM, qr_svg

ADDRESS = "https://guild.example/wedgework/plan/#w1.q1ZKVrJSSk8sTU9V0lHKVLKqrtVRKgMKGegZ6hko1QIA"


def test_a_code_has_a_size_on_paper_and_says_what_it_is() -> None:
    root = ET.fromstring(qr_svg(ADDRESS, "Swatch & <more>", prefix="code"))
    assert root.get("width") == root.get("height") == f"{WIDE_MM}mm"
    title, desc = root[0], root[1]
    assert title.text == "A code that opens: Swatch & <more>"
    assert f"{len(ADDRESS)} characters" in (desc.text or "")
    assert root.get("aria-labelledby") == f"{title.get('id')} {desc.get('id')}"


def test_it_is_black_on_white_with_its_quiet_zone() -> None:
    text = qr_svg(ADDRESS, "", prefix="code")
    (across,) = re.findall(r'viewBox="0 0 (\d+) \1"', text)
    assert f'<rect x="0" y="0" width="{across}" height="{across}" fill="#fff"/>' in text
    bars = [tuple(map(int, found)) for found in re.findall(r"M(\d+) (\d+)h(\d+)v1h-\3z", text)]
    assert min(x for x, _, _ in bars) == min(y for _, y, _ in bars) == QUIET
    assert max(x + run for x, _, run in bars) == max(y for _, y, _ in bars) + 1 == int(across) - QUIET
    assert "style" not in text


def test_what_cannot_be_scanned_is_no_code() -> None:
    whole = ADDRESS.ljust(MOST_BYTES, "A")
    assert "<svg" in qr_svg(whole, "", prefix="code")
    for address in (whole + "A", ADDRESS + "\u00e9"):
        with pytest.raises(ValueError, match="no code"):
            qr_svg(address, "", prefix="code")
