"""Moving a block in the list of the planner: the wish goes into the field, the plan follows, what cannot be is said."""

from __future__ import annotations

from playwright.sync_api import Page

from visiting import settled

KEYS = "rows => rows.map(row => row.dataset.key).filter(key => /^b\\d+$/.test(key))"


def order(page: Page) -> list[str]:
    keys: list[str] = page.eval_on_selector_all("output tr[data-key]", KEYS)
    return keys


def wish(page: Page, block: str, words: str) -> None:
    row = page.locator(f"output tr[data-key={block}]")
    row.get_by_role("button").click()
    page.locator("output .ww-moves").get_by_role("button", name=words).click()
    settled(page)


def test_a_block_is_moved_and_its_side_changed(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        page.select_option("[name=layout]", "diamond-in-corners")
        settled(page)
        first, second, diamond, *_ = order(page)
        wish(page, first, "after the block below")
        assert page.input_value("[name=own_order]") == f"{first} after {second}"
        assert order(page)[:3] == [second, first, diamond]
        side = page.get_attribute(f"output tr[data-key={diamond}]", "data-side")
        wish(page, diamond, "at the other side")
        assert page.get_attribute(f"output tr[data-key={diamond}]", "data-side") != side
        # The other way round takes the place of the first wish; the wish for the side stays.
        wish(page, first, "before the block above")
        typed = page.input_value("[name=own_order]").splitlines()
        assert typed == [f"{diamond} from the {'left' if side == 'R' else 'right'}", f"{first} before {second}"]
        assert order(page)[:3] == [first, second, diamond]


def test_what_cannot_be_is_said_and_the_last_good_plan_stays(served: str, visitor) -> None:
    with visitor() as one:
        page = one.open(f"{served}plan/", live=True)
        page.select_option("[name=layout]", "diamond-in-corners")
        settled(page)
        _, second, diamond, *_ = before = order(page)
        wish(page, diamond, "before the block above")
        assert f"{second} lies right below it" in page.inner_text(".ww-told")
        assert order(page) == before
        assert "ww-old" in (page.get_attribute(".ww-answer", "class") or "")
        page.fill("[name=own_order]", "")
        settled(page)
        assert order(page) == before
        assert page.inner_text(".ww-told") == ""
