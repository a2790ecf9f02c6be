"""Intervals are read as codes word them, and end on the right day."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.domain.codes.registry import CODES
from checkers.judgement.years.due_dates import parse_every

DAYS = st.dates(min_value=date(1990, 1, 1), max_value=date(2100, 12, 31))


@pytest.mark.parametrize(
    ("words", "expected"),
    [
        ("6 months", (6, "month")),
        ("1 month", (1, "month")),
        ("2 years", (2, "year")),
        ("every 3 weeks", (3, "week")),
        ("each day before use", (1, "day")),
        ("each day or each use", (1, "day")),
        ("Year", (1, "year")),
    ],
)
def test_an_interval_is_read_as_worded(words: str, expected: tuple[int, str]) -> None:
    """A number and a unit, or a unit alone."""
    every = parse_every(words)

    assert every is not None
    assert expected == (every.count, every.unit)


@pytest.mark.parametrize("words", ["", "now and then", "0 months", "6", "-3 months", "500 years"])
def test_what_is_no_interval_is_none(words: str) -> None:
    """Nothing is guessed."""
    assert parse_every(words) is None


@pytest.mark.parametrize("code", CODES)
def test_every_interval_of_every_code_can_be_dated(code: str) -> None:
    """No rule of the data is passed over in silence."""
    assert all(parse_every(rule.every) for rule in CODES[code].intervals)


@pytest.mark.parametrize(
    ("last", "words", "due"),
    [
        (date(2026, 11, 24), "6 months", date(2027, 5, 24)),
        (date(2026, 8, 31), "6 months", date(2027, 2, 28)),
        (date(2024, 2, 29), "1 year", date(2025, 2, 28)),
        (date(2024, 2, 29), "4 years", date(2028, 2, 29)),
        (date(2026, 12, 31), "1 day", date(2027, 1, 1)),
        (date(2026, 12, 15), "2 weeks", date(2026, 12, 29)),
    ],
)
def test_an_interval_ends_on_the_same_day_of_the_month_or_its_last(
    last: date, words: str, due: date
) -> None:
    """31 August and half a year is the last of February."""
    every = parse_every(words)

    assert every is not None
    assert due == every.after(last)


@given(DAYS, st.integers(1, 24))
def test_a_later_test_is_never_due_earlier(last: date, months: int) -> None:
    """Testing a day later never moves the next day forward."""
    every = parse_every(f"{months} months")

    assert every is not None
    assert every.after(last) <= every.after(last + timedelta(days=1))
    assert every.after(last) > last
