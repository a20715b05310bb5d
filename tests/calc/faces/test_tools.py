"""What stands round an answer: few buttons over it, the ways on and the link under it, in a stranger's page neither."""

from __future__ import annotations

import re

import pytest

from wedgework.catalogue import CALCULATORS
from wedgework.faces.onward import ways
from wedgework.faces.page import calculator_html
from wedgework.faces.tools import IN_SIGHT, tools_over, tools_under

SLUGS = [one.slug for one in CALCULATORS]


def does(html: str) -> list[str]:
    return re.findall(r'data-does="([^"]+)"', html)


@pytest.mark.parametrize("slug", SLUGS)
def test_every_way_on_has_its_button_and_few_are_seen_at_once(slug: str) -> None:
    under = tools_under(slug)
    assert tuple(re.findall(r'data-to="([^"]+)"', under)) == ways(slug)
    before, folded, inside = under.partition("<details")
    assert before.split("ww-sharing")[0].count("<button") <= IN_SIGHT + 1, "with the way to see it stitch by stitch"
    assert bool(folded) == (len(ways(slug)) + (slug == "panel-plan") > IN_SIGHT)
    assert inside.count("data-to") == max(0, len(ways(slug)) + (slug == "panel-plan") - IN_SIGHT)


@pytest.mark.parametrize("slug", SLUGS)
def test_a_strangers_page_leads_nowhere_else(slug: str) -> None:
    assert does(tools_over(slug, alone=True, long=True)) == []
    assert "href" not in tools_over(slug, alone=True, long=True)
    assert set(does(tools_under(slug, alone=True))) <= {"fabric"}
    assert "data-to" not in tools_under(slug, alone=True)


def test_the_planner_leads_to_the_machine_and_to_the_board() -> None:
    assert does(tools_over("panel-plan")) == ["machine"]
    assert "board" in does(tools_under("panel-plan"))


@pytest.mark.parametrize(("slug", "leads"), [("panel-plan", True), ("gauge", False)])
def test_from_a_long_answer_a_word_leads_to_what_is_under_it(slug: str, leads: bool) -> None:
    page = calculator_html(slug)
    assert (f'href="#{slug}-tools"' in page) == leads
    assert f'id="{slug}-tools"' in page
    assert page.index("ww-over") < page.index("<output>") < page.index("ww-tools")
