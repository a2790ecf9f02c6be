"""Limit rows in words."""

from __future__ import annotations

import pytest

from checkers.domain.limits.conditions import CHOICES, Interval
from checkers.domain.limits.tables import TABLES
from checkers.domain.limits.words import (
    WAVEFORMS,
    WORDS,
    amount_in_words,
    describe,
    interval_in_words,
    sheet,
)


@pytest.mark.parametrize(
    ("value", "unit", "words"),
    [
        (300.0, "ms", "300 ms"),
        (10_000.0, "ms", "10 s"),
        (30.0, "mA", "30 mA"),
        (5000.0, "mA", "5 A"),
        (0.1, "share", "10 %"),
        (3.0, "ratio", "3"),
        (50.0, "V", "50 V"),
    ],
)
def test_a_figure_is_shown_in_the_unit_of_its_size(value: float, unit: str, words: str) -> None:
    """Seconds from two seconds up, amperes from one ampere up."""
    assert amount_in_words(value, unit) == words


@pytest.mark.parametrize(
    ("interval", "words"),
    [
        (Interval(30.0, 30.0, low_inside=True, high_inside=True), "30 mA"),
        (Interval(10.0, 30.0, low_inside=False, high_inside=True), "above 10 mA and up to 30 mA"),
        (Interval(10.0, low_inside=True), "from 10 mA"),
        (Interval(high=30.0), "below 30 mA"),
    ],
)
def test_a_range_says_whether_its_ends_belong_to_it(interval: Interval, words: str) -> None:
    """Above is not from, and up to is not below."""
    assert interval_in_words(interval, "mA") == words


def test_a_row_says_device_test_and_limit() -> None:
    """As a person would read it from the printed table."""
    row = TABLES["iec-61008-1/break-times-ac"].rows[6]
    words = describe(row)

    assert words["device"] == "RCCB, S, IΔn above 30 mA, In from 25 A"
    assert words["test"] == "AC (sine), 1 × IΔn"
    assert words["limit"] == "130 ms to 500 ms"


@pytest.mark.parametrize(
    ("table", "number", "limit"),
    [
        ("iec-62955/no-trip-times", 1, "must not operate"),
        ("iec-60364-5-53/smooth-dc-tolerated", 1, "no figure declared"),
        ("ul-943/break-times", 1, "≤ (20 mA / I) ^ 1.43 s for I from 6 mA and up to 264 mA"),
        ("bs-4293/break-times", 3, "200 ms + 0.5 × the set delay to 200 ms + the set delay"),
        ("iec-61008-1/operating-currents", 8, "0.35 × IΔn to 1.4 × IΔn + 6 mA"),
    ],
)
def test_every_kind_of_limit_has_words(table: str, number: int, limit: str) -> None:
    """Figures, shares, sums, formulas, never, and nothing declared."""
    assert describe(TABLES[table].rows[number - 1])["limit"] == limit


@pytest.mark.parametrize("key", sorted(TABLES))
def test_a_sheet_has_a_cell_for_every_heading_and_a_limit_in_every_row(key: str) -> None:
    """No table comes out ragged or empty."""
    made = sheet(TABLES[key])
    limits = [row[made.headings.index("Limit")] for row in made.cells]

    assert {len(row) for row in made.cells} == {len(made.headings)}
    assert len(made.cells) == len(TABLES[key].rows)
    assert all(limits)


def test_every_word_of_a_condition_has_words_for_a_reader() -> None:
    """No tag of a data file reaches a page as it stands."""
    without = {"type", "form", "quantity", "waveform"}
    words = {word for name, known in CHOICES.items() if name not in without for word in known}

    assert words - {"G", "S"} <= WORDS.keys()
    assert CHOICES["waveform"] <= WAVEFORMS.keys()
