"""A list of pages names every page of its folder, each with its first sentence."""

from __future__ import annotations

from pathlib import Path

import pytest

from build_tools.pages.macros import contents
from build_tools.pages.macros.contents import ContentsError, contents_macro, opening


@pytest.fixture
def docs(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder of two pages and an index."""
    folder = tmp_path / "some"
    folder.mkdir()
    (folder / "index.md").write_text("# Some\n", encoding="utf-8")
    (folder / "one.md").write_text("# One\n\nIt is **first**,\nand short. More.\n", "utf-8")
    (folder / "two.md").write_text("# Two?\n\nSee [one](one.md). More.\n", "utf-8")
    monkeypatch.setattr(contents, "DOCS", tmp_path)
    return folder


def test_each_page_is_listed_with_its_first_sentence(docs: Path) -> None:
    """In the order named, without the marks of Markdown."""
    assert docs.exists()
    shown = contents_macro("some two one", "../")

    assert shown.index("Two?") < shown.index("One")
    assert "It is first, and short." in shown
    assert "See one." in shown
    assert 'href="../some/one/"' in shown


@pytest.mark.parametrize("named", ["one", "one two three"])
def test_a_page_too_few_or_too_many_stops_the_build(docs: Path, named: str) -> None:
    """A page is not forgotten in its list, and none is listed that is not there."""
    assert docs.exists()
    with pytest.raises(ContentsError, match=r"two|three"):
        contents_macro(f"some {named}", "")


def test_a_page_has_to_open_with_a_title_and_a_sentence(tmp_path: Path) -> None:
    """There is something to list it by."""
    page = tmp_path / "page.md"
    page.write_text("No title\n\nNor a sentence", encoding="utf-8")

    with pytest.raises(ContentsError):
        opening(page)
