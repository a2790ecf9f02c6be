"""A line through the years tells a trend only where instruments and scatter do not explain it."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from checkers.judgement.years.trend import Point, normalised_difference, trend_of

FIRST = date(2015, 6, 1)
VALUES = st.lists(st.floats(min_value=10, max_value=300), min_size=3, max_size=10)


def points(*values: float, uncertainty: float = 5.0) -> list[Point]:
    """Return yearly readings with one uncertainty."""
    return [
        Point(FIRST + timedelta(days=365 * place), value, uncertainty)
        for place, value in enumerate(values)
    ]


def test_one_day_has_no_trend() -> None:
    """Two readings of one day make no line."""
    assert trend_of([Point(FIRST, 20, 1), Point(FIRST, 30, 1)]) is None
    assert trend_of(points(20)) is None


def test_readings_within_their_uncertainty_show_no_trend() -> None:
    """24, 26, 25 and 27 ms to 5 ms are one and the same."""
    trend = trend_of(points(24, 26, 25, 27))

    assert trend is not None
    assert not trend.is_seen
    assert trend.reaches(300) is None


def test_two_readings_beyond_their_uncertainty_show_a_trend() -> None:
    """20 and 80 ms to 5 ms are not the same, and the limit is reached in four years more."""
    trend = trend_of(points(20, 80))
    assert trend is not None
    reached = trend.reaches(300)

    assert trend.is_seen
    assert reached is not None
    assert abs(reached.day - FIRST - timedelta(days=365 * 280 / 60)) < timedelta(days=1)


@given(VALUES, st.floats(min_value=0.5, max_value=20))
def test_a_larger_uncertainty_never_makes_a_trend_of_none(values: list[float], more: float) -> None:
    """What a good instrument does not show, a worse one does not show either."""
    fine, coarse = (
        trend_of(points(*values, uncertainty=1)),
        trend_of(points(*values, uncertainty=1 + more)),
    )
    assert fine is not None
    assert coarse is not None

    assert coarse.is_seen <= fine.is_seen or coarse.factor < fine.factor


@given(VALUES)
def test_turned_round_in_time_the_slope_turns_its_sign(values: list[float]) -> None:
    """Rising one way is falling the other."""
    one, other = trend_of(points(*values)), trend_of(points(*reversed(values)))
    assert one is not None
    assert other is not None

    assert one.slope == pytest.approx(-other.slope, abs=1e-6)


@given(VALUES, st.integers(min_value=30, max_value=400))
def test_a_limit_is_reached_between_its_days(values: list[float], limit: int) -> None:
    """The likely day lies between the earliest and the latest."""
    trend = trend_of(points(*values))
    assert trend is not None
    reached = trend.reaches(limit)

    assert reached is None or reached.earliest <= reached.day <= reached.latest


@pytest.mark.parametrize(
    ("one", "other", "expected"), [((100, 3), (105, 4), 1.0), ((20, 5), (20, 5), 0.0)]
)
def test_a_change_is_compared_with_both_uncertainties(
    one: tuple[float, float], other: tuple[float, float], expected: float
) -> None:
    """3 and 4 make 5 at right angles: a difference of 5 is just explained."""
    first, second = (Point(FIRST, *figures) for figures in (one, other))

    assert expected == pytest.approx(normalised_difference(first, second))
