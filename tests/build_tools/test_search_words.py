"""What people type leads to a page, whole words first."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.search_words import search_words
from build_tools.search_worker import (
    AS_BEGINNING,
    AT_ONCE,
    WHEN_OPENED,
    in_full_first,
    mend_search,
)

PAGE = """# Page

Text.

People type: 33ms, RCD won't trip (at all),
type B, 33ms.
{ .also }

More text.
"""


def test_the_words_of_the_line_once_each() -> None:
    """Over two lines, without commas and brackets, in small letters."""
    assert search_words(PAGE) == ["33ms", "rcd", "won't", "trip", "at", "all", "type", "b"]


def test_a_page_without_the_line_has_none() -> None:
    """Its title and text have to do."""
    assert search_words("# Page\n\nAlso called something else.\n") == []


def test_a_short_word_is_looked_for_as_it_is() -> None:
    """The change is made once, where the theme makes beginnings of words."""
    mended = in_full_first(f"a{AS_BEGINNING}b")

    assert "r.length<3?r" in mended
    assert AS_BEGINNING not in mended


def test_another_search_of_the_theme_stops_the_build() -> None:
    """A new release of the theme is looked at before it is trusted."""
    with pytest.raises(ValueError, match="search_worker"):
        in_full_first("something else")


def test_the_files_of_the_site_are_changed(tmp_path: Path) -> None:
    """The one script that searches, and the one that asks for its index."""
    scripts = tmp_path / "assets/javascripts"
    worker, bundle = scripts / "workers/search.0123.min.js", scripts / "bundle.0123.min.js"
    worker.parent.mkdir(parents=True)
    worker.write_text(AS_BEGINNING, encoding="utf-8")
    bundle.write_text(AT_ONCE, encoding="utf-8")

    mend_search(tmp_path)

    assert "^20" in worker.read_text(encoding="utf-8")
    assert bundle.read_text(encoding="utf-8") == WHEN_OPENED
