"""Records: values of the data files, read strictly."""

from __future__ import annotations

from datetime import date

import pytest

from checkers.domain.errors import DataError
from checkers.domain.tables.records import Record, amount


def record(**values: object) -> Record:
    """Return a record of a made-up file."""
    return Record("made-up.toml", "row 1", values)


@pytest.mark.parametrize(
    ("text", "kind", "expected"),
    [
        ("300 ms", "time", 300.0),
        ("0.3 s", "time", 300.0),
        ("10 s", "time", 10_000.0),
        ("30 mA", "current", 30.0),
        ("5 A", "current", 5000.0),
        ("50 V", "voltage", 50.0),
        ("10 %", "percentage", 10.0),
    ],
)
def test_an_amount_is_a_figure_in_the_unit_computed_in(
    text: str, kind: str, expected: float
) -> None:
    """A figure with its unit becomes a figure in ms, mA, V or percent."""
    assert amount(text, kind) == expected


@pytest.mark.parametrize(
    "text", ["300", "300ms", "300 mA", "-1 ms", "nan ms", "inf ms", "1e9 ms", "", "ms", "1,5 ms"]
)
def test_an_amount_without_a_plain_figure_and_its_unit_is_refused(text: str) -> None:
    """No unit, another kind of unit, or an odd figure is not guessed at."""
    with pytest.raises(ValueError, match=r"needs a unit|plain figure"):
        amount(text, "time")


def test_a_key_that_nobody_takes_is_refused_by_name() -> None:
    """An unknown key stops the load, with file, row and key."""
    read = record(title="Times", tittle="Times")
    read.text("title")

    with pytest.raises(DataError, match=r"made-up\.toml, row 1: unknown key 'tittle'"):
        read.finish()


@pytest.mark.parametrize("value", [None, "", "  ", 3, ["a"]])
def test_a_text_that_is_needed_must_be_there(value: object) -> None:
    """Missing, empty and other values are refused."""
    with pytest.raises(DataError, match="needs 'clause' as text"):
        record(clause=value).text("clause")


def test_days_that_run_backwards_are_refused() -> None:
    """An end on or before the first day is an error."""
    day = date(2022, 3, 28)

    with pytest.raises(DataError, match="runs backwards"):
        record(**{"from": day, "until": day}).days()


@pytest.mark.parametrize("value", ["2022-03-28", 2022])
def test_a_day_is_a_toml_date_and_nothing_else(value: object) -> None:
    """A text or a figure is not taken for a day."""
    with pytest.raises(DataError, match="as a date"):
        record(**{"from": value}).days()


def test_an_empty_list_of_choices_is_refused() -> None:
    """A condition that nothing can meet is a slip."""
    with pytest.raises(DataError, match="would never apply"):
        record(type=[]).choices("type", frozenset({"A"}))
