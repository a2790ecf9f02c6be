"""A limit table on a page has every row, with its clause and how it is known."""

from __future__ import annotations

import pytest

from build_tools.pages.codes import code_macro
from build_tools.pages.limits import limits_macro
from checkers.domain.codes.registry import CODES
from checkers.domain.limits.tables import TABLES
from checkers.domain.sources.documents import Evidence


@pytest.mark.parametrize("key", TABLES)
def test_every_row_tells_where_it_stands(key: str) -> None:
    """Each row names document and clause, and says in words how far it can be trusted."""
    page = limits_macro(key, "")
    rows = page.split("<tbody")[1].split("<tr ")[1:]

    assert len(rows) == len(TABLES[key].rows)
    for row, shown in zip(TABLES[key].rows, rows, strict=True):
        assert Evidence(row.evidence).meaning in shown
        assert row.citation.document in shown


def test_a_code_tells_its_tests_in_plain_words() -> None:
    """The British test at verification: one AC test at the rating (BS 7671, amendment 2)."""
    assert "Trip time at ×1, AC (sine): required" in code_macro("gb tests", "")


@pytest.mark.parametrize("key", CODES)
def test_a_code_links_to_its_tables(key: str) -> None:
    """Each code leads to the tables that serve it."""
    assert 'href="../../limits/' in code_macro(f"{key} tables", "../../")
