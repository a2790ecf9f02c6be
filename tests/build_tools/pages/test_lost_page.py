"""The page for a wrong address: the site's own styles, and links that hang on no place."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from build_tools.pages.lost_page import LOST, write_lost_page
from build_tools.site.build import ensure_site


def test_its_styles_are_those_of_the_front_page() -> None:
    """So it has the site's look, whatever the theme calls its files."""
    site = ensure_site()
    page, front = (site / name for name in (LOST, "index.html"))
    styles = re.compile(r'rel="stylesheet" href="\.?/?([^"]+)"')
    of_front = styles.findall(front.read_text(encoding="utf-8"))

    assert len(of_front) == 3
    assert styles.findall(page.read_text(encoding="utf-8")) == of_front


def test_every_address_on_it_begins_at_the_root_and_can_be_mended() -> None:
    """A host shows it at any depth: a relative one would lead elsewhere each time."""
    page = (ensure_site() / LOST).read_text(encoding="utf-8")
    addresses = re.findall(r'(?:href|src)="([^"]*)" data-to="([^"]*)"', page)

    assert len(addresses) == len(re.findall(r"(?:href|src)=", page)) > 8
    assert all(written == f"/{place}" for written, place in addresses)


def test_a_front_page_without_styles_stops_the_build(tmp_path: Path) -> None:
    """Nothing is guessed at."""
    (tmp_path / "index.html").write_text("<html></html>")

    with pytest.raises(ValueError, match="has no style"):
        write_lost_page(tmp_path, "any")
