"""Every picture a page asks for can be read by everyone: on a phone, by a screen reader."""

from __future__ import annotations

import json
import re
from collections.abc import Iterator
from functools import cache
from xml.etree import ElementTree as ET

import pytest

from build_tools.drawings.svg import WIDTH, Picture
from build_tools.files import paths
from build_tools.pages.all_pages import made_pages
from build_tools.pages.macros.pictures import PICTURES, picture_html

MARK = re.compile(r"<!-- show picture (?P<name>\S+)(?: (?P<of>\{.*?\}))? -->", re.DOTALL)
SVG = "{http://www.w3.org/2000/svg}"
CHARACTER = {"": 7.4, "picture__text--strong": 8.2, "picture__text--large": 10.0}  # units, DejaVu
SLACK = 6.0  # units that a text may reach past the edge, into the page's own margin


@cache
def pages() -> dict[str, str]:
    """Return every page's Markdown, written and made."""
    docs = paths.ROOT / "docs"
    written = {
        path.relative_to(docs).as_posix(): path.read_text(encoding="utf-8")
        for path in docs.rglob("*.md")
    }
    return {**made_pages(), **written}


def asked_for(page: str) -> Iterator[Picture]:
    """Yield the pictures that a page asks for."""
    for mark in MARK.finditer(pages()[page]):
        yield PICTURES[mark["name"]](**json.loads(mark["of"] or "{}"))


WITH_PICTURES = sorted(page for page, text in pages().items() if MARK.search(text))


def test_every_kind_of_picture_is_shown_somewhere() -> None:
    """A picture that no page asks for is not there."""
    shown = {mark["name"] for text in pages().values() for mark in MARK.finditer(text)}

    assert shown == set(PICTURES)


@pytest.mark.parametrize("page", WITH_PICTURES)
def test_each_picture_says_in_words_what_it_shows(page: str) -> None:
    """A title and a description belong to the image, and no name stands twice on a page."""
    pictures = list(asked_for(page))

    for picture in pictures:
        image = ET.fromstring(picture.svg)  # noqa: S314  # our own drawing
        assert image.get("role") == "img"
        named = {image.get("aria-labelledby"), image.get("aria-describedby")}
        assert named == {element.get("id") for element in image if element.tag in ("title", "desc")}
        assert all(element.text for element in image if element.tag in ("title", "desc"))
    keys = [picture.key for picture in pictures]
    assert len(keys) == len(set(keys))


@pytest.mark.parametrize("page", WITH_PICTURES)
def test_each_picture_fits_a_phone(page: str) -> None:
    """No text reaches past the drawing's edges, and none lies below its lower one."""
    for picture in asked_for(page):
        for text in ET.fromstring(picture.svg).iter("text"):  # noqa: S314  # our own drawing
            start, end = extent(text)
            assert start >= -SLACK, (picture.key, text.text)
            assert end <= WIDTH + SLACK, (picture.key, text.text)
            assert float(text.get("y", "")) <= picture.height, (picture.key, text.text)


def extent(text: ET.Element) -> tuple[float, float]:
    """Return about where a text starts and ends."""
    kinds = (text.get("class") or "").split()
    each = max(width for kind, width in CHARACTER.items() if not kind or kind in kinds)
    width = each * len(text.text or "")
    share = {"start": 0.0, "middle": 0.5, "end": 1.0}[text.get("text-anchor", "start")]
    start = float(text.get("x", "")) - share * width
    return start, start + width


@pytest.mark.parametrize("page", WITH_PICTURES)
def test_no_picture_carries_styles_or_scripts(page: str) -> None:
    """The content-security policy allows neither; colours come from the style sheet."""
    for picture in asked_for(page):
        shown = picture_html(picture)
        assert not re.search(r"style=|<script|fill=|stroke=|href=", shown)
