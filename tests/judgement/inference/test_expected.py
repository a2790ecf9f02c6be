"""What one would expect of a test, in words whose figures can be worked by hand."""

from __future__ import annotations

import pytest

from checkers.domain.quantities.measured_value import parse_measured
from checkers.judgement.inference.expected import expected_words
from checkers.judgement.inference.weighing.samples import Columns
from checkers.physics.response.attempt import Attempt

TIME = Attempt("trip-time", 30.0, 30.0)


def words(shows: float, mean: float, spread: float) -> str:
    """Return what is expected of a trip time from a cloud of one member."""
    columns = Columns([shows], [mean], [spread], [1.0], [0.0])
    return expected_words(columns, [1.0], TIME, parse_measured("no trip", "trip_time"))


@pytest.mark.parametrize(
    ("mean", "spread", "expected"),
    [
        (40.0, 5.0, "35 ms to 45 ms"),
        (126.0, 12.0, "110 ms to 140 ms"),  # 114 and 138, told in two digits
        (1.0, 2.0, "0 ms to 3 ms"),  # 1 - 2 is no time
    ],
)
def test_a_range_reaches_one_deviation_to_each_side(
    mean: float, spread: float, expected: str
) -> None:
    """In two digits, and never below nothing."""
    assert words(1.0, mean, spread) == expected


@pytest.mark.parametrize(
    ("shows", "expected"),
    [
        (0.02, "no trip within 300 ms"),
        (0.6, "35 ms to 45 ms, or no trip in 40 %"),
        (0.97, "35 ms to 45 ms, or no trip in 3 %"),
        (0.98, "35 ms to 45 ms"),
    ],
)
def test_no_trip_is_told_where_it_is_not_rare(shows: float, expected: str) -> None:
    """In fewer than three tests of a hundred it is left out, and so is a trip."""
    assert words(shows, 40.0, 5.0) == expected
