"""One text for several sizes: counts side by side where nothing else differs, and back to each size exactly."""

from __future__ import annotations

import pytest

from wedgework.words.several_sizes import for_size, one_text


@pytest.mark.parametrize(
    ("versions", "text"),
    [
        (("Counter to 000.", "Counter to 000."), "Counter to 000."),
        (("Knit 18 rows.", "Knit 20 rows.", "Knit 22 rows."), "Knit 18 (20, 22) rows."),
        (("Only L20-R20 will knit.", "Only L24-R24 will knit."), "Only L20-R20 (L24-R24) will knit."),
        (("29 7/8 in wide, 2 rows", "35 3/8 in wide, 2 rows"), "29 7/8 (35 3/8) in wide, 2 rows"),
        (("COL. RC 049.", "COL. RC 061."), "COL. RC 049 (061)."),
        (("19 times (L24 to L6)", "24 times (L29 to L6)"), "19 (24) times (L24 (L29) to L6)"),
    ],
)
def test_counts_side_by_side(versions: tuple[str, ...], text: str) -> None:
    assert one_text(versions) == text
    assert [for_size(text, k, len(versions)) for k in range(len(versions))] == list(versions)


@pytest.mark.parametrize(
    "versions",
    [
        ("Knit 1 row.", "Knit 2 rows."),
        ("Hold L5, L4.", "Hold L5."),
        # It would be read as counts of two sizes.
        ("Hold 2 (3) needles, knit 4 rows.", "Hold 2 (3) needles, knit 6 rows."),
    ],
)
def test_what_cannot_be_one_text(versions: tuple[str, ...]) -> None:
    assert one_text(versions) is None
