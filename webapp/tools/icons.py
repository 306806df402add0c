"""Draw the app's icons as pictures from webapp/static/icon.svg:

.venv/bin/python webapp/tools/icons.py
"""

from __future__ import annotations

import re
from pathlib import Path

from machine import find_chromium
from PIL import Image
from playwright.sync_api import sync_playwright
from steps import WEBAPP

STATIC = WEBAPP / "static"
#: A mask may take all but a circle of four fifths of the width: the drawing stays inside it.
MASKED = '<g transform="translate(256 256) scale(.8) translate(-256 -243)">'


def main() -> None:
    rounded = (STATIC / "icon.svg").read_text()
    square = rounded.replace(' rx="96"', "")
    assert square != rounded
    drawings = {
        "icon-180.png": (square, 180),  # iOS rounds it by itself
        "icon-192.png": (rounded, 192),
        "icon-512.png": (rounded, 512),
        "icon-maskable-512.png": (re.sub("<g>", MASKED, square), 512),
    }
    with sync_playwright() as player:
        browser = player.chromium.launch(executable_path=find_chromium(), args=["--no-sandbox"])
        for name, (drawing, size) in drawings.items():
            page = browser.new_page(viewport={"width": size, "height": size})
            style = f"<style>* {{margin: 0}} svg {{display: block; width: {size}px}}</style>"
            page.set_content(style + drawing)
            page.screenshot(path=STATIC / name, omit_background=True)
            few_colours(STATIC / name)
        browser.close()


def few_colours(path: Path) -> None:
    """Write a picture anew with a palette, at a third of its bytes: nobody sees a difference."""
    with Image.open(path) as picture:
        method = Image.Quantize.FASTOCTREE if picture.mode == "RGBA" else Image.Quantize.MEDIANCUT
        small = picture.quantize(128, method=method, dither=Image.Dither.NONE)
    small.save(path, optimize=True)


if __name__ == "__main__":
    main()
