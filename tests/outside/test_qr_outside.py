"""The code against a decoder that knows nothing of its maker, and against the tables of the standard."""

from __future__ import annotations

import random
import re

import numpy
import pytest
import zxingcpp

from wedgework.draw.qr import MOST_BYTES, QUIET, qr_svg

HEAD = "https://guild.example/wedgework/calculators/panel-plan/#w1."
SIGNS = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz0123456789-_"
# ISO/IEC 18004:2015, table 7: bytes at level L that versions 1, 2, 3 ... hold. From memory, and held against the decoder here.
BYTES_AT_L = (17, 32, 53, 78, 106, 134, 154, 192, 230, 271, 321, 367, 425, 458, 520, 586, 644)


def address(length: int) -> str:
    chance = random.Random(length)
    return HEAD + "".join(chance.choice(SIGNS) for _ in range(length - len(HEAD)))


def modules(svg: str) -> numpy.ndarray:
    """The drawing as a picture of one pixel a module, read from its bars alone."""
    (across,) = re.findall(r'viewBox="0 0 (\d+) \1"', svg)
    picture = numpy.full((int(across), int(across)), 255, dtype=numpy.uint8)
    for x, y, run in re.findall(r"M(\d+) (\d+)h(\d+)v1", svg):
        picture[int(y), int(x) : int(x) + int(run)] = 0
    return picture


def decoded(picture: numpy.ndarray, pixels: int = 4) -> list[str]:
    """What the library zxing-cpp finds in it, each module so many pixels."""
    found = zxingcpp.read_barcodes(numpy.kron(picture, numpy.ones((pixels, pixels), dtype=numpy.uint8)))
    assert all(one.format == zxingcpp.BarcodeFormat.QRCode for one in found)
    return [one.text for one in found]


@pytest.mark.parametrize("length", [60, 100, 154, 155, 230, 300, 458, MOST_BYTES])
def test_a_decoder_reads_the_address(length: int) -> None:
    """zxing-cpp, a general reader of codes of many kinds."""
    wanted = address(length)
    assert decoded(modules(qr_svg(wanted, "", prefix="code"))) == [wanted]


@pytest.mark.parametrize("length", [120, 300, MOST_BYTES])
def test_it_is_read_with_a_thirtieth_of_it_spoilt(length: int) -> None:
    """Level L corrects about 7 % of the codewords (ISO/IEC 18004, error correction); a drop of tea on the sheet is less."""
    picture = modules(qr_svg(address(length), "", prefix="code"))
    across = len(picture)
    side = int((across * across / 60) ** 0.5)
    picture[across // 2 : across // 2 + side, across // 2 : across // 2 + side] = 255
    assert decoded(picture) == [address(length)]


@pytest.mark.parametrize(("version", "most"), [(v, most) for v, most in enumerate(BYTES_AT_L, 1) if most > len(HEAD)])
def test_as_few_modules_as_the_standard_allows(version: int, most: int) -> None:
    """Version v has 17 + 4 v modules a side (ISO/IEC 18004, 5.1) and at level L holds what the table of capacities says."""
    side = 17 + 4 * version + 2 * QUIET
    if most <= MOST_BYTES:
        assert len(modules(qr_svg(address(most), "", prefix="code"))) == side
    if most < MOST_BYTES:
        assert len(modules(qr_svg(address(most + 1), "", prefix="code"))) == side + 4


def test_a_decoder_finds_nothing_in_a_code_with_its_corner_gone() -> None:
    """The judge can say no."""
    picture = modules(qr_svg(address(300), "", prefix="code"))
    picture[: QUIET + 8, : QUIET + 8] = 255
    assert decoded(picture) == []
