"""What a camera would find in a part of a page: its picture, and in it every code, read by the library zxing-cpp."""

from __future__ import annotations

import base64

import numpy
import zxingcpp
from playwright.sync_api import Page

__all__ = ["scanned"]

# The browser itself takes the picture apart into shades.
SHADES = """async (png) => {
    const image = new Image();
    image.src = `data:image/png;base64,${png}`;
    await image.decode();
    const pen = new OffscreenCanvas(image.width, image.height).getContext('2d');
    pen.drawImage(image, 0, 0);
    const colours = pen.getImageData(0, 0, image.width, image.height).data;
    let shades = '';
    for (let at = 1; at < colours.length; at += 4) shades += String.fromCharCode(colours[at]);
    return [image.width, image.height, btoa(shades)];
}"""


def scanned(page: Page, selector: str) -> list[zxingcpp.Barcode]:
    """Every code in the picture of this element, as it is seen."""
    png = base64.b64encode(page.locator(selector).screenshot()).decode()
    width, height, shades = page.evaluate(SHADES, png)
    return zxingcpp.read_barcodes(numpy.frombuffer(base64.b64decode(shades), dtype=numpy.uint8).reshape(height, width))
