"""Cautions and sources as data: no firm, no shop, no address."""

from __future__ import annotations

from pathlib import Path

import pytest

import checkers.data

FILES = sorted(Path(checkers.data.__file__).parent.rglob("*.toml"))


@pytest.mark.parametrize("path", FILES, ids=lambda path: path.stem)
def test_a_data_file_holds_no_address_of_a_page(path: Path) -> None:
    """A number is cited by document and clause, which outlive a page."""
    text = path.read_text(encoding="utf-8")

    assert "http" not in text
    assert "www." not in text
