"""Links: what goes in comes out; what is broken, hostile or newer is refused with one sentence."""

from __future__ import annotations

import base64
import json
import zlib

import pytest

from wedgework.catalogue import CALCULATORS
from wedgework.faces.link import MOST_BYTES, MOST_CHARACTERS, Opened, make_link, read_link, unknown_problem
from wedgework.problems import Refused
from wedgework.version import VERSION


def packed(data: bytes, version: int = 1) -> str:
    """A fragment with any inside."""
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    return f"w{version}." + base64.urlsafe_b64encode(packer.compress(data) + packer.flush()).decode().rstrip("=")


def inside(fragment: str) -> dict:
    text = fragment.removeprefix("w1.")
    return json.loads(zlib.decompress(base64.urlsafe_b64decode(text + "=" * (-len(text) % 4)), -15))


def refusal(fragment: str) -> str:
    """The code of the one problem."""
    with pytest.raises(Refused) as refused:
        read_link(fragment)
    (problem,) = refused.value.problems
    assert problem.sentence.endswith(".")
    assert problem.way_out
    return problem.code


GOOD = {"c": "gauge", "i": {"stitches": "38"}, "v": "0.1.0"}


def with_changes(**changes: object) -> str:
    return packed(json.dumps({**GOOD, **changes}).encode())


def test_a_link_holds_what_differs_from_the_defaults() -> None:
    fragment = make_link("gauge", {"stitches": "38", "rows": "60"}, digest="0a1b")
    assert inside(fragment) == {"c": "gauge", "i": {"stitches": "38"}, "v": VERSION, "d": "0a1b"}
    assert read_link(fragment) == Opened("gauge", {"stitches": "38"}, VERSION, False, (), "0a1b")


@pytest.mark.parametrize("one", CALCULATORS, ids=lambda one: one.slug)
def test_every_field_goes_through(one) -> None:
    inputs = {name: f"{default} \u00fc\u4e16<b>&amp;\"'" for name, default in one.defaults.items()}
    opened = read_link(make_link(one.slug, inputs))
    assert opened.inputs == inputs
    assert (opened.slug, opened.newer, opened.unknown) == (one.slug, False, ())


def test_a_link_is_an_address_as_it_is() -> None:
    fragment = make_link("panel-plan", {"title": "\u00e9" * 150, "yarn_1_name": "?" * 80})
    assert fragment.startswith("w1.")
    assert set(fragment[3:]) <= set("ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_")
    assert len(make_link("panel-plan", {})) < 60


def test_what_cannot_be_in_a_link_is_refused() -> None:
    with pytest.raises(LookupError):
        make_link("nothing", {})
    with pytest.raises(Refused) as refused:
        make_link("gauge", {"stiches": "38"})
    assert "stiches" in str(refused.value)
    noise = "".join(chr(0x4E00 + (i * 7919) % 20000) for i in range(4000))
    with pytest.raises(Refused) as refused:
        make_link("gauge", {"stitches": noise})
    assert refused.value.problems[0].code == "faces.link-much"
    with pytest.raises(Refused):
        make_link("gauge", {"stitches": "\ud800"})


@pytest.mark.parametrize(
    "fragment",
    [
        "",
        "w1",
        "w1.",
        "w1.!!!!",
        "w1.AAAA=",
        "w1.A",
        "w0.AAAA",
        "w1 .AAAA",
        "#w1.AAAA",
        "W1.AAAA",
        "<script>alert(1)</script>",
        "w1.\u00fc",
        "w1.\ud800",
        packed(b""),
        packed(b"null"),
        packed(b"[]"),
        packed(b"\xff\xfe"),
        packed(b'"' + b"x" * 40_000 + b'"'),
        packed(b"[" * 15_000),
        packed(b'{"c":"gauge","i":{},"v":"0.1.0"}') + "AAAA",
        packed(b'{"c":"gauge","i":{},"v":"0.1.0"}')[:-4],
        packed(b'{"c":"gauge","c":"gauge","i":{},"v":"0.1.0"}'),
        packed(b'{"c":"gauge","i":{"rows":"1","rows":"2"},"v":"0.1.0"}'),
        packed(b'{"c":"gauge","i":{"rows":"\\ud800"},"v":"0.1.0"}'),
        packed(b'{"c":"gauge","i":{"rows":NaN},"v":"0.1.0"}'),
        with_changes(i=[]),
        with_changes(i={"rows": 60}),
        with_changes(i={"rows": {"rows": "60"}}),
        with_changes(v=None),
        with_changes(v=1),
        with_changes(v="<b>0.1.0</b>"),
        with_changes(v="newest"),
        with_changes(c=7),
        with_changes(d=7),
        with_changes(d="no digest"),
        with_changes(x=1),
    ],
)
def test_a_broken_link_is_one_sentence(fragment: str) -> None:
    assert refusal(fragment) == "faces.link-broken"


def test_a_link_that_is_too_long_is_not_opened() -> None:
    assert refusal("w1." + "A" * MOST_CHARACTERS) == "faces.link-long"


def test_a_small_link_does_not_unpack_to_a_large_one() -> None:
    bomb = packed(b" " * (MOST_BYTES + 1))
    assert len(bomb) < 200
    assert refusal(bomb) == "faces.link-broken"
    just = json.dumps(GOOD).encode()
    assert read_link(packed(just + b" " * (MOST_BYTES - len(just)))).slug == "gauge"


def test_a_newer_link_says_so() -> None:
    assert refusal("w2.anything") == "faces.link-newer"
    assert refusal("w37.AAAA") == "faces.link-newer"
    assert refusal(with_changes(v="99.0.0", c="not-yet")) == "faces.link-newer"
    assert refusal(with_changes(v="99.0.0", x=1)) == "faces.link-newer"
    assert refusal(with_changes(c="never")) == "faces.link-calculator"
    assert read_link(with_changes(v="99.0.0")).newer
    assert not read_link(with_changes(v="0.0.1")).newer


def test_unknown_fields_are_said_and_do_not_count() -> None:
    many = {f"f{number}": "" for number in range(20)}
    opened = read_link(with_changes(i={"stitches": "38", "colour": "red", "<img src=x>": "y", **many}))
    assert opened.inputs == {"stitches": "38"}
    assert opened.unknown[:2] == ("colour", "<img src=x>")
    said = str(unknown_problem(opened))
    assert "colour, ?, f0" in said
    assert "<img" not in said
    assert len(said) < 300
