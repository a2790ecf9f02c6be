"""Whether a picture shows nothing where a page should be."""

from __future__ import annotations

from pathlib import Path

from PIL import Image, ImageChops

Image.MAX_IMAGE_PIXELS = None  # a long page at its whole length, taken by ourselves
MOST = 780  # px of height without a mark: a page's own gaps, on the screen 915 high, are shorter


def is_empty(file: Path, most: int = MOST) -> bool:
    """Tell whether a picture has a stretch of one colour from edge to edge, too high for a gap."""
    with Image.open(file) as opened:
        grey = opened.convert("L")
    # A row that differs from itself shifted by one pixel has a mark in it.
    marks = ImageChops.difference(grey, ImageChops.offset(grey, 1, 0))
    top = 0
    while top + most <= grey.height:
        found = marks.crop((0, top, grey.width, top + most)).getbbox()
        if found is None:
            return True
        top += found[3]
    return False
