"""Days are read as the country writes them."""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.codes.registry import CODES
from checkers.judgement.schedule.cells.days import day_in


@pytest.mark.parametrize(
    ("cell", "code", "day"),
    [
        ("2024-05-03", "gb", date(2024, 5, 3)),
        ("2024-05-03T10:00", "gb", date(2024, 5, 3)),
        ("03.05.2024", "us", date(2024, 5, 3)),
        ("3/4/2026", "gb", date(2026, 4, 3)),
        ("3/4/2026", "us", date(2026, 3, 4)),
        ("13/4/26", "us", date(2026, 4, 13)),
        ("4/13/26", "gb", date(2026, 4, 13)),
        ("3 mai 2024", "fr", date(2024, 5, 3)),
        ("12 juin 2023", "fr", date(2023, 6, 12)),
        ("12 juillet 2023", "fr", date(2023, 7, 12)),
        ("1-Dez-24", "de", date(2024, 12, 1)),
        ("1. März 2024", "de", date(2024, 3, 1)),
    ],
)
def test_a_day_is_read(cell: str, code: str, day: date) -> None:
    """The order of day and month is the country's, unless only one order makes a day."""
    assert day == day_in(cell, code)


@pytest.mark.parametrize("cell", ["", "soon", "31/2/2024", "2024", "3/2024", "1/1/1900"])
def test_what_is_no_day_is_refused(cell: str) -> None:
    """The words say what is wrong."""
    with pytest.raises(ValueError, match="“"):
        day_in(cell, "gb")


def test_the_order_of_day_and_month_is_a_fact_of_the_code() -> None:
    """The United States alone write the month first, of the countries known here (Unicode CLDR)."""
    assert [key for key, code in CODES.items() if code.month_first] == ["us"]
