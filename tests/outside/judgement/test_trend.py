"""The line through the years agrees with SciPy and NumPy."""

from __future__ import annotations

from datetime import date, timedelta

import numpy as np
import pytest
from scipy.optimize import brentq
from scipy.stats import linregress, t

from checkers.judgement.years.student_t import coverage_factor
from checkers.judgement.years.trend import DAYS_A_YEAR, Point, Trend, trend_of

FIRST = date(2014, 3, 1)
DAYS = [0, 360, 741, 1100, 1466, 1830, 2190]
READINGS = [21.0, 34.0, 29.0, 48.0, 47.0, 66.0, 64.0]


def line(uncertainty: float) -> Trend:
    """Return the line through the readings, each with one expanded uncertainty."""
    points = [
        Point(FIRST + timedelta(days=day), value, uncertainty)
        for day, value in zip(DAYS, READINGS, strict=True)
    ]
    trend = trend_of(points)
    assert trend is not None
    return trend


def years() -> list[float]:
    """Return the days as years."""
    return [(FIRST + timedelta(days=day)).toordinal() / DAYS_A_YEAR for day in DAYS]


@pytest.mark.parametrize("freedom", [1, 2, 3, 4, 5, 8, 13, 40, 198])
@pytest.mark.parametrize("probability", [0.5, 0.9, 0.95, 0.99])
def test_the_coverage_factor_is_that_of_students_distribution(
    probability: float, freedom: int
) -> None:
    """SciPy's quantiles of t."""
    expected = t.ppf((1 + probability) / 2, freedom)

    assert expected == pytest.approx(coverage_factor(probability, freedom), rel=1e-9)


def test_where_scatter_decides_the_line_is_that_of_linregress() -> None:
    """Slope, value, and their standard errors, from the residuals alone."""
    found, expected = line(uncertainty=0.5), linregress(years(), READINGS)

    assert expected.slope == pytest.approx(found.slope, rel=1e-9)
    assert expected.stderr == pytest.approx(found.spread_of_slope, rel=1e-9)
    assert np.mean(READINGS) == pytest.approx(found.value)
    residual = np.sqrt(np.sum((np.polyval(expected[:2], years()) - READINGS) ** 2) / 5)
    assert residual == pytest.approx(found.scatter, rel=1e-6)
    assert t.ppf(0.975, 5) == pytest.approx(found.factor)


def test_where_the_instrument_decides_the_spread_is_that_of_known_uncertainties() -> None:
    """NumPy's polynomial fit with unscaled covariance."""
    found = line(uncertainty=40.0)
    _, covariance = np.polyfit(
        np.array(years()) - found.middle, READINGS, 1, w=np.full(7, 1 / 20.0), cov="unscaled"
    )

    assert np.sqrt(covariance[0, 0]) == pytest.approx(found.spread_of_slope, rel=1e-6)
    assert np.sqrt(covariance[1, 1]) == pytest.approx(found.spread_of_mean, rel=1e-6)


def test_the_days_of_a_limit_are_where_the_confidence_band_meets_it() -> None:
    """SciPy's root of the band on either side of the line, at 100 ms."""
    found = line(uncertainty=0.5)
    reached = found.reaches(100.0)
    assert reached is not None

    def edge(year: float, side: int) -> float:
        away = year - found.middle
        spread = np.hypot(found.spread_of_mean, found.spread_of_slope * away)
        return float(found.value + found.slope * away + side * found.factor * spread - 100.0)

    for day, side in ((reached.earliest, 1), (reached.latest, -1)):
        root = brentq(edge, found.middle, found.middle + 60, args=(side,))
        assert root * DAYS_A_YEAR == pytest.approx(day.toordinal(), abs=1)
