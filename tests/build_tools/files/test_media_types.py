"""Every kind of file has one type, wherever it is served from."""

from __future__ import annotations

import pytest

from build_tools.files.media_types import TYPES, media_type


@pytest.mark.parametrize("suffix", TYPES)
def test_a_text_says_that_it_is_utf_8(suffix: str) -> None:
    """And nothing else says a charset (RFC 6838, 4.2.1: for `text` alone)."""
    assert media_type(f"some/where{suffix}").startswith(TYPES[suffix])
    assert ("charset=utf-8" in media_type(f"x{suffix}")) == TYPES[suffix].startswith("text/")


def test_a_file_of_no_known_kind_is_bytes() -> None:
    """Case makes no difference."""
    assert media_type("PAGE.HTML") == media_type("page.html")
    assert media_type("thing") == "application/octet-stream"
