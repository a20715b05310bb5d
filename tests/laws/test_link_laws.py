"""Whatever is done to a link, it opens as it was made or is refused with one sentence; nothing falls, nothing hangs."""

from __future__ import annotations

import json
import random
import time

from hypothesis import given
from hypothesis import strategies as st

from wedgework.catalogue import CALCULATORS
from wedgework.faces.link import make_link, read_link
from wedgework.faces.wire import answer
from wedgework.problems import Refused

TEXTS = st.text(st.characters(codec="utf-8"), max_size=60)
CHARACTERS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
ODD = CHARACTERS + ".#%=+/<>\"' \n\x00\u00fc\ud800"


@st.composite
def typed(draw: st.DrawFn) -> tuple[str, dict[str, str]]:
    one = draw(st.sampled_from(CALCULATORS))
    return one.slug, draw(st.dictionaries(st.sampled_from(sorted(one.defaults)), TEXTS, max_size=6))


@given(typed())
def test_what_goes_in_comes_out(given: tuple[str, dict[str, str]]) -> None:
    slug, inputs = given
    opened = read_link(make_link(slug, inputs))
    defaults = next(one.defaults for one in CALCULATORS if one.slug == slug)
    assert {**defaults, **opened.inputs} == {**defaults, **inputs}


@given(typed())
def test_the_same_input_gives_the_same_link(given: tuple[str, dict[str, str]]) -> None:
    slug, inputs = given
    assert make_link(slug, dict(reversed(inputs.items()))) == make_link(slug, inputs)


@given(st.text(max_size=200))
def test_any_text_behind_the_sign_is_refused_or_opened(text: str) -> None:
    assert outcome(f"w1.{text}") in ("opened", "refused")
    assert outcome(text) in ("opened", "refused")


def outcome(fragment: str) -> str:
    try:
        read_link(fragment)
    except Refused as refused:
        return "refused" if len(refused.problems) == 1 else "refused, with too many words"
    return "opened"


def test_thousands_of_damaged_links() -> None:
    """Characters changed, lost, doubled, swapped; ends cut; two links in one. The same ones on every run."""
    chance = random.Random(20)
    whole = [
        make_link("gauge", {"stitches": "38", "width": "27.9; 28.1 cm"}, "0123456789ab"),
        make_link("panel-plan", {"title": "Harbour", "yarn_1_name": "Chalk & <Slate>", "width": "81 cm"}),
    ]
    begun = time.monotonic()
    opened = 0
    for number in range(6_000):
        signs = list(whole[number % 2])
        for _ in range(chance.randint(1, 3)):
            place = chance.randrange(len(signs))
            match chance.randrange(5):
                case 0:
                    signs[place] = chance.choice(ODD)
                case 1:
                    del signs[place:]
                case 2:
                    signs[place:place] = signs[place // 2 : place]
                case 3:
                    signs[place], signs[-1] = signs[-1], signs[place]
                case _:
                    signs[place:] = whole[(number + 1) % 2][place:]
            if not signs:
                break
        came = outcome("".join(signs))
        assert came in ("opened", "refused")
        opened += came == "opened"
    assert opened < 600, "most damage is noticed"
    assert time.monotonic() - begun < 60


@given(st.text(max_size=100))
def test_the_door_answers_whatever_a_link_is(text: str) -> None:
    told = json.loads(answer(json.dumps({"ask": "open", "fragment": text})))
    assert "problems" in told or told["answer"]["problems"]
