"""The line of a page with what people type is read as words."""

from __future__ import annotations

from build_tools.pages.search_words import search_words

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
